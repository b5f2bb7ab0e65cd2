package inkground.plate;

import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.util.Arrays;

/**
 * The straight edges of a flattened path in device space, in fixed point with {@value #SUB_BITS} fraction bits, each from
 * its upper to its lower end with the direction it was drawn in; horizontal ones are left out. Independent of the region
 * that is painted. Immutable.
 */
final class EdgeList {
    /** Fraction bits of device coordinates: 1/1024 pixel. */
    static final int SUB_BITS = 10;

    static final int SUB = 1 << SUB_BITS;

    /** Coordinates are cut to ±2²⁰ pixels, which holds a 20 m page at 1,300 dpi. */
    private static final double REACH = 1 << 20;

    /** Largest distance of a curve from its chords, in pixels. */
    private static final double FLATNESS = 0.03;

    /** Rows per bucket of the index: those of a cell. */
    private static final int BUCKET = InkPlanes.CELL_H;

    private static final int INDEX_FROM = 64;

    private final int[] edges; // x0, y0, x1, y1, direction
    private final int count;
    private final int top;
    private final int bottom;
    private final int left;
    private final int right;
    private int[] bucketStart;
    private int[] bucketEdges;

    private EdgeList(int[] edges, int count) {
        this.edges = edges;
        this.count = count;
        int t = Integer.MAX_VALUE;
        int b = Integer.MIN_VALUE;
        int l = Integer.MAX_VALUE;
        int r = Integer.MIN_VALUE;
        for (int i = 0; i < count * 5; i += 5) {
            t = Math.min(t, edges[i + 1]);
            b = Math.max(b, edges[i + 3]);
            l = Math.min(l, Math.min(edges[i], edges[i + 2]));
            r = Math.max(r, Math.max(edges[i], edges[i + 2]));
        }
        top = count == 0 ? 0 : t >> SUB_BITS;
        bottom = count == 0 ? 0 : (b + SUB - 1) >> SUB_BITS;
        left = count == 0 ? 0 : l >> SUB_BITS;
        right = count == 0 ? 0 : (r + SUB - 1) >> SUB_BITS;
        if (count >= INDEX_FROM && bottom - top > BUCKET) {
            index();
        }
    }

    /** Flattens a path; open sub-paths are closed, as filling does. */
    static EdgeList of(Outline path, Matrix toDevice) {
        Flattener flattener = new Flattener(toDevice);
        path.forEach(flattener);
        flattener.closeSubPath();
        return new EdgeList(flattener.edges, flattener.count);
    }

    /** @return edges of the same area by the non-zero rule, in which what the path covers twice is not summed twice */
    EdgeList united() {
        EdgeUnion union = new EdgeUnion(edges, count);
        return count > 2 && union.unite(top, bottom) ? new EdgeList(union.edges(), union.count()) : this;
    }

    /** @return edges as {@link #united} in the rows where parts of the path overlap, as far as that is told cheaply; else these */
    EdgeList unitedWhereOverlapping() {
        if (count <= 3) {
            return this;
        }
        EdgeOverlaps overlaps = new EdgeOverlaps(edges, count);
        if (!overlaps.any()) {
            return this;
        }
        EdgeUnion union = new EdgeUnion(edges, count);
        return union.unite(overlaps.top(), overlaps.bottom()) ? new EdgeList(union.edges(), union.count()) : this;
    }

    /**
     * @param convex edges of a convex area
     * @return edges of what lies in that area too, exactly also where both have an edge in one pixel
     */
    EdgeList within(EdgeList convex) {
        EdgeCut cut = new EdgeCut(convex.edges, convex.count);
        for (int i = 0; i < count; i++) {
            cut.add(edges, i * 5);
        }
        return new EdgeList(cut.edges(), cut.count());
    }

    /** The rectangle with these pixel edges. */
    static EdgeList ofPixels(int x0, int y0, int x1, int y1) {
        return new EdgeList(
                new int[] {x0 * SUB, y0 * SUB, x0 * SUB, y1 * SUB, -1, x1 * SUB, y0 * SUB, x1 * SUB, y1 * SUB, 1}, 2);
    }

    /** @return first pixel row touched */
    int top() {
        return top;
    }

    /** @return row after the last touched */
    int bottom() {
        return bottom;
    }

    /** @return first pixel column touched */
    int left() {
        return left;
    }

    /** @return column after the last touched */
    int right() {
        return right;
    }

    int weight() {
        return 64 + edges.length * 4 + (bucketEdges == null ? 0 : bucketEdges.length * 4);
    }

    /** Hands all edges that touch the rows {@code y0 <= y < y1} to {@code band}, in no particular order. */
    void feed(int y0, int y1, CoverBand band) {
        if (bucketStart == null) {
            for (int i = 0; i < count; i++) {
                offer(i, y0, y1, band);
            }
            return;
        }
        int first = Math.max(0, Math.floorDiv(y0 - top, BUCKET));
        int last = Math.min(bucketStart.length - 2, Math.floorDiv(y1 - 1 - top, BUCKET));
        for (int b = first; b <= last; b++) {
            for (int k = bucketStart[b]; k < bucketStart[b + 1]; k++) {
                int i = bucketEdges[k];
                // an edge of several buckets is taken from the first one visited
                int own = Math.max(first, bucketOf(edges[i * 5 + 1]));
                if (own == b) {
                    offer(i, y0, y1, band);
                }
            }
        }
    }

    private void offer(int i, int y0, int y1, CoverBand band) {
        int at = i * 5;
        if (edges[at + 1] < y1 * SUB && edges[at + 3] > y0 * SUB) {
            band.edge(edges[at], edges[at + 1], edges[at + 2], edges[at + 3], edges[at + 4]);
        }
    }

    private int bucketOf(int y) {
        return ((y >> SUB_BITS) - top) / BUCKET;
    }

    private void index() {
        int buckets = (bottom - top + BUCKET - 1) / BUCKET;
        int[] start = new int[buckets + 1];
        for (int i = 0; i < count; i++) {
            int to = bucketOf(edges[i * 5 + 3] - 1);
            for (int b = bucketOf(edges[i * 5 + 1]); b <= to; b++) {
                start[b + 1]++;
            }
        }
        for (int b = 0; b < buckets; b++) {
            start[b + 1] += start[b];
        }
        int[] fill = start.clone();
        int[] list = new int[start[buckets]];
        for (int i = 0; i < count; i++) {
            int to = bucketOf(edges[i * 5 + 3] - 1);
            for (int b = bucketOf(edges[i * 5 + 1]); b <= to; b++) {
                list[fill[b]++] = i;
            }
        }
        bucketStart = start;
        bucketEdges = list;
    }

    /** Turns segments into edges. */
    private static final class Flattener implements Outline.Visitor {
        private final Matrix m;
        private int[] edges = new int[40];
        private int count;
        private double x;
        private double y;
        private double startX;
        private double startY;

        Flattener(Matrix m) {
            this.m = m;
        }

        @Override
        public void move(double px, double py) {
            closeSubPath();
            x = m.x(px, py);
            y = m.y(px, py);
            startX = x;
            startY = y;
        }

        @Override
        public void line(double px, double py) {
            to(m.x(px, py), m.y(px, py));
        }

        @Override
        public void curve(double ax, double ay, double bx, double by, double cx, double cy) {
            double x0 = x;
            double y0 = y;
            double x1 = m.x(ax, ay);
            double y1 = m.y(ax, ay);
            double x2 = m.x(bx, by);
            double y2 = m.y(bx, by);
            double x3 = m.x(cx, cy);
            double y3 = m.y(cx, cy);
            // A chord of a cubic cut into n equal steps is off by at most 6·d / (8·n²), d the larger second difference.
            double d = Math.max(
                    Math.hypot(x0 - 2 * x1 + x2, y0 - 2 * y1 + y2), Math.hypot(x1 - 2 * x2 + x3, y1 - 2 * y2 + y3));
            int n = (int) Math.max(1, Math.min(1000, Math.ceil(Math.sqrt(0.75 * d / FLATNESS))));
            for (int i = 1; i < n; i++) {
                double t = (double) i / n;
                double s = 1 - t;
                double w0 = s * s * s;
                double w1 = 3 * s * s * t;
                double w2 = 3 * s * t * t;
                double w3 = t * t * t;
                to(w0 * x0 + w1 * x1 + w2 * x2 + w3 * x3, w0 * y0 + w1 * y1 + w2 * y2 + w3 * y3);
            }
            to(x3, y3);
        }

        @Override
        public void close() {
            closeSubPath();
        }

        void closeSubPath() {
            if (x != startX || y != startY) {
                to(startX, startY);
            }
        }

        private void to(double nx, double ny) {
            double x0 = x;
            double y0 = y;
            x = nx;
            y = ny;
            if (inReach(x0) && inReach(y0) && inReach(nx) && inReach(ny)) {
                add(x0, y0, nx, ny);
            } else {
                cut(x0, y0, nx, ny);
            }
        }

        private static boolean inReach(double v) {
            return v >= -REACH && v <= REACH;
        }

        /** Cuts a far-flung edge: what is above or below the reach goes, what is beside it becomes vertical at the rim. */
        private void cut(double x0, double y0, double x1, double y1) {
            double[] ts = {0, 1, 0, 0, 0, 0};
            int n = 2;
            n = crossing(ts, n, y0, y1, -REACH);
            n = crossing(ts, n, y0, y1, REACH);
            n = crossing(ts, n, x0, x1, -REACH);
            n = crossing(ts, n, x0, x1, REACH);
            Arrays.sort(ts, 0, n);
            for (int i = 0; i + 1 < n; i++) {
                double mid = (ts[i] + ts[i + 1]) / 2;
                if (inReach(y0 + (y1 - y0) * mid)) {
                    add(
                            rim(x0 + (x1 - x0) * ts[i]),
                            rim(y0 + (y1 - y0) * ts[i]),
                            rim(x0 + (x1 - x0) * ts[i + 1]),
                            rim(y0 + (y1 - y0) * ts[i + 1]));
                }
            }
        }

        private static int crossing(double[] ts, int n, double from, double to, double at) {
            double t = (at - from) / (to - from);
            if (t > 0 && t < 1) {
                ts[n] = t;
                return n + 1;
            }
            return n;
        }

        private static double rim(double v) {
            return Math.max(-REACH, Math.min(REACH, v));
        }

        private void add(double xa, double ya, double xb, double yb) {
            int x0 = (int) Math.rint(xa * SUB);
            int y0 = (int) Math.rint(ya * SUB);
            int x1 = (int) Math.rint(xb * SUB);
            int y1 = (int) Math.rint(yb * SUB);
            if (y0 == y1) {
                return;
            }
            int at = count * 5;
            if (at == edges.length) {
                edges = Arrays.copyOf(edges, at * 2);
            }
            boolean down = y0 < y1;
            edges[at] = down ? x0 : x1;
            edges[at + 1] = down ? y0 : y1;
            edges[at + 2] = down ? x1 : x0;
            edges[at + 3] = down ? y1 : y0;
            edges[at + 4] = down ? 1 : -1;
            count++;
        }
    }
}
