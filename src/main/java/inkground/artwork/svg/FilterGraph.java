package inkground.artwork.svg;

import java.awt.image.renderable.RenderableImage;
import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.apache.batik.ext.awt.image.renderable.Filter;
import org.apache.batik.ext.awt.image.renderable.FilterColorInterpolation;

/** The library's filter primitives and what they take in. */
final class FilterGraph {
    private FilterGraph() {}

    /**
     * @return whether a primitive counts linear light in the library's 8 bits, which turns dark colours into others; {@link FineBlur}
     *     has more of them
     */
    static boolean countsLinearLight(Filter filter) {
        Set<RenderableImage> seen = Collections.newSetFromMap(new IdentityHashMap<>());
        Deque<RenderableImage> left = new ArrayDeque<>();
        left.push(filter);
        while (!left.isEmpty()) {
            RenderableImage next = left.pop();
            if (next == null || !seen.add(next)) {
                continue;
            }
            if (next instanceof FilterColorInterpolation c && c.isColorSpaceLinear() && !(next instanceof FineBlur)) {
                return true;
            }
            List<RenderableImage> sources = next.getSources();
            if (sources != null) {
                sources.stream().filter(source -> source != null).forEach(left::push);
            }
        }
        return false;
    }
}
