package inkground.colour;

import inkground.base.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The spectral columns of a characterisation table: names that end in a wavelength in nm, as real files have them (SPECTRAL_NM400,
 * SPECTRAL_400, SPEC_400, NM400, R_400), evenly spaced. Values are factors, or per cents if any is above 3.
 *
 * @param columns indices, shortest wavelength first
 * @param startNm of the first
 * @param stepNm between them
 */
record SpectralColumns(int[] columns, double startNm, double stepNm) {
    private static final Pattern NAME = Pattern.compile("(?:SPECTRAL_NM_?|SPECTRAL_|SPEC_|NM_?|R_)(\\d{3})");
    private static final int LEAST_COLUMNS = 16;
    private static final double MOST_FACTOR = 3;

    /** @return the columns, if there are enough, evenly spaced, over the visible range */
    static Optional<SpectralColumns> find(Cgats table) {
        TreeMap<Integer, Integer> byNm = new TreeMap<>();
        for (int i = 0; i < table.fields().size(); i++) {
            Matcher matcher = NAME.matcher(table.fields().get(i));
            if (matcher.matches()) {
                byNm.putIfAbsent(Integer.parseInt(matcher.group(1)), i);
            }
        }
        if (byNm.size() < LEAST_COLUMNS || byNm.firstKey() > 420 || byNm.lastKey() < 680) {
            return Optional.empty();
        }
        int step = (byNm.lastKey() - byNm.firstKey()) / (byNm.size() - 1);
        int expected = byNm.firstKey();
        for (Map.Entry<Integer, Integer> entry : byNm.entrySet()) {
            if (entry.getKey() != expected) {
                return Optional.empty();
            }
            expected += step;
        }
        int[] columns = byNm.values().stream().mapToInt(Integer::intValue).toArray();
        return Optional.of(new SpectralColumns(columns, byNm.firstKey(), step));
    }

    /** @return absolute Lab, one per row */
    List<Lab> colours(Cgats table, String file) throws Refusal {
        List<double[]> spectra = new ArrayList<>();
        double most = 0;
        for (int row = 0; row < table.rows().size(); row++) {
            double[] values = new double[columns.length];
            for (int i = 0; i < values.length; i++) {
                values[i] = Characterisation.number(table, row, columns[i], -5, 300, file);
                most = Math.max(most, values[i]);
            }
            spectra.add(values);
        }
        double unit = most > MOST_FACTOR ? 100 : 1;
        List<Lab> out = new ArrayList<>();
        for (double[] values : spectra) {
            for (int i = 0; i < values.length; i++) {
                values[i] = Math.max(0, values[i] / unit);
            }
            out.add(Spectra.toLab(Spectra.resample(startNm, stepNm, values)));
        }
        return out;
    }
}
