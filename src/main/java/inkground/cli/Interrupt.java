package inkground.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Turns Ctrl-C into a request to stop. The process is kept alive until the work has seen it and has taken its temporary
 * files away, but not longer than {@value #PATIENCE_SECONDS} seconds.
 */
final class Interrupt {
    private static final int PATIENCE_SECONDS = 10;

    private final CountDownLatch finished = new CountDownLatch(1);

    private Interrupt() {}

    static Interrupt watch(Console console) {
        Interrupt interrupt = new Interrupt();
        Runtime.getRuntime().addShutdownHook(new Thread(() -> interrupt.stop(console), "interrupt"));
        return interrupt;
    }

    /** To be called when the command has ended, before the process is ended. */
    void finished() {
        finished.countDown();
    }

    private void stop(Console console) {
        if (finished.getCount() == 0 || !console.clearsUp()) {
            return;
        }
        console.cancel().request();
        try {
            finished.await(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
