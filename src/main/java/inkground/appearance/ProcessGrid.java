package inkground.appearance;

import inkground.colour.PrintCondition;
import inkground.colour.Srgb;
import java.util.Collections;
import java.util.Map;
import java.util.WeakHashMap;
import java.util.stream.IntStream;

/**
 * Display colours of four process tints by interpolation, for photographs, where nearly every pixel has tints of its own. The
 * print condition is sampled once on a grid of {@value #NODES} levels an ink; a substrate then costs one linear step per node. A
 * pixel is five nodes: the corners of its simplex in the order of its fractions. Immutable.
 *
 * <p>Nodes hold the display's own coded values, since these are nearly even in the tints; beyond the display's gamut they go on
 * below 0 and above 1, so that clipping comes last.
 */
final class ProcessGrid {
    /** Levels of each ink: 16 steps of 15.94 tint values. */
    static final int NODES = 17;

    private static final int STEPS = NODES - 1;
    private static final int[] STRIDES = {NODES * NODES * NODES, NODES * NODES, NODES, 1};
    private static final int SIZE = NODES * STRIDES[0];
    // Three fields of 21 bits: 13 of value times 8 of weight. One coded unit is 4096, and the range is −0.5 to 1.5.
    private static final int UNIT = 4096;
    private static final int FIELD = 21;
    private static final int FIELD_MASK = (1 << FIELD) - 1;

    // Reading past the last corner happens only with weight 0.
    private static final int PADDING = STRIDES[0] + STRIDES[1] + STRIDES[2] + STRIDES[3];

    // For each tint value: the node below, and what is left of it in 255ths of a step.
    private static final int[] NODE = new int[256];
    private static final int[] REST = new int[256];

    static {
        for (int tint = 0; tint < 256; tint++) {
            NODE[tint] = tint * STEPS / 255;
            REST[tint] = tint * STEPS % 255;
        }
    }

    private static final Map<PrintCondition, float[]> SAMPLES = Collections.synchronizedMap(new WeakHashMap<>());

    private final long[] nodes;

    private ProcessGrid(long[] nodes) {
        this.nodes = nodes;
    }

    /** What a ground makes of the condition's X, Y, Z; three places, changed in place. */
    interface Ground {
        /** Moves the condition's colour to the ground. */
        void move(double[] xyz);
    }

    /** @return the grid of a condition on a ground */
    static ProcessGrid of(PrintCondition condition, Ground ground) {
        float[] known = SAMPLES.get(condition);
        float[] samples = known == null ? sample(condition) : known;
        SAMPLES.put(condition, samples); // not under the map's lock: sampling runs on all processors
        long[] nodes = new long[SIZE + PADDING];
        IntStream.range(0, NODES).parallel().forEach(c -> {
            double[] xyz = new double[3];
            double[] rgb = new double[3];
            for (int i = c * STRIDES[0]; i < (c + 1) * STRIDES[0]; i++) {
                xyz[0] = samples[3 * i];
                xyz[1] = samples[3 * i + 1];
                xyz[2] = samples[3 * i + 2];
                ground.move(xyz);
                Srgb.xyzToLinear(xyz, rgb);
                nodes[i] = field(rgb[0]) | field(rgb[1]) << FIELD | field(rgb[2]) << 2 * FIELD;
            }
        });
        return new ProcessGrid(nodes);
    }

    private static float[] sample(PrintCondition condition) {
        float[] out = new float[3 * SIZE];
        IntStream.range(0, NODES).parallel().forEach(c -> {
            float[] cmyk = new float[4];
            double[] xyz = new double[3];
            for (int i = c * STRIDES[0]; i < (c + 1) * STRIDES[0]; i++) {
                for (int k = 0; k < 4; k++) {
                    cmyk[k] = i / STRIDES[k] % NODES / (float) STEPS;
                }
                condition.cmykToXyz(cmyk, xyz);
                for (int k = 0; k < 3; k++) {
                    out[3 * i + k] = (float) xyz[k];
                }
            }
        });
        return out;
    }

    private static long field(double linear) {
        double coded = linear < 0 ? -Srgb.encode(-linear) : Srgb.encode(linear);
        return Math.round((Math.max(-0.5, Math.min(1.499, coded)) + 0.5) * UNIT);
    }

    /** @return opaque display colour of four tints, each 0 to 255 */
    int argb(int cyan, int magenta, int yellow, int black) {
        int at = NODE[cyan] * STRIDES[0] + NODE[magenta] * STRIDES[1] + NODE[yellow] * STRIDES[2] + NODE[black];
        // Fraction above, stride below, so that sorting the one sorts the other.
        int a = REST[cyan] << 16 | STRIDES[0];
        int b = REST[magenta] << 16 | STRIDES[1];
        int c = REST[yellow] << 16 | STRIDES[2];
        int d = REST[black] << 16 | STRIDES[3];
        int ab = Math.max(a, b);
        int ba = Math.min(a, b);
        int cd = Math.max(c, d);
        int dc = Math.min(c, d);
        int first = Math.max(ab, cd);
        int third = Math.min(ab, cd);
        int second = Math.max(ba, dc);
        int fourth = Math.min(ba, dc);
        int middle = Math.max(third, second);
        third = Math.min(third, second);
        long sum = nodes[at] * (255 - (first >> 16));
        at += first & 0xffff;
        sum += nodes[at] * ((first >> 16) - (middle >> 16));
        at += middle & 0xffff;
        sum += nodes[at] * ((middle >> 16) - (third >> 16));
        at += third & 0xffff;
        sum += nodes[at] * ((third >> 16) - (fourth >> 16));
        at += fourth & 0xffff;
        sum += nodes[at] * (fourth >> 16);
        return 0xff000000
                | level((int) sum & FIELD_MASK) << 16
                | level((int) (sum >>> FIELD) & FIELD_MASK) << 8
                | level((int) (sum >>> 2 * FIELD) & FIELD_MASK);
    }

    // 255 × (sum / 255 / UNIT − 0.5), rounded
    private static int level(int sum) {
        int v = (sum - 255 * UNIT / 2 + UNIT / 2) >> 12;
        return Math.max(0, Math.min(255, v));
    }
}
