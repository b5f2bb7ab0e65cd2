package inkground.handoff;

import inkground.artwork.Clip;
import inkground.artwork.Op;
import inkground.geometry.Awt;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import inkground.geometry.Pen;
import java.awt.BasicStroke;
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
            area = new Area(Awt.path(fill.path(), fill.rule()));
        } else {
            Op.Stroke stroke = (Op.Stroke) op;
            Path2D line = Awt.path(stroke.path(), FillRule.NON_ZERO);
            area = new Area(stroke(stroke.pen()).createStrokedShape(line));
            area.transform(Awt.transform(stroke.penToPage()));
        }
        return clipped(area, op.clip());
    }

    /** @return the area cut by a chain of clips; the area itself is used up */
    static Area clipped(Area area, Clip chain) {
        for (Clip clip = chain; clip != null && !area.isEmpty(); clip = clip.parent()) {
            area.intersect(new Area(Awt.path(clip.path(), clip.rule())));
        }
        return area;
    }

    private static BasicStroke stroke(Pen pen) {
        double[] dash = pen.dash();
        float[] dashes = new float[dash.length];
        for (int i = 0; i < dash.length; i++) {
            dashes[i] = (float) dash[i];
        }
        return new BasicStroke(
                (float) pen.width(),
                Awt.cap(pen.cap()),
                Awt.join(pen.join()),
                (float) pen.miterLimit(),
                dashes.length == 0 ? null : dashes,
                (float) Math.max(0, pen.dashPhase()));
    }

    static Area minus(Area area, Area other) {
        Area out = new Area(area);
        out.subtract(other);
        return out;
    }

    /** @return the size of an area in square points, curves taken as polygons */
    static double size(Area area) {
        double twice = 0;
        double[] at = new double[6];
        double startX = 0;
        double startY = 0;
        double x = 0;
        double y = 0;
        for (PathIterator i = area.getPathIterator(null, 0.01); !i.isDone(); i.next()) {
            int kind = i.currentSegment(at);
            boolean close = kind == PathIterator.SEG_CLOSE;
            if (kind == PathIterator.SEG_MOVETO) {
                startX = at[0];
                startY = at[1];
            } else {
                double toX = close ? startX : at[0];
                double toY = close ? startY : at[1];
                twice += x * toY - toX * y;
            }
            x = close ? startX : at[0];
            y = close ? startY : at[1];
        }
        return Math.abs(twice) / 2;
    }

    static Box bounds(Area area) {
        return Awt.box(area.getBounds2D());
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
        Awt.outline(path, userToPage.inverse()).forEach(new Outline.Visitor() {
            @Override
            public void move(double x, double y) {
                sink.segment("m", x, y);
            }

            @Override
            public void line(double x, double y) {
                sink.segment("l", x, y);
            }

            @Override
            public void curve(double x1, double y1, double x2, double y2, double x, double y) {
                sink.segment("c", x1, y1, x2, y2, x, y);
            }

            @Override
            public void close() {
                sink.segment("h");
            }
        });
    }
}
