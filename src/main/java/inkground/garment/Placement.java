package inkground.garment;

import inkground.substrate.Cut;
import java.util.Objects;
import java.util.Optional;

/**
 * Where the user lays the artwork on which garment. What is left empty follows what is usual, so that a placement can outlive a
 * change of garment. Immutable.
 *
 * @param cut id of the cut; empty for the first that is made of the substrate's kind of cloth
 * @param size its size; empty, or unknown to the cut, for the cut's usual size
 * @param side front or back; a cut without this side shows the one it has
 * @param belowMm from the seam of the collar (or what else the face is measured from) down to the top of the artwork; empty for
 *     what is usual on this face
 * @param offCentreMm from the centre line to the middle of the artwork, to the right as seen
 * @param widthMm width of the artwork as printed; empty for its own
 * @param measured what counts as the artwork's edge
 */
public record Placement(
        Optional<String> cut,
        Optional<String> size,
        Cut.Side side,
        Optional<Double> belowMm,
        double offCentreMm,
        Optional<Double> widthMm,
        Measured measured) {
    /** Farthest from collar or centre line, in either direction. */
    public static final double FARTHEST_MM = 2000;
    /** Widest and narrowest print. */
    public static final double WIDEST_MM = 2000;

    public static final double NARROWEST_MM = 5;

    /** A usual print: in the middle of the front, in its own size. */
    public static final Placement USUAL = new Placement(
            Optional.empty(), Optional.empty(), Cut.Side.FRONT, Optional.empty(), 0, Optional.empty(), Measured.TRIM);

    /** What counts as the edge of the artwork. */
    public enum Measured {
        /** The trim box of the page. */
        TRIM,
        /** The box around all ink. */
        INK;

        /** @return its word for commands and files */
        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /** Checks the ranges. */
    public Placement {
        Objects.requireNonNull(cut);
        Objects.requireNonNull(size);
        Objects.requireNonNull(side);
        Objects.requireNonNull(measured);
        double below = belowMm.orElse(0.0);
        double width = widthMm.orElse(NARROWEST_MM);
        if (!(Math.abs(below) <= FARTHEST_MM)
                || !(Math.abs(offCentreMm) <= FARTHEST_MM)
                || !(width >= NARROWEST_MM && width <= WIDEST_MM)) {
            throw new IllegalArgumentException(
                    "placed " + below + " mm below, " + offCentreMm + " mm off centre, " + width + " mm wide");
        }
    }

    /** @return a length held within what a placement can have */
    public static double held(double mm) {
        return Math.max(-FARTHEST_MM, Math.min(FARTHEST_MM, mm));
    }

    /** @return this on another cut, in its usual size */
    public Placement wearing(String cutId) {
        return new Placement(Optional.of(cutId), Optional.empty(), side, belowMm, offCentreMm, widthMm, measured);
    }

    /** @return this in another size */
    public Placement sized(String name) {
        return new Placement(cut, Optional.of(name), side, belowMm, offCentreMm, widthMm, measured);
    }

    /** @return this on another side */
    public Placement on(Cut.Side other) {
        return new Placement(cut, size, other, belowMm, offCentreMm, widthMm, measured);
    }

    /** @return this at another place, held within the range */
    public Placement at(double below, double offCentre) {
        return new Placement(cut, size, side, Optional.of(held(below)), held(offCentre), widthMm, measured);
    }

    /** @return this in another width, held within the range; empty for the artwork's own */
    public Placement wide(Optional<Double> width) {
        return new Placement(
                cut,
                size,
                side,
                belowMm,
                offCentreMm,
                width.map(mm -> Math.max(NARROWEST_MM, Math.min(WIDEST_MM, mm))),
                measured);
    }

    /** @return this measured to another edge of the artwork */
    public Placement measuredTo(Measured other) {
        return new Placement(cut, size, side, belowMm, offCentreMm, widthMm, other);
    }
}
