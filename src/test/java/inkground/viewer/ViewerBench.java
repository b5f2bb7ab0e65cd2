package inkground.viewer;

import inkground.viewer.desk.JobEngine;
import inkground.viewer.desk.ProofDesk;
import inkground.viewer.desk.Recents;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.ViewerState;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import javafx.application.Platform;
import javafx.stage.Stage;

/**
 * Measures the window on one file. Arguments: the file, then any of
 *
 * <ul>
 *   <li>{@code steps}: from key to new picture when the substrate is stepped without a pause, at 2560 × 1440
 *   <li>{@code step}: the same from rest: each step when all that the one before brings about is done
 *   <li>{@code moves}: how long anything keeps the window's thread while zooming and panning, at 2560 × 1440
 *   <li>{@code memory}: what the file costs in memory when it has been looked at near and far
 *   <li>{@code leak}: memory after a thousand and after ten thousand steps, in a small window
 *   <li>{@code rounds}: memory after twenty and after a hundred rounds through all maps and views, each with the file read again,
 *       in a small window
 * </ul>
 */
public final class ViewerBench {
    private static final int STEPS = 40;
    private static final int MOVES = 90;
    private static final long REST_MS = 250;
    private static final long PATIENCE_S = 300;

    private final boolean small;
    private ViewerState state;
    private ViewerWindow window;
    private ProofDesk desk;
    private PulseWatch watch;

    private ViewerBench(boolean small) {
        this.small = small;
    }

    /** Runs what is asked for and prints it. */
    public static void main(String[] args) throws Exception {
        long processStart = ManagementFactory.getRuntimeMXBean().getStartTime();
        CountDownLatch started = new CountDownLatch(1);
        Platform.startup(started::countDown);
        started.await();
        List<String> wanted = List.of(args).subList(1, args.length);
        ViewerBench bench = new ViewerBench(wanted.contains("leak") || wanted.contains("rounds"));
        bench.open(Path.of(args[0]), processStart);
        for (String what : wanted) {
            switch (what) {
                case "steps" -> bench.steps(0);
                case "step" -> bench.steps(REST_MS);
                case "moves" -> bench.moves();
                case "memory" -> bench.memory();
                case "leak" -> bench.leak();
                case "rounds" -> bench.rounds();
                default -> throw new IllegalArgumentException(what);
            }
        }
        onFx(bench.window::close);
        Platform.exit();
    }

    private void open(Path file, long processStart) throws Exception {
        CompletableFuture<Long> painted = new CompletableFuture<>();
        CompletableFuture<Long> read = new CompletableFuture<>();
        long toolkit = System.currentTimeMillis();
        onFx(() -> {
            state = new ViewerState();
            state.page.addListener((o, before, now) -> read.complete(System.currentTimeMillis()));
            Recents recents = new Recents(ViewerRig.preferences());
            desk = new ProofDesk(state, new JobEngine(Optional.empty()), recents, ViewerRig.real());
            desk.files().open(file);
            desk.stockRack();
            window = new ViewerWindow(state, desk);
            Stage stage = new Stage();
            stage.setWidth(small ? 1060 : 2560);
            stage.setHeight(small ? 640 : 1440);
            window.show(stage);
            watch = new PulseWatch(window.scene());
            watch.afterLayout(() -> {
                if (state.page.get() != null && window.surface().complete()) {
                    watch.afterLayout(() -> {});
                    PulseWatch.whenPainted(() -> painted.complete(System.currentTimeMillis()));
                }
            });
        });
        System.out.printf(
                "process start to the toolkit's: %d ms, to the page read: %d ms%n",
                toolkit - processStart, read.get(PATIENCE_S, TimeUnit.SECONDS) - processStart);
        System.out.printf(
                "process start to first sharp picture: %d ms, %.0f ms of processor time%n",
                painted.get(PATIENCE_S, TimeUnit.SECONDS) - processStart, processCpuMs());
        until(() -> state.figures.get() != null);
    }

    private static double processCpuMs() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                        .getProcessCpuTime()
                / 1e6;
    }

    /** Closer, so that the page fills the surface, and some steps that warm up the compiler. */
    private void prepare() throws Exception {
        onFx(() -> state.zoom(3));
        for (int i = 0; i < 15; i++) {
            step(i);
        }
    }

    private void steps(long pauseMs) throws Exception {
        prepare();
        List<Double> laidOut = new ArrayList<>();
        List<Double> painted = new ArrayList<>();
        double cpu = processCpuMs();
        Map<String, Double> before = threadCpuMs();
        watch.restart();
        for (int i = 0; i < STEPS; i++) {
            Thread.sleep(pauseMs);
            double[] ms = step(i);
            laidOut.add(ms[0]);
            painted.add(ms[1]);
        }
        String what = pauseMs == 0 ? "substrate step without a pause" : "substrate step from rest";
        print(what + ", key to new picture handed to the painter", laidOut);
        print(what + ", key to new picture painted", painted);
        print("  processor time of the window's thread in a pulse", watch.cpuMs());
        System.out.printf("  processor time of the whole program: %.1f ms a step%n", (processCpuMs() - cpu) / STEPS);
        threadCpuMs().entrySet().stream()
                .map(e -> Map.entry(e.getKey(), (e.getValue() - before.getOrDefault(e.getKey(), 0.0)) / STEPS))
                .filter(e -> e.getValue() >= 0.1)
                .sorted(Map.Entry.<String, Double>comparingByValue().reversed())
                .forEach(e -> System.out.printf("    %.1f ms %s%n", e.getValue(), e.getKey()));
    }

    /** @return processor time by name of thread; compiling and collecting are in none */
    private static Map<String, Double> threadCpuMs() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        Map<String, Double> ms = new HashMap<>();
        for (ThreadInfo thread : threads.getThreadInfo(threads.getAllThreadIds())) {
            if (thread != null) {
                ms.merge(
                        thread.getThreadName(),
                        Math.max(0, threads.getThreadCpuTime(thread.getThreadId())) / 1e6,
                        Double::sum);
            }
        }
        return ms;
    }

    /** @return milliseconds until the new picture is laid out, and until it is painted */
    private double[] step(int i) throws Exception {
        CompletableFuture<Long> laidOut = new CompletableFuture<>();
        CompletableFuture<Long> painted = new CompletableFuture<>();
        int by = i % 20 < 10 ? 1 : -1;
        long[] from = new long[1];
        onFx(() -> {
            from[0] = System.nanoTime();
            state.stepSubstrate(by);
            watch.afterLayout(() -> {
                if (window.surface().complete()) {
                    watch.afterLayout(() -> {});
                    laidOut.complete(System.nanoTime());
                    PulseWatch.whenPainted(() -> painted.complete(System.nanoTime()));
                }
            });
        });
        return new double[] {
            (laidOut.get(PATIENCE_S, TimeUnit.SECONDS) - from[0]) / 1e6,
            (painted.get(PATIENCE_S, TimeUnit.SECONDS) - from[0]) / 1e6
        };
    }

    private void moves() throws Exception {
        prepare();
        until(() -> window.surface().complete());
        onFx(watch::restart);
        double cpu = processCpuMs();
        List<Double> events = new ArrayList<>();
        for (int i = 0; i < MOVES; i++) {
            int move = i;
            onFx(() -> {
                long from = System.nanoTime();
                if (move % 3 == 0) {
                    state.zoom(move % 60 < 30 ? 1.04 : 1 / 1.04);
                } else {
                    state.pan(move % 90 < 45 ? 7 : -7, move % 90 < 45 ? -3 : 3);
                }
                events.add((System.nanoTime() - from) / 1e6);
            });
            Thread.sleep(16);
        }
        print("zooming and panning, an event on the window's thread", events);
        print("zooming and panning, a pulse on the window's thread, waiting for the painter included", watch.wallMs());
        List<Double> own = watch.cpuMs();
        print("zooming and panning, a pulse on the window's thread, processor time", own);
        System.out.printf(
                "  over 16 ms of processor time: %d of %d pulses%n",
                own.stream().filter(ms -> ms > 16).count(), own.size());
        System.out.printf("  processor time of the whole program: %.1f ms a move%n", (processCpuMs() - cpu) / MOVES);
    }

    private void memory() throws Exception {
        for (double factor : new double[] {3, 4, 1 / 12.0}) {
            onFx(() -> state.zoom(factor));
            until(() -> window.surface().complete());
            for (int i = 0; i < 12; i++) {
                onFx(() -> state.pan(-700, -400));
                until(() -> window.surface().complete());
                step(i);
            }
        }
        System.out.printf("heap in use after collecting: %d MiB%n", heapMiB());
        System.out.printf(
                "memory of the process: %d MiB now, %d MiB at most%n", statusMiB("VmRSS:"), statusMiB("VmHWM:"));
    }

    private void leak() throws Exception {
        long early = 0;
        for (int i = 1; i <= 10_000; i++) {
            step(i);
            if (i == 1_000) {
                early = heapMiB();
                System.out.printf("heap in use after collecting, 1,000 steps: %d MiB%n", early);
            }
        }
        System.out.printf("heap in use after collecting, 10,000 steps: %d MiB%n", heapMiB());
    }

    private void rounds() throws Exception {
        for (int i = 1; i <= 100; i++) {
            for (MapKind map : MapKind.values()) {
                onFx(() -> state.overlays.toggle(map));
                Thread.sleep(100); // the play of the register never comes to rest
            }
            onFx(() -> state.overlays.map.set(null));
            for (BenchView view : BenchView.values()) {
                onFx(() -> state.view.set(view));
                Thread.sleep(100);
            }
            onFx(() -> state.view.set(BenchView.FLAT));
            Object read = state.page.get();
            onFx(desk.files()::reload);
            until(() -> state.page.get() != read && window.surface().complete());
            if (i == 20 || i == 100) {
                System.out.printf("heap in use after collecting, %d rounds: %d MiB%n", i, heapMiB());
            }
        }
    }

    private static long heapMiB() throws InterruptedException {
        for (int i = 0; i < 3; i++) {
            System.gc();
            Thread.sleep(200);
        }
        return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() >> 20;
    }

    private static long statusMiB(String field) throws IOException {
        Path status = Path.of("/proc/self/status");
        if (!Files.exists(status)) {
            return -1;
        }
        return Files.readAllLines(status).stream()
                .filter(line -> line.startsWith(field))
                .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) >> 10)
                .findFirst()
                .orElse(-1);
    }

    private static void print(String what, List<Double> ms) {
        Collections.sort(ms);
        System.out.printf(
                "%s: median %.1f ms, 95th percentile %.1f ms, longest %.1f ms (%d times)%n",
                what, ms.get(ms.size() / 2), ms.get(ms.size() * 95 / 100), ms.get(ms.size() - 1), ms.size());
    }

    private void until(BooleanSupplier met) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
        FutureTask<Boolean> asked = new FutureTask<>(met::getAsBoolean);
        Platform.runLater(asked);
        while (!asked.get()) {
            if (System.nanoTime() > end) {
                throw new IllegalStateException("the window did not come to rest");
            }
            Thread.sleep(5);
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
