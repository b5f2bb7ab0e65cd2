package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.app.Arrangement.WhiteBase;
import java.util.Optional;
import java.util.Set;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;

/** Acts on the cross-section as a user does. From the top it holds River Teal (1), Signal Red (0) and White (2). */
class StackTest extends FakeWindow {
    private void type(String id, String text) {
        TextField field = lookup(id).query();
        clickOn(field);
        interact(field::selectAll);
        write(text);
        WaitForAsyncUtils.waitForFxEvents();
    }

    private String text(String id) {
        return lookup(id).queryLabeled().getText();
    }

    @Test
    void thePlateOfTheChosenInkIsBlackOnWhiteAndFollowsTheChoice() throws Exception {
        openArtwork();
        push(KeyCode.J);
        assertThat(state.stack.plate.get()).isFalse();
        push(KeyCode.UP);
        push(KeyCode.J);
        assertThat(rgbAt(200, 50)).isZero();
        assertThat(rgbAt(10, 10)).isEqualTo(0xffffff);
        push(KeyCode.UP);
        assertThat(rgbAt(200, 50)).isEqualTo(0xffffff);
        assertThat(rgbAt(200, 130)).isZero();
        push(KeyCode.ESCAPE);
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.INK_RGB[0]);
    }

    @Test
    void aMapTakesThePlaceOfAPlate() throws Exception {
        openArtwork();
        push(KeyCode.UP);
        push(KeyCode.J);
        push(KeyCode.M);
        assertThat(state.stack.plate.get()).isFalse();
        push(KeyCode.J);
        assertThat(state.overlays.map.get()).isNull();
    }

    @Test
    void aBandThatIsDraggedShowsWhereItWouldLieAndIsPrintedThere() throws Exception {
        openArtwork();
        Node mark = lookup("#drop-mark").query();
        Bounds white = lookup("#ink-2 .ink-row")
                .query()
                .localToScreen(lookup("#ink-2 .ink-row").query().getBoundsInLocal());
        moveTo("#ink-1 .ink-name").press(MouseButton.PRIMARY);
        moveTo(white.getMinX() + 100, white.getMaxY() - 4);
        assertThat(mark.isVisible()).isTrue();
        release(MouseButton.PRIMARY);
        assertThat(mark.isVisible()).isFalse();
        assertThat(state.printing.order()).containsExactly(1, 2, 0);
        push(KeyCode.CONTROL, KeyCode.Z);
        assertThat(state.printing.order()).containsExactly(2, 0, 1);
    }

    @Test
    void aBandLetGoBesideTheStackStaysWhereItWas() throws Exception {
        openArtwork();
        moveTo("#ink-1 .ink-name").press(MouseButton.PRIMARY);
        moveTo("#surface");
        release(MouseButton.PRIMARY);
        assertThat(state.printing.order()).containsExactly(2, 0, 1);
        assertThat(state.history.undoable().get()).isEmpty();
    }

    @Test
    void altWithUpAndDownMovesTheChosenInkAndItsBandStays() throws Exception {
        openArtwork();
        Node band = lookup("#ink-2").query();
        push(KeyCode.UP);
        push(KeyCode.ALT, KeyCode.UP);
        assertThat(state.printing.order()).containsExactly(0, 2, 1);
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.INK_RGB[2]);
        push(KeyCode.ALT, KeyCode.UP);
        push(KeyCode.ALT, KeyCode.UP);
        assertThat(state.printing.order()).containsExactly(0, 1, 2);
        push(KeyCode.ALT, KeyCode.DOWN);
        assertThat(state.printing.order()).containsExactly(0, 2, 1);
        assertThat(state.chosenInk.get()).isEqualTo(2);
        Node after = lookup("#ink-2").query();
        assertThat(after).isSameAs(band);
    }

    @Test
    void opacityIsSetByKeysAsOneStepAndTheArrowsDoNotStepTheRack() throws Exception {
        openArtwork();
        clickOn("#drawer-0");
        Node slider = lookup("#opacity").query();
        interact(slider::requestFocus);
        for (int i = 0; i < 5; i++) {
            push(KeyCode.LEFT);
        }
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.PAPER);
        assertThat(state.printing.opacity(0)).isLessThan(1);
        assertThat(slider.isFocused()).isTrue();
        push(KeyCode.CONTROL, KeyCode.Z);
        assertThat(state.printing.opacity(0)).isEqualTo(1);
    }

    @Test
    void opacityIsTypedSeenAtOnceAndGoesBackToTheFilesOwn() throws Exception {
        openArtwork();
        clickOn("#drawer-0");
        type("#opacity-number", "0");
        assertThat(state.printing.opacity(0)).isZero();
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.INK_RGB[2]);
        clickOn("#opacity-as-filed");
        assertThat(state.history.get().opacities()).isEmpty();
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.INK_RGB[0]);
    }

    @Test
    void theDrawerFollowsTheChoiceOfInk() throws Exception {
        openArtwork();
        clickOn("#drawer-0");
        assertThat(lookup("#ink-0 .drawer").query().isVisible()).isTrue();
        push(KeyCode.UP);
        assertThat(lookup("#ink-0 .drawer").query().isVisible()).isFalse();
        assertThat(lookup("#ink-1 .drawer").query().isVisible()).isTrue();
    }

    @Test
    void theUnderbaseIsLaidChokedAndKeptFromAnInk() throws Exception {
        openArtwork();
        push(KeyCode.RIGHT);
        push(KeyCode.U);
        clickOn("#underbase-drawer");
        type("#underbase-choke-number", "0.3");
        assertThat(state.history.get().underbase().map(WhiteBase::chokeMm)).contains(0.3);
        push(KeyCode.ESCAPE);
        interact(() -> window.surface().requestFocus());
        clickOn("#under-Signal-Red");
        assertThat(state.look().underbase().orElseThrow().knockedOutUnder()).containsExactly("Signal Red");
        Label figures = lookup("#underbase-band .quiet").query();
        assertThat(figures.getText()).isEqualTo("white ink, 100 %, choke 0.30 mm");
        push(KeyCode.CONTROL, KeyCode.Z);
        CheckBox red = lookup("#under-Signal-Red").query();
        assertThat(red.isSelected()).isTrue();
        interact(() -> window.surface().requestFocus());
        push(KeyCode.I);
        assertThat(figures.getText()).isEqualTo("white ink, 100 %, choke 0.012 in");
    }

    @Test
    void anUnderbaseUnderChosenInksIsShownAndChangedAsSuch() throws Exception {
        openArtwork();
        push(KeyCode.RIGHT);
        WhiteBase underTeal = new WhiteBase(1, 1, 0, Set.of("River Teal"), Set.of());
        interact(() -> state.history.change("lay", a -> a.over(Optional.of(underTeal))));
        clickOn("#underbase-drawer");
        CheckBox red = lookup("#under-Signal-Red").query();
        CheckBox teal = lookup("#under-River-Teal").query();
        assertThat(red.isSelected()).isFalse();
        assertThat(teal.isSelected()).isTrue();
        clickOn(red);
        assertThat(state.look().underbase()).contains(underTeal.laidUnder("Signal Red"));
        assertThat(red.isSelected()).isTrue();
        clickOn(teal);
        assertThat(state.look().underbase().orElseThrow().liesUnder("River Teal"))
                .isFalse();
        assertThat(state.look().underbase().orElseThrow().liesUnder("Signal Red"))
                .isTrue();
    }

    @Test
    void whatIsSeenUnderThePointerStandsOverTheLayers() throws Exception {
        openArtwork();
        pointAt(100, 200);
        assertThat(text("#seen-cover")).isEqualTo("Inked, total 50 %");
        assertThat(text("#seen-colour")).startsWith("Lab 50");
        moveTo("#stack .title");
        WaitForAsyncUtils.waitForFxEvents();
        assertThat(text("#seen-cover")).isEqualTo("Seen from above");
    }
}
