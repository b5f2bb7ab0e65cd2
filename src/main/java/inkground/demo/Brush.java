package inkground.demo;

import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;

/** Shapes that the drawings are made of. y points up, angles run anticlockwise from the x axis in degrees. */
final class Brush {
    private Brush() {}

    static Rectangle2D box(double x, double y, double width, double height) {
        return new Rectangle2D.Double(x, y, width, height);
    }

    static RoundRectangle2D pill(double x, double y, double width, double height) {
        return new RoundRectangle2D.Double(x, y, width, height, height, height);
    }

    static Ellipse2D disc(double x, double y, double radius) {
        return new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
    }

    /** A ring as one path with a hole; fill it even-odd. */
    static Path2D ring(double x, double y, double outer, double inner) {
        Path2D path = new Path2D.Double(disc(x, y, outer));
        path.append(disc(x, y, inner), false);
        return path;
    }

    static Path2D line(double... xy) {
        Path2D path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
        return path;
    }

    static Path2D polygon(double... xy) {
        Path2D path = line(xy);
        path.closePath();
        return path;
    }

    /** A smooth open curve through the points: uniform Catmull–Rom, as cubic Béziers. */
    static Path2D curve(double... xy) {
        Path2D path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 0; i < xy.length / 2 - 1; i++) {
            double[] c = controls(xy, i, false);
            path.curveTo(c[0], c[1], c[2], c[3], c[4], c[5]);
        }
        return path;
    }

    /** A smooth closed curve through the points. */
    static Path2D blob(double... xy) {
        Path2D path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 0; i < xy.length / 2; i++) {
            double[] c = controls(xy, i, true);
            path.curveTo(c[0], c[1], c[2], c[3], c[4], c[5]);
        }
        path.closePath();
        return path;
    }

    /** Land under a smooth skyline: the curve, then straight down to {@code floor}. */
    static Path2D hill(double floor, double... xy) {
        Path2D path = curve(xy);
        path.lineTo(xy[xy.length - 2], floor);
        path.lineTo(xy[0], floor);
        path.closePath();
        return path;
    }

    /**
     * A stroke whose width changes along it.
     *
     * @param xyw triples of x, y and full width; the stroke is smooth through them
     */
    static Path2D taper(double... xyw) {
        int n = xyw.length / 3;
        double[] left = new double[2 * n];
        double[] right = new double[2 * n];
        for (int i = 0; i < n; i++) {
            int before = 3 * Math.max(0, i - 1);
            int after = 3 * Math.min(n - 1, i + 1);
            double dx = xyw[after] - xyw[before];
            double dy = xyw[after + 1] - xyw[before + 1];
            double half = xyw[3 * i + 2] / 2 / Math.hypot(dx, dy);
            left[2 * i] = xyw[3 * i] - dy * half;
            left[2 * i + 1] = xyw[3 * i + 1] + dx * half;
            right[2 * (n - 1 - i)] = xyw[3 * i] + dy * half;
            right[2 * (n - 1 - i) + 1] = xyw[3 * i + 1] - dx * half;
        }
        Path2D path = curve(left);
        path.append(curve(right), true);
        path.closePath();
        return path;
    }

    /** Adds an elliptical arc, joined by a line to what the path already holds if {@code join}. */
    static void arc(
            Path2D path, double cx, double cy, double rx, double ry, double start, double extent, boolean join) {
        int pieces = Math.max(1, (int) Math.ceil(Math.abs(extent) / 90));
        double step = Math.toRadians(extent) / pieces;
        double reach = 4.0 / 3 * Math.tan(step / 4);
        double a = Math.toRadians(start);
        if (join && path.getCurrentPoint() != null) {
            path.lineTo(cx + rx * Math.cos(a), cy + ry * Math.sin(a));
        } else {
            path.moveTo(cx + rx * Math.cos(a), cy + ry * Math.sin(a));
        }
        for (int i = 0; i < pieces; i++) {
            double b = a + step;
            path.curveTo(
                    cx + rx * (Math.cos(a) - reach * Math.sin(a)),
                    cy + ry * (Math.sin(a) + reach * Math.cos(a)),
                    cx + rx * (Math.cos(b) + reach * Math.sin(b)),
                    cy + ry * (Math.sin(b) - reach * Math.cos(b)),
                    cx + rx * Math.cos(b),
                    cy + ry * Math.sin(b));
            a = b;
        }
    }

    /** @return the shape scaled about the origin, turned, then moved */
    static Path2D place(java.awt.Shape shape, double scaleX, double scaleY, double degrees, double x, double y) {
        AffineTransform at = AffineTransform.getTranslateInstance(x, y);
        at.rotate(Math.toRadians(degrees));
        at.scale(scaleX, scaleY);
        return new Path2D.Double(shape, at);
    }

    private static double[] controls(double[] xy, int i, boolean closed) {
        int n = xy.length / 2;
        double[] c = new double[6];
        for (int axis = 0; axis < 2; axis++) {
            double p0 = xy[2 * index(i - 1, n, closed) + axis];
            double p1 = xy[2 * index(i, n, closed) + axis];
            double p2 = xy[2 * index(i + 1, n, closed) + axis];
            double p3 = xy[2 * index(i + 2, n, closed) + axis];
            c[axis] = p1 + (p2 - p0) / 6;
            c[2 + axis] = p2 - (p3 - p1) / 6;
            c[4 + axis] = p2;
        }
        return c;
    }

    private static int index(int i, int n, boolean closed) {
        return closed ? Math.floorMod(i, n) : Math.max(0, Math.min(n - 1, i));
    }
}
