package inkground.viewer.desk;

import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Activity;
import inkground.viewer.task.Outcome;
import inkground.viewer.task.RenderScheduler;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.Consumer;

/**
 * Has the work of one window done off its thread: hands out schedulers, and lists what is under way so that the user sees it and
 * can stop it. Each kind of work has a scheduler of its own, so that none holds up another. Within one scheduler the newest wins:
 * what is started on it stops what runs there and forgets what waits.
 *
 * <p>Used on the window's thread only, and everything it calls back is called there, except {@link Task#run}: that runs on the
 * thread of its scheduler, must not touch the state, and is to be given beforehand, as values that do not change, what it needs
 * of it.
 */
public final class BackgroundWork {
    /** The executors of one window. */
    public interface Threads extends AutoCloseable {
        /** @return an executor of its own for one scheduler */
        Executor background(String name);

        /** @return runs on the window's thread, later */
        Executor ui();

        @Override
        void close();
    }

    /**
     * A piece of work that the user sees as an activity.
     *
     * @param <T> what it makes
     */
    interface Task<T> {
        /** Does it, off the window's thread; checks {@code cancel} often. */
        T run(Cancel cancel, Activity activity) throws Refusal;

        /** Lets go of a result that came too late to be wanted. */
        default void discard(T late) {}

        /** @return whether it writes a file for the user, see {@link Activity#isExport} */
        default boolean isExport() {
            return false;
        }
    }

    private final ViewerState state;
    private final Threads threads;
    private final List<RenderScheduler> schedulers = new ArrayList<>();

    /** @param state takes the activities, and what could not be done as its trouble */
    BackgroundWork(ViewerState state, Threads threads) {
        this.state = state;
        this.threads = threads;
    }

    /**
     * @param name says what kind of work, for its thread
     * @return a scheduler of its own, which stops with the window
     */
    public RenderScheduler scheduler(String name) {
        RenderScheduler scheduler = new RenderScheduler(threads.background(name), threads.ui());
        schedulers.add(scheduler);
        return scheduler;
    }

    /** @return the window's thread */
    public Executor ui() {
        return threads.ui();
    }

    /**
     * Has something done on a scheduler, in place of what is not finished there.
     *
     * @param what a few words for the user
     * @param done takes what it made; not called where it failed or was stopped
     */
    <T> Activity start(String what, RenderScheduler scheduler, Task<T> task, Consumer<T> done) {
        return start(what, scheduler, task, done, () -> {});
    }

    /**
     * The same.
     *
     * @param ended called once however it ends, after {@code done}
     */
    <T> Activity start(String what, RenderScheduler scheduler, Task<T> task, Consumer<T> done, Runnable ended) {
        Activity activity = new Activity(threads.ui(), what, task.isExport());
        state.activities.add(activity);
        Cancel cancel = scheduler.submit(
                new RenderScheduler.Work<T>() {
                    @Override
                    public T run(Cancel c) throws Refusal {
                        return task.run(c, activity);
                    }

                    @Override
                    public void discard(T late) {
                        task.discard(late);
                    }
                },
                outcome -> {
                    state.activities.remove(activity);
                    settle(outcome, done);
                    ended.run();
                });
        activity.stopsBy(cancel);
        return activity;
    }

    private <T> void settle(Outcome<T> outcome, Consumer<T> done) {
        if (outcome instanceof Outcome.Done<T> made) {
            done.accept(made.value());
        } else if (outcome instanceof Outcome.Failed<T> failed) {
            state.trouble.set(failed.message());
        }
    }

    /** Stops what the user waits for. */
    public void cancelAll() {
        List.copyOf(state.activities).forEach(Activity::cancel);
    }

    /** Stops all work; what is handed in later is settled as stopped. */
    void close() {
        schedulers.forEach(RenderScheduler::close);
        threads.close();
    }
}
