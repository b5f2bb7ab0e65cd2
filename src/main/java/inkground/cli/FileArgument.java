package inkground.cli;

import inkground.app.ArtworkFiles;
import inkground.artwork.image.PictureSize;
import inkground.base.Refusal;
import java.nio.file.Path;
import java.util.Locale;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The artwork that a command works on. */
final class FileArgument {
    @Parameters(paramLabel = "FILE", description = "The artwork: " + ArtworkFiles.KINDS + ".")
    private Path file;

    @ArgGroup
    private Size size;

    /** One of two ways to say how large a picture is. */
    static final class Size {
        @Option(
                names = "--width-mm",
                paramLabel = "MM",
                description = "Width that a picture is taken to have, where its file does not say or says wrongly.")
        private Double widthMm;

        @Option(names = "--picture-dpi", paramLabel = "D", description = "The same by its samples per inch.")
        private Double dpi;
    }

    /** @return the size chosen for a picture */
    PictureSize size() throws Refusal {
        if (size == null) {
            return PictureSize.STATED;
        }
        boolean wide = size.widthMm != null;
        double value = wide ? size.widthMm : size.dpi;
        double most = wide ? PictureSize.MOST_MM : PictureSize.MOST_DPI;
        if (!(value >= 1 && value <= most)) {
            throw new Refusal(
                    String.format(Locale.ROOT, "%s is 1 to %.0f.", wide ? "--width-mm" : "--picture-dpi", most));
        }
        return wide ? PictureSize.wide(value) : PictureSize.at(value);
    }

    Path path() {
        return file;
    }
}
