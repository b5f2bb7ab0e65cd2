package inkground.viewer;

import inkground.viewer.desk.ProofDesk;
import inkground.viewer.desk.Recents;
import inkground.viewer.state.Camera;
import inkground.viewer.state.ViewerState;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.prefs.Preferences;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.scene.image.WritableImage;
import javafx.stage.Stage;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationTest;
import org.testfx.util.WaitForAsyncUtils;

/** A window over an engine whose colours are known by construction, and what a test does with it again and again. */
abstract class FakeWindow extends ApplicationTest {
    private static final long PATIENCE_S = 30;

    @TempDir
    Path folder;

    /** What the user answers when asked for a file; null for none. */
    Path answered;

    final Preferences preferences = ViewerRig.preferences();
    FakeEngine engine;
    ViewerState state;
    ProofDesk desk;
    ViewerWindow window;
    Stage stage;

    @Override
    public void start(Stage onStage) {
        stage = onStage;
        engine = makeEngine();
        state = new ViewerState();
        desk = new ProofDesk(state, engine, new Recents(preferences), ViewerRig.real());
        window = new ViewerWindow(state, desk, (title, over, near) -> Optional.ofNullable(answered));
        // The stage is shared by all tests, and keeps the size that the last one gave it.
        stage.setWidth(1280);
        stage.setHeight(800);
        window.show(stage);
        desk.stockRack();
    }

    /** @return what the window works on; called once, when the folder is there */
    FakeEngine makeEngine() {
        return new FakeEngine();
    }

    @Override
    public void stop() {
        window.close();
    }

    void until(Callable<Boolean> met) throws Exception {
        WaitForAsyncUtils.waitFor(PATIENCE_S, TimeUnit.SECONDS, () -> WaitForAsyncUtils.asyncFx(met)
                .get());
        WaitForAsyncUtils.waitForFxEvents();
    }

    void openArtwork() throws Exception {
        Path file = Files.writeString(folder.resolve("regatta.pdf"), "%PDF-fake");
        until(() -> !state.substrates.isEmpty());
        interact(() -> desk.files().open(file));
        until(() -> window.surface().complete());
        // Rulers and bars that come with the page take their room in a pulse, and the picture is another then.
        afterPulse();
        until(() -> window.surface().complete());
    }

    /** Waits until all that is to be laid out has been. */
    void afterPulse() throws Exception {
        AtomicBoolean laidOut = new AtomicBoolean();
        Runnable done = () -> laidOut.set(true);
        interact(() -> {
            window.scene().addPostLayoutPulseListener(done);
            Platform.requestNextPulse();
        });
        until(laidOut::get);
        interact(() -> window.scene().removePostLayoutPulseListener(done));
    }

    /** @return colour on the surface where a point of the page lies */
    int rgbAt(double pageX, double pageY) throws Exception {
        until(() -> window.surface().complete());
        WritableImage[] image = new WritableImage[1];
        interact(() -> image[0] = window.surface().snapshot(null, null));
        Camera camera = state.camera.get();
        return image[0].getPixelReader().getArgb((int) camera.toViewX(pageX, pageY), (int) camera.toViewY(pageX, pageY))
                & 0xffffff;
    }

    boolean shows(String query) {
        return lookup(query)
                .tryQuery()
                .filter(node -> node.isVisible() && node.getParent().isVisible())
                .isPresent();
    }

    void pointAt(double pageX, double pageY) {
        Camera camera = state.camera.get();
        Point2D at = window.surface().localToScreen(camera.toViewX(pageX, pageY), camera.toViewY(pageX, pageY));
        moveTo(at);
        WaitForAsyncUtils.waitForFxEvents();
    }
}
