package inkground.viewer.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Tells when one file was changed by another program. It looks at the file's size and time every now and then, which works on
 * every file system, and waits until two looks agree: drawing programs write in pieces, and many write another file and rename
 * it, so that for a moment there is none.
 */
final class FileWatch implements AutoCloseable {
    private static final Logger LOG = Logger.getLogger(FileWatch.class.getName());

    /** What tells two states of a file apart. */
    private record Stamp(long bytes, long modifiedMs, Object key) {}

    private final Executor ui;
    private final Runnable changed;
    private final ScheduledExecutorService clock;
    // Of the clock's thread alone, once it runs.
    private Path file;
    private Stamp known;
    private Stamp last;

    /**
     * @param periodMs time between two looks
     * @param ui where changes are told
     * @param changed told after each change
     */
    FileWatch(long periodMs, Executor ui, Runnable changed) {
        this.ui = ui;
        this.changed = changed;
        clock = Executors.newSingleThreadScheduledExecutor(work -> {
            Thread thread = new Thread(work, "watching the file");
            thread.setDaemon(true);
            return thread;
        });
        clock.scheduleWithFixedDelay(this::look, periodMs, periodMs, TimeUnit.MILLISECONDS);
    }

    /** Watches another file, from how it is now. */
    void watch(Path other) {
        Optional<Stamp> now = stamp(other);
        clock.execute(() -> {
            file = other;
            known = now.orElse(null);
            last = known;
        });
    }

    private void look() {
        if (file == null) {
            return;
        }
        Optional<Stamp> now = stamp(file);
        if (now.isPresent() && !now.get().equals(known) && now.get().equals(last)) {
            known = now.get();
            Path seen = file;
            ui.execute(() -> {
                LOG.log(Level.FINE, "changed: {0}", seen);
                changed.run();
            });
        }
        last = now.orElse(null);
    }

    /** @return empty while there is no such file */
    private static Optional<Stamp> stamp(Path file) {
        try {
            BasicFileAttributes is = Files.readAttributes(file, BasicFileAttributes.class);
            return Optional.of(new Stamp(is.size(), is.lastModifiedTime().toMillis(), is.fileKey()));
        } catch (IOException e) {
            LOG.log(Level.FINE, "not there now", e);
            return Optional.empty();
        }
    }

    @Override
    public void close() {
        clock.shutdownNow();
    }
}
