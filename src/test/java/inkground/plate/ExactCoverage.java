package inkground.plate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How much of each pixel of a raster shapes cover, computed and not sampled: an area can be held to a small part of a percent by it.
 * Mutable, so that shapes can be added and cut out one after another.
 */
public final class ExactCoverage {
    private static final int SIDES = 1440; // of a disc: its area and outline are right within 0.0004 %

    private final int width;
    private final int height;
    private final double[] cover;

    /** Nothing yet; the size is in pixels. */
    public ExactCoverage(int width, int height) {
        this.width = width;
        this.height = height;
        this.cover = new double[width * height];
    }

    /** Adds what a convex outline covers; shapes that are added must not overlap. */
    public ExactCoverage add(double[][] outlinePx) {
        return add(outlinePx, 1);
    }

    /** Takes away what a convex outline covers; it must lie inside what is covered. */
    public ExactCoverage cutOut(double[][] outlinePx) {
        return add(outlinePx, -1);
    }

    private ExactCoverage add(double[][] outline, int sign) {
        int bottom = (int) Math.min(
                height,
                Math.ceil(Arrays.stream(outline).mapToDouble(p -> p[1]).max().orElse(0)));
        int top = (int) Math.max(
                0,
                Math.floor(Arrays.stream(outline).mapToDouble(p -> p[1]).min().orElse(0)));
        for (int y = top; y < bottom; y++) {
            double[][] row = cut(cut(outline, 1, 1, y), 1, -1, y + 1);
            int right = (int) Math.min(
                    width,
                    Math.ceil(Arrays.stream(row).mapToDouble(p -> p[0]).max().orElse(0)));
            int left = (int) Math.max(
                    0,
                    Math.floor(Arrays.stream(row).mapToDouble(p -> p[0]).min().orElse(0)));
            for (int x = left; x < right; x++) {
                cover[y * width + x] += sign * area(cut(cut(row, 0, 1, x), 0, -1, x + 1));
            }
        }
        return this;
    }

    /** @return covered part of a pixel, 0 to 1; 0 outside of the raster */
    public double at(int x, int y) {
        return x < 0 || y < 0 || x >= width || y >= height ? 0 : Math.max(0, Math.min(1, cover[y * width + x]));
    }

    /** @return an upright rectangle around the origin */
    public static double[][] rectangle(double width, double height) {
        return box(-width / 2, -height / 2, width / 2, height / 2);
    }

    /** @return an upright rectangle */
    public static double[][] box(double x0, double y0, double x1, double y1) {
        return new double[][] {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
    }

    /** @return a disc around the origin */
    public static double[][] disc(double radius) {
        double[][] out = new double[SIDES][];
        for (int i = 0; i < SIDES; i++) {
            double angle = 2 * Math.PI * i / SIDES;
            out[i] = new double[] {radius * Math.cos(angle), radius * Math.sin(angle)};
        }
        return out;
    }

    /** @return an outline as many times as large, seen from the origin */
    public static double[][] scaled(double[][] outline, double times) {
        return Arrays.stream(outline)
                .map(p -> new double[] {p[0] * times, p[1] * times})
                .toArray(double[][]::new);
    }

    /** @return an outline turned around the origin, then moved */
    public static double[][] placed(double[][] outline, double degrees, double x0, double y0) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        return Arrays.stream(outline)
                .map(p -> new double[] {x0 + p[0] * c - p[1] * s, y0 + p[0] * s + p[1] * c})
                .toArray(double[][]::new);
    }

    /** @return the area inside an outline */
    public static double area(double[][] outline) {
        double twice = 0;
        for (int i = 0; i < outline.length; i++) {
            double[] a = outline[i];
            double[] b = outline[(i + 1) % outline.length];
            twice += a[0] * b[1] - b[0] * a[1];
        }
        return Math.abs(twice) / 2;
    }

    /** @return the length of an outline */
    public static double length(double[][] outline) {
        double sum = 0;
        for (int i = 0; i < outline.length; i++) {
            double[] a = outline[i];
            double[] b = outline[(i + 1) % outline.length];
            sum += Math.hypot(b[0] - a[0], b[1] - a[1]);
        }
        return sum;
    }

    /** What of a convex outline lies on one side of an upright ({@code axis} 0) or level line. */
    private static double[][] cut(double[][] outline, int axis, int sign, double at) {
        List<double[]> out = new ArrayList<>();
        for (int i = 0; i < outline.length; i++) {
            double[] a = outline[i];
            double[] b = outline[(i + 1) % outline.length];
            double da = sign * (a[axis] - at);
            double db = sign * (b[axis] - at);
            if (da >= 0) {
                out.add(a);
            }
            if (da > 0 && db < 0 || da < 0 && db > 0) {
                double t = da / (da - db);
                out.add(new double[] {a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])});
            }
        }
        return out.toArray(double[][]::new);
    }
}
