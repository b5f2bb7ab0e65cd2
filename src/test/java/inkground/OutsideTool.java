package inkground;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;

/** Programs that tests compare with where they are installed. */
public final class OutsideTool {
    private static final long PATIENCE_S = 120;

    private OutsideTool() {}

    /** @return whether the command starts and ends well, such as {@code gs --version} */
    public static boolean present(String... command) throws InterruptedException {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return process.waitFor(PATIENCE_S, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException e) {
            return false; // that is how the absence of a program shows
        }
    }

    /** @return whether a program of this name is found where commands are looked for; for programs that cannot tell their version */
    public static boolean onPath(String program) {
        return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
    }

    /** Runs a command to its end; a failure is the test's. */
    public static void run(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes());
        assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS)).as(said).isTrue();
        assertThat(process.exitValue())
                .as(Arrays.toString(command) + ": " + said)
                .isZero();
    }
}
