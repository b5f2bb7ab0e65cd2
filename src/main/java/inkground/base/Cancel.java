package inkground.base;

import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicBoolean;

/** A co-operative cancel switch shared by whoever asks for work and whoever does it. Thread-safe; once set it stays. */
public final class Cancel {
    private final AtomicBoolean requested = new AtomicBoolean();

    /** Asks the work to stop at its next check. */
    public void request() {
        requested.set(true);
    }

    /** @return whether the work has been asked to stop */
    public boolean requested() {
        return requested.get();
    }

    /**
     * Called by the work at every step short enough not to be noticed.
     *
     * @throws CancellationException if the work has been asked to stop
     */
    public void check() {
        if (requested.get()) {
            throw new CancellationException("cancelled");
        }
    }
}
