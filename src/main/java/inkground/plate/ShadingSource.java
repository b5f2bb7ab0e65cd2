package inkground.plate;

import static inkground.plate.InkPlanes.CELL_H;
import static inkground.plate.InkPlanes.CELL_W;

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
        Ramp colours = new Ramp(shading);
        SoftEdges edges = mapping.softEdges(shading);
        for (int i = 0; i <= steps; i++) {
            mapping.mixedTints(shading.space(), colours.at((double) i / steps).components(), edges, table[i]);
        }
        if (background) {
            mapping.mixedTints(shading.space(), shading.background().components(), edges, table[steps + 1]);
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

    @Override
    public int[] planes() {
        return planes;
    }

    @Override
    public Extent cell(int deviceX, int deviceY, int[][] tints, int[] cover) {
        // the cover array holds the step of each pixel until the ramps have been looked up
        if (geometry instanceof Paint.Axial axial) {
            along(axial, deviceX, deviceY, cover);
        } else {
            between((Paint.Radial) geometry, deviceX, deviceY, cover);
        }
        for (int k = 0; k < planes.length; k++) {
            int[] table = ramp[k];
            int[] out = tints[k];
            for (int i = 0; i < cover.length; i++) {
                out[i] = table[cover[i]];
            }
        }
        if (background) {
            return Extent.ALL;
        }
        int outside = 0;
        for (int i = 0; i < cover.length; i++) {
            int hole = steps - cover[i] >> 31 & 1; // 1 where the step lies beyond the ramp
            outside += hole;
            cover[i] = Fixed.COVER_ONE * (1 - hole);
        }
        return outside == 0 ? Extent.ALL : outside == cover.length ? Extent.NONE : Extent.SOME;
    }

    private int stepOf(double s) {
        return (int) (s * steps + 0.5);
    }

    private void along(Paint.Axial a, int deviceX, int deviceY, int[] out) {
        double dx = a.x1() - a.x0();
        double dy = a.y1() - a.y0();
        double square = dx * dx + dy * dy;
        int before = a.extendStart() ? 0 : steps + 1;
        int after = a.extendEnd() ? steps : steps + 1;
        // s is linear in device x and y; a shading of no length paints nothing (§8.7.4.5.3)
        double perX = (toShading.a() * dx + toShading.b() * dy) / square;
        double perY = (toShading.c() * dx + toShading.d() * dy) / square;
        double origin = ((toShading.e() - a.x0()) * dx + (toShading.f() - a.y0()) * dy) / square;
        for (int y = 0; y < CELL_H; y++) {
            double row = origin + perY * (deviceY + y + 0.5);
            for (int x = 0; x < CELL_W; x++) {
                double s = row + perX * (deviceX + x + 0.5);
                out[y * CELL_W + x] = square == 0 ? steps + 1 : s < 0 ? before : s > 1 ? after : stepOf(s);
            }
        }
    }

    /**
     * A pixel takes the largest s for which it lies on the circle of s, with a radius of 0 or more: §8.7.4.5.4. With c(s) and
     * r(s) linear, s solves a·s² − 2·b·s + c = 0.
     */
    private void between(Paint.Radial r, int deviceX, int deviceY, int[] out) {
        double cx = r.x1() - r.x0();
        double cy = r.y1() - r.y0();
        double cr = r.r1() - r.r0();
        double a = cx * cx + cy * cy - cr * cr;
        boolean linear = Math.abs(a) < 1e-12 * (cx * cx + cy * cy + cr * cr);
        for (int y = 0; y < CELL_H; y++) {
            double py = deviceY + y + 0.5;
            for (int x = 0; x < CELL_W; x++) {
                double px = deviceX + x + 0.5;
                double ux = toShading.x(px, py) - r.x0();
                double uy = toShading.y(px, py) - r.y0();
                double b = ux * cx + uy * cy + r.r0() * cr;
                double c = ux * ux + uy * uy - r.r0() * r.r0();
                int step = steps + 1;
                if (linear) {
                    step = b == 0 ? step : accept(r, c / (2 * b), cr);
                } else if (b * b - a * c >= 0) {
                    double q = Math.sqrt(b * b - a * c);
                    double one = (b + q) / a;
                    double other = (b - q) / a;
                    step = accept(r, Math.max(one, other), cr);
                    step = step <= steps ? step : accept(r, Math.min(one, other), cr);
                }
                out[y * CELL_W + x] = step;
            }
        }
    }

    /** @return the step of s, or one beyond the ramp where s does not paint */
    private int accept(Paint.Radial r, double s, double cr) {
        if (r.r0() + s * cr < 0) {
            return steps + 1;
        }
        if (s < 0) {
            return r.extendStart() ? 0 : steps + 1;
        }
        if (s > 1) {
            return r.extendEnd() ? steps : steps + 1;
        }
        return stepOf(s);
    }
}
