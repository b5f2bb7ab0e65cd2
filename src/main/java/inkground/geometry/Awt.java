package inkground.geometry;

import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;

/** Between the JDK's shapes, transforms and pens and ours. */
public final class Awt {
    private Awt() {}

    /** @return the same map */
    public static Matrix matrix(AffineTransform t) {
        return new Matrix(
                t.getScaleX(), t.getShearY(), t.getShearX(), t.getScaleY(), t.getTranslateX(), t.getTranslateY());
    }

    /** @return the same map */
    public static AffineTransform transform(Matrix m) {
        return new AffineTransform(m.a(), m.b(), m.c(), m.d(), m.e(), m.f());
    }

    /** @return the same rectangle */
    public static Box box(Rectangle2D r) {
        return new Box(r.getMinX(), r.getMinY(), r.getMaxX(), r.getMaxY());
    }

    /** @return the shape's own winding rule */
    public static FillRule rule(Shape shape) {
        return shape.getPathIterator(null).getWindingRule() == PathIterator.WIND_EVEN_ODD
                ? FillRule.EVEN_ODD
                : FillRule.NON_ZERO;
    }

    /**
     * @return the image of a shape under {@code m}; quadratic curves become the same curves as cubics
     * @throws ArithmeticException if a coordinate is not finite
     */
    public static Outline outline(Shape shape, Matrix m) {
        Outline.Builder out = new Outline.Builder();
        append(out, shape, m);
        return out.build();
    }

    /** Appends the image of a shape under {@code m}, as {@link #outline} does. */
    public static void append(Outline.Builder to, Shape shape, Matrix m) {
        double[] c = new double[6];
        double x = 0;
        double y = 0;
        double startX = 0;
        double startY = 0;
        for (PathIterator path = shape.getPathIterator(null); !path.isDone(); path.next()) {
            switch (path.currentSegment(c)) {
                case PathIterator.SEG_MOVETO -> {
                    to.move(m.x(c[0], c[1]), m.y(c[0], c[1]));
                    x = startX = c[0];
                    y = startY = c[1];
                }
                case PathIterator.SEG_LINETO -> {
                    to.line(m.x(c[0], c[1]), m.y(c[0], c[1]));
                    x = c[0];
                    y = c[1];
                }
                case PathIterator.SEG_QUADTO -> {
                    double ax = x + (c[0] - x) * 2 / 3;
                    double ay = y + (c[1] - y) * 2 / 3;
                    double bx = c[2] + (c[0] - c[2]) * 2 / 3;
                    double by = c[3] + (c[1] - c[3]) * 2 / 3;
                    curve(to, m, ax, ay, bx, by, c[2], c[3]);
                    x = c[2];
                    y = c[3];
                }
                case PathIterator.SEG_CUBICTO -> {
                    curve(to, m, c[0], c[1], c[2], c[3], c[4], c[5]);
                    x = c[4];
                    y = c[5];
                }
                default -> {
                    to.close();
                    x = startX; // a curve that follows at once starts where the sub-path did
                    y = startY;
                }
            }
        }
    }

    private static void curve(
            Outline.Builder to, Matrix m, double ax, double ay, double bx, double by, double x, double y) {
        to.curve(m.x(ax, ay), m.y(ax, ay), m.x(bx, by), m.y(bx, by), m.x(x, y), m.y(x, y));
    }

    /** @return the same path */
    public static Path2D path(Outline outline, FillRule rule) {
        int winding = rule == FillRule.EVEN_ODD ? Path2D.WIND_EVEN_ODD : Path2D.WIND_NON_ZERO;
        Path2D out = new Path2D.Double(winding, outline.size());
        outline.forEach(new Outline.Visitor() {
            @Override
            public void move(double x, double y) {
                out.moveTo(x, y);
            }

            @Override
            public void line(double x, double y) {
                out.lineTo(x, y);
            }

            @Override
            public void curve(double x1, double y1, double x2, double y2, double x, double y) {
                out.curveTo(x1, y1, x2, y2, x, y);
            }

            @Override
            public void close() {
                out.closePath();
            }
        });
        return out;
    }

    /** @return the constant of {@link BasicStroke} */
    public static int cap(Pen.Cap cap) {
        return switch (cap) {
            case BUTT -> BasicStroke.CAP_BUTT;
            case ROUND -> BasicStroke.CAP_ROUND;
            case SQUARE -> BasicStroke.CAP_SQUARE;
        };
    }

    /** @return the constant of {@link BasicStroke} */
    public static int join(Pen.Join join) {
        return switch (join) {
            case MITER -> BasicStroke.JOIN_MITER;
            case ROUND -> BasicStroke.JOIN_ROUND;
            case BEVEL -> BasicStroke.JOIN_BEVEL;
        };
    }
}
