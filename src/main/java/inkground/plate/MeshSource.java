package inkground.plate;

import static inkground.plate.InkPlanes.CELL_H;
import static inkground.plate.InkPlanes.CELL_W;

import inkground.artwork.Colour;
import inkground.artwork.Paint;
import inkground.geometry.Box;
import inkground.geometry.Matrix;
import java.util.Arrays;
import java.util.stream.IntStream;

/** Triangles with colours at their corners (types 4 to 7), interpolated linearly; later triangles cover earlier ones. */
final class MeshSource implements PixelSource {
    // A hair of tolerance: pixel centres on a shared edge belong to both triangles, never to none.
    private static final double HAIR = 1e-6;

    private final Paint.Shading shading;
    private final ColourMapping mapping;
    private final float[] corners; // device x, y, values
    private final int perCorner;
    private final boolean background;
    private final float[] lowest; // of each value over the mesh
    private final float[] perRange; // steps per unit of each value

    MeshSource(Paint.Shading shading, Matrix pageToDevice, ColourMapping mapping, boolean asPattern) {
        this.shading = shading;
        this.mapping = mapping;
        Paint.Triangles mesh = (Paint.Triangles) shading.geometry();
        this.perCorner = mesh.perCorner();
        this.corners = mesh.values().clone();
        Matrix m = shading.toPage().then(pageToDevice);
        for (int i = 0; i + perCorner <= corners.length; i += perCorner) {
            float x = corners[i];
            float y = corners[i + 1];
            corners[i] = (float) m.x(x, y);
            corners[i + 1] = (float) m.y(x, y);
        }
        this.background = asPattern && shading.background() != null;
        this.lowest = new float[perCorner - 2];
        this.perRange = new float[perCorner - 2];
        for (int i = 0; i < lowest.length; i++) {
            float low = Float.POSITIVE_INFINITY;
            float high = Float.NEGATIVE_INFINITY;
            for (int c = 2 + i; c < corners.length; c += perCorner) {
                low = Math.min(low, corners[c]);
                high = Math.max(high, corners[c]);
            }
            lowest[i] = low;
            perRange[i] = high > low ? Shade.STEPS / (high - low) : 0;
        }
    }

    @Override
    public int[] planes() {
        return IntStream.range(0, mapping.tintPlanes()).toArray();
    }

    @Override
    public Extent cell(int deviceX, int deviceY, int[][] tints, int[] cover) {
        int step = 3 * perCorner;
        boolean begun = background;
        if (background) {
            begin(tints, cover);
        }
        Shade shade = new Shade();
        for (int t = 0; t + step <= corners.length; t += step) {
            if (touches(t, deviceX, deviceY)) {
                if (!begun) {
                    begin(tints, cover);
                    begun = true;
                }
                triangle(t, deviceX, deviceY, shade, tints, cover);
            }
        }
        return begun ? Extent.SOME : Extent.NONE;
    }

    private void begin(int[][] tints, int[] cover) {
        int[] out = new int[mapping.tintPlanes()];
        if (background) {
            mapping.mixedTints(shading.space(), shading.background().components(), null, out);
        }
        for (int p = 0; p < out.length; p++) {
            Arrays.fill(tints[p], out[p]);
        }
        Arrays.fill(cover, background ? Fixed.COVER_ONE : 0);
    }

    private boolean touches(int t, int x0, int y0) {
        float ax = corners[t];
        float bx = corners[t + perCorner];
        float cx = corners[t + 2 * perCorner];
        if (Math.max(ax, Math.max(bx, cx)) < x0 || Math.min(ax, Math.min(bx, cx)) > x0 + CELL_W) {
            return false;
        }
        float ay = corners[t + 1];
        float by = corners[t + perCorner + 1];
        float cy = corners[t + 2 * perCorner + 1];
        return Math.max(ay, Math.max(by, cy)) >= y0 && Math.min(ay, Math.min(by, cy)) <= y0 + CELL_H;
    }

    /** @return box in the shading's own coordinates of all that a mesh can paint */
    static Box bounds(Paint.Triangles mesh) {
        float[] v = mesh.values();
        Box box = null;
        for (int i = 0; i + mesh.perCorner() <= v.length; i += mesh.perCorner()) {
            Box point = new Box(v[i], v[i + 1], v[i], v[i + 1]);
            box = box == null
                    ? point
                    : new Box(
                            Math.min(box.x0(), v[i]),
                            Math.min(box.y0(), v[i + 1]),
                            Math.max(box.x1(), v[i]),
                            Math.max(box.y1(), v[i + 1]));
        }
        return box == null ? Box.EMPTY : box;
    }

    private void triangle(int t, int x0, int y0, Shade shade, int[][] tints, int[] cover) {
        double ax = corners[t] - x0;
        double ay = corners[t + 1] - y0;
        double bx = corners[t + perCorner] - x0;
        double by = corners[t + perCorner + 1] - y0;
        double cx = corners[t + 2 * perCorner] - x0;
        double cy = corners[t + 2 * perCorner + 1] - y0;
        double area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
        if (area == 0) {
            return;
        }
        // barycentric weights are linear: w = start + x·perX + y·perY
        double aPerX = (by - cy) / area;
        double aPerY = (cx - bx) / area;
        double bPerX = (cy - ay) / area;
        double bPerY = (ax - cx) / area;
        double aStart = (bx * cy - cx * by) / area;
        double bStart = (cx * ay - ax * cy) / area;
        int top = (int) Math.max(0, Math.ceil(Math.min(ay, Math.min(by, cy)) - 0.5));
        int bottom = (int) Math.min(CELL_H - 1, Math.floor(Math.max(ay, Math.max(by, cy)) - 0.5));
        for (int y = top; y <= bottom; y++) {
            double wa = aStart + aPerY * (y + 0.5);
            double wb = bStart + bPerY * (y + 0.5);
            double wc = 1 - wa - wb;
            double left = Math.max(entry(wa, aPerX), Math.max(entry(wb, bPerX), entry(wc, -aPerX - bPerX)));
            double right = Math.min(exit(wa, aPerX), Math.min(exit(wb, bPerX), exit(wc, -aPerX - bPerX)));
            int from = (int) Math.max(0, Math.ceil(left - 0.5));
            int to = (int) Math.min(CELL_W - 1, Math.floor(right - 0.5));
            for (int x = from; x <= to; x++) {
                int at = y * CELL_W + x;
                shade.of(t, wa + aPerX * (x + 0.5), wb + bPerX * (x + 0.5));
                cover[at] = Fixed.COVER_ONE;
                for (int p = 0; p < tints.length; p++) {
                    tints[p][at] = shade.tints[p];
                }
            }
        }
    }

    /** @return the x from which w = start + x·perX is not negative */
    private static double entry(double start, double perX) {
        if (perX > 0) {
            return (-HAIR - start) / perX;
        }
        return perX == 0 && start < -HAIR ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
    }

    /** @return the x up to which w = start + x·perX is not negative */
    private static double exit(double start, double perX) {
        if (perX < 0) {
            return (-HAIR - start) / perX;
        }
        return perX == 0 && start < -HAIR ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    }

    /** Colours of pixels in turn; neighbours whose values agree to 1/4096 of their range share a conversion. */
    private final class Shade {
        private static final int STEPS = 4096;

        final int[] tints = new int[mapping.tintPlanes()];
        private final float[] values = new float[perCorner - 2];
        private final int[] last = new int[perCorner - 2];
        private boolean any;

        void of(int t, double wa, double wb) {
            double wc = 1 - wa - wb;
            boolean same = any;
            for (int i = 0; i < values.length; i++) {
                values[i] = (float) (wa * corners[t + 2 + i]
                        + wb * corners[t + perCorner + 2 + i]
                        + wc * corners[t + 2 * perCorner + 2 + i]);
                int step = (int) ((values[i] - lowest[i]) * perRange[i]);
                same &= step == last[i];
                last[i] = step;
            }
            if (!same) {
                colour(values, tints);
                any = true;
            }
        }
    }

    private void colour(float[] values, int[] out) {
        float[] components = values;
        if (shading.function() != null) {
            components = new float
                    [Math.max(shading.function().outputs(), shading.space().components())];
            shading.function().apply(values, components);
        }
        mapping.mixedTints(shading.space(), new Colour(shading.space(), components).components(), null, out);
    }
}
