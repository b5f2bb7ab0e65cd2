package inkground;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every source that the code cites is in the bibliography, and nothing is in it that no code cites. */
class BibliographyTest {
    private static final Pattern CITED = Pattern.compile("\\[([A-Z]+\\d[0-9A-Z]*|SRGB)\\]");
    private static final Pattern ENTRY = Pattern.compile("^\\| ([A-Z0-9]+) \\|");

    @Test
    void cited_keys_and_entries_are_the_same() throws IOException {
        Set<String> entries = new TreeSet<>();
        for (String line : Files.readAllLines(Path.of("src", "docs", "bibliography.md"))) {
            Matcher entry = ENTRY.matcher(line);
            if (entry.find()) {
                assertThat(entries.add(entry.group(1))).as(line).isTrue();
            }
        }
        Set<String> cited = new TreeSet<>();
        for (String root : List.of("src/main/java", "src/test/java")) {
            try (Stream<Path> files = Files.walk(Path.of(root))) {
                for (Path file :
                        files.filter(f -> f.toString().endsWith(".java")).toList()) {
                    Matcher key = CITED.matcher(Files.readString(file));
                    while (key.find()) {
                        cited.add(key.group(1));
                    }
                }
            }
        }
        assertThat(cited).hasSizeGreaterThan(10);
        assertThat(entries).containsExactlyElementsOf(cited);
    }
}
