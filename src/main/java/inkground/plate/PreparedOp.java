package inkground.plate;

import inkground.artwork.BlendMode;
import inkground.artwork.Op;
import inkground.geometry.FillRule;
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
        PreparedMask mask) {
    /** Gives the cover of a cell by a stencil. */
    @FunctionalInterface
    interface Stencil {
        void cell(int deviceX, int deviceY, int[] cover);
    }

    /** @return blend mode */
    BlendMode mode() {
        return op.style().blend();
    }
}
