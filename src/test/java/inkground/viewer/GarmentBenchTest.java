package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.garment.Placed;
import inkground.garment.Placement;
import inkground.geometry.Box;
import inkground.substrate.Cut;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.Camera;
import inkground.viewer.state.Worn;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javafx.geometry.Point2D;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;

/** Lays artwork on garments as a user does. The artwork's trim is 360 × 260 points: 127.0 × 91.7 mm. */
class GarmentBenchTest extends FakeWindow {
    /** Opens the artwork on the navy garment, without folds so that colours are known. */
    private void wear() throws Exception {
        Path file = Files.writeString(folder.resolve("regatta.pdf"), "%PDF-fake");
        until(() -> !state.substrates.isEmpty());
        interact(() -> desk.files().open(file));
        until(() -> state.page.get() != null);
        push(KeyCode.RIGHT);
        push(KeyCode.CONTROL, KeyCode.DIGIT2);
        push(KeyCode.G);
        until(() -> window.garment().surface().complete());
    }

    private Placed placed() {
        return state.worn.placed().orElseThrow();
    }

    /** @return where a place of the garment is seen */
    private Point2D view(double xMm, double yMm) {
        Box pt = Worn.toPt(new Box(xMm, yMm, xMm, yMm));
        Camera camera = state.camera.get();
        return new Point2D(camera.toViewX(pt.x0(), pt.y0()), camera.toViewY(pt.x0(), pt.y0()));
    }

    private int clothRgbAt(double xMm, double yMm) throws Exception {
        until(() -> window.garment().surface().complete());
        moveTo("#theme"); // away from the artwork, so that no marks stand on it
        WaitForAsyncUtils.waitForFxEvents();
        WritableImage[] image = new WritableImage[1];
        interact(() -> image[0] = window.garment().surface().snapshot(null, null));
        Point2D at = view(xMm, yMm);
        return image[0].getPixelReader().getArgb((int) at.getX(), (int) at.getY()) & 0xffffff;
    }

    private Point2D onScreen(double xMm, double yMm) {
        return window.garment().surface().localToScreen(view(xMm, yMm));
    }

    private String verdict() {
        return ((Label) lookup("#verdict").query()).getText();
    }

    @Test
    void theArtworkLiesWhereAPrinterWouldMeasureItAndTheClothIsTheGarments() throws Exception {
        wear();
        assertThat(state.view.get()).isEqualTo(BenchView.GARMENT);
        assertThat(shows("#surface")).isFalse();
        assertThat(placed().form().words()).isEqualTo("T-shirt M, front");
        assertThat(placed().artworkMm().y0()).isEqualTo(80);
        assertThat(clothRgbAt(0, 40)).isEqualTo(FakeEngine.NAVY.argb() & 0xffffff);
        // The red disc has its middle at 200, 130 pt of the page, whose trim begins at 20, 20.
        double discY = 80 + (130 - 20) * Box.MM_PER_PT;
        assertThat(clothRgbAt(0, discY)).isEqualTo(FakeEngine.INK_RGB[0]);
        assertThat(verdict()).startsWith("Inside the print area 'chest'");
    }

    @Test
    void anotherGarmentIsOnlyColouredAnew() throws Exception {
        wear();
        interact(() -> state.worn.place("wear", this, Placement.USUAL.wearing("t-shirt")));
        until(() -> window.garment().surface().complete());
        int renders = engine.renders.get();
        push(KeyCode.RIGHT);
        assertThat(clothRgbAt(0, 40)).isEqualTo(FakeEngine.SAND.argb() & 0xffffff);
        assertThat(engine.renders).hasValue(renders);
    }

    @Test
    void theClothSuggestsTheCutUntilTheUserChoosesOne() throws Exception {
        wear();
        push(KeyCode.RIGHT);
        assertThat(placed().form().cut().id()).isEqualTo("tote-bag");
        push(KeyCode.LEFT);
        assertThat(placed().form().cut().id()).isEqualTo("t-shirt");
        clickOn("#cut");
        clickOn("Hooded sweatshirt");
        push(KeyCode.RIGHT);
        assertThat(placed().form().words()).isEqualTo("Hooded sweatshirt M, front");
        clickOn("#size");
        clickOn("XL");
        assertThat(placed().form().words()).isEqualTo("Hooded sweatshirt XL, front");
    }

    @Test
    void theArtworkIsMovedByTheMouseSnapsToTheCentreLineAndOneUndoTakesItBack() throws Exception {
        wear();
        double mmPerPx = Box.MM_PER_PT / state.camera.get().zoom();
        Placed before = placed();
        drag(onScreen(0, 120), MouseButton.PRIMARY);
        moveBy(20, 30);
        moveBy(20, 10);
        assertThat(state.worn.moving.get()).isTrue();
        assertThat(lookup("#below-collar-here").queryLabeled().getText()).endsWith("mm");
        assertThat(lookup("#off-centre-here").queryLabeled().getText()).endsWith("right");
        drop();
        assertThat(placed().offCentreMm()).isCloseTo(40 * mmPerPx, within(0.51));
        assertThat(placed().artworkMm().y0()).isCloseTo(80 + 40 * mmPerPx, within(0.51));
        assertThat(placed().offCentreMm()).isEqualTo(Math.rint(placed().offCentreMm()));
        drag(onScreen(placed().offCentreMm(), placed().artworkMm().y0() + 40), MouseButton.PRIMARY);
        moveBy(-20, 0);
        moveBy(-17, 0);
        drop();
        assertThat(placed().offCentreMm()).isZero();
        push(KeyCode.CONTROL, KeyCode.Z);
        push(KeyCode.CONTROL, KeyCode.Z);
        assertThat(placed()).isEqualTo(before);
        assertThat(state.history.undoable().get()).isEmpty();
    }

    @Test
    void besideTheArtworkTheMouseMovesTheGarment() throws Exception {
        wear();
        Camera before = state.camera.get();
        drag(onScreen(0, 400), MouseButton.PRIMARY);
        moveBy(0, -30);
        drop();
        assertThat(state.camera.get().centreY()).isGreaterThan(before.centreY());
        assertThat(state.worn.placement()).isEqualTo(Placement.USUAL);
        push(KeyCode.DIGIT0);
        assertThat(state.camera.get().centreY()).isCloseTo(before.centreY(), within(1e-9));
    }

    @Test
    void arrowKeysWithControlMoveByMillimetres() throws Exception {
        wear();
        push(KeyCode.CONTROL, KeyCode.RIGHT);
        push(KeyCode.CONTROL, KeyCode.RIGHT);
        push(KeyCode.CONTROL, KeyCode.SHIFT, KeyCode.DOWN);
        assertThat(placed().offCentreMm()).isEqualTo(2);
        assertThat(placed().artworkMm().y0()).isEqualTo(90);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.NAVY);
        push(KeyCode.CONTROL, KeyCode.Z);
        assertThat(placed().offCentreMm()).isZero();
        assertThat(placed().artworkMm().y0()).isEqualTo(80);
    }

    @Test
    void figuresAreTypedInMillimetresOrInches() throws Exception {
        wear();
        type("#below-collar", "95,5");
        assertThat(placed().artworkMm().y0()).isEqualTo(95.5);
        type("#print-width", "4 in");
        assertThat(placed().artworkMm().width()).isCloseTo(101.6, within(1e-9));
        assertThat(field("#print-width").getText()).isEqualTo("101.6");
        type("#off-centre", "far");
        assertThat(placed().offCentreMm()).isZero();
        assertThat(field("#off-centre").getText()).isEqualTo("0.0");
        interact(() -> window.garment().surface().requestFocus());
        push(KeyCode.I);
        assertThat(field("#print-width").getText()).isEqualTo("4.00");
        clickOn("#own-size");
        assertThat(placed().scale()).isCloseTo(1, within(1e-9));
    }

    private TextField field(String query) {
        return lookup(query).query();
    }

    private void type(String query, String text) {
        clickOn(query);
        interact(() -> field(query).setText(text));
        push(KeyCode.ENTER);
        WaitForAsyncUtils.waitForFxEvents();
    }

    @Test
    void theBackIsMeasuredFromItsOwnSeam() throws Exception {
        wear();
        clickOn("#side-back");
        assertThat(state.worn.placement().side()).isEqualTo(Cut.Side.BACK);
        assertThat(placed().artworkMm().y0()).isEqualTo(100);
        assertThat(placed().form().words()).isEqualTo("T-shirt M, back");
        push(KeyCode.CONTROL, KeyCode.Z);
        assertThat(placed().form().face().side()).isEqualTo(Cut.Side.FRONT);
    }

    @Test
    void leavingThePrintAreaIsSaidPlainlyAndShown() throws Exception {
        wear();
        until(() -> state.worn.inkedPt.get() != null);
        assertThat(lookup("#print-area-chest").tryQuery()).isEmpty();
        push(KeyCode.K);
        assertThat(lookup("#print-area-chest").queryLabeled().getText()).isEqualTo("chest 320.0 × 420.0 mm");
        push(KeyCode.K);
        // The ink reaches 49.4 mm to either side of the middle of the trim; the area 160 mm.
        type("#off-centre", "120");
        assertThat(verdict()).isEqualTo("The artwork leaves the print area 'chest' by 9.4 mm on the right.");
        assertThat(lookup("#print-area-chest").tryQuery()).isPresent();
        type("#off-centre", "300");
        assertThat(verdict()).contains("beyond the cloth").contains("cm² will not print");
    }

    @Test
    void onTheFlatPageThePrintAreaAndTheGrainAreShownByTheSameKeys() throws Exception {
        wear();
        push(KeyCode.CONTROL, KeyCode.DIGIT1);
        until(() -> window.surface().complete());
        assertThat(shows("#line-print-area")).isFalse();
        push(KeyCode.K);
        assertThat(lookup("#line-print-area").queryLabeled().getText()).isEqualTo("print area, chest 320.0 × 420.0 mm");
        // The area's middle is the trim's; at the own size it begins 20 mm above the trim.
        Box area = state.worn.areaOnPage().orElseThrow();
        assertThat((area.x0() + area.x1()) / 2).isCloseTo((20 + 380) / 2.0, within(1e-9));
        assertThat((FakeEngine.TRIM.y0() - area.y0()) * Box.MM_PER_PT).isCloseTo(20, within(1e-9));
        push(KeyCode.G);
        assertThat(state.overlays.cloth.get()).isTrue();
        interact(() -> state.substrate.set(FakeEngine.PAPER));
        assertThat(shows("#line-print-area")).isFalse();
    }

    @Test
    void theTrimOrTheInkIsMeasured() throws Exception {
        wear();
        until(() -> state.worn.inkedPt.get() != null);
        clickOn("#measure-ink");
        assertThat(placed().artworkPt()).isEqualTo(FakeEngine.INKED);
        assertThat(placed().artworkMm().width()).isCloseTo(280 * Box.MM_PER_PT, within(1e-9));
        assertThat(placed().artworkMm().y0()).isEqualTo(80);
        double discY = 80 + (130 - 40) * Box.MM_PER_PT;
        assertThat(clothRgbAt(0, discY)).isEqualTo(FakeEngine.INK_RGB[0]);
    }

    @Test
    void paperIsNotWornAndTheLastGarmentIsOffered() throws Exception {
        wear();
        push(KeyCode.RIGHT);
        interact(() -> state.substrate.set(FakeEngine.PAPER));
        assertThat(shows("#paper-not-worn")).isTrue();
        assertThat(shows("#placement-bar")).isFalse();
        clickOn("#offer-garment");
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.SAND);
        assertThat(shows("#paper-not-worn")).isFalse();
    }

    @Test
    void pageAndGarmentKeepTheirOwnLook() throws Exception {
        wear();
        push(KeyCode.PLUS);
        Camera garment = state.camera.get();
        push(KeyCode.CONTROL, KeyCode.DIGIT1);
        until(() -> window.surface().complete());
        assertThat(state.fit.get()).isTrue();
        assertThat(state.camera.get()).isNotEqualTo(garment);
        push(KeyCode.CONTROL, KeyCode.DIGIT2);
        assertThat(state.camera.get().zoom()).isEqualTo(garment.zoom());
        assertThat(state.camera.get().centreX()).isEqualTo(garment.centreX());
    }

    @Test
    void aProofOfTheGarmentIsAskedForWithItsPlacement() throws Exception {
        wear();
        type("#below-collar", "110");
        push(KeyCode.CONTROL, KeyCode.E);
        interact(
                () -> field("#export-target").setText(folder.resolve("worn.png").toString()));
        clickOn("#export-write");
        until(() -> !state.exportSheet.get());
        assertThat(engine.exported.worn().map(w -> w.placement().belowMm())).contains(Optional.of(110.0));
        assertThat(engine.exported.worn().orElseThrow().cloth()).isFalse();
        assertThat(engine.exported.dpi()).isEqualTo(75);
    }

    @Test
    void thePointerTellsTheInksOnTheGarment() throws Exception {
        wear();
        moveTo(onScreen(0, 80 + (130 - 20) * Box.MM_PER_PT));
        WaitForAsyncUtils.waitForFxEvents();
        assertThat(((Label) lookup("#inks-here").query()).getText()).contains("Signal Red 100");
    }
}
