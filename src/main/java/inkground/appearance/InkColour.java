package inkground.appearance;

import inkground.colour.Lab;
import inkground.colour.ToneCurve;
import inkground.ink.Ink;

/**
 * What an ink looks like.
 *
 * @param ink which
 * @param solid its solid on white paper, media-relative: the paper is (100, 0, 0); D50
 * @param opacity 0 a pure filter, 1 hides what is beneath: the contrast ratio, reflectance over black by reflectance over
 *     white
 * @param overBlack its solid over perfect black, where that was measured; null where only the opacity is known, and the ink is taken
 *     to hide all light alike
 * @param tone tone value of ISO 20654 by tint, where tints were measured or stated; null for tints that step evenly in it
 * @param source where the colour comes from, for the user
 */
public record InkColour(Ink ink, Lab solid, double opacity, Lab overBlack, ToneCurve tone, String source) {
    /** Checks the opacity. */
    public InkColour {
        if (ink == null || solid == null || source == null || !(opacity >= 0 && opacity <= 1)) {
            throw new IllegalArgumentException("an ink colour needs ink, solid, source and an opacity from 0 to 1");
        }
    }

    /** An ink known by its solid and opacity alone. */
    public InkColour(Ink ink, Lab solid, double opacity, String source) {
        this(ink, solid, opacity, null, null, source);
    }

    /** @return the same ink with another opacity; what was measured over black no longer counts */
    public InkColour withOpacity(double other) {
        return new InkColour(ink, solid, other, null, tone, source);
    }

    /** @return the same ink with tone values of its own */
    InkColour withTone(ToneCurve other) {
        return new InkColour(ink, solid, opacity, overBlack, other, source);
    }

    /** @return the same ink, said to come from elsewhere */
    InkColour from(String other) {
        return new InkColour(ink, solid, opacity, overBlack, tone, other);
    }
}
