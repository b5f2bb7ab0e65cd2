package inkground.appearance;

import inkground.colour.Srgb;
import java.util.Arrays;

/**
 * From colours printed on the print condition's own paper to the same inks on another ground, for an sRGB screen. The correction
 * of the substrate is linear in X, Y, Z, so it is linear in the light of red, green and blue too, and what each of the three
 * contributes can be looked up: a pixel is three look-ups, two sums and the screen's curve. Immutable.
 */
final class GroundTables {
    private static final int CODES = 1 << ProcessGrid.CODE_BITS;
    private static final int CODE_MASK = CODES - 1;
    // Three fields of 21 bits; light 1 is 2^16, and sums may run from −16 to 16.
    private static final int FIELD = 21;
    private static final int UNIT_BITS = 16;
    private static final int ZERO = 1 << FIELD - 1;
    private static final int CURVE_BITS = 13;
    private static final int SHIFT = UNIT_BITS - CURVE_BITS;
    // The screen's level for every sum that fits a field, so that nothing has to be clipped; only the middle is met
    // often.
    private static final byte[] CURVE = new byte[1 << FIELD - SHIFT];
    private static final int CURVE_MASK = CURVE.length - 1;

    static {
        int unit = 1 << CURVE_BITS;
        int zero = ZERO >> SHIFT;
        for (int i = 0; i <= unit; i++) {
            CURVE[zero + i] = (byte) Math.round(255 * Srgb.encode((double) i / unit));
        }
        Arrays.fill(CURVE, zero + unit, CURVE.length, (byte) 255);
    }

    private final long[] red = new long[CODES];
    private final long[] green = new long[CODES];
    private final long[] blue = new long[CODES];

    /**
     * @param ownPaper codes the pixels
     * @param gain of X, Y and Z, each 1 where the ground is the condition's own paper
     * @param offset added to X, Y and Z
     */
    GroundTables(ProcessGrid ownPaper, double[] gain, double[] offset) {
        double[] still = new double[3];
        Srgb.xyzToLinear(offset, still);
        long[][] tables = {red, green, blue};
        for (int from = 0; from < 3; from++) {
            double[] xyz = new double[3];
            double[] rgb = new double[3];
            Srgb.toXyz(from == 0 ? 1 : 0, from == 1 ? 1 : 0, from == 2 ? 1 : 0, xyz);
            for (int i = 0; i < 3; i++) {
                xyz[i] *= gain[i];
            }
            Srgb.xyzToLinear(xyz, rgb);
            for (int code = 0; code < CODES; code++) {
                double light = ownPaper.light(from, code);
                long packed = 0;
                for (int to = 0; to < 3; to++) {
                    // What does not hang on the pixel goes with the first of the three.
                    double base = from == 0 ? still[to] * (1 << UNIT_BITS) + ZERO + (1 << SHIFT - 1) : 0;
                    packed += Math.round(rgb[to] * light * (1 << UNIT_BITS) + base) << FIELD * to;
                }
                tables[from][code] = packed;
            }
        }
    }

    /** Paints pixels that {@link ProcessGrid#code} has coded. */
    void paint(int[] coded, int from, int count, int[] argb, int to) {
        for (int i = 0; i < count; i++) {
            argb[to + i] = argb(coded[from + i]);
        }
    }

    /** @return display colour of a coded pixel */
    int argb(int code) {
        long sum = red[code & CODE_MASK]
                + green[code >>> ProcessGrid.CODE_BITS & CODE_MASK]
                + blue[code >>> 2 * ProcessGrid.CODE_BITS & CODE_MASK];
        return 0xff000000
                | (CURVE[(int) (sum >>> SHIFT) & CURVE_MASK] & 255) << 16
                | (CURVE[(int) (sum >>> FIELD + SHIFT) & CURVE_MASK] & 255) << 8
                | CURVE[(int) (sum >>> 2 * FIELD + SHIFT) & CURVE_MASK] & 255;
    }
}
