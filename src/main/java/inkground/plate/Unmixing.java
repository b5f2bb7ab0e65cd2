package inkground.plate;

import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourSpace;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Reads a colour of a picture as a mixture of two or three assigned colours: the soft edge between two areas. Mixtures are
 * taken to be linear in encoded sRGB, as programs that draw soft edges compute them. Thread-safe.
 */
final class Unmixing {
    /** Largest distance from an exact mixture, of encoded components 0 to 1: rounding, and slight noise of compression. */
    private static final double TOLERANCE = 6 / 255.0;

    private static final double INSIDE = -0.5 / 255; // weights below are no mixture
    private static final int MOST_KEPT = 1 << 16;
    private static final int MOST_COLOURS = 16; // triples grow with the cube
    private static final Mixture NONE = new Mixture(new int[0], new double[0]);

    private final ColourReader reader;
    private final double[][] colours;
    private final Map<Integer, Mixture> known = new ConcurrentHashMap<>();

    /**
     * Shares of rules that add up to 1.
     *
     * @param rules indices of rules
     * @param weights share of each
     */
    record Mixture(int[] rules, double[] weights) {}

    Unmixing(List<Rule> rules, AssignedColours assigned, ColourReader reader) {
        this.reader = reader;
        this.colours = rules.stream()
                .limit(MOST_COLOURS)
                .map(rule -> encoded(assigned.labOf(rule)))
                .toArray(double[][]::new);
    }

    /** @return the mixture that a colour is, or null for none */
    Mixture of(ColourSpace space, float[] components) {
        double[] c = space instanceof ColourSpace.DeviceRgb
                ? new double[] {components[0], components[1], components[2]}
                : encoded(reader.toLab(space, components));
        int key = byteOf(c[0]) << 16 | byteOf(c[1]) << 8 | byteOf(c[2]);
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

    private static double[] encoded(Lab lab) {
        double[] linear = new double[3];
        Srgb.xyzToLinear(Cie.labToXyz(lab), linear);
        for (int i = 0; i < 3; i++) {
            linear[i] = Srgb.encode(Math.max(0, linear[i]));
        }
        return linear;
    }

    /** The nearest mixture of two; of three only where no two will do. */
    private Mixture solve(double[] c) {
        Mixture best = NONE;
        double nearest = TOLERANCE;
        for (int i = 0; i < colours.length; i++) {
            for (int j = i + 1; j < colours.length; j++) {
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
        for (int i = 0; i < 3; i++) {
            double d = c[i] - from[i] - u * ab[i] - v * ac[i];
            sum += d * d;
        }
        return Math.sqrt(sum);
    }

    private static double[] minus(double[] a, double[] b) {
        return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }
}
