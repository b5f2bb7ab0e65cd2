package inkground.colour;

import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.Function;

/**
 * sRGB, or any other space of three components, to the process tints of a print condition, fast: a {@value #NODES}³ grid whose nodes are computed as they are first
 * needed, with tetrahedral interpolation. White gives no ink at all. Black points are matched by the usual linear scaling of
 * X, Y, Z, so that sRGB black is the condition's darkest colour and shadows keep their steps. Thread-safe without locks: a
 * node computed twice comes out the same.
 */
public final class RgbToCmyk {
    /** Nodes on each edge of the grid. */
    public static final int NODES = 33;

    private final PrintCondition condition;
    private final double blackY;
    private final AtomicReferenceArray<float[]> grid = new AtomicReferenceArray<>(NODES * NODES * NODES);

    private final Function<float[], Lab> toLab;
    private final SrgbGrid ready; // null where nodes are computed

    /**
     * From sRGB, with the condition's ready-made grid where it has one.
     *
     * @param condition whose inks are wanted
     */
    public RgbToCmyk(PrintCondition condition) {
        this(
                condition,
                rgb -> Srgb.toLab(rgb[0], rgb[1], rgb[2]),
                condition.srgbGrid().orElse(null));
    }

    /**
     * From any three components, such as those of an ICC profile.
     *
     * @param condition whose inks are wanted
     * @param toLab gives media-relative Lab of three components, each 0 to 1 over its own range; thread-safe
     */
    public RgbToCmyk(PrintCondition condition, Function<float[], Lab> toLab) {
        this(condition, toLab, null);
    }

    private RgbToCmyk(PrintCondition condition, Function<float[], Lab> toLab, SrgbGrid ready) {
        this.condition = condition;
        this.toLab = toLab;
        this.ready = ready;
        this.blackY = condition.srgbGrid().map(SrgbGrid::blackY).orElseGet(() -> blackY(condition));
    }

    /** @return light of the condition's darkest colour, Y by that of the paper: where black goes */
    public double blackY() {
        return blackY;
    }

    private static double blackY(PrintCondition condition) {
        float[] darkest = new float[4];
        condition.labToCmyk(0, 0, 0, darkest);
        double[] xyz = new double[3];
        condition.cmykToXyz(darkest, xyz);
        return xyz[1] / Cie.labToXyz(condition.paper())[1];
    }

    /**
     * @param r red, encoded, 0 to 1; clipped
     * @param g green
     * @param b blue
     * @param cmyk receives four tints, 0 to 1
     */
    public void convert(float r, float g, float b, float[] cmyk) {
        float x = place(r);
        float y = place(g);
        float z = place(b);
        int i = (int) x;
        int j = (int) y;
        int k = (int) z;
        interpolate(i, j, k, x - i, y - j, z - k, cmyk);
    }

    /** Converts 8-bit pixels: {@code rgb} holds 0xRRGGBB (the top byte is ignored), {@code cmyk} gets 0 to 255. */
    public void convert8(int rgb, byte[] cmyk, int offset) {
        float[] out = new float[4];
        convert((rgb >> 16 & 255) / 255f, (rgb >> 8 & 255) / 255f, (rgb & 255) / 255f, out);
        for (int i = 0; i < 4; i++) {
            cmyk[offset + i] = (byte) (out[i] * 255 + 0.5f);
        }
    }

    private static float place(float v) {
        return v > 0 ? Math.min(1, v) * (NODES - 1) : 0;
    }

    // The cell's cube is cut into six tetrahedra along its grey diagonal, which keeps greys on the diagonal.
    private void interpolate(int i, int j, int k, float fx, float fy, float fz, float[] out) {
        float[] near = node(i, j, k);
        if (fx == 0 && fy == 0 && fz == 0) {
            System.arraycopy(near, 0, out, 0, 4);
            return;
        }
        int di = fx > 0 ? 1 : 0;
        int dj = fy > 0 ? 1 : 0;
        int dk = fz > 0 ? 1 : 0;
        float[] far = node(i + di, j + dj, k + dk);
        float[] first;
        float[] second;
        float hi;
        float mid;
        float lo;
        if (fx >= fy) {
            if (fy >= fz) {
                first = node(i + di, j, k);
                second = node(i + di, j + dj, k);
                hi = fx;
                mid = fy;
                lo = fz;
            } else if (fx >= fz) {
                first = node(i + di, j, k);
                second = node(i + di, j, k + dk);
                hi = fx;
                mid = fz;
                lo = fy;
            } else {
                first = node(i, j, k + dk);
                second = node(i + di, j, k + dk);
                hi = fz;
                mid = fx;
                lo = fy;
            }
        } else if (fx >= fz) {
            first = node(i, j + dj, k);
            second = node(i + di, j + dj, k);
            hi = fy;
            mid = fx;
            lo = fz;
        } else if (fy >= fz) {
            first = node(i, j + dj, k);
            second = node(i, j + dj, k + dk);
            hi = fy;
            mid = fz;
            lo = fx;
        } else {
            first = node(i, j, k + dk);
            second = node(i, j + dj, k + dk);
            hi = fz;
            mid = fy;
            lo = fx;
        }
        for (int c = 0; c < 4; c++) {
            out[c] = (1 - hi) * near[c] + (hi - mid) * first[c] + (mid - lo) * second[c] + lo * far[c];
        }
    }

    private float[] node(int i, int j, int k) {
        int at = (i * NODES + j) * NODES + k;
        float[] known = grid.get(at);
        if (known == null && ready != null) {
            known = new float[4];
            ready.node(i, j, k, known);
            grid.set(at, known);
        } else if (known == null) {
            known = compute((float) i / (NODES - 1), (float) j / (NODES - 1), (float) k / (NODES - 1));
            grid.set(at, known);
        }
        return known;
    }

    private float[] compute(float r, float g, float b) {
        float[] out = new float[4];
        convert(toLab.apply(new float[] {r, g, b}), out);
        return out;
    }

    /**
     * Converts one colour exactly, black points matched, without the grid.
     *
     * @param colour media-relative
     * @param cmyk receives four tints, 0 to 1
     */
    public void convert(Lab colour, float[] cmyk) {
        double[] xyz = Cie.labToXyz(colour);
        double keep = 1 - blackY;
        Lab lab = Cie.xyzToLab(
                keep * xyz[0] + blackY * Cie.D50_X,
                keep * xyz[1] + blackY * Cie.D50_Y,
                keep * xyz[2] + blackY * Cie.D50_Z);
        condition.labToCmyk(lab.L(), lab.a(), lab.b(), cmyk);
    }

    /** @return whether a space of three components is sRGB in all but name: within ΔE00 0.3 at 125 even steps */
    public static boolean isSrgb(Function<float[], Lab> space) {
        int steps = 4;
        for (int i = 0; i < 125; i++) {
            float[] rgb = {i / 25 / (float) steps, i / 5 % 5 / (float) steps, i % 5 / (float) steps};
            if (!(Cie.deltaE00(space.apply(rgb), Srgb.toLab(rgb[0], rgb[1], rgb[2])) < 0.3)) {
                return false;
            }
        }
        return true;
    }

    /** Takes the matching of black points back: the darkest print becomes X, Y, Z 0. Changes media-relative X, Y, Z in place. */
    public void expandBlack(double[] xyz) {
        double keep = 1 - blackY;
        xyz[0] = Math.max(0, (xyz[0] - blackY * Cie.D50_X) / keep);
        xyz[1] = Math.max(0, (xyz[1] - blackY * Cie.D50_Y) / keep);
        xyz[2] = Math.max(0, (xyz[2] - blackY * Cie.D50_Z) / keep);
    }
}
