package inkground.plate;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Reads a colour as a mixture of two or three others: the soft edge between flat areas. Mixtures are linear in the components
 * given, as programs that draw soft edges compute them. Thread-safe.
 */
final class Unmixing {
    /** Largest distance from an exact mixture, of components 0 to 1: rounding, and slight noise of compression. */
    private static final double TOLERANCE = 6 / 255.0;

    private static final double INSIDE = -0.5 / 255; // weights below are no mixture
    private static final int MOST_KEPT = 1 << 16;
    private static final int MOST_COLOURS = 16; // triples grow with the cube
    private static final Mixture NONE = new Mixture(new int[0], new double[0]);

    private final double[][] colours;
    private final boolean[] sought;
    private final Map<Integer, Mixture> known = new ConcurrentHashMap<>();

    /**
     * Shares of colours that add up to 1.
     *
     * @param ends indices of colours
     * @param weights share of each
     */
    record Mixture(int[] ends, double[] weights) {}

    /**
     * @param colours components, 0 to 1, at most four of them; those beyond the first few are left out
     * @param sought which of them matter: others are not looked for among themselves
     */
    Unmixing(double[][] colours, boolean[] sought) {
        this.colours = java.util.Arrays.copyOf(colours, Math.min(colours.length, MOST_COLOURS));
        this.sought = sought;
    }

    /** @return the mixture that a colour is, or null for none */
    Mixture of(double[] c) {
        int key = 0;
        for (double v : c) {
            key = key << 8 | byteOf(v);
        }
        Mixture mixture = known.get(key);
        if (mixture == null) {
            mixture = solve(c);
            if (known.size() < MOST_KEPT) {
                known.put(key, mixture);
            }
        }
        return mixture == NONE ? null : mixture;
    }

    private static int byteOf(double v) {
        return (int) Math.max(0, Math.min(255, Math.rint(255 * v)));
    }

    /** The nearest mixture of two; of three only where no two will do. */
    private Mixture solve(double[] c) {
        Mixture best = NONE;
        double nearest = TOLERANCE;
        for (int i = 0; i < colours.length; i++) {
            for (int j = i + 1; j < colours.length; j++) {
                if (!sought[i] && !sought[j]) {
                    continue;
                }
                double[] a = colours[i];
                double[] ab = minus(colours[j], a);
                double square = dot(ab, ab);
                double t = square == 0 ? 0 : Math.max(0, Math.min(1, dot(minus(c, a), ab) / square));
                double distance = distance(c, a, ab, t, ab, 0);
                if (distance < nearest) {
                    nearest = distance;
                    best = new Mixture(new int[] {i, j}, new double[] {1 - t, t});
                }
            }
        }
        return best == NONE ? ofThree(c) : best;
    }

    private Mixture ofThree(double[] c) {
        Mixture best = NONE;
        double nearest = TOLERANCE;
        for (int i = 0; i < colours.length; i++) {
            for (int j = i + 1; j < colours.length; j++) {
                for (int k = j + 1; k < colours.length; k++) {
                    if (!sought[i] && !sought[j] && !sought[k]) {
                        continue;
                    }
                    double[] ab = minus(colours[j], colours[i]);
                    double[] ac = minus(colours[k], colours[i]);
                    double[] ap = minus(c, colours[i]);
                    double det = dot(ab, ab) * dot(ac, ac) - dot(ab, ac) * dot(ab, ac);
                    double u = (dot(ap, ab) * dot(ac, ac) - dot(ap, ac) * dot(ab, ac)) / det;
                    double v = (dot(ap, ac) * dot(ab, ab) - dot(ap, ab) * dot(ab, ac)) / det;
                    boolean inside = det > 1e-9 && u >= INSIDE && v >= INSIDE && 1 - u - v >= INSIDE;
                    double distance = inside ? distance(c, colours[i], ab, u, ac, v) : TOLERANCE;
                    if (distance < nearest) {
                        nearest = distance;
                        best = new Mixture(new int[] {i, j, k}, new double[] {1 - u - v, u, v});
                    }
                }
            }
        }
        return best;
    }

    private static double distance(double[] c, double[] from, double[] ab, double u, double[] ac, double v) {
        double sum = 0;
        for (int i = 0; i < c.length; i++) {
            double d = c[i] - from[i] - u * ab[i] - v * ac[i];
            sum += d * d;
        }
        return Math.sqrt(sum);
    }

    private static double[] minus(double[] a, double[] b) {
        double[] out = new double[a.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = a[i] - b[i];
        }
        return out;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
