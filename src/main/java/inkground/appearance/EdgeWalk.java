package inkground.appearance;

import inkground.plate.InkPlanes;
import inkground.plate.VectorTable;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/**
 * Finds the edges in ink planes: places along rows and columns where the ink changes, bare included. Edge pixels that are half
 * covered belong to the nearer side, see {@link AskedColours#inside}; pixels that mix two inks are stepped over. Not
 * thread-safe.
 */
final class EdgeWalk {
    /** Pixels around a region that an edge within it may depend on. */
    static final int MARGIN_PX = 5;

    private static final int REACH_PX = 3;
    private static final int MOST_STEPPED_OVER = 3;

    private final int inks;
    private int levels = 31;
    private List<int[]> vectors = new ArrayList<>();
    private Map<String, Integer> indices = new HashMap<>();
    private InkPlanes planes;
    private int[] ids;

    /**
     * Where a row or a column crosses an edge.
     *
     * @param x pixel before the edge, from the planes' own left
     * @param y pixel before the edge, from the planes' own top
     * @param span pixels from the one before to the one behind the edge
     * @param down whether the edge was met going down a column rather than along a row
     * @param from vector before the edge
     * @param to vector behind it
     */
    record Edge(int x, int y, int span, boolean down, int from, int to) {
        /** @return pixel behind the edge, from the planes' own left */
        int endX() {
            return down ? x : x + span;
        }

        /** @return pixel behind the edge, from the planes' own top */
        int endY() {
            return down ? y + span : y;
        }
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

    /** @return width of the planes read last */
    int width() {
        return planes.width();
    }

    /** @return height of the planes read last */
    int height() {
        return planes.height();
    }

    /** Walks all edges of the planes read last: row by row, then column by column. */
    void walk(Consumer<Edge> sink) {
        for (int y = 0; y < planes.height(); y++) {
            line(y, false, sink);
        }
        for (int x = 0; x < planes.width(); x++) {
            line(x, true, sink);
        }
    }

    /**
     * Walks the edges along one row or column.
     *
     * @param at which
     * @param down whether it is a column
     */
    void line(int at, boolean down, Consumer<Edge> sink) {
        int first = down ? at : at * planes.width();
        int step = down ? planes.width() : 1;
        int length = down ? planes.height() : planes.width();
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
            sink.accept(new Edge(down ? at : i - 1, down ? i - 1 : at, end - i + 1, down, last, next));
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
     * @return where an edge crosses its row or column, in pixels from the middle of the first: coverage added up over the pixels
     *     that the edge runs through
     */
    double at(Edge edge) {
        int[] a = vectors.get(edge.from);
        int[] b = vectors.get(edge.to);
        int first = edge.down ? edge.y : edge.x;
        int end = first + edge.span;
        double at = end - 0.5;
        for (int k = first + 1; k < end; k++) {
            at -= share(edge, k - first, 0, a, b);
        }
        double before = 1;
        for (int k = 0; k > -REACH_PX; k--) {
            double share = share(edge, k, 0, a, b);
            if (share >= before) {
                break;
            }
            at -= share;
            before = share;
        }
        before = 1;
        for (int k = edge.span; k < edge.span + REACH_PX; k++) {
            double missing = 1 - share(edge, k, 0, a, b);
            if (missing >= before) {
                break;
            }
            at += missing;
            before = missing;
        }
        return at;
    }

    /**
     * @param at where along the row or column, as {@link #at}
     * @param aside how many rows below, or columns to the right of, the edge's own
     * @return how much of the way from one side of an edge to the other is gone within two pixels there, 0 to 1
     */
    double step(Edge edge, double at, int aside) {
        int[] a = vectors.get(edge.from);
        int[] b = vectors.get(edge.to);
        int middle = (int) Math.round(at) - (edge.down ? edge.y : edge.x);
        double least = 1;
        double most = 0;
        for (int k = middle - 2; k <= middle + 2; k++) {
            double share = share(edge, k, aside, a, b);
            least = Math.min(least, share);
            most = Math.max(most, share);
        }
        return most - least;
    }

    /** @return whether ink changes no less along the row or column than beside it: no crossing of an edge that runs along it */
    boolean meetsHeadOn(Edge edge) {
        int along = change(edge.x, edge.y, edge.endX() - edge.x, edge.endY() - edge.y);
        return along >= Math.max(across(edge, edge.x, edge.y), across(edge, edge.endX(), edge.endY()));
    }

    private int across(Edge edge, int x, int y) {
        int dx = edge.down ? edge.span : 0;
        int dy = edge.down ? 0 : edge.span;
        int oneSide = Math.max(change(x, y, dx, dy), change(x, y, -dx, -dy));
        return Math.max(oneSide, change(x - dx, y - dy, 2 * dx, 2 * dy));
    }

    private int change(int x, int y, int dx, int dy) {
        int sum = 0;
        for (int i = 0; i < inks; i++) {
            sum += Math.abs(tint(i, x, y) - tint(i, x + dx, y + dy));
        }
        return sum;
    }

    private int tint(int ink, int x, int y) {
        return planes.get(
                ink, Math.max(0, Math.min(planes.width() - 1, x)), Math.max(0, Math.min(planes.height() - 1, y)));
    }

    /** Where the tints of the pixel {@code k} along an edge's way lie between its sides: 0 before it, 1 behind it. */
    private double share(Edge edge, int k, int aside, int[] a, int[] b) {
        int x = edge.x + (edge.down ? aside : k);
        int y = edge.y + (edge.down ? k : aside);
        double dot = 0;
        double square = 0;
        for (int i = 0; i < inks; i++) {
            double d = b[i] - a[i];
            dot += d == 0 ? 0 : (tint(i, x, y) - a[i]) * d;
            square += d * d;
        }
        return Math.max(0, Math.min(1, dot / square));
    }
}
