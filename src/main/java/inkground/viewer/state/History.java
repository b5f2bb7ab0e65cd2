package inkground.viewer.state;

import inkground.app.Arrangement;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Objects;
import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/** The arrangement of the job and the way back to what it was. Used on the window's thread. */
public final class History {
    /** Longest way back. */
    static final int MOST_STEPS = 200;

    /**
     * @param what was done, as the user would say it
     * @param gesture what the change belongs to; changes of one gesture are undone together
     * @param before how it was
     */
    private record Step(String what, Object gesture, Arrangement before) {}

    private final ReadOnlyObjectWrapper<Arrangement> now =
            new ReadOnlyObjectWrapper<>(this, "now", Arrangement.AS_FILED);
    private final ReadOnlyStringWrapper undoable = new ReadOnlyStringWrapper(this, "undoable", "");
    private final ReadOnlyStringWrapper redoable = new ReadOnlyStringWrapper(this, "redoable", "");
    private final Deque<Step> done = new ArrayDeque<>();
    private final Deque<Step> undone = new ArrayDeque<>();

    /** Nothing done yet. */
    History() {}

    /** @return the arrangement now; never null */
    public ReadOnlyObjectProperty<Arrangement> now() {
        return now.getReadOnlyProperty();
    }

    /** @return the arrangement now */
    public Arrangement get() {
        return now.get();
    }

    /** @return what undoing would undo; empty when there is nothing */
    public ReadOnlyStringProperty undoable() {
        return undoable.getReadOnlyProperty();
    }

    /** @return what redoing would do again; empty when there is nothing */
    public ReadOnlyStringProperty redoable() {
        return redoable.getReadOnlyProperty();
    }

    /** Changes the arrangement as one step. */
    public void change(String what, UnaryOperator<Arrangement> change) {
        change(what, new Object(), change);
    }

    /**
     * Changes the arrangement; the changes of one gesture, such as the drag of a slider, are one step.
     *
     * @param gesture tells gestures apart by {@code equals}; never null
     */
    public void change(String what, Object gesture, UnaryOperator<Arrangement> change) {
        Objects.requireNonNull(gesture, "a change belongs to a gesture");
        Arrangement next = change.apply(now.get());
        if (next.equals(now.get())) {
            return;
        }
        if (done.isEmpty() || !done.peek().gesture().equals(gesture)) {
            done.push(new Step(what, gesture, now.get()));
            if (done.size() > MOST_STEPS) {
                done.removeLast();
            }
        }
        undone.clear();
        become(next);
    }

    /** Takes the last step back, if there is one. */
    public void undo() {
        step(done, undone);
    }

    /** Takes the last undone step again, if there is one. */
    public void redo() {
        step(undone, done);
    }

    private void step(Deque<Step> from, Deque<Step> to) {
        if (!from.isEmpty()) {
            Step step = from.pop();
            // A gesture that was undone is over: what follows is not part of it.
            to.push(new Step(step.what(), new Object(), now.get()));
            become(step.before());
        }
    }

    /** Begins anew, with no way back: another file was opened. */
    public void restart(Arrangement from) {
        done.clear();
        undone.clear();
        become(from);
    }

    private void become(Arrangement next) {
        undoable.set(done.isEmpty() ? "" : done.peek().what());
        redoable.set(undone.isEmpty() ? "" : undone.peek().what());
        now.set(next);
    }
}
