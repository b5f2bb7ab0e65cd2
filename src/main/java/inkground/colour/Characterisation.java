package inkground.colour;

import inkground.base.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Measured patches of one way of printing: tints and their colours. Repeated patches are averaged.
 *
 * @param name for the user
 * @param source where the data comes from, one line
 * @param file what it was read from, for messages
 * @param inks names in channel order
 * @param patches distinct tint vectors, in file order
 * @param repeats patches that were measured more than once
 * @param estimates solids over one another, or the paper, that were not measured
 */
public record Characterisation(
        String name,
        String source,
        String file,
        List<String> inks,
        List<Patch> patches,
        Repeats repeats,
        List<Estimate> estimates) {
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
        estimates = List.copyOf(estimates);
    }

    /** Data of no file, each patch measured once. */
    public Characterisation(String name, String source, List<String> inks, List<Patch> patches) {
        this(name, source, name, inks, patches, Repeats.NONE, List.of());
    }

    /**
     * One patch.
     *
     * @param tints one per ink, 0 to 1; not to be changed
     * @param lab absolute, D50
     */
    public record Patch(double[] tints, Lab lab) {}

    /**
     * A patch that stands in for one that was not measured.
     *
     * @param patch all of its tints 0 or 1
     * @param from measured patches of two or more inks that it was found from; none where the single inks tell it
     * @param how what it is and what its colour was found from, for the user
     */
    public record Estimate(Patch patch, List<Patch> from, String how) {}

    /**
     * Patches of the same tints, averaged in Lab.
     *
     * @param patches distinct patches that were measured more than once
     * @param measurements rows of these patches
     * @param meanDe00 mean ΔE00 of these rows to the mean of their patch
     * @param maxDe00 the largest such ΔE00
     * @param farthest the row it belongs to, as {@link Cgats#place} names it; empty where all are equal
     */
    public record Repeats(int patches, int measurements, double meanDe00, double maxDe00, String farthest) {
        /** Every patch measured once. */
        public static final Repeats NONE = new Repeats(0, 0, 0, 0, "");
    }

    /**
     * Reads tints from {@link TintColumns}, and colours from LAB_x (finer in the darks), else XYZ_x, else spectral columns. Tints
     * that are nowhere above 1 are shares, not per cents; so are X, Y, Z. Where Lab and X, Y, Z are both there they must agree, and so
     * must repeats of one patch.
     *
     * @param table the file's
     * @param file its name, for messages
     * @throws Refusal naming the file and the column
     */
    public static Characterisation of(Cgats table, String file) throws Refusal {
        TintColumns tintColumns = TintColumns.find(table, file);
        List<Lab> colours = colours(table, file);
        double whole = most(table, tintColumns.columns(), 100.001, file) <= 1 ? 1 : 100;
        Map<List<Double>, List<Integer>> rows = new LinkedHashMap<>();
        for (int row = 0; row < table.rows().size(); row++) {
            List<Double> tints = new ArrayList<>();
            for (int column : tintColumns.columns()) {
                tints.add(Math.min(1, number(table, row, column, 0, 100.001, file) / whole));
            }
            List<Integer> repeats = rows.computeIfAbsent(tints, t -> new ArrayList<>());
            repeats.add(row);
            double apart = Cie.deltaE00(colours.get(repeats.get(0)), colours.get(row));
            if (apart > MOST_REPEAT_DE00) {
                throw new Refusal(file + ", " + table.place(row) + ": its tints were measured before in "
                        + table.place(repeats.get(0)) + ", in a colour that differs by dE00 " + Math.round(apart)
                        + ". One of the two is wrong; correct or remove it.");
            }
        }
        List<Patch> patches = new ArrayList<>();
        rows.forEach((tints, of) -> patches.add(
                new Patch(tints.stream().mapToDouble(Double::doubleValue).toArray(), mean(colours, of))));
        String name = first(table, file, "DESCRIPTOR", "FILE_DESCRIPTOR");
        String source = first(table, name, "PRINT_CONDITIONS", "ORIGINATOR");
        return new Characterisation(
                name, source, file, tintColumns.inks(), patches, repeats(table, colours, rows.values()), List.of());
    }

    private static Repeats repeats(Cgats table, List<Lab> colours, Collection<List<Integer>> rowsOfPatches) {
        int patches = 0;
        int measurements = 0;
        double sum = 0;
        double most = 0;
        int farthest = -1;
        for (List<Integer> rows : rowsOfPatches) {
            if (rows.size() > 1) {
                patches++;
                measurements += rows.size();
                Lab mean = mean(colours, rows);
                for (int row : rows) {
                    double apart = Cie.deltaE00(colours.get(row), mean);
                    sum += apart;
                    if (apart > most) {
                        most = apart;
                        farthest = row;
                    }
                }
            }
        }
        return patches == 0
                ? Repeats.NONE
                : new Repeats(
                        patches, measurements, sum / measurements, most, farthest < 0 ? "" : table.place(farthest));
    }

    /** @return the same data under another name */
    Characterisation named(String other) {
        return new Characterisation(other, source, file, inks, patches, repeats, estimates);
    }

    /** @return the same data with estimates */
    Characterisation completed(List<Estimate> others) {
        return new Characterisation(name, source, file, inks, patches, repeats, others);
    }

    /** @return measured patches and estimates of such as were not */
    Stream<Patch> known() {
        return Stream.concat(patches.stream(), estimates.stream().map(Estimate::patch));
    }

    /** @return what the data does not hold and what stands in for it, a line for each; empty for complete data */
    public List<String> gaps() {
        Stream<String> noSteps = IntStream.range(0, inks.size())
                .filter(ink -> ramp(ink).stream().allMatch(p -> NeugebauerModel.isPrimary(p.tints())))
                .mapToObj(
                        ink -> "no steps of " + inks.get(ink)
                                + " between paper and solid: its tints spread as the ink model has it, with no dot gain of its own");
        return Stream.concat(estimates.stream().map(e -> "not measured but estimated: " + e.how()), noSteps)
                .toList();
    }

    /** @return measured patches that the ink model was not built from: no primaries, no ramps, nothing that stood in for them */
    List<Patch> unseen() {
        Set<Patch> seen = estimates.stream().flatMap(e -> e.from().stream()).collect(Collectors.toSet());
        return patches.stream()
                .filter(p -> !NeugebauerModel.usesPatch(p.tints()) && !seen.contains(p))
                .toList();
    }

    /** @return number of measurements that the patches are the means of */
    public int measurements() {
        return patches.size() - repeats.patches() + repeats.measurements();
    }

    /** @return colour of the patch with exactly these tints, measured or estimated, or null */
    public Lab find(double... tints) {
        return known().filter(p -> Arrays.equals(p.tints(), tints))
                .map(Patch::lab)
                .findFirst()
                .orElse(null);
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
        return known().filter(p -> isRamp(p.tints(), ink))
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
        try {
            double value = Double.parseDouble(text);
            if (value >= min && value <= max) {
                return value;
            }
        } catch (NumberFormatException e) {
            throw new Refusal(
                    where(table, row, column, file) + ": '" + text + "' is not a number. Correct or remove the row.",
                    e);
        }
        throw new Refusal(where(table, row, column, file) + ": " + text + " is outside " + min + " to "
                + Math.floor(max) + ". Correct or remove the row.");
    }

    private static String where(Cgats table, int row, int column, String file) {
        return file + ", " + table.place(row) + ", " + table.fields().get(column);
    }

    /**
     * The colours alone, for tables of named samples. Where the file states that its Lab or X, Y, Z are for another illuminant or
     * observer, its spectra are taken.
     *
     * @return absolute Lab, one per row
     * @throws Refusal naming the file and the column
     */
    public static List<Lab> colours(Cgats table, String file) throws Refusal {
        int[] lab = columns(table, "LAB_L", "LAB_A", "LAB_B");
        int[] xyz = columns(table, "XYZ_X", "XYZ_Y", "XYZ_Z");
        Optional<SpectralColumns> spectra = SpectralColumns.find(table);
        String other = lab == null && xyz == null ? "" : otherThanD50(table);
        if (spectra.isPresent() && (lab == null && xyz == null || !other.isEmpty())) {
            return spectra.get().colours(table, file);
        }
        if (!other.isEmpty()) {
            throw new Refusal(file + ", " + other + ": Lab and X, Y, Z are needed for D50 and 2 degrees, or spectra."
                    + " Export the file again for these.");
        }
        if (lab == null && xyz == null) {
            throw new Refusal(file
                    + " has neither LAB_L, LAB_A, LAB_B nor XYZ_X, XYZ_Y, XYZ_Z nor spectral columns; it has "
                    + table.fields() + ". Export it again with Lab values.");
        }
        double white = xyz != null && most(table, xyz, 200, file) <= 1.5 ? 1 : 100;
        List<Lab> out = new ArrayList<>();
        for (int i = 0; i < table.rows().size(); i++) {
            Lab colour = lab == null ? ofXyz(table, i, xyz, white, file) : ofLab(table, i, lab, file);
            if (lab != null && xyz != null) {
                double apart = Cie.deltaE00(colour, ofXyz(table, i, xyz, white, file));
                if (apart > MOST_CONTRADICTION_DE00) {
                    throw new Refusal(file + ", " + table.place(i) + ": LAB_L, LAB_A, LAB_B and XYZ_X, XYZ_Y, XYZ_Z"
                            + " differ by dE00 " + Math.round(apart)
                            + "; they must be of one colour, for D50. Export the file again, or remove one of them.");
                }
            }
            out.add(colour);
        }
        return out;
    }

    /** @return the keyword and value by which the colours are for another illuminant than D50 or not for 2 degrees; or empty */
    private static String otherThanD50(Cgats table) {
        String illuminant = first(table, "D50", "ILLUMINANT");
        if (!illuminant.toUpperCase(Locale.ROOT).contains("D50")) {
            return "ILLUMINANT " + illuminant;
        }
        String observer = first(table, "2", "OBSERVER");
        return observer.contains("10") ? "OBSERVER " + observer : "";
    }

    private static Lab mean(List<Lab> colours, List<Integer> rows) {
        List<Lab> labs = rows.stream().map(colours::get).toList();
        int n = rows.size();
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
