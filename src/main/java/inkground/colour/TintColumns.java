package inkground.colour;

import inkground.base.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The columns of a characterisation table that hold tints: those of CGATS.17 and ISO 28178 (CMYK_C, CMY_C, 5CLR_1), and what
 * real files write in their place (CMYK_1, C M Y K, CMYKOG_O).
 *
 * @param inks names in channel order
 * @param columns their indices, one per ink
 */
record TintColumns(List<String> inks, int[] columns) {
    /** The four process inks, as columns of theirs are named here. */
    static final List<String> PROCESS = List.of("Cyan", "Magenta", "Yellow", "Black");

    private static final Pattern NUMBERED = Pattern.compile("([1-9A-F])CLR_([1-9A-F])");
    // Letters as measuring programs combine them; light inks share their letter with the strong one, so such columns
    // are doubled.
    private static final Pattern LETTERED = Pattern.compile("(CMY[A-Z]{0,12})_([A-Z0-9])");
    private static final List<List<String>> BARE =
            List.of(List.of("C", "M", "Y", "K"), List.of("CYAN", "MAGENTA", "YELLOW", "BLACK"));
    private static final Set<String> LIGHT = Set.of("RGB_R", "RGB_G", "RGB_B", "RGB_1");
    private static final String LETTERS = "CMYKROGBVW";
    private static final List<String> NAMES =
            List.of("Cyan", "Magenta", "Yellow", "Black", "Red", "Orange", "Green", "Blue", "Violet", "White");

    /**
     * @param file its name, for messages
     * @throws Refusal naming the file and the columns that are missing or cannot be used
     */
    static TintColumns find(Cgats table, String file) throws Refusal {
        TreeMap<String, Set<String>> families = families(table);
        if (families.size() > 1) {
            throw new Refusal(file + " has tints in columns of several kinds (" + String.join(", ", families.keySet())
                    + "). Remove all but one.");
        }
        if (!families.isEmpty()) {
            return family(families.firstKey(), families.firstEntry().getValue(), table, file);
        }
        for (List<String> names : BARE) {
            if (table.fields().containsAll(names)) {
                return of(PROCESS, names, table);
            }
        }
        if (!Collections.disjoint(table.fields(), LIGHT)) {
            throw new Refusal(file + ", RGB_R: this is data of a device that is driven by red, green and blue."
                    + " Data of inks is needed, with columns such as CMYK_C or 5CLR_1.");
        }
        throw new Refusal(file + " has no CMYK_C, CMYK_M, CMYK_Y, CMYK_K and no 5CLR_1-like columns; it has "
                + table.fields() + ". Tints of the inks are needed.");
    }

    // Columns before and after the underscore: CMYK to {C, M, Y, K}, 5CLR to {1, 2, 3, 4, 5}.
    private static TreeMap<String, Set<String>> families(Cgats table) {
        TreeMap<String, Set<String>> out = new TreeMap<>();
        for (String field : table.fields()) {
            Matcher numbered = NUMBERED.matcher(field);
            Matcher lettered = LETTERED.matcher(field);
            if (numbered.matches()) {
                out.computeIfAbsent(numbered.group(1) + "CLR", k -> new TreeSet<>())
                        .add(numbered.group(2));
            } else if (lettered.matches()) {
                out.computeIfAbsent(lettered.group(1), k -> new TreeSet<>()).add(lettered.group(2));
            }
        }
        return out;
    }

    private static TintColumns family(String family, Set<String> members, Cgats table, String file) throws Refusal {
        boolean numbered = family.endsWith("CLR");
        int n = numbered ? Integer.parseInt(family.substring(0, 1), 16) : family.length();
        List<String> letters = numbered ? List.of() : Arrays.asList(family.split(""));
        List<String> digits = new ArrayList<>();
        for (int i = 1; i <= n; i++) {
            digits.add(Integer.toHexString(i).toUpperCase(java.util.Locale.ROOT));
        }
        boolean byDigit = numbered || members.contains("1");
        List<String> wanted = byDigit ? digits : letters;
        if (!members.equals(new HashSet<>(wanted)) || new HashSet<>(wanted).size() < n) {
            throw new Refusal(file + ": tints of " + n + " inks need the columns " + columnNames(family, wanted)
                    + ", each once; it has " + table.fields() + ". Correct the names.");
        }
        List<String> inks = numbered
                ? digits.stream().map(d -> "Ink " + Integer.parseInt(d, 16)).toList()
                : letters.stream().map(TintColumns::inkName).toList();
        return of(inks, wanted.stream().map(w -> family + "_" + w).toList(), table);
    }

    private static String columnNames(String family, Iterable<String> members) {
        List<String> out = new ArrayList<>();
        members.forEach(m -> out.add(family + "_" + m));
        return String.join(", ", out);
    }

    private static String inkName(String letter) {
        int at = LETTERS.indexOf(letter);
        return at < 0 ? "Ink " + letter : NAMES.get(at);
    }

    private static TintColumns of(List<String> inks, List<String> fields, Cgats table) {
        return new TintColumns(inks, fields.stream().mapToInt(table::indexOf).toArray());
    }
}
