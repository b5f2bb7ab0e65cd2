package inkground.viewer.state;

import inkground.viewer.state.ProofEngine.OpenPage;
import java.util.Optional;

/**
 * A map and what it compares with.
 *
 * @param kind which map
 * @param limits what it compares with
 * @param phase of the play of the inks, 0 to {@link #PHASES} − 1; 0 for maps that stand still
 * @param before the revision that {@link MapKind#CHANGES} compares with; empty for the other kinds
 */
public record MapChoice(MapKind kind, MapLimits limits, int phase, Optional<OpenPage> before) {
    /** Steps of the play until it begins again. */
    public static final int PHASES = 8;

    /** Checks that there is something to compare with. */
    public MapChoice {
        if (kind == null || limits == null || phase < 0 || phase >= PHASES) {
            throw new IllegalArgumentException(kind + " in phase " + phase);
        }
        if (before.isPresent() != (kind == MapKind.CHANGES)) {
            throw new IllegalArgumentException(kind + " against " + before);
        }
    }

    /** @return this at rest, for what is measured once and not in every phase */
    public MapChoice atRest() {
        return new MapChoice(kind, limits, 0, before);
    }
}
