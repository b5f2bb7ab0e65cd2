package inkground.viewer;

import inkground.viewer.desk.JobEngine;
import inkground.viewer.desk.ProofDesk;
import inkground.viewer.desk.Recents;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.Comparison;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.Theme;
import inkground.viewer.state.ViewerState;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Predicate;
import javafx.application.Platform;
import javafx.scene.SnapshotParameters;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Color;
import javafx.scene.transform.Transform;
import javafx.stage.Stage;
import javax.imageio.ImageIO;

/**
 * Writes pictures of every screen of the window, for looking at and for the README. Arguments: the folder to write to, then
 * the PDF to show. The pictures have the pixels of the screen: run it on a screen of scale 2 for those.
 */
public final class ViewerPictures {
    private static final long PATIENCE_S = 60;

    private final Path folder;
    private final Path pdf;
    private ViewerState state;
    private ViewerWindow window;
    private ProofDesk desk;
    private Stage stage;

    private ViewerPictures(Path folder, Path pdf) {
        this.folder = folder;
        this.pdf = pdf;
    }

    /** Writes all pictures. */
    public static void main(String[] args) throws Exception {
        Path folder = Files.createDirectories(Path.of(args[0]));
        new ViewerPictures(folder, Path.of(args[1])).all();
        Platform.exit();
    }

    private void all() throws Exception {
        CountDownLatch started = new CountDownLatch(1);
        Platform.startup(started::countDown);
        started.await();
        Platform.setImplicitExit(false);
        onFx(this::open);
        until(s -> !s.substrates.isEmpty());
        shoot("start-light");
        onFx(() -> state.theme.set(Theme.DARK));
        shoot("start-dark");
        onFx(() -> {
            state.theme.set(Theme.LIGHT);
            desk.open(pdf);
        });
        until(s -> s.figures.get() != null);
        shoot("paper-light");
        onFx(() -> state.layersOn.clear());
        onFx(() -> state.substrate.set(state.substrates.stream()
                .filter(s -> s.garment() && s.lab().L() < 30)
                .findFirst()
                .orElseThrow()));
        shoot("garment-light");
        onFx(() -> state.toggleUnderbase());
        shoot("garment-underbase-light");
        onFx(() -> {
            state.overlays.bleed.set(true);
            state.overlays.safe.set(true);
            state.theme.set(Theme.DARK);
        });
        shoot("lines-dark");
        onFx(() -> state.overlays.map.set(MapKind.BARE));
        shoot("bare-map-dark");
        onFx(() -> state.theme.set(Theme.LIGHT));
        shoot("bare-map-light");
        for (MapKind kind : MapKind.values()) {
            if (kind == MapKind.CHANGES) {
                continue;
            }
            onFx(() -> state.overlays.map.set(kind));
            until(s -> s.overlays.report.get() != null);
            shoot("map-" + kind.name().toLowerCase(java.util.Locale.ROOT) + "-light");
        }
        onFx(() -> {
            state.overlays.map.set(null);
            state.toggleSolo(state.page.get().printOrder().get(0));
            state.stepInk(1);
        });
        shoot("solo-light");
        onFx(() -> state.solo.set(-1));
        hover(0.5, 0.45);
        shoot("probe-light");
        onFx(() -> state.zoom(6, 500, 300));
        shoot("closer-light");
        onFx(() -> state.fitPage());
        stack();
        colours();
        compare();
        sheets();
    }

    private void stack() throws Exception {
        onFx(() -> {
            state.stack.inkDrawer.set(true);
            state.stack.underbaseDrawer.set(true);
        });
        shoot("stack-drawers-light");
        onFx(() -> state.theme.set(Theme.DARK));
        shoot("stack-drawers-dark");
        onFx(() -> {
            state.stack.underbaseDrawer.set(false);
            state.togglePlate();
        });
        shoot("stack-plate-dark");
        onFx(() -> {
            state.togglePlate();
            state.stack.inkDrawer.set(false);
            state.stack.unusedShown.set(true);
            state.theme.set(Theme.LIGHT);
        });
        shoot("stack-unused-light");
        onFx(() -> state.stack.unusedShown.set(false));
    }

    private void colours() throws Exception {
        onFx(() -> state.layersOn.addAll(
                state.page.get().layers().stream().map(l -> l.id()).toList()));
        until(s -> s.colours.inventory.get() != null && s.colours.ground.get() != null);
        until(s -> !s.colours.deletion.get().isEmpty());
        shoot("ground-asked-light");
        onFx(() -> ((javafx.scene.control.ToggleButton) window.scene().lookup("#panel-colours")).fire());
        onFx(() -> ((javafx.scene.control.ListView<?>) window.scene().lookup("#colour-list"))
                .getSelectionModel()
                .select(1));
        shoot("colours-light");
        onFx(() -> ((javafx.scene.control.Button) window.scene().lookup("#ground-bare")).fire());
        until(s -> s.activities.isEmpty() && s.figures.get() != null);
        onFx(() -> ((javafx.scene.control.ToggleButton) window.scene().lookup("#assign-ink")).fire());
        until(s -> s.activities.isEmpty() && s.figures.get() != null);
        shoot("colours-assigned-light");
        onFx(() -> state.theme.set(Theme.DARK));
        shoot("colours-assigned-dark");
        onFx(() -> state.colours.cleanSheet.set(true));
        shoot("clean-dark");
        onFx(() -> {
            state.colours.cleanSheet.set(false);
            state.theme.set(Theme.LIGHT);
            ((javafx.scene.control.ToggleButton) window.scene().lookup("#panel-notes")).fire();
        });
    }

    private void compare() throws Exception {
        onFx(() -> state.view.set(BenchView.COMPARE));
        shoot("compare-none-light");
        onFx(() -> {
            state.layersOn.clear();
            desk.openEarlier(pdf.resolveSibling("regatta-poster.pdf"));
        });
        until(s -> s.comparison.report.get() != null);
        for (Comparison.Way way : Comparison.Way.values()) {
            onFx(() -> state.comparison.way.set(way));
            Thread.sleep(3000);
            shoot("compare-" + way.name().toLowerCase(java.util.Locale.ROOT) + "-light");
        }
        onFx(() -> state.view.set(BenchView.FLAT));
    }

    private void sheets() throws Exception {
        onFx(() -> state.exportSheet.set(true));
        shoot("export-light");
        onFx(() -> state.theme.set(Theme.DARK));
        shoot("export-dark");
        onFx(() -> state.trouble.set("There is a file of this name. Tick the box, or give another name."));
        shoot("export-trouble-dark");
        onFx(() -> {
            state.trouble.set(null);
            ((javafx.scene.control.TextField) window.scene().lookup("#export-dpi")).setText("600");
            ((javafx.scene.control.TextField) window.scene().lookup("#export-target"))
                    .setText(folder.resolve("stopped.png").toString());
            ((javafx.scene.control.Button) window.scene().lookup("#export-write")).fire();
        });
        until(s ->
                s.activities.stream().anyMatch(a -> a.isExport() && a.fraction().get() > 0.1));
        shoot("export-progress-dark");
        onFx(() -> desk.cancelAll());
        until(s -> s.activities.isEmpty());
        onFx(() -> {
            state.exportSheet.set(false);
            state.keySheet.set(true);
        });
        shoot("keys-dark");
        onFx(() -> {
            state.keySheet.set(false);
            state.theme.set(Theme.LIGHT);
            desk.open(folder.resolve("letter.txt"));
        });
        Files.writeString(folder.resolve("letter.txt"), "Dear printer");
        until(s -> s.trouble.get() != null);
        shoot("trouble-light");
        onFx(() -> {
            state.trouble.set(null);
            stage.setWidth(1060);
            stage.setHeight(640);
        });
        shoot("small-light");
        onFx(() -> ((javafx.scene.control.ToggleButton) window.scene().lookup("#panel-colours")).fire());
        shoot("colours-small-light");
        onFx(() -> state.theme.set(Theme.DARK));
        shoot("colours-small-dark");
        onFx(() -> window.close());
    }

    private void open() {
        state = new ViewerState();
        Recents recents = new Recents(ViewerRig.preferences());
        recents.add(pdf);
        desk = new ProofDesk(state, new JobEngine(java.util.Optional.of(pdf)), recents, ViewerRig.real());
        window = new ViewerWindow(state, desk);
        stage = new Stage();
        window.show(stage);
        desk.stockRack();
    }

    private void hover(double shareX, double shareY) throws Exception {
        onFx(() -> {
            var surface = window.surface();
            surface.fireEvent(new javafx.scene.input.MouseEvent(
                    javafx.scene.input.MouseEvent.MOUSE_MOVED,
                    surface.getWidth() * shareX,
                    surface.getHeight() * shareY,
                    0,
                    0,
                    javafx.scene.input.MouseButton.NONE,
                    0,
                    false,
                    false,
                    false,
                    false,
                    false,
                    false,
                    false,
                    false,
                    false,
                    false,
                    null));
        });
    }

    private void shoot(String name) throws Exception {
        Thread.sleep(250);
        until(s -> s.page.get() == null || window.surface().complete());
        Thread.sleep(150);
        onFx(() -> {
            double scale = stage.getOutputScaleX();
            SnapshotParameters parameters = new SnapshotParameters();
            parameters.setTransform(Transform.scale(scale, scale));
            parameters.setFill(Color.TRANSPARENT);
            WritableImage image = window.scene().getRoot().snapshot(parameters, null);
            write(image, folder.resolve(name + (scale == 1 ? "" : "@" + (int) scale + "x") + ".png"));
        });
    }

    private static void write(WritableImage image, Path target) {
        int width = (int) image.getWidth();
        int height = (int) image.getHeight();
        int[] argb = new int[width * height];
        image.getPixelReader().getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), argb, 0, width);
        BufferedImage out = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        out.setRGB(0, 0, width, height, argb, 0, width);
        try {
            ImageIO.write(out, "png", target.toFile());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private void until(Predicate<ViewerState> wanted) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
        AtomicReference<Boolean> met = new AtomicReference<>(false);
        while (!met.get()) {
            if (System.nanoTime() > end) {
                throw new IllegalStateException("the window did not come to rest");
            }
            onFx(() -> met.set(wanted.test(state)));
            Thread.sleep(20);
        }
    }

    private static void onFx(Runnable action) throws Exception {
        CountDownLatch done = new CountDownLatch(1);
        AtomicReference<RuntimeException> thrown = new AtomicReference<>();
        Platform.runLater(() -> {
            try {
                action.run();
            } catch (RuntimeException e) {
                thrown.set(e);
            } finally {
                done.countDown();
            }
        });
        done.await();
        if (thrown.get() != null) {
            throw thrown.get();
        }
    }
}
