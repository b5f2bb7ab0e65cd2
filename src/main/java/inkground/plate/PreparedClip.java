package inkground.plate;

import inkground.artwork.Clip;
import inkground.geometry.FillRule;

/**
 * A clip at one scale.
 *
 * @param parent the clip it narrows, or null
 * @param edges its path in device space
 * @param rule inside
 */
record PreparedClip(PreparedClip parent, EdgeList edges, FillRule rule, Clip source) {
    @Override
    public boolean equals(Object o) {
        return this == o;
    }

    @Override
    public int hashCode() {
        return System.identityHashCode(this);
    }
}
