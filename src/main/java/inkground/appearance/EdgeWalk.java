package inkground.appearance;

import inkground.plate.InkPlanes;
import inkground.plate.VectorTable;
import java.util.ArrayList;
import java.util.Arrays;
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
    /** Share from which a pixel is not whole: the step of a tint is 0.004. */
    private static final double PURE = 0.02;

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

        /** @return where a crossing {@code at} so many pixels along the row or column lies, from the middle of the planes' first pixel */
        double crossX(double at) {
            return down ? x : at;
        }

        /** @return as {@link #crossX} */
        double crossY(double at) {
            return down ? at : y;
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
     *     that the edge runs through. Where the next edge runs through them too, half a line or gap from its middle.
     */
    double at(Edge edge) {
        double at = edge.span - 0.5;
        for (int k = 1; k < edge.span; k++) {
            at -= share(edge, k);
        }
        for (int way = -1; way <= 1; way += 2) {
            int k = way < 0 ? 0 : edge.span;
            double before = 1;
            double left = left(edge, k, way);
            while (left < before && Math.abs(k) < edge.span + REACH_PX) {
                at += way * left;
                before = left;
                k += way;
                left = left(edge, k, way);
            }
            if (before > PURE && before < 1 && left >= before) {
                return first(edge) + beside(edge, k - way, way);
            }
        }
        return first(edge) + at;
    }

    /** What the side that is left still has of a pixel, going to either. */
    private double left(Edge edge, int k, int way) {
        double share = share(edge, k);
        return way < 0 ? share : 1 - share;
    }

    /** Half of what is narrow from its middle; {@code peak} is its fullest pixel. */
    private double beside(Edge edge, int peak, int way) {
        double sum = 0;
        double moment = 0;
        for (int side = -1; side <= 1; side += 2) {
            double before = 1;
            for (int k = side < 0 ? peak : peak + 1; Math.abs(k - peak) <= REACH_PX; k += side) {
                double part = 1 - left(edge, k, way);
                if (part > before) {
                    break;
                }
                sum += part;
                moment += part * k;
                before = part;
            }
        }
        return moment / sum - way * sum / 2;
    }

    private static int first(Edge edge) {
        return edge.down ? edge.y : edge.x;
    }

    /**
     * The side that each pixel of the planes read last is on: its own vector, or, where it mixes two inks, the nearer one of the edge
     * that it is part of. An edge that changes more goes first: along an edge, mixtures change a little too.
     *
     * @return indices of {@link #vectors}, row by row
     */
    int[] sides() {
        int[] sides = ids.clone();
        int[] nearer = new int[ids.length];
        Arrays.fill(nearer, -1);
        int[] most = new int[ids.length];
        walk(edge -> {
            int change = edge.span > 1 ? change(edge.from, edge.to) : 0;
            for (int k = 1; k < edge.span; k++) {
                int at = pixel(edge, k);
                if (change > most[at]) {
                    most[at] = change;
                    nearer[at] = pixel(edge, share(edge, k) < 0.5 ? 0 : edge.span);
                }
            }
        });
        for (int i = 0; i < ids.length; i++) {
            int at = i;
            for (int steps = 0; steps < MOST_STEPPED_OVER && nearer[at] >= 0; steps++) {
                at = nearer[at];
            }
            sides[i] = ids[at];
        }
        return settled(sides);
    }

    /** At a corner a pixel may mix the sides of an edge that no row or column crosses there: it goes to the nearer, if it lies between. */
    private int[] settled(int[] sides) {
        int width = planes.width();
        int[] out = sides.clone();
        for (int y = 1; y < planes.height() - 1; y++) {
            for (int at = y * width + 1; at < (y + 1) * width - 1; at++) {
                if (sides[at] == sides[at - 1] || sides[at] == sides[at + 1]) {
                    continue;
                }
                int most = 0;
                for (int step : new int[] {1, width, width + 1, width - 1}) {
                    int a = sides[at - step];
                    int b = sides[at + step];
                    if (a != sides[at] && b != sides[at] && between(a, sides[at], b) && change(a, b) > most) {
                        most = change(a, b);
                        out[at] = 2 * change(a, sides[at]) < most ? a : b;
                    }
                }
            }
        }
        return out;
    }

    private int pixel(Edge edge, int k) {
        return (edge.y + (edge.down ? k : 0)) * planes.width() + edge.x + (edge.down ? 0 : k);
    }

    private int change(int a, int b) {
        int[] one = vectors.get(a);
        int[] other = vectors.get(b);
        int sum = 0;
        for (int i = 0; i < inks; i++) {
            sum += Math.abs(one[i] - other[i]);
        }
        return sum;
    }

    private int tint(int ink, int x, int y) {
        return planes.get(
                ink, Math.max(0, Math.min(planes.width() - 1, x)), Math.max(0, Math.min(planes.height() - 1, y)));
    }

    /** Where the tints of the pixel {@code k} along an edge's way lie between its sides: 0 before it, 1 behind it. */
    double share(Edge edge, int k) {
        int[] a = vectors.get(edge.from);
        int[] b = vectors.get(edge.to);
        int x = edge.x + (edge.down ? 0 : k);
        int y = edge.y + (edge.down ? k : 0);
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
