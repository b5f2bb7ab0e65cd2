package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.PageBox;
import inkground.colour.Srgb;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import inkground.viewer.state.Camera;
import inkground.viewer.state.ProofEngine;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** The main job in the window, from the demo's file to a proof of it, over the real engine. */
class ViewerDemoTest extends RealWindow {
    private void openDemo() throws Exception {
        until(() -> !state.substrates.isEmpty());
        clickOn("#start-demo");
        until(() -> state.page.get() != null && window.surface().complete());
        // The ground in the garment's colour is on a layer of its own; off, as for printing.
        interact(() -> state.layersOn.clear());
        until(() -> window.surface().complete());
    }

    private int surfaceRgb(double pageX, double pageY) throws Exception {
        until(() -> window.surface().complete());
        WritableImage[] image = new WritableImage[1];
        interact(() -> image[0] = window.surface().snapshot(null, null));
        Camera camera = state.camera.get();
        return image[0].getPixelReader().getArgb((int) camera.toViewX(pageX, pageY), (int) camera.toViewY(pageX, pageY))
                & 0xffffff;
    }

    private int substrateRgb() throws Exception {
        Substrate substrate = Substrates.load().byId(state.substrate.get().id()).orElseThrow();
        return Srgb.labToArgb(substrate.lab()) & 0xffffff;
    }

    @Test
    void eachGarmentShowsItsOwnColourWhereTheArtworkIsBare() throws Exception {
        openDemo();
        interact(() -> state.substrate.set(state.substrates.stream()
                .filter(ProofEngine.SubstrateCard::garment)
                .findFirst()
                .orElseThrow()));
        for (int step = 0; step < 4; step++) {
            assertThat(surfaceRgb(6, 6)).isEqualTo(substrateRgb());
            push(KeyCode.RIGHT);
        }
    }

    @Test
    void aSoloedInkShowsAloneAndLinesAndBareMapComeAndGo() throws Exception {
        openDemo();
        int inks = state.page.get().inks().size();
        clickOn("#solo-" + (inks - 1));
        assertThat(state.look().shown()).containsExactly(inks - 1);
        until(() -> window.surface().complete());
        push(KeyCode.ESCAPE);
        push(KeyCode.A);
        push(KeyCode.B);
        assertThat(lookup("#line-safe").query().isVisible()).isTrue();
        push(KeyCode.M);
        until(() -> state.overlays.report.get() != null);
        assertThat(lookup("#map-legend").query().isVisible()).isTrue();
        double total = state.overlays.report.get().entries().stream()
                .mapToDouble(ProofEngine.MapEntry::cm2)
                .sum();
        var trim = state.page.get().info().box(PageBox.TRIM);
        // One row and column of pixels at 150 dpi may be gained or lost.
        double tolerance = (trim.widthMm() + trim.heightMm()) / 10 * 2.54 / 150;
        assertThat(total)
                .isCloseTo(trim.widthMm() * trim.heightMm() / 100, org.assertj.core.api.Assertions.within(tolerance));
    }

    @Test
    void theProofIsTheSizeAskedForAndShowsTheGarment() throws Exception {
        openDemo();
        interact(() -> state.substrate.set(state.substrates.stream()
                .filter(card -> card.id().equals("tee-navy"))
                .findFirst()
                .orElseThrow()));
        push(KeyCode.CONTROL, KeyCode.E);
        Path target = folder.resolve("shirt.png");
        TextField field = lookup("#export-target").query();
        TextField dpi = lookup("#export-dpi").query();
        interact(() -> {
            field.setText(target.toString());
            dpi.setText("50");
        });
        clickOn("#export-write");
        until(() -> Files.exists(target) && !state.exportSheet.get());
        BufferedImage proof = ImageIO.read(target.toFile());
        var trim = state.page.get().info().box(PageBox.TRIM);
        assertThat(proof.getWidth()).isEqualTo((int) Math.round(trim.width() * 50 / 72));
        assertThat(proof.getRGB(4, 4) & 0xffffff).isEqualTo(substrateRgb());
    }

    @Test
    void aFileThatIsNotAPdfIsRefusedAndTheDemoStaysOpen() throws Exception {
        openDemo();
        Path letter = Files.writeString(folder.resolve("letter.txt"), "Dear printer");
        interact(() -> desk.files().open(letter));
        until(() -> state.trouble.get() != null);
        Label words = lookup("#trouble-words").query();
        assertThat(words.getText()).contains("letter.txt").doesNotContain("Exception");
        assertThat(state.file.get().path()).isEqualTo(SHIRT);
    }

    private void openAsFiled(String substrate) throws Exception {
        until(() -> !state.substrates.isEmpty());
        interact(() -> state.substrate.set(state.substrates.stream()
                .filter(card -> card.id().equals(substrate))
                .findFirst()
                .orElseThrow()));
        clickOn("#start-demo");
        until(() -> state.page.get() != null && window.surface().complete());
        until(() -> state.colours.inventory.get() != null);
    }

    @Test
    void theNavyPaintedInForPreviewIsPrintedAsBareAndTheGarmentIsSeenUntilThatIsTakenBack() throws Exception {
        openAsFiled("tee-burgundy");
        int navy = surfaceRgb(6, 6);
        assertThat(navy).isNotEqualTo(substrateRgb());
        until(() -> state.colours.ground.get() != null
                && !state.colours.deletion.get().isEmpty());
        assertThat(lookup("#ground-asks").queryLabeled().getText())
                .contains("dark blue that fills the page (RGB 28 48 79)");
        clickOn("#ground-bare");
        until(() -> state.activities.isEmpty());
        assertThat(surfaceRgb(6, 6)).isEqualTo(substrateRgb());
        push(KeyCode.CONTROL, KeyCode.Z);
        until(() -> state.activities.isEmpty());
        assertThat(surfaceRgb(6, 6)).isEqualTo(navy);
        push(KeyCode.CONTROL, KeyCode.Y);
        until(() -> state.activities.isEmpty());
        assertThat(surfaceRgb(6, 6)).isEqualTo(substrateRgb());
        push(KeyCode.CONTROL, KeyCode.L);
        clickOn("#clean-file");
        Path target = folder.resolve("shirt-clean.pdf");
        TextField field = lookup("#clean-target").query();
        interact(() -> field.setText(target.toString()));
        clickOn("#clean-write");
        until(() -> !state.colours.cleanSheet.get());
        assertThat(state.news.get()).contains("1 object taken out");
        assertThat(target).isNotEmptyFile();
    }

    @Test
    void aColourPickedOnTheProofIsTheOneThatIsSeenThereWithTheLayersThatAreOn() throws Exception {
        openAsFiled("tee-burgundy");
        push(KeyCode.CONTROL, KeyCode.L);
        interact(() -> state.colours.pickedAt.set(new javafx.geometry.Point2D(6, 6)));
        until(() -> state.colours.picked.get() != null);
        assertThat(state.colours.picked.get().words()).isEqualTo("RGB 28 48 79");
    }

    @Test
    void theProcessInksThatTheShirtDoesNotUseAreOneLineThatOpens() throws Exception {
        openDemo();
        until(() -> state.figures.get() != null);
        assertThat(lookup("#unused-inks").queryLabeled().getText()).isEqualTo("4 process inks not used here");
        assertThat(lookup("Cyan").tryQuery()).isEmpty();
        push(KeyCode.UP);
        assertThat(state.inkName(state.chosenInk.get())).isEqualTo("White");
        push(KeyCode.UP);
        assertThat(state.printing.folded()).doesNotContain(state.chosenInk.get());
        clickOn("#unused-inks");
        assertThat(lookup("Cyan").tryQuery()).isPresent();
    }
}
