package inkground.viewer.ui;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import javafx.beans.Observable;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;

/** Asks where a file is to be written, and whether a file that is there may be replaced. */
public final class TargetField extends VBox {
    private final TextField target = new TextField();
    private final CheckBox replace = new CheckBox("Replace the file that is there");
    private final String title;
    private final String kind;
    private final String pattern;

    /**
     * For a PNG picture.
     *
     * @param id that the ids of its parts begin with
     * @param title of the system's dialog
     */
    public TargetField(String id, String title) {
        this(id, title, "PNG picture", "*.png");
    }

    /**
     * @param id that the ids of its parts begin with
     * @param title of the system's dialog
     * @param kind of the file, in words
     * @param pattern of its name
     */
    public TargetField(String id, String title, String kind, String pattern) {
        this.title = title;
        this.kind = kind;
        this.pattern = pattern;
        getStyleClass().add("fields-part");
        target.setId(id + "-target");
        target.setPrefColumnCount(26);
        target.setAccessibleText(title);
        Ui.tip(target, "Name of the file, with its folder");
        HBox.setHgrow(target, Priority.ALWAYS);
        replace.setId(id + "-replace");
        Button choose = new Button("Choose…");
        choose.setOnAction(e -> choose());
        choose.setMinWidth(USE_PREF_SIZE);
        HBox row = new HBox(target, choose);
        row.getStyleClass().add("row");
        getChildren().addAll(row, replace);
        target.textProperty().addListener((Observable o) -> follow());
    }

    /** Begins anew with a suggestion, the caret at its end. */
    public void suggest(Path path) {
        target.setText(path.toString());
        replace.setSelected(false);
        follow();
        target.requestFocus();
        target.end(); // of a long path, the name is seen
    }

    private void follow() {
        boolean exists = path().map(Files::exists).orElse(false);
        replace.setDisable(!exists);
        if (!exists) {
            replace.setSelected(false);
        }
    }

    /** @return the file; empty while there is no name that can be one */
    public Optional<Path> path() {
        try {
            String text = target.getText().strip();
            return text.isEmpty() ? Optional.empty() : Optional.of(Path.of(text));
        } catch (InvalidPathException e) {
            return Optional.empty();
        }
    }

    /** @return whether an existing file may be replaced */
    public boolean replaces() {
        return replace.isSelected();
    }

    /** @return what stands in the way of writing, for the user; empty when nothing does */
    public Optional<String> trouble() {
        if (path().isEmpty()) {
            return Optional.of("File: give the name of the file to write.");
        }
        return Files.exists(path().get()) && !replace.isSelected()
                ? Optional.of(
                        "There is a file of this name. Tick 'Replace the file that is there', or give another name.")
                : Optional.empty();
    }

    private void choose() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(title);
        chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter(kind, pattern));
        path().ifPresent(p -> chooser.setInitialFileName(p.getFileName().toString()));
        Optional.ofNullable(chooser.showSaveDialog(getScene().getWindow()))
                .ifPresent(f -> target.setText(f.toString()));
    }
}
