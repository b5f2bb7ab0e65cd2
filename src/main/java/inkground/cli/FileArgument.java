package inkground.cli;

import java.nio.file.Path;
import picocli.CommandLine.Parameters;

/** The artwork that a command works on. */
final class FileArgument {
    @Parameters(paramLabel = "FILE", description = "The artwork, a PDF.")
    private Path file;

    Path path() {
        return file;
    }
}
