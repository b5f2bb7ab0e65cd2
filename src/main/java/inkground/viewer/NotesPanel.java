package inkground.viewer;

import inkground.substrate.PrintProcess;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javafx.beans.Observable;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** What to bear in mind while looking: what is not shown exactly, and what the substrate asks for. */
final class NotesPanel extends ScrollPane {
    /** Stands wherever colour is shown for approval. */
    static final String NOT_A_CONTRACT_PROOF = "Approximate: not a contract proof (ISO 12647-7)";

    private final ViewerState state;
    private final VBox lines = new VBox();
    private final ChoiceBox<PrintProcess> process = new ChoiceBox<>();

    NotesPanel(ViewerState state) {
        super();
        this.state = state;
        setId("notes");
        getStyleClass().add("notes");
        lines.getStyleClass().add("notes-lines");
        process();
        setContent(lines);
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        setFocusTraversable(false);
        state.page.addListener((Observable o) -> fill());
        // Rasterising may bring up more.
        state.figures.addListener((Observable o) -> fill());
        state.substrate.addListener((Observable o) -> fill());
        state.overlays.process.addListener((Observable o) -> fill());
        fill();
    }

    private void process() {
        process.setId("process");
        process.setMaxWidth(Double.MAX_VALUE);
        process.setConverter(new StringConverter<>() {
            @Override
            public String toString(PrintProcess is) {
                return is == null ? "" : is.name();
            }

            @Override
            public PrintProcess fromString(String name) {
                throw new UnsupportedOperationException("processes are chosen, not typed");
            }
        });
        process.setItems(state.overlays.processes);
        process.valueProperty().bindBidirectional(state.overlays.process);
        process.setAccessibleText("Way of printing");
        Ui.tip(
                process,
                "How the job is printed: sets the limits that maps and lines go by. Your printer's figures win.");
    }

    private void fill() {
        List<Label> all = new ArrayList<>();
        OpenPage page = state.page.get();
        all.add(Ui.label("Bear in mind", "title"));
        all.add(Ui.label(NOT_A_CONTRACT_PROOF, "note", "note-first"));
        PrintProcess by = state.overlays.process.get();
        if (by != null) {
            Stream.of(by.notes(), by.cautions()).flatMap(List::stream).forEach(note -> all.add(Ui.label(note, "note")));
            all.add(Ui.label("Limits of " + by.name() + ": " + by.source(), "note"));
        }
        if (page != null) {
            page.notes().forEach(note -> all.add(Ui.label(sentence(note), "note")));
        }
        SubstrateCard card = state.substrate.get();
        if (card != null) {
            all.add(Ui.label("Colour of " + card.name() + ": " + card.source(), "note"));
            card.cautions().forEach(caution -> all.add(Ui.label(caution, "note")));
        }
        all.forEach(label -> label.setWrapText(true));
        lines.getChildren().setAll(all);
        lines.getChildren().add(1, process);
    }

    private static String sentence(String note) {
        return note.isEmpty() ? note : Character.toUpperCase(note.charAt(0)) + note.substring(1);
    }
}
