package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.colour.Lab;
import inkground.colour.Srgb;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import inkground.substrate.Texture;
import inkground.viewer.desk.Recents;
import inkground.viewer.rack.Swatch;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.Rack;
import java.awt.image.BufferedImage;
import java.lang.ref.WeakReference;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.scene.paint.ImagePattern;
import javafx.scene.shape.Shape;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;

/** Acts on the rack as a user does. */
class RackTest extends FakeWindow {
    @Override
    FakeEngine makeEngine() {
        return new FakeEngine(folder.resolve("own"));
    }

    private List<String> hung() {
        return state.rack.cards().stream().map(SubstrateCard::id).toList();
    }

    private void type(String field, String text) {
        TextField to = lookup(field).query();
        interact(() -> to.setText(text));
    }

    private SubstrateCard kept() throws Exception {
        until(() -> !state.own.sheet.get());
        return state.substrate.get();
    }

    @Test
    void aSearchFiltersTheRackEnterChoosesAndEscapeBringsAllBack() throws Exception {
        openArtwork();
        push(KeyCode.CONTROL, KeyCode.F);
        write("nav jers");
        assertThat(hung()).containsExactly("navy-jersey");
        assertThat(shows("#substrate-sand-canvas")).isFalse();
        push(KeyCode.ENTER);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.NAVY);
        push(KeyCode.ESCAPE);
        assertThat(hung()).hasSize(3);
        push(KeyCode.RIGHT);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.SAND);
    }

    @Test
    void aSearchFindsInksOfThePageAndEnterGoesFromOneToTheNext() throws Exception {
        openArtwork();
        push(KeyCode.CONTROL, KeyCode.F);
        write("s");
        assertThat(shows("#ink-found-0")).isTrue();
        push(KeyCode.ENTER);
        assertThat(state.chosenInk.get()).isZero();
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.PAPER);
        type("#search", "garment");
        push(KeyCode.ENTER);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.NAVY);
        push(KeyCode.ENTER);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.SAND);
        push(KeyCode.ENTER);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.NAVY);
        type("#search", "no such thing");
        assertThat(((Labeled) lookup("#found").query()).getText()).isEqualTo("nothing found");
    }

    @Test
    void favouritesHangInFrontAndAreThereInTheNextRun() throws Exception {
        openArtwork();
        push(KeyCode.RIGHT);
        push(KeyCode.RIGHT);
        push(KeyCode.CONTROL, KeyCode.B);
        assertThat(hung()).containsExactly("sand-canvas", "plain-paper", "navy-jersey");
        assertThat(state.rack.hung().get(0).group()).isEqualTo(Rack.Group.FAVOURITES);
        assertThat(new Recents(preferences).favourites()).containsExactly("sand-canvas");
        push(KeyCode.CONTROL, KeyCode.B);
        assertThat(hung()).containsExactly("plain-paper", "navy-jersey", "sand-canvas");
        assertThat(new Recents(preferences).favourites()).isEmpty();
    }

    @Test
    void eachSubstrateTellsItsVanishScoreAndTheRackIsRankedByIt() throws Exception {
        openArtwork();
        until(() -> state.rack.scores.get().size() == 3);
        Node cell = lookup("#substrate-navy-jersey").query();
        assertThat(from(cell).lookup(".vanish-figure").queryLabeled().getText()).isEqualTo("80 %");
        clickOn("#rank");
        assertThat(hung()).containsExactly("plain-paper", "sand-canvas", "navy-jersey");
        clickOn("#rank");
        assertThat(hung()).containsExactly("plain-paper", "navy-jersey", "sand-canvas");
    }

    @Test
    void scoresAreFoundAnewForAnotherArrangementWithoutGatheringTheEdgesAgain() throws Exception {
        openArtwork();
        until(() -> state.rack.scores.get().size() == 3);
        assertThat(engine.gatherings).hasValue(1);
        interact(() -> state.printing.move(2, 5));
        until(() -> state.activities.isEmpty());
        assertThat(engine.gatherings).hasValue(1);
        interact(() -> state.layersOn.clear());
        until(() -> engine.gatherings.get() == 2);
    }

    @Test
    void anOwnGarmentIsMadeByLabKeptAsAFileOfOurFormAndLaidUnderTheArtwork() throws Exception {
        openArtwork();
        clickOn("#own-add");
        clickOn("#own-name");
        write("Forest tee");
        type("#own-l", "30.5");
        type("#own-a", "-22");
        type("#own-b", "12");
        clickOn("#own-keep");
        SubstrateCard card = kept();
        assertThat(card.name()).isEqualTo("Forest tee");
        assertThat(card.own()).isTrue();
        assertThat(card.garment()).isTrue();
        Substrate read = Substrates.read(folder.resolve("own/forest-tee.json"));
        assertThat(read.lab()).isEqualTo(new Lab(30.5, -22, 12));
        assertThat(read.kind()).isEqualTo(Substrate.Kind.GARMENT);
        assertThat(read.underbaseAdvised()).isTrue();
        until(() -> window.surface().complete());
        assertThat(state.look().substrateId()).isEqualTo("forest-tee");
        assertThat(state.rack.hung().get(0).group()).isEqualTo(Rack.Group.OWN);
    }

    @Test
    void anOwnPaperIsMadeByKeysAloneFromACssColour() throws Exception {
        openArtwork();
        interact(() -> lookup("#own-add").query().requestFocus());
        push(KeyCode.SPACE);
        write("Teal card");
        push(KeyCode.TAB);
        push(KeyCode.RIGHT);
        push(KeyCode.SPACE);
        assertThat(((javafx.scene.control.ToggleButton) lookup("#own-paper").query()).isSelected())
                .isTrue();
        interact(() -> lookup("#own-by-css").query().requestFocus());
        push(KeyCode.SPACE);
        // past the names of the other ways
        for (int i = 0;
                i < 3 && !"own-css".equals(window.scene().getFocusOwner().getId());
                i++) {
            push(KeyCode.TAB);
        }
        assertThat(window.scene().getFocusOwner().getId()).isEqualTo("own-css");
        write("no colour");
        push(KeyCode.ENTER);
        assertThat(lookup("#own-trouble").queryLabeled().getText()).startsWith("Colour:");
        type("#own-css", "#008080");
        push(KeyCode.ENTER);
        SubstrateCard card = kept();
        assertThat(card.garment()).isFalse();
        assertThat(card.argb()).isEqualTo(0xff008080);
        assertThat(card.source()).contains("not measured");
    }

    @Test
    void anOwnSubstrateIsRenamedRecolouredAndRemovedOnlyAfterAsking() throws Exception {
        openArtwork();
        interact(() -> desk.rack()
                .add(new inkground.app.OwnSubstrates.Draft(
                        "Moss", Substrate.Kind.GARMENT, new Lab(40, -15, 25), "test", Texture.Kind.WOVEN)));
        until(() -> state.substrate.get().own());
        push(KeyCode.CONTROL, KeyCode.B);
        clickOn("#own-edit");
        type("#own-name", "Moss green");
        clickOn("#own-keep");
        assertThat(kept().id()).isEqualTo("moss");
        assertThat(state.substrate.get().name()).isEqualTo("Moss green");
        clickOn("#own-edit");
        type("#own-l", "45");
        clickOn("#own-keep");
        assertThat(kept().id()).isEqualTo("moss-green");
        assertThat(state.rack.favourites).containsExactly("moss-green");
        assertThat(folder.resolve("own/moss.json")).doesNotExist();
        clickOn("#own-edit");
        clickOn("#own-remove");
        clickOn("#own-remove-not");
        assertThat(folder.resolve("own/moss-green.json")).exists();
        clickOn("#own-remove");
        clickOn("#own-remove-sure");
        until(() -> !state.own.sheet.get());
        assertThat(folder.resolve("own/moss-green.json")).doesNotExist();
        assertThat(hung()).containsExactly("plain-paper", "navy-jersey", "sand-canvas");
        assertThat(state.substrate.get().own()).isFalse();
        assertThat(state.rack.favourites).isEmpty();
    }

    @Test
    void aColourComesFromAFileOfMeasurements() throws Exception {
        openArtwork();
        Path file = Files.writeString(
                folder.resolve("cloths.txt"),
                """
                CGATS.17
                NUMBER_OF_FIELDS 4
                BEGIN_DATA_FORMAT
                SAMPLE_NAME LAB_L LAB_A LAB_B
                END_DATA_FORMAT
                NUMBER_OF_SETS 2
                BEGIN_DATA
                "Brick" 45.0 40.0 30.0
                "Slate" 50.25 -1.0 -6.0
                END_DATA
                """);
        clickOn("#own-add");
        interact(() -> desk.rack().readSamples(file));
        until(() -> shows("#own-samples"));
        clickOn("#own-samples");
        push(KeyCode.DOWN);
        push(KeyCode.DOWN);
        type("#own-name", "Slate");
        clickOn("#own-keep");
        assertThat(kept().lab()).isEqualTo(new Lab(50.25, -1, -6));
        assertThat(state.substrate.get().source()).contains("Slate");
    }

    /** Swatches of one cloth share its picture, which is kept. */
    @Test
    void aSwatchOutOfSightIsNotHeldByThePictureItShares() throws Exception {
        openArtwork();
        Pane pane = new Pane();
        List<WeakReference<Node>> gone = new ArrayList<>();
        interact(() -> {
            ((Pane) stage.getScene().getRoot()).getChildren().add(pane);
            Swatch stays = new Swatch(FakeEngine.NAVY, 66, 50);
            pane.getChildren().add(stays);
            Shape cloth = (Shape) stays.getChildren().get(0);
            assertThat(cloth.getFill()).isInstanceOf(ImagePattern.class);
            for (int i = 0; i < 30; i++) {
                Swatch swatch = new Swatch(FakeEngine.NAVY, 66, 50);
                pane.getChildren().add(swatch);
                gone.add(new WeakReference<>(swatch));
            }
        });
        WaitForAsyncUtils.waitForFxEvents();
        interact(() -> pane.getChildren().remove(1, 31));
        // The toolkit itself may hold the last nodes that it painted.
        until(() -> {
            System.gc();
            return gone.stream().filter(node -> node.get() != null).count() <= 2;
        });
        interact(() -> ((Pane) stage.getScene().getRoot()).getChildren().remove(pane));
    }

    @Test
    void aColourIsPickedFromAPhotographThatIsCalledAHint() throws Exception {
        openArtwork();
        BufferedImage picture = new BufferedImage(300, 200, BufferedImage.TYPE_INT_RGB);
        for (int i = 0; i < 300 * 200; i++) {
            picture.setRGB(i % 300, i / 300, i % 300 < 150 ? 0x802020 : 0x206040);
        }
        Path file = folder.resolve("cloth.png");
        ImageIO.write(picture, "png", file.toFile());
        clickOn("#own-add");
        interact(() -> desk.rack().readPhotograph(file));
        until(() -> state.own.photograph.get() != null && shows("#photo"));
        interact(() -> lookup("#photo").query().requestFocus());
        for (int i = 0; i < 12; i++) {
            push(KeyCode.RIGHT);
        }
        type("#own-name", "Bottle");
        clickOn("#own-keep");
        SubstrateCard card = kept();
        Lab green = Srgb.toLab(0x20 / 255.0, 0x60 / 255.0, 0x40 / 255.0);
        assertThat(card.lab().L()).isCloseTo(green.L(), within(0.05));
        assertThat(card.lab().a()).isCloseTo(green.a(), within(0.05));
        assertThat(card.source()).contains("hint");
    }

    @Test
    void aRackOfHundredsHoldsOnlyTheNodesThatAreSeen() throws Exception {
        engine.more = IntStream.range(0, 600)
                .mapToObj(i -> FakeEngine.card("cloth-" + i, "Cloth " + i, true, 20 + i % 70, 0xff405060, "jersey"))
                .toList();
        interact(() -> desk.stockRack());
        until(() -> state.substrates.size() == 603);
        openArtwork();
        assertThat(lookup(".rack-item").queryAll().size()).isBetween(3, 20);
        interact(() -> state.substrate.set(engine.more.get(599)));
        assertThat(shows("#substrate-cloth-599")).isTrue();
        assertThat(lookup(".rack-item").queryAll().size()).isBetween(3, 20);
        assertThat(shows("#substrate-plain-paper")).isFalse();
    }
}
