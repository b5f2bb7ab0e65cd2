package inkground.appearance;

import java.util.Set;

/**
 * White laid under colours on a garment, made by the program wherever a shown coloured ink prints that is to have it.
 *
 * @param white the ink
 * @param tint of the underbase, 0 to 1
 * @param hits how many times it is printed over itself, 1 to {@value #MOST_HITS}; each makes it thicker and hides more [KUBELKA1948]
 * @param chokeMm how far it stays inside the edge of what it lies under, -5 to 5; below 0 it spreads beyond that edge
 * @param under names of the inks that get an underbase; empty for every coloured ink
 * @param knockedOutUnder names of inks that get none and take away that of others where they print, such as a black printed
 *     straight on the cloth
 */
public record Underbase(
        InkColour white, double tint, int hits, double chokeMm, Set<String> under, Set<String> knockedOutUnder) {
    /** Most passes of white. */
    public static final int MOST_HITS = 4;
    /** Furthest choke or spread in mm. */
    public static final double MOST_CHOKE_MM = 5;

    /** Checks the ranges and copies the sets. */
    public Underbase {
        boolean fits = white != null
                && tint >= 0
                && tint <= 1
                && hits >= 1
                && hits <= MOST_HITS
                && Math.abs(chokeMm) <= MOST_CHOKE_MM;
        if (!fits) {
            throw new IllegalArgumentException("an underbase needs an ink, a tint from 0 to 1, 1 to " + MOST_HITS
                    + " hits and a choke or spread of at most " + MOST_CHOKE_MM + " mm");
        }
        under = Set.copyOf(under);
        knockedOutUnder = Set.copyOf(knockedOutUnder);
    }

    /** One hit under every coloured ink but those named. */
    public Underbase(InkColour white, double tint, double chokeMm, Set<String> knockedOutUnder) {
        this(white, tint, 1, chokeMm, Set.of(), knockedOutUnder);
    }

    /** @return a full underbase of the usual white, without choke, under every coloured ink */
    public static Underbase full() {
        return new Underbase(InkColours.underbaseWhite(), 1, 0, Set.of());
    }

    /** @return the same underbase of a white with another opacity */
    public Underbase withWhiteOf(double opacity) {
        return new Underbase(white.withOpacity(opacity), tint, hits, chokeMm, under, knockedOutUnder);
    }

    /**
     * @param chokeMm millimetres of the print
     * @param scale printed size over the artwork's own
     * @return what that is on the page, within the limits: on a page that is printed larger it is less
     */
    public static double chokeOnPage(double chokeMm, double scale) {
        return Math.max(-MOST_CHOKE_MM, Math.min(MOST_CHOKE_MM, chokeMm / scale));
    }

    /** @return whether an ink of this name gets an underbase */
    boolean under(String ink) {
        return (under.isEmpty() || under.contains(ink)) && !knockedOutUnder.contains(ink);
    }
}
