package inkground.app;

import inkground.base.Refusal;
import inkground.ink.InkSet;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Reads patches as comma-separated lines (RFC 4180, without line breaks inside quotes). Either the first line holds ink names and
 * every other one as many per cents, or every cell is NAME=PERCENT. Empty lines and lines that begin with # are left out.
 */
public final class PatchTable {
    /** Most lines. */
    public static final int MAX_LINES = 100_000;

    private static final int MAX_LINE_CHARS = 20_000;
    private static final String WHERE = "standard input, line ";

    private PatchTable() {}

    /**
     * @param text to its end
     * @return tints 0 to 1 by ink name, one map per patch
     * @throws Refusal naming the line
     */
    public static List<Map<String, Double>> read(Reader text) throws Refusal {
        List<Map<String, Double>> out = new ArrayList<>();
        List<String> names = null;
        int number = 0;
        try (BufferedReader lines = new BufferedReader(text)) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                number++;
                if (number > MAX_LINES || line.length() > MAX_LINE_CHARS) {
                    throw new Refusal(WHERE + number + ": more than " + MAX_LINES + " lines, or a line of more than "
                            + MAX_LINE_CHARS + " characters. Split the table.");
                }
                String bare = number == 1 && line.startsWith("\ufeff") ? line.substring(1) : line;
                if (bare.isBlank() || bare.startsWith("#")) {
                    continue;
                }
                List<String> cells = cells(bare, number);
                if (cells.get(0).contains("=")) {
                    out.add(pairs(cells, number));
                } else if (names == null) {
                    names = names(cells, number);
                } else {
                    out.add(row(names, cells, number));
                }
            }
        } catch (IOException e) {
            throw new Refusal("Standard input cannot be read as text.", e);
        }
        if (out.isEmpty()) {
            throw new Refusal("Standard input holds no patch. Write a line of ink names and lines of per cents,"
                    + " or give --ink NAME=PERCENT.");
        }
        return out;
    }

    /**
     * @param word NAME=PERCENT
     * @return name and tint 0 to 1
     * @throws Refusal saying what is wrong with the word
     */
    public static Map.Entry<String, Double> pair(String word) throws Refusal {
        int at = word.lastIndexOf('=');
        if (at < 1 || word.substring(0, at).isBlank()) {
            throw new Refusal("'" + word + "' is not NAME=PERCENT, such as Cyan=40");
        }
        return Map.entry(PatchColours.inkName(word.substring(0, at).strip()), tint(word.substring(at + 1), word));
    }

    private static double tint(String text, String what) throws Refusal {
        try {
            double percent = Double.parseDouble(text.strip());
            if (percent >= 0 && percent <= 100) {
                return percent / 100;
            }
        } catch (NumberFormatException e) {
            throw new Refusal("'" + what + "': '" + text.strip() + "' is no number", e);
        }
        throw new Refusal("'" + what + "': a tint lies between 0 and 100 per cent");
    }

    private static Map<String, Double> pairs(List<String> cells, int line) throws Refusal {
        Map<String, Double> out = new LinkedHashMap<>();
        for (String cell : cells) {
            try {
                Map.Entry<String, Double> pair = pair(cell);
                put(out, pair.getKey(), pair.getValue(), line);
            } catch (Refusal e) {
                throw at(line, e);
            }
        }
        return out;
    }

    private static Map<String, Double> row(List<String> names, List<String> cells, int line) throws Refusal {
        if (cells.size() != names.size()) {
            throw new Refusal(WHERE + line + " has " + cells.size() + " values for " + names.size() + " inks.");
        }
        Map<String, Double> out = new LinkedHashMap<>();
        for (int i = 0; i < names.size(); i++) {
            try {
                put(out, names.get(i), tint(cells.get(i), cells.get(i)), line);
            } catch (Refusal e) {
                throw at(line, e);
            }
        }
        return out;
    }

    private static List<String> names(List<String> cells, int line) throws Refusal {
        Map<String, Double> seen = new LinkedHashMap<>();
        for (String cell : cells) {
            if (cell.isBlank()) {
                throw new Refusal(WHERE + line + ": an ink without a name.");
            }
            put(seen, PatchColours.inkName(cell.strip()), 0, line);
        }
        return List.copyOf(seen.keySet());
    }

    private static void put(Map<String, Double> out, String name, double tint, int line) throws Refusal {
        if (out.put(name, tint) != null) {
            throw new Refusal(WHERE + line + ": the ink " + name + " is there twice.");
        }
        if (out.size() > InkSet.MAX_INKS) {
            throw new Refusal(WHERE + line + ": more than " + InkSet.MAX_INKS + " inks.");
        }
    }

    private static Refusal at(int line, Refusal e) {
        String message = e.getMessage();
        return message.startsWith(WHERE) ? e : new Refusal(WHERE + line + ": " + message + ".", e);
    }

    private static List<String> cells(String line, int number) throws Refusal {
        List<String> out = new ArrayList<>();
        int i = 0;
        while (true) {
            StringBuilder cell = new StringBuilder();
            boolean quoted = i < line.length() && line.charAt(i) == '"';
            i += quoted ? 1 : 0;
            while (i < line.length() && (quoted || line.charAt(i) != ',')) {
                char c = line.charAt(i++);
                if (quoted && c == '"') {
                    if (i < line.length() && line.charAt(i) == '"') {
                        i++;
                    } else {
                        quoted = false;
                        continue;
                    }
                }
                cell.append(c);
            }
            if (quoted) {
                throw new Refusal(WHERE + number + ": a quote is not closed.");
            }
            out.add(cell.toString().strip());
            if (i >= line.length()) {
                return out;
            }
            i++; // the comma
        }
    }
}
