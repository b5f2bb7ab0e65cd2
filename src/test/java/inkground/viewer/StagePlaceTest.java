package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.viewer.desk.Recents;
import inkground.viewer.desk.WindowPlace;
import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.scene.layout.Pane;
import javafx.stage.Screen;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.testfx.framework.junit5.ApplicationTest;

/** A window closed and shown again. */
class StagePlaceTest extends ApplicationTest {
    private final Recents recents = new Recents(ViewerRig.preferences());

    private Stage shown() {
        Stage stage = new Stage();
        stage.setScene(new Scene(new Pane()));
        StagePlace place = new StagePlace(stage, recents);
        place.restore();
        stage.show();
        place.keepWhenHidden();
        return stage;
    }

    private static Rectangle2D bounds(Stage stage) {
        return new Rectangle2D(stage.getX(), stage.getY(), stage.getWidth(), stage.getHeight());
    }

    @Test
    void aWindowIsShownAsItWasClosed() {
        Rectangle2D moved = new Rectangle2D(31, 47, 700, 500);
        interact(() -> {
            Stage first = shown();
            assertThat(Screen.getPrimary().getVisualBounds().contains(bounds(first)))
                    .isTrue();
            first.setX(moved.getMinX());
            first.setY(moved.getMinY());
            first.setWidth(moved.getWidth());
            first.setHeight(moved.getHeight());
            first.close();
            Stage second = shown();
            assertThat(bounds(second)).isEqualTo(moved);
            second.close();
        });
    }

    @Test
    void aWindowThatFillsItsScreenKnowsTheSizeItHadBefore() {
        Rectangle2D before = new Rectangle2D(31, 47, 700, 500);
        recents.keep(new WindowPlace(before, true));
        interact(() -> {
            Stage stage = shown();
            assertThat(stage.isMaximized()).isTrue();
            stage.close();
        });
        assertThat(recents.window()).contains(new WindowPlace(before, true));
    }
}
