package inkground.garment;

import inkground.geometry.Awt;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import inkground.substrate.Cut;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.FlatteningPathIterator;
import java.awt.geom.PathIterator;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * How the light falls on a garment laid flat: its rounded edges, the folds that its cut names, and slow seeded waves. A height
 * field in millimetres, lit from the upper left as a matt surface; one grid of factors for each form, whatever the colour, so
 * that fabric and print are shaded together. A picture made to look real, not a simulation of cloth.
 */
public final class Drape {
    /** Grid step; the finest fold is some 20 mm wide. */
    private static final double STEP_MM = 2.5;
    /** Around the garment, for its shadow on the table. */
    private static final double MARGIN_MM = 60;

    private static final double PILLOW_MM = 6;
    private static final double PILLOW_REACH_MM = 13;
    private static final double SHADOW_REACH_MM = 16;
    private static final double SHADOW = 0.34;
    /** Light from the upper left, as slope of its ray across and down the table. */
    private static final double LIGHT_X = 0.55;

    private static final double LIGHT_Y = 0.8;
    /** Share of the light that comes from all sides and makes no shade. */
    private static final double AMBIENT = 0.35;

    private final double x0Mm;
    private final double y0Mm;
    private final int width;
    private final int height;
    private final float[] light;
    private final float[] shadow;

    /** Lays a form on the table; takes some tenths of a second. */
    public Drape(Form form) {
        Box box = form.boundsMm().grow(MARGIN_MM);
        x0Mm = box.x0();
        y0Mm = box.y0();
        width = (int) Math.ceil(box.width() / STEP_MM) + 1;
        height = (int) Math.ceil(box.height() / STEP_MM) + 1;
        float[] inside = distances(form, true);
        float[] outside = distances(form, false);
        float[] heights = heights(form, inside);
        light = lit(heights, inside);
        shadow = new float[outside.length];
        // The shadow lies away from the light.
        int dx = (int) Math.round(5 / STEP_MM);
        int dy = (int) Math.round(8 / STEP_MM);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                float d = outside[Math.max(0, y - dy) * width + Math.max(0, x - dx)];
                shadow[y * width + x] = (float) (SHADOW * Math.exp(-d / SHADOW_REACH_MM));
            }
        }
        blur(shadow);
    }

    /** @return factor of the light on cloth at a place, 1 where it lies flat; about 0.5 to 1.4 */
    public double light(double xMm, double yMm) {
        return at(light, xMm, yMm);
    }

    /** @return how dark the garment's shadow is on the table at a place, 0 to 1 */
    public double shadow(double xMm, double yMm) {
        return at(shadow, xMm, yMm);
    }

    private double at(float[] grid, double xMm, double yMm) {
        double x = Math.max(0, Math.min(width - 1.001, (xMm - x0Mm) / STEP_MM));
        double y = Math.max(0, Math.min(height - 1.001, (yMm - y0Mm) / STEP_MM));
        int i = (int) x;
        int j = (int) y;
        double fx = x - i;
        double fy = y - j;
        int k = j * width + i;
        double top = grid[k] + fx * (grid[k + 1] - grid[k]);
        double bottom = grid[k + width] + fx * (grid[k + width + 1] - grid[k + width]);
        return top + fy * (bottom - top);
    }

    /** Distance from each grid point of the garment to its edge, or of the table to the garment; 0 on the other. */
    private float[] distances(Form form, boolean inside) {
        BufferedImage mask = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D g = mask.createGraphics();
        g.setColor(Color.WHITE);
        Matrix toGrid = Matrix.translate(-x0Mm, -y0Mm).then(Matrix.scale(1 / STEP_MM, 1 / STEP_MM));
        g.fill(Awt.path(form.outline().transform(toGrid), FillRule.NON_ZERO));
        for (Form.Part part : form.parts()) {
            if (part.lies() != Cut.Part.Lies.UNDER || !inside) {
                g.fill(Awt.path(part.outline().transform(toGrid), FillRule.NON_ZERO));
            }
        }
        g.dispose();
        byte[] on = ((DataBufferByte) mask.getRaster().getDataBuffer()).getData();
        float[] d = new float[on.length];
        for (int i = 0; i < d.length; i++) {
            d[i] = on[i] != 0 == inside ? 1e6f : 0;
        }
        sweep(d, 1);
        sweep(d, -1);
        return d;
    }

    /** One pass of a distance transform with steps of a king's move. */
    private void sweep(float[] d, int by) {
        float straight = (float) STEP_MM;
        float across = (float) (STEP_MM * Math.sqrt(2));
        int from = by > 0 ? 0 : height - 1;
        for (int y = from; y >= 0 && y < height; y += by) {
            for (int n = 0; n < width; n++) {
                int x = by > 0 ? n : width - 1 - n;
                int k = y * width + x;
                float least = d[k];
                if (x - by >= 0 && x - by < width) {
                    least = Math.min(least, d[k - by] + straight);
                }
                if (y - by >= 0 && y - by < height) {
                    int above = k - by * width;
                    least = Math.min(least, d[above] + straight);
                    least = x > 0 ? Math.min(least, d[above - 1] + across) : least;
                    least = x < width - 1 ? Math.min(least, d[above + 1] + across) : least;
                }
                d[k] = least;
            }
        }
    }

    private float[] heights(Form form, float[] inside) {
        float[] h = new float[inside.length];
        long seed = form.cut().seed() * 31 + form.face().side().ordinal();
        Random random = new Random(seed);
        for (Cut.Fold fold : form.face().folds()) {
            Outline half = fold.path().rightHalf(form.size().measuresMm());
            raise(h, half, 1, fold, random);
            raise(h, half, -1, fold, random);
        }
        waves(h, random);
        for (int i = 0; i < h.length; i++) {
            double edge = 1 - Math.exp(-inside[i] / PILLOW_REACH_MM);
            h[i] = (float) (h[i] * edge + PILLOW_MM * edge);
        }
        blur(h);
        return h;
    }

    /** Adds one fold: on the side of {@code mirror}, a little moved, narrowed and lowered as chance has it. */
    private void raise(float[] h, Outline half, int mirror, Cut.Fold fold, Random random) {
        double moved = (random.nextDouble() - 0.5) * 22;
        double lifted = (random.nextDouble() - 0.5) * 26;
        double reach = fold.widthMm() * (0.75 + 0.5 * random.nextDouble()) / 2;
        double high = fold.heightMm() * (0.6 + 0.9 * random.nextDouble());
        List<double[]> course = points(half.transform(new Matrix(mirror, 0, 0, 1, moved, lifted)));
        Box box = half.transform(new Matrix(mirror, 0, 0, 1, moved, lifted))
                .bounds()
                .grow(2.6 * reach);
        int i0 = Math.max(0, (int) ((box.x0() - x0Mm) / STEP_MM));
        int i1 = Math.min(width - 1, (int) ((box.x1() - x0Mm) / STEP_MM));
        int j0 = Math.max(0, (int) ((box.y0() - y0Mm) / STEP_MM));
        int j1 = Math.min(height - 1, (int) ((box.y1() - y0Mm) / STEP_MM));
        IntStream.rangeClosed(j0, j1).parallel().forEach(j -> {
            for (int i = i0; i <= i1; i++) {
                double[] near = nearest(course, x0Mm + i * STEP_MM, y0Mm + j * STEP_MM);
                double across = near[0] / reach;
                double along = Math.sin(Math.PI * (0.12 + 0.88 * near[1]));
                h[j * width + i] += (float) (high * along * along * Math.exp(-across * across));
            }
        });
    }

    private static List<double[]> points(Outline line) {
        List<double[]> out = new ArrayList<>();
        double[] c = new double[6];
        PathIterator path =
                new FlatteningPathIterator(Awt.path(line, FillRule.NON_ZERO).getPathIterator(null), 0.5);
        for (; !path.isDone(); path.next()) {
            path.currentSegment(c);
            out.add(new double[] {c[0], c[1]});
        }
        return out;
    }

    /** @return distance to a line in mm, and how far along it the nearest point lies, 0 to 1 */
    private static double[] nearest(List<double[]> line, double x, double y) {
        double best = Double.MAX_VALUE;
        double along = 0;
        for (int i = 0; i + 1 < line.size(); i++) {
            double[] a = line.get(i);
            double dx = line.get(i + 1)[0] - a[0];
            double dy = line.get(i + 1)[1] - a[1];
            double length2 = dx * dx + dy * dy;
            double t = length2 == 0 ? 0 : ((x - a[0]) * dx + (y - a[1]) * dy) / length2;
            t = Math.max(0, Math.min(1, t));
            double d = Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
            if (d < best) {
                best = d;
                along = (i + t) / (line.size() - 1);
            }
        }
        return new double[] {best, along};
    }

    /** Adds slow waves of chance direction, 60 to 170 mm long, none higher than a millimetre. */
    private void waves(float[] h, Random random) {
        for (int wave = 0; wave < 7; wave++) {
            double k = 2 * Math.PI / (60 + 110 * random.nextDouble());
            double turn = (random.nextDouble() - 0.5) * 1.9; // mostly upright folds
            double kx = k * Math.cos(turn);
            double ky = k * Math.sin(turn);
            double phase = random.nextDouble() * 2 * Math.PI;
            double high = 0.5 + 0.5 * random.nextDouble();
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    h[y * width + x] += (float) (high * Math.sin(kx * x * STEP_MM + ky * y * STEP_MM + phase));
                }
            }
        }
    }

    private float[] lit(float[] h, float[] inside) {
        float[] out = new float[h.length];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int k = y * width + x;
                double sx =
                        (h[y * width + Math.min(width - 1, x + 1)] - h[y * width + Math.max(0, x - 1)]) / 2 / STEP_MM;
                double sy =
                        (h[Math.min(height - 1, y + 1) * width + x] - h[Math.max(0, y - 1) * width + x]) / 2 / STEP_MM;
                // Lambert's law, over what falls on a flat surface.
                double matt = Math.max(0, 1 + sx * LIGHT_X + sy * LIGHT_Y) / Math.sqrt(1 + sx * sx + sy * sy);
                double edge = 1 - 0.16 * Math.exp(-inside[k] / 9);
                out[k] = (float) Math.max(0.3, Math.min(1.5, (AMBIENT + (1 - AMBIENT) * matt) * edge));
            }
        }
        return out;
    }

    /** Takes the steps out of a grid: the mean of nine, twice. */
    private void blur(float[] grid) {
        float[] from = grid.clone();
        for (int pass = 0; pass < 2; pass++) {
            for (int y = 1; y < height - 1; y++) {
                for (int x = 1; x < width - 1; x++) {
                    int k = y * width + x;
                    float sum = 0;
                    for (int row = k - width; row <= k + width; row += width) {
                        sum += from[row - 1] + from[row] + from[row + 1];
                    }
                    grid[k] = sum / 9;
                }
            }
            System.arraycopy(grid, 0, from, 0, grid.length);
        }
    }
}
