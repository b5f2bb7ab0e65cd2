package inkground.plate;

import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.geometry.Box;
import java.util.List;

/**
 * Which repeats of a pattern's cell can show: columns {@code i0} to {@code i1} and rows {@code j0} to {@code j1}, all
 * included, counted in steps from the cell itself. Steps count without their sign, since cells lie alike either way.
 */
record Repeats(long i0, long i1, long j0, long j1) {
    /** Files state boxes and steps as single-precision numbers: what a side may differ by from a step that it equals. */
    private static final double ROUNDING = 1e-5;

    /** @param area what is seen, in pattern space */
    static Repeats over(Box area, Paint.Tiling tiling) {
        Box cell = tiling.cellBox();
        double xStep = Math.abs(tiling.xStep());
        double yStep = Math.abs(tiling.yStep());
        return new Repeats(
                (long) Math.ceil((area.x0() - cell.x1()) / xStep),
                (long) Math.floor((area.x1() - cell.x0()) / xStep),
                (long) Math.ceil((area.y0() - cell.y1()) / yStep),
                (long) Math.floor((area.y1() - cell.y0()) / yStep));
    }

    /** @return those that show in one step of the pattern, from the near corner of the cell itself */
    static Repeats ofOneStep(Paint.Tiling tiling) {
        Box cell = tiling.cellBox();
        double xStep = Math.abs(tiling.xStep());
        double yStep = Math.abs(tiling.yStep());
        return over(new Box(cell.x0(), cell.y0(), cell.x0() + xStep, cell.y0() + yStep), tiling);
    }

    /** @return whether no cell of a pattern lies over another, as far as can be seen */
    static boolean apart(Paint.Tiling tiling) {
        Box cell = tiling.cellBox();
        double xStep = Math.abs(tiling.xStep());
        double yStep = Math.abs(tiling.yStep());
        return cell.width() <= xStep * (1 + ROUNDING) && cell.height() <= yStep * (1 + ROUNDING);
    }

    /** @return whether the cells of a row touch without a gap, as far as can be seen */
    static boolean abutAcross(Paint.Tiling tiling) {
        return same(tiling.cellBox().width(), Math.abs(tiling.xStep()));
    }

    /** @return the same of the cells of a column */
    static boolean abutDown(Paint.Tiling tiling) {
        return same(tiling.cellBox().height(), Math.abs(tiling.yStep()));
    }

    private static boolean same(double side, double step) {
        return Math.abs(side - step) <= step * ROUNDING;
    }

    /** @return whether an operation stays in its cell by itself: a clip would only count the coverage of shared edges twice */
    static boolean inside(Op op, Paint.Tiling tiling) {
        Box box = tiling.toPage().inverse().bounds(op.bounds());
        Box cell = tiling.cellBox()
                .grow(1e-9 * (tiling.cellBox().width() + tiling.cellBox().height()));
        return cell.intersect(box).equals(box);
    }

    /** @return how many operations they come to, patterns inside the cell followed */
    double operations(Paint.Tiling tiling) {
        return (double) (i1 - i0 + 1) * (j1 - j0 + 1) * operations(tiling.cell());
    }

    private static double operations(List<Op> ops) {
        double sum = 0;
        for (Op op : ops) {
            sum += op instanceof Op.Group group ? operations(group.ops()) : 1;
            if (paint(op) instanceof Paint.Tiling inner && inner.toPage().invertible()) {
                sum += over(inner.toPage().inverse().bounds(op.bounds()), inner).operations(inner);
            }
        }
        return sum;
    }

    private static Paint paint(Op op) {
        if (op instanceof Op.Fill fill) {
            return fill.paint();
        } else if (op instanceof Op.Stroke stroke) {
            return stroke.paint();
        }
        return op instanceof Op.Stencil stencil ? stencil.paint() : null;
    }

    /**
     * A pattern whose cells overlap so often that even one step of it comes to more operations than can be painted, with
     * longer steps; others as they are.
     *
     * @param most operations
     */
    static Paint.Tiling thinned(Paint.Tiling tiling, long most) {
        double xStep = Math.abs(tiling.xStep());
        double yStep = Math.abs(tiling.yStep());
        Box cell = tiling.cellBox();
        Paint.Tiling out = tiling;
        while (ofOneStep(out).operations(out) > most && (cell.width() > xStep || cell.height() > yStep)) {
            if (cell.width() / xStep > cell.height() / yStep) {
                xStep *= 2;
            } else {
                yStep *= 2;
            }
            out = new Paint.Tiling(tiling.cell(), cell, xStep, yStep, tiling.toPage());
        }
        return out;
    }
}
