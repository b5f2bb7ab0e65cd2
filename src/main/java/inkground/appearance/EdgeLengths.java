package inkground.appearance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Measures edges along their outlines. Coverage added up along a row tells where a steep edge crosses the middle of the row, and
 * along a column where a flat one crosses that of the column: for straight edges exactly, at any angle. Points so found make a
 * polygon, with two things put right: between points of a curve lies an arc, and where two straight runs make a corner they go on to
 * where they meet, since next to a corner coverage is that of both.
 *
 * <p>Curves down to a radius of 2 pixels are right within 0.5 %, shapes with corners of 40° and more within a fifth of a pixel a
 * corner down to 6 pixels. An end of a line of 3 pixels and less costs up to a pixel, a sharper tip up to four, and so
 * does a tip of 40° on another ink.
 */
final class EdgeLengths {
    /** Pixels around a region that the lengths within it may depend on. */
    static final int MARGIN_PX = 8;

    private static final int FEWEST = 8; // points of an outline whose directions are told apart
    private static final int ASIDE = 2; // points on each side that tell the direction at one
    private static final int ROUGHLY_ASIDE = 4; // pixels that tell it where it is clear
    private static final int CLEARLY = 2;
    private static final int FLANK = 2; // pieces of an outline that tell its direction beside a corner
    private static final int WIDEST = 12; // pieces of an outline that a corner may spoil
    private static final double STRAIGHT_ON = Math.cos(Math.toRadians(25)); // below that angle an arc is as good
    private static final double CORNER_PER_PIECE = Math.toRadians(12); // only sharp corners spoil many
    private static final double SHARPEST = Math.toRadians(160); // beyond it two sides are those of a line
    private static final double STRAIGHT = 0.1; // most that a flank turns, as part of what the corner does
    private static final double BENT = Math.toRadians(7); // most that it turns at all
    private static final double FARTHEST_PX = 8; // from what is straight to the corner
    private static final double MOST_ARC = 1; // in radians

    private final double[] x;
    private final double[] y;
    private final boolean closed;
    private final double[] pieces; // length from each point to the next

    /** Receives the length that a crossing stands for. */
    @FunctionalInterface
    interface Sink {
        /**
         * @param edge the crossing
         * @param px length, in pixels, 0 or more
         */
        void length(EdgeWalk.Edge edge, double px);
    }

    /** Measures all edges that count in what a walk has read last. */
    static void measure(EdgeWalk walk, EdgeContours.Counts counts, Sink sink) {
        new EdgeContours(walk, counts).each(chain -> measure(walk, chain, sink));
    }

    private static void measure(EdgeWalk walk, EdgeContours.Chain chain, Sink sink) {
        Points points = new Points(walk, chain);
        int[] kept = points.kept();
        double[] pieces = new EdgeLengths(points, kept).pieces;
        int n = kept.length;
        for (int i = 0; i < n; i++) {
            double before = i > 0 ? pieces[i - 1] : chain.closed() ? pieces[n - 1] : 0;
            double px = (before + pieces[i]) / 2 + chain.ends()[kept[i]];
            sink.length(chain.edges()[kept[i]], px);
        }
    }

    /** The points of an outline, each found when it is asked for: most of those that are left out never are. */
    private static final class Points {
        private final EdgeWalk walk;
        private final EdgeWalk.Edge[] edges;
        private final boolean closed;
        private final double[] at;

        Points(EdgeWalk walk, EdgeContours.Chain chain) {
            this.walk = walk;
            this.edges = chain.edges();
            this.closed = chain.closed();
            this.at = new double[edges.length];
            Arrays.fill(at, Double.NaN);
        }

        private double at(int i) {
            at[i] = Double.isNaN(at[i]) ? walk.at(edges[i]) : at[i];
            return at[i];
        }

        double x(int i) {
            return edges[i].crossX(at(i));
        }

        double y(int i) {
            return edges[i].crossY(at(i));
        }

        /** The points that tell exactly where an edge is: rows do where it is steep, and columns where it is flat. */
        int[] kept() {
            int n = edges.length;
            return IntStream.range(0, n)
                    .filter(i -> !closed && (i == 0 || i == n - 1) || n < FEWEST || edges[i].down() == isFlat(i))
                    .toArray();
        }

        private boolean isFlat(int i) {
            int before = beside(i, -ROUGHLY_ASIDE);
            int next = beside(i, ROUGHLY_ASIDE);
            int dx = Math.abs(edges[next].x() + edges[next].endX() - edges[before].x() - edges[before].endX());
            int dy = Math.abs(edges[next].y() + edges[next].endY() - edges[before].y() - edges[before].endY());
            if (dx > CLEARLY * dy || dy > CLEARLY * dx) {
                return dx > dy;
            }
            before = beside(i, -ASIDE);
            next = beside(i, ASIDE);
            return Math.abs(x(next) - x(before)) > Math.abs(y(next) - y(before));
        }

        private int beside(int i, int by) {
            int n = edges.length;
            return closed ? Math.floorMod(i + by, n) : Math.max(0, Math.min(n - 1, i + by));
        }
    }

    private EdgeLengths(Points points, int[] kept) {
        this.x = IntStream.of(kept).mapToDouble(points::x).toArray();
        this.y = IntStream.of(kept).mapToDouble(points::y).toArray();
        this.closed = points.closed;
        this.pieces = new double[x.length];
        for (int i = 0; i < (closed ? x.length : x.length - 1); i++) {
            boolean inside = closed || i > 0 && i < x.length - 2;
            double turn = inside ? Math.min(MOST_ARC, Math.abs(turn(i - 1, i, i + 1, i + 2)) / 2) : 0;
            // 1/24 for the chord, and as much since the middle of what a row crosses lies inside of the curve
            pieces[i] = distance(i, i + 1) * (1 + turn * turn / 12);
        }
        corners();
    }

    /** Where two straight runs would meet. */
    private record Corner(int from, int to, double length, double bent) {}

    private void corners() {
        List<Corner> found = new ArrayList<>();
        int n = x.length;
        double[] before = new double[n]; // by how much the pieces before and behind a point turn
        double[] behind = new double[n];
        for (int i = 0; i < n; i++) {
            before[i] = closed || i >= FLANK ? Math.abs(turn(i - 2, i - 1, i - 1, i)) : Math.PI;
            behind[i] = closed || i < n - FLANK ? Math.abs(turn(i, i + 1, i + 1, i + 2)) : Math.PI;
        }
        for (int from = 0; from < n; from++) {
            for (int span = 1; before[from] < BENT && span <= WIDEST && span + 2 * FLANK < n; span++) {
                double bent = before[from] + behind[(from + span) % n];
                Corner corner = bent < BENT && (closed || from + span < n) ? corner(from, from + span, bent) : null;
                if (corner != null) {
                    found.add(corner);
                }
            }
        }
        found.sort(Comparator.comparingDouble(Corner::bent));
        boolean[] taken = new boolean[n];
        for (Corner corner : found) {
            boolean free = true;
            for (int i = corner.from; i < corner.to; i++) {
                free &= !taken[i % n];
            }
            for (int i = corner.from; i < corner.to && free; i++) {
                taken[i % n] = true;
                pieces[i % n] = corner.length / (corner.to - corner.from);
            }
        }
    }

    private Corner corner(int from, int to, double bent) {
        if (dx(from - FLANK, from) * dx(to, to + FLANK) + dy(from - FLANK, from) * dy(to, to + FLANK)
                > STRAIGHT_ON * distance(from - FLANK, from) * distance(to, to + FLANK)) {
            return null;
        }
        double turn = Math.abs(turn(from - FLANK, from, to, to + FLANK));
        boolean sharp = turn >= CORNER_PER_PIECE * (to - from) && turn <= SHARPEST;
        if (!sharp || bent > STRAIGHT * turn) {
            return null;
        }
        double ux = dx(from - FLANK, from);
        double uy = dy(from - FLANK, from);
        double vx = dx(to, to + FLANK);
        double vy = dy(to, to + FLANK);
        double cross = ux * vy - uy * vx;
        double ahead = (dx(from, to) * vy - dy(from, to) * vx) / cross * Math.hypot(ux, uy);
        double behind = (dx(from, to) * uy - dy(from, to) * ux) / -cross * Math.hypot(vx, vy);
        boolean meets = ahead >= 0 && behind >= 0 && ahead <= FARTHEST_PX && behind <= FARTHEST_PX;
        return meets ? new Corner(from, to, ahead + behind, bent / turn + 0.01 * (to - from)) : null;
    }

    /** The angle between two pieces of the outline, in radians, -π to π. */
    private double turn(int a, int b, int c, int d) {
        double cross = dx(a, b) * dy(c, d) - dy(a, b) * dx(c, d);
        double dot = dx(a, b) * dx(c, d) + dy(a, b) * dy(c, d);
        return Math.atan2(cross, dot);
    }

    private double distance(int a, int b) {
        return Math.hypot(dx(a, b), dy(a, b));
    }

    private double dx(int a, int b) {
        return x[wrapped(b)] - x[wrapped(a)];
    }

    private double dy(int a, int b) {
        return y[wrapped(b)] - y[wrapped(a)];
    }

    private int wrapped(int i) {
        return Math.floorMod(i, x.length);
    }
}
