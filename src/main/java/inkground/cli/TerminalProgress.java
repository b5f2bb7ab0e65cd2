package inkground.cli;

import inkground.base.Progress;
import java.io.PrintWriter;

/** One line on the terminal that says what is going on and how far it has come. Quick work never shows it. Thread-safe. */
final class TerminalProgress implements Progress {
    private static final long PATIENCE_NANOS = 500_000_000;
    private static final long REDRAW_NANOS = 100_000_000;

    private final PrintWriter err;
    private long firstNanos;
    private long drawnNanos;
    private boolean shown;

    TerminalProgress(PrintWriter err) {
        this.err = err;
    }

    @Override
    public synchronized void report(String what, double fraction) {
        long now = System.nanoTime();
        if (firstNanos == 0) {
            firstNanos = now;
        }
        if (now - firstNanos < PATIENCE_NANOS || now - drawnNanos < REDRAW_NANOS) {
            return;
        }
        drawnNanos = now;
        shown = true;
        String far = fraction < 0 ? "" : " " + Math.round(100 * Math.min(1, fraction)) + " %";
        // Back to the start of the line, and clear what a longer text left there (ECMA-48 EL).
        err.print("\r" + Console.printable(what) + far + "\u001b[K");
        err.flush();
    }

    /** Takes the line away, for something else to be written. */
    synchronized void clear() {
        if (shown) {
            err.print("\r\u001b[K");
            err.flush();
            shown = false;
        }
        firstNanos = 0;
    }
}
