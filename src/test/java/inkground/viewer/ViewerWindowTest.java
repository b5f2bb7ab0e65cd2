package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.Rule;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.Camera;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.Theme;
import inkground.viewer.surface.ProofSurface;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;

/** Acts on the window as a user does, over an engine whose colours are known by construction. */
class ViewerWindowTest extends FakeWindow {
    @Test
    void theStartScreenGivesWayToTheArtworkAndTheTitleIsTheFileName() throws Exception {
        assertThat(shows("#start")).isTrue();
        openArtwork();
        assertThat(shows("#start")).isFalse();
        assertThat(stage.getTitle()).startsWith("regatta.pdf");
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.INK_RGB[0]);
        assertThat(rgbAt(10, 10)).isEqualTo(FakeEngine.PAPER.argb() & 0xffffff);
    }

    @Test
    void theArrowKeysStepTheGarmentWithoutRasterisingAnew() throws Exception {
        openArtwork();
        int renders = engine.renders.get();
        push(KeyCode.RIGHT);
        assertThat(rgbAt(10, 10)).isEqualTo(FakeEngine.NAVY.argb() & 0xffffff);
        until(() -> state.following.told().get().equals(FakeEngine.NAVY)); // the words have followed
        push(KeyCode.RIGHT);
        assertThat(rgbAt(10, 10)).isEqualTo(FakeEngine.SAND.argb() & 0xffffff);
        push(KeyCode.LEFT);
        assertThat(rgbAt(10, 10)).isEqualTo(FakeEngine.NAVY.argb() & 0xffffff);
        assertThat(engine.renders).hasValue(renders);
    }

    @Test
    void aClickOnASwatchLaysTheArtworkOnIt() throws Exception {
        openArtwork();
        clickOn("#substrate-sand-canvas");
        assertThat(rgbAt(10, 10)).isEqualTo(FakeEngine.SAND.argb() & 0xffffff);
    }

    @Test
    void linesComeAndGoByClickAndKey() throws Exception {
        openArtwork();
        assertThat(shows("#line-trim")).isTrue();
        clickOn("#trim");
        assertThat(shows("#line-trim")).isFalse();
        push(KeyCode.B);
        assertThat(shows("#line-bleed")).isTrue();
        push(KeyCode.A);
        Label safe = lookup("#line-safe").query();
        assertThat(safe.getText()).contains("5.0 mm");
        push(KeyCode.I);
        assertThat(safe.getText()).contains("0.20 in");
    }

    @Test
    void soloShowsOneInkOnTheSubstrateAndEscapeBringsTheOthersBack() throws Exception {
        openArtwork();
        int renders = engine.renders.get();
        clickOn("#solo-1");
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.PAPER.argb() & 0xffffff);
        push(KeyCode.ESCAPE);
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.INK_RGB[0]);
        assertThat(engine.renders).hasValue(renders);
    }

    @Test
    void anInkIsChosenAndHiddenByKeysAlone() throws Exception {
        openArtwork();
        push(KeyCode.UP);
        push(KeyCode.UP);
        push(KeyCode.H);
        assertThat(state.hidden).containsExactly(0);
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.INK_RGB[2]);
        push(KeyCode.H);
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.INK_RGB[0]);
    }

    @Test
    void theBareMapComesWithALegendOfAreas() throws Exception {
        openArtwork();
        clickOn("#bare-map");
        assertThat(rgbAt(200, 130)).isEqualTo(0x808000);
        assertThat(shows("#map-legend")).isTrue();
        until(() -> lookup("knocked out").tryQuery().isPresent());
        assertThat(lookup("2.40 cm²").tryQuery()).isPresent();
        push(KeyCode.M);
        assertThat(shows("#map-legend")).isFalse();
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.INK_RGB[0]);
    }

    @Test
    void thePointerTellsItsPlaceAndTheInksUnderIt() throws Exception {
        openArtwork();
        pointAt(100, 200);
        Label inks = lookup("#inks-here").query();
        assertThat(inks.getText()).startsWith("inked").contains("River Teal 50").doesNotContain("Signal Red");
        Label place = lookup("#place").query();
        assertThat(place.getText()).startsWith("x 28.").endsWith("mm");
    }

    @Test
    void aProofIsWrittenWithTheColoursOnTheSurface() throws Exception {
        openArtwork();
        push(KeyCode.RIGHT);
        push(KeyCode.CONTROL, KeyCode.E);
        Path target = folder.resolve("proof.png");
        TextField field = lookup("#export-target").query();
        interact(() -> field.setText(target.toString()));
        TextField dpi = lookup("#export-dpi").query();
        interact(() -> dpi.setText("72"));
        clickOn("#export-write");
        until(() -> !state.exportSheet.get());
        BufferedImage proof = ImageIO.read(target.toFile());
        assertThat(proof.getWidth()).isEqualTo(360);
        assertThat(proof.getHeight()).isEqualTo(260);
        assertThat(proof.getRGB(180, 110) & 0xffffff).isEqualTo(FakeEngine.INK_RGB[0]);
        assertThat(proof.getRGB(2, 2)).isEqualTo(FakeEngine.NAVY.argb());
    }

    @Test
    void aProofIsNotWrittenOverAFileUnlessAskedTo() throws Exception {
        openArtwork();
        Path target = Files.writeString(folder.resolve("kept.png"), "kept");
        clickOn("#proof");
        TextField field = lookup("#export-target").query();
        interact(() -> field.setText(target.toString()));
        clickOn("#export-write");
        assertThat(lookup("#export-trouble").queryLabeled().getText()).contains("Replace");
        assertThat(target).hasContent("kept");
        clickOn("#export-replace");
        clickOn("#export-write");
        until(() -> !state.exportSheet.get());
        assertThat(ImageIO.read(target.toFile())).isNotNull();
    }

    @Test
    void writingAProofCanBeStopped() throws Exception {
        openArtwork();
        engine.exportWaits = true;
        clickOn("#proof");
        TextField field = lookup("#export-target").query();
        Path target = folder.resolve("stopped.png");
        interact(() -> field.setText(target.toString()));
        clickOn("#export-write");
        until(() -> lookup("#export-stop").tryQuery().isPresent());
        push(KeyCode.ESCAPE);
        until(() -> state.activities.isEmpty());
        assertThat(target).doesNotExist();
        assertThat(state.exportSheet.get()).isTrue();
        assertThat(state.trouble.get()).isNull();
    }

    @Test
    void aFileStaysOpenForTheProofOfItThatIsBeingWrittenWhileAnotherIsOpened() throws Exception {
        openArtwork();
        engine.exportWaits = true;
        clickOn("#proof");
        TextField field = lookup("#export-target").query();
        interact(() -> field.setText(folder.resolve("waiting.png").toString()));
        clickOn("#export-write");
        until(() -> lookup("#export-stop").tryQuery().isPresent());
        Path poster = Files.writeString(folder.resolve("poster.pdf"), "%PDF-fake");
        interact(() -> desk.files().open(poster));
        until(() -> state.file.get().path().equals(poster));
        assertThat(engine.openFiles).hasValue(2);
        interact(() -> desk.work().cancelAll());
        until(() -> engine.openFiles.get() == 1);
        assertThat(state.trouble.get()).isNull();
    }

    @Test
    void aFileThatIsNotAPdfIsRefusedInOneLineWhereTheEyeIs() throws Exception {
        Path letter = Files.writeString(folder.resolve("letter.txt"), "Dear printer");
        interact(() -> desk.files().open(letter));
        until(() -> state.trouble.get() != null);
        Label words = lookup("#trouble-words").query();
        assertThat(shows("#trouble")).isTrue();
        assertThat(words.getText()).startsWith("letter.txt is not a PDF.").doesNotContain("Exception");
        push(KeyCode.ESCAPE);
        assertThat(shows("#trouble")).isFalse();
    }

    @Test
    void slowRasterisingLeavesTheWindowAliveAndCanBeStopped() throws Exception {
        engine.gate = new CountDownLatch(1);
        Path file = Files.writeString(folder.resolve("slow.pdf"), "%PDF-fake");
        interact(() -> desk.files().open(file));
        until(() -> state.page.get() != null);
        push(KeyCode.RIGHT);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.NAVY);
        until(() -> shows("#work"));
        clickOn("#stop");
        until(() -> !shows("#work"));
        engine.gate.countDown();
        push(KeyCode.PLUS);
        until(() -> window.surface().complete());
    }

    @Test
    void workThatIsNoLongerLookedAtIsStoppedAndNoLongerTold() throws Exception {
        engine.gate = new CountDownLatch(1);
        Path file = Files.writeString(folder.resolve("slow.pdf"), "%PDF-fake");
        interact(() -> desk.files().open(file));
        until(() -> state.page.get() != null);
        for (BenchView looked : new BenchView[] {BenchView.FLAT, BenchView.GARMENT}) {
            interact(() -> {
                state.substrate.set(FakeEngine.NAVY);
                state.view.set(looked);
            });
            until(() -> shows("#work"));
            interact(() -> state.view.set(BenchView.COMPARE));
            until(() -> state.activities.isEmpty() && !shows("#work"));
        }
        engine.gate.countDown();
        interact(() -> state.view.set(BenchView.FLAT));
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.INK_RGB[0]);
    }

    @Test
    void ofSeveralDroppedFilesTheFirstPdfIsOpenedAndRemembered() throws Exception {
        Path letter = Files.writeString(folder.resolve("letter.txt"), "Dear printer");
        Path shirt = Files.writeString(folder.resolve("shirt.PDF"), "%PDF-fake");
        interact(() -> window.drop().take(List.of(letter.toFile(), shirt.toFile())));
        until(() -> window.surface().complete());
        assertThat(state.file.get().path()).isEqualTo(shirt);
        assertThat(state.recent).containsExactly(shirt.toAbsolutePath());
    }

    @Test
    void aLayerSwitchedOffIsMeasuredAnew() throws Exception {
        openArtwork();
        until(() -> state.figures.get() != null);
        Object before = state.figures.get();
        int renders = engine.renders.get();
        interact(() -> state.layersOn.clear());
        until(() -> state.figures.get() != null && state.figures.get() != before);
        assertThat(engine.renders.get()).isGreaterThan(renders);
    }

    @Test
    void pagesAreTurnedByKey() throws Exception {
        openArtwork();
        push(KeyCode.PAGE_DOWN);
        until(() -> state.page.get().info().number() == 2);
        push(KeyCode.PAGE_UP);
        until(() -> state.page.get().info().number() == 1);
    }

    @Test
    void theWheelZoomsAboutThePointer() throws Exception {
        openArtwork();
        pointAt(100, 200);
        double before = state.camera.get().zoom();
        scroll(3, javafx.geometry.VerticalDirection.UP);
        WaitForAsyncUtils.waitForFxEvents();
        assertThat(state.camera.get().zoom()).isNotEqualTo(before);
        assertThat(state.probe.get().xPt()).isBetween(98.0, 102.0);
        assertThat(state.probe.get().yPt()).isBetween(198.0, 202.0);
    }

    @Test
    void theThemeChangesThePanelsButNotTheGreyAroundTheProof() throws Exception {
        openArtwork();
        int outside = rgbAt(-20, 150);
        push(KeyCode.D);
        assertThat(state.theme.get()).isEqualTo(Theme.DARK);
        assertThat(rgbAt(-20, 150)).isEqualTo(outside).isEqualTo(0x767676);
    }

    @Test
    void whatWasDecidedIsKeptBesideTheFileAndTakenUpAgain() throws Exception {
        openArtwork();
        interact(() -> state.substrate.set(FakeEngine.NAVY));
        push(KeyCode.U);
        interact(() -> state.printing.move(2, 2));
        push(KeyCode.CONTROL, KeyCode.S);
        until(() -> !state.unsaved.get());
        interact(() -> {
            state.substrate.set(FakeEngine.PAPER);
            state.printing.move(2, 0);
        });
        assertThat(stage.getTitle()).contains("not kept");
        Path file = state.file.get().path();
        interact(() -> desk.files().open(file));
        until(() -> !state.unsaved.get() && window.surface().complete());
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.NAVY);
        assertThat(state.printing.order()).containsExactly(0, 1, 2);
        assertThat(state.printing.underbaseLies()).isTrue();
    }

    @Test
    void decisionsThatAreNotKeptAreAskedAboutBeforeTheyAreLost() throws Exception {
        openArtwork();
        interact(() -> state.printing.move(2, 2));
        Path other = Files.writeString(folder.resolve("other.pdf"), "%PDF-fake");
        interact(() -> window.drop().take(List.of(other.toFile())));
        assertThat(shows("#question")).isTrue();
        push(KeyCode.ESCAPE);
        assertThat(shows("#question")).isFalse();
        assertThat(state.file.get().path()).hasFileName("regatta.pdf");
        interact(() -> window.drop().take(List.of(other.toFile())));
        clickOn("#answer-0");
        until(() -> state.file.get() != null && state.file.get().path().endsWith("other.pdf"));
        assertThat(engine.sessions
                        .get(folder.resolve("regatta.pdf"))
                        .arrangement()
                        .printOrder())
                .containsExactly("Signal Red", "River Teal", "White");
    }

    @Test
    void aSessionThatCannotBeReadCostsOnlyTheSession() throws Exception {
        engine.sessions.put(folder.resolve("regatta.pdf"), null);
        openArtwork();
        assertThat(lookup("#trouble-words").queryLabeled().getText())
                .contains("not used")
                .contains("field 'rules'");
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.INK_RGB[0]);
    }

    @Test
    void aFileChangedByAnotherProgramIsReadAgainAndLookedAtInTheSamePlace() throws Exception {
        openArtwork();
        push(KeyCode.RIGHT);
        interact(() -> {
            state.zoom(3);
            state.toggleHidden(1);
        });
        var before = state.file.get();
        Camera seen = state.camera.get();
        Files.writeString(before.path(), "%PDF-fake, and a line more");
        until(() -> state.file.get() != before && window.surface().complete());
        assertThat(state.camera.get()).isEqualTo(seen);
        assertThat(state.hidden).containsExactly(1);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.NAVY);
        until(() -> engine.openFiles.get() == 1);
    }

    @Test
    void whatWasDecidedOutlivesASaveByAnotherProgram() throws Exception {
        engine.paintedGround = true;
        openArtwork();
        interact(() -> {
            state.substrate.set(FakeEngine.NAVY);
            state.history.change(
                    "print the ground as bare",
                    a -> a.assigning(new ColourAssignment(List.of(new Rule(FakeColours.GROUND.source(), new Bare())))));
            state.printing.move(2, 2);
            state.printing.toggleUnderbase();
        });
        until(() -> state.activities.isEmpty());
        var before = state.file.get();
        var decided = state.history.get();
        Files.writeString(before.path(), "%PDF-fake, saved once more");
        until(() -> state.file.get() != before && window.surface().complete());
        assertThat(state.history.get()).isEqualTo(decided);
        assertThat(rgbAt(10, 10)).isEqualTo(FakeEngine.NAVY.argb() & 0xffffff);
        assertThat(state.printing.order()).containsExactly(0, 1, 2);
        assertThat(state.unsaved.get()).isTrue();
        push(KeyCode.CONTROL, KeyCode.Z);
        assertThat(state.printing.underbaseLies()).as("can still be taken back").isFalse();
    }

    @Test
    void aMapTakesTheLimitThatIsTypedAndFollowsTheSubstrate() throws Exception {
        openArtwork();
        push(KeyCode.N);
        until(() -> lookup("#map-largest").queryLabeled().getText().contains("3.0"));
        assertThat(lookup("#map-legend .title").queryLabeled().getText()).isEqualTo("Ink reach on plain-paper");
        TextField limit = lookup("#map-limit").query();
        interact(limit::requestFocus);
        interact(() -> limit.setText("5.5"));
        until(() -> lookup("#map-largest").queryLabeled().getText().contains("5.5"));
        interact(() -> limit.setText("much"));
        assertThat(state.overlays.limitDe00.get()).isEqualTo(5.5);
        interact(() -> window.surface().requestFocus());
        assertThat(limit.getText()).isEqualTo("5.5");
        push(KeyCode.RIGHT);
        until(() -> lookup("#map-legend .title").queryLabeled().getText().contains("navy-jersey"));
        push(KeyCode.L);
        assertThat(state.overlays.map.get()).isEqualTo(MapKind.TOTAL_INK);
        push(KeyCode.L);
        assertThat(state.overlays.map.get()).isNull();
    }

    @Test
    void theWayOfPrintingSuitsTheSubstrateAndSetsTheLimits() throws Exception {
        openArtwork();
        assertThat(state.overlays.process.get().id()).isEqualTo("offset-paper");
        push(KeyCode.RIGHT);
        assertThat(state.overlays.process.get().on()).contains(inkground.substrate.Substrate.Kind.GARMENT);
        assertThat(state.overlays.totalInkPercent.get())
                .isEqualTo(state.overlays.process.get().maxTotalInkPercent());
    }

    @Test
    void twoRevisionsLieBesideAndOverEachOtherAndMoveTogether() throws Exception {
        openArtwork();
        push(KeyCode.CONTROL, KeyCode.DIGIT1);
        interact(() -> state.view.set(BenchView.COMPARE));
        assertThat(shows("#compare-open")).isTrue();
        Path earlier = Files.writeString(folder.resolve("approved.pdf"), "%PDF-fake");
        interact(() -> desk.comparison().open(earlier));
        until(() -> state.comparison.report.get() != null);
        assertThat(lookup("#changes-whole").queryLabeled().getText())
                .isEqualTo("6.25 cm² in another colour (5.4 %), by ΔE00 31.5 at most.");
        assertThat(lookup("12.5 → 10.0 cm²").tryQuery()).isPresent();
        assertThat(lookup("earlier: approved.pdf").tryQuery()).isPresent();
        ProofSurface left = lookup("#surface-earlier").query();
        ProofSurface right = lookup("#surface-open").query();
        until(() -> left.complete() && right.complete());
        assertThat(left.getWidth()).isEqualTo(right.getWidth());
        assertThat(pixel(left)).isEqualTo(FakeEngine.INK_RGB[0]);
        push(KeyCode.C);
        double whole = lookup("#compare").query().getLayoutBounds().getWidth();
        until(() -> left.getWidth() == whole && left.complete() && right.complete());
        interact(() -> lookup("#wipe-edge").query().requestFocus());
        var substrate = state.substrate.get();
        push(KeyCode.LEFT);
        assertThat(state.comparison.wipe.get()).isCloseTo(0.48, org.assertj.core.api.Assertions.within(1e-9));
        assertThat(state.substrate.get()).isEqualTo(substrate);
        push(KeyCode.C);
        until(() -> right.complete());
        // The engine of the tests paints every map in this colour.
        assertThat(pixel(right)).isEqualTo(0x808000);
        push(KeyCode.RIGHT);
        until(() -> state.comparison.report.get() != null);
        interact(() -> state.view.set(BenchView.FLAT));
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.INK_RGB[0]);
    }

    /** @return colour at the middle of a surface, where the disc is once the page is fitted */
    private int pixel(ProofSurface of) {
        WritableImage[] image = new WritableImage[1];
        interact(() -> image[0] = of.snapshot(null, null));
        return image[0].getPixelReader().getArgb((int) of.getWidth() / 2, (int) of.getHeight() / 2 - 10) & 0xffffff;
    }
}
