package inkground.artwork.svg;

import inkground.artwork.ImageSource;

/** What an image element shows. */
sealed interface Placed permits Placed.Picture, Drawing {
    /** Samples. */
    record Picture(ImageSource source) implements Placed {}
}
