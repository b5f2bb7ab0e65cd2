package inkground.appearance;

import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.ink.InkKind;
import inkground.substrate.Substrate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The colours that the inks of a stack can make on its substrate, and how far another colour is from them. The nearest one is
 * searched for by least squares on the CIEDE2000 difference itself, from the best of some thousand samples. Approximate: the model
 * is ({@link StackModel}), and a search can miss a nearer colour that no sample lies near. CIEDE2000 is made for small differences:
 * from a vivid colour far out of reach it rates greys as near as duller colours of the same hue, so beyond a difference of about 10
 * the number says no more than "far". Immutable and thread-safe.
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>range</th></tr>
 * <tr><td>colours</td><td>absolute Lab, D50, as {@link StackModel#toXyz} gives; see {@link #askedOn} for artwork's colours</td></tr>
 * <tr><td>total ink</td><td>sum of tints, above 0; 3 is 300 %</td></tr>
 * <tr><td>missed by</td><td>ΔE00 [SHARMA2005], 0 and up</td></tr>
 * </table>
 *
 * <p>An underbase is not counted as ink. It lies under every colour that an ink makes which needs it, and not under the others.
 */
public final class StackGamut {
    // Squared ΔE00 that no second search is worth.
    private static final double CLOSE = 0.01;
    private static final int STARTS = 4;

    private final List<GamutSamples> parts; // without an underbase and with one

    private StackGamut(List<GamutSamples> parts) {
        this.parts = parts;
    }

    /**
     * The nearest colour that the inks make.
     *
     * @param tints one per ink of the stack, 0 to 1
     * @param lab the colour, absolute
     * @param missedBy ΔE00 from the colour asked for
     */
    public record Nearest(List<Double> tints, Lab lab, double missedBy) {
        /** Copies the list. */
        public Nearest {
            tints = List.copyOf(tints);
        }
    }

    /**
     * @param model of the stack; its shown inks are used, those for the finishing machine are not
     * @param totalInkLimit largest sum of tints in one place, above 0; 3 is 300 %
     */
    public static StackGamut of(StackModel model, double totalInkLimit) {
        if (!(totalInkLimit > 0)) {
            throw new IllegalArgumentException("a total ink limit of " + totalInkLimit);
        }
        Stack stack = model.stack();
        int[] inks = stack.shown().stream()
                .filter(i -> stack.inks().get(i).ink().kind() != InkKind.TECHNICAL)
                .mapToInt(Integer::intValue)
                .sorted()
                .toArray();
        int[] direct = Arrays.stream(inks).filter(i -> !model.needsUnderbase(i)).toArray();
        List<GamutSamples> parts = new ArrayList<>();
        parts.add(new GamutSamples(model, direct, false, totalInkLimit));
        if (direct.length < inks.length) {
            parts.add(new GamutSamples(model, inks, true, totalInkLimit));
        }
        return new StackGamut(List.copyOf(parts));
    }

    /**
     * What a colour of artwork asks of a stack: on paper the paper takes the place of white; on a garment, whose colour is not that
     * of any paper, the colour itself is asked for.
     *
     * @param colour media-relative: (100, 0, 0) is bare paper
     * @return absolute
     */
    public static Lab askedOn(Substrate substrate, Lab colour) {
        if (substrate.kind() != Substrate.Kind.PAPER) {
            return colour;
        }
        double[] paper = Cie.labToXyz(substrate.lab());
        double[] xyz = Cie.labToXyz(colour);
        return Cie.xyzToLab(xyz[0] * paper[0] / Cie.D50_X, xyz[1] * paper[1], xyz[2] * paper[2] / Cie.D50_Z);
    }

    /** @return a colour in whole units: as fine as colours asked for are told apart where many are searched */
    static Lab whole(Lab asked) {
        return new Lab(Math.rint(asked.L()), Math.rint(asked.a()), Math.rint(asked.b()));
    }

    /**
     * @param asked absolute
     * @return ΔE00 from the colour to the nearest that the inks make; a colour they make is missed by less than 0.5
     */
    public double missedBy(Lab asked) {
        return nearest(asked).missedBy();
    }

    /**
     * @param asked absolute
     * @return the nearest colour that the inks make, as far as the search finds it
     */
    public Nearest nearest(Lab asked) {
        Nearest best = null;
        for (GamutSamples part : parts) {
            for (double[] start : part.near(asked, STARTS)) {
                if (best != null && best.missedBy() * best.missedBy() <= CLOSE) {
                    return best;
                }
                Nearest found = part.search(start, asked);
                best = best == null || found.missedBy() < best.missedBy() ? found : best;
            }
        }
        return best;
    }
}
