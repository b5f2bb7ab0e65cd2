package inkground.colour;

import inkground.colour.Characterisation.Patch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * What a model misses of its data, kept at the data's own grid and interpolated between: for each tint of black a full grid
 * of cyan × magenta × yellow with levels of its own, as ISO 12642-2 targets have. The correction is linear between nodes and
 * between tints of black, and is added in the model's 1/n domain. Immutable.
 */
final class ResidualGrid {
    private final double[] blackLevels;
    private final Plane[] planes;

    /** One tint of black: rising levels, equal for the three inks, and three residuals per node. */
    private record Plane(double[] levels, double[] residuals) {}

    private ResidualGrid(double[] blackLevels, Plane[] planes) {
        this.blackLevels = blackLevels;
        this.planes = planes;
    }

    /** @return the grid of a four-ink characterisation; empty of correction where the data has no grid */
    static ResidualGrid of(Characterisation data, NeugebauerModel model) {
        Map<List<Double>, double[]> residuals = new HashMap<>();
        data.known().forEach(p -> residuals.put(key(p.tints()), residual(p, model)));
        TreeSet<Double> blacks = new TreeSet<>();
        data.known().forEach(p -> blacks.add(p.tints()[3]));
        List<Double> levels = new ArrayList<>();
        List<Plane> planes = new ArrayList<>();
        for (double black : blacks) {
            double[] full = fullLevels(data, black, residuals);
            if (full.length >= 2) {
                levels.add(black);
                planes.add(plane(full, black, residuals));
            }
        }
        return new ResidualGrid(
                levels.stream().mapToDouble(Double::doubleValue).toArray(), planes.toArray(Plane[]::new));
    }

    private static double[] residual(Patch patch, NeugebauerModel model) {
        double[] measured = new double[3];
        double[] predicted = new double[3];
        model.bands().compress(Cie.labToXyz(patch.lab()), measured, 0);
        model.toCompressed(patch.tints(), predicted);
        for (int b = 0; b < 3; b++) {
            measured[b] -= predicted[b];
        }
        return measured;
    }

    private static List<Double> key(double... tints) {
        return Arrays.stream(tints).boxed().toList();
    }

    // The levels whose full cube was measured: begins with all and drops the level with most gaps until there are none.
    private static double[] fullLevels(Characterisation data, double black, Map<List<Double>, double[]> known) {
        TreeSet<Double> levels = new TreeSet<>();
        data.known().filter(p -> p.tints()[3] == black).forEach(p -> {
            double t = p.tints()[0];
            if (known.containsKey(key(t, t, t, black))) {
                levels.add(t);
            }
        });
        while (levels.size() >= 2) {
            double worst = worst(levels, black, known);
            if (worst < 0) {
                break;
            }
            levels.remove(worst);
        }
        boolean whole = levels.contains(0.0) && levels.contains(1.0);
        return whole ? levels.stream().mapToDouble(Double::doubleValue).toArray() : new double[0];
    }

    private static double worst(TreeSet<Double> levels, double black, Map<List<Double>, double[]> known) {
        double worst = -1;
        int most = 0;
        for (double c : levels) {
            int gaps = 0;
            for (double m : levels) {
                for (double y : levels) {
                    gaps += known.containsKey(key(c, m, y, black)) ? 0 : 1;
                    gaps += known.containsKey(key(m, c, y, black)) ? 0 : 1;
                    gaps += known.containsKey(key(m, y, c, black)) ? 0 : 1;
                }
            }
            if (gaps > most) {
                most = gaps;
                worst = c;
            }
        }
        return worst;
    }

    private static Plane plane(double[] levels, double black, Map<List<Double>, double[]> known) {
        int n = levels.length;
        double[] out = new double[n * n * n * 3];
        int at = 0;
        for (double c : levels) {
            for (double m : levels) {
                for (double y : levels) {
                    System.arraycopy(known.get(key(c, m, y, black)), 0, out, at, 3);
                    at += 3;
                }
            }
        }
        return new Plane(levels, out);
    }

    /** Adds the correction at four tints, 0 to 1, to three bands. */
    void correct(double[] tints, double[] bands) {
        if (planes.length == 0) {
            return;
        }
        int k = segment(blackLevels, tints[3]);
        if (planes.length == 1) {
            add(planes[0], tints, 1, bands);
            return;
        }
        double t = fraction(blackLevels, k, tints[3]);
        if (t < 1) {
            add(planes[k], tints, 1 - t, bands);
        }
        if (t > 0) {
            add(planes[k + 1], tints, t, bands);
        }
    }

    private static void add(Plane plane, double[] tints, double weight, double[] bands) {
        double[] levels = plane.levels;
        int n = levels.length;
        int c = segment(levels, tints[0]);
        int m = segment(levels, tints[1]);
        int y = segment(levels, tints[2]);
        double fc = fraction(levels, c, tints[0]);
        double fm = fraction(levels, m, tints[1]);
        double fy = fraction(levels, y, tints[2]);
        for (int corner = 0; corner < 8; corner++) {
            int dc = corner >> 2;
            int dm = corner >> 1 & 1;
            int dy = corner & 1;
            double w = weight * (dc == 0 ? 1 - fc : fc) * (dm == 0 ? 1 - fm : fm) * (dy == 0 ? 1 - fy : fy);
            if (w != 0) {
                int at = (((c + dc) * n + m + dm) * n + y + dy) * 3;
                bands[0] += w * plane.residuals[at];
                bands[1] += w * plane.residuals[at + 1];
                bands[2] += w * plane.residuals[at + 2];
            }
        }
    }

    private static int segment(double[] levels, double value) {
        int i = 0;
        while (i < levels.length - 2 && value >= levels[i + 1]) {
            i++;
        }
        return i;
    }

    private static double fraction(double[] levels, int i, double value) {
        double t = (value - levels[i]) / (levels[i + 1] - levels[i]);
        return t <= 0 ? 0 : t >= 1 ? 1 : t;
    }
}
