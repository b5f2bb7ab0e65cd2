package inkground.viewer.rack;

import inkground.colour.Lab;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import java.util.Locale;

/** Words about substrates and colours. */
public final class SubstrateText {
    private SubstrateText() {}

    /** @return kind, texture and Lab in one line */
    public static String colour(SubstrateCard card) {
        return (card.garment() ? "garment, " : "paper, ") + card.texture() + ", " + lab(card.lab());
    }

    /** @return a colour, rounded to whole steps */
    public static String lab(Lab lab) {
        return String.format(Locale.ROOT, "Lab %.0f %.0f %.0f", lab.L(), noMinusZero(lab.a()), noMinusZero(lab.b()))
                .replace('-', '−');
    }

    private static double noMinusZero(double value) {
        return Math.round(value) == 0 ? 0 : value;
    }
}
