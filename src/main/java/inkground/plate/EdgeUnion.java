package inkground.plate;

import static inkground.plate.EdgeList.SUB;
import static inkground.plate.EdgeList.SUB_BITS;

import java.util.Arrays;
import java.util.BitSet;

/**
 * Unites a path with itself, pixel row by pixel row, so that what it covers twice counts once (non-zero rule). Only rows
 * whose winding leaves 0 and one sign are cut, if more than a single edge is in a pixel or beside it: there the edges give way to the outline of the
 * union, in slabs between the heights at which edges begin, end or cross. Everywhere else they stay as they are, since the sum
 * of signed areas is exact. What comes out depends on the path alone, not on a region. One use, one thread.
 */
final class EdgeUnion {
    /** Most edges in a row that are looked at: the work grows with their square. Rows of more stay summed. */
    private static final int MOST = 64;

    /** Most rows of a path that are looked at: 5 m at 300 dpi. A path that reaches further off the page stays summed. */
    private static final int MOST_ROWS = 1 << 16;

    private final int[] edges; // as in EdgeList: x0, y0, x1, y1, direction
    private final int count;
    private int[] out;
    private int outCount;

    // the edges of one row, cut to it
    private final int[] x0 = new int[MOST];
    private final int[] y0 = new int[MOST];
    private final int[] x1 = new int[MOST];
    private final int[] y1 = new int[MOST];
    private final int[] direction = new int[MOST];
    private int n;

    private final int[] order = new int[MOST]; // of one slab, from left to right
    private final double[] middle = new double[MOST]; // x in the middle of the slab

    EdgeUnion(int[] edges, int count) {
        this.edges = edges;
        this.count = count;
        this.out = new int[Math.max(40, count * 5)];
    }

    /**
     * @param top first pixel row that is looked at
     * @param bottom row after the last
     * @return whether anything was united; then {@link #edges} are the new ones
     */
    boolean unite(int top, int bottom) {
        if (bottom - top > MOST_ROWS) {
            return false;
        }
        long[] byTop = new long[count];
        for (int i = 0; i < count; i++) {
            byTop[i] = (long) edges[i * 5 + 1] << 32 | i;
        }
        Arrays.sort(byTop);
        BitSet cut = new BitSet(); // counted from the first row that is looked at
        int[] active = new int[count];
        int actives = 0;
        int next = 0;
        for (int row = top; row < bottom; row++) {
            while (next < count && byTop[next] >> 32 < (row + 1) * SUB) {
                active[actives++] = (int) byTop[next++];
            }
            int kept = 0;
            for (int i = 0; i < actives; i++) {
                if (edges[active[i] * 5 + 3] > row * SUB) {
                    active[kept++] = active[i];
                }
            }
            actives = kept;
            if (actives > 1 && actives <= MOST && suspect(active, actives, row) && slabs()) {
                cut.set(row - top);
            }
        }
        if (cut.isEmpty()) {
            return false;
        }
        for (int i = 0; i < count; i++) {
            keep(i, top, cut);
        }
        return true;
    }

    int[] edges() {
        return out;
    }

    int count() {
        return outCount;
    }

    /**
     * Cuts edges to a row. Where no two of them share a pixel and all go from its top to its bottom, chains counted as one,
     * every pixel has one edge and one winding beside it, and its sum is exact.
     *
     * @return whether it is otherwise
     */
    private boolean suspect(int[] active, int actives, int row) {
        n = 0;
        for (int i = 0; i < actives; i++) {
            int at = active[i] * 5;
            int from = Math.max(edges[at + 1], row * SUB);
            int to = Math.min(edges[at + 3], (row + 1) * SUB);
            x0[n] = xOf(at, from);
            y0[n] = from;
            x1[n] = xOf(at, to);
            y1[n] = to;
            direction[n++] = edges[at + 4];
        }
        for (int i = 0; i < n; i++) {
            int left = Math.min(x0[i], x1[i]) >> SUB_BITS;
            int right = Math.max(x0[i], x1[i]) >> SUB_BITS;
            boolean fromTop = y0[i] == row * SUB;
            boolean toBottom = y1[i] == (row + 1) * SUB;
            for (int j = 0; j < n; j++) {
                boolean above = chained(j, i);
                boolean below = chained(i, j);
                fromTop |= above;
                toBottom |= below;
                boolean beside =
                        Math.max(x0[j], x1[j]) >> SUB_BITS < left || Math.min(x0[j], x1[j]) >> SUB_BITS > right;
                if (j < i && !beside && !above && !below) {
                    return true;
                }
            }
            if (!fromTop || !toBottom) {
                return true;
            }
        }
        return false;
    }

    private boolean chained(int upper, int lower) {
        return direction[upper] == direction[lower] && y1[upper] == y0[lower] && x1[upper] == x0[lower];
    }

    /** The x of an edge of the path at a height, rounded as {@link CoverBand} does. */
    private int xOf(int at, int y) {
        if (y == edges[at + 1] || y == edges[at + 3]) {
            return y == edges[at + 1] ? edges[at] : edges[at + 2];
        }
        double slope = (double) (edges[at + 2] - edges[at]) / (edges[at + 3] - edges[at + 1]);
        return edges[at] + (int) Math.rint(slope * (y - edges[at + 1]));
    }

    /** The x of an edge of the row at a height. */
    private double xAt(int i, double y) {
        return x0[i] + (double) (x1[i] - x0[i]) * (y - y0[i]) / (y1[i] - y0[i]);
    }

    /** Adds the outline of the union in this row, if anything overlaps in it. @return whether it does */
    private boolean slabs() {
        int[] heights = heights();
        int before = outCount;
        boolean overlaps = false;
        int sign = 0;
        for (int h = 1; h < heights.length; h++) {
            int from = heights[h - 1];
            int to = heights[h];
            if (from == to) {
                continue;
            }
            int m = sorted(from, to);
            int winding = 0;
            for (int k = 0; k < m; k++) {
                int old = winding;
                winding += direction[order[k]];
                if (old == 0 || winding == 0) {
                    piece(order[k], from, to, old == 0 ? 1 : -1);
                }
                boolean wide = k + 1 < m && middle[order[k + 1]] - middle[order[k]] > 1;
                if (winding != 0 && wide) {
                    overlaps |= Math.abs(winding) > 1 || sign * winding < 0;
                    sign = winding;
                }
            }
        }
        if (!overlaps) {
            outCount = before;
        }
        return overlaps;
    }

    /** Where edges of the row begin, end and cross, sorted. */
    private int[] heights() {
        int[] heights = new int[2 * n];
        int m = 0;
        for (int i = 0; i < n; i++) {
            heights[m++] = y0[i];
            heights[m++] = y1[i];
        }
        for (int i = 1; i < n; i++) {
            for (int j = 0; j < i; j++) {
                int from = Math.max(y0[i], y0[j]);
                int to = Math.min(y1[i], y1[j]);
                if (from < to) {
                    double above = xAt(i, from) - xAt(j, from);
                    double below = xAt(i, to) - xAt(j, to);
                    if (above * below < 0) {
                        if (m == heights.length) {
                            heights = Arrays.copyOf(heights, 2 * m);
                        }
                        heights[m++] = from + (int) Math.rint((to - from) * above / (above - below));
                    }
                }
            }
        }
        heights = Arrays.copyOf(heights, m);
        Arrays.sort(heights);
        return heights;
    }

    /** Puts the edges that cross a slab in order. @return how many */
    private int sorted(int from, int to) {
        int m = 0;
        for (int i = 0; i < n; i++) {
            if (y0[i] <= from && y1[i] >= to) {
                middle[i] = xAt(i, (from + to) / 2.0);
                int k = m++;
                for (; k > 0 && middle[order[k - 1]] > middle[i]; k--) {
                    order[k] = order[k - 1];
                }
                order[k] = i;
            }
        }
        return m;
    }

    private void piece(int i, int from, int to, int towards) {
        add((int) Math.rint(xAt(i, from)), from, (int) Math.rint(xAt(i, to)), to, towards);
    }

    /** Adds what of an edge lies in rows that are not cut. */
    private void keep(int i, int top, BitSet cut) {
        int at = i * 5;
        int first = (edges[at + 1] >> SUB_BITS) - top;
        int last = (edges[at + 3] - 1 >> SUB_BITS) - top;
        if (last < 0 || cut.nextSetBit(Math.max(0, first)) < 0) {
            add(edges[at], edges[at + 1], edges[at + 2], edges[at + 3], edges[at + 4]);
            return;
        }
        if (first < 0) {
            int stop = top * SUB;
            add(edges[at], edges[at + 1], xOf(at, stop), stop, edges[at + 4]);
            first = 0;
        }
        for (int row = cut.nextClearBit(first); row <= last; row = cut.nextClearBit(row)) {
            int end = cut.nextSetBit(row);
            int stop = end < 0 ? last + 1 : Math.min(end, last + 1);
            int from = Math.max(edges[at + 1], (row + top) * SUB);
            int to = Math.min(edges[at + 3], (stop + top) * SUB);
            add(xOf(at, from), from, xOf(at, to), to, edges[at + 4]);
            row = stop;
        }
    }

    private void add(int xa, int ya, int xb, int yb, int towards) {
        int at = outCount++ * 5;
        if (at == out.length) {
            out = Arrays.copyOf(out, 2 * at);
        }
        out[at] = xa;
        out[at + 1] = ya;
        out[at + 2] = xb;
        out[at + 3] = yb;
        out[at + 4] = towards;
    }
}
