package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.viewer.state.Theme;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollBar;
import javafx.scene.paint.Color;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.testfx.framework.junit5.ApplicationTest;

/** All controls in all their states: none is cut off, each is named for those who cannot see it, and none is coloured. */
class GalleryTest extends ApplicationTest {
    private Scene scene;

    @Override
    public void start(Stage stage) {
        scene = new Scene(ViewerGallery.content(), 1280, 1100);
        ViewerGallery.dress(scene, Theme.LIGHT);
        stage.setScene(scene);
        stage.show();
    }

    private List<Node> shown() {
        return Nodes.shown(scene.getRoot());
    }

    @Test
    void buttonsAreNotCutOffInEitherTheme() {
        for (Theme theme : Theme.values()) {
            interact(() -> ViewerGallery.dress(scene, theme));
            interact(() -> scene.getRoot().layout());
            for (Node node : shown()) {
                if (node instanceof ButtonBase button) {
                    assertThat(Nodes.cutOff(button))
                            .as("%s in %s", button.getText(), theme)
                            .isEmpty();
                }
            }
        }
    }

    @Test
    void whatCanBeReachedByKeyboardIsNamedForScreenReaders() {
        for (Node node : shown()) {
            if (node instanceof Control control && control.isFocusTraversable() && !(control instanceof ScrollBar)) {
                assertThat(Nodes.named(control))
                        .as("%s #%s", control.getClass().getSimpleName(), control.getId())
                        .isTrue();
            }
        }
    }

    @Test
    void wordsStandOutFromTheirGround() {
        for (Theme theme : Theme.values()) {
            interact(() -> ViewerGallery.dress(scene, theme));
            for (Node node : shown()) {
                if (node instanceof Label label && label.getTextFill() instanceof Color colour) {
                    assertThat(colour.getSaturation())
                            .as("%s in %s", label.getText(), theme)
                            .isZero();
                }
            }
        }
    }
}
