package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.javafx.scene.input.DragboardHelper;
import com.sun.javafx.tk.TKClipboard;
import inkground.app.Arrangement;
import inkground.app.Session;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.Rule;
import inkground.viewer.state.BenchView;
import java.io.File;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import javafx.event.Event;
import javafx.event.EventType;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.input.DataFormat;
import javafx.scene.input.DragEvent;
import javafx.scene.input.Dragboard;
import javafx.scene.input.TransferMode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Files dragged from outside over the window and let go there, with the events of the toolkit and a dragboard as another program
 * fills it; no screen hands over drags from outside where there is none.
 */
class DropTest extends FakeWindow {
    /** @return a dragboard that offers something to be copied */
    private static Dragboard holding(DataFormat format, Object what) {
        Map<String, Object> answers = Map.of(
                "getTransferModes", Set.of(TransferMode.COPY), "getContentTypes", Set.of(format), "getContent", what);
        return DragboardHelper.createDragboard((TKClipboard) Proxy.newProxyInstance(
                DropTest.class.getClassLoader(),
                new Class<?>[] {TKClipboard.class},
                (proxy, method, args) -> switch (method.getName()) {
                    case "hasContent" -> format.equals(args[0]);
                    case "getContent" -> format.equals(args[0]) ? what : null;
                    default -> answers.get(method.getName());
                }));
    }

    /**
     * Drags over a node and lets go there, where it is accepted.
     *
     * @return whether it was accepted, and taken
     */
    private boolean drop(Node target, DataFormat format, Object what) {
        boolean[] taken = new boolean[1];
        interact(() -> {
            Dragboard board = holding(format, what);
            DragEvent over = event(target, board, DragEvent.DRAG_OVER);
            Event.fireEvent(target, over);
            if (over.isAccepted()) {
                DragEvent dropped = event(target, board, DragEvent.DRAG_DROPPED);
                dropped.acceptTransferModes(TransferMode.COPY);
                Event.fireEvent(target, dropped);
                taken[0] = dropped.isDropCompleted();
            }
        });
        return taken[0];
    }

    private static DragEvent event(Node target, Dragboard board, EventType<DragEvent> type) {
        Point2D at = target.localToScene(10, 10);
        return new DragEvent(
                null,
                target,
                type,
                board,
                at.getX(),
                at.getY(),
                at.getX(),
                at.getY(),
                TransferMode.COPY,
                null,
                null,
                null);
    }

    private boolean dropOnSurface(Path... files) {
        List<File> all = Stream.of(files).map(Path::toFile).toList();
        return drop(window.surface(), DataFormat.FILES, all);
    }

    private Path file(String name) throws Exception {
        return Files.writeString(folder.resolve(name), "%PDF-fake");
    }

    private String told() {
        return lookup("#trouble-words").queryLabeled().getText();
    }

    @Test
    void artworkIsOpenedAndAnotherTakesItsPlace() throws Exception {
        until(() -> !state.substrates.isEmpty());
        Path shirt = file("shirt.pdf");
        assertThat(drop(lookup("#start").query(), DataFormat.FILES, List.of(shirt.toFile())))
                .isTrue();
        until(() -> window.surface().complete());
        assertThat(state.file.get().path()).isEqualTo(shirt);
        Path poster = file("poster.pdf");
        assertThat(dropOnSurface(poster)).isTrue();
        until(() -> state.file.get().path().equals(poster) && window.surface().complete());
        assertThat(engine.openFiles).hasValue(1);
    }

    @Test
    void anEarlierRevisionIsComparedWhereItIsDroppedOnTheComparison() throws Exception {
        openArtwork();
        interact(() -> state.view.set(BenchView.COMPARE));
        Path earlier = file("earlier.pdf");
        Node bench = lookup("#compare").query();
        assertThat(drop(bench, DataFormat.FILES, List.of(earlier.toFile()))).isTrue();
        until(() -> state.comparison.report.get() != null);
        assertThat(state.comparison.file.get().path()).isEqualTo(earlier);
        assertThat(state.file.get().path()).hasFileName("regatta.pdf");
    }

    @Test
    void anApprovalRecordIsComparedWithWhereverItIsDropped() throws Exception {
        openArtwork();
        Path record = Files.writeString(folder.resolve("client.approved.zip"), FakeEngine.RECORD);
        assertThat(dropOnSurface(record)).isTrue();
        until(() -> state.comparison.report.get() != null);
        assertThat(state.comparison.approved.get()).isNotNull();
    }

    @Test
    void theRulesKeptBesideAnotherArtworkAreTaken() throws Exception {
        Path rules = file("other.pdf.inkground.json");
        ColourAssignment navyIsBare = new ColourAssignment(List.of(new Rule(FakeColours.GROUND.source(), new Bare())));
        engine.sessions.put(rules, new Session(Arrangement.AS_FILED.assigning(navyIsBare), Optional.empty()));
        assertThat(dropOnSurface(rules)).isTrue();
        assertThat(told()).startsWith("Open the artwork first; then other.pdf.inkground.json");
        openArtwork();
        assertThat(dropOnSurface(rules)).isTrue();
        until(() -> state.history.get().assignment().equals(navyIsBare));
        assertThat(state.history.undoable().get()).isEqualTo("take the colour rules of other.pdf.inkground.json");
    }

    @ParameterizedTest
    @ValueSource(strings = {"press.icc", "measured.CXF", "house.gpl", "chart.cgats"})
    void colourDataIsNoArtworkAndOneIsToldWhereItBelongs(String name) throws Exception {
        openArtwork();
        assertThat(dropOnSurface(file(name))).isTrue();
        assertThat(told()).startsWith(name + " is colour data, not artwork.").contains("'Own'", "--condition");
        assertThat(state.file.get().path()).hasFileName("regatta.pdf");
        assertThat(engine.openFiles).hasValue(1);
    }

    @Test
    void aCharacterisationFileIsKnownByItsContent() throws Exception {
        openArtwork();
        Path data = Files.writeString(
                folder.resolve("press.txt"),
                "ORIGINATOR \"invented for tests\"\r\nBEGIN_DATA_FORMAT\r\nCMYK_C LAB_L\r\nEND_DATA_FORMAT\r\n");
        assertThat(dropOnSurface(data)).isTrue();
        assertThat(told()).startsWith("press.txt is colour data, not artwork.").contains("--condition");
        assertThat(state.file.get().path()).hasFileName("regatta.pdf");
    }

    @Test
    void aFolderAndALetterAreToldInPlainWordsAndWhatIsOpenStays() throws Exception {
        openArtwork();
        Path client = Files.createDirectory(folder.resolve("client"));
        assertThat(dropOnSurface(client)).isTrue();
        assertThat(told()).isEqualTo("client is a folder. Drop the artwork in it, one file at a time.");
        Path letter = Files.writeString(folder.resolve("letter.txt"), "Dear printer");
        assertThat(dropOnSurface(letter)).isTrue();
        until(() -> told().startsWith("letter.txt is not a PDF."));
        assertThat(state.file.get().path()).hasFileName("regatta.pdf");
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.INK_RGB[0]);
    }

    @Test
    void amongManyFilesTheArtworkIsTaken() throws Exception {
        until(() -> !state.substrates.isEmpty());
        Path shirt = file("shirt.PDF");
        Path letter = Files.writeString(folder.resolve("letter.txt"), "Dear printer");
        assertThat(dropOnSurface(Files.createDirectory(folder.resolve("client")), letter, file("press.icc"), shirt))
                .isTrue();
        until(() -> window.surface().complete());
        assertThat(state.file.get().path()).isEqualTo(shirt);
    }

    @Test
    void wordsAreNotAccepted() {
        assertThat(drop(window.surface(), DataFormat.PLAIN_TEXT, "Dear printer"))
                .isFalse();
    }
}
