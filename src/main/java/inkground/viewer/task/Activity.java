package inkground.viewer.task;

import inkground.base.Cancel;
import inkground.base.Progress;
import java.util.concurrent.Executor;
import java.util.concurrent.atomic.AtomicBoolean;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/** Long work that is under way, for the status line. Reports may come from any thread; at most one waits for the window. */
public final class Activity implements Progress {
    private final Executor ui;
    private final ReadOnlyStringWrapper what = new ReadOnlyStringWrapper();
    private final ReadOnlyDoubleWrapper fraction = new ReadOnlyDoubleWrapper(-1);
    private final AtomicBoolean told = new AtomicBoolean();
    private volatile String latestWhat;
    private volatile double latestFraction = -1;
    private final boolean export;
    private Runnable cancel = () -> {};

    /**
     * @param ui the window's thread
     * @param what a few words
     * @param export whether a proof is being written
     */
    public Activity(Executor ui, String what, boolean export) {
        this.ui = ui;
        this.export = export;
        this.latestWhat = what;
        this.what.set(what);
    }

    /** Sets what the cancel button does. */
    public void stopsBy(Cancel switchOff) {
        cancel = switchOff::request;
    }

    /** @return whether a proof is being written */
    public boolean isExport() {
        return export;
    }

    /** Asks the work to stop. */
    public void cancel() {
        cancel.run();
    }

    /** @return a few words */
    public ReadOnlyStringProperty what() {
        return what.getReadOnlyProperty();
    }

    /** @return 0 to 1, or negative when unknown */
    public ReadOnlyDoubleProperty fraction() {
        return fraction.getReadOnlyProperty();
    }

    @Override
    public void report(String words, double done) {
        latestWhat = words;
        latestFraction = done;
        if (told.compareAndSet(false, true)) {
            ui.execute(() -> {
                told.set(false);
                what.set(latestWhat);
                fraction.set(latestFraction);
            });
        }
    }
}
