package inkground.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;

/** The user's own colours of inks. */
final class InkLibraryOption {
    @Option(names = "--inks", paramLabel = "FILE", description = "Library of ink colours: JSON, CGATS or CxF 3.")
    private Path file;

    /** @return the library; null for none */
    Path file() {
        return file;
    }
}
