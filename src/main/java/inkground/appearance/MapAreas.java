package inkground.appearance;

import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.plate.InkPlanes;
import java.util.Arrays;
import java.util.List;

/**
 * Adds up the areas of a map's entries over a region handed over in parts. A pixel whose neighbours have another entry is taken for a
 * mixture of the two most different vectors around it, if it can be one, and shared out between their entries by how much of each it holds. Counted
 * whole, each edge would move by up to half a pixel: ink above a limit only where it covers nearly all of a pixel, a difference
 * beyond a limit where it covers next to nothing. Not thread-safe.
 */
final class MapAreas {
    private static final int NEAR = 9;
    /** Share up to which a pixel counts as whole: the step of a tint is 0.004. */
    private static final double PURE = 0.01;
    /** Square of how far aside a vector may lie of the mixtures of two, in parts of their distance: a tenth. */
    private static final double ASIDE = 0.01;

    private final ProofMap map;
    private final ProofMap.MarkSink sink;
    private final double[] pixels;
    private byte[] marks = new byte[0];
    private double cm2PerPixel;
    private double largest = Double.NaN;

    /**
     * @param map whose entries are counted
     * @param sink receives the marks
     */
    MapAreas(ProofMap map, ProofMap.MarkSink sink) {
        this.map = map;
        this.sink = sink;
        this.pixels = new double[map.legend().size()];
    }

    /** Adds a part; {@code grown} holds one pixel more on each side. */
    void add(InkPlanes grown, Cancel cancel) throws Refusal {
        int width = grown.width();
        int size = width * grown.height();
        marks = marks.length < size ? new byte[size] : marks;
        double value = map.mark(grown, marks, cancel);
        sink.marked(grown, marks, 1);
        largest = Double.isNaN(largest) ? value : Double.isNaN(value) ? largest : Math.max(largest, value);
        List<InkPlanes> deciding = null;
        for (int y = 1; y < grown.height() - 1; y++) {
            cancel.check();
            for (int x = 1; x < width - 1; x++) {
                int at = y * width + x;
                if (even(marks, at, width)) {
                    pixels[marks[at]]++;
                } else {
                    deciding = deciding == null ? map.deciding(grown, cancel) : deciding;
                    share(deciding, x, y);
                }
            }
        }
        cm2PerPixel = MapFigures.cm2PerPixel(grown.request());
    }

    /** Whether a pixel and its eight neighbours have one mark. */
    static boolean even(byte[] marks, int at, int width) {
        for (int row = at - width; row <= at + width; row += width) {
            for (int i = row - 1; i <= row + 1; i++) {
                if (marks[i] != marks[at]) {
                    return false;
                }
            }
        }
        return true;
    }

    private void share(List<InkPlanes> deciding, int x, int y) {
        int width = deciding.get(0).width();
        int[][] near = new int[NEAR][];
        for (int k = 0; k < NEAR; k++) {
            near[k] = vector(deciding, x + k % 3 - 1, y + k / 3 - 1);
        }
        int one = 0;
        int other = 0;
        double farthest = 0;
        for (int a = 0; a < NEAR; a++) {
            for (int b = a + 1; b < NEAR; b++) {
                double far = dot(near[a], near[b], near[a], near[b]);
                if (far > farthest) {
                    farthest = far;
                    one = a;
                    other = b;
                }
            }
        }
        int at = y * width + x;
        int[] own = near[NEAR / 2];
        double share = farthest == 0 ? 0 : dot(near[one], own, near[one], near[other]) / farthest;
        double aside =
                dot(near[one], own, near[one], own) - share * share * farthest; // squared distance from the mixtures
        if (share < PURE || share > 1 - PURE || aside > ASIDE * farthest) {
            pixels[marks[at]]++;
        } else {
            pixels[marks[at + beside(one, width)]] += 1 - share;
            pixels[marks[at + beside(other, width)]] += share;
        }
    }

    private static int beside(int k, int width) {
        return (k / 3 - 1) * width + k % 3 - 1;
    }

    private static int[] vector(List<InkPlanes> deciding, int x, int y) {
        int planes = deciding.get(0).planes();
        int[] vector = new int[planes * deciding.size()];
        for (int i = 0; i < vector.length; i++) {
            vector[i] = deciding.get(i / planes).get(i % planes, x, y);
        }
        return vector;
    }

    /** The product of two ways through the space of vectors. */
    private static double dot(int[] from, int[] to, int[] start, int[] end) {
        double sum = 0;
        for (int p = 0; p < from.length; p++) {
            sum += (double) (to[p] - from[p]) * (end[p] - start[p]);
        }
        return sum;
    }

    /** @return the areas so far */
    MapFigures figures() {
        return new MapFigures(Arrays.stream(pixels).boxed().toList(), cm2PerPixel, largest);
    }
}
