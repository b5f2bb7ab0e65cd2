package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.geometry.Box;
import inkground.viewer.state.Camera;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Bounds;
import javafx.geometry.HPos;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.StackPane;
import org.junit.jupiter.api.Test;

/** The legend of a map lies where it hides least of the artwork, and does not jump about without need. */
class LegendTest extends FakeWindow {
    private Node legend;

    private void showMap() throws Exception {
        openArtwork();
        push(KeyCode.M);
        until(() -> state.overlays.report.get() != null);
        legend = lookup("#map-legend").query();
    }

    /** Moves the view so that the artwork lies in a corner of the surface. */
    private void pushArtworkInto(Pos corner) {
        interact(() -> {
            Camera camera = state.camera.get();
            Box art = camera.toView(FakeEngine.INKED);
            double dx = corner.getHpos() == HPos.RIGHT ? camera.widthPx() - art.x1() : -art.x0();
            double dy = corner.getVpos() == VPos.BOTTOM ? camera.heightPx() - art.y1() : -art.y0();
            state.pan(dx, dy);
        });
        interact(() -> legend.getParent().layout());
    }

    private boolean coversArtwork() {
        Box art = state.camera.get().toView(FakeEngine.INKED);
        Bounds on = window.surface().sceneToLocal(legend.localToScene(legend.getLayoutBounds()));
        return !art.intersect(new Box(on.getMinX(), on.getMinY(), on.getMaxX(), on.getMaxY()))
                .isEmpty();
    }

    @Test
    void itGoesToACornerThatTheArtworkLeavesFree() throws Exception {
        showMap();
        interact(() -> state.zoom(0.75)); // half the surface
        List<Pos> taken = new ArrayList<>();
        for (Pos corner : List.of(Pos.BOTTOM_RIGHT, Pos.BOTTOM_LEFT, Pos.TOP_RIGHT, Pos.TOP_LEFT)) {
            pushArtworkInto(corner);
            assertThat(coversArtwork())
                    .as("artwork in %s, legend in %s", corner, StackPane.getAlignment(legend))
                    .isFalse();
            taken.add(StackPane.getAlignment(legend));
        }
        // the corner that is liked best among the free ones, and left only when the artwork comes there
        assertThat(taken).containsExactly(Pos.BOTTOM_LEFT, Pos.BOTTOM_RIGHT, Pos.BOTTOM_RIGHT, Pos.BOTTOM_RIGHT);
    }

    @Test
    void foldedToItsTitleItHidesLittleAndOpensAgain() throws Exception {
        showMap();
        double open = legend.getLayoutBounds().getHeight();
        push(KeyCode.SHIFT, KeyCode.M);
        interact(() -> legend.getParent().layout());
        assertThat(legend.getLayoutBounds().getHeight()).isLessThan(open / 2);
        assertThat(lookup("#map-legend .title").queryLabeled().isVisible()).isTrue();
        assertThat(lookup("#map-legend .legend-table").query().getParent().isVisible())
                .isFalse();
        clickOn("#legend-handle");
        interact(() -> legend.getParent().layout());
        assertThat(legend.getLayoutBounds().getHeight()).isEqualTo(open);
    }

    @Test
    void itStaysWhileTheArtworkFillsTheSurfaceAndThePageIsMoved() throws Exception {
        showMap();
        interact(() -> state.zoom(6));
        Pos at = StackPane.getAlignment(legend);
        for (int step = 0; step < 8; step++) {
            interact(() -> state.pan(40, 25));
            assertThat(StackPane.getAlignment(legend)).isEqualTo(at);
        }
        assertThat(coversArtwork()).as("nowhere else was better").isTrue();
    }
}
