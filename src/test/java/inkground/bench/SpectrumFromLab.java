package inkground.bench;

import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Spectra;
import java.util.Arrays;

/**
 * Two published ways from a colour to a reflectance spectrum that has it, for D50 and 2°.
 *
 * <p>References: S. A. Burns, "Numerical methods for smoothest reflectance reconstruction", Color Res. Appl. 45 (2020); W. Jakob and J.
 * Hanika, "A low-dimensional function space for efficient spectral upsampling", Computer Graphics Forum 38 (2019).
 */
enum SpectrumFromLab {
    /** The smoothest in the hyperbolic tangent: least squared steps of z, where the reflectance is (tanh z + 1) / 2. */
    SMOOTHEST {
        @Override
        double[] of(Lab lab) {
            double[] wanted = Cie.labToXyz(lab);
            double[] unknowns = new double[N + 3]; // z, then three multipliers
            for (int step = 0; step < 200; step++) {
                double[][] rows = equations(unknowns, wanted);
                double worst = Arrays.stream(rows)
                        .mapToDouble(r -> Math.abs(r[N + 3]))
                        .max()
                        .orElseThrow();
                if (worst < 1e-10) {
                    break;
                }
                double[] change = solve(rows);
                double most = 0;
                for (int i = 0; i < N; i++) {
                    most = Math.max(most, Math.abs(change[i]));
                }
                for (int i = 0; i < unknowns.length; i++) {
                    unknowns[i] += change[i] / Math.max(1, most); // Newton's step, held where it would leap
                }
            }
            double[] out = new double[N];
            Arrays.setAll(out, i -> (Math.tanh(unknowns[i]) + 1) / 2);
            return out;
        }

        // Newton's equations of the least steps under three conditions; the right side, negative, is the last column.
        private double[][] equations(double[] u, double[] wanted) {
            double[][] rows = new double[N + 3][N + 4];
            double[] found = new double[3];
            for (int i = 0; i < N; i++) {
                double t = Math.tanh(u[i]);
                double slope = (1 - t * t) / 2;
                double pull = 0;
                for (int c = 0; c < 3; c++) {
                    pull += EYE[c][i] * u[N + c];
                    rows[i][N + c] = slope * EYE[c][i];
                    rows[N + c][i] = slope * EYE[c][i];
                    found[c] += EYE[c][i] * (t + 1) / 2;
                }
                double steps = 0;
                for (int beside : new int[] {i - 1, i + 1}) {
                    if (beside >= 0 && beside < N) {
                        rows[i][i] += 2;
                        rows[i][beside] -= 2;
                        steps += 2 * (u[i] - u[beside]);
                    }
                }
                rows[i][i] -= 2 * t * slope * pull;
                rows[i][N + 3] = -(steps + slope * pull);
            }
            for (int c = 0; c < 3; c++) {
                rows[N + c][N + 3] = wanted[c] - found[c];
            }
            return rows;
        }
    },

    /** A sigmoid of a parabola over the wavelength: three numbers, found by damped least squares on L*, a*, b*. */
    SIGMOID {
        @Override
        double[] of(Lab lab) {
            double[] best = null;
            double least = Double.MAX_VALUE;
            for (double[] start : new double[][] {{0, 0, 0}, {1, 1, 0}, {1, -1, 0}, {-1, 0, 0}}) {
                double[] found = search(start, lab);
                double missed = Cie.deltaE76(Spectra.toLab(curve(found)), lab);
                if (missed < least) {
                    least = missed;
                    best = found;
                }
            }
            return curve(best);
        }

        private double[] search(double[] start, Lab lab) {
            double[] at = start.clone();
            double damping = 1e-3;
            for (int step = 0; step < 400; step++) {
                double[] missed = missed(at, lab);
                double[][] slopes = new double[3][];
                for (int k = 0; k < 3; k++) {
                    double[] beside = at.clone();
                    beside[k] += 1e-6;
                    double[] there = missed(beside, lab);
                    slopes[k] = new double[3];
                    for (int c = 0; c < 3; c++) {
                        slopes[k][c] = (there[c] - missed[c]) / 1e-6;
                    }
                }
                double[][] rows = new double[3][4];
                for (int k = 0; k < 3; k++) {
                    for (int l = 0; l < 3; l++) {
                        rows[k][l] = dot(slopes[k], slopes[l]) * (k == l ? 1 + damping : 1);
                    }
                    rows[k][k] += 1e-12;
                    rows[k][3] = -dot(slopes[k], missed);
                }
                double[] change = solve(rows);
                double[] next = {at[0] + change[0], at[1] + change[1], at[2] + change[2]};
                double[] then = missed(next, lab);
                boolean better = dot(then, then) < dot(missed, missed);
                damping = better ? damping / 5 : damping * 5;
                at = better ? next : at;
            }
            return at;
        }

        private double[] missed(double[] at, Lab lab) {
            Lab found = Spectra.toLab(curve(at));
            return new double[] {found.L() - lab.L(), found.a() - lab.a(), found.b() - lab.b()};
        }

        private double[] curve(double[] at) {
            double[] out = new double[N];
            for (int i = 0; i < N; i++) {
                double t = (Spectra.FIRST_NM + i * Spectra.STEP_NM - 555) / 175.0;
                double p = (at[0] * t + at[1]) * t + at[2];
                out[i] = 0.5 + p / (2 * Math.sqrt(1 + p * p));
            }
            return out;
        }
    };

    private static final int N = Spectra.BANDS;
    /** X, Y, Z of light reflected at one wavelength alone. */
    private static final double[][] EYE = eye();

    /** @return {@link Spectra#BANDS} reflectances, 0 to 1, whose colour it is; as near as the way comes where it has none */
    abstract double[] of(Lab lab);

    private static double[][] eye() {
        double[][] out = new double[3][N];
        for (int i = 0; i < N; i++) {
            double[] one = new double[N];
            one[i] = 1;
            double[] xyz = Cie.labToXyz(Spectra.toLab(one));
            for (int c = 0; c < 3; c++) {
                out[c][i] = xyz[c];
            }
        }
        return out;
    }

    private static double dot(double[] one, double[] other) {
        return one[0] * other[0] + one[1] * other[1] + one[2] * other[2];
    }

    /** Gauss's elimination with row exchange; the last column is the right side. */
    private static double[] solve(double[][] rows) {
        int n = rows.length;
        for (int k = 0; k < n; k++) {
            int pivot = k;
            for (int i = k + 1; i < n; i++) {
                pivot = Math.abs(rows[i][k]) > Math.abs(rows[pivot][k]) ? i : pivot;
            }
            double[] keep = rows[k];
            rows[k] = rows[pivot];
            rows[pivot] = keep;
            for (int i = k + 1; i < n; i++) {
                double factor = rows[i][k] / rows[k][k];
                for (int j = k; j <= n; j++) {
                    rows[i][j] -= factor * rows[k][j];
                }
            }
        }
        double[] out = new double[n];
        for (int i = n - 1; i >= 0; i--) {
            double sum = rows[i][n];
            for (int j = i + 1; j < n; j++) {
                sum -= rows[i][j] * out[j];
            }
            out[i] = sum / rows[i][i];
        }
        return out;
    }
}
