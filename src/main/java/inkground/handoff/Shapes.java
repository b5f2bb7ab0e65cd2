package inkground.handoff;

import inkground.artwork.Clip;
import inkground.artwork.Op;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import inkground.geometry.Pen;
import java.awt.BasicStroke;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Shapes of painting operations as areas of page space, and areas as paths in any space. */
final class Shapes {
    private Shapes() {}

    /** @return what a fill or stroke covers, its clip taken into account */
    static Area of(Op op) {
        Area area;
        if (op instanceof Op.Fill fill) {
            area = new Area(path(fill.path(), fill.rule()));
        } else {
            Op.Stroke stroke = (Op.Stroke) op;
            Path2D line = path(stroke.path(), FillRule.NON_ZERO);
            area = new Area(stroke(stroke.pen()).createStrokedShape(line));
            area.transform(affine(stroke.penToPage()));
        }
        for (Clip clip = op.clip(); clip != null && !area.isEmpty(); clip = clip.parent()) {
            area.intersect(new Area(path(clip.path(), clip.rule())));
        }
        return area;
    }

    private static BasicStroke stroke(Pen pen) {
        int cap =
                switch (pen.cap()) {
                    case BUTT -> BasicStroke.CAP_BUTT;
                    case ROUND -> BasicStroke.CAP_ROUND;
                    case SQUARE -> BasicStroke.CAP_SQUARE;
                };
        int join =
                switch (pen.join()) {
                    case MITER -> BasicStroke.JOIN_MITER;
                    case ROUND -> BasicStroke.JOIN_ROUND;
                    case BEVEL -> BasicStroke.JOIN_BEVEL;
                };
        double[] dash = pen.dash();
        float[] dashes = new float[dash.length];
        for (int i = 0; i < dash.length; i++) {
            dashes[i] = (float) dash[i];
        }
        return new BasicStroke(
                (float) pen.width(), cap, join, (float) pen.miterLimit(), dashes.length == 0 ? null : dashes, (float)
                        Math.max(0, pen.dashPhase()));
    }

    private static Path2D path(Outline outline, FillRule rule) {
        Path2D path = new Path2D.Double(rule == FillRule.EVEN_ODD ? Path2D.WIND_EVEN_ODD : Path2D.WIND_NON_ZERO);
        outline.forEach(new Outline.Visitor() {
            @Override
            public void move(double x, double y) {
                path.moveTo(x, y);
            }

            @Override
            public void line(double x, double y) {
                path.lineTo(x, y);
            }

            @Override
            public void curve(double x1, double y1, double x2, double y2, double x, double y) {
                path.curveTo(x1, y1, x2, y2, x, y);
            }

            @Override
            public void close() {
                path.closePath();
            }
        });
        return path;
    }

    static AffineTransform affine(Matrix m) {
        return new AffineTransform(m.a(), m.b(), m.c(), m.d(), m.e(), m.f());
    }

    static Box bounds(Area area) {
        Rectangle2D r = area.getBounds2D();
        return new Box(r.getMinX(), r.getMinY(), r.getMaxX(), r.getMaxY());
    }

    /**
     * Everything on a page but some areas, as one path to be clipped to by the even-odd rule.
     *
     * @param page box that holds all that is painted
     * @param holes areas to leave out; may overlap
     */
    static Path2D allBut(Box page, List<Area> holes) {
        Path2D out = new Path2D.Double(Path2D.WIND_EVEN_ODD);
        out.append(new Rectangle2D.Double(page.x0(), page.y0(), page.width(), page.height()), false);
        // Areas that stay apart need no joining, which is slow: even-odd takes them side by side.
        List<Area> apart = new ArrayList<>();
        for (Area hole : holes) {
            Area joined = new Area(hole);
            for (Area other : List.copyOf(apart)) {
                if (other.getBounds2D().intersects(joined.getBounds2D())) {
                    joined.add(other);
                    apart.remove(other);
                }
            }
            apart.add(joined);
        }
        apart.forEach(area -> out.append(area.getPathIterator(null), false));
        return out;
    }

    /** Receives a path's segments as operators of a content stream. */
    interface Sink {
        void segment(String operator, double... numbers);
    }

    /** Writes a path of page space in the user space of {@code userToPage}. */
    static void write(Path2D path, Matrix userToPage, Sink sink) {
        double[] c = new double[6];
        double x = 0;
        double y = 0;
        for (PathIterator it = path.getPathIterator(affine(userToPage.inverse())); !it.isDone(); it.next()) {
            switch (it.currentSegment(c)) {
                case PathIterator.SEG_MOVETO -> sink.segment("m", c[0], c[1]);
                case PathIterator.SEG_LINETO -> sink.segment("l", c[0], c[1]);
                case PathIterator.SEG_QUADTO ->
                    sink.segment(
                            "c",
                            x + 2 * (c[0] - x) / 3,
                            y + 2 * (c[1] - y) / 3,
                            c[2] + 2 * (c[0] - c[2]) / 3,
                            c[3] + 2 * (c[1] - c[3]) / 3,
                            c[2],
                            c[3]);
                case PathIterator.SEG_CUBICTO -> sink.segment("c", c);
                default -> sink.segment("h");
            }
            int type = it.currentSegment(c);
            int last = type == PathIterator.SEG_QUADTO ? 2 : type == PathIterator.SEG_CUBICTO ? 4 : 0;
            x = c[last];
            y = c[last + 1];
        }
    }
}
