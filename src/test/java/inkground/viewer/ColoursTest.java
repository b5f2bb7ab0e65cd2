package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.app.Arrangement;
import inkground.app.Session;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.InkAt;
import inkground.artwork.ColourAssignment.InkNamed;
import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourAssignment.WhiteInk;
import inkground.viewer.desk.ProofDesk;
import inkground.viewer.desk.Recents;
import inkground.viewer.state.ViewerState;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;

/** Says as a user does what the colours of the artwork are printed as. */
class ColoursTest extends FakeWindow {
    private void openPainted() throws Exception {
        engine.paintedGround = true;
        openArtwork();
        until(() -> state.colours.inventory.get() != null);
    }

    private List<Rule> rules() {
        return state.history.get().assignment().rules();
    }

    private String text(String id) {
        return lookup(id).queryLabeled().getText();
    }

    private void openColours() throws Exception {
        push(KeyCode.CONTROL, KeyCode.L);
        until(() -> shows("#colours"));
    }

    @Test
    void theGroundIsAskedAboutOnClothPrintedAsBareAndTakenBack() throws Exception {
        openPainted();
        assertThat(rgbAt(10, 10)).isEqualTo(FakeColours.GROUND_RGB);
        assertThat(shows("#ground-bar")).isFalse();
        push(KeyCode.RIGHT);
        until(() -> shows("#ground-bar"));
        until(() -> text("#ground-instead").contains("12.1 cm² of Signal Red"));
        assertThat(text("#ground-asks"))
                .startsWith("The dark blue that fills the page")
                .contains("Navy jersey");
        clickOn("#ground-bare");
        until(() -> window.surface().complete() && state.activities.isEmpty());
        assertThat(rgbAt(10, 10)).isEqualTo(FakeEngine.NAVY.argb() & 0xffffff);
        assertThat(shows("#ground-bar")).isFalse();
        push(KeyCode.CONTROL, KeyCode.Z);
        until(() -> window.surface().complete() && state.activities.isEmpty());
        assertThat(rgbAt(10, 10)).isEqualTo(FakeColours.GROUND_RGB);
        assertThat(shows("#ground-bar")).isFalse();
    }

    @Test
    void aGroundThatIsKeptIsNotAskedAboutAgain() throws Exception {
        openPainted();
        push(KeyCode.RIGHT);
        until(() -> shows("#ground-bar"));
        clickOn("#ground-keep");
        push(KeyCode.RIGHT);
        WaitForAsyncUtils.waitForFxEvents();
        assertThat(shows("#ground-bar")).isFalse();
        assertThat(rules()).isEmpty();
    }

    @Test
    void aGroundThatWasAskedAboutIsNotAskedAboutOnAnotherDay() throws Exception {
        openPainted();
        push(KeyCode.RIGHT);
        until(() -> shows("#ground-bar"));
        clickOn("#ground-keep");
        push(KeyCode.CONTROL, KeyCode.S);
        Path file = state.file.get().path();
        until(() -> engine.sessions.containsKey(file));
        assertThat(engine.sessions.get(file).groundAsked()).isTrue();
        ViewerState another = new ViewerState();
        interact(() -> {
            ProofDesk other =
                    new ProofDesk(another, engine, new Recents(ViewerRig.preferences()), ViewerRig.sameThread());
            other.stockRack();
            other.files().open(file);
            other.close();
        });
        assertThat(another.colours.groundSettled(file)).isTrue();
    }

    @Test
    void aColourIsMadeBareByKeysAlone() throws Exception {
        openPainted();
        openColours();
        ListView<?> list = lookup("#colour-list").query();
        until(list::isFocused);
        push(KeyCode.DOWN);
        push(KeyCode.DOWN);
        for (int tab = 0; tab < 4; tab++) {
            push(KeyCode.TAB);
        }
        push(KeyCode.SPACE);
        assertThat(rules()).containsExactly(new Rule(new InkNamed("Signal Red"), new Bare()));
        push(KeyCode.CONTROL, KeyCode.Z);
        assertThat(rules()).isEmpty();
        push(KeyCode.CONTROL, KeyCode.L);
        assertThat(shows("#notes")).isTrue();
    }

    @Test
    void nearDuplicatesArePrintedAsOneInkOfANewName() throws Exception {
        openPainted();
        openColours();
        clickOn("Choose all");
        clickOn("#assign-ink");
        until(() -> rules().size() == 2);
        interact(() -> lookup("#assign-ink-name").query().requestFocus());
        write("Oat");
        push(KeyCode.ENTER);
        assertThat(rules()).extracting(Rule::to).containsOnly(new InkAt("Oat", 1));
        assertThat(rules())
                .extracting(Rule::from)
                .containsExactlyInAnyOrder(FakeColours.CREAM.source(), FakeColours.NEARLY_CREAM.source());
        clickOn("#assign-white");
        assertThat(rules()).extracting(Rule::to).containsOnly(new WhiteInk());
        clickOn("#assign-stated");
        assertThat(rules()).isEmpty();
    }

    @Test
    void allFlatColoursAreAssignedAtOnceAndWhatWasDecidedStays() throws Exception {
        openPainted();
        Rule decided = new Rule(FakeColours.CREAM.source(), new WhiteInk());
        interact(() ->
                state.history.change("print cream as white", a -> a.assigning(new ColourAssignment(List.of(decided)))));
        openColours();
        clickOn("#assign-all");
        until(() -> rules().size() == 4);
        assertThat(rules().get(0)).isEqualTo(decided);
        assertThat(rgbAt(10, 10)).isEqualTo(FakeEngine.PAPER.argb() & 0xffffff);
        push(KeyCode.CONTROL, KeyCode.Z);
        assertThat(rules()).containsExactly(decided);
    }

    @Test
    void tinyAndHiddenColoursAreListedApart() throws Exception {
        openPainted();
        openColours();
        ListView<?> list = lookup("#colour-list").query();
        assertThat(list.getItems().toString())
                .contains("Tiny: often left over by mistake")
                .contains("Hidden beneath other paint")
                .contains("2 near-duplicates");
    }

    @Test
    void aColourIsPickedOnTheProof() throws Exception {
        openPainted();
        openColours();
        clickOn("#pick-colour");
        pointAt(200, 130);
        clickOn(MouseButton.PRIMARY);
        until(() -> state.colours.picked.get() != null);
        ListView<?> list = lookup("#colour-list").query();
        assertThat(list.getSelectionModel().getSelectedItem().toString()).contains("Signal Red");
        push(KeyCode.ESCAPE);
        assertThat(state.colours.picking.get()).isFalse();
    }

    @Test
    void theRulesOfAnotherJobAreTakenAndTakenBack() throws Exception {
        openPainted();
        Path other = folder.resolve("other.pdf");
        ColourAssignment bare = new ColourAssignment(List.of(new Rule(FakeColours.GROUND.source(), new Bare())));
        engine.sessions.put(other, new Session(Arrangement.AS_FILED.assigning(bare), Optional.empty()));
        interact(() -> desk.keeping().takeRules(other));
        until(() -> rules().equals(bare.rules()));
        push(KeyCode.CONTROL, KeyCode.Z);
        assertThat(rules()).isEmpty();
    }

    private void openCleanSheet() throws Exception {
        openPainted();
        interact(() -> state.history.change(
                "print as bare",
                a -> a.assigning(new ColourAssignment(List.of(new Rule(FakeColours.GROUND.source(), new Bare()))))));
        openColours();
        clickOn("#clean-file");
        until(() -> shows("#clean-sheet"));
        assertThat(text("#clean-summary")).contains("#1C304F");
    }

    private void writeTo(Path target) {
        TextField field = lookup("#clean-target").query();
        interact(() -> field.setText(target.toString()));
        clickOn("#clean-write");
    }

    @Test
    void onlyWhatIsBareMakesACleanFile() throws Exception {
        openPainted();
        openColours();
        Button clean = lookup("#clean-file").query();
        assertThat(clean.isDisabled()).isTrue();
    }

    @Test
    void aCleanFileIsWrittenAndWhatWasDoneIsSaid() throws Exception {
        openCleanSheet();
        Path target = folder.resolve("clean.pdf");
        writeTo(target);
        until(() -> !state.colours.cleanSheet.get());
        assertThat(target).hasContent("%PDF-clean");
        assertThat(state.news.get()).contains("3 objects taken out, 1 of them knocked out of what lay beneath");
    }

    @Test
    void aCleanFileThatCannotBeWrittenTrulyIsRefusedInTheSheet() throws Exception {
        openCleanSheet();
        engine.cleanRefusal = "regatta.pdf, page 1: the bare colour is inside an image.";
        writeTo(folder.resolve("refused.pdf"));
        until(() -> text("#clean-trouble").contains("inside an image"));
        assertThat(shows("#clean-sheet")).isTrue();
        assertThat(shows("#trouble")).isFalse();
        push(KeyCode.ESCAPE);
        assertThat(state.colours.cleanSheet.get()).isFalse();
    }

    @Test
    void writingACleanFileCanBeStoppedAndNothingIsReplacedUnasked() throws Exception {
        openCleanSheet();
        Path kept = Files.writeString(folder.resolve("kept.pdf"), "kept");
        writeTo(kept);
        assertThat(text("#clean-trouble")).contains("Replace");
        engine.exportWaits = true;
        Path target = folder.resolve("stopped-clean.pdf");
        writeTo(target);
        until(() -> lookup("#clean-stop").tryQuery().isPresent());
        clickOn("#clean-stop");
        until(() -> state.activities.isEmpty());
        assertThat(target).doesNotExist();
        assertThat(kept).hasContent("kept");
        assertThat(shows("#clean-sheet")).isTrue();
    }
}
