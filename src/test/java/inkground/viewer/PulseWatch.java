package inkground.viewer;

import com.sun.javafx.tk.RenderJob;
import com.sun.javafx.tk.TKPulseListener;
import com.sun.javafx.tk.Toolkit;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import javafx.application.Platform;
import javafx.scene.Scene;

/**
 * Watches the pulses of the toolkit, for benchmarks alone: how long each keeps the window's thread, by the clock and in
 * processor time, and when what a pulse shows has been painted. The toolkit's own classes are used, since nothing public tells.
 */
final class PulseWatch {
    private final List<Double> wallMs = new ArrayList<>();
    private final List<Double> cpuMs = new ArrayList<>();
    // Held here, since the toolkit holds its listeners weakly.
    private final TKPulseListener begins = this::begins;
    private final TKPulseListener ends = this::ends;
    private Runnable afterLayout = () -> {};
    private long wallFrom;
    private long cpuFrom;

    /** Called on the window's thread. */
    PulseWatch(Scene scene) {
        Toolkit.getToolkit().addStageTkPulseListener(begins);
        Toolkit.getToolkit().addPostSceneTkPulseListener(ends);
        scene.addPostLayoutPulseListener(() -> afterLayout.run());
    }

    private void begins() {
        wallFrom = System.nanoTime();
        cpuFrom = cpu();
    }

    private void ends() {
        wallMs.add((System.nanoTime() - wallFrom) / 1e6);
        cpuMs.add((cpu() - cpuFrom) / 1e6);
    }

    private static long cpu() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    /** Runs something in every pulse, when all is laid out. */
    void afterLayout(Runnable action) {
        afterLayout = action;
    }

    /** Runs something once all that this pulse shows has been painted; asked for within a pulse. */
    static void whenPainted(Runnable action) {
        Platform.runLater(() -> Toolkit.getToolkit().addRenderJob(new RenderJob(action)));
    }

    /** Forgets what was measured. */
    void restart() {
        wallMs.clear();
        cpuMs.clear();
    }

    /** @return milliseconds of each pulse by the clock, waiting for the painter included */
    List<Double> wallMs() {
        return new ArrayList<>(wallMs);
    }

    /** @return processor milliseconds of each pulse on the window's thread */
    List<Double> cpuMs() {
        return new ArrayList<>(cpuMs);
    }
}
