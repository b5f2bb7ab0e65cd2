package inkground.cases;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads cases from text. A line that starts in the first column is {@code key: value}; lines indented under it go on with
 * the value. A line that starts with # is a comment. The keys are described in {@code README.txt} beside the cases.
 */
final class CaseReader {
    private static final int DEFAULT_TOLERANCE = 1;
    private static final Pattern LET = Pattern.compile("\\$([A-Z][A-Za-z0-9]*)");

    private final String file;
    private final List<InkCase> cases = new ArrayList<>();
    private Map<String, String> fields;
    private Map<String, InkCase.Body> objects;
    private List<InkCase.Expectation> expectations;
    private final Map<String, String> lets = new LinkedHashMap<>();
    private int start;
    private int lineNumber;

    private CaseReader(String file) {
        this.file = file;
    }

    /** @return the cases of a resource */
    static List<InkCase> read(String resource) throws IOException {
        try (InputStream in = CaseReader.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IOException("there is no " + resource);
            }
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return new CaseReader(resource.substring(resource.lastIndexOf('/') + 1))
                    .parse(text.lines().toList());
        }
    }

    private List<InkCase> parse(List<String> lines) {
        for (int i = 0; i < lines.size(); ) {
            lineNumber = i + 1;
            String line = lines.get(i++);
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            int colon = line.indexOf(':');
            if (colon < 0 || line.startsWith(" ")) {
                throw wrong("a line that is no key: " + line);
            }
            StringBuilder value = new StringBuilder(line.substring(colon + 1).strip());
            StringBuilder below = new StringBuilder();
            while (i < lines.size() && lines.get(i).startsWith("  ")) {
                below.append(below.isEmpty() ? "" : "\n").append(lines.get(i++).strip());
            }
            field(line.substring(0, colon).strip(), value.toString(), below.toString());
        }
        finish();
        return cases;
    }

    private void field(String key, String value, String below) {
        String first = key.split(" ", 2)[0];
        if (first.equals("let")) {
            lets.put(key.substring(4), expand(value + " " + below));
            return;
        }
        if (first.equals("case")) {
            finish();
            fields = new LinkedHashMap<>();
            objects = new LinkedHashMap<>();
            expectations = new ArrayList<>();
            start = lineNumber;
            fields.put("case", value);
            return;
        }
        if (fields == null) {
            throw wrong("a key before the first case");
        }
        String rest = key.substring(first.length()).strip();
        switch (first) {
            case "object" -> objects.put(rest, new InkCase.Body(expand(value + " " + below), null));
            case "stream" -> objects.put(rest, new InkCase.Body(expand(value), below));
            case "hex" -> objects.put(rest, new InkCase.Body(expand(value), bytes(below)));
            case "font" -> {
                String data = new String(SquareFont.bytes(), StandardCharsets.ISO_8859_1);
                objects.put(rest, new InkCase.Body("/Length1 " + data.length(), data));
            }
            case "icc" -> objects.put(rest, profile(value));
            case "at" -> expectations.add(at(rest, value + " " + below));
            case "same" -> expectations.add(same(rest, value + " " + below));
            case "clause",
                    "size",
                    "page",
                    "catalog",
                    "resources",
                    "content",
                    "overprint",
                    "layers",
                    "inexact",
                    "fails" -> fields.put(first, expand((value + "\n" + below).strip()));
            default -> throw wrong("an unknown key " + key);
        }
    }

    private String expand(String text) {
        return LET.matcher(text).replaceAll(found -> {
            String value = lets.get(found.group(1));
            if (value == null) {
                throw wrong("there is no " + found.group());
            }
            return Matcher.quoteReplacement(value);
        });
    }

    /** A profile of the Java runtime as a stream. */
    private InkCase.Body profile(String name) {
        int space =
                switch (name) {
                    case "srgb" -> ColorSpace.CS_sRGB;
                    case "grey" -> ColorSpace.CS_GRAY;
                    default -> throw wrong("an unknown profile " + name);
                };
        byte[] data = ICC_Profile.getInstance(space).getData();
        int components = space == ColorSpace.CS_GRAY ? 1 : 3;
        return new InkCase.Body("/N " + components, new String(data, StandardCharsets.ISO_8859_1));
    }

    private static String bytes(String hex) {
        String digits = hex.replaceAll("\\s", "");
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < digits.length(); i += 2) {
            out.append((char) Integer.parseInt(digits.substring(i, i + 2), 16));
        }
        return out.toString();
    }

    private InkCase.Expectation at(String point, String text) {
        String[] xy = point.split(" +");
        String[] parts = text.split("\\|", 2);
        Map<String, InkCase.Span> inks = new LinkedHashMap<>();
        boolean free = false;
        for (String part : parts[0].split(",")) {
            String item = part.strip();
            switch (item) {
                case "nothing" -> inks.put("mark", new InkCase.Span(0, 0));
                case "no ink" -> {}
                case "others any" -> free = true;
                default -> {
                    int space = item.lastIndexOf(' ');
                    inks.put(item.substring(0, space), span(item.substring(space + 1)));
                }
            }
        }
        return new InkCase.At(Integer.parseInt(xy[0]), Integer.parseInt(xy[1]), inks, free, why(parts));
    }

    private static InkCase.Span span(String text) {
        if (text.contains("..")) {
            String[] ends = text.split("\\.\\.");
            return new InkCase.Span(Integer.parseInt(ends[0]), Integer.parseInt(ends[1]));
        }
        String[] parts = text.split("~");
        int tolerance = parts.length > 1 ? Integer.parseInt(parts[1]) : DEFAULT_TOLERANCE;
        int value = Integer.parseInt(parts[0]);
        boolean end = parts.length == 1 && (value == 0 || value == 255); // none and solid are exact
        return end ? new InkCase.Span(value, value) : new InkCase.Span(value - tolerance, value + tolerance);
    }

    private InkCase.Expectation same(String points, String text) {
        String[] p = points.split("[ ,]+");
        String[] parts = text.split("\\|", 2);
        String tolerance = parts[0].strip();
        return new InkCase.Same(
                Integer.parseInt(p[0]),
                Integer.parseInt(p[1]),
                Integer.parseInt(p[2]),
                Integer.parseInt(p[3]),
                Integer.parseInt(tolerance.substring(1)),
                why(parts));
    }

    private String why(String[] parts) {
        if (parts.length < 2 || parts[1].isBlank()) {
            throw wrong("an expectation without its derivation");
        }
        return parts[1].strip();
    }

    private void finish() {
        if (fields == null) {
            return;
        }
        if (expectations.isEmpty() || !fields.containsKey("clause") || !fields.containsKey("content")) {
            throw wrong("the case before has no clause, content or expectation");
        }
        String[] size = fields.getOrDefault("size", "40 40").split(" +");
        String layers = fields.get("layers");
        cases.add(new InkCase(
                fields.get("case"),
                fields.get("clause"),
                Integer.parseInt(size[0]),
                Integer.parseInt(size[1]),
                fields.getOrDefault("page", ""),
                fields.getOrDefault("catalog", ""),
                fields.getOrDefault("resources", ""),
                fields.get("content"),
                objects,
                !"off".equals(fields.get("overprint")),
                layers == null ? null : List.of(layers.split(" *, *")),
                fields.containsKey("inexact"),
                fields.getOrDefault("fails", ""),
                List.copyOf(expectations),
                file + ":" + start));
    }

    private IllegalArgumentException wrong(String what) {
        return new IllegalArgumentException(file + ":" + lineNumber + ": " + what);
    }
}
