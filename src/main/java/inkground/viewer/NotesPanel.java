package inkground.viewer;

import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.Observable;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.VBox;

/** What to bear in mind while looking: what is not shown exactly, and what the substrate asks for. */
final class NotesPanel extends ScrollPane {
    /** Stands wherever colour is shown for approval. */
    static final String NOT_A_CONTRACT_PROOF = "Approximate: not a contract proof (ISO 12647-7)";

    private final ViewerState state;
    private final VBox lines = new VBox();

    NotesPanel(ViewerState state) {
        super();
        this.state = state;
        setId("notes");
        getStyleClass().add("notes");
        lines.getStyleClass().add("notes-lines");
        setContent(lines);
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        setFocusTraversable(false);
        state.page.addListener((Observable o) -> fill());
        // Rasterising may bring up more.
        state.figures.addListener((Observable o) -> fill());
        state.substrate.addListener((Observable o) -> fill());
        fill();
    }

    private void fill() {
        List<Label> all = new ArrayList<>();
        OpenPage page = state.page.get();
        all.add(Ui.label("Bear in mind", "title"));
        all.add(Ui.label(NOT_A_CONTRACT_PROOF, "note", "note-first"));
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
    }

    private static String sentence(String note) {
        return note.isEmpty() ? note : Character.toUpperCase(note.charAt(0)) + note.substring(1);
    }
}
