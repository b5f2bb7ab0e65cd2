package inkground.viewer.state;

import inkground.viewer.state.ProofEngine.OpenPage;
import java.util.Optional;

/**
 * A map and what it compares with.
 *
 * @param kind which map
 * @param limitDe00 largest colour difference that is let pass, 0 or more
 * @param totalInkPercent largest sum of tints in one place, above 0
 * @param before the revision that {@link MapKind#CHANGES} compares with; empty for the other kinds
 */
public record MapChoice(MapKind kind, double limitDe00, double totalInkPercent, Optional<OpenPage> before) {
    /** Checks the limits, and that there is something to compare with. */
    public MapChoice {
        if (before.isPresent() != (kind == MapKind.CHANGES)) {
            throw new IllegalArgumentException(kind + " against " + before);
        }
        if (kind == null || !(limitDe00 >= 0) || !(totalInkPercent > 0)) {
            throw new IllegalArgumentException(kind + ", ΔE00 " + limitDe00 + ", " + totalInkPercent + " %");
        }
    }
}
