package inkground.artwork.pdf;

import inkground.geometry.Box;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.awt.geom.PathIterator;

/** Turns the library's paths into outlines. */
final class Paths {
    private Paths() {}

    /** Appends a path mapped by {@code m}; quadratic curves become the same curves as cubics. */
    static void append(Outline.Builder to, PathIterator path, Matrix m) {
        double[] c = new double[6];
        double x0 = 0;
        double y0 = 0;
        double startX = 0;
        double startY = 0;
        for (; !path.isDone(); path.next()) {
            switch (path.currentSegment(c)) {
                case PathIterator.SEG_MOVETO -> {
                    to.move(m.x(c[0], c[1]), m.y(c[0], c[1]));
                    x0 = startX = c[0];
                    y0 = startY = c[1];
                }
                case PathIterator.SEG_LINETO -> {
                    to.line(m.x(c[0], c[1]), m.y(c[0], c[1]));
                    x0 = c[0];
                    y0 = c[1];
                }
                case PathIterator.SEG_QUADTO -> {
                    double ax = x0 + (c[0] - x0) * 2 / 3;
                    double ay = y0 + (c[1] - y0) * 2 / 3;
                    double bx = c[2] + (c[0] - c[2]) * 2 / 3;
                    double by = c[3] + (c[1] - c[3]) * 2 / 3;
                    curve(to, m, ax, ay, bx, by, c[2], c[3]);
                    x0 = c[2];
                    y0 = c[3];
                }
                case PathIterator.SEG_CUBICTO -> {
                    curve(to, m, c[0], c[1], c[2], c[3], c[4], c[5]);
                    x0 = c[4];
                    y0 = c[5];
                }
                default -> {
                    to.close();
                    x0 = startX;
                    y0 = startY;
                }
            }
        }
    }

    private static void curve(
            Outline.Builder to, Matrix m, double ax, double ay, double bx, double by, double x, double y) {
        to.curve(m.x(ax, ay), m.y(ax, ay), m.x(bx, by), m.y(bx, by), m.x(x, y), m.y(x, y));
    }

    /** The image of a box under a map, as a path. */
    static Outline box(Box box, Matrix m) {
        return Outline.rectangle(box).transform(m);
    }
}
