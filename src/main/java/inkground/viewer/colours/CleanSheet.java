package inkground.viewer.colours;

import inkground.app.AssignmentFile;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.Rule;
import inkground.viewer.desk.ProofDesk;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Activity;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Sheet;
import inkground.viewer.ui.Ui;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.beans.Observable;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.stage.FileChooser;
import org.kordamp.ikonli.feather.Feather;

/** Asks where the clean file goes, says what will be done to it, and shows it being written. */
public final class CleanSheet extends Sheet {
    private final ViewerState state;
    private final ProofDesk desk;
    private final Label summary = Ui.label("", "note");
    private final TextField target = new TextField();
    private final CheckBox replace = new CheckBox("Replace the file that is there");
    private final Label words = Ui.label("", "sheet-trouble");
    private final HBox progress = new HBox();
    private Activity writing;

    /** Closed. */
    public CleanSheet(ViewerState state, ProofDesk desk) {
        super("clean-sheet", "Write a clean file", state.colours.cleanSheet);
        this.state = state;
        this.desk = desk;
        summary.setWrapText(true);
        summary.setMaxWidth(480);
        summary.setId("clean-summary");
        target.setId("clean-target");
        target.setPrefColumnCount(30);
        target.setAccessibleText("Where to write the clean file");
        Ui.tip(target, "Name of the file, with its folder");
        replace.setId("clean-replace");
        words.setId("clean-trouble");
        words.setWrapText(true);
        words.setMaxWidth(480);
        words.textProperty().bind(Bindings.when(state.trouble.isNull()).then("").otherwise(state.trouble));
        progress.getStyleClass().add("work");
        Button choose = new Button("Choose…");
        choose.setOnAction(e -> choose());
        choose.setMinWidth(USE_PREF_SIZE);
        HBox.setHgrow(target, Priority.ALWAYS);
        HBox file = new HBox(Ui.label("File"), target, choose);
        file.getStyleClass().add("row");
        file.setAlignment(Pos.CENTER_LEFT);
        getChildren().addAll(summary, file, replace, words, progress, buttons());
        target.textProperty().addListener((Observable o) -> follow());
        state.activities.addListener((Observable o) -> progress());
        progress();
    }

    private HBox buttons() {
        Button write = new Button("Write clean file");
        write.setId("clean-write");
        write.getStyleClass().add("leading");
        write.setOnAction(e -> write());
        write.disableProperty().bind(progress.visibleProperty());
        target.setOnAction(e -> write.fire());
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
        replace.setSelected(false);
        target.setText(suggestion().toString());
        summary.setText(summary());
        follow();
        target.requestFocus();
        target.end();
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

    private void follow() {
        boolean exists = path().map(Files::exists).orElse(false);
        replace.setDisable(!exists);
        if (!exists) {
            replace.setSelected(false);
        }
    }

    private Optional<Path> path() {
        try {
            String text = target.getText().strip();
            return text.isEmpty() ? Optional.empty() : Optional.of(Path.of(text));
        } catch (InvalidPathException e) {
            return Optional.empty();
        }
    }

    private void choose() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle("Where to write the clean file");
        chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter("PDF", "*.pdf"));
        path().ifPresent(p -> chooser.setInitialFileName(p.getFileName().toString()));
        Optional.ofNullable(chooser.showSaveDialog(getScene().getWindow()))
                .ifPresent(f -> target.setText(f.toString()));
    }

    private void write() {
        if (path().isEmpty()) {
            state.trouble.set("File: give the name of the PDF file to write.");
        } else if (Files.exists(path().get()) && !replace.isSelected()) {
            state.trouble.set(
                    "There is a file of this name. Tick 'Replace the file that is there', or give another name.");
        } else {
            writing = desk.clean(path().get(), replace.isSelected());
            progress();
        }
    }

    private void close() {
        if (writing != null) {
            writing.cancel();
        }
        state.trouble.set(null);
        state.colours.cleanSheet.set(false);
    }

    private void progress() {
        boolean busy = writing != null && state.activities.contains(writing);
        if (!busy) {
            writing = null;
        } else if (progress.getChildren().isEmpty()) {
            ProgressBar bar = new ProgressBar();
            bar.progressProperty().bind(writing.fraction());
            Label what = new Label();
            what.textProperty().bind(writing.what());
            progress.setAlignment(Pos.CENTER_LEFT);
            progress.getChildren()
                    .setAll(
                            bar,
                            what,
                            Ui.spring(),
                            Ui.button("clean-stop", "Stop", Feather.X, Command.ESCAPE, writing::cancel));
        }
        if (!busy) {
            progress.getChildren().clear();
        }
        Ui.shown(progress, busy);
    }
}
