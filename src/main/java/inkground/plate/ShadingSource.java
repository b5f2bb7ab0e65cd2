package inkground.plate;

import static inkground.plate.InkPlanes.CELL_H;
import static inkground.plate.InkPlanes.CELL_W;

import inkground.artwork.Colour;
import inkground.artwork.Paint;
import inkground.geometry.Matrix;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Axial and radial shadings. The colour function is tabulated once, finely enough for the length of the shading on the
 * device; every pixel then looks its parameter up.
 */
final class ShadingSource implements PixelSource {
    private static final int LEAST_STEPS = 256;
    private static final int MOST_STEPS = 1 << 14;

    private final Matrix toShading;
    private final Paint.Geometry geometry;
    private final int[] planes;
    private final int[][] ramp; // per entry of planes: tint per step, then the background
    private final int steps;
    private final boolean background;

    /**
     * @param shading axial or radial
     * @param pageToDevice scale
     * @param asPattern whether the background is painted too: it is for patterns, not for the sh operator
     */
    ShadingSource(Paint.Shading shading, Matrix pageToDevice, ColourMapping mapping, boolean asPattern) {
        Matrix toDevice = shading.toPage().then(pageToDevice);
        this.toShading = toDevice.inverse();
        this.geometry = shading.geometry();
        this.steps = steps(geometry, toDevice);
        this.background = asPattern && shading.background() != null;
        int n = mapping.tintPlanes();
        int[][] table = new int[steps + 2][n];
        for (int i = 0; i <= steps; i++) {
            mapping.tints(shading.space(), colourAt(shading, (double) i / steps), table[i]);
        }
        if (background) {
            mapping.tints(shading.space(), shading.background().components(), table[steps + 1]);
        }
        this.planes = IntStream.range(0, n)
                .filter(p -> Arrays.stream(table).anyMatch(row -> row[p] != 0))
                .toArray();
        this.ramp = new int[planes.length][steps + 2];
        for (int k = 0; k < planes.length; k++) {
            for (int i = 0; i < steps + 2; i++) {
                ramp[k][i] = table[i][planes[k]];
            }
        }
    }

    /** @return whether this class can paint a shading of this geometry */
    static boolean paints(Paint.Geometry geometry) {
        return geometry instanceof Paint.Axial || geometry instanceof Paint.Radial;
    }

    private static int steps(Paint.Geometry geometry, Matrix m) {
        double length;
        if (geometry instanceof Paint.Axial a) {
            length = Math.hypot(m.x(a.x1(), a.y1()) - m.x(a.x0(), a.y0()), m.y(a.x1(), a.y1()) - m.y(a.x0(), a.y0()));
        } else {
            Paint.Radial r = (Paint.Radial) geometry;
            length = (Math.abs(r.r1() - r.r0()) + Math.hypot(r.x1() - r.x0(), r.y1() - r.y0())) * m.meanScale();
        }
        return (int) Math.max(LEAST_STEPS, Math.min(MOST_STEPS, 2 * Math.ceil(length)));
    }

    private static float[] colourAt(Paint.Shading shading, double s) {
        double t0 = shading.geometry() instanceof Paint.Axial a ? a.t0() : ((Paint.Radial) shading.geometry()).t0();
        double t1 = shading.geometry() instanceof Paint.Axial a ? a.t1() : ((Paint.Radial) shading.geometry()).t1();
        float[] out =
                new float[Math.max(shading.function().outputs(), shading.space().components())];
        shading.function().apply(new float[] {(float) (t0 + (t1 - t0) * s)}, out);
        return new Colour(shading.space(), out).components();
    }

    @Override
    public int[] planes() {
        return planes;
    }

    @Override
    public boolean cell(int deviceX, int deviceY, int[][] tints, int[] cover) {
        boolean holes = false;
        for (int y = 0; y < CELL_H; y++) {
            for (int x = 0; x < CELL_W; x++) {
                int at = y * CELL_W + x;
                double s = parameter(deviceX + x + 0.5, deviceY + y + 0.5);
                int step = Double.isNaN(s) ? steps + 1 : (int) Math.rint(s * steps);
                boolean paints = step <= steps || background;
                cover[at] = paints ? Fixed.COVER_ONE : 0;
                holes |= !paints;
                for (int k = 0; k < tints.length && k < planes.length; k++) {
                    tints[k][at] = ramp[k][step];
                }
            }
        }
        return holes;
    }

    /** @return 0 to 1 along the shading, or NaN where it does not paint */
    private double parameter(double px, double py) {
        double x = toShading.x(px, py);
        double y = toShading.y(px, py);
        return geometry instanceof Paint.Axial axial ? along(axial, x, y) : between((Paint.Radial) geometry, x, y);
    }

    private static double along(Paint.Axial a, double x, double y) {
        double dx = a.x1() - a.x0();
        double dy = a.y1() - a.y0();
        double square = dx * dx + dy * dy;
        if (square == 0) {
            return Double.NaN; // §8.7.4.5.3: a shading of no length paints nothing
        }
        double s = ((x - a.x0()) * dx + (y - a.y0()) * dy) / square;
        if (s < 0) {
            return a.extendStart() ? 0 : Double.NaN;
        }
        if (s > 1) {
            return a.extendEnd() ? 1 : Double.NaN;
        }
        return s;
    }

    /** The largest s for which the point lies on the circle of s, with a radius of 0 or more: §8.7.4.5.4. */
    private static double between(Paint.Radial r, double x, double y) {
        double cx = r.x1() - r.x0();
        double cy = r.y1() - r.y0();
        double cr = r.r1() - r.r0();
        double px = x - r.x0();
        double py = y - r.y0();
        double a = cx * cx + cy * cy - cr * cr;
        double b = px * cx + py * cy + r.r0() * cr;
        double c = px * px + py * py - r.r0() * r.r0();
        if (Math.abs(a) < 1e-12 * (cx * cx + cy * cy + cr * cr)) {
            return b == 0 ? Double.NaN : accept(r, c / (2 * b), cr);
        }
        double root = b * b - a * c;
        if (root < 0) {
            return Double.NaN;
        }
        double q = Math.sqrt(root);
        double high = Math.max((b + q) / a, (b - q) / a);
        double low = Math.min((b + q) / a, (b - q) / a);
        double s = accept(r, high, cr);
        return Double.isNaN(s) ? accept(r, low, cr) : s;
    }

    private static double accept(Paint.Radial r, double s, double cr) {
        if (r.r0() + s * cr < 0) {
            return Double.NaN;
        }
        if (s < 0) {
            return r.extendStart() ? 0 : Double.NaN;
        }
        if (s > 1) {
            return r.extendEnd() ? 1 : Double.NaN;
        }
        return s;
    }
}
