package inkground.colour;

import inkground.base.Refusal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;

/**
 * The first table of a characterisation file in the text format of CGATS.17 and ISO 28178, read tolerantly: tabs,
 * comments, KEYWORD lines, quoted values, rows broken over lines, any number of fields.
 *
 * @param header keyword, upper case, to value, quotes removed, in file order
 * @param fields column names as the file has them, upper case
 * @param rows as many values per row as there are fields
 */
public record Cgats(Map<String, String> header, List<String> fields, List<List<String>> rows) {
    /** Longest text read, in characters: a hundred times the usual file. */
    public static final int MAX_CHARS = 64 << 20;

    private static final int MAX_FIELDS = 1024;
    private static final int MAX_ROWS = 1_000_000;
    private static final List<String> IDENTIFIERS = List.of("SAMPLE_ID", "SAMPLE_NAME", "SAMPLE_LOC", "SAMPLEID");

    /** Copies the collections. */
    public Cgats {
        header = Collections.unmodifiableMap(new LinkedHashMap<>(header));
        fields = List.copyOf(fields);
        rows = List.copyOf(rows);
    }

    /**
     * @param text of the whole file
     * @param file its name, for messages
     * @throws Refusal if there is no complete table; the message names file and line
     */
    public static Cgats parse(String text, String file) throws Refusal {
        if (text.length() > MAX_CHARS) {
            throw new Refusal(file + " is larger than " + (MAX_CHARS >> 20)
                    + " MB, the limit for characterisation data. Use a file with fewer patches.");
        }
        return new Parser(text, file).parse();
    }

    /** @return index of a field, or -1 */
    public int indexOf(String field) {
        return fields.indexOf(field);
    }

    /** @return a row as messages name it: its number from 1, and its own identifier where the file gives one */
    public String place(int row) {
        StringBuilder out = new StringBuilder("row " + (row + 1) + " of the data");
        for (String field : IDENTIFIERS) {
            int column = indexOf(field);
            if (column >= 0) {
                return out.append(" (")
                        .append(field)
                        .append(' ')
                        .append(rows.get(row).get(column))
                        .append(')')
                        .toString();
            }
        }
        return out.toString();
    }

    /** Line-wise reader with one pass and no look-ahead. */
    private static final class Parser {
        private final String[] lines;
        private final String file;
        private final Map<String, String> header = new LinkedHashMap<>();
        private int line;

        Parser(String text, String file) {
            this.lines = text.split("\r\n|\n|\r", -1);
            this.file = file;
        }

        Cgats parse() throws Refusal {
            List<String> fields = List.of();
            while (line < lines.length) {
                List<String> tokens = tokens(lines[line++]);
                if (tokens.isEmpty()) {
                    continue;
                }
                String keyword = tokens.get(0).toUpperCase(java.util.Locale.ROOT);
                switch (keyword) {
                    case "BEGIN_DATA_FORMAT" -> fields = section(tokens, "END_DATA_FORMAT", MAX_FIELDS);
                    case "BEGIN_DATA" -> {
                        return table(fields, section(tokens, "END_DATA", MAX_FIELDS * MAX_ROWS));
                    }
                    case "KEYWORD" -> {} // announces a keyword of the file's own; its value has its own line
                    default -> header.put(keyword, String.join(" ", tokens.subList(1, tokens.size())));
                }
            }
            throw new Refusal(file + " holds no BEGIN_DATA line, so it has no measurements. Is it a CGATS file?");
        }

        private List<String> section(List<String> first, String end, int limit) throws Refusal {
            int begin = line;
            List<String> out = new ArrayList<>(first.subList(1, first.size()));
            while (line < lines.length) {
                List<String> tokens = tokens(lines[line++]);
                if (!tokens.isEmpty() && tokens.get(0).equalsIgnoreCase(end)) {
                    return out;
                }
                out.addAll(tokens);
                if (out.size() > limit) {
                    throw new Refusal(file + ", line " + line + ": more than " + limit + " values before " + end + ".");
                }
            }
            throw new Refusal(file + " is cut off: the section begun in line " + begin + " has no " + end
                    + ". Get the complete file.");
        }

        private Cgats table(List<String> fields, List<String> values) throws Refusal {
            int n = fields.size();
            if (n == 0) {
                throw new Refusal(file + ": data without a BEGIN_DATA_FORMAT section before it in line " + line + ".");
            }
            List<String> upper = fields.stream()
                    .map(f -> f.toUpperCase(java.util.Locale.ROOT))
                    .toList();
            List<String> twice = new ArrayList<>(upper);
            new LinkedHashSet<>(upper).forEach(twice::remove);
            if (!twice.isEmpty()) {
                throw new Refusal(file + " names the field " + twice.get(0)
                        + " twice between BEGIN_DATA_FORMAT and END_DATA_FORMAT. Remove or rename one of the columns.");
            }
            if (values.size() % n != 0) {
                declared("NUMBER_OF_FIELDS", n);
                throw new Refusal(file + ": " + values.size() + " values do not make whole rows of " + n
                        + " fields. A value is missing or one too many; get the file anew.");
            }
            int sets = values.size() / n;
            declared("NUMBER_OF_SETS", sets);
            // Real files miscount their fields; it does no harm where the number of rows confirms what was read.
            if (!header.containsKey("NUMBER_OF_SETS")) {
                declared("NUMBER_OF_FIELDS", n);
            }
            if (sets == 0) {
                throw new Refusal(file + " holds no measurements between BEGIN_DATA and END_DATA.");
            }
            List<List<String>> rows = new ArrayList<>(sets);
            for (int i = 0; i < sets; i++) {
                rows.add(List.copyOf(values.subList(i * n, i * n + n)));
            }
            return new Cgats(header, upper, rows);
        }

        private void declared(String keyword, int found) throws Refusal {
            String value = header.get(keyword);
            if (value != null && !value.strip().equals(Integer.toString(found))) {
                throw new Refusal(file + ": " + keyword + " says " + value + ", the file holds " + found
                        + ". It is cut off or was edited; get the complete file.");
            }
        }

        private static List<String> tokens(String text) {
            List<String> out = new ArrayList<>();
            int i = 0;
            while (i < text.length()) {
                char c = text.charAt(i);
                if (c == '#') {
                    break;
                }
                if (c <= ' ' || c == '\ufeff') {
                    i++;
                } else if (c == '"') {
                    int end = text.indexOf('"', i + 1);
                    end = end < 0 ? text.length() : end;
                    out.add(text.substring(i + 1, end));
                    i = end + 1;
                } else {
                    int start = i;
                    while (i < text.length() && text.charAt(i) > ' ') {
                        i++;
                    }
                    out.add(text.substring(start, i));
                }
            }
            return out;
        }
    }
}
