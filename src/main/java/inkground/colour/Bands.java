package inkground.colour;

/**
 * Three bands of light, each a mixture of X, Y, Z, with the Yule–Nielsen exponent of each [YULE1951]: a band value v is
 * mixed as v^(1/n). Scaled so that the D50 white is 1 in each band.
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>range</th></tr>
 * <tr><td>X, Y, Z</td><td>absolute, D50, Y = 1 for the perfect diffuser</td></tr>
 * <tr><td>linear bands</td><td>0 to 1; a little outside for saturated colours</td></tr>
 * <tr><td>n</td><td>1 (no spread of light) to 3</td></tr>
 * </table>
 *
 * <p>Example: the paper (95, 0, −2) has the bands 0.8722, 0.8780, 0.9027. Half paper, half a solid of (45, 60, 35) is (70.54, 28.89, 9.60).
 */
public final class Bands {
    /**
     * The bands of the project's models. The first is X without its blue lobe and a part of Y, the second Y with its red side cut
     * back, the third all but Z: narrower than X, Y and Z, so that inks multiply in them more nearly as they do at one
     * wavelength. The numbers were found by simplex search to predict FOGRA39L, TR006 and two output profiles from their
     * primaries and ramps, and rounded; see decision record 3.
     */
    public static final Bands STANDARD =
            new Bands(new double[] {1, -0.18, -0.12, -0.375, 1, 0.055, 0.055, -0.015, 1}, 1.95, 2.17, 2.02);

    // Saturated colours can leave a band with less than nothing; a root needs a floor.
    private static final double FLOOR = 1e-6;

    private final double[] fromXyz;
    private final double[] toXyz;
    private final double[] n;
    private final double[][] powers; // v^n at even steps, since every mixture ends in three powers

    private static final int POWER_STEPS = 4096;
    private static final double POWER_END = 1.25;

    Bands(double[] matrix, double... n) {
        double[] white = new double[3];
        Cie.multiply(matrix, Cie.D50, white);
        this.fromXyz = matrix.clone();
        for (int i = 0; i < 9; i++) {
            fromXyz[i] /= white[i / 3];
        }
        this.toXyz = Cie.inverse(fromXyz);
        this.n = n.clone();
        this.powers = new double[3][POWER_STEPS + 2];
        for (int b = 0; b < 3; b++) {
            for (int i = 0; i < POWER_STEPS + 2; i++) {
                powers[b][i] = Math.pow(i * POWER_END / POWER_STEPS, n[b]);
            }
        }
    }

    /** @return the Yule–Nielsen exponents, one per band, a copy */
    public double[] exponents() {
        return n.clone();
    }

    // Linear between table steps: the error is below 3e-8.
    private double power(double v, int band) {
        if (!(v > 0)) {
            return 0;
        }
        if (v >= POWER_END) {
            return Math.pow(v, n[band]);
        }
        double place = v * (POWER_STEPS / POWER_END);
        int i = (int) place;
        double low = powers[band][i];
        return low + (place - i) * (powers[band][i + 1] - low);
    }

    /** Writes the linear bands of X, Y, Z; the arrays may be the same. Saturated colours can be a little below 0. */
    public void fromXyz(double[] xyz, double[] bands) {
        multiply(fromXyz, xyz, bands);
    }

    /** The inverse of {@link #fromXyz}. */
    public void toXyz(double[] bands, double[] xyz) {
        multiply(toXyz, bands, xyz);
    }

    private static void multiply(double[] m, double[] in, double[] out) {
        double a = in[0];
        double b = in[1];
        double c = in[2];
        out[0] = m[0] * a + m[1] * b + m[2] * c;
        out[1] = m[3] * a + m[4] * b + m[5] * c;
        out[2] = m[6] * a + m[7] * b + m[8] * c;
    }

    /** Writes the bands of X, Y, Z to the power 1/n to three places of {@code out}. */
    void compress(double[] xyz, double[] out, int offset) {
        for (int b = 0; b < 3; b++) {
            double v = fromXyz[3 * b] * xyz[0] + fromXyz[3 * b + 1] * xyz[1] + fromXyz[3 * b + 2] * xyz[2];
            out[offset + b] = Math.pow(Math.max(FLOOR, v), 1 / n[b]);
        }
    }

    /** Writes X, Y, Z of bands to the power 1/n. */
    void expand(double[] compressed, double[] xyz) {
        double r = power(compressed[0], 0);
        double g = power(compressed[1], 1);
        double b = power(compressed[2], 2);
        double[] m = toXyz;
        xyz[0] = m[0] * r + m[1] * g + m[2] * b;
        xyz[1] = m[3] * r + m[4] * g + m[5] * b;
        xyz[2] = m[6] * r + m[7] * g + m[8] * b;
    }
}
