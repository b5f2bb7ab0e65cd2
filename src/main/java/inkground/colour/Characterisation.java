package inkground.colour;

import inkground.base.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Measured patches of one way of printing: tints and their colours. Repeated patches are averaged.
 *
 * @param name for the user
 * @param source where the data comes from, one line
 * @param inks names in channel order
 * @param patches distinct tint vectors, in file order
 */
public record Characterisation(String name, String source, List<String> inks, List<Patch> patches) {
    /** Most inks of a characterisation: the file format's own limit of fifteen colours. */
    public static final int MAX_INKS = 15;

    // Prints repeat within 2 or 3; a wider difference is a mistake, not noise. Common practice, no source.
    private static final double MOST_REPEAT_DE00 = 10;
    // Rounding of Lab and of X, Y, Z in the same file stays far below.
    private static final double MOST_CONTRADICTION_DE00 = 3;

    /** Copies the lists. */
    public Characterisation {
        inks = List.copyOf(inks);
        patches = List.copyOf(patches);
    }

    /**
     * One patch.
     *
     * @param tints one per ink, 0 to 1; not to be changed
     * @param lab absolute, D50
     */
    public record Patch(double[] tints, Lab lab) {}

    /**
     * Reads tints from CMYK_x or nCLR_x columns, and colours from LAB_x (finer in the darks), else XYZ_x, else spectral columns. Tints
     * that are nowhere above 1 are shares, not per cents; so are X, Y, Z. Where Lab and X, Y, Z are both there they must agree, and so
     * must repeats of one patch.
     *
     * @param table the file's
     * @param file its name, for messages
     * @throws Refusal naming the file and the column
     */
    public static Characterisation of(Cgats table, String file) throws Refusal {
        List<String> inks = new ArrayList<>();
        int[] tintColumns = tintColumns(table, inks, file);
        List<Lab> colours = colours(table, file);
        double whole = most(table, tintColumns, 100.001, file) <= 1 ? 1 : 100;
        Map<List<Double>, List<Lab>> byTints = new LinkedHashMap<>();
        for (int i = 0; i < table.rows().size(); i++) {
            List<Double> tints = new ArrayList<>();
            for (int column : tintColumns) {
                tints.add(number(table, i, column, 0, 100.001, file) / whole);
            }
            List<Lab> repeats = byTints.computeIfAbsent(tints, t -> new ArrayList<>());
            repeats.add(colours.get(i));
            double apart = Cie.deltaE00(repeats.get(0), colours.get(i));
            if (apart > MOST_REPEAT_DE00) {
                throw new Refusal(
                        file + ", row " + (i + 1) + " of the data: its tints were measured before, in a colour"
                                + " that differs by dE00 " + Math.round(apart)
                                + ". One of the two is wrong; correct or remove it.");
            }
        }
        List<Patch> patches = new ArrayList<>();
        byTints.forEach((tints, labs) -> patches.add(
                new Patch(tints.stream().mapToDouble(t -> Math.min(1, t)).toArray(), mean(labs))));
        String name = first(table, file, "DESCRIPTOR", "FILE_DESCRIPTOR");
        String source = first(table, name, "PRINT_CONDITIONS", "ORIGINATOR");
        return new Characterisation(name, source, inks, patches);
    }

    /** @return colour of the patch with exactly these tints, or null */
    public Lab find(double... tints) {
        for (Patch patch : patches) {
            if (Arrays.equals(patch.tints(), tints)) {
                return patch.lab();
            }
        }
        return null;
    }

    /** @return the same tints with the colours that a print condition gives them */
    public Characterisation asPrintedBy(PrintCondition condition) {
        if (inks.size() != 4) {
            throw new IllegalArgumentException("a print condition has four inks, not " + inks.size());
        }
        List<Patch> printed = new ArrayList<>(patches.size());
        float[] cmyk = new float[4];
        double[] xyz = new double[3];
        for (Patch patch : patches) {
            for (int i = 0; i < 4; i++) {
                cmyk[i] = (float) patch.tints()[i];
            }
            condition.cmykToXyz(cmyk, xyz);
            printed.add(new Patch(patch.tints(), Cie.xyzToLab(xyz[0], xyz[1], xyz[2])));
        }
        return new Characterisation(condition.name(), condition.source(), inks, printed);
    }

    /** @return steps of one ink printed alone, paper and solid included where they are there, lightest tint first */
    public List<Patch> ramp(int ink) {
        return patches.stream()
                .filter(p -> isRamp(p.tints(), ink))
                .sorted(Comparator.comparingDouble(p -> p.tints()[ink]))
                .toList();
    }

    private static boolean isRamp(double[] tints, int ink) {
        for (int i = 0; i < tints.length; i++) {
            if (i != ink && tints[i] != 0) {
                return false;
            }
        }
        return true;
    }

    private static int[] tintColumns(Cgats table, List<String> inks, String file) throws Refusal {
        int[] cmyk = columns(table, "CMYK_C", "CMYK_M", "CMYK_Y", "CMYK_K");
        if (cmyk != null) {
            inks.addAll(List.of("Cyan", "Magenta", "Yellow", "Black"));
            return cmyk;
        }
        for (int n = 1; n <= MAX_INKS; n++) {
            String prefix = Integer.toHexString(n).toUpperCase(java.util.Locale.ROOT) + "CLR_";
            String[] names = new String[n];
            for (int i = 0; i < n; i++) {
                names[i] = prefix + Integer.toHexString(i + 1).toUpperCase(java.util.Locale.ROOT);
            }
            int[] found = columns(table, names);
            if (found != null) {
                for (int i = 0; i < n; i++) {
                    inks.add("Ink " + (i + 1));
                }
                return found;
            }
        }
        throw new Refusal(file + " has no CMYK_C, CMYK_M, CMYK_Y, CMYK_K and no 5CLR_1-like columns; it has "
                + table.fields() + ". Tints of the inks are needed.");
    }

    private static int[] columns(Cgats table, String... names) {
        int[] out = new int[names.length];
        for (int i = 0; i < names.length; i++) {
            out[i] = table.indexOf(names[i]);
            if (out[i] < 0) {
                return null;
            }
        }
        return out;
    }

    private static Lab ofLab(Cgats table, int row, int[] lab, String file) throws Refusal {
        return new Lab(
                number(table, row, lab[0], -1, 130, file),
                number(table, row, lab[1], -200, 200, file),
                number(table, row, lab[2], -200, 200, file));
    }

    private static Lab ofXyz(Cgats table, int row, int[] xyz, double white, String file) throws Refusal {
        return Cie.xyzToLab(
                number(table, row, xyz[0], -1, 200, file) / white,
                number(table, row, xyz[1], -1, 200, file) / white,
                number(table, row, xyz[2], -1, 200, file) / white);
    }

    private static double most(Cgats table, int[] columns, double limit, String file) throws Refusal {
        double most = 0;
        for (int row = 0; row < table.rows().size(); row++) {
            for (int column : columns) {
                most = Math.max(most, number(table, row, column, -1, limit, file));
            }
        }
        return most;
    }

    static double number(Cgats table, int row, int column, double min, double max, String file) throws Refusal {
        String text = table.rows().get(row).get(column);
        String where =
                file + ", row " + (row + 1) + " of the data, " + table.fields().get(column);
        try {
            double value = Double.parseDouble(text);
            if (value >= min && value <= max) {
                return value;
            }
        } catch (NumberFormatException e) {
            throw new Refusal(where + ": '" + text + "' is not a number. Correct or remove the row.", e);
        }
        throw new Refusal(
                where + ": " + text + " is outside " + min + " to " + Math.floor(max) + ". Correct or remove the row.");
    }

    /**
     * The colours alone, for tables of named samples.
     *
     * @return absolute Lab, one per row
     * @throws Refusal naming the file and the column
     */
    public static List<Lab> colours(Cgats table, String file) throws Refusal {
        int[] lab = columns(table, "LAB_L", "LAB_A", "LAB_B");
        int[] xyz = columns(table, "XYZ_X", "XYZ_Y", "XYZ_Z");
        if (lab == null && xyz == null) {
            return SpectralColumns.find(table)
                    .orElseThrow(() -> new Refusal(file
                            + " has neither LAB_L, LAB_A, LAB_B nor XYZ_X, XYZ_Y, XYZ_Z nor spectral columns; it has "
                            + table.fields() + ". Export it again with Lab values."))
                    .colours(table, file);
        }
        double white = xyz != null && most(table, xyz, 200, file) <= 1.5 ? 1 : 100;
        List<Lab> out = new ArrayList<>();
        for (int i = 0; i < table.rows().size(); i++) {
            Lab colour = lab == null ? ofXyz(table, i, xyz, white, file) : ofLab(table, i, lab, file);
            if (lab != null && xyz != null) {
                double apart = Cie.deltaE00(colour, ofXyz(table, i, xyz, white, file));
                if (apart > MOST_CONTRADICTION_DE00) {
                    throw new Refusal(
                            file + ", row " + (i + 1) + " of the data: LAB_L, LAB_A, LAB_B and XYZ_X, XYZ_Y, XYZ_Z"
                                    + " differ by dE00 " + Math.round(apart)
                                    + "; they must be of one colour, for D50. Export the file again, or remove one of them.");
                }
            }
            out.add(colour);
        }
        return out;
    }

    private static Lab mean(List<Lab> labs) {
        int n = labs.size();
        return new Lab(
                labs.stream().mapToDouble(Lab::L).sum() / n,
                labs.stream().mapToDouble(Lab::a).sum() / n,
                labs.stream().mapToDouble(Lab::b).sum() / n);
    }

    private static String first(Cgats table, String fallback, String... keywords) {
        for (String keyword : keywords) {
            String value = table.header().get(keyword);
            if (value != null && !value.isBlank()) {
                return value;
            }
        }
        return fallback;
    }
}
