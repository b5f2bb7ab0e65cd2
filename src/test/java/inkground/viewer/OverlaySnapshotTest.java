package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.app.Arrangement.WhiteBase;
import inkground.app.OwnSubstrates;
import inkground.artwork.ColourAssignment;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.colour.Lab;
import inkground.substrate.Substrate;
import inkground.substrate.Texture;
import inkground.viewer.desk.JobEngine;
import inkground.viewer.desk.ProofDesk;
import inkground.viewer.desk.Recents;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.ProofEngine;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.Theme;
import inkground.viewer.state.ViewerState;
import inkground.viewer.surface.ProofSurface;
import inkground.viewer.worn.ClothOverlay;
import inkground.viewer.worn.GarmentSurface;
import java.awt.image.BufferedImage;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import javafx.scene.Group;
import javafx.scene.Scene;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationTest;

/**
 * Every overlay and map on artwork that holds something for each, beside a reference that was looked at. Words are left out,
 * since fonts differ between machines.
 */
class OverlaySnapshotTest extends ApplicationTest {
    private static final int WIDTH = 320;
    private static final int HEIGHT = 240;
    private static final int MOST_PULSES = 50;
    private static final String WITHOUT_WORDS = ".label { -fx-opacity: 0; }";

    @TempDir
    static Path folder;

    private final JobEngine engine = new JobEngine(Optional.empty(), new OwnSubstrates(folder.resolve("own")));
    private final Snapshots snapshots = Snapshots.usual();
    private ViewerState state;
    private ProofDesk desk;
    private ProofSurface surface;
    private GarmentSurface garment;
    private ClothOverlay grain;
    private StackPane pane;

    @Override
    public void start(Stage stage) throws Exception {
        state = new ViewerState();
        desk = new ProofDesk(state, engine, new Recents(ViewerRig.preferences()), ViewerRig.sameThread());
        surface = new ProofSurface(
                state, desk.work().scheduler("page"), desk.work().ui());
        garment = new GarmentSurface(
                state, desk.work().scheduler("garment"), desk.work().ui());
        grain = new ClothOverlay(state, desk.work().scheduler("grain"));
        surface.visibleProperty().bind(state.view.isEqualTo(BenchView.FLAT));
        garment.visibleProperty().bind(state.view.isEqualTo(BenchView.GARMENT));
        pane = new StackPane(surface, grain, garment);
        pane.getStyleClass().add("bench");
        pane.setMinSize(WIDTH, HEIGHT);
        pane.setMaxSize(WIDTH, HEIGHT);
        Scene scene = new Scene(new Group(pane), 640, 480);
        scene.getStylesheets()
                .setAll(
                        Theme.LIGHT.tokens(),
                        Theme.rules(),
                        "data:text/css,"
                                + URLEncoder.encode(WITHOUT_WORDS, StandardCharsets.UTF_8)
                                        .replace("+", "%20"));
        stage.setScene(scene);
        stage.show();
        desk.stockRack();
        state.overlays.trim.set(false);
        state.overlays.places.set(false);
        on("coated-white");
        desk.files().open(OverlayArt.write(folder.resolve("overlays.pdf")));
    }

    @Override
    public void stop() {
        desk.close();
    }

    private void on(String substrate) {
        state.substrate.set(state.substrates.stream()
                .filter(card -> card.id().equals(substrate))
                .findFirst()
                .orElseThrow());
    }

    private int ink(String name) {
        for (int plane = 0; plane < state.page.get().inks().size(); plane++) {
            if (state.inkName(plane).equals(name)) {
                return plane;
            }
        }
        throw new AssertionError("no ink " + name);
    }

    /** Shows something and compares the surface with its reference. */
    private void check(String name, Runnable show) throws Exception {
        check(name, () -> surface.complete(), show);
    }

    private void check(String name, BooleanSupplier complete, Runnable show) throws Exception {
        BufferedImage picture = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        interact(show);
        boolean[] done = new boolean[1];
        for (int pulse = 0; pulse < MOST_PULSES && !done[0]; pulse++) {
            interact(() -> {
                pane.getChildren().forEach(node -> ((Region) node).requestLayout());
                pane.layout();
                done[0] = complete.getAsBoolean();
            });
        }
        assertThat(done[0]).as("%s is all there; %s", name, state.trouble.get()).isTrue();
        interact(() -> {
            WritableImage image = pane.snapshot(null, null);
            for (int i = 0; i < WIDTH * HEIGHT; i++) {
                picture.setRGB(i % WIDTH, i / WIDTH, image.getPixelReader().getArgb(i % WIDTH, i / WIDTH));
            }
        });
        snapshots.check(name, picture);
    }

    private void checkMap(MapKind kind, String substrate) throws Exception {
        check(kind.name().toLowerCase(Locale.ROOT).replace('_', '-'), () -> {
            on(substrate);
            state.overlays.map.set(kind);
        });
        assertThat(state.overlays.report.get()).isNotNull();
    }

    @Test
    void theArtworkItself() throws Exception {
        check("plain-paper", () -> {});
        check("plain-garment", () -> on("tee-navy"));
    }

    @Test
    void trim() throws Exception {
        check("trim", () -> state.overlays.trim.set(true));
    }

    @Test
    void bleed() throws Exception {
        check("bleed", () -> state.overlays.bleed.set(true));
    }

    @Test
    void safeArea() throws Exception {
        check("safe-area", () -> state.overlays.safe.set(true));
    }

    @Test
    void printAreaOnTheFlatPage() throws Exception {
        check("print-area", () -> {
            on("tee-navy");
            // a small area on the page: the artwork is printed wider than the area that it is judged by
            state.worn.place("enlarge", "enlarge", state.worn.placement().wide(Optional.of(480.0)));
            state.worn.area.set(true);
        });
    }

    @Test
    void bareMap() throws Exception {
        checkMap(MapKind.BARE, "tee-navy");
    }

    @Test
    void theAreasOfTheBareMapAreThoseThatTheArtworkWasDrawnWith() throws Exception {
        interact(() -> state.overlays.map.set(MapKind.BARE));
        double field = 26 * 22;
        double hole = 14 * 12;
        double inked = 9 * field - hole + 22 * (0.2 + 0.4 + 3 + 5 + 5.6);
        double trim = 132 * 92;
        for (ProofEngine.MapEntry entry : state.overlays.report.get().entries()) {
            double pt2 =
                    switch (entry.word()) {
                        case "inked" -> inked;
                        case "white ink", "white paint" -> field;
                        case "knocked out" -> hole;
                        case "unpainted" -> trim - inked - 2 * field - hole;
                        default -> throw new AssertionError(entry.word());
                    };
            double cm2 = pt2 * 2.54 * 2.54 / 72 / 72;
            assertThat(entry.cm2()).as(entry.word()).isCloseTo(cm2, within(0.005 * cm2));
        }
    }

    @Test
    void vanishMap() throws Exception {
        // cloth in the colour that the red ink has on white, so that red's edges vanish
        SubstrateCard red = engine.own()
                .add(new OwnSubstrates.Draft(
                        "Red cloth", Substrate.Kind.GARMENT, new Lab(51, 64, 42), "test", Texture.Kind.JERSEY));
        check("vanish", () -> {
            state.substrate.set(red);
            state.overlays.map.set(MapKind.VANISH);
        });
    }

    @Test
    void whatTheInksCannotReach() throws Exception {
        checkMap(MapKind.REACH, "tee-navy");
    }

    @Test
    void whatTheSubstrateShifts() throws Exception {
        checkMap(MapKind.SHIFT, "tee-navy");
    }

    @Test
    void whatTheScreenCannotShow() throws Exception {
        checkMap(MapKind.SCREEN, "coated-white");
    }

    @Test
    void totalInk() throws Exception {
        checkMap(MapKind.TOTAL_INK, "coated-white");
    }

    @Test
    void thinFeaturesAndTheirPlaces() throws Exception {
        check("thin-places", () -> {
            state.overlays.places.set(true);
            state.overlays.minLineMm.set(0.25);
            state.overlays.minGapMm.set(0.25);
            state.overlays.map.set(MapKind.THIN);
        });
        assertThat(state.overlays.report.get().places()).isNotEmpty();
        check("thin", () -> state.overlays.places.set(false));
    }

    @Test
    void overprintDifferenceAndThePageWithoutOverprint() throws Exception {
        checkMap(MapKind.OVERPRINT, "coated-white");
        check("without-overprint", () -> {
            state.overlays.map.set(null);
            state.overprint.set(false);
        });
    }

    @Test
    void registerPlayInItsThirdPhase() throws Exception {
        check("register-phase-3", () -> {
            state.overlays.registerMm.set(0.8);
            state.overlays.map.set(MapKind.REGISTER);
            state.overlays.phase.set(3);
        });
    }

    @Test
    void changesFromAnEarlierRevision() throws Exception {
        Path earlier = OverlayArt.writeEarlier(folder.resolve("earlier.pdf"));
        try (ProofEngine.OpenFile file = engine.open(earlier, new Cancel(), Progress.NONE)) {
            ProofEngine.OpenPage page = file.page(1, ColourAssignment.NONE, new Cancel(), Progress.NONE);
            check("changes", () -> {
                state.overlays.before.set(page);
                state.overlays.map.set(MapKind.CHANGES);
            });
        }
    }

    @Test
    void plateAndOneInkAlone() throws Exception {
        check("plate", () -> {
            state.chosenInk.set(ink("Signal Red"));
            state.togglePlate();
        });
        check("solo", () -> {
            state.togglePlate();
            state.toggleSolo(ink("Signal Red"));
        });
    }

    @Test
    void grainOfTheClothOnTheFlatPage() throws Exception {
        check("flat-grain", () -> surface.complete() && grain.complete(), () -> {
            on("tee-charcoal-heather");
            state.overlays.cloth.set(true);
        });
    }

    /** White of an underbase stays or reaches so many millimetres on the cloth, whatever the print is enlarged by. */
    @Test
    void aChokeIsMillimetresOfThePrint() throws Exception {
        for (int i = 0; i < 2; i++) {
            double wide = i == 0 ? 46.567 : 2 * 46.567; // as the page has it, and twice as large
            interact(() -> {
                on("tee-black");
                state.view.set(BenchView.GARMENT);
                state.worn.cloth.set(false);
                state.history.change("base", a -> a.over(Optional.of(WhiteBase.FULL.choked(0.8))));
                state.worn.place("size", "size", state.worn.placement().wide(Optional.of(wide)));
            });
            assertThat(state.look()
                            .printedAt(state.worn.placed().orElseThrow().scale())
                            .underbase()
                            .orElseThrow()
                            .chokeMm())
                    .isCloseTo(0.8 * 46.567 / wide, within(0.001));
        }
        check("worn-choke", () -> garment.complete(), () -> {
            state.history.change("base", a -> a.over(Optional.of(WhiteBase.FULL.choked(-5))));
            state.worn.place("size", "size", state.worn.placement().wide(Optional.of(300.0)));
        });
    }

    @Test
    void theGarmentWithoutAndWithItsCloth() throws Exception {
        check("worn-bare-cloth", () -> garment.complete(), () -> {
            on("tee-charcoal-heather");
            state.worn.cloth.set(false);
            state.view.set(BenchView.GARMENT);
            state.worn.place("enlarge", "enlarge", state.worn.placement().wide(Optional.of(300.0)));
        });
        check("worn-plate", () -> garment.complete(), () -> {
            state.chosenInk.set(ink("Signal Red"));
            state.togglePlate();
        });
        interact(state::togglePlate);
        check("worn-cloth", () -> garment.complete(), () -> state.worn.cloth.set(true));
        check("worn-print-area", () -> garment.complete(), () -> state.worn.area.set(true));
    }
}
