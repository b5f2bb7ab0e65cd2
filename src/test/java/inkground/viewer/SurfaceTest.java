package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.geometry.Box;
import inkground.viewer.desk.Recents;
import inkground.viewer.pages.PageStrip;
import inkground.viewer.state.Camera;
import inkground.viewer.state.Pins.Pin;
import inkground.viewer.state.TrueSize;
import java.util.concurrent.CountDownLatch;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.input.Clipboard;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.layout.Pane;
import javafx.scene.text.Text;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;

/** Acts on the surface and what stands around it as a user does: rulers, true size, pages, turns and pins. */
class SurfaceTest extends FakeWindow {
    /** A place where the red disc lies alone on white, and one in the teal bar, in points. */
    private static final double RED_X = 200;

    private static final double RED_Y = 130;

    private String text(String query) {
        return lookup(query).queryAs(Labeled.class).getText();
    }

    /** @return place on the screen of a number on a ruler */
    private double nameOnRuler(String ruler, String number) throws Exception {
        afterPulse();
        Node text = from(lookup(ruler).<Node>query())
                .lookup((Node node) -> node instanceof Text t && t.getText().equals(number) && t.isVisible())
                .query();
        Bounds bounds = text.localToScreen(text.getBoundsInLocal());
        return ruler.equals("#ruler-across") ? bounds.getMinX() : bounds.getMaxY();
    }

    @Test
    void theRulersMeasureFromTheCornerOfTheTrimInTheUnitChosen() throws Exception {
        openArtwork();
        Camera camera = state.camera.get();
        Bounds surface = interactBounds();
        double zero = surface.getMinX() + camera.toViewX(FakeEngine.TRIM.x0(), 0);
        // Numbers stand three pixels after their tick.
        assertThat(nameOnRuler("#ruler-across", "0")).isCloseTo(zero + 3, within(1.5));
        double forty = surface.getMinX() + camera.toViewX(FakeEngine.TRIM.x0() + 40 / Box.MM_PER_PT, 0);
        assertThat(nameOnRuler("#ruler-across", "40")).isCloseTo(forty + 3, within(1.5));
        push(KeyCode.I);
        WaitForAsyncUtils.waitForFxEvents();
        assertThat(text("#ruler-corner")).isEqualTo("in");
        double one = surface.getMinX() + camera.toViewX(FakeEngine.TRIM.x0() + 72, 0);
        assertThat(nameOnRuler("#ruler-across", "1")).isCloseTo(one + 3, within(1.5));
        push(KeyCode.R);
        assertThat(shows("#ruler-across")).isFalse();
        assertThat(shows("#ruler-down")).isFalse();
        clickOn("#rulers");
        assertThat(shows("#ruler-across")).isTrue();
    }

    private Bounds interactBounds() {
        WaitForAsyncUtils.waitForFxEvents();
        return window.surface().localToScreen(window.surface().getBoundsInLocal());
    }

    @Test
    void theRulersMarkThePointer() throws Exception {
        openArtwork();
        pointAt(100, 200);
        Bounds across = lookup("#pointer-across")
                .query()
                .localToScreen(lookup("#pointer-across").query().getBoundsInLocal());
        Bounds down = lookup("#pointer-down")
                .query()
                .localToScreen(lookup("#pointer-down").query().getBoundsInLocal());
        Bounds surface = interactBounds();
        Camera camera = state.camera.get();
        assertThat(across.getCenterX()).isCloseTo(surface.getMinX() + camera.toViewX(100, 200), within(1.5));
        assertThat(down.getCenterY()).isCloseTo(surface.getMinY() + camera.toViewY(100, 200), within(1.5));
    }

    @Test
    void theViewTurnsAndProbePanZoomRulersAndLinesTurnWithIt() throws Exception {
        openArtwork();
        push(KeyCode.PERIOD);
        assertThat(rgbAt(RED_X, RED_Y)).isEqualTo(FakeEngine.INK_RGB[0]);
        Camera turned = state.camera.get();
        assertThat(turned.quarters()).isEqualTo(1);
        // Fitted still, and the page's right end now lies at the bottom.
        assertThat(turned.toViewY(400, 0)).isGreaterThan(turned.toViewY(0, 0));
        assertThat(turned.toViewY(400, 0)).isLessThan(turned.heightPx() - 15);
        pointAt(100, 200);
        assertThat(state.probe.get().xPt()).isCloseTo(100, within(1.0));
        assertThat(state.probe.get().percent(1)).isEqualTo(50);
        // The ruler above now runs along the page's y, and its zero lies at the right.
        assertThat(nameOnRuler("#ruler-across", "40")).isLessThan(nameOnRuler("#ruler-across", "0"));
        double before = turned.toViewX(100, 200);
        push(KeyCode.SHIFT, KeyCode.RIGHT);
        assertThat(state.camera.get().toViewX(100, 200)).isCloseTo(before - 60, within(1.0));
        push(KeyCode.PLUS);
        assertThat(rgbAt(RED_X, RED_Y)).isEqualTo(FakeEngine.INK_RGB[0]);
        push(KeyCode.COMMA);
        push(KeyCode.COMMA);
        assertThat(state.camera.get().quarters()).isEqualTo(3);
        assertThat(rgbAt(RED_X, RED_Y)).isEqualTo(FakeEngine.INK_RGB[0]);
        push(KeyCode.DIGIT0);
        until(() -> window.surface().complete());
        Bounds trim = lookup(".line.trim").query().getBoundsInParent();
        assertThat(trim.getHeight()).isGreaterThan(trim.getWidth());
        openArtwork();
        assertThat(state.camera.get().quarters()).isZero();
    }

    @Test
    void turningTheViewRasterisesNothingThatIsThereAlready() throws Exception {
        openArtwork();
        interact(() -> state.showTrueSize());
        until(() -> window.surface().complete());
        int renders = engine.renders.get();
        push(KeyCode.PERIOD);
        push(KeyCode.PERIOD);
        until(() -> window.surface().complete());
        assertThat(engine.renders).hasValue(renders);
    }

    @Test
    void theSizeIsSaidHonestlyUntilACardWasLaidOnTheScreen() throws Exception {
        openArtwork();
        assertThat(text("#zoom")).endsWith("% at 96 px/in");
        push(KeyCode.DIGIT1);
        assertThat(text("#zoom")).isEqualTo("100 % at 96 px/in");
        assertThat(state.news.get()).contains("not measured");
        clickOn("#zoom");
        assertThat(shows("#card-sheet")).isTrue();
        Pane place = lookup("#card-place").query();
        double width = place.getWidth();
        assertThat(width / place.getHeight()).isCloseTo(85.60 / 53.98, within(0.02));
        for (int i = 0; i < 3; i++) {
            push(KeyCode.SHIFT, KeyCode.RIGHT);
        }
        push(KeyCode.LEFT);
        clickOn("#card-use");
        assertThat(shows("#card-sheet")).isFalse();
        double wanted = (96 / 25.4 * 85.60 + 30 - 0.5) / 85.60;
        assertThat(state.trueSize.pxPerMm()).isCloseTo(wanted, within(1e-9));
        assertThat(text("#zoom")).isEqualTo("true size");
        Camera camera = state.camera.get();
        double mm100 = camera.toViewX(100 / Box.MM_PER_PT, 0) - camera.toViewX(0, 0);
        assertThat(mm100).isCloseTo(100 * wanted, within(1e-6));
        push(KeyCode.PLUS);
        assertThat(text("#zoom")).isEqualTo("125 %");
        push(KeyCode.DIGIT1);
        assertThat(text("#zoom")).isEqualTo("true size");
        Recents kept = new Recents(preferences);
        assertThat(kept.pxPerMm(state.trueSize.screen.get())).isCloseTo(wanted, within(1e-9));
        assertThat(kept.pxPerMm("another screen")).isZero();
    }

    @Test
    void theCardIsDraggedToItsSizeAndTheMeasureCanBeForgotten() throws Exception {
        openArtwork();
        clickOn("#zoom");
        Pane place = lookup("#card-place").query();
        Bounds card = place.localToScreen(place.getLayoutBounds());
        drag(card.getMinX() + 100, card.getMinY() + 50, MouseButton.PRIMARY)
                .dropTo(card.getMinX() + 85.60 * 5, card.getMinY() + 60);
        clickOn("#card-use");
        assertThat(state.trueSize.pxPerMm()).isCloseTo(5, within(0.05));
        clickOn("#zoom");
        clickOn("#card-forget");
        assertThat(state.trueSize.measured()).isFalse();
        clickOn("#zoom");
        push(KeyCode.ESCAPE);
        assertThat(shows("#card-sheet")).isFalse();
    }

    @Test
    void aMeasureOutsideWhatScreensHaveIsHeldWithin() {
        assertThat(TrueSize.limited(0)).isEqualTo(TrueSize.LEAST_PX_PER_MM);
        assertThat(TrueSize.limited(1e9)).isEqualTo(TrueSize.MOST_PX_PER_MM);
    }

    @Test
    void thePagesStandInAStripAsSmallProofsOnTheSubstrateAndAClickTurnsToOne() throws Exception {
        engine.pageCount = 40;
        openArtwork();
        assertThat(shows("#pages")).isTrue();
        until(() -> thumbRgb(2) == FakeEngine.PAPER.argb());
        push(KeyCode.RIGHT);
        until(() -> thumbRgb(2) == FakeEngine.NAVY.argb());
        // Only the pages that are seen are made.
        assertThat(engine.thumbs.get()).isLessThan(12);
        clickOn("#page-2");
        until(() -> state.page.get().info().number() == 2);
        push(KeyCode.PAGE_DOWN);
        until(() -> state.page.get().info().number() == 3);
        push(KeyCode.PAGE_UP);
        until(() -> state.page.get().info().number() == 2);
        interact(() -> desk.files().turnTo(40));
        until(() -> lookup("#page-40").tryQuery().isPresent() && thumbRgb(40) == FakeEngine.NAVY.argb());
        assertThat(engine.thumbs.get()).isLessThan(24);
    }

    private int thumbRgb(int page) {
        return from(lookup("#page-" + page).<Node>query())
                .lookup((Node node) -> node instanceof javafx.scene.image.ImageView v && v.getImage() != null)
                .<javafx.scene.image.ImageView>tryQuery()
                .map(view -> view.getImage().getPixelReader().getArgb(2, 2))
                .orElse(0);
    }

    @Test
    void aFileOfOnePageHasNoStrip() throws Exception {
        engine.pageCount = 1;
        openArtwork();
        assertThat(shows("#pages")).isFalse();
    }

    @Test
    void ofManyPagesOnlyALimitedNumberOfSmallProofsIsKept() throws Exception {
        engine.pageCount = 400;
        openArtwork();
        PageStrip strip = lookup("#pages").query();
        for (int page = 1; page <= 400; page += 3) {
            int to = page;
            interact(() -> strip.scrollTo(to));
            WaitForAsyncUtils.waitForFxEvents();
        }
        until(() -> engine.thumbs.get() > 80);
        assertThat(strip.kept()).isLessThanOrEqualTo(64);
    }

    @Test
    void aPinStaysAtItsPlaceAndTellsWhatLiesThereOnEverySubstrate() throws Exception {
        openArtwork();
        pointAt(RED_X, RED_Y);
        push(KeyCode.P);
        pointAt(100, 200);
        push(KeyCode.P);
        assertThat(shows("#pin-1")).isTrue();
        assertThat(state.pins.all).hasSize(2);
        Pin second = state.pins.all.get(1);
        until(() -> state.pins.readings.get(second).asked() != null);
        assertThat(pinWords(2)).contains("River Teal 50", "total 50 %", "ΔE00").doesNotContain("Signal Red");
        assertThat(pinWords(1)).contains("Signal Red 100", "White 100", "total 200 %");
        push(KeyCode.RIGHT);
        push(KeyCode.PLUS);
        until(() -> window.surface().complete());
        Label mark = lookup("#pin-mark-2").query();
        Camera camera = state.camera.get();
        assertThat(mark.getBoundsInParent().getMinX())
                .isCloseTo(camera.toViewX(second.xPt(), second.yPt()) + 8, within(1.5));
        assertThat(mark.isVisible()).isTrue();
    }

    private String pinWords(int number) {
        StringBuilder words = new StringBuilder();
        from(lookup("#pin-" + number).<Node>query())
                .lookup((Node node) -> node instanceof Label)
                .queryAllAs(Label.class)
                .forEach(label -> words.append(label.getText()).append('\n'));
        return words.toString();
    }

    @Test
    void pinsAreCopiedAsTextAndTakenAwayOneOrAll() throws Exception {
        openArtwork();
        // Without a pointer the middle of the view is meant.
        push(KeyCode.P);
        Camera camera = state.camera.get();
        assertThat(state.pins.all).hasSize(1);
        assertThat(state.pins.all.get(0).xPt())
                .isCloseTo(camera.toPageX(camera.widthPx() / 2, camera.heightPx() / 2), within(1.0));
        push(KeyCode.SHIFT, KeyCode.P);
        for (double x = 150; x < 250; x += 30) {
            pointAt(x, 200);
            push(KeyCode.P);
        }
        clickOn("#pins-copy");
        String[] copied = new String[1];
        interact(() -> copied[0] = Clipboard.getSystemClipboard().getString());
        assertThat(copied[0].lines()).hasSize(5);
        assertThat(copied[0]).startsWith("regatta.pdf on Plain paper").contains("2: x ", "River Teal 50");
        clickOn("#pin-remove-2");
        assertThat(state.pins.all).extracting(Pin::number).containsExactly(1, 3, 4);
        pointAt(100, 200);
        push(KeyCode.P);
        assertThat(state.pins.all).extracting(Pin::number).containsExactly(1, 2, 3, 4);
        push(KeyCode.PAGE_DOWN);
        until(() -> state.page.get().info().number() == 2);
        assertThat(lookup("#pin-mark-1").query().isVisible()).isFalse();
        assertThat(pinWords(1)).contains("on page 1");
        push(KeyCode.SHIFT, KeyCode.P);
        assertThat(state.pins.all).isEmpty();
    }

    @Test
    void thePointerTellsHowFarTheColourIsFromWhatTheArtworkAsksFor() throws Exception {
        openArtwork();
        pointAt(100, 200);
        // The fake engine prints Lab 50 and asks for Lab 60, both grey: ΔE00 of lightness alone.
        double expected = inkground.colour.Cie.deltaE00(60, 0, 0, 50, 0, 0);
        assertThat(text("#inks-here")).contains(String.format(java.util.Locale.ROOT, "ΔE00 %.1f from asked", expected));
    }

    @Test
    void theCoarsePictureStandsUntilTheFineOneComes() throws Exception {
        openArtwork();
        engine.gate = new CountDownLatch(1);
        for (int i = 0; i < 6; i++) {
            push(KeyCode.PLUS);
        }
        assertThat(window.surface().complete()).isFalse();
        int[] rgb = new int[1];
        interact(() -> {
            Camera camera = state.camera.get();
            rgb[0] = window.surface()
                            .snapshot(null, null)
                            .getPixelReader()
                            .getArgb((int) camera.toViewX(RED_X, RED_Y), (int) camera.toViewY(RED_X, RED_Y))
                    & 0xffffff;
        });
        assertThat(rgb[0]).isEqualTo(FakeEngine.INK_RGB[0]);
        engine.gate.countDown();
        until(() -> window.surface().complete());
    }

    @Test
    void aMovedPageShowsTheTilesThatAreThereWhileTheOthersAreMade() throws Exception {
        openArtwork();
        for (int i = 0; i < 6; i++) {
            push(KeyCode.PLUS);
        }
        until(() -> window.surface().complete());
        engine.gate = new CountDownLatch(1);
        for (int i = 0; i < 8; i++) {
            push(KeyCode.SHIFT, KeyCode.RIGHT);
        }
        assertThat(window.surface().complete()).isFalse();
        engine.gate.countDown();
        assertThat(rgbAt(RED_X + 80, RED_Y)).isEqualTo(FakeEngine.INK_RGB[2]);
    }
}
