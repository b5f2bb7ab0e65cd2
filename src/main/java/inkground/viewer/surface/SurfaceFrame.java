package inkground.viewer.surface;

import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import javafx.beans.Observable;
import javafx.geometry.Orientation;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;

/** The surface with what runs along its edges: the strip of pages, and the rulers. They take room, and cover nothing. */
public final class SurfaceFrame extends GridPane {
    /**
     * @param surface with what lies over it
     * @param pages what stands at the left
     */
    public SurfaceFrame(ViewerState state, Node surface, Node pages) {
        getStyleClass().add("surface-frame");
        setMinSize(0, 0);
        Label corner = Ui.label("", "ruler-corner");
        corner.setId("ruler-corner");
        corner.setAlignment(Pos.CENTER);
        corner.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
        corner.setMinSize(0, 0);
        corner.setPrefSize(Ruler.BREADTH_PX, Ruler.BREADTH_PX);
        corner.textProperty().bind(state.unit.map(LengthUnit::word));
        Ui.tip(corner, "Rulers measure from the corner of the trim: what is left on the product after cutting");
        Ruler above = new Ruler(state, Orientation.HORIZONTAL);
        Ruler beside = new Ruler(state, Orientation.VERTICAL);
        add(pages, 0, 0, 1, 2);
        add(corner, 1, 0);
        add(above, 2, 0);
        add(beside, 1, 1);
        add(surface, 2, 1);
        setHgrow(surface, Priority.ALWAYS);
        setVgrow(surface, Priority.ALWAYS);
        Runnable follow = () -> {
            boolean shown = state.rulers.get() && state.page.get() != null;
            for (Node node : new Node[] {corner, above, beside}) {
                Ui.shown(node, shown);
            }
        };
        state.rulers.addListener((Observable o) -> follow.run());
        state.page.addListener((Observable o) -> follow.run());
        follow.run();
    }
}
