package inkground.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;

/** Keeps the technical side of a failure out of the user's sight, in a file of its own. */
final class FailureLog {
    private FailureLog() {}

    /**
     * @return where the trace was written
     * @throws IOException if no temporary file can be written
     */
    static Path write(Throwable failure, String version, String[] args) throws IOException {
        Path log = Files.createTempFile("inkground-", ".log");
        try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(log, StandardCharsets.UTF_8))) {
            out.println(Instant.now() + " " + version + ", Java " + System.getProperty("java.version") + ", "
                    + System.getProperty("os.name") + " " + System.getProperty("os.arch"));
            out.println("arguments: " + String.join(" ", args));
            failure.printStackTrace(out);
        }
        return log;
    }
}
