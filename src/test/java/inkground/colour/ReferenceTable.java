package inkground.colour;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** Reads a committed table of numbers; lines that begin with # are its provenance. */
final class ReferenceTable {
    private ReferenceTable() {}

    static List<double[]> read(String name) {
        try (InputStream in = ReferenceTable.class.getResourceAsStream(name)) {
            return parse(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static List<double[]> parse(String text) {
        return text.lines()
                .filter(line -> !line.startsWith("#") && !line.isBlank())
                .map(line -> Arrays.stream(line.strip().split("\\s+"))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toList();
    }
}
