package inkground.app;

import inkground.artwork.ColourAssignment;
import inkground.garment.Placement;
import java.util.HashMap;
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
 */
public record Arrangement(
        ColourAssignment assignment,
        List<String> printOrder,
        Map<String, Double> opacities,
        Optional<WhiteBase> underbase,
        Placement placement) {
    /** All as the file has it, in the usual place. */
    public static final Arrangement AS_FILED =
            new Arrangement(ColourAssignment.NONE, List.of(), Map.of(), Optional.empty(), Placement.USUAL);

    /** Copies the collections and checks the opacities. */
    public Arrangement {
        Objects.requireNonNull(assignment);
        Objects.requireNonNull(underbase);
        Objects.requireNonNull(placement);
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
     * @param chokeMm how far it stays inside the edge of what it lies under, 0 to 5
     * @param knockedOutUnder names of inks that get no underbase
     */
    public record WhiteBase(double tint, double chokeMm, Set<String> knockedOutUnder) {
        /** Solid, to the edge, under every ink. */
        public static final WhiteBase FULL = new WhiteBase(1, 0, Set.of());

        /** Checks the ranges and copies the set. */
        public WhiteBase {
            if (!(tint >= 0 && tint <= 1) || !(chokeMm >= 0 && chokeMm <= 5)) {
                throw new IllegalArgumentException("underbase of tint " + tint + ", choke " + chokeMm + " mm");
            }
            knockedOutUnder = Set.copyOf(knockedOutUnder);
        }
    }

    /** @return this with other colour rules */
    public Arrangement assigning(ColourAssignment other) {
        return new Arrangement(other, printOrder, opacities, underbase, placement);
    }

    /** @return this with another print order */
    public Arrangement printing(List<String> order) {
        return new Arrangement(assignment, order, opacities, underbase, placement);
    }

    /** @return this with the opacity of one ink set; empty for what the file says */
    public Arrangement withOpacity(String ink, Optional<Double> opacity) {
        Map<String, Double> changed = new HashMap<>(opacities);
        opacity.ifPresentOrElse(o -> changed.put(ink, o), () -> changed.remove(ink));
        return new Arrangement(assignment, printOrder, changed, underbase, placement);
    }

    /** @return this over another underbase, or none */
    public Arrangement over(Optional<WhiteBase> other) {
        return new Arrangement(assignment, printOrder, opacities, other, placement);
    }

    /** @return this with the artwork laid elsewhere */
    public Arrangement placed(Placement other) {
        return new Arrangement(assignment, printOrder, opacities, underbase, other);
    }
}
