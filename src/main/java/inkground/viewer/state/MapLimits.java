package inkground.viewer.state;

/**
 * What maps compare with.
 *
 * @param de00 largest colour difference that is let pass, 0 or more
 * @param totalInkPercent largest sum of tints in one place, above 0
 * @param minLineMm thinnest line that holds, 0 to 20; 0 finds none
 * @param minGapMm narrowest gap that stays open, 0 to 20; 0 finds none
 * @param registerMm how far one ink may lie from another, 0 to 5
 */
public record MapLimits(double de00, double totalInkPercent, double minLineMm, double minGapMm, double registerMm) {
    /** Checks the ranges. */
    public MapLimits {
        if (!(de00 >= 0)
                || !(totalInkPercent > 0)
                || !(minLineMm >= 0 && minLineMm <= 20)
                || !(minGapMm >= 0 && minGapMm <= 20)
                || !(registerMm >= 0 && registerMm <= 5)) {
            throw new IllegalArgumentException("limits of ΔE00 " + de00 + ", " + totalInkPercent + " %, " + minLineMm
                    + " mm, " + minGapMm + " mm, " + registerMm + " mm");
        }
    }
}
