package inkground.plate;

import inkground.base.Cancel;
import inkground.base.Progress;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/** Shares the bands of a region out among the processor's cores. */
final class Bands {
    private static final int THREADS = Math.max(1, Runtime.getRuntime().availableProcessors());

    // Daemon threads: an abandoned rendering never keeps the program alive.
    private static final ExecutorService WORKERS = Executors.newFixedThreadPool(THREADS, task -> {
        Thread thread = new Thread(task, "plate");
        thread.setDaemon(true);
        return thread;
    });

    private Bands() {}

    static InkPlanes.Cell[] paint(
            PreparedList list, int tintPlanes, PlateRequest region, Cancel cancel, Progress progress) {
        return paint(list, tintPlanes, region, WORKERS, THREADS, cancel, progress);
    }

    /**
     * @param workers lends the threads beside the caller's
     * @param threads how many share the bands, the caller's included; their number makes no difference to the planes
     */
    static InkPlanes.Cell[] paint(
            PreparedList list,
            int tintPlanes,
            PlateRequest region,
            ExecutorService workers,
            int threads,
            Cancel cancel,
            Progress progress) {
        int across = (region.width() + InkPlanes.CELL_W - 1) / InkPlanes.CELL_W;
        int down = (region.height() + InkPlanes.CELL_H - 1) / InkPlanes.CELL_H;
        InkPlanes.Cell[] cells = new InkPlanes.Cell[Math.multiplyExact(across, down)];
        AtomicInteger next = new AtomicInteger();
        AtomicInteger done = new AtomicInteger();
        Runnable worker = () -> {
            BandPainter painter = new BandPainter(cancel);
            for (int b = next.getAndIncrement(); b < down; b = next.getAndIncrement()) {
                cancel.check();
                painter.paint(
                        list,
                        tintPlanes,
                        region.x0(),
                        region.y0() + b * InkPlanes.CELL_H,
                        region.width(),
                        cells,
                        b * across);
                progress.report("painting", (double) done.incrementAndGet() / down);
            }
        };
        run(worker, workers, Math.min(threads, down), next, down);
        return cells;
    }

    /** Runs {@code worker} on several threads, this one included, and waits for all of them. */
    private static void run(Runnable worker, ExecutorService workers, int threads, AtomicInteger next, int stop) {
        List<Future<?>> others = new ArrayList<>();
        for (int i = 1; i < threads; i++) {
            others.add(workers.submit(worker));
        }
        Throwable failure = null;
        try {
            worker.run();
        } catch (RuntimeException | Error e) {
            failure = e;
            next.set(stop); // the others find nothing more to do
        }
        for (Future<?> other : others) {
            try {
                other.get();
            } catch (ExecutionException e) {
                next.set(stop);
                failure = failure == null ? e.getCause() : failure;
            } catch (InterruptedException e) {
                next.set(stop);
                Thread.currentThread().interrupt();
                failure = failure == null ? new CancellationException("interrupted") : failure;
            }
        }
        if (failure instanceof RuntimeException e) {
            throw e;
        } else if (failure instanceof Error e) {
            throw e;
        }
    }
}
