package inkground.viewer;

import inkground.app.OwnSubstrates;
import inkground.viewer.desk.JobEngine;
import inkground.viewer.desk.ProofDesk;
import inkground.viewer.desk.Recents;
import inkground.viewer.state.ViewerState;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import javafx.stage.Stage;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationTest;
import org.testfx.util.WaitForAsyncUtils;

/** The window over the real engine, with a rack but no file. */
abstract class RealWindow extends ApplicationTest {
    static final Path SHIRT = Path.of("demo", "regatta-shirt.pdf");

    private static final long PATIENCE_S = 60;

    @TempDir
    Path folder;

    ViewerState state;
    ProofDesk desk;
    ViewerWindow window;

    @Override
    public void start(Stage stage) {
        state = new ViewerState();
        JobEngine engine = new JobEngine(Optional.of(SHIRT), new OwnSubstrates(folder.resolve("own")));
        desk = new ProofDesk(state, engine, new Recents(ViewerRig.preferences()), ViewerRig.real());
        window = new ViewerWindow(state, desk, (title, over, near) -> Optional.empty());
        window.show(stage);
        desk.stockRack();
    }

    @Override
    public void stop() {
        window.close();
    }

    /** Waits for something to be so on the window's thread, and for what that brings about. */
    void until(Callable<Boolean> met) throws Exception {
        WaitForAsyncUtils.waitFor(PATIENCE_S, TimeUnit.SECONDS, () -> WaitForAsyncUtils.asyncFx(met)
                .get());
        WaitForAsyncUtils.waitForFxEvents();
    }
}
