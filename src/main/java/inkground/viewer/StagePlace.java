package inkground.viewer;

import inkground.viewer.desk.Recents;
import inkground.viewer.desk.WindowPlace;
import java.util.List;
import javafx.beans.Observable;
import javafx.geometry.Rectangle2D;
import javafx.stage.Screen;
import javafx.stage.Stage;

/** Shows the window where it stood last, and remembers where it stands. */
final class StagePlace {
    private final Stage stage;
    private final Recents recents;
    private Rectangle2D bounds = Rectangle2D.EMPTY;

    StagePlace(Stage stage, Recents recents) {
        this.stage = stage;
        this.recents = recents;
    }

    /** Before the stage is shown. */
    void restore() {
        List<Rectangle2D> screens = Screen.getScreens().stream()
                .sorted((a, b) -> Boolean.compare(b.equals(Screen.getPrimary()), a.equals(Screen.getPrimary())))
                .map(Screen::getVisualBounds)
                .toList();
        WindowPlace place = WindowPlace.on(recents.window(), screens);
        bounds = place.bounds();
        stage.setX(bounds.getMinX());
        stage.setY(bounds.getMinY());
        stage.setWidth(bounds.getWidth());
        stage.setHeight(bounds.getHeight());
        stage.setMaximized(place.filling());
    }

    /** Once the stage is shown. */
    void keepWhenHidden() {
        for (Observable side :
                List.of(stage.xProperty(), stage.yProperty(), stage.widthProperty(), stage.heightProperty())) {
            side.addListener(o -> follow());
        }
        follow();
        stage.setOnHidden(e -> recents.keep(new WindowPlace(bounds, stage.isMaximized())));
    }

    private void follow() {
        // What the window goes back to from filling the screen is its size before.
        if (!stage.isMaximized() && !stage.isIconified() && !stage.isFullScreen() && stage.getWidth() >= 1) {
            bounds = new Rectangle2D(stage.getX(), stage.getY(), stage.getWidth(), stage.getHeight());
        }
    }
}
