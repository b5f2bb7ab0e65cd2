package inkground.appearance;

import java.util.Arrays;
import java.util.function.Consumer;

/**
 * The outlines in ink planes as chains of points: where rows and columns through the middles of pixels cross an edge. Between four
 * pixels that meet, an outline that comes in goes out; where three inks meet there, three outlines end. Not thread-safe.
 */
final class EdgeContours {
    private static final int NONE = -1;

    private final EdgeWalk walk;
    private final Counts counts;
    private final int width;
    private final int[] sides;
    private final int[] across; // point between a pixel and the one to its right
    private final int[] down; // and the one below
    private EdgeWalk.Edge[] edges = new EdgeWalk.Edge[256];
    private int[] links = new int[512];
    private double[] ends = new double[256]; // from the point to where three inks meet
    private int size;

    /** Tells which edges count. */
    @FunctionalInterface
    interface Counts {
        /** @return whether two vectors that meet make an edge */
        boolean edge(int from, int to);
    }

    /**
     * Points in order.
     *
     * @param edges the crossings
     * @param ends pixels by which the outline goes on beyond a point, to where three inks meet
     * @param closed whether the last is followed by the first
     */
    record Chain(EdgeWalk.Edge[] edges, double[] ends, boolean closed) {}

    /** Finds the outlines in what the walk has read last. */
    EdgeContours(EdgeWalk walk, Counts counts) {
        this.walk = walk;
        this.counts = counts;
        this.width = walk.width();
        this.sides = walk.sides();
        this.across = new int[sides.length];
        this.down = new int[sides.length];
        for (int i = 0; i < sides.length; i++) {
            int side = sides[i];
            boolean right = (i + 1) % width > 0 && sides[i + 1] != side;
            boolean below = i < sides.length - width && sides[i + width] != side;
            across[i] = right ? point(i, i + 1, false) : NONE;
            down[i] = below ? point(i, i + width, true) : NONE;
        }
        for (int i = 0; i < sides.length - width; i++) {
            boolean any = across[i] != NONE || down[i] != NONE || across[i + width] != NONE;
            if (any && (i + 1) % width > 0) {
                link(i);
            }
        }
    }

    private int point(int i, int next, boolean isDown) {
        if (!counts.edge(sides[i], sides[next])) {
            return NONE;
        }
        if (size == edges.length) {
            edges = Arrays.copyOf(edges, 2 * size);
            ends = Arrays.copyOf(ends, 2 * size);
            links = Arrays.copyOf(links, 4 * size);
        }
        edges[size] = new EdgeWalk.Edge(i % width, i / width, 1, isDown, sides[i], sides[next]);
        links[2 * size] = NONE;
        links[2 * size + 1] = NONE;
        return size++;
    }

    /** Joins the points between a pixel, the one to its right, and the two below. */
    private void link(int i) {
        int top = across[i];
        int bottom = across[i + width];
        int left = down[i];
        int right = down[i + 1];
        int[] around = new int[4];
        int count = 0;
        for (int point : new int[] {top, right, bottom, left}) {
            if (point != NONE) {
                around[count++] = point;
            }
        }
        if (count == 2) {
            join(around[0], around[1]);
        } else if (count == 4 && sides[i] == sides[i + width + 1] && sides[i + 1] == sides[i + width]) {
            EdgeWalk.Edge edge = edges[top];
            EdgeWalk.Edge below = edges[bottom];
            double own = walk.share(edge, 0) + 2 - walk.share(below, 0);
            boolean through =
                    own + walk.share(edge, 1) - walk.share(below, 1) < 2; // the pixel goes on to the one aslant
            join(top, through ? right : left);
            join(bottom, through ? left : right);
        } else if (count > 2) {
            meet(Arrays.copyOf(around, count));
        }
    }

    private void join(int a, int b) {
        links[2 * a + (links[2 * a] == NONE ? 0 : 1)] = b;
        links[2 * b + (links[2 * b] == NONE ? 0 : 1)] = a;
    }

    private void meet(int[] around) {
        double x = Arrays.stream(around)
                .mapToDouble(point -> edges[point].crossX(walk.at(edges[point])))
                .average()
                .orElse(0);
        double y = Arrays.stream(around)
                .mapToDouble(point -> edges[point].crossY(walk.at(edges[point])))
                .average()
                .orElse(0);
        for (int point : around) {
            double at = walk.at(edges[point]);
            ends[point] += Math.hypot(edges[point].crossX(at) - x, edges[point].crossY(at) - y);
        }
    }

    /** Hands over all outlines. */
    void each(Consumer<Chain> sink) {
        boolean[] seen = new boolean[size];
        int[] order = new int[size];
        for (int pass = 0; pass < 2; pass++) { // those with ends first: what is left is closed
            for (int first = 0; first < size; first++) {
                if (!seen[first] && (pass == 1 || links[2 * first + 1] == NONE)) {
                    int count = 0;
                    for (int next = first; next != NONE; ) {
                        seen[next] = true;
                        order[count++] = next;
                        int one = links[2 * next];
                        int other = links[2 * next + 1];
                        next = one != NONE && !seen[one] ? one : other != NONE && !seen[other] ? other : NONE;
                    }
                    sink.accept(chain(Arrays.copyOf(order, count), pass == 1));
                }
            }
        }
    }

    private Chain chain(int[] order, boolean closed) {
        EdgeWalk.Edge[] points = new EdgeWalk.Edge[order.length];
        double[] beyond = new double[order.length];
        for (int i = 0; i < order.length; i++) {
            points[i] = edges[order[i]];
            beyond[i] = ends[order[i]];
        }
        return new Chain(points, beyond, closed);
    }
}
