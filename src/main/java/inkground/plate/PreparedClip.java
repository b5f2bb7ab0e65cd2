package inkground.plate;

import inkground.geometry.Box;
import inkground.geometry.FillRule;

/**
 * A clip at one scale.
 *
 * @param parent the clip it narrows, or null
 * @param edges its path in device space
 * @param rule inside
 * @param box page space; the path, when it is an upright rectangle, else null
 * @param convex whether the path is known to be convex
 */
record PreparedClip(PreparedClip parent, EdgeList edges, FillRule rule, Box box, boolean convex) {
    @Override
    public boolean equals(Object o) {
        return this == o;
    }

    @Override
    public int hashCode() {
        return System.identityHashCode(this);
    }
}
