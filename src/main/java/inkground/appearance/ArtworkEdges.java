package inkground.appearance;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlateRequest;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The edges of a page that the artwork means to be seen: which two ink vectors meet, over what length. Gathered once; what
 * becomes of them on a substrate is then a matter of milliseconds, see {@link VanishScore}. Bare counts as a neighbour. An edge
 * is meant to be seen if its two sides differ by {@link #CLEAR_DE00} or more on the print condition's own paper or on black cloth:
 * dark ink is meant for light grounds and light ink for dark ones, and no edge is held to be both.
 * Immutable.
 */
public final class ArtworkEdges {
    /** ΔE00 from which two areas side by side are told apart at arm's length and more. Common practice, no source. */
    public static final double CLEAR_DE00 = 10;
    /**
     * Resolution at which edges are best gathered: finer shows no other share, coarser loses thin lines. Lengths are right within
     * 0.5 % for discs from 1 mm and squares from 3 mm across; see {@link EdgeLengths} for the rest.
     */
    public static final double DPI = 100;

    private static final int MOST_VECTORS = 4096;
    private static final int MOST_PAIRS = 8192;

    private final List<int[]> vectors;
    private final List<Pair> pairs;
    private final double mm;

    /**
     * Two vectors that meet.
     *
     * @param a index of one
     * @param b index of the other
     * @param mm length over which they meet, in mm
     */
    record Pair(int a, int b, double mm) {}

    private ArtworkEdges(List<int[]> vectors, List<Pair> pairs) {
        this.vectors = List.copyOf(vectors);
        this.pairs = List.copyOf(pairs);
        this.mm = pairs.stream().mapToDouble(Pair::mm).sum();
    }

    /** @return tints of the vectors, 0 to 255 each */
    List<int[]> vectors() {
        return vectors;
    }

    /** @return the pairs that meet */
    List<Pair> pairs() {
        return pairs;
    }

    /** @return length of all edges that are meant to be seen, in mm */
    public double mm() {
        return mm;
    }

    /**
     * Gathers the edges of a region. Tints are taken in steps of 1/31; where a photograph has more than {@value #MOST_PAIRS}
     * pairs, in wider ones.
     *
     * @param source planes of the inks that {@code asked} knows
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    public static ArtworkEdges of(
            PlaneSource source, PlateRequest region, AskedColours asked, Cancel cancel, Progress progress)
            throws Refusal {
        Gathering gathering = new Gathering(asked);
        for (int y = region.y0(); y < region.y1(); y += PlaneSource.ROWS_AT_ONCE) {
            cancel.check();
            progress.report("finding edges", (double) (y - region.y0()) / region.height());
            gathering.add(source, region, y, Math.min(region.y1(), y + PlaneSource.ROWS_AT_ONCE), cancel);
        }
        progress.report("finding edges", 1);
        return gathering.edges(region.mmPerPx());
    }

    private static final class Gathering {
        private final AskedColours asked;
        private final Map<Long, Double> lengths = new HashMap<>(); // in pixels; negative: not clear, so not measured
        private EdgeWalk walk;
        private int lastA = -1; // most edges are between the same two as the one before
        private int lastB = -1;
        private boolean lastIsEdge;

        Gathering(AskedColours asked) {
            this.asked = asked;
        }

        void add(PlaneSource source, PlateRequest region, int top, int bottom, Cancel cancel) throws Refusal {
            int margin = EdgeLengths.MARGIN_PX;
            InkPlanes planes = source.planes(
                    region.part(region.x0(), top, region.x1(), bottom).grown(margin), cancel);
            walk = walk == null ? new EdgeWalk(planes.inks().size()) : walk;
            walk.read(planes);
            lastA = -1;
            int end = margin + region.width();
            int last = margin + region.y1() - top;
            EdgeLengths.measure(walk, this::isEdge, (edge, px) -> {
                // an edge belongs to the band that it starts in, and to the page if both sides do
                boolean here = edge.y() >= margin && edge.y() < margin + bottom - top && edge.x() >= margin;
                if (here && edge.endX() < end && edge.endY() < last) {
                    lengths.merge(key(edge.from(), edge.to()), px, Double::sum);
                }
            });
            while ((walk.vectors().size() > MOST_VECTORS || lengths.size() > MOST_PAIRS) && walk.canBeCoarser()) {
                merge(walk.coarser());
            }
        }

        private boolean isEdge(int a, int b) {
            if (a == lastA && b == lastB) {
                return lastIsEdge;
            }
            lastA = a;
            lastB = b;
            lastIsEdge = lengths.computeIfAbsent(key(a, b), k -> clear(a, b) ? 0.0 : -1.0) >= 0;
            return lastIsEdge;
        }

        private boolean clear(int a, int b) {
            List<int[]> vectors = walk.vectors();
            return asked.contrast(vectors.get(a), vectors.get(b)) >= CLEAR_DE00;
        }

        private static long key(int a, int b) {
            return (long) Math.min(a, b) << 32 | Math.max(a, b);
        }

        private void merge(int[] renamed) {
            Map<Long, Double> old = new HashMap<>(lengths);
            lengths.clear();
            old.forEach((key, length) -> {
                int a = renamed[(int) (key >> 32)];
                int b = renamed[(int) (long) key];
                if (a != b) {
                    lengths.merge(key(a, b), length, (p, q) -> p < 0 && q < 0 ? -1 : Math.max(0, p) + Math.max(0, q));
                }
            });
        }

        ArtworkEdges edges(double mmPerPx) {
            List<Pair> pairs = new ArrayList<>();
            lengths.forEach((key, px) -> {
                if (px > 0) {
                    pairs.add(new Pair((int) (key >> 32), (int) (long) key, px * mmPerPx));
                }
            });
            return new ArtworkEdges(walk == null ? List.of() : walk.vectors(), pairs);
        }
    }
}
