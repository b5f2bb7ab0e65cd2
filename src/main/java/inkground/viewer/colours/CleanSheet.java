package inkground.viewer.colours;

import inkground.app.AssignmentFile;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.Rule;
import inkground.viewer.desk.WriteDesk;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Sheet;
import inkground.viewer.ui.TargetField;
import inkground.viewer.ui.Ui;
import inkground.viewer.ui.WritingRow;
import java.nio.file.Path;
import java.util.stream.Collectors;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;

/** Asks where the clean file goes, says what will be done to it, and shows it being written. */
public final class CleanSheet extends Sheet {
    private final ViewerState state;
    private final WriteDesk desk;
    private final Label summary = Ui.label("", "note");
    private final TargetField target = new TargetField("clean", "Where to write the clean file", "PDF", "*.pdf");
    private final WritingRow progress;

    /** Closed. */
    public CleanSheet(ViewerState state, WriteDesk desk) {
        super("clean-sheet", "Write a clean file", state.colours.cleanSheet);
        this.state = state;
        this.desk = desk;
        summary.setWrapText(true);
        summary.setMaxWidth(480);
        summary.setId("clean-summary");
        Label words = Ui.label("", "sheet-trouble");
        words.setId("clean-trouble");
        words.setWrapText(true);
        words.setMaxWidth(480);
        words.textProperty().bind(Bindings.when(state.trouble.isNull()).then("").otherwise(state.trouble));
        progress = new WritingRow("clean", state.activities);
        GridPane fields = new GridPane();
        fields.getStyleClass().add("fields");
        row(fields, "File", target);
        getChildren().addAll(summary, fields, words, progress, buttons());
    }

    private HBox buttons() {
        Button write = new Button("Write clean file");
        write.setId("clean-write");
        write.defaultButtonProperty().bind(visibleProperty());
        write.setOnAction(e -> write());
        write.disableProperty().bind(progress.visibleProperty());
        Button close = new Button("Close");
        close.setId("clean-close");
        close.setOnAction(e -> close());
        HBox buttons = new HBox(Ui.spring(), close, write);
        buttons.getStyleClass().add("row");
        return buttons;
    }

    @Override
    protected void opened() {
        state.trouble.set(null);
        summary.setText(summary());
        target.suggest(suggestion());
    }

    private Path suggestion() {
        Path artwork = state.file.get().path().toAbsolutePath();
        String name = artwork.getFileName().toString().replaceFirst("\\.[^.]*$", "");
        return artwork.resolveSibling(name + "-clean.pdf");
    }

    private String summary() {
        String bare = state.history.get().assignment().rules().stream()
                .filter(rule -> rule.to() instanceof Bare)
                .map(Rule::from)
                .map(AssignmentFile::words)
                .collect(Collectors.joining(", "));
        return "A copy of this PDF, all pages, in which " + bare
                + " prints nothing. Objects of that colour are taken out;"
                + " where they lay on other paint, it is clipped, so that nothing comes to light. Vectors, type, inks, boxes"
                + " and layers stay. The copy is then painted again and compared with this proof, and kept only if all its"
                + " inks agree. Other colour rules are not written into it.";
    }

    private void write() {
        if (target.trouble().isPresent()) {
            state.trouble.set(target.trouble().get());
        } else {
            desk.clean(target.path().get(), target.replaces());
        }
    }

    private void close() {
        progress.stop();
        state.trouble.set(null);
        state.colours.cleanSheet.set(false);
    }
}
