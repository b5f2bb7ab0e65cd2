package inkground.viewer.surface;

import inkground.geometry.Box;
import inkground.viewer.state.Camera;
import inkground.viewer.state.ProofEngine.MapPlace;
import inkground.viewer.state.ProofEngine.MapReport;
import inkground.viewer.state.ViewerState;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.Observable;
import javafx.css.PseudoClass;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Rectangle;

/** Frames round the places that the map names, never smaller than can be seen. */
final class PlaceMarks extends Pane {
    private static final double LEAST_PX = 18;
    private static final double MARGIN_PX = 5;

    private static final PseudoClass LOOKED_AT = PseudoClass.getPseudoClass("looked-at");

    private final ViewerState state;
    private final Rectangle clip = new Rectangle();
    private List<MapPlace> marked = List.of();

    PlaceMarks(ViewerState state) {
        this.state = state;
        setMouseTransparent(true);
        setManaged(false);
        setClip(clip);
        state.walk.at.addListener((Observable o) -> choose());
        for (Observable value : new Observable[] {state.overlays.report, state.overlays.places}) {
            value.addListener(o -> {
                mark();
                place();
            });
        }
    }

    private void mark() {
        MapReport report = state.overlays.report.get();
        marked = report == null || !state.overlays.places.get() ? List.of() : report.places();
        List<Rectangle> frames = new ArrayList<>();
        for (int i = 0; i < marked.size(); i++) {
            for (String style : new String[] {"place-halo", "place"}) {
                Rectangle frame = new Rectangle();
                frame.getStyleClass().add(style);
                frames.add(frame);
            }
        }
        getChildren().setAll(frames);
        choose();
    }

    /** Tells the frame of the place that is looked at. */
    private void choose() {
        for (int i = 0; i < getChildren().size(); i++) {
            getChildren().get(i).pseudoClassStateChanged(LOOKED_AT, i / 2 == state.walk.at.get());
        }
    }

    /** Puts all frames where the camera sees their places. */
    void place() {
        clip.setWidth(getWidth());
        clip.setHeight(getHeight());
        Camera camera = state.camera.get();
        for (int i = 0; i < marked.size(); i++) {
            Box box = marked.get(i).box();
            Box seen = camera.toView(box);
            double x = (seen.x0() + seen.x1()) / 2;
            double y = (seen.y0() + seen.y1()) / 2;
            double w = Math.max(LEAST_PX, seen.width() + 2 * MARGIN_PX);
            double h = Math.max(LEAST_PX, seen.height() + 2 * MARGIN_PX);
            for (int j = 0; j < 2; j++) {
                Rectangle frame = (Rectangle) getChildren().get(2 * i + j);
                frame.setX(x - w / 2);
                frame.setY(y - h / 2);
                frame.setWidth(w);
                frame.setHeight(h);
            }
        }
    }
}
