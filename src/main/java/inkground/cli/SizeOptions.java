package inkground.cli;

import inkground.artwork.PictureSize;
import inkground.base.Refusal;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Option;

/** How large a picture or an SVG is, where the user knows better than its file. */
final class SizeOptions {
    @ArgGroup
    private Size size;

    /** One of two ways to say how large a picture or an SVG is. */
    static final class Size {
        @Option(
                names = "--width-mm",
                paramLabel = "MM",
                description =
                        "Width that a picture or an SVG is taken to have, where its file does not say or says wrongly.")
        private Double widthMm;

        @Option(
                names = "--picture-dpi",
                paramLabel = "D",
                description = "The same by its samples (of an SVG, its px) per inch.")
        private Double dpi;
    }

    /**
     * @param otherwise the size where neither option is given
     * @throws Refusal if the figure given is not within the limits
     */
    PictureSize or(PictureSize otherwise) throws Refusal {
        if (size == null) {
            return otherwise;
        }
        return size.widthMm != null
                ? PictureSize.wide(size.widthMm, "--width-mm")
                : PictureSize.at(size.dpi, "--picture-dpi");
    }

    boolean given() {
        return size != null;
    }
}
