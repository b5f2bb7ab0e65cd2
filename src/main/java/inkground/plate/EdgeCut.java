package inkground.plate;

import java.util.Arrays;

/**
 * Cuts edges to a convex area. What lies above or below the area goes; what lies beside it moves sideways onto the area's rim,
 * which changes no winding inside and leaves none outside. One use, one thread.
 */
final class EdgeCut {
    private final int[] rim; // as in EdgeList: x0, y0, x1, y1, direction
    private final int rimCount;
    private final int[] heights; // where edges of the rim begin or end, sorted
    private int[] out = new int[40];
    private int outCount;

    /**
     * @param rim edges of a convex area, as in {@link EdgeList}
     * @param rimCount how many
     */
    EdgeCut(int[] rim, int rimCount) {
        this.rim = rim;
        this.rimCount = rimCount;
        this.heights = new int[2 * rimCount];
        for (int i = 0; i < rimCount; i++) {
            heights[2 * i] = rim[i * 5 + 1];
            heights[2 * i + 1] = rim[i * 5 + 3];
        }
        Arrays.sort(heights);
    }

    int[] edges() {
        return out;
    }

    int count() {
        return outCount;
    }

    /** Adds what an edge, which begins at {@code at}, becomes. */
    void add(int[] edges, int at) {
        for (int h = 1; h < heights.length; h++) {
            int from = Math.max(edges[at + 1], heights[h - 1]);
            int to = Math.min(edges[at + 3], heights[h]);
            if (from < to) {
                addBetween(edges, at, from, to);
            }
        }
    }

    /** The part of an edge between two heights, between which the area has one edge on either side. */
    private void addBetween(int[] edges, int at, int from, int to) {
        int[] sides = {-1, -1};
        int found = 0;
        for (int i = 0; i < rimCount && found < 2; i++) {
            if (rim[i * 5 + 1] <= from && rim[i * 5 + 3] >= to) {
                sides[found++] = i * 5;
            }
        }
        if (found < 2) { // the area has no width here
            return;
        }
        int[] ys = {from, crossing(edges, at, sides[0], from, to), crossing(edges, at, sides[1], from, to), to};
        Arrays.sort(ys);
        for (int i = 1; i < ys.length; i++) {
            if (ys[i - 1] < ys[i]) {
                append(
                        inside(edges, at, sides, ys[i - 1]),
                        ys[i - 1],
                        inside(edges, at, sides, ys[i]),
                        ys[i],
                        edges[at + 4]);
            }
        }
    }

    /** @return height at which an edge crosses one of the rim, or {@code from} where it does not */
    private int crossing(int[] edges, int at, int side, int from, int to) {
        double above = xAt(edges, at, from) - xAt(rim, side, from);
        double below = xAt(edges, at, to) - xAt(rim, side, to);
        return above * below < 0 ? from + (int) Math.rint((to - from) * (above / (above - below))) : from;
    }

    private int inside(int[] edges, int at, int[] sides, int y) {
        double a = xAt(rim, sides[0], y);
        double b = xAt(rim, sides[1], y);
        double x = Math.max(Math.min(a, b), Math.min(Math.max(a, b), xAt(edges, at, y)));
        return (int) Math.rint(x);
    }

    private static double xAt(int[] edges, int at, int y) {
        double height = (double) edges[at + 3] - edges[at + 1];
        return edges[at] + ((double) edges[at + 2] - edges[at]) * (((double) y - edges[at + 1]) / height);
    }

    private void append(int x0, int y0, int x1, int y1, int direction) {
        int i = outCount++ * 5;
        if (i == out.length) {
            out = Arrays.copyOf(out, i * 2);
        }
        out[i] = x0;
        out[i + 1] = y0;
        out[i + 2] = x1;
        out[i + 3] = y1;
        out[i + 4] = direction;
    }
}
