package inkground.geometry;

import java.util.Arrays;

/**
 * How a path is stroked (ISO 32000-2 §8.4.3), in the units of the path it strokes.
 *
 * @param width line width, 0 or more; 0 means the thinnest line the device can show
 * @param cap shape of open ends
 * @param join shape of corners
 * @param miterLimit largest ratio of miter length to width before a miter becomes a bevel, 1 or more
 * @param dash lengths of dashes and gaps in turn; empty for a solid line; never negative nor all zero
 * @param dashPhase distance into the pattern at which the line starts
 */
public record Pen(double width, Cap cap, Join join, double miterLimit, double[] dash, double dashPhase) {
    /** Shape of an open end. */
    public enum Cap {
        /** Cut off at the end point. */
        BUTT,
        /** Half circle. */
        ROUND,
        /** Square, half a width beyond the end point. */
        SQUARE
    }

    /** Shape of a corner. */
    public enum Join {
        /** Edges extended until they meet. */
        MITER,
        /** Circle about the corner. */
        ROUND,
        /** Cut off. */
        BEVEL
    }

    /** Validates, and repairs what the standard leaves to the reader: an all-zero dash is a solid line. */
    public Pen {
        if (!(width >= 0) || Double.isInfinite(width)) {
            throw new IllegalArgumentException("line width " + width);
        }
        miterLimit = miterLimit >= 1 ? miterLimit : 1;
        boolean usable = Arrays.stream(dash).allMatch(d -> d >= 0 && Double.isFinite(d))
                && Arrays.stream(dash).sum() > 0;
        dash = usable ? dash.clone() : new double[0];
        dashPhase = Double.isFinite(dashPhase) ? dashPhase : 0;
    }

    @Override
    public double[] dash() {
        return dash.clone();
    }
}
