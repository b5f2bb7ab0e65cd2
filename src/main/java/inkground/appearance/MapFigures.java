package inkground.appearance;

import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import java.util.Arrays;
import java.util.List;

/**
 * The areas of a map's entries in a region.
 *
 * @param pixels area of each entry in pixels, in the order of the legend; parts of pixels where a map shares out its edges
 * @param cm2PerPixel area of one pixel in cm²
 * @param largest the largest value met, in the map's own unit; NaN where the map measures none
 */
public record MapFigures(List<Double> pixels, double cm2PerPixel, double largest) {
    /** Copies the list. */
    public MapFigures {
        pixels = List.copyOf(pixels);
    }

    /** @return area of an entry in cm² */
    public double cm2(int entry) {
        return pixels.get(entry) * cm2PerPixel;
    }

    /** @return part of the region that an entry has, 0 to 1; 0 for an empty region */
    public double share(int entry) {
        double all = pixels.stream().mapToDouble(Double::doubleValue).sum();
        return all == 0 ? 0 : pixels.get(entry) / all;
    }

    /** @return the figures of one region held in memory */
    public static MapFigures of(ProofMap map, InkPlanes planes, Cancel cancel) throws Refusal {
        Sum sum = new Sum(map);
        sum.add(planes, cancel);
        return sum.figures();
    }

    static double cm2PerPixel(PlateRequest request) {
        double cmPerPx = request.mmPerPx() / 10;
        return cmPerPx * cmPerPx;
    }

    /** Adds up a region handed over in parts of one scale. Not thread-safe. */
    public static final class Sum {
        private final ProofMap map;
        private final double[] counts;
        private final boolean sharesEdges;
        private byte[] marks = new byte[0];
        private double cm2PerPixel;
        private double largest = Double.NaN;

        /** @param map whose entries are counted, pixel by pixel */
        public Sum(ProofMap map) {
            this(map, false);
        }

        private Sum(ProofMap map, boolean sharesEdges) {
            this.map = map;
            this.sharesEdges = sharesEdges;
            this.counts = new double[map.legend().size()];
        }

        /** @return a sum in which a pixel on an edge counts to the entry of its paint by what is covered of it, and else to the first */
        static Sum sharingEdges(ProofMap map) {
            return new Sum(map, true);
        }

        /** Adds one part. */
        public void add(InkPlanes part, Cancel cancel) throws Refusal {
            int size = part.width() * part.height();
            marks = marks.length < size ? new byte[size] : marks;
            double value = map.mark(part, marks, cancel);
            largest = Double.isNaN(largest) ? value : Double.isNaN(value) ? largest : Math.max(largest, value);
            if (sharesEdges) {
                addShares(new EdgeShares(part), size);
            } else {
                for (int i = 0; i < size; i++) {
                    counts[marks[i]]++;
                }
            }
            cm2PerPixel = MapFigures.cm2PerPixel(part.request());
        }

        private void addShares(EdgeShares edges, int size) {
            for (int i = 0; i < size; i++) {
                double share = edges.share(i);
                counts[marks[edges.whole(i)]] += share;
                counts[0] += 1 - share;
            }
        }

        /** @return the areas so far */
        public MapFigures figures() {
            return new MapFigures(Arrays.stream(counts).boxed().toList(), cm2PerPixel, largest);
        }
    }
}
