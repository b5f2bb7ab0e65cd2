package inkground.appearance;

import inkground.colour.Lab;
import inkground.ink.Ink;

/**
 * What an ink looks like.
 *
 * @param ink which
 * @param solid its solid on white paper, media-relative: the paper is (100, 0, 0); D50
 * @param opacity 0 a pure filter, 1 hides what is beneath: the contrast ratio, reflectance over black by reflectance over
 *     white
 * @param source where the colour comes from, for the user
 */
public record InkColour(Ink ink, Lab solid, double opacity, String source) {
    /** Checks the opacity. */
    public InkColour {
        if (ink == null || solid == null || source == null || !(opacity >= 0 && opacity <= 1)) {
            throw new IllegalArgumentException("an ink colour needs ink, solid, source and an opacity from 0 to 1");
        }
    }

    /** @return the same ink with another opacity */
    public InkColour withOpacity(double other) {
        return new InkColour(ink, solid, other, source);
    }
}
