package inkground.appearance;

import inkground.plate.InkPlanes;
import inkground.plate.VectorTable;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Finds the edges in ink planes: places along rows and columns where the ink changes, bare included. Edge pixels that are half
 * covered belong to the nearer side, see {@link AskedColours#inside}; pixels that mix two inks are stepped over. Not
 * thread-safe.
 */
final class EdgeWalk {
    /** Pixels around a region that an edge within it may depend on. */
    static final int MARGIN_PX = 5;

    private static final int REACH_PX = 3;
    private static final double SIGMA_PX = 1.1;
    private static final int MOST_STEPPED_OVER = 3;

    private final int inks;
    private int levels = 31;
    private List<int[]> vectors = new ArrayList<>();
    private Map<String, Integer> indices = new HashMap<>();
    private InkPlanes planes;
    private int[] ids;

    /** Receives an edge. */
    @FunctionalInterface
    interface Sink {
        /**
         * @param x pixel before the edge, from the planes' own left
         * @param y pixel before the edge, from the planes' own top
         * @param span pixels from the one before to the one behind the edge
         * @param down whether the edge was met going down a column rather than along a row
         * @param from vector before the edge
         * @param to vector behind it
         */
        void edge(int x, int y, int span, boolean down, int from, int to);
    }

    /** @param inks number of inks of the planes */
    EdgeWalk(int inks) {
        this.inks = inks;
    }

    /** @return tints, 0 to 255, of the vectors met so far, in steps of 1/{@link #levels} */
    List<int[]> vectors() {
        return vectors;
    }

    /** @return whether {@link #coarser} would still change anything */
    boolean canBeCoarser() {
        return levels > 1;
    }

    /**
     * Makes the steps of tints wider, so that there are fewer vectors.
     *
     * @return for each old vector the new one
     */
    int[] coarser() {
        levels = Math.max(1, levels / 2);
        List<int[]> old = vectors;
        vectors = new ArrayList<>();
        indices = new HashMap<>();
        return old.stream().mapToInt(this::index).toArray();
    }

    private int index(int[] tints) {
        char[] key = new char[inks];
        for (int i = 0; i < inks; i++) {
            key[i] = (char) Math.round(Math.round(tints[i] / 255.0 * levels) * 255.0 / levels);
        }
        return indices.computeIfAbsent(new String(key), k -> {
            vectors.add(k.chars().toArray());
            return vectors.size() - 1;
        });
    }

    /** Reads planes; edges are walked afterwards. */
    void read(InkPlanes next) {
        planes = next;
        ids = new int[next.width() * next.height()];
        int[] inside = new int[inks];
        VectorTable.spread(
                next,
                vector -> {
                    AskedColours.inside(vector, inks, inside);
                    return index(inside);
                },
                ids);
    }

    /**
     * Walks the edges of the planes read last.
     *
     * @param x0 first column of pixels before an edge
     * @param y0 first row
     * @param x1 right end of the region, exclusive: both sides of an edge lie in it
     * @param y1 bottom end
     */
    void walk(int x0, int y0, int x1, int y1, Sink sink) {
        for (int y = y0; y < y1; y++) {
            line(y * planes.width(), 1, planes.width(), x0, x1, y, false, sink);
        }
        for (int x = x0; x < x1; x++) {
            line(x, planes.width(), planes.height(), y0, y1, x, true, sink);
        }
    }

    private void line(int first, int step, int length, int from, int to, int at, boolean down, Sink sink) {
        int last = ids[first];
        for (int i = 1; i < length; i++) {
            int next = ids[first + i * step];
            if (next == last) {
                continue;
            }
            int end = i;
            while (end - i < MOST_STEPPED_OVER
                    && end + 1 < length
                    && ids[first + (end + 1) * step] != ids[first + end * step]
                    && between(last, ids[first + end * step], ids[first + (end + 1) * step])) {
                end++;
            }
            next = ids[first + end * step];
            if (i - 1 >= from && end < to) {
                sink.edge(down ? at : i - 1, down ? i - 1 : at, end - i + 1, down, last, next);
            }
            last = next;
            i = end;
        }
    }

    private boolean between(int a, int middle, int b) {
        if (a == b) {
            return false;
        }
        int[] from = vectors.get(a);
        int[] mid = vectors.get(middle);
        int[] to = vectors.get(b);
        for (int i = 0; i < inks; i++) {
            if (mid[i] < Math.min(from[i], to[i]) || mid[i] > Math.max(from[i], to[i])) {
                return false;
            }
        }
        return true;
    }

    /**
     * How much of an edge's length one crossing stands for. An edge of length L at an angle φ to the columns is crossed L |cos φ|
     * times along rows and L |sin φ| times along columns; weighed by |cos φ| and |sin φ| the crossings add up to L. The angle is
     * that of the slope of a Gaussian, which is the same all around.
     *
     * @return length in pixels, 0 to 1
     */
    double length(int x, int y, int span, boolean down, int from, int to) {
        int[] a = vectors.get(from);
        int[] b = vectors.get(to);
        double along = 0;
        double aside = 0;
        for (int k = -REACH_PX; k <= span + REACH_PX; k++) {
            double u = k - span / 2.0;
            for (int j = -REACH_PX; j <= REACH_PX; j++) {
                double weight = Math.exp(-(u * u + j * j) / (2 * SIGMA_PX * SIGMA_PX))
                        * share(down ? x + j : x + k, down ? y + k : y + j, a, b);
                along += u * weight;
                aside += j * weight;
            }
        }
        double slope = Math.hypot(along, aside);
        return slope == 0 ? 1 : Math.abs(along) / slope;
    }

    /** Where a pixel's tints lie between two vectors: 0 at the first, 1 at the second. */
    private double share(int x, int y, int[] a, int[] b) {
        int px = Math.max(0, Math.min(planes.width() - 1, x));
        int py = Math.max(0, Math.min(planes.height() - 1, y));
        double dot = 0;
        double square = 0;
        for (int i = 0; i < inks; i++) {
            double d = b[i] - a[i];
            dot += d == 0 ? 0 : (planes.get(i, px, py) - a[i]) * d;
            square += d * d;
        }
        return Math.max(0, Math.min(1, dot / square));
    }
}
