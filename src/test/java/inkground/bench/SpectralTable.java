package inkground.bench;

import inkground.base.Refusal;
import inkground.colour.Bands;
import inkground.colour.Cgats;
import inkground.colour.Characterisation;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.PrintConditions;
import inkground.colour.Spectra;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;

/**
 * Two published ways from Lab to a spectrum beside the program's three bands, where the truth is known: the light that two or three
 * filters over one another let through. A filter's colour becomes a spectrum (or bands), these are multiplied, and the product's colour
 * is compared. On characterisation data the filters are solids relative to their paper, and the truth is the measured overprint; on
 * published spectra, which are also compared as spectra, it is the product of the spectra themselves.
 *
 * <p>Run it to print the table; {@code SpectralTableTest} compares it with the committed one.
 */
public final class SpectralTable {
    private static final int[][] OVERPRINTS = {{0, 1}, {0, 2}, {1, 2}, {0, 1, 2}, {0, 3}, {1, 3}, {2, 3}};
    private static final String BANDS = "the program's three bands";

    private SpectralTable() {}

    /** @param args none, or characterisation files of four inks to add to the bundled ones */
    public static void main(String[] args) throws Refusal, IOException {
        List<String> lines = new ArrayList<>(lines());
        for (String file : args) {
            lines.addAll(overprints(PrintConditions.findData(file)));
        }
        lines.forEach(System.out::println);
    }

    /** @return the table of the data that comes with the project */
    static List<String> lines() throws Refusal, IOException {
        List<String> out = new ArrayList<>();
        for (String name : PrintConditions.BUNDLED) {
            out.addAll(overprints(PrintConditions.bundledData(name)));
        }
        out.addAll(publishedSpectra());
        return out;
    }

    private static Map<String, Function<Lab, double[]>> ways() {
        Map<String, Function<Lab, double[]>> out = new LinkedHashMap<>();
        out.put("smoothest (Burns 2020)", SpectrumFromLab.SMOOTHEST::of);
        out.put("sigmoid (Jakob, Hanika 2019)", SpectrumFromLab.SIGMOID::of);
        out.put(BANDS, SpectralTable::bands);
        return out;
    }

    private static List<String> overprints(Characterisation data) {
        List<String> out = new ArrayList<>();
        double[] paper = Cie.labToXyz(data.find(0, 0, 0, 0));
        ways().forEach((name, way) -> {
            double[][] solids = new double[4][];
            for (int i = 0; i < 4; i++) {
                solids[i] = way.apply(relative(data, paper, i));
            }
            double[] missed = Arrays.stream(OVERPRINTS)
                    .mapToDouble(inks -> {
                        double[] product = product(solids, inks);
                        Lab predicted = name.equals(BANDS) ? fromBands(product) : Spectra.toLab(product);
                        return Cie.deltaE00(times(predicted, paper), data.find(tints(inks)));
                    })
                    .toArray();
            out.add(data.name() + ", " + name + ": " + differences(missed, "overprints"));
        });
        return out;
    }

    private static Lab relative(Characterisation data, double[] paper, int ink) {
        double[] xyz = Cie.labToXyz(data.find(tints(ink)));
        return Cie.xyzToLab(xyz[0] / paper[0] * Cie.D50_X, xyz[1] / paper[1], xyz[2] / paper[2] * Cie.D50_Z);
    }

    private static Lab times(Lab relative, double[] paper) {
        double[] xyz = Cie.labToXyz(relative);
        return Cie.xyzToLab(xyz[0] * paper[0] / Cie.D50_X, xyz[1] * paper[1], xyz[2] * paper[2] / Cie.D50_Z);
    }

    private static double[] tints(int... inks) {
        double[] out = new double[4];
        for (int ink : inks) {
            out[ink] = 1;
        }
        return out;
    }

    private static List<String> publishedSpectra() throws Refusal, IOException {
        List<double[]> spectra = samples();
        List<String> out = new ArrayList<>();
        ways().forEach((name, way) -> {
            double[][] found =
                    spectra.stream().map(s -> way.apply(Spectra.toLab(s))).toArray(double[][]::new);
            double[][] real = spectra.toArray(double[][]::new);
            List<Double> missed = new ArrayList<>();
            for (int i = 0; i < real.length; i++) {
                for (int j = i + 1; j < real.length; j++) {
                    double[] product = product(found, i, j);
                    Lab predicted = name.equals(BANDS) ? fromBands(product) : Spectra.toLab(product);
                    missed.add(Cie.deltaE00(predicted, Spectra.toLab(product(real, i, j))));
                }
            }
            String line = "CIE 13.3, " + name + ": "
                    + differences(missed.stream().mapToDouble(d -> d).toArray(), "pairs");
            out.add(name.equals(BANDS) ? line : line + "; " + spectral(found, real));
        });
        return out;
    }

    private static String spectral(double[][] found, double[][] real) {
        double all = 0;
        double most = 0;
        for (int s = 0; s < real.length; s++) {
            double sum = 0;
            for (int i = 0; i < Spectra.BANDS; i++) {
                sum += Math.pow(found[s][i] - real[s][i], 2);
            }
            all += sum;
            most = Math.max(most, Math.sqrt(sum / Spectra.BANDS));
        }
        return String.format(
                Locale.ROOT,
                "spectral error rms %.4f, largest of a sample %.4f",
                Math.sqrt(all / real.length / Spectra.BANDS),
                most);
    }

    /** @return published spectra, {@link Spectra#BANDS} values each */
    static List<double[]> samples() throws Refusal, IOException {
        String file = "cie-13.3-samples.txt";
        try (InputStream in = SpectralTable.class.getResourceAsStream(file)) {
            Cgats table = Cgats.parse(new String(in.readAllBytes(), StandardCharsets.UTF_8), file);
            return table.rows().stream()
                    .map(row -> row.stream()
                            .skip(1)
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toList();
        }
    }

    private static double[] product(double[][] filters, int... of) {
        double[] out = filters[of[0]].clone();
        for (int k = 1; k < of.length; k++) {
            for (int i = 0; i < out.length; i++) {
                out[i] *= filters[of[k]][i];
            }
        }
        return out;
    }

    private static double[] bands(Lab lab) {
        double[] out = new double[3];
        Bands.STANDARD.fromXyz(Cie.labToXyz(lab), out);
        return Arrays.stream(out).map(v -> Math.max(0, v)).toArray();
    }

    private static Lab fromBands(double[] bands) {
        double[] xyz = new double[3];
        Bands.STANDARD.toXyz(bands, xyz);
        return Cie.xyzToLab(Math.max(0, xyz[0]), Math.max(0, xyz[1]), Math.max(0, xyz[2]));
    }

    private static String differences(double[] missed, String of) {
        return String.format(
                Locale.ROOT,
                "dE00 mean %.2f, largest %.2f of %d %s",
                Arrays.stream(missed).average().orElseThrow(),
                Arrays.stream(missed).max().orElseThrow(),
                missed.length,
                of);
    }
}
