package inkground.colour;

/**
 * The display colour space sRGB [SRGB], reached from D50 by the linear Bradford adaptation, as ICC profiles do [ICC1].
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>range</th></tr>
 * <tr><td>encoded and linear red, green, blue</td><td>0 to 1 inside the display's gamut</td></tr>
 * <tr><td>X, Y, Z</td><td>for D50, white is 0.9642, 1, 0.8249</td></tr>
 * </table>
 */
public final class Srgb {
    // Columns are the primaries of IEC 61966-2-1 adapted from D65 (x 0.3127, y 0.3290) to D50.
    private static final double[] LINEAR_TO_XYZ = adaptedPrimaries();
    private static final double[] XYZ_TO_LINEAR = Cie.inverse(LINEAR_TO_XYZ);
    /** A linear value this far outside 0 to 1 still counts as shown: half a step of an 8-bit display near black. */
    private static final double TOLERANCE = 0.0005;

    private static final int ENCODE_STEPS = 1 << 14;
    private static final byte[] ENCODE = encodeTable();

    private Srgb() {}

    private static double[] adaptedPrimaries() {
        double[][] xy = {{0.64, 0.33}, {0.30, 0.60}, {0.15, 0.06}};
        double[] white = {0.3127 / 0.3290, 1, (1 - 0.3127 - 0.3290) / 0.3290};
        double[] m = new double[9];
        for (int i = 0; i < 3; i++) {
            m[i] = xy[i][0] / xy[i][1];
            m[3 + i] = 1;
            m[6 + i] = (1 - xy[i][0] - xy[i][1]) / xy[i][1];
        }
        double[] scale = new double[3];
        Cie.multiply(Cie.inverse(m), white, scale);
        double[] out = new double[9];
        for (int i = 0; i < 3; i++) {
            double[] primary = {m[i] * scale[i], m[3 + i] * scale[i], m[6 + i] * scale[i]};
            Cie.bradford(primary, white, Cie.D50);
            for (int r = 0; r < 3; r++) {
                out[3 * r + i] = primary[r];
            }
        }
        return out;
    }

    private static byte[] encodeTable() {
        byte[] table = new byte[ENCODE_STEPS + 1];
        for (int i = 0; i <= ENCODE_STEPS; i++) {
            table[i] = (byte) Math.round(255 * encode((double) i / ENCODE_STEPS));
        }
        return table;
    }

    /** @return the linear light of an encoded value. Example: {@code decode(0.5) = 0.2140}. */
    public static double decode(double encoded) {
        return encoded <= 0.04045 ? encoded / 12.92 : Math.pow((encoded + 0.055) / 1.055, 2.4);
    }

    /** @return the encoded value of linear light. Example: {@code encode(0.2140) = 0.5}. */
    public static double encode(double linear) {
        return linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
    }

    /** Writes linear red, green, blue of D50 X, Y, Z; outside 0 to 1 where the display cannot show it. */
    public static void xyzToLinear(double[] xyz, double[] rgb) {
        Cie.multiply(XYZ_TO_LINEAR, xyz, rgb);
    }

    /** Writes D50 X, Y, Z of encoded red, green, blue, 0 to 1. Example: (1, 0.5, 0) is (0.5185, 0.3759, 0.0347). */
    public static void toXyz(double r, double g, double b, double[] xyz) {
        Cie.multiply(LINEAR_TO_XYZ, new double[] {decode(r), decode(g), decode(b)}, xyz);
    }

    /** @return Lab of encoded red, green, blue, 0 to 1. Example: (1, 0.5, 0) is (67.72, 45.73, 74.79). */
    public static Lab toLab(double r, double g, double b) {
        double[] xyz = new double[3];
        toXyz(r, g, b, xyz);
        return Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
    }

    /** @return the nearest colour of the display by clipping, packed 0xffRRGGBB */
    public static int xyzD50ToArgb(double x, double y, double z) {
        double[] m = XYZ_TO_LINEAR;
        int r = encode8(m[0] * x + m[1] * y + m[2] * z);
        int g = encode8(m[3] * x + m[4] * y + m[5] * z);
        int b = encode8(m[6] * x + m[7] * y + m[8] * z);
        return 0xff000000 | r << 16 | g << 8 | b;
    }

    /** @return the display colour of a Lab colour, packed 0xffRRGGBB */
    public static int labToArgb(Lab lab) {
        double[] xyz = Cie.labToXyz(lab);
        return xyzD50ToArgb(xyz[0], xyz[1], xyz[2]);
    }

    /** @return whether an sRGB display can show this colour, within half a step of its coding */
    public static boolean shows(double x, double y, double z) {
        double[] m = XYZ_TO_LINEAR;
        return inside(m[0] * x + m[1] * y + m[2] * z)
                && inside(m[3] * x + m[4] * y + m[5] * z)
                && inside(m[6] * x + m[7] * y + m[8] * z);
    }

    private static boolean inside(double linear) {
        return linear >= -TOLERANCE && linear <= 1 + TOLERANCE;
    }

    private static int encode8(double linear) {
        if (!(linear > 0)) {
            return 0;
        }
        if (linear >= 1) {
            return 255;
        }
        // The curve is steep near black, where the table would be a step off.
        return linear < 0.02 ? (int) (255 * encode(linear) + 0.5) : ENCODE[(int) (linear * ENCODE_STEPS + 0.5)] & 255;
    }
}
