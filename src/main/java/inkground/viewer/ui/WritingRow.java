package inkground.viewer.ui;

import inkground.viewer.task.Activity;
import java.util.Optional;
import javafx.beans.Observable;
import javafx.collections.ObservableList;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import org.kordamp.ikonli.feather.Feather;

/** Shows a file being written, with its cancel button; not there while none is. */
public final class WritingRow extends HBox {
    private final ObservableList<Activity> activities;
    private final String id;
    private Activity writing;

    /**
     * @param id that the id of its button begins with
     * @param activities work that is under way
     */
    public WritingRow(String id, ObservableList<Activity> activities) {
        this.id = id;
        this.activities = activities;
        getStyleClass().add("work");
        setAlignment(Pos.CENTER_LEFT);
        activities.addListener((Observable o) -> follow());
        follow();
    }

    private void follow() {
        Optional<Activity> now = activities.stream().filter(Activity::isExport).findFirst();
        writing = now.orElse(null);
        getChildren().clear();
        now.ifPresent(activity -> {
            ProgressBar bar = new ProgressBar();
            bar.progressProperty().bind(activity.fraction());
            Label what = new Label();
            what.textProperty().bind(activity.what());
            getChildren()
                    .setAll(
                            bar,
                            what,
                            Ui.spring(),
                            Ui.button(id + "-stop", "Stop", Feather.X, Command.ESCAPE, activity::cancel));
        });
        Ui.shown(this, now.isPresent());
    }

    /** Stops the writing, if there is any. */
    public void stop() {
        if (writing != null) {
            writing.cancel();
        }
    }
}
