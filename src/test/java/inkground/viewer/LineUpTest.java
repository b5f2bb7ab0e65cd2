package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.artwork.PageBox;
import inkground.colour.Srgb;
import inkground.geometry.Box;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.Camera;
import inkground.viewer.state.LineUp;
import inkground.viewer.state.Probe;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.stream.IntStream;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.TextField;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.shape.Rectangle;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;

/** Acts on the line-up as a user does. */
class LineUpTest extends FakeWindow {
    private static final KeyCode LINE_UP = KeyCode.valueOf("DIGIT" + (BenchView.LINE_UP.ordinal() + 1));

    private void openWith(int more) throws Exception {
        engine.more = IntStream.range(0, more)
                .mapToObj(i -> FakeEngine.card(
                        "cloth-" + i, "Cloth " + i, true, 25 + i, 0xff300000 | i * 5 << 8 | 255 - i * 5, "jersey"))
                .toList();
        Path file = Files.writeString(folder.resolve("regatta.pdf"), "%PDF-fake");
        interact(() -> {
            desk.stockRack();
            desk.files().open(file);
        });
        until(() -> window.surface().complete() && state.rack.scores.get().size() == more + 3);
    }

    private List<String> lined() {
        return state.lineUp.cards().stream().map(SubstrateCard::id).toList();
    }

    /** @return colour in the cell of a substrate where a point of the page lies */
    private int rgbAt(String id, double pageX, double pageY) throws Exception {
        until(() -> window.lineUp().complete());
        int[] argb = new int[1];
        interact(() -> {
            WritableImage image = window.lineUp().snapshot(null, null);
            Node cell = lookup("#line-up-" + id).query();
            Bounds at = cell.getBoundsInParent();
            Camera camera = state.camera.get();
            argb[0] = image.getPixelReader().getArgb((int) (cell.getLayoutX() + camera.toViewX(pageX, pageY)), (int)
                    (cell.getLayoutY() + camera.toViewY(pageX, pageY)));
            assertThat(at.getWidth()).isPositive();
        });
        return argb[0] & 0xffffff;
    }

    private static int rgb(SubstrateCard card) {
        return card.argb() & 0xffffff;
    }

    @Test
    void theSameArtworkLiesOnEveryGarmentTheBestKeptFirst() throws Exception {
        openWith(0);
        push(KeyCode.CONTROL, LINE_UP);
        assertThat(lined()).containsExactly("sand-canvas", "navy-jersey");
        assertThat(rgbAt("sand-canvas", 200, 130)).isEqualTo(FakeEngine.INK_RGB[0]);
        assertThat(rgbAt("navy-jersey", 200, 130)).isEqualTo(FakeEngine.INK_RGB[0]);
        assertThat(rgbAt("sand-canvas", 10, 10)).isEqualTo(rgb(FakeEngine.SAND));
        assertThat(rgbAt("navy-jersey", 10, 10)).isEqualTo(rgb(FakeEngine.NAVY));
        clickOn("#line-up-by-rack");
        assertThat(lined()).containsExactly("navy-jersey", "sand-canvas");
    }

    @Test
    void whatAllCellsSeeIsRasterisedOnce() throws Exception {
        openWith(21);
        int before = engine.renders.get();
        push(KeyCode.CONTROL, LINE_UP);
        until(() -> window.lineUp().complete());
        assertThat(lined()).hasSize(23);
        // Once coarse, once fine; the size of the cells may settle in between.
        assertThat(engine.renders.get() - before).isBetween(2, 4);
        before = engine.renders.get();
        interact(() -> state.toggleSolo(1));
        assertThat(rgbAt("cloth-3", 200, 130)).isEqualTo(rgb(engine.more.get(3)));
        assertThat(engine.renders).hasValue(before);
    }

    @Test
    void zoomAndPanMoveAllCellsTogether() throws Exception {
        openWith(2);
        push(KeyCode.CONTROL, LINE_UP);
        until(() -> window.lineUp().complete());
        push(KeyCode.PLUS);
        push(KeyCode.PLUS);
        push(KeyCode.SHIFT, KeyCode.LEFT);
        assertThat(state.fit.get()).isFalse();
        for (String id : lined()) {
            assertThat(rgbAt(id, 190, 130)).as(id).isEqualTo(FakeEngine.INK_RGB[0]);
        }
        push(KeyCode.DIGIT0);
        assertThat(state.fit.get()).isTrue();
    }

    @Test
    void linesAreLeftOutWhereTheyWouldHideThePage() throws Exception {
        openWith(0);
        push(KeyCode.CONTROL, LINE_UP);
        until(() -> window.lineUp().complete());
        while (trimWidth() >= 200) {
            push(KeyCode.MINUS);
        }
        until(() -> window.lineUp().complete());
        assertThat(lined()).noneMatch(this::showsLines);
        while (trimWidth() < 200) {
            push(KeyCode.PLUS);
        }
        until(() -> window.lineUp().complete());
        assertThat(lined()).allMatch(this::showsLines);
    }

    private boolean showsLines(String id) {
        return lookup("#line-up-" + id + " .line.trim").query().getParent().isVisible();
    }

    private double trimWidth() {
        return state.camera
                .get()
                .toView(state.page.get().info().box(PageBox.TRIM))
                .width();
    }

    @Test
    void theLinesOfThePageLieOnEveryCellAndAreSwitchedByTheSameKeys() throws Exception {
        openWith(0);
        push(KeyCode.CONTROL, LINE_UP);
        until(() -> window.lineUp().complete());
        for (String id : lined()) {
            Rectangle trim = lookup("#line-up-" + id + " .line.trim").query();
            Camera camera = state.camera.get();
            Box seen = camera.toView(state.page.get().info().box(PageBox.TRIM));
            assertThat(trim.isVisible()).isTrue();
            assertThat(trim.getX()).isCloseTo(seen.x0(), within(1.0));
            assertThat(trim.getWidth()).isCloseTo(seen.width(), within(1.0));
            assertThat(lookup("#line-up-" + id + " .line.bleed").query().isVisible())
                    .isFalse();
        }
        push(KeyCode.T);
        push(KeyCode.B);
        for (String id : lined()) {
            assertThat(lookup("#line-up-" + id + " .line.trim").query().isVisible())
                    .isFalse();
            assertThat(lookup("#line-up-" + id + " .line.bleed").query().isVisible())
                    .isTrue();
            assertThat(lookup("#line-up-" + id + " .line-label").<Node>queryAll())
                    .noneMatch(Node::isVisible);
        }
    }

    @Test
    void theCellUnderThePointerIsReadOnItsOwnSubstrate() throws Exception {
        openWith(0);
        push(KeyCode.CONTROL, LINE_UP);
        until(() -> window.lineUp().complete());
        for (String id : lined()) {
            pointAt(id, 200, 130);
            Probe probe = state.probe.get();
            assertThat(probe.xPt()).isCloseTo(200, within(1.0));
            assertThat(probe.tints()).contains(255);
            Probe bare = bareAt(id);
            SubstrateCard card = state.lineUp.cards().get(lined().indexOf(id));
            assertThat(bare.tints()).containsOnly(0);
            assertThat(Srgb.labToArgb(bare.lab()) & 0xffffff).as(id).isEqualTo(rgb(card));
        }
        moveTo("#line-up-by-rack");
        until(() -> state.probe.get() == null);
    }

    private Probe bareAt(String id) {
        pointAt(id, 10, 10);
        return state.probe.get();
    }

    private void pointAt(String id, double pageX, double pageY) {
        Camera camera = state.camera.get();
        Node cell = lookup("#line-up-" + id).query();
        moveTo(cell.localToScreen(camera.toViewX(pageX, pageY), camera.toViewY(pageX, pageY)));
        WaitForAsyncUtils.waitForFxEvents();
    }

    @Test
    void theChoiceIsMovedByKeysAndEnterTakesItToTheSurface() throws Exception {
        openWith(4);
        push(KeyCode.CONTROL, LINE_UP);
        until(() -> window.lineUp().complete());
        push(KeyCode.RIGHT);
        assertThat(state.substrate.get().id()).isEqualTo(lined().get(0));
        push(KeyCode.RIGHT);
        assertThat(state.substrate.get().id()).isEqualTo(lined().get(1));
        push(KeyCode.DOWN);
        String below = state.substrate.get().id();
        assertThat(lined().indexOf(below)).isGreaterThan(1);
        push(KeyCode.UP);
        assertThat(state.substrate.get().id()).isEqualTo(lined().get(1));
        push(KeyCode.ENTER);
        assertThat(state.view.get()).isEqualTo(BenchView.FLAT);
        assertThat(state.substrate.get().id()).isEqualTo(lined().get(1));
        until(() -> window.surface().complete());
        assertThat(window.surface().isVisible()).isTrue();
    }

    @Test
    void aClickTakesOneToTheSurface() throws Exception {
        openWith(0);
        clickOn("#view-line-up");
        until(() -> window.lineUp().complete());
        clickOn("#line-up-navy-jersey");
        assertThat(state.view.get()).isEqualTo(BenchView.FLAT);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.NAVY);
    }

    @Test
    void markedSubstratesLieInTheLineUpAndNoMoreThanFit() throws Exception {
        openWith(30);
        push(KeyCode.SPACE);
        push(KeyCode.RIGHT);
        assertThat(state.lineUp.chosen()).isFalse();
        push(KeyCode.SPACE);
        assertThat(lined()).containsExactly("plain-paper", "navy-jersey");
        for (int i = 0; i < 30; i++) {
            push(KeyCode.RIGHT);
            push(KeyCode.SPACE);
        }
        assertThat(lined()).hasSize(LineUp.MOST);
        assertThat(state.rack.marked).hasSize(LineUp.MOST);
        assertThat(state.news.get()).contains("24");
        push(KeyCode.CONTROL, LINE_UP);
        clickOn("#line-up-unmark");
        assertThat(state.rack.marked).isEmpty();
        assertThat(lined()).hasSize(LineUp.MOST).doesNotContain("plain-paper");
    }

    @Test
    void theLineUpIsWrittenAsAContactSheetInItsOrder() throws Exception {
        openWith(0);
        push(KeyCode.CONTROL, LINE_UP);
        clickOn("#line-up-write");
        TextField target = lookup("#sheet-target").query();
        assertThat(target.getText()).endsWith("regatta-1-line-up.png");
        TextField size = lookup("#sheet-size").query();
        interact(() -> size.setText("20"));
        push(KeyCode.ENTER);
        assertThat(lookup("#sheet-trouble").queryLabeled().getText()).startsWith("Size:");
        interact(() -> size.setText("320"));
        clickOn("#sheet-write");
        until(() -> !state.lineUp.sheet.get());
        assertThat(folder.resolve("regatta-1-line-up.png")).hasContent("sand-canvas navy-jersey 320");
        clickOn("#line-up-write");
        clickOn("#sheet-write");
        assertThat(lookup("#sheet-trouble").queryLabeled().getText()).contains("Replace");
        push(KeyCode.ESCAPE);
        assertThat(state.lineUp.sheet.get()).isFalse();
        interact(() -> state.overprint.set(false));
        until(() -> window.lineUp().complete());
        clickOn("#line-up-write");
        TextField other = lookup("#sheet-target").query();
        interact(() -> other.setText(folder.resolve("without.png").toString()));
        clickOn("#sheet-write");
        until(() -> !state.lineUp.sheet.get());
        assertThat(folder.resolve("without.png")).hasContent("sand-canvas navy-jersey 320 without overprint");
    }

    @Test
    void slowWorkCanBeStoppedAndGoesOnWhenTheUserLooksElsewhere() throws Exception {
        openWith(3);
        engine.gate = new CountDownLatch(1);
        push(KeyCode.CONTROL, LINE_UP);
        until(() -> lookup("#work").query().isVisible());
        push(KeyCode.RIGHT);
        assertThat(state.substrate.get().id()).isEqualTo(lined().get(0));
        push(KeyCode.ESCAPE);
        until(() -> state.activities.isEmpty());
        engine.gate.countDown();
        push(KeyCode.PLUS);
        until(() -> window.lineUp().complete());
    }
}
