package inkground.viewer.rack;

import inkground.colour.Lab;
import inkground.viewer.state.Probe;
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

    /** @return how far a colour is from the one the artwork asks for */
    public static String shift(Probe probe) {
        return probe.deltaE00().isPresent()
                ? String.format(
                        Locale.ROOT, "ΔE00 %.1f from asked", probe.deltaE00().getAsDouble())
                : "no ink asked for";
    }

    private static double noMinusZero(double value) {
        return Math.round(value) == 0 ? 0 : value;
    }
}
