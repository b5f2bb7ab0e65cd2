package inkground;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
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
