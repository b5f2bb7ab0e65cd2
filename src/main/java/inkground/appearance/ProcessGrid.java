package inkground.appearance;

import inkground.colour.DisplayProfile;
import inkground.colour.PrintCondition;
import inkground.colour.Srgb;
import java.util.Collections;
import java.util.Map;
import java.util.WeakHashMap;
import java.util.stream.IntStream;

/**
 * Display colours of four process tints by interpolation, for photographs, where nearly every pixel has tints of its own. The
 * print condition is sampled on a grid of {@value #NODES} levels an ink, each node when it is first needed; another paper costs
 * {@link GroundTables}, and a screen that is not sRGB a grid of its own, made at once. A
 * pixel is five nodes: the corners of its simplex in the order of its fractions. Thread-safe; the colours never change.
 *
 * <p>Nodes hold the display's own coded values, since these are nearly even in the tints; beyond the display's gamut they go on
 * below 0 and above 1, so that clipping comes last.
 */
final class ProcessGrid {
    /** Levels of each ink: 16 steps of 15.94 tint values. */
    static final int NODES = 17;

    private static final int STEPS = NODES - 1;
    // A node is half a unit above its coded value, so that sums are 127.5 levels too high; half a level of that rounds
    // them.
    private static final int LEVEL_ZERO = 127;
    private static final int[] STRIDES = {NODES * NODES * NODES, NODES * NODES, NODES, 1};
    private static final int SIZE = NODES * STRIDES[0];
    // Three fields of 21 bits: 13 of value times 8 of weight. One coded unit is 4096, and the range is −0.5 to 1.5.
    private static final int UNIT = 4096;
    private static final int FIELD = 21;
    private static final int LEVEL_MASK = (1 << FIELD - 12) - 1;

    // Reading past the last corner happens only with weight 0.
    private static final int PADDING = STRIDES[0] + STRIDES[1] + STRIDES[2] + STRIDES[3];

    // For each ink and tint in one number: in the upper half the index of the node below, then what is left of the tint
    // in 255ths
    // of a step, then the stride. The four numbers add up to the index of the cell, and fractions sort with their
    // strides.
    // Four arrays, not one of arrays: the compiler knows the length of each and checks no index that is a byte.
    private static final long[] CYAN = places(STRIDES[0]);
    private static final long[] MAGENTA = places(STRIDES[1]);
    private static final long[] YELLOW = places(STRIDES[2]);
    private static final long[] BLACK = places(STRIDES[3]);

    // For each weighted sum of nodes, in steps of 1/255: the display's level, clipped.
    private static final int[] LEVELS = new int[1 << FIELD - 12];

    private static final int CURVE_STEPS = 1 << 14;
    private static final float[] CURVE = new float[CURVE_STEPS + 2];

    static {
        for (int i = 0; i < LEVELS.length; i++) {
            LEVELS[i] = Math.max(0, Math.min(255, i - LEVEL_ZERO));
        }
        for (int i = 0; i < CURVE.length; i++) {
            CURVE[i] = (float) Srgb.encode((double) i / CURVE_STEPS);
        }
    }

    private static long[] places(int stride) {
        long[] out = new long[256];
        for (int tint = 0; tint < 256; tint++) {
            long node = tint * STEPS / 255;
            long rest = tint * STEPS % 255;
            out[tint] = node * stride << 32 | rest << 16 | stride;
        }
        return out;
    }

    /** Bits of each of red, green and blue in {@link #code}. */
    static final int CODE_BITS = 10;

    private static final int CODE_SHIFT = FIELD - CODE_BITS;
    private static final int CODE_MASK = (1 << CODE_BITS) - 1;

    // By condition, which the value must not hold on to.
    private static final Map<PrintCondition, Nodes> OWN = Collections.synchronizedMap(new WeakHashMap<>());
    private static final Map<PrintCondition, float[]> SAMPLES = Collections.synchronizedMap(new WeakHashMap<>());

    /**
     * Node values, 0 for one that was not needed yet: flat artwork needs few of the 83,521. Each is the same whoever makes it and
     * when, so that threads may make one twice.
     */
    private static final class Nodes {
        final long[] all = new long[SIZE + PADDING];
        // The nodes without black, side by side: most pixels of a photograph need no others, and these fit the nearest
        // cache.
        final long[] light = new long[STRIDES[0] + STRIDES[1] + STRIDES[2] + STRIDES[3]];
        volatile boolean complete;

        void completed() {
            for (int i = 0; i < STRIDES[0]; i++) {
                light[i] = all[i * NODES];
            }
            complete = true;
        }
    }

    private final PrintCondition condition; // makes nodes that are missing
    private final Nodes made;
    private final long[] nodes;
    private final long[] light;
    private final long codeShift; // added to sums before they are coded, three fields
    private final GroundTables ground; // null where the nodes themselves are of the ground

    private ProcessGrid(PrintCondition condition, Nodes nodes) {
        this.condition = condition;
        this.made = nodes;
        this.nodes = nodes.all;
        this.light = nodes.light;
        this.ground = null;
        this.codeShift = shiftToCentre(node(0));
    }

    private ProcessGrid(ProcessGrid ownPaper, GroundTables ground) {
        this.condition = ownPaper.condition;
        this.made = ownPaper.made;
        this.nodes = ownPaper.nodes;
        this.light = ownPaper.light;
        this.ground = ground;
        this.codeShift = ownPaper.codeShift;
    }

    // Bare paper, which fills so much of a page, falls into the middle of its code's step, so that it keeps its colour
    // exactly.
    private static long shiftToCentre(long paper) {
        long shift = 0;
        for (int channel = 0; channel < 3; channel++) {
            long sum = (paper * 255 >>> FIELD * channel) & (1 << FIELD) - 1;
            shift |= Math.floorMod((1L << CODE_SHIFT - 1) - sum, 1L << CODE_SHIFT) << FIELD * channel;
        }
        return shift;
    }

    /** What a ground makes of the condition's X, Y, Z; three places, changed in place. */
    interface Ground {
        /** Moves the condition's colour to the ground. */
        void move(double[] xyz);
    }

    /** @return the grid of a condition on a ground, in the coded values of a screen that is not sRGB */
    static ProcessGrid of(PrintCondition condition, Ground ground, DisplayProfile screen) {
        float[] known = SAMPLES.get(condition);
        float[] samples = known == null ? sample(condition) : known;
        SAMPLES.put(condition, samples); // not under the map's lock: sampling runs on all processors
        Nodes nodes = new Nodes();
        IntStream.range(0, NODES).parallel().forEach(c -> {
            double[] xyz = new double[3];
            double[] rgb = new double[3];
            for (int i = c * STRIDES[0]; i < (c + 1) * STRIDES[0]; i++) {
                xyz[0] = samples[3 * i];
                xyz[1] = samples[3 * i + 1];
                xyz[2] = samples[3 * i + 2];
                ground.move(xyz);
                screen.toCoded(xyz, rgb);
                nodes.all[i] = packed(rgb);
            }
        });
        nodes.completed();
        return new ProcessGrid(condition, nodes);
    }

    /**
     * @param gain of X, Y and Z from the condition's own paper to the ground
     * @param offset added to them then
     * @return the grid of a condition on a ground, for an sRGB screen: the one on its own paper, and the way from there
     */
    static ProcessGrid of(PrintCondition condition, double[] gain, double[] offset) {
        ProcessGrid own = ofOwnPaper(condition);
        return new ProcessGrid(own, new GroundTables(own, gain, offset));
    }

    /** @return the grid of a condition on its own paper for an sRGB screen; its nodes are made once, as they are needed */
    static ProcessGrid ofOwnPaper(PrintCondition condition) {
        return new ProcessGrid(condition, OWN.computeIfAbsent(condition, key -> new Nodes()));
    }

    private long node(int at) {
        long known = nodes[at];
        return known == 0 ? make(at) : known;
    }

    /** Makes all nodes that are missing, on all processors; before pixels are painted or coded by the run. */
    void complete() {
        if (!made.complete) {
            IntStream.range(0, SIZE).parallel().forEach(this::node);
            made.completed();
        }
    }

    /** Makes the corners of a cell. */
    private void ready(int at) {
        for (int corner = 0; corner < 16; corner++) {
            int place = at;
            for (int k = 0; k < STRIDES.length; k++) {
                place += (corner >> k & 1) * STRIDES[k];
            }
            if (place < SIZE) { // beyond it nodes have weight 0
                node(place);
            }
        }
    }

    private long make(int at) {
        double[] xyz = new double[3];
        condition.cmykToXyz(tints(at, new float[4]), xyz);
        double[] rgb = new double[3];
        coded(xyz, rgb);
        long made = packed(rgb);
        nodes[at] = made;
        return made;
    }

    private static float[] tints(int at, float[] cmyk) {
        for (int k = 0; k < 4; k++) {
            cmyk[k] = at / STRIDES[k] % NODES / (float) STEPS;
        }
        return cmyk;
    }

    private static long packed(double[] rgb) {
        return field(rgb[0]) | field(rgb[1]) << FIELD | field(rgb[2]) << 2 * FIELD;
    }

    private static float[] sample(PrintCondition condition) {
        float[] out = new float[3 * SIZE];
        IntStream.range(0, NODES).parallel().forEach(c -> {
            float[] cmyk = new float[4];
            double[] xyz = new double[3];
            for (int i = c * STRIDES[0]; i < (c + 1) * STRIDES[0]; i++) {
                condition.cmykToXyz(tints(i, cmyk), xyz);
                for (int k = 0; k < 3; k++) {
                    out[3 * i + k] = (float) xyz[k];
                }
            }
        });
        return out;
    }

    private static long field(double coded) {
        return Math.round((Math.max(-0.5, Math.min(1.499, coded)) + 0.5) * UNIT);
    }

    // As the screen's own coding, but quick.
    private static void coded(double[] xyz, double[] rgb) {
        Srgb.xyzToLinear(xyz, rgb);
        for (int i = 0; i < 3; i++) {
            rgb[i] = rgb[i] < 0 ? -coded(-rgb[i]) : coded(rgb[i]);
        }
    }

    // By table where the curve is nearly straight between its steps: the error is below a tenth of a stored step.
    private static double coded(double linear) {
        if (linear < 0.01 || linear >= 1) {
            return Srgb.encode(linear);
        }
        double place = linear * CURVE_STEPS;
        int i = (int) place;
        return CURVE[i] + (place - i) * (CURVE[i + 1] - CURVE[i]);
    }

    /** @return opaque display colour of four tints, each 0 to 255 */
    int argb(int cyan, int magenta, int yellow, int black) {
        if (!made.complete) {
            ready((int) (CYAN[cyan] + MAGENTA[magenta] + YELLOW[yellow] + BLACK[black] >>> 32));
        }
        long sum = made.complete ? sum(cyan, magenta, yellow, black) : sumOfFour(cyan, magenta, yellow, black);
        return ground == null ? levels(sum) : ground.argb(code(sum));
    }

    /** @return the way from the condition's own paper; null where the nodes themselves are of the ground */
    GroundTables ground() {
        return ground;
    }

    /**
     * Paints a run of pixels; the grid is complete.
     *
     * @param planes cyan, magenta, yellow and black
     * @param from first pixel in the planes
     * @param count number of pixels
     */
    void paint(byte[][] planes, int from, int count, int[] argb, int to) {
        if (ground == null) {
            byte[] cyan = planes[0];
            byte[] magenta = planes[1];
            byte[] yellow = planes[2];
            byte[] black = planes[3];
            for (int i = from; i < from + count; i++) {
                argb[to + i - from] = levels(sum(cyan[i] & 255, magenta[i] & 255, yellow[i] & 255, black[i] & 255));
            }
        } else {
            // In two short loops: together they are too much for the processor's registers.
            code(planes, from, count, argb, to);
            ground.paint(argb, to, count, argb, to);
        }
    }

    /**
     * Codes a run of pixels, the grid being complete: red in the lowest {@value #CODE_BITS} bits, then green, then blue, each the middle of a step of the
     * display's coded value; see {@link #light}. Steps are half a level of the display.
     *
     * @param planes cyan, magenta, yellow and black
     * @param from first pixel in the planes
     * @param count number of pixels
     */
    void code(byte[][] planes, int from, int count, int[] coded, int to) {
        byte[] cyan = planes[0];
        byte[] magenta = planes[1];
        byte[] yellow = planes[2];
        byte[] black = planes[3];
        for (int i = from; i < from + count; i++) {
            coded[to + i - from] = code(sum(cyan[i] & 255, magenta[i] & 255, yellow[i] & 255, black[i] & 255));
        }
    }

    private long sum(int cyan, int magenta, int yellow, int black) {
        if (black == 0) {
            // Without black each ink's stride is that of the next.
            long c = MAGENTA[cyan];
            long m = YELLOW[magenta];
            long y = BLACK[yellow];
            return lightSum((int) (c + m + y >>> 32), (int) c, (int) m, (int) y);
        }
        return sumOfFour(cyan, magenta, yellow, black);
    }

    private long sumOfFour(int cyan, int magenta, int yellow, int black) {
        long c = CYAN[cyan];
        long m = MAGENTA[magenta];
        long y = YELLOW[yellow];
        long k = BLACK[black];
        return sum((int) (c + m + y + k >>> 32), (int) c, (int) m, (int) y, (int) k);
    }

    private int code(long weighted) {
        long sum = weighted + codeShift;
        return (int) (sum >>> CODE_SHIFT) & CODE_MASK
                | ((int) (sum >>> FIELD + CODE_SHIFT) & CODE_MASK) << CODE_BITS
                | ((int) (sum >>> 2 * FIELD + CODE_SHIFT) & CODE_MASK) << 2 * CODE_BITS;
    }

    /**
     * @param channel 0 red, 1 green, 2 blue
     * @return the linear light that a code of {@link #code} stands for; below 0 beyond the display's gamut
     */
    double light(int channel, int code) {
        double shift = codeShift >>> FIELD * channel & (1 << CODE_SHIFT) - 1;
        double coded = ((code + 0.5) * (1 << CODE_SHIFT) - shift) / (255.0 * UNIT) - 0.5;
        return coded < 0 ? -Srgb.decode(-coded) : Srgb.decode(coded);
    }

    private long lightSum(int at, int a, int b, int c) {
        int ab = Math.max(a, b);
        int ba = Math.min(a, b);
        int first = Math.max(ab, c);
        int rest = Math.min(ab, c);
        int second = Math.max(ba, rest);
        int third = Math.min(ba, rest);
        int w1 = first >> 16;
        int w2 = second >> 16;
        int w3 = third >> 16;
        long sum = light[at] * (255 - w1);
        at += first & 0xffff;
        sum += light[at] * (w1 - w2);
        at += second & 0xffff;
        sum += light[at] * (w2 - w3);
        at += third & 0xffff;
        sum += light[at] * w3;
        return sum;
    }

    // a to d: fraction above, stride below, so that sorting the one sorts the other.
    private long sum(int at, int a, int b, int c, int d) {
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
        int w1 = first >> 16;
        int w2 = middle >> 16;
        int w3 = third >> 16;
        int w4 = fourth >> 16;
        long sum = nodes[at] * (255 - w1);
        at += first & 0xffff;
        sum += nodes[at] * (w1 - w2);
        at += middle & 0xffff;
        sum += nodes[at] * (w2 - w3);
        at += third & 0xffff;
        sum += nodes[at] * (w3 - w4);
        at += fourth & 0xffff;
        sum += nodes[at] * w4;
        return sum;
    }

    private static int levels(long sum) {
        return 0xff000000
                | LEVELS[(int) sum >> 12 & LEVEL_MASK] << 16
                | LEVELS[(int) (sum >>> FIELD + 12) & LEVEL_MASK] << 8
                | LEVELS[(int) (sum >>> 2 * FIELD + 12) & LEVEL_MASK];
    }
}
