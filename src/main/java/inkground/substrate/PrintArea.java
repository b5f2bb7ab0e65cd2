package inkground.substrate;

/**
 * A part of a substrate that can be printed.
 *
 * @param name for the user, such as "front chest"
 * @param widthMm width, above 0
 * @param heightMm height, above 0
 */
public record PrintArea(String name, double widthMm, double heightMm) {
    /** Checks name and sizes. */
    public PrintArea {
        if (name == null || name.isBlank() || !(widthMm > 0) || !(heightMm > 0)) {
            throw new IllegalArgumentException("a print area needs a name and a size above 0 mm");
        }
    }
}
