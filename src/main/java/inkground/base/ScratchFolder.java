package inkground.base;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;

/** A folder for files that are needed for a while, in the system's place for such; gone with all that is in it once closed. */
public final class ScratchFolder implements AutoCloseable {
    private static final Logger LOG = Logger.getLogger(ScratchFolder.class.getName());

    private final Path path;

    private ScratchFolder(Path path) {
        this.path = path;
    }

    /**
     * Makes one that only this user of the machine can read.
     *
     * @throws Refusal if there is no room or no right for it
     */
    public static ScratchFolder make() throws Refusal {
        try {
            return new ScratchFolder(Files.createTempDirectory("inkground-"));
        } catch (IOException e) {
            throw new Refusal(
                    "Cannot make a temporary folder in " + System.getProperty("java.io.tmpdir")
                            + ". Free some space there, or name another with INKGROUND_JAVA_OPTS=-Djava.io.tmpdir=FOLDER.",
                    e);
        }
    }

    /** @return where it is */
    public Path path() {
        return path;
    }

    /** Removes the folder; what cannot be removed is left to the system and logged. */
    @Override
    public void close() {
        try (Stream<Path> tree = Files.walk(path)) {
            List<Path> deepestFirst = tree.sorted(Comparator.reverseOrder()).toList();
            for (Path one : deepestFirst) {
                Files.deleteIfExists(one);
            }
        } catch (IOException | UncheckedIOException e) {
            LOG.log(Level.WARNING, "the temporary folder " + path + " is left behind", e);
        }
    }
}
