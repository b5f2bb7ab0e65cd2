package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.viewer.state.BenchView;
import inkground.viewer.state.Comparison;
import inkground.viewer.surface.ProofSurface;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.scene.control.TextField;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;

/** Keeping a page as approved, and comparing with what was. */
class ApprovedTest extends FakeWindow {
    private Path record(String name) throws Exception {
        return Files.writeString(folder.resolve(name), FakeEngine.RECORD);
    }

    @Test
    void whatIsSeenIsKeptAsApprovedUnderANameOfItsOwn() throws Exception {
        openArtwork();
        interact(() -> {
            state.substrate.set(FakeEngine.NAVY);
            state.printing.toggleUnderbase();
            state.toggleHidden(1);
        });
        push(KeyCode.CONTROL, KeyCode.K);
        assertThat(shows("#approve-sheet")).isTrue();
        assertThat(lookup("#approve-summary").queryLabeled().getText())
                .contains("regatta.pdf on Navy jersey, 2 of 3 inks, on a white underbase", "Not a contract proof");
        Path target = folder.resolve("regatta.pdf.approved.zip");
        assertThat(lookup("#approve-target").<TextField>query().getText()).isEqualTo(target.toString());
        write("Ada Reach");
        clickOn("#approve-write");
        until(() -> !state.comparison.approveSheet.get());
        assertThat(target).exists();
        assertThat(state.news.get()).isEqualTo("Kept as approved: " + target);
        assertThat(engine.approved.by()).contains("Ada Reach");
        assertThat(engine.approved.hiddenInks()).isEqualTo(Set.of("River Teal"));
        assertThat(engine.approved.arrangement().underbase()).isPresent();
        assertThat(engine.approved.worn()).isEqualTo(Optional.empty());

        engine.approved = null;
        push(KeyCode.CONTROL, KeyCode.K);
        clickOn("#approve-write");
        assertThat(lookup("#approve-trouble").queryLabeled().getText()).contains("There is a file of this name");
        assertThat(engine.approved).isNull();
        push(KeyCode.ESCAPE);
        assertThat(shows("#approve-sheet")).isFalse();
        Files.delete(target);
    }

    @Test
    void keepingCanBeStopped() throws Exception {
        openArtwork();
        engine.exportWaits = true;
        push(KeyCode.CONTROL, KeyCode.K);
        clickOn("#approve-write");
        until(() -> lookup("#approve-stop").tryQuery().isPresent());
        clickOn("#approve-stop");
        until(() -> state.activities.isEmpty());
        assertThat(folder.resolve("regatta.pdf.approved.zip")).doesNotExist();
        assertThat(shows("#approve-sheet")).isTrue();
    }

    @Test
    void aRecordThatIsDroppedIsComparedWithAndStaysAsItWasApproved() throws Exception {
        openArtwork();
        interact(() -> state.overprint.set(true));
        Path record = record("client.approved.zip");
        interact(() -> window.drop().take(List.of(record.toFile())));
        until(() -> state.comparison.report.get() != null);
        assertThat(state.view.get()).isEqualTo(BenchView.COMPARE);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.NAVY);
        assertThat(lookup("#caption-earlier").queryLabeled().getText())
                .isEqualTo("approved 26 Nov 2026 by Ada: as-approved.pdf");
        assertThat(lookup("#caption-open").queryLabeled().getText()).isEqualTo("open: regatta.pdf");
        interact(() -> {
            state.substrate.set(FakeEngine.SAND);
            state.printing.toggleUnderbase();
        });
        until(() -> state.comparison.report.get() != null);
        assertThat(engine.compared.look().substrateId()).isEqualTo("sand-canvas");
        assertThat(lookup("underbase: none → 100 % white of opacity 0.85, 1 hit")
                        .tryQuery())
                .isPresent();
        ProofSurface left = lookup("#surface-earlier").query();
        ProofSurface right = lookup("#surface-open").query();
        until(() -> left.complete() && right.complete());
        assertThat(cloth(left)).isEqualTo(FakeEngine.NAVY.argb() & 0xffffff);
        assertThat(cloth(right)).isEqualTo(FakeEngine.SAND.argb() & 0xffffff);
        Path revision = Files.writeString(folder.resolve("earlier.pdf"), "%PDF-fake");
        interact(() -> desk.comparison().open(revision));
        until(() -> state.comparison.approved.get() == null && state.comparison.report.get() != null);
        assertThat(lookup("#caption-earlier").queryLabeled().getText()).isEqualTo("earlier: earlier.pdf");
        interact(() -> state.comparison.way.set(Comparison.Way.BESIDE));
        until(() -> left.complete() && cloth(left) == (FakeEngine.SAND.argb() & 0xffffff));
        assertThat(engine.openFiles.get()).isEqualTo(2);
    }

    @Test
    void aRecordAloneIsNoArtworkToOpen() throws Exception {
        Path record = record("alone.approved.zip");
        interact(() -> window.drop().take(List.of(record.toFile())));
        assertThat(state.trouble.get()).startsWith("Open the artwork as it is now first");
    }

    /** @return colour of the page's corner, where no ink lies */
    private static int cloth(ProofSurface of) {
        WritableImage[] image = new WritableImage[1];
        Runnable shoot = () -> image[0] = of.snapshot(null, null);
        if (javafx.application.Platform.isFxApplicationThread()) {
            shoot.run();
        } else {
            org.testfx.util.WaitForAsyncUtils.asyncFx(shoot);
            org.testfx.util.WaitForAsyncUtils.waitForFxEvents();
        }
        return image[0].getPixelReader().getArgb((int) of.getWidth() / 2, (int) of.getHeight() / 2 + 95) & 0xffffff;
    }
}
