package inkground.cli;

import inkground.app.ArtworkFiles;
import inkground.app.Job;
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
     * Opens it in the size of the options, else as {@link SizeOptions#open} does.
     *
     * @param kept what is chosen by other options, and was before
     */
    Job open(Job.Choices kept, Console console) throws Refusal {
        return size.open(file, kept, console);
    }

    Path path() {
        return file;
    }
}
