package inkground.colour;

/**
 * Three bands of light, each a mixture of X, Y, Z, with the Yule–Nielsen exponent of each [YULE1951]: a band value v is
 * mixed as v^(1/n). Scaled so that the D50 white is 1 in each band.
 */
public final class Bands {
    /**
     * The Bradford cone bands [ICC1] with n = 1.7 in all: of X, Y, Z, Bradford and wide-gamut RGB bands, and n from 1.3 to 3,
     * the one that predicts FOGRA39L best from its primaries and ramps.
     */
    public static final Bands STANDARD = new Bands(
            new double[] {0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296}, 1.7, 1.7, 1.7);

    // Saturated colours can leave a band with less than nothing; a root needs a floor.
    private static final double FLOOR = 1e-6;

    private final double[] fromXyz;
    private final double[] toXyz;
    private final double[] n;

    Bands(double[] matrix, double... n) {
        double[] white = new double[3];
        Cie.multiply(matrix, new double[] {Cie.D50_X, Cie.D50_Y, Cie.D50_Z}, white);
        this.fromXyz = matrix.clone();
        for (int i = 0; i < 9; i++) {
            fromXyz[i] /= white[i / 3];
        }
        this.toXyz = Cie.inverse(fromXyz);
        this.n = n.clone();
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
        double r = Math.pow(Math.max(0, compressed[0]), n[0]);
        double g = Math.pow(Math.max(0, compressed[1]), n[1]);
        double b = Math.pow(Math.max(0, compressed[2]), n[2]);
        double[] m = toXyz;
        xyz[0] = m[0] * r + m[1] * g + m[2] * b;
        xyz[1] = m[3] * r + m[4] * g + m[5] * b;
        xyz[2] = m[6] * r + m[7] * g + m[8] * b;
    }
}
