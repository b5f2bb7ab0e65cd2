package inkground.cli;

import inkground.app.Arrangement;
import inkground.app.ArtworkFiles;
import inkground.artwork.PictureSize;
import inkground.base.Refusal;
import java.nio.file.Path;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** The artwork that a command works on. */
final class FileArgument {
    @Parameters(paramLabel = "FILE", description = "The artwork: " + ArtworkFiles.KINDS + ".")
    private Path file;

    @Mixin
    private SizeOptions size;

    /**
     * @param kept how the artwork is arranged
     * @return the size chosen for a picture or an SVG: by the options, else as it was kept
     */
    PictureSize size(Arrangement kept) throws Refusal {
        return size.or(kept.size());
    }

    /** @return the size chosen for a picture or an SVG by the options */
    PictureSize size() throws Refusal {
        return size.or(PictureSize.STATED);
    }

    Path path() {
        return file;
    }
}
