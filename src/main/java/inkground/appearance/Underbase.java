package inkground.appearance;

import java.util.Set;

/**
 * White laid under colours on a garment, made by the program wherever a shown coloured ink prints.
 *
 * @param white the ink
 * @param tint of the underbase, 0 to 1
 * @param chokeMm how far it stays inside the edge of what it lies under, 0 to 5
 * @param knockedOutUnder names of inks that get no underbase, such as a black printed straight on the cloth
 */
public record Underbase(InkColour white, double tint, double chokeMm, Set<String> knockedOutUnder) {
    /** Checks the ranges and copies the set. */
    public Underbase {
        if (white == null || !(tint >= 0 && tint <= 1) || !(chokeMm >= 0 && chokeMm <= 5)) {
            throw new IllegalArgumentException(
                    "an underbase needs an ink, a tint from 0 to 1 and a choke from 0 to 5 mm");
        }
        knockedOutUnder = Set.copyOf(knockedOutUnder);
    }

    /** @return a full underbase of the usual white, without choke, under every coloured ink */
    public static Underbase full() {
        return new Underbase(InkColours.underbaseWhite(), 1, 0, Set.of());
    }
}
