package inkground.appearance;

import inkground.colour.Cie;
import inkground.colour.DisplayProfile;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import inkground.substrate.Substrate;
import java.util.List;

/**
 * The colour of any vector of tints on a stack. On paper the process inks together follow the print condition, moved to the
 * substrate's own white; every other ink, and every ink on a garment, is an {@link InkLayer} laid in print order. Thread-safe;
 * colours are remembered per vector. Approximate: see {@link InkLayer} and {@link #processOver}.
 */
public final class StackModel {
    private static final List<Ink> PROCESS = List.of(Ink.CYAN, Ink.MAGENTA, Ink.YELLOW, Ink.BLACK);
    private static final int CACHE_SIZE = 1 << 15;

    private final Stack stack;
    private final DisplayProfile screen;
    private final int inks;
    private final double[] substrateXyz;
    private final InkLayer[] layers;
    private final InkLayer underbaseLayer;
    private final boolean[] shown;
    private final boolean[] needsUnderbase;
    private final boolean[] removesUnderbase;
    private final int[] order;
    private final int[] processPlane = {-1, -1, -1, -1};
    private final boolean processAsGroup;
    private final double[] paperXyz;
    private final double[] darkestXyz;
    private final boolean withUnderbase;
    private final long[] beyondProcess; // bits of everything but the process inks
    private volatile ProcessGrid grid;
    // Entries are immutable, so a race can only lose one, never mix two.
    private final Entry[] cache = new Entry[CACHE_SIZE];

    private record Entry(long[] vector, int argb) {}

    /** @param stack what lies on what, seen on an sRGB screen */
    public StackModel(Stack stack) {
        this(stack, DisplayProfile.SRGB);
    }

    /**
     * @param stack what lies on what
     * @param screen that display colours are for
     */
    public StackModel(Stack stack, DisplayProfile screen) {
        this.stack = stack;
        this.screen = screen;
        this.inks = stack.inks().size();
        this.substrateXyz = Cie.labToXyz(stack.substrate().lab());
        this.order = stack.printOrder().stream().mapToInt(Integer::intValue).toArray();
        this.layers = new InkLayer[inks];
        this.shown = new boolean[inks];
        this.needsUnderbase = new boolean[inks];
        this.removesUnderbase = new boolean[inks];
        Underbase underbase = stack.underbase();
        this.withUnderbase = underbase != null;
        this.beyondProcess = new long[words()];
        java.util.Arrays.fill(beyondProcess, -1L);
        this.underbaseLayer = underbase == null ? null : InkLayer.of(underbase.white(), underbase.hits());
        for (int i = 0; i < inks; i++) {
            InkColour colour = stack.inks().get(i);
            Ink ink = colour.ink();
            layers[i] = InkLayer.of(colour);
            shown[i] = stack.shown().contains(i);
            boolean coloured = ink.kind() == InkKind.PROCESS || ink.kind() == InkKind.SPOT;
            if (underbase != null && shown[i] && coloured) {
                needsUnderbase[i] = underbase.under(ink.name());
                removesUnderbase[i] = underbase.knockedOutUnder().contains(ink.name());
            }
            if (ink.kind() == InkKind.PROCESS) {
                processPlane[PROCESS.indexOf(ink)] = i;
                beyondProcess[i >> 3] &= ~(255L << 8 * (i & 7));
            }
        }
        this.processAsGroup = stack.substrate().kind() == Substrate.Kind.PAPER;
        this.paperXyz = Cie.labToXyz(stack.condition().paper());
        this.darkestXyz = new double[3];
        stack.condition().cmykToXyz(new float[] {1, 1, 1, 1}, darkestXyz);
    }

    /** @return what lies on what */
    public Stack stack() {
        return stack;
    }

    /**
     * Computes a colour.
     *
     * @param tints one per ink, 0 to 255; then, if given, the coverage of the underbase, 0 to 255. Without it the underbase is
     *     whole wherever an ink that needs it has any tint.
     * @param xyz receives X, Y, Z, absolute, D50
     */
    public void toXyz(int[] tints, double[] xyz) {
        int coverage = 0;
        if (underbaseLayer != null) {
            coverage = tints.length > inks ? tints[inks] : underbaseCoverage(tints);
        }
        double[] exact = new double[inks];
        for (int i = 0; i < inks; i++) {
            exact[i] = tints[i] / 255.0;
        }
        layerOnPart(exact, coverage / 255.0, xyz, new double[3]);
    }

    /**
     * Lays inks on the underbase and on what those that knock it out leave bare.
     *
     * @param tints one per ink, 0 to 1
     * @param xyz receives X, Y, Z
     * @param work three places
     */
    void layerKnockedOut(double[] tints, double[] xyz, double[] work) {
        double removed = 0;
        for (int i = 0; i < inks; i++) {
            removed = removesUnderbase[i] ? Math.max(removed, tints[i]) : removed;
        }
        layerOnPart(tints, 1 - removed, xyz, work);
    }

    private void layerOnPart(double[] tints, double part, double[] xyz, double[] work) {
        if (part <= 0 || part >= 1) {
            layer(tints, part >= 1, xyz, work);
            return;
        }
        // At an edge the inks lie on the underbase, not beside it by chance: its part of the pixel takes as much ink as
        // fits.
        double[] on = new double[inks];
        double[] beside = new double[inks];
        for (int i = 0; i < inks; i++) {
            on[i] = Math.min(1, tints[i] / part);
            beside[i] = Math.max(0, (tints[i] - part * on[i]) / (1 - part));
        }
        double[] bare = new double[3];
        layer(on, true, xyz, work);
        layer(beside, false, bare, work);
        for (int i = 0; i < 3; i++) {
            xyz[i] = part * xyz[i] + (1 - part) * bare[i];
        }
    }

    /**
     * Lays underbase and inks on the substrate.
     *
     * @param tints one per ink, 0 to 1
     * @param onUnderbase whether a whole underbase lies beneath; only for a stack that has one
     * @param xyz receives X, Y, Z
     * @param work three places
     */
    void layer(double[] tints, boolean onUnderbase, double[] xyz, double[] work) {
        System.arraycopy(substrateXyz, 0, xyz, 0, 3);
        if (onUnderbase) {
            underbaseLayer.over(stack.underbase().tint(), xyz, work);
        }
        boolean processDone = false;
        for (int plane : order) {
            if (tints[plane] == 0 || !shown[plane]) {
                continue;
            }
            if (processAsGroup && stack.inks().get(plane).ink().kind() == InkKind.PROCESS) {
                if (!processDone) {
                    processOver(tints, xyz, work);
                    processDone = true;
                }
            } else {
                layers[plane].over(tints[plane], xyz, work);
            }
        }
    }

    /** @return 255 where any ink that needs the underbase prints, less what inks take away that knock it out; else 0 */
    private int underbaseCoverage(int[] tints) {
        boolean needed = false;
        int removed = 0;
        for (int i = 0; i < inks; i++) {
            needed |= needsUnderbase[i] && tints[i] > 0;
            removed = removesUnderbase[i] ? Math.max(removed, tints[i]) : removed;
        }
        return needed ? 255 - removed : 0;
    }

    /**
     * The process inks over a ground: the print condition's colour moved from its own paper to the ground by the linear
     * tristimulus correction of ISO 13655 (cited from memory) [ISO13655], which takes paper to ground and leaves the darkest overprint
     * where it is. Example: with paper 0.8, darkest 0.02 and ground 0.4, a printed 0.5 becomes 0.2538.
     *
     * @param tints 0 to 1, by plane
     * @param xyz the ground, D50, Y = 1 for the perfect diffuser, changed to what is seen
     * @param work three places
     */
    private void processOver(double[] tints, double[] xyz, double[] work) {
        float[] cmyk = new float[4];
        for (int i = 0; i < 4; i++) {
            int plane = processPlane[i];
            cmyk[i] = plane >= 0 && shown[plane] ? (float) tints[plane] : 0;
        }
        stack.condition().cmykToXyz(cmyk, work);
        correct(work, xyz, xyz);
    }

    private void correct(double[] printed, double[] ground, double[] out) {
        for (int i = 0; i < 3; i++) {
            out[i] = corrected(printed[i], ground[i], paperXyz[i], darkestXyz[i]);
        }
    }

    /** @return one tristimulus value on another ground, 0 or more [ISO13655] */
    static double corrected(double printed, double ground, double paper, double darkest) {
        double c = towardsGround(ground, paper, darkest);
        return Math.max(0, printed * (1 + c) - darkest * c);
    }

    private static double towardsGround(double ground, double paper, double darkest) {
        return (ground - paper) / (paper - darkest);
    }

    /**
     * @return the display colour of the tints, packed 0xffRRGGBB; tints as for {@link #toXyz}. Process tints alone on paper are
     *     interpolated: ΔE00 to the exact colour 0.07 on average, 1.5 at most, of 200,000 random tints on FOGRA39L.
     */
    public int toArgb(int[] tints) {
        long[] vector = new long[words()];
        for (int i = 0; i < inks; i++) {
            vector[i >> 3] |= shown[i] ? (long) (tints[i] & 255) << 8 * (i & 7) : 0;
        }
        if (underbaseLayer != null) {
            int coverage = tints.length > inks ? tints[inks] : underbaseCoverage(tints);
            vector[inks >> 3] |= (long) coverage << 8 * (inks & 7);
        }
        return argb(vector);
    }

    /** @return whether the screen can show the colour of the tints */
    public boolean displayShows(int[] tints) {
        double[] xyz = new double[3];
        toXyz(tints, xyz);
        return screen.shows(xyz[0], xyz[1], xyz[2]);
    }

    /** @return longs that one vector packs into: eight tints each, the underbase behind the inks */
    int words() {
        return Math.max(1, inks + (withUnderbase ? 8 : 7) >> 3);
    }

    /** @return whether this plane's ink is shown */
    boolean shows(int plane) {
        return shown[plane];
    }

    /** @return whether this plane's ink gets an underbase */
    boolean needsUnderbase(int plane) {
        return needsUnderbase[plane];
    }

    /** @return whether this plane's ink takes the underbase away where it prints */
    boolean removesUnderbase(int plane) {
        return removesUnderbase[plane];
    }

    /** @return whether a packed vector on paper has no tint but process tints, so that the grid gives its colour */
    boolean onlyProcess(long[] vectors, int at) {
        if (!processAsGroup) {
            return false;
        }
        for (int w = 0; w < beyondProcess.length; w++) {
            if ((vectors[at + w] & beyondProcess[w]) != 0) {
                return false;
            }
        }
        return true;
    }

    /**
     * @return the grid that gives the colour of a vector whose first four tints are cyan, magenta, yellow, black and whose other
     *     tints are 0; null where the stack is not of that kind
     */
    ProcessGrid leadingProcess() {
        return leadingProcessOrder() ? grid() : null;
    }

    private boolean leadingProcessOrder() {
        return processAsGroup
                && processPlane[0] == 0
                && processPlane[1] == 1
                && processPlane[2] == 2
                && processPlane[3] == 3;
    }

    /**
     * @return the grid of {@link #leadingProcess}, where pixels that were coded once give the colours on every ground; else null:
     *     with an underbase, for a screen that is not sRGB, or with a process ink hidden
     */
    ProcessGrid codedProcess() {
        boolean whole = leadingProcessOrder() && shown[0] && shown[1] && shown[2] && shown[3];
        return whole && !withUnderbase && screen == DisplayProfile.SRGB ? grid() : null;
    }

    private ProcessGrid gridByOwnPaper() {
        double[] gain = new double[3];
        double[] offset = new double[3];
        for (int i = 0; i < 3; i++) {
            double c = towardsGround(substrateXyz[i], paperXyz[i], darkestXyz[i]);
            gain[i] = 1 + c;
            offset[i] = -darkestXyz[i] * c;
        }
        return ProcessGrid.of(stack.condition(), gain, offset);
    }

    private ProcessGrid grid() {
        ProcessGrid ready = grid;
        if (ready == null) {
            ready = screen == DisplayProfile.SRGB
                    ? gridByOwnPaper()
                    : ProcessGrid.of(stack.condition(), xyz -> correct(xyz, substrateXyz, xyz), screen);
            grid = ready;
        }
        return ready;
    }

    /** @return the display colour of a packed vector for which {@link #onlyProcess} holds */
    private int processArgb(long[] vectors, int at) {
        return grid().argb(
                        processTint(vectors, at, 0),
                        processTint(vectors, at, 1),
                        processTint(vectors, at, 2),
                        processTint(vectors, at, 3));
    }

    private int processTint(long[] vectors, int at, int ink) {
        int plane = processPlane[ink];
        return plane < 0 ? 0 : (int) (vectors[at + (plane >> 3)] >>> 8 * (plane & 7)) & 255;
    }

    /** @return the display colour of a packed vector, its hidden inks already 0; remembered */
    int argb(long[] vector) {
        if (onlyProcess(vector, 0)) {
            return processArgb(vector, 0);
        }
        int slot = slot(vector);
        Entry entry = cache[slot];
        if (entry != null && java.util.Arrays.equals(entry.vector, vector)) {
            return entry.argb;
        }
        int[] tints = new int[withUnderbase ? inks + 1 : inks];
        for (int i = 0; i < tints.length; i++) {
            tints[i] = (int) (vector[i >> 3] >>> 8 * (i & 7)) & 255;
        }
        double[] xyz = new double[3];
        toXyz(tints, xyz);
        int argb = screen.toArgb(xyz[0], xyz[1], xyz[2]);
        cache[slot] = new Entry(vector.clone(), argb);
        return argb;
    }

    private static int slot(long[] vector) {
        long h = 0;
        for (long word : vector) {
            h = (h ^ word) * 0x9E3779B97F4A7C15L;
            h ^= h >>> 29;
        }
        return (int) (h >>> 40) & CACHE_SIZE - 1;
    }
}
