package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The list of what is on each screen, in order. After a change that is right, written anew by {@code -Dinkground.snapshots=rewrite}, to
 * be read before it is committed.
 */
final class ScreenParts {
    private static final Path LIST = Path.of("src/test/resources/inkground/viewer/screens.txt");

    private ScreenParts() {}

    static void assertAsListed(Map<String, List<String>> screens) throws IOException {
        List<String> lines = new ArrayList<>();
        screens.forEach((screen, parts) -> {
            lines.add(screen);
            parts.forEach(part -> lines.add("    " + part));
        });
        if ("rewrite".equals(System.getProperty("inkground.snapshots"))) {
            Files.write(LIST, lines);
        }
        assertThat(lines).as("parts of each screen, in order, against " + LIST).isEqualTo(Files.readAllLines(LIST));
    }
}
