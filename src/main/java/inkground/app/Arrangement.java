package inkground.app;

import inkground.appearance.Underbase;
import inkground.artwork.ColourAssignment;
import inkground.artwork.PictureSize;
import inkground.garment.Placement;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * What the user has decided about a job, apart from what the file says: everything here can be undone and is kept with the
 * session. Inks are meant by name, so that a decision outlives a new revision of the file. Immutable.
 *
 * @param assignment which colours are printed otherwise than stated
 * @param printOrder names of inks, first printed first; inks left out follow in their usual order; empty for the usual order
 * @param opacities opacity by name of ink, 0 a pure filter to 1 hiding, where the user's word replaces the file's
 * @param underbase white laid under the inks on a garment; empty for none
 * @param placement where the artwork lies on which garment
 * @param size how large a picture or an SVG is, where the file does not say or says wrongly
 */
public record Arrangement(
        ColourAssignment assignment,
        List<String> printOrder,
        Map<String, Double> opacities,
        Optional<WhiteBase> underbase,
        Placement placement,
        PictureSize size) {
    /** All as the file has it, in the usual place. */
    public static final Arrangement AS_FILED = new Arrangement(
            ColourAssignment.NONE, List.of(), Map.of(), Optional.empty(), Placement.USUAL, PictureSize.STATED);

    /** Copies the collections and checks the opacities. */
    public Arrangement {
        Objects.requireNonNull(assignment);
        Objects.requireNonNull(underbase);
        Objects.requireNonNull(placement);
        Objects.requireNonNull(size);
        printOrder = List.copyOf(printOrder);
        opacities = Map.copyOf(opacities);
        if (opacities.values().stream().anyMatch(o -> !(o >= 0 && o <= 1))) {
            throw new IllegalArgumentException("an opacity is not from 0 to 1: " + opacities);
        }
    }

    /**
     * White laid under the inks.
     *
     * @param tint 0 to 1
     * @param hits how many times it is printed over itself, 1 to {@value Underbase#MOST_HITS}
     * @param chokeMm how far it stays inside the edge of what it lies under, -5 to 5; below 0 it spreads beyond
     * @param under names of the inks that it lies under; empty for every coloured ink
     * @param knockedOutUnder names of inks that get none, and take away that of others where they print
     */
    public record WhiteBase(double tint, int hits, double chokeMm, Set<String> under, Set<String> knockedOutUnder) {
        /** Solid, to the edge, under every ink. */
        public static final WhiteBase FULL = new WhiteBase(1, 1, 0, Set.of(), Set.of());

        /** Checks the ranges and copies the sets. */
        public WhiteBase {
            boolean fits = tint >= 0
                    && tint <= 1
                    && hits >= 1
                    && hits <= Underbase.MOST_HITS
                    && Math.abs(chokeMm) <= Underbase.MOST_CHOKE_MM;
            if (!fits) {
                throw new IllegalArgumentException(
                        "underbase of tint " + tint + ", " + hits + " hits, choke " + chokeMm + " mm");
            }
            under = Set.copyOf(under);
            knockedOutUnder = Set.copyOf(knockedOutUnder);
        }

        /** @return an underbase as it is arranged, whatever its white */
        public static WhiteBase of(Underbase base) {
            return new WhiteBase(base.tint(), base.hits(), base.chokeMm(), base.under(), base.knockedOutUnder());
        }

        /** @return this with another tint, 0 to 1 */
        public WhiteBase ofTint(double other) {
            return new WhiteBase(other, hits, chokeMm, under, knockedOutUnder);
        }

        /** @return this printed another number of times */
        public WhiteBase ofHits(int other) {
            return new WhiteBase(tint, other, chokeMm, under, knockedOutUnder);
        }

        /** @return this choked, or below 0 spread, otherwise; mm */
        public WhiteBase choked(double mm) {
            return new WhiteBase(tint, hits, mm, under, knockedOutUnder);
        }

        /** @return this as it is on a page that is printed so many times as large: its choke is millimetres of the print */
        public WhiteBase printedAt(double scale) {
            return chokeMm == 0 ? this : choked(Underbase.chokeOnPage(chokeMm, scale));
        }

        /** @return whether it lies under an ink of this name, which must be a coloured one */
        public boolean liesUnder(String ink) {
            return (under.isEmpty() || under.contains(ink)) && !knockedOutUnder.contains(ink);
        }

        /** @return this laid under an ink too */
        public WhiteBase laidUnder(String ink) {
            Set<String> more = new HashSet<>(under);
            if (!under.isEmpty()) {
                more.add(ink);
            }
            Set<String> without = new HashSet<>(knockedOutUnder);
            without.remove(ink);
            return new WhiteBase(tint, hits, chokeMm, more, without);
        }

        /** @return this knocked out under an ink */
        public WhiteBase knockedOutUnder(String ink) {
            Set<String> without = new HashSet<>(knockedOutUnder);
            without.add(ink);
            return new WhiteBase(tint, hits, chokeMm, under, without);
        }
    }

    /** @return this with other colour rules */
    public Arrangement assigning(ColourAssignment other) {
        return new Arrangement(other, printOrder, opacities, underbase, placement, size);
    }

    /** @return this with another print order */
    public Arrangement printing(List<String> order) {
        return new Arrangement(assignment, order, opacities, underbase, placement, size);
    }

    /** @return this with the opacity of one ink set; empty for what the file says */
    public Arrangement withOpacity(String ink, Optional<Double> opacity) {
        Map<String, Double> changed = new HashMap<>(opacities);
        opacity.ifPresentOrElse(o -> changed.put(ink, o), () -> changed.remove(ink));
        return new Arrangement(assignment, printOrder, changed, underbase, placement, size);
    }

    /** @return this over another underbase, or none */
    public Arrangement over(Optional<WhiteBase> other) {
        return new Arrangement(assignment, printOrder, opacities, other, placement, size);
    }

    /** @return this with the artwork laid elsewhere */
    public Arrangement placed(Placement other) {
        return new Arrangement(assignment, printOrder, opacities, underbase, other, size);
    }

    /** @return this with a picture or an SVG of another size */
    public Arrangement sized(PictureSize other) {
        return new Arrangement(assignment, printOrder, opacities, underbase, placement, other);
    }
}
