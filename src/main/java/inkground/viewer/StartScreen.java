package inkground.viewer;

import inkground.viewer.desk.FileDesk;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import java.nio.file.Path;
import javafx.beans.Observable;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.feather.Feather;

/** What the surface shows before there is a file: a sheet to drop one on, and the ways to one. */
final class StartScreen extends VBox {
    private final ViewerState state;
    private final FileDesk files;
    private final VBox recent = new VBox();

    /**
     * @param open asks for a file
     */
    StartScreen(ViewerState state, FileDesk files, Runnable open) {
        this.state = state;
        this.files = files;
        setId("start");
        getStyleClass().add("start");
        setAlignment(Pos.CENTER);
        setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
        HBox ways = new HBox(Ui.button("start-open", "Open artwork", Feather.FOLDER, Command.OPEN, open));
        ways.getStyleClass().add("ways");
        ways.setAlignment(Pos.CENTER);
        files.demo().ifPresent(demo -> ways.getChildren().add(demo(demo)));
        recent.getStyleClass().add("recent");
        getChildren()
                .addAll(
                        Ui.label("Drop artwork here", "start-title"),
                        Ui.label("to see its inks lie on paper or cloth", "start-words"),
                        ways,
                        recent);
        state.recent.addListener((Observable o) -> fill());
        state.file.addListener((Observable o) -> Ui.shown(this, state.file.get() == null));
        fill();
    }

    private Button demo(Path demo) {
        Button button = new Button("Open the demo");
        button.setId("start-demo");
        Ui.tip(button, "A regatta shirt of our own invention, in three spot inks");
        button.setOnAction(e -> files.open(demo));
        return button;
    }

    private void fill() {
        recent.getChildren().clear();
        if (!state.recent.isEmpty()) {
            recent.getChildren().add(Ui.label("Opened before", "caption"));
        }
        for (Path file : state.recent) {
            Hyperlink link = new Hyperlink(file.getFileName().toString());
            link.setOnAction(e -> files.open(file));
            Ui.tip(link, file.toString());
            recent.getChildren().add(link);
        }
    }
}
