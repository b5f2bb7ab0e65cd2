package inkground.viewer;

import inkground.viewer.desk.JobEngine;
import inkground.viewer.desk.ProofDesk;
import inkground.viewer.desk.Recents;
import inkground.viewer.state.ViewerState;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.FutureTask;
import java.util.function.BooleanSupplier;
import javafx.application.Platform;
import javafx.stage.Stage;

/**
 * Measures the window on one file at 2560 × 1440: time to the first picture, from key to new picture when the substrate is
 * stepped, and how long the window's thread is ever kept from a waiting event while zooming and panning. Argument: the PDF.
 */
public final class ViewerBench {
    private static final int STEPS = 40;
    private static final int MOVES = 120;

    private ViewerState state;
    private ViewerWindow window;
    private ProofDesk desk;

    /** Runs all measurements and prints them. */
    public static void main(String[] args) throws Exception {
        long start = System.nanoTime();
        CountDownLatch started = new CountDownLatch(1);
        Platform.startup(started::countDown);
        started.await();
        new ViewerBench().run(Path.of(args[0]), start);
        Platform.exit();
    }

    private void run(Path pdf, long start) throws Exception {
        onFx(() -> {
            state = new ViewerState();
            Recents recents = new Recents(ViewerRig.preferences());
            desk = new ProofDesk(state, new JobEngine(Optional.empty()), recents, ViewerRig.real());
            window = new ViewerWindow(state, desk);
            Stage stage = new Stage();
            stage.setWidth(2560);
            stage.setHeight(1440);
            window.show(stage);
            desk.stockRack();
            desk.open(pdf);
        });
        until(() -> state.page.get() != null && window.surface().complete());
        System.out.printf("first sharp picture after toolkit start: %.0f ms%n", (System.nanoTime() - start) / 1e6);
        until(() -> state.figures.get() != null);
        System.out.printf("figures measured after: %.0f ms%n", (System.nanoTime() - start) / 1e6);
        onFx(() -> state.zoom(3));
        until(() -> window.surface().complete());
        steps();
        moves();
        onFx(window::close);
    }

    private void steps() throws Exception {
        List<Double> times = new ArrayList<>();
        for (int i = 0; i < STEPS; i++) {
            int by = i % 20 < 10 ? 1 : -1;
            long from = System.nanoTime();
            onFx(() -> state.stepSubstrate(by));
            until(() -> window.surface().complete());
            times.add((System.nanoTime() - from) / 1e6);
        }
        print("substrate step to new picture", times);
        // Once more without asking all the time whether it is done, which costs the window's thread more than the step.
        long busy = cpuOfWindowThread();
        for (int i = 0; i < STEPS; i++) {
            int by = i % 20 < 10 ? 1 : -1;
            onFx(() -> state.stepSubstrate(by));
            Thread.sleep(300);
        }
        System.out.printf(
                "processor time of the window's thread: %.2f ms per step%n",
                (cpuOfWindowThread() - busy) / 1e6 / STEPS);
    }

    private void moves() throws Exception {
        long busy = cpuOfWindowThread();
        List<Double> waits = new ArrayList<>();
        for (int i = 0; i < MOVES; i++) {
            int move = i;
            onFx(() -> {
                if (move % 2 == 0) {
                    state.zoom(move % 40 < 20 ? 1.04 : 1 / 1.04);
                } else {
                    state.pan(7, -3);
                }
            });
            long asked = System.nanoTime();
            FutureTask<Double> wait = new FutureTask<>(() -> (System.nanoTime() - asked) / 1e6);
            Platform.runLater(wait);
            waits.add(wait.get());
            Thread.sleep(12);
        }
        print("wait for the window's thread while zooming and panning", waits);
        System.out.printf(
                "processor time of the window's thread: %.2f ms per move%n",
                (cpuOfWindowThread() - busy) / 1e6 / MOVES);
    }

    private static long cpuOfWindowThread() throws Exception {
        FutureTask<Long> time =
                new FutureTask<>(() -> ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime());
        Platform.runLater(time);
        return time.get();
    }

    private static void print(String what, List<Double> ms) {
        Collections.sort(ms);
        System.out.printf(
                "%s: median %.1f ms, 95th percentile %.1f ms, longest %.1f ms (%d times)%n",
                what, ms.get(ms.size() / 2), ms.get(ms.size() * 95 / 100), ms.get(ms.size() - 1), ms.size());
    }

    private void until(BooleanSupplier met) throws Exception {
        FutureTask<Boolean> asked = new FutureTask<>(met::getAsBoolean);
        Platform.runLater(asked);
        while (!asked.get()) {
            Thread.sleep(1);
            asked = new FutureTask<>(met::getAsBoolean);
            Platform.runLater(asked);
        }
    }

    private static void onFx(Runnable action) throws Exception {
        FutureTask<Boolean> task = new FutureTask<>(action, true);
        Platform.runLater(task);
        task.get();
    }
}
