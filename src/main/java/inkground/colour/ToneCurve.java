package inkground.colour;

/**
 * A smooth curve through points that adds no bumps of its own: piecewise cubic Hermite with limited slopes [FRITSCH1980],
 * tabled once. Immutable.
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>range</th></tr>
 * <tr><td>tint</td><td>0 to 1, clipped</td></tr>
 * <tr><td>value</td><td>any; that of the points where they are met</td></tr>
 * </table>
 *
 * <p>Example: through (0, 0), (0.5, 0.7), (1, 1) the value at 0.5 is 0.7 and nowhere falls.
 */
public final class ToneCurve {
    private static final int STEPS = 1000;

    private final float[] table = new float[STEPS + 2];

    /**
     * @param x rising, from 0 to 1, at least two
     * @param y value at each x
     */
    public ToneCurve(double[] x, double[] y) {
        double[] slopes = slopes(x, y);
        int k = 0;
        for (int i = 0; i <= STEPS; i++) {
            double at = (double) i / STEPS;
            while (k < x.length - 2 && at > x[k + 1]) {
                k++;
            }
            table[i] = (float) hermite(x, y, slopes, k, at);
        }
        table[STEPS + 1] = table[STEPS];
    }

    /** @return value at {@code x}, clipped to 0 to 1 */
    public double at(double x) {
        double place = x <= 0 ? 0 : x >= 1 ? STEPS : x * STEPS;
        int i = (int) place;
        double low = table[i];
        return low + (place - i) * (table[i + 1] - low);
    }

    private static double hermite(double[] x, double[] y, double[] slopes, int k, double at) {
        double h = x[k + 1] - x[k];
        double t = (at - x[k]) / h;
        double u = 1 - t;
        return u * u * (1 + 2 * t) * y[k]
                + t * t * (3 - 2 * t) * y[k + 1]
                + h * t * u * u * slopes[k]
                - h * t * t * u * slopes[k + 1];
    }

    private static double[] slopes(double[] x, double[] y) {
        int n = x.length;
        double[] secant = new double[n - 1];
        for (int i = 0; i < n - 1; i++) {
            secant[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
        }
        double[] out = new double[n];
        if (n == 2) {
            out[0] = secant[0];
            out[1] = secant[0];
            return out;
        }
        for (int i = 1; i < n - 1; i++) {
            out[i] = inner(x[i] - x[i - 1], x[i + 1] - x[i], secant[i - 1], secant[i]);
        }
        out[0] = end(x[1] - x[0], x[2] - x[1], secant[0], secant[1]);
        out[n - 1] = end(x[n - 1] - x[n - 2], x[n - 2] - x[n - 3], secant[n - 2], secant[n - 3]);
        return out;
    }

    private static double inner(double before, double after, double left, double right) {
        if (left * right <= 0) {
            return 0;
        }
        double w1 = 2 * after + before;
        double w2 = after + 2 * before;
        return (w1 + w2) / (w1 / left + w2 / right);
    }

    private static double end(double near, double far, double nearSecant, double farSecant) {
        double slope = ((2 * near + far) * nearSecant - near * farSecant) / (near + far);
        if (slope * nearSecant <= 0) {
            return 0;
        }
        boolean turns = nearSecant * farSecant <= 0;
        return turns && Math.abs(slope) > 3 * Math.abs(nearSecant) ? 3 * nearSecant : slope;
    }
}
