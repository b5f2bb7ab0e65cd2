package inkground.plate;

import java.util.Arrays;

/**
 * Finds cheaply whether parts of a path lie over one another, and in which rows, so that only these need be
 * {@linkplain EdgeUnion united}: most paths have none.
 *
 * <p>The edges are taken in the order they were drawn in, as chains that go only down or only up: a shape without dents has
 * two, a letter fewer than ten. Between the heights at which chains begin and end, their order along a row can change only
 * where two of them cross. So a row near either end of each such stretch tells of windings beyond ±1, of both signs and of
 * crossings; what crosses twice within one stretch is not seen and stays summed. The answer depends on the path alone, not
 * on a region. One use.
 */
final class EdgeOverlaps {
    /** Most chains that are looked at: the work grows with their square. A path of more stays summed. */
    private static final int MOST = 24;

    /** Stretches lower than so many 1024ths of a pixel are not looked at. */
    private static final int LEAST_HEIGHT = 64;

    /** Chains closer than so many 1024ths are in no certain order: their corners are rounded. */
    private static final int CLOSE = 4;

    private final int[] edges; // as in EdgeList: x0, y0, x1, y1, direction
    private final int count;

    // chains
    private final int[] first = new int[MOST];
    private final int[] last = new int[MOST];
    private final int[] top = new int[MOST];
    private final int[] bottom = new int[MOST];
    private final int[] lowest = new int[MOST]; // edge of each that was come to on the way down
    private int chains;

    // those that cross one row, from left to right
    private final int[] order = new int[MOST];
    private final double[] x = new double[MOST];

    private int sign; // of the last winding that was met: parts of both may cancel in a pixel
    private int from = Integer.MAX_VALUE;
    private int to = Integer.MIN_VALUE;

    EdgeOverlaps(int[] edges, int count) {
        this.edges = edges;
        this.count = count;
    }

    /** @return whether anything overlaps, as far as this can tell; then {@link #top} and {@link #bottom} say where */
    boolean any() {
        if (!cut() || chains <= 2) {
            return false;
        }
        int[] heights = new int[2 * chains];
        for (int c = 0; c < chains; c++) {
            boolean down = edges[first[c] * 5 + 4] > 0;
            lowest[c] = down ? first[c] : last[c];
            top[c] = edges[lowest[c] * 5 + 1];
            bottom[c] = edges[(down ? last[c] : first[c]) * 5 + 3];
            heights[2 * c] = top[c];
            heights[2 * c + 1] = bottom[c];
        }
        Arrays.sort(heights);
        for (int h = 1; h < heights.length; h++) {
            int height = heights[h] - heights[h - 1];
            if (height >= LEAST_HEIGHT && overlap(heights[h - 1] + height / 8, heights[h] - height / 8)) {
                from = Math.min(from, heights[h - 1]);
                to = heights[h];
            }
        }
        return from < to;
    }

    /** @return first pixel row in which something overlaps */
    int top() {
        return from >> EdgeList.SUB_BITS;
    }

    /** @return row after the last */
    int bottom() {
        return to + EdgeList.SUB - 1 >> EdgeList.SUB_BITS;
    }

    /** Cuts the path into chains. @return whether they are few enough */
    private boolean cut() {
        for (int e = 0; e < count; e++) {
            if (e == 0 || !goesOn(e)) {
                if (chains == MOST) {
                    return false;
                }
                first[chains++] = e;
            }
            last[chains - 1] = e;
        }
        return true;
    }

    /** Whether an edge begins at the height where the one drawn before it ends: a level one may be left out between them. */
    private boolean goesOn(int e) {
        int at = e * 5;
        boolean down = edges[at + 4] > 0;
        return edges[at - 1] == edges[at + 4]
                && (down ? edges[at - 2] == edges[at + 1] : edges[at - 4] == edges[at + 3]);
    }

    private boolean overlap(int upperRow, int lowerRow) {
        int n = order(upperRow);
        int winding = 0;
        boolean turned = false;
        for (int k = 0; k + 1 < n; k++) {
            winding += edges[first[order[k]] * 5 + 4];
            if (x[k + 1] - x[k] > CLOSE && winding != 0) {
                turned |= Math.abs(winding) > 1 || winding * sign < 0;
                sign = winding;
            }
        }
        if (turned) {
            return true;
        }
        for (int k = 0; k + 1 < n; k++) {
            boolean apart = x[k + 1] - x[k] > CLOSE;
            if (apart && xOf(order[k], lowerRow) - xOf(order[k + 1], lowerRow) > CLOSE) {
                return true; // they cross
            }
        }
        return false;
    }

    /** Puts the chains that cross a row in order. @return how many */
    private int order(int y) {
        int n = 0;
        for (int c = 0; c < chains; c++) {
            if (top[c] < y && bottom[c] > y) {
                double at = xOf(c, y);
                int k = n++;
                for (; k > 0 && x[k - 1] > at; k--) {
                    x[k] = x[k - 1];
                    order[k] = order[k - 1];
                }
                x[k] = at;
                order[k] = c;
            }
        }
        return n;
    }

    /** The x of a chain at a height; heights are asked for from the top down. */
    private double xOf(int chain, int y) {
        int at = lowest[chain] * 5;
        int next = 5 * edges[at + 4];
        while (edges[at + 3] < y) {
            at += next;
        }
        lowest[chain] = at / 5;
        int height = edges[at + 3] - edges[at + 1];
        return edges[at] + (double) (edges[at + 2] - edges[at]) * (y - edges[at + 1]) / height;
    }
}
