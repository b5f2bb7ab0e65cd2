package inkground.viewer.task;

import inkground.base.Cancel;
import inkground.base.Refusal;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Runs work off the window's thread, one piece at a time, the newest first: handing in new work asks the running piece to
 * stop and forgets the one that waits. Every piece is settled exactly once, on the {@code ui} executor. Thread-safe; with
 * a same-thread executor everything happens inside {@link #submit}.
 */
public final class RenderScheduler {
    private static final Logger LOG = Logger.getLogger(RenderScheduler.class.getName());

    /** Work that makes a {@code T}. */
    public interface Work<T> {
        /** Does it; checks {@code cancel} often. */
        T run(Cancel cancel) throws Refusal;

        /** Lets go of a result that came too late to be wanted. */
        default void discard(T value) {}
    }

    private record Job<T>(Work<T> work, Cancel cancel, Consumer<Outcome<T>> settled) {}

    private final Executor background;
    private final Executor ui;
    private Job<?> running;
    private Job<?> waiting;
    private boolean closed;

    /**
     * @param background where work runs
     * @param ui where outcomes are delivered
     */
    public RenderScheduler(Executor background, Executor ui) {
        this.background = background;
        this.ui = ui;
    }

    /**
     * Hands in work; it replaces all earlier work that is not settled.
     *
     * @param settled told the outcome, on the {@code ui} executor
     * @return the switch that stops it
     */
    public <T> Cancel submit(Work<T> work, Consumer<Outcome<T>> settled) {
        Job<T> job = new Job<>(work, new Cancel(), settled);
        Job<?> forgotten = null;
        boolean start = false;
        synchronized (this) {
            if (closed) {
                forgotten = job;
            } else if (running == null) {
                running = job;
                start = true;
            } else {
                running.cancel.request();
                forgotten = waiting;
                waiting = job;
            }
        }
        if (forgotten != null) {
            cancelled(forgotten);
        }
        if (start) {
            background.execute(() -> run(job));
        }
        return job.cancel;
    }

    /** Stops the running piece and forgets the waiting one. */
    public void cancel() {
        Job<?> forgotten;
        synchronized (this) {
            if (running != null) {
                running.cancel.request();
            }
            forgotten = waiting;
            waiting = null;
        }
        if (forgotten != null) {
            cancelled(forgotten);
        }
    }

    /** Stops all work and takes no more; work handed in later is settled as cancelled. */
    public void close() {
        synchronized (this) {
            closed = true;
        }
        cancel();
    }

    /** @return whether any work is not finished */
    public synchronized boolean busy() {
        return running != null;
    }

    private <T> void cancelled(Job<T> job) {
        job.cancel.request();
        ui.execute(() -> job.settled.accept(new Outcome.Cancelled<>()));
    }

    private <T> void run(Job<T> job) {
        Outcome<T> outcome = outcomeOf(job);
        Job<?> next;
        synchronized (this) {
            next = waiting;
            waiting = null;
            running = next;
        }
        ui.execute(() -> deliver(job, outcome));
        if (next != null) {
            Job<?> starting = next;
            background.execute(() -> run(starting));
        }
    }

    private static <T> void deliver(Job<T> job, Outcome<T> outcome) {
        if (outcome instanceof Outcome.Done<T> done && job.cancel.requested()) {
            job.work.discard(done.value());
            job.settled.accept(new Outcome.Cancelled<>());
        } else {
            job.settled.accept(outcome);
        }
    }

    private static <T> Outcome<T> outcomeOf(Job<T> job) {
        try {
            job.cancel.check();
            return new Outcome.Done<>(job.work.run(job.cancel));
        } catch (CancellationException e) {
            return new Outcome.Cancelled<>();
        } catch (Refusal e) {
            // Work that was stopped may be refused for it, as by a file closed under it.
            return job.cancel.requested() ? new Outcome.Cancelled<>() : new Outcome.Failed<>(e.getMessage());
        } catch (OutOfMemoryError e) {
            LOG.log(Level.WARNING, "out of memory", e);
            return new Outcome.Failed<>(
                    "This needs more memory than there is. Zoom out, or choose a lower resolution.");
        } catch (RuntimeException e) {
            return unexpected(job, e);
        }
    }

    private static <T> Outcome<T> unexpected(Job<T> job, RuntimeException e) {
        if (job.cancel.requested()) {
            // Stopped work may trip over a file that was closed under it: not worth a word to the user.
            LOG.log(Level.FINE, "after cancel", e);
            return new Outcome.Cancelled<>();
        }
        LOG.warning("unexpected: " + e);
        LOG.log(Level.FINE, "its trace", e);
        return new Outcome.Failed<>("Something in this file could not be handled. What is open is not affected.");
    }
}
