package inkground.appearance;

import inkground.colour.Cie;
import inkground.colour.Lab;

/**
 * The share of the artwork's edges that lose their contrast on a stack, by length. An edge whose two sides differ there by
 * {@link ArtworkEdges#CLEAR_DE00} or more is kept, one whose sides differ by {@link #LOST_DE00} or less is lost, and one
 * between counts in proportion. The contrast is ΔE00 [SHARMA2005] rather than lightness alone: red on green of one
 * lightness is an edge to be seen.
 *
 * @param score 0 if all edges keep their contrast, 1 if all vanish; 0 for artwork without edges
 * @param lostMm length lost, in mm
 * @param edgesMm length of all edges that are meant to be seen, in mm
 */
public record VanishScore(double score, double lostMm, double edgesMm) {
    /** ΔE00 up to which two areas side by side run into one at arm's length. Common practice, no source. */
    public static final double LOST_DE00 = 2;

    /** @return the score on a stack of the same inks as the edges */
    public static VanishScore of(ArtworkEdges edges, StackModel model) {
        Lab[] labs = edges.vectors().parallelStream()
                .map(tints -> AskedColours.lab(model, tints))
                .toArray(Lab[]::new);
        double lost = 0;
        for (ArtworkEdges.Pair pair : edges.pairs()) {
            lost += pair.mm() * loss(Cie.deltaE00(labs[pair.a()], labs[pair.b()]));
        }
        return new VanishScore(edges.mm() == 0 ? 0 : lost / edges.mm(), lost, edges.mm());
    }

    /** @return how much of a clear edge is lost at a contrast: 0 kept, 1 lost */
    static double loss(double de00) {
        return Math.max(0, Math.min(1, (ArtworkEdges.CLEAR_DE00 - de00) / (ArtworkEdges.CLEAR_DE00 - LOST_DE00)));
    }
}
