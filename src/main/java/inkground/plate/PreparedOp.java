package inkground.plate;

import inkground.artwork.BlendMode;
import inkground.artwork.Op;
import inkground.geometry.FillRule;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/**
 * An operation at one scale: where it can show, its shape in device space, and what it does to the planes.
 *
 * @param op what it was made from
 * @param left first device column it can show in
 * @param top first device row
 * @param right column after the last
 * @param bottom row after the last
 * @param shape edges of what it fills; null for all inside the clip
 * @param rule inside of the shape
 * @param stencil a further cover per pixel, or null
 * @param filling with what
 * @param cover constant alpha, 0 to {@link Fixed#COVER_ONE}
 * @param clip or null
 * @param mask soft mask, or null
 * @param joined further shapes of the very same paint that follow at once; their coverages are added, so that abutting shapes
 *     of one ink leave no seam
 * @param repeats the same operation in the other cells of a pattern, added likewise; null for none
 */
record PreparedOp(
        Op op,
        int left,
        int top,
        int right,
        int bottom,
        Supplier<EdgeList> shape,
        FillRule rule,
        Stencil stencil,
        Filling filling,
        int cover,
        PreparedClip clip,
        PreparedMask mask,
        List<PreparedOp> joined,
        PreparedList repeats) {
    /** Most shapes joined into one operation. */
    private static final int MOST_JOINED = 1000;

    /** Gives the cover of a cell by a stencil. */
    @FunctionalInterface
    interface Stencil {
        void cell(int deviceX, int deviceY, int[] cover);
    }

    /** @return this operation with the shape of {@code next} added, or null where the two are not one and the same paint */
    PreparedOp join(PreparedOp next) {
        return samePaint(next) && joined.size() < MOST_JOINED && !drawnAgain(next) ? with(next) : null;
    }

    /** @return this operation with the shapes of {@code others}, of which each is {@link #samePaint} */
    PreparedOp repeated(List<PreparedOp> others) {
        List<PreparedOp> all = new ArrayList<>();
        PreparedOp out = this;
        for (PreparedOp next : others) {
            all.add(next);
            all.addAll(next.joined);
            out = out.around(next, joined, null);
        }
        return others.isEmpty() ? this : out.around(this, joined, new PreparedList(all));
    }

    /** @return whether one shape could stand for both, were they apart */
    boolean samePaint(PreparedOp next) {
        return filling instanceof Filling.Flat
                && filling.equals(next.filling)
                && clip == next.clip
                && opaque()
                && next.opaque();
    }

    private PreparedOp with(PreparedOp next) {
        List<PreparedOp> all = joined.isEmpty() ? new ArrayList<>() : joined;
        all.add(next);
        return around(next, all, null);
    }

    /** This operation, showing where {@code next} does too. */
    private PreparedOp around(PreparedOp next, List<PreparedOp> all, PreparedList copies) {
        return new PreparedOp(
                op,
                Math.min(left, next.left),
                Math.min(top, next.top),
                Math.max(right, next.right),
                Math.max(bottom, next.bottom),
                shape,
                rule,
                stencil,
                filling,
                cover,
                clip,
                mask,
                all,
                copies);
    }

    private boolean opaque() {
        return shape != null
                && stencil == null
                && mask == null
                && cover == Fixed.COVER_ONE
                && mode() == BlendMode.NORMAL;
    }

    /** The same path twice covers no more than once; adding would fatten its edge. */
    private boolean drawnAgain(PreparedOp next) {
        Op last = joined.isEmpty() ? op : joined.get(joined.size() - 1).op;
        return last instanceof Op.Fill a
                && next.op instanceof Op.Fill b
                && a.path().equals(b.path());
    }

    /** @return blend mode */
    BlendMode mode() {
        return op.style().blend();
    }
}
