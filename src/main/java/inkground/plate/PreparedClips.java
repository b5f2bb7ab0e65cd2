package inkground.plate;

import inkground.artwork.Clip;
import inkground.artwork.Op;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.Map;

/**
 * Brings clips to one scale, each once. The coverages of a chain are multiplied, which is right where edges cross and too
 * little where they coincide; so a rectangle in a rectangle and an outline given again are one clip and not two.
 */
final class PreparedClips {
    /** Clips further out than this are not looked at for a repeated outline, to bound the work. */
    private static final int REPEATS_WITHIN = 32;

    private final Matrix toDevice;
    private final Map<Clip, PreparedClip> made = new IdentityHashMap<>();

    PreparedClips(Matrix toDevice) {
        this.toDevice = toDevice;
    }

    /** What cuts an operation: not a clip of the very outline that it fills, which would only thin its edge. */
    PreparedClip of(Op op) {
        Clip clip = op.clip();
        while (clip != null
                && op instanceof Op.Fill fill
                && fill.rule() == clip.rule()
                && fill.path().equals(clip.path())) {
            clip = clip.parent();
        }
        return of(clip);
    }

    /** @param clip null for none */
    PreparedClip of(Clip clip) {
        Deque<Clip> links = new ArrayDeque<>();
        Clip known = clip;
        while (known != null && !made.containsKey(known)) {
            links.push(known);
            known = known.parent();
        }
        PreparedClip around = known == null ? null : made.get(known);
        while (!links.isEmpty()) { // a chain may be longer than calls can be nested
            Clip link = links.pop();
            around = repeats(link) ? around : make(link, around);
            made.put(link, around);
        }
        return around;
    }

    /** An outline cut by itself is the same outline. */
    private static boolean repeats(Clip clip) {
        Clip outer = clip.parent();
        for (int i = 0; outer != null && i < REPEATS_WITHIN; i++, outer = outer.parent()) {
            if (outer.rule() == clip.rule() && outer.path().equals(clip.path())) {
                return true;
            }
        }
        return false;
    }

    private PreparedClip make(Clip clip, PreparedClip parent) {
        Box box = Rectangles.of(clip.path());
        if (box == null || parent == null || parent.box() == null) {
            boolean convex = box != null || Rectangles.convex(clip.path());
            return new PreparedClip(parent, EdgeList.of(clip.path(), toDevice), clip.rule(), box, convex);
        }
        // one rectangle in place of two: the product of their coverages would thin a pixel that both cut
        Box both = box.intersect(parent.box());
        EdgeList edges = EdgeList.of(Outline.rectangle(both), toDevice);
        return new PreparedClip(parent.parent(), edges, FillRule.NON_ZERO, both, true);
    }
}
