package inkground.artwork.svg;

import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;

/** The library's shapes and transforms as ours. */
final class Awt {
    private Awt() {}

    static Matrix matrix(AffineTransform t) {
        return new Matrix(
                t.getScaleX(), t.getShearY(), t.getShearX(), t.getScaleY(), t.getTranslateX(), t.getTranslateY());
    }

    static AffineTransform transform(Matrix m) {
        return new AffineTransform(m.a(), m.b(), m.c(), m.d(), m.e(), m.f());
    }

    static Box box(Rectangle2D r) {
        return new Box(r.getMinX(), r.getMinY(), r.getMaxX(), r.getMaxY());
    }

    static FillRule rule(Shape shape) {
        return shape.getPathIterator(null).getWindingRule() == PathIterator.WIND_EVEN_ODD
                ? FillRule.EVEN_ODD
                : FillRule.NON_ZERO;
    }

    /** @throws ArithmeticException if a coordinate is not finite */
    static Outline outline(Shape shape, Matrix m) {
        Outline.Builder out = new Outline.Builder();
        double[] c = new double[6];
        double x = 0;
        double y = 0;
        for (PathIterator i = shape.getPathIterator(null); !i.isDone(); i.next()) {
            int segment = i.currentSegment(c);
            switch (segment) {
                case PathIterator.SEG_MOVETO -> out.move(m.x(c[0], c[1]), m.y(c[0], c[1]));
                case PathIterator.SEG_LINETO -> out.line(m.x(c[0], c[1]), m.y(c[0], c[1]));
                case PathIterator.SEG_QUADTO ->
                    curve(
                            out,
                            m,
                            x + (c[0] - x) * 2 / 3,
                            y + (c[1] - y) * 2 / 3,
                            c[2] + (c[0] - c[2]) * 2 / 3,
                            c[3] + (c[1] - c[3]) * 2 / 3,
                            c[2],
                            c[3]);
                case PathIterator.SEG_CUBICTO -> curve(out, m, c[0], c[1], c[2], c[3], c[4], c[5]);
                default -> out.close();
            }
            int last = segment == PathIterator.SEG_CUBICTO ? 4 : segment == PathIterator.SEG_QUADTO ? 2 : 0;
            if (segment != PathIterator.SEG_CLOSE) {
                x = c[last];
                y = c[last + 1];
            }
        }
        return out.build();
    }

    private static void curve(
            Outline.Builder out, Matrix m, double x1, double y1, double x2, double y2, double x, double y) {
        out.curve(m.x(x1, y1), m.y(x1, y1), m.x(x2, y2), m.y(x2, y2), m.x(x, y), m.y(x, y));
    }
}
