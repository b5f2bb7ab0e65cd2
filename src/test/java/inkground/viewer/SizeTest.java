package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.artwork.PageBox;
import inkground.artwork.PictureSize;
import inkground.viewer.state.LengthUnit;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import javafx.geometry.Bounds;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;

/** How large a picture or an SVG is, asked in the window over the readers of the program. */
class SizeTest extends RealWindow {
    @Override
    public void start(Stage stage) {
        stage.setWidth(1060);
        stage.setHeight(640);
        super.start(stage);
    }

    /** @return a picture of 600 × 300 samples whose file states no resolution */
    private Path png() throws Exception {
        Path file = folder.resolve("logo.png");
        BufferedImage image = new BufferedImage(600, 300, BufferedImage.TYPE_INT_RGB);
        image.setRGB(300, 150, 0xffffff);
        ImageIO.write(image, "png", file.toFile());
        return file;
    }

    private void open(Path file) throws Exception {
        until(() -> !state.substrates.isEmpty());
        interact(() -> {
            state.pictured.set(false);
            desk.files().open(file);
        });
        until(() -> state.file.get() != null && state.file.get().path().equals(file) && state.pictured.get());
    }

    private double widthMm() {
        return state.page.get().info().box(PageBox.TRIM).widthMm();
    }

    private void untilWide(double mm) throws Exception {
        until(() -> Math.abs(widthMm() - mm) < 0.01);
    }

    private String text(String query) {
        return lookup(query).queryLabeled().getText();
    }

    private boolean asks() {
        return lookup("#size-bar").query().isVisible();
    }

    private void type(String width) {
        interact(() -> lookup("#size-width").queryAs(TextField.class).setText(width));
    }

    @Test
    void aPictureIsShownAtOnceAskedForItsWidthAndReadAgain() throws Exception {
        Path file = png();
        open(file);
        assertThat(asks()).isTrue();
        assertThat(widthMm()).isCloseTo(50.8, within(0.01));
        assertThat(text("#size-asks")).startsWith("This picture does not say how large it is");
        assertThat(text("#size-words")).isEqualTo("600 × 300 samples, 300 per inch");
        type("280");
        assertThat(text("#size-height")).isEqualTo("× 140.0 mm");
        assertThat(text("#size-words")).isEqualTo("600 × 300 samples, 54 per inch");
        interact(() -> state.zoom(3, 100, 100));
        double seenMiddle = state.camera.get().centreX() / widthMm();
        clickOn("#size-set");
        untilWide(280);
        assertThat(asks()).isFalse();
        assertThat(state.camera.get().centreX() / widthMm()).isCloseTo(seenMiddle, within(1e-6));
        assertThat(state.page.get().info().box(PageBox.TRIM).heightMm()).isCloseTo(140, within(0.01));
        clickOn("#undo");
        untilWide(50.8);
        assertThat(asks()).isFalse();
        clickOn("#redo");
        untilWide(280);

        interact(() -> desk.keeping().keepSession(() -> {}));
        until(() -> !state.unsaved.get());
        assertThat(Files.readString(folder.resolve("logo.png.inkground.json"))).contains("widthMm", "sizeAsked");
        interact(() -> state.size.forget(file)); // as on another day
        open(file);
        untilWide(280);
        assertThat(asks()).isFalse();
        assertThat(state.history.get().size()).isEqualTo(PictureSize.wide(280));
    }

    @Test
    void aDrawingIsAskedAboutByTheKeysAlone() throws Exception {
        Path file = Files.writeString(
                folder.resolve("mark.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 200 100'><rect width='90' height='90'/></svg>");
        open(file);
        assertThat(text("#size-asks")).startsWith("This drawing does not say how large it is");
        press(KeyCode.ESCAPE).release(KeyCode.ESCAPE);
        until(() -> !asks());
        press(KeyCode.Z).release(KeyCode.Z);
        until(this::asks);
        WaitForAsyncUtils.waitForFxEvents();
        assertThat(lookup("#size-width").query().isFocused()).isTrue();
        write("12in");
        press(KeyCode.ENTER).release(KeyCode.ENTER);
        untilWide(304.8);
        assertThat(asks()).isFalse();
        assertThat(state.history.undoable().get()).isEqualTo("make the artwork 304.8 mm wide");
    }

    @Test
    void aWidthThatWasNotKeptIsAskedForAgainAndAnUntouchedOneIsNot() throws Exception {
        Path file = png();
        open(file);
        clickOn("#size-keep");
        open(file);
        assertThat(asks()).isFalse();
        interact(() -> window.askForSize());
        type("100");
        clickOn("#size-set");
        untilWide(100);
        open(file);
        untilWide(50.8);
        until(this::asks);
    }

    @Test
    void whatIsNoWidthIsToldInPlainWordsAndNothingChanges() throws Exception {
        open(png());
        for (String wrong : new String[] {"0", "-5", "1e9", "1000000000", "wide", "", "20001"}) {
            type(wrong);
            clickOn("#size-set");
            assertThat(text("#size-words"))
                    .as(wrong)
                    .matches("A width is 1\\.0 mm to 20000\\.0 mm\\.|Type the width as a number, such as 280\\.0\\.");
            assertThat(asks()).isTrue();
            assertThat(state.history.get().size()).isEqualTo(PictureSize.STATED);
        }
        clickOn("#size-keep");
        assertThat(asks()).isFalse();
        assertThat(widthMm()).isCloseTo(50.8, within(0.01));
        assertThat(state.unsaved.get()).isFalse();
    }

    @Test
    void whatIsWrongWithAWidthIsToldInTheUnitOfTheWindow() throws Exception {
        Path tall = Files.writeString(
                folder.resolve("tall.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 10 100'><rect width='9' height='9'/></svg>");
        open(tall);
        interact(() -> state.unit.set(LengthUnit.INCH));
        type("0.03");
        assertThat(text("#size-words")).isEqualTo("A width is 0.04 in to 787.40 in.");
        type("wide");
        assertThat(text("#size-words")).isEqualTo("Type the width as a number, such as 11.02.");
        type("100");
        assertThat(text("#size-words"))
                .isEqualTo("tall.svg would be 100.00 × 1000.00 in at that width: more than 787.40 in."
                        + " Choose a smaller one.");
        for (String limit : new String[] {"0.04", "78.74"}) {
            type(limit);
            assertThat(text("#size-words")).as(limit).startsWith("10 × 100 px, ");
        }
        interact(() -> state.unit.set(LengthUnit.MM));
        type("2000.1");
        assertThat(text("#size-words")).startsWith("tall.svg would be 2000.1 × 20001.0 mm at that width: more than ");
    }

    @Test
    void allOfTheQuestionFitsTheSmallestWindow() throws Exception {
        open(png());
        type("1000000000");
        WaitForAsyncUtils.waitForFxEvents();
        Bounds bar = lookup("#size-bar").query().getBoundsInLocal();
        for (String part : new String[] {"#size-width", "#size-height", "#size-set", "#size-keep"}) {
            Bounds at = lookup(part).query().getBoundsInParent();
            assertThat(at.getMaxX()).as(part).isLessThanOrEqualTo(bar.getWidth());
        }
    }
}
