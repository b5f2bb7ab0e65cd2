package inkground.appearance;

import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.PrintCondition;
import inkground.substrate.Substrate;
import inkground.substrate.Texture;
import java.util.List;

/**
 * The colour that artwork asks for: its ink vector printed under the file's own print condition on that condition's white
 * paper, every spot ink in its own stated colour, without underbase, all inks but technical ones shown. Absolute, D50. What a
 * stack gives is compared with it. Thread-safe.
 *
 * <p>Where paint lets the bare substrate through, at an edge or by its opacity, the colour asked for is that of the paint where it
 * is whole: its tints over the share of the pixel that ink covers. Pixels less than half covered ask for nothing, and so does
 * every place without ink: there the artwork leaves the substrate to be seen. A tint is a tint, not a half-covered solid.
 */
public final class AskedColours {
    private static final int HALF = 128;
    private static final int LEAST = 16;

    private static final Substrate BLACK_CLOTH =
            plain("black-cloth", "a black cloth", Substrate.Kind.GARMENT, new Lab(10, 0, 0), "invented for reference");

    private final StackModel own;
    private final StackModel dark;

    /**
     * @param inks colour of each ink, in plane order
     * @param condition of the process inks
     */
    public AskedColours(List<InkColour> inks, PrintCondition condition) {
        this.own = new StackModel(Stack.of(ownPaper(condition), inks, condition));
        this.dark = new StackModel(Stack.of(BLACK_CLOTH, inks, condition));
    }

    /** @return the white paper of a print condition, as a substrate */
    public static Substrate ownPaper(PrintCondition condition) {
        return plain(
                "own-paper",
                "the print condition's own paper",
                Substrate.Kind.PAPER,
                condition.paper(),
                condition.name());
    }

    private static Substrate plain(String id, String name, Substrate.Kind kind, Lab lab, String source) {
        return new Substrate(id, name, kind, lab, source, Texture.NONE, List.of(), 0, false, 0, List.of());
    }

    /**
     * @return ΔE00 between two vectors of tints where it is largest: on the print condition's paper or on black cloth. Light ink
     *     laid on nothing is meant to be seen, though not on white.
     */
    double contrast(int[] one, int[] other) {
        return Math.max(Cie.deltaE00(lab(one), lab(other)), Cie.deltaE00(lab(dark, one), lab(dark, other)));
    }

    /** @return the colours asked for by artwork that is shown on a stack: same inks, same condition */
    public static AskedColours of(StackModel model) {
        return new AskedColours(model.stack().inks(), model.stack().condition());
    }

    /** @return the colour that tints ask for, 0 to 255 each; without any, the paper */
    public Lab lab(int[] tints) {
        return lab(own, tints);
    }

    static Lab lab(StackModel model, int[] tints) {
        double[] xyz = new double[3];
        model.toXyz(tints, xyz);
        return Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
    }

    /**
     * What lies inside the edge that a pixel is on.
     *
     * @param vector tints of all inks, 0 to 255, then the mark, inked and laid planes
     * @param inks how many tints there are
     * @param out receives the tints; all 0 for a pixel that is less than half covered
     * @return whether any tint is above 0
     */
    static boolean inside(int[] vector, int inks, int[] out) {
        return from(HALF, vector, inks, out);
    }

    /** As {@link #inside}, for areas: pixels that hold less than {@value #LEAST} / 255 ask for nothing, since their tints are too coarse. */
    static boolean covered(int[] vector, int inks, int[] out) {
        return from(LEAST, vector, inks, out);
    }

    private static boolean from(int least, int[] vector, int inks, int[] out) {
        int laid = vector[inks + 2];
        boolean any = false;
        for (int i = 0; i < inks; i++) {
            out[i] = laid < least ? 0 : laid == 255 ? vector[i] : Math.min(255, (vector[i] * 255 + laid / 2) / laid);
            any |= out[i] > 0;
        }
        return any;
    }
}
