package inkground.viewer.state;

/**
 * A map and what it compares with.
 *
 * @param kind which map
 * @param limitDe00 largest colour difference that is let pass, 0 or more
 * @param totalInkPercent largest sum of tints in one place, above 0
 */
public record MapChoice(MapKind kind, double limitDe00, double totalInkPercent) {
    /** Checks the limits. */
    public MapChoice {
        if (kind == null || !(limitDe00 >= 0) || !(totalInkPercent > 0)) {
            throw new IllegalArgumentException(kind + ", ΔE00 " + limitDe00 + ", " + totalInkPercent + " %");
        }
    }
}
