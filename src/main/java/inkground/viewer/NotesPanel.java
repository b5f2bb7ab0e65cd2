package inkground.viewer;

import inkground.substrate.PrintProcess;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import java.util.ArrayList;
import java.util.List;
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
    private final VBox notes = new VBox();
    private final ChoiceBox<PrintProcess> process = new ChoiceBox<>();

    NotesPanel(ViewerState state) {
        super();
        this.state = state;
        setId("notes");
        getStyleClass().add("notes");
        lines.getStyleClass().add("notes-lines");
        process();
        notes.getStyleClass().add("notes-list");
        Label first = note("note-first");
        first.setText(NOT_A_CONTRACT_PROOF);
        lines.getChildren().addAll(Ui.label("Bear in mind", "title"), process, first, notes);
        setContent(lines);
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        setFocusTraversable(false);
        Ui.paintDirectly(this);
        state.page.addListener((Observable o) -> fill());
        // Rasterising may bring up more.
        state.figures.addListener((Observable o) -> fill());
        state.following.told().addListener((Observable o) -> fill());
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
        List<String> all = new ArrayList<>();
        PrintProcess by = state.overlays.process.get();
        if (by != null) {
            all.addAll(by.notes());
            all.addAll(by.cautions());
            all.add("Limits of " + by.name() + ": " + by.source());
        }
        OpenPage page = state.page.get();
        if (page != null) {
            page.notes().forEach(note -> all.add(sentence(note)));
        }
        SubstrateCard card = state.following.told().get();
        if (card != null) {
            all.add("Colour of " + card.name() + ": " + card.source());
            all.addAll(card.cautions());
        }
        show(all);
    }

    /** Labels that are there take another text: most notes stay while one steps from substrate to substrate. */
    private void show(List<String> all) {
        while (notes.getChildren().size() < all.size()) {
            notes.getChildren().add(note());
        }
        notes.getChildren().remove(all.size(), notes.getChildren().size());
        for (int i = 0; i < all.size(); i++) {
            ((Label) notes.getChildren().get(i)).setText(all.get(i));
        }
    }

    private static Label note(String... styles) {
        Label label = Ui.label("", "note");
        label.getStyleClass().addAll(styles);
        label.setWrapText(true);
        return label;
    }

    private static String sentence(String note) {
        return note.isEmpty() ? note : Character.toUpperCase(note.charAt(0)) + note.substring(1);
    }
}
