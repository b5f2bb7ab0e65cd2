package inkground.appearance;

/**
 * How planes are painted.
 *
 * @param texture whether the surface of the substrate is shown
 */
public record PaintOptions(boolean texture) {
    /** Flat colour. */
    public static final PaintOptions FLAT = new PaintOptions(false);
    /** With the surface of the substrate. */
    public static final PaintOptions TEXTURED = new PaintOptions(true);
}
