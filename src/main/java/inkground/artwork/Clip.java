package inkground.artwork;

import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Outline;

/**
 * One more path to stay inside of. Clips form a chain from the innermost to the outermost; operations share the links, so
 * that a link can be rasterised once.
 *
 * @param parent the clip this one narrows; null for none
 * @param path in page space
 * @param rule inside of the path
 * @param bounds box of everything that can show, in page space: the path's box cut by the parent's
 */
public record Clip(Clip parent, Outline path, FillRule rule, Box bounds) {
    /** @return {@code parent}, which may be null, narrowed; itself where that is its own outline again */
    public static Clip of(Clip parent, Outline path, FillRule rule) {
        if (parent != null && parent.rule == rule && parent.path.equals(path)) {
            return parent;
        }
        Box box = path.bounds();
        return new Clip(parent, path, rule, parent == null ? box : box.intersect(parent.bounds));
    }

    // Identity, not content: chains can be long and are shared by reference.
    @Override
    public boolean equals(Object o) {
        return this == o;
    }

    @Override
    public int hashCode() {
        return System.identityHashCode(this);
    }
}
