package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.base.Refusal;
import inkground.viewer.task.Outcome;
import inkground.viewer.task.RenderScheduler;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.junit.jupiter.api.Test;

class RenderSchedulerTest {
    private final Deque<Runnable> background = new ArrayDeque<>();
    private final List<String> settled = new ArrayList<>();

    private RenderScheduler scheduler() {
        return new RenderScheduler(background::add, Runnable::run);
    }

    private void submit(RenderScheduler scheduler, String name) {
        scheduler.submit(
                cancel -> {
                    cancel.check();
                    return name;
                },
                outcome -> settled.add(name + " " + word(outcome)));
    }

    private static String word(Outcome<?> outcome) {
        return outcome instanceof Outcome.Done<?> done
                ? "done " + done.value()
                : outcome instanceof Outcome.Failed<?> failed ? "failed " + failed.message() : "cancelled";
    }

    @Test
    void theNewestOfThreeWinsAndEachIsSettledOnce() {
        RenderScheduler scheduler = scheduler();
        submit(scheduler, "first");
        submit(scheduler, "second");
        submit(scheduler, "third");
        while (!background.isEmpty()) {
            background.poll().run();
        }
        assertThat(settled).containsExactly("second cancelled", "first cancelled", "third done third");
        assertThat(scheduler.busy()).isFalse();
    }

    @Test
    void onlyOnePieceOfWorkIsEverInFlight() {
        RenderScheduler scheduler = scheduler();
        submit(scheduler, "first");
        submit(scheduler, "second");
        assertThat(background).hasSize(1);
    }

    @Test
    void aResultThatComesTooLateIsLetGoOf() {
        RenderScheduler scheduler = scheduler();
        List<String> discarded = new ArrayList<>();
        scheduler.submit(
                new RenderScheduler.Work<String>() {
                    @Override
                    public String run(inkground.base.Cancel cancel) {
                        scheduler.cancel();
                        return "late";
                    }

                    @Override
                    public void discard(String value) {
                        discarded.add(value);
                    }
                },
                outcome -> settled.add(word(outcome)));
        background.poll().run();
        assertThat(settled).containsExactly("cancelled");
        assertThat(discarded).containsExactly("late");
    }

    @Test
    void aRefusalBecomesItsMessage() {
        RenderScheduler scheduler = new RenderScheduler(Runnable::run, Runnable::run);
        scheduler.submit(
                cancel -> {
                    throw new Refusal("a.pdf is damaged.");
                },
                outcome -> settled.add(word(outcome)));
        assertThat(settled).containsExactly("failed a.pdf is damaged.");
    }

    @Test
    void anUnexpectedExceptionBecomesWordsWithoutItsName() {
        RenderScheduler scheduler = new RenderScheduler(Runnable::run, Runnable::run);
        scheduler.submit(
                cancel -> {
                    throw new IllegalStateException("inner");
                },
                outcome -> settled.add(word(outcome)));
        assertThat(settled.get(0))
                .startsWith("failed ")
                .doesNotContain("Exception")
                .doesNotContain("inner");
    }

    @Test
    void whatIsCancelledBeforeItStartsNeverRuns() {
        RenderScheduler scheduler = scheduler();
        List<String> ran = new ArrayList<>();
        scheduler.submit(cancel -> ran.add("ran"), outcome -> settled.add(word(outcome)));
        scheduler.cancel();
        background.poll().run();
        assertThat(ran).isEmpty();
        assertThat(settled).containsExactly("cancelled");
    }

    @Test
    void aClosedSchedulerTakesNoMoreWork() {
        RenderScheduler scheduler = scheduler();
        submit(scheduler, "running");
        scheduler.close();
        submit(scheduler, "late");
        background.poll().run();
        assertThat(background).isEmpty();
        assertThat(settled).containsExactly("late cancelled", "running cancelled");
    }
}
