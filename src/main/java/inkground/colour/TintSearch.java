package inkground.colour;

/**
 * Damped least squares (Levenberg–Marquardt, [MARQUARDT1963]) on tints between 0 and 1, for the way from colours back to inks. The
 * errors are in units of ΔE: the search ends when they cannot be told from none, or hardly fall any more. Confined to a thread.
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>range</th></tr>
 * <tr><td>tints</td><td>0 to 1, clipped</td></tr>
 * <tr><td>errors</td><td>ΔE or a pull in its unit, any sign</td></tr>
 * </table>
 *
 * <p>Example: with the one error {@code 100 (t − 0.3)} the search for t from 0 ends at 0.3; with {@code 100 (t + 0.3)}, at the bound
 * 0.
 */
public final class TintSearch {
    private static final int MAX_STEPS = 40;
    // Squared ΔE that cannot be told from none.
    private static final double EXACT = 1e-4;
    // Of a tint, for slopes.
    private static final double STEP = 1e-4;

    private final int n;
    private final int rows;
    private final Errors errors;
    private final double[] jacobian;
    private final double[] now;
    private final double[] then;
    private final double[] trial;
    private final double[] gradient;
    private final double[] normal;

    /** What is to become small. */
    @FunctionalInterface
    public interface Errors {
        /**
         * @param tints one per unknown, 0 to 1; not to be changed or kept
         * @param out receives the errors
         */
        void of(double[] tints, double[] out);
    }

    /**
     * @param tints number of unknowns, at least 1
     * @param rows number of errors, at least 1
     * @param errors of any tints
     */
    public TintSearch(int tints, int rows, Errors errors) {
        this.n = tints;
        this.rows = rows;
        this.errors = errors;
        this.jacobian = new double[rows * n];
        this.now = new double[rows];
        this.then = new double[rows];
        this.trial = new double[n];
        this.gradient = new double[n];
        this.normal = new double[n * n];
    }

    /**
     * Improves tints.
     *
     * @param tints where the search begins, 0 to 1; changed to where it ends
     * @param free how many of them, from the first, may change
     * @return sum of the squared errors that are left
     */
    public double minimise(double[] tints, int free) {
        double cost = cost(tints, now);
        double damping = 1e-2;
        boolean fresh = true;
        for (int i = 0; i < MAX_STEPS; i++) {
            if (fresh) {
                slopes(tints);
            }
            double moved = step(tints, free, damping);
            double trialCost = cost(trial, then);
            fresh = trialCost < cost;
            if (fresh) {
                boolean done = trialCost < EXACT || cost - trialCost < 1e-9 + 1e-5 * cost || moved < 1e-5;
                System.arraycopy(trial, 0, tints, 0, n);
                System.arraycopy(then, 0, now, 0, rows);
                cost = trialCost;
                damping = Math.max(1e-7, damping * 0.2);
                if (done) {
                    break;
                }
            } else {
                damping *= 6;
                if (damping > 1e8) {
                    break;
                }
            }
        }
        return cost;
    }

    private double cost(double[] tints, double[] out) {
        errors.of(tints, out);
        double sum = 0;
        for (double e : out) {
            sum += e * e;
        }
        return sum;
    }

    private void slopes(double[] tints) {
        for (int i = 0; i < n; i++) {
            double keep = tints[i];
            double h = keep > 0.5 ? -STEP : STEP;
            tints[i] = keep + h;
            errors.of(tints, then);
            tints[i] = keep;
            for (int r = 0; r < rows; r++) {
                jacobian[r * n + i] = (then[r] - now[r]) / h;
            }
        }
    }

    // Solves the damped normal equations over the tints that are not held at a bound they push against.
    private double step(double[] tints, int free, double damping) {
        java.util.Arrays.fill(gradient, 0);
        java.util.Arrays.fill(normal, 0);
        for (int a = 0; a < n; a++) {
            for (int r = 0; r < rows; r++) {
                gradient[a] += jacobian[r * n + a] * now[r];
                for (int b = 0; b < n; b++) {
                    normal[a * n + b] += jacobian[r * n + a] * jacobian[r * n + b];
                }
            }
        }
        for (int a = 0; a < n; a++) {
            boolean held = a >= free || tints[a] <= 0 && gradient[a] > 0 || tints[a] >= 1 && gradient[a] < 0;
            int diagonal = a * (n + 1);
            if (held) {
                gradient[a] = 0;
                for (int b = 0; b < n; b++) {
                    normal[a * n + b] = 0;
                    normal[b * n + a] = 0;
                }
                normal[diagonal] = 1;
            } else {
                normal[diagonal] += damping * (normal[diagonal] + 1);
            }
        }
        solve(normal, gradient, n);
        double moved = 0;
        for (int a = 0; a < n; a++) {
            trial[a] = Math.max(0, Math.min(1, tints[a] - gradient[a]));
            moved = Math.max(moved, Math.abs(trial[a] - tints[a]));
        }
        return moved;
    }

    // Cholesky factorisation of a positive definite matrix; the solution takes the place of the right side.
    private static void solve(double[] m, double[] x, int n) {
        for (int c = 0; c < n; c++) {
            double d = m[c * n + c];
            for (int k = 0; k < c; k++) {
                d -= m[c * n + k] * m[c * n + k];
            }
            d = Math.sqrt(Math.max(d, 1e-12));
            m[c * n + c] = d;
            for (int r = c + 1; r < n; r++) {
                double v = m[r * n + c];
                for (int k = 0; k < c; k++) {
                    v -= m[r * n + k] * m[c * n + k];
                }
                m[r * n + c] = v / d;
            }
        }
        for (int r = 0; r < n; r++) {
            for (int k = 0; k < r; k++) {
                x[r] -= m[r * n + k] * x[k];
            }
            x[r] /= m[r * n + r];
        }
        for (int r = n - 1; r >= 0; r--) {
            for (int k = r + 1; k < n; k++) {
                x[r] -= m[k * n + r] * x[k];
            }
            x[r] /= m[r * n + r];
        }
    }
}
