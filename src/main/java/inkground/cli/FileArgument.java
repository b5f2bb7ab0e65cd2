package inkground.cli;

import inkground.app.Arrangement;
import inkground.app.ArtworkFiles;
import inkground.artwork.PictureSize;
import inkground.base.Refusal;
import java.nio.file.Path;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The artwork that a command works on. */
final class FileArgument {
    @Parameters(paramLabel = "FILE", description = "The artwork: " + ArtworkFiles.KINDS + ".")
    private Path file;

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
     * @param kept how the artwork is arranged
     * @return the size chosen for a picture or an SVG: by the options, else as it was kept
     */
    PictureSize size(Arrangement kept) throws Refusal {
        return size == null ? kept.size() : size();
    }

    /** @return the size chosen for a picture or an SVG by the options */
    PictureSize size() throws Refusal {
        if (size == null) {
            return PictureSize.STATED;
        }
        return size.widthMm != null
                ? PictureSize.wide(size.widthMm, "--width-mm")
                : PictureSize.at(size.dpi, "--picture-dpi");
    }

    Path path() {
        return file;
    }
}
