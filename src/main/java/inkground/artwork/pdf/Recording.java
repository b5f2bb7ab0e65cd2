package inkground.artwork.pdf;

import inkground.artwork.Approximation;
import inkground.artwork.Clip;
import inkground.artwork.Op;
import inkground.artwork.Origin;
import inkground.artwork.Visibility;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.cos.COSBase;

/** What has been recorded of a page so far, where the recorder stands, and the limits it works under. */
final class Recording {
    private static final int MAX_APPROXIMATIONS = 200;
    private static final int REPORT_EVERY = 4096;

    private final Limits limits;
    private final String what;
    private final Cancel cancel;
    private final Progress progress;
    private final Map<String, Approximation> approximations = new LinkedHashMap<>();
    private final Set<COSBase> active = Collections.newSetFromMap(new IdentityHashMap<>());
    private List<Op> ops = new ArrayList<>();
    private Place place = new Place("page", new ArrayList<>(), new ArrayDeque<>());
    private int opCount;
    private int operatorCount;
    private int depth;

    Recording(String what, Limits limits, Cancel cancel, Progress progress) {
        this.limits = limits;
        this.what = what;
        this.cancel = cancel;
        this.progress = progress;
    }

    /** State of one content stream: its name, the clips saved by q, its marked content, its operator count. */
    private static final class Place {
        final String object;
        final List<Clip> savedClips;
        final Deque<Visibility> marked;
        Visibility inherited = Visibility.ALWAYS;
        Clip clip;
        int operator = -1;
        /** Of everything painted now; null when the marked content has changed since it was worked out. */
        Visibility visibility;

        Place(String object, List<Clip> savedClips, Deque<Visibility> marked) {
            this.object = object;
            this.savedClips = savedClips;
            this.marked = marked;
        }
    }

    /** A nested content stream that was entered; hands back what the outer one needs. */
    record Outer(Object place, List<Op> ops, COSBase object) {}

    /**
     * Enters a nested content stream.
     *
     * @param object of the file, to notice one inside itself
     * @param apart whether its operations are collected by themselves
     * @param clean whether it starts without clip and layer condition, as patterns and masks do
     * @return what to hand to {@link #leave}; null when it is inside itself or too deep, and must be skipped
     */
    Outer enter(COSBase object, String name, boolean apart, boolean clean) {
        if (depth >= limits.nesting() || active.contains(object)) {
            String why = active.contains(object) ? "an object that contains itself" : "objects nested too deeply";
            approximate(why, "the innermost is left out");
            return null;
        }
        Outer outer = new Outer(place, ops, object);
        active.add(object);
        depth++;
        Place inner = new Place(name + " in " + place.object, new ArrayList<>(), new ArrayDeque<>());
        inner.inherited = clean ? Visibility.ALWAYS : visibility();
        inner.clip = clean ? null : place.clip;
        place = inner;
        if (apart) {
            ops = new ArrayList<>();
        }
        return outer;
    }

    /** @return the operations collected since {@link #enter}, when they were kept apart */
    List<Op> leave(Outer outer) {
        List<Op> collected = ops;
        place = (Place) outer.place;
        ops = outer.ops;
        active.remove(outer.object);
        depth--;
        return collected;
    }

    /** Starts the content of something beside the page's own content, such as an annotation. */
    void startObject(String name, Visibility visibility) {
        place = new Place(name, new ArrayList<>(), new ArrayDeque<>());
        place.inherited = visibility;
    }

    /** @param ofContent whether it stands in the content, and is not what another operator stands for */
    void countOperator(boolean ofContent) {
        cancel.check();
        place.operator += ofContent ? 1 : 0;
        if (++operatorCount % REPORT_EVERY == 0) {
            progress.report("reading " + what, -1);
        }
        if (operatorCount > limits.operators()) {
            throw new Stopped(new Refusal("This page (" + what + ") has more than " + limits.operators()
                    + " drawing instructions. Simplify the artwork or place its parts as images."));
        }
    }

    void add(Op op) {
        if (++opCount > limits.ops()) {
            throw new Stopped(new Refusal("This page (" + what + ") has more than " + limits.ops()
                    + " objects. Simplify the artwork or place its parts as images."));
        }
        ops.add(op);
    }

    List<Op> ops() {
        return ops;
    }

    /** @return number of operations collected so far, to be handed to {@link #since} */
    int count() {
        return ops.size();
    }

    /** @return the operations collected after the first {@code count}, a view that may be changed */
    List<Op> since(int count) {
        return ops.subList(Math.min(count, ops.size()), ops.size());
    }

    Clip clip() {
        return place.clip;
    }

    void clip(Clip clip) {
        place.clip = clip;
    }

    void saveState() {
        if (place.savedClips.size() >= limits.savedStates()) {
            throw new Stopped(new Refusal("This page (" + what + ") saves more than " + limits.savedStates()
                    + " graphics states inside each other; the file is damaged. Export it again."));
        }
        place.savedClips.add(place.clip);
    }

    void restoreState() {
        if (!place.savedClips.isEmpty()) {
            place.clip = place.savedClips.remove(place.savedClips.size() - 1);
        }
    }

    void beginMarked(Visibility visibility) {
        place.marked.push(visibility);
        place.visibility = null;
    }

    void endMarked() {
        if (!place.marked.isEmpty()) {
            place.marked.pop();
            place.visibility = null;
        }
    }

    Visibility visibility() {
        if (place.visibility == null) {
            Visibility all = place.inherited;
            for (var i = place.marked.descendingIterator(); i.hasNext(); ) {
                all = LayersReader.both(all, i.next());
            }
            place.visibility = all;
        }
        return place.visibility;
    }

    Origin origin() {
        return new Origin(place.object, Math.max(0, place.operator), visibility());
    }

    /** Notes once per feature that something is not exact. */
    void approximate(String feature, String shownAs) {
        if (approximations.size() < MAX_APPROXIMATIONS) {
            approximations.computeIfAbsent(feature, f -> new Approximation(f, shownAs, origin()));
        }
    }

    void damaged(String operator) {
        approximate("damaged content (" + operator + ")", "the damaged part is left out");
    }

    List<Approximation> approximations() {
        return List.copyOf(approximations.values());
    }
}
