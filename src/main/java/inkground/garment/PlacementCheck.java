package inkground.garment;

import inkground.geometry.Awt;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import java.awt.geom.Area;
import java.awt.geom.FlatteningPathIterator;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.DoubleFunction;

/**
 * Whether a print fits where it lies, judged by the box around it: a corner of the box without ink counts as ink. Immutable.
 *
 * @param area the print area it is judged by: the smallest that holds it, else the one it leaves least
 * @param beyondArea how far it leaves that area
 * @param offGarmentMm how far it reaches beyond the printable cloth, 0 when it does not
 * @param offGarmentCm2 area of the box beyond the printable cloth
 * @param crosses names of seams, hems and the like under it
 */
public record PlacementCheck(
        Form.Area area, Beyond beyondArea, double offGarmentMm, double offGarmentCm2, Set<String> crosses) {
    /** What is less than this is the rounding of numbers. */
    private static final double NOTHING_MM = 0.005;

    private static final double FLATNESS_MM = 0.05;

    /** Copies the set, in order. */
    public PlacementCheck {
        crosses = java.util.Collections.unmodifiableSet(new LinkedHashSet<>(crosses));
    }

    /** How far a box leaves another, on each side; 0 where it does not. Millimetres. */
    public record Beyond(double left, double top, double right, double bottom) {
        static Beyond of(Box box, Box area) {
            return new Beyond(
                    over(area.x0() - box.x0()), over(area.y0() - box.y0()),
                    over(box.x1() - area.x1()), over(box.y1() - area.y1()));
        }

        private static double over(double mm) {
            return mm > NOTHING_MM ? mm : 0;
        }

        /** @return the largest of the four */
        public double most() {
            return Math.max(Math.max(left, top), Math.max(right, bottom));
        }

        private double sum() {
            return left + top + right + bottom;
        }
    }

    /**
     * @param printMm box around what is printed
     */
    public static PlacementCheck of(Form form, Box printMm) {
        Form.Area area = form.areas().stream()
                .min(Comparator.<Form.Area>comparingDouble(
                                a -> Beyond.of(printMm, a.boxMm()).sum())
                        .thenComparing(a -> a.boxMm().width() * a.boxMm().height()))
                .orElseThrow();
        Rectangle2D box = new Rectangle2D.Double(printMm.x0(), printMm.y0(), printMm.width(), printMm.height());
        Path2D cloth = Awt.path(form.outline(), FillRule.NON_ZERO);
        Area off = new Area(box);
        off.subtract(new Area(cloth));
        double cm2 = area(off) / 100;
        double mm = cm2 * 100 < NOTHING_MM ? 0 : farthest(off, cloth);
        return new PlacementCheck(area, Beyond.of(printMm, area.boxMm()), mm, mm == 0 ? 0 : cm2, crossed(form, box));
    }

    private static Set<String> crossed(Form form, Rectangle2D box) {
        Set<String> names = new LinkedHashSet<>();
        for (Form.Line line : form.lines()) {
            if (segments(Awt.path(line.outline(), FillRule.NON_ZERO)).stream().anyMatch(s -> s.intersects(box))) {
                names.add(line.name());
            }
        }
        return names;
    }

    private static List<Line2D> segments(java.awt.Shape shape) {
        List<Line2D> out = new ArrayList<>();
        double[] c = new double[6];
        double x = 0;
        double y = 0;
        double startX = 0;
        double startY = 0;
        PathIterator path = new FlatteningPathIterator(shape.getPathIterator(null), FLATNESS_MM);
        for (; !path.isDone(); path.next()) {
            int kind = path.currentSegment(c);
            if (kind == PathIterator.SEG_MOVETO) {
                startX = c[0];
                startY = c[1];
            } else {
                double toX = kind == PathIterator.SEG_CLOSE ? startX : c[0];
                double toY = kind == PathIterator.SEG_CLOSE ? startY : c[1];
                out.add(new Line2D.Double(x, y, toX, toY));
                c[0] = toX;
                c[1] = toY;
            }
            x = c[0];
            y = c[1];
        }
        return out;
    }

    /** Signed areas of its closed parts, added up; an {@link Area} winds holes the other way round. */
    private static double area(Area shape) {
        double twice = 0;
        for (Line2D s : segments(shape)) {
            twice += s.getX1() * s.getY2() - s.getX2() * s.getY1();
        }
        return Math.abs(twice) / 2;
    }

    /** The farthest point of what lies off the cloth is one of its corners, since it is the rest of a rectangle. */
    private static double farthest(Area off, Path2D cloth) {
        List<Line2D> edge = segments(cloth);
        double most = 0;
        for (Line2D s : segments(off)) {
            double x = s.getX1();
            double y = s.getY1();
            most = Math.max(
                    most,
                    edge.stream().mapToDouble(e -> e.ptSegDist(x, y)).min().orElse(0));
        }
        return most;
    }

    /** @return whether it lies inside a print area, on the cloth and over no seam */
    public boolean fine() {
        return beyondArea.most() == 0 && offGarmentMm == 0 && crosses.isEmpty();
    }

    /**
     * @param length writes a length in millimetres in the user's unit
     * @return one clause for each thing that is wrong, the worst first; empty when nothing is
     */
    public List<String> troubles(DoubleFunction<String> length) {
        List<String> out = new ArrayList<>();
        if (offGarmentMm > 0) {
            out.add(String.format(
                    Locale.ROOT,
                    "reaches %s beyond the cloth (%.1f cm² will not print)",
                    length.apply(offGarmentMm),
                    offGarmentCm2));
        }
        if (!crosses.isEmpty()) {
            out.add("lies over the " + String.join(", ", crosses));
        }
        if (beyondArea.most() > 0) {
            List<String> sides = new ArrayList<>();
            side(sides, beyondArea.left(), "on the left", length);
            side(sides, beyondArea.right(), "on the right", length);
            side(sides, beyondArea.top(), "at the top", length);
            side(sides, beyondArea.bottom(), "at the bottom", length);
            out.add("leaves the print area '" + area.name() + "' by " + String.join(", ", sides));
        }
        return out;
    }

    private static void side(List<String> sides, double mm, String where, DoubleFunction<String> length) {
        if (mm > 0) {
            sides.add(length.apply(mm) + " " + where);
        }
    }
}
