package inkground.viewer;

import inkground.app.OwnSubstrates;
import inkground.garment.Placement;
import inkground.substrate.Cut;
import inkground.viewer.desk.JobEngine;
import inkground.viewer.desk.ProofDesk;
import inkground.viewer.desk.Recents;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.Comparison;
import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.Rack;
import inkground.viewer.state.Theme;
import inkground.viewer.state.ViewerState;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Predicate;
import javafx.application.Platform;
import javafx.scene.SnapshotParameters;
import javafx.scene.control.Button;
import javafx.scene.control.TextField;
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
            desk.files().open(pdf);
        });
        until(s -> s.figures.get() != null);
        shoot("paper-light");
        onFx(() -> state.layersOn.clear());
        onFx(() -> state.substrate.set(state.substrates.stream()
                .filter(s -> s.garment() && s.lab().L() < 30)
                .findFirst()
                .orElseThrow()));
        shoot("garment-light");
        onFx(() -> state.printing.toggleUnderbase());
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
            if (kind == MapKind.CHANGES || kind == MapKind.REGISTER) {
                continue; // the one needs another revision, the other never comes to rest
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
        pins();
        onFx(() -> state.zoom(6, 500, 300));
        shoot("closer-light");
        onFx(() -> {
            state.overlays.cloth.set(true);
            state.worn.area.set(true);
        });
        shoot("grain-closer-light");
        onFx(() -> {
            state.overlays.cloth.set(false);
            state.worn.area.set(false);
        });
        onFx(() -> state.fitPage());
        onGarment();
        rackAndLineUp();
        stack();
        colours();
        compare();
        sheets();
    }

    private void onGarment() throws Exception {
        onFx(() -> state.view.set(BenchView.GARMENT));
        shoot("worn-light");
        onFx(() -> {
            state.worn.area.set(true);
            state.theme.set(Theme.DARK);
            state.worn.place("", "a", state.worn.placement().at(95, 40).on(Cut.Side.BACK));
            state.worn.moving.set(true);
        });
        shoot("worn-moving-dark");
        onFx(() -> {
            state.worn.moving.set(false);
            state.worn.area.set(false);
            state.worn.place(
                    "", "a", Placement.USUAL.wearing("hooded-sweatshirt").measuredTo(Placement.Measured.INK));
        });
        choose("hoodie-ash");
        shoot("worn-trouble-dark");
        onFx(() -> {
            state.theme.set(Theme.LIGHT);
            state.worn.place(
                    "", "a", Placement.USUAL.measuredTo(Placement.Measured.INK).wide(Optional.of(220.0)));
        });
        choose("tote-natural");
        shoot("worn-tote-light");
        choose("tee-white");
        onFx(() -> state.zoom(3.5, 450, 250));
        shoot("worn-closer-light");
        onFx(() -> state.fitPage());
        choose("coated-white");
        shoot("worn-paper-light");
        onFx(() -> {
            state.worn.place("", "a", Placement.USUAL.measuredTo(Placement.Measured.INK));
            stage.setWidth(1060);
            stage.setHeight(640);
        });
        choose("tee-black");
        shoot("worn-small-light");
        onFx(() -> state.exportSheet.set(true));
        shoot("worn-export-light");
        onFx(() -> {
            state.exportSheet.set(false);
            stage.setWidth(1280);
            stage.setHeight(800);
            state.view.set(BenchView.FLAT);
        });
    }

    private void choose(String substrate) throws Exception {
        onFx(() -> state.substrate.set(state.substrates.stream()
                .filter(s -> s.id().equals(substrate))
                .findFirst()
                .orElseThrow()));
    }

    private boolean settled() {
        return state.view.get() == BenchView.GARMENT
                ? !state.substrate.get().garment() || window.garment().surface().complete()
                : window.surface().complete() || window.lineUp().complete();
    }

    /** Pins, the view turned, and the measuring of the screen. */
    private void pins() throws Exception {
        for (double[] place : new double[][] {{0.5, 0.45}, {0.42, 0.28}, {0.47, 0.62}, {0.35, 0.8}}) {
            hover(place[0], place[1]);
            onFx(() -> state.pinProbe());
        }
        shoot("pins-light");
        onFx(() -> {
            state.turn(1);
            state.unit.set(LengthUnit.INCH);
            state.theme.set(Theme.DARK);
        });
        shoot("turned-inch-dark");
        onFx(() -> {
            state.turn(-1);
            state.unit.set(LengthUnit.MM);
            state.trueSize.sheet.set(true);
        });
        shoot("true-size-dark");
        onFx(() -> state.theme.set(Theme.LIGHT));
        shoot("true-size-light");
        onFx(() -> {
            state.trueSize.sheet.set(false);
            state.trueSize.measuredPxPerMm.set(4.1);
            state.showTrueSize();
        });
        shoot("true-size-page-light");
        onFx(() -> {
            state.trueSize.measuredPxPerMm.set(0);
            state.pins.clear();
            state.fitPage();
        });
    }

    private void rackAndLineUp() throws Exception {
        until(s -> s.rack.scores.get().size() == s.substrates.size());
        onFx(() -> {
            state.rack.toggleFavourite(state.substrates.get(9));
            state.rack.toggleFavourite(state.substrate.get());
            state.substrates.stream().filter(c -> c.garment()).limit(7).forEach(state.rack::toggleMark);
            state.rack.order.set(Rack.Order.VANISH);
        });
        bothThemes("rack");
        onFx(() -> state.rack.query.set("blue"));
        shoot("rack-search-light");
        onFx(() -> state.rack.query.set("re"));
        shoot("rack-search-inks-light");
        onFx(() -> {
            state.rack.query.set("");
            state.view.set(BenchView.LINE_UP);
        });
        bothThemes("line-up-marked");
        onFx(() -> state.rack.marked.clear());
        bothThemes("line-up-all");
        onFx(() -> state.lineUp.sheet.set(true));
        bothThemes("contact-sheet");
        onFx(() -> state.lineUp.sheet.set(false));
        onFx(() -> state.zoom(5, 70, 60));
        shoot("line-up-closer-light");
        onFx(() -> {
            state.fitPage();
            state.view.set(BenchView.FLAT);
            state.own.open(null);
            ((TextField) window.scene().lookup("#own-name")).setText("Forest green tee");
        });
        shoot("own-lab-light");
        onFx(() -> ((TextField) window.scene().lookup("#own-css")).setText("teal"));
        onFx(() -> ((javafx.scene.control.ToggleButton) window.scene().lookup("#own-by-css")).fire());
        bothThemes("own-css");
        Path picture = folder.resolve("cloth.png");
        cloth(picture);
        onFx(() -> desk.rack().readPhotograph(picture));
        until(s -> s.own.photograph.get() != null);
        bothThemes("own-photo");
        onFx(() -> ((javafx.scene.control.Button) window.scene().lookup("#own-keep")).fire());
        until(s -> !s.own.sheet.get());
        shoot("own-kept-light");
        onFx(() -> {
            state.own.open(state.substrate.get());
            ((javafx.scene.control.Button) window.scene().lookup("#own-remove")).fire();
        });
        bothThemes("own-remove");
        onFx(() -> ((javafx.scene.control.Button) window.scene().lookup("#own-remove-sure")).fire());
        until(s -> !s.own.sheet.get());
        onFx(() -> state.rack.order.set(Rack.Order.RACK));
    }

    private void bothThemes(String name) throws Exception {
        shoot(name + "-light");
        onFx(() -> {
            state.theme.set(Theme.DARK);
            stage.setWidth(1060);
            stage.setHeight(640);
        });
        shoot(name + "-small-dark");
        onFx(() -> {
            state.theme.set(Theme.LIGHT);
            stage.setWidth(1280);
            stage.setHeight(800);
        });
    }

    /** A stand-in for a photograph: cloth with a fold, in uneven light. */
    private static void cloth(Path target) throws IOException {
        BufferedImage image = new BufferedImage(900, 600, BufferedImage.TYPE_INT_RGB);
        java.util.Random random = new java.util.Random(7);
        for (int y = 0; y < 600; y++) {
            for (int x = 0; x < 900; x++) {
                double light =
                        1.1 - x / 2200.0 + 0.12 * Math.sin((x + y / 2.0) / 70) + (random.nextDouble() - 0.5) / 12;
                image.setRGB(x, y, (int) (38 * light) << 16 | (int) (92 * light) << 8 | (int) (64 * light));
            }
        }
        ImageIO.write(image, "png", target.toFile());
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
        choose("tee-burgundy");
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
            desk.comparison().open(pdf.resolveSibling("regatta-poster.pdf"));
        });
        until(s -> s.comparison.report.get() != null);
        for (Comparison.Way way : Comparison.Way.values()) {
            onFx(() -> state.comparison.way.set(way));
            Thread.sleep(3000);
            shoot("compare-" + way.name().toLowerCase(java.util.Locale.ROOT) + "-light");
        }
        approved();
        onFx(() -> state.view.set(BenchView.FLAT));
    }

    private void approved() throws Exception {
        onFx(() -> state.comparison.approveSheet.set(true));
        shoot("approve-light");
        onFx(() -> state.theme.set(Theme.DARK));
        shoot("approve-dark");
        Path record = Files.createTempDirectory("pictures").resolve("shirt.approved.zip");
        onFx(() -> {
            ((TextField) window.scene().lookup("#approve-by")).setText("Ada Reach");
            ((TextField) window.scene().lookup("#approve-target")).setText(record.toString());
            ((Button) window.scene().lookup("#approve-write")).fire();
        });
        until(s -> !s.comparison.approveSheet.get());
        onFx(() -> desk.comparison().open(record));
        until(s -> s.comparison.approved.get() != null && s.comparison.report.get() != null);
        onFx(() -> state.comparison.way.set(Comparison.Way.BESIDE));
        Thread.sleep(3000);
        shoot("compare-approved-dark");
        onFx(() -> state.theme.set(Theme.LIGHT));
        shoot("compare-approved-light");
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
            ((TextField) window.scene().lookup("#export-dpi")).setText("600");
            ((TextField) window.scene().lookup("#export-target"))
                    .setText(folder.resolve("stopped.png").toString());
            ((javafx.scene.control.Button) window.scene().lookup("#export-write")).fire();
        });
        until(s ->
                s.activities.stream().anyMatch(a -> a.isExport() && a.fraction().get() > 0.1));
        shoot("export-progress-dark");
        onFx(() -> desk.work().cancelAll());
        until(s -> s.activities.isEmpty());
        onFx(() -> {
            state.exportSheet.set(false);
            state.keySheet.set(true);
        });
        shoot("keys-dark");
        onFx(() -> {
            state.keySheet.set(false);
            state.theme.set(Theme.LIGHT);
            desk.files().open(folder.resolve("letter.txt"));
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
        desk = new ProofDesk(
                state,
                new JobEngine(java.util.Optional.of(pdf), new OwnSubstrates(folder.resolve("own"))),
                recents,
                ViewerRig.real());
        window = new ViewerWindow(state, desk);
        stage = new Stage();
        window.show(stage);
        desk.stockRack();
    }

    private void hover(double shareX, double shareY) throws Exception {
        onFx(() -> {
            var surface = window.surface();
            // An event without a source is told where it is in the window.
            var at = surface.localToScene(surface.getWidth() * shareX, surface.getHeight() * shareY);
            surface.fireEvent(new javafx.scene.input.MouseEvent(
                    javafx.scene.input.MouseEvent.MOUSE_MOVED,
                    at.getX(),
                    at.getY(),
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
        until(s -> s.page.get() == null || settled());
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
