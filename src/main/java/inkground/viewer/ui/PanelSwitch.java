package inkground.viewer.ui;

import java.util.ArrayList;
import java.util.List;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.scene.Node;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** Panels that share one place, with a row of names to choose by. A single panel has no row. */
public class PanelSwitch extends VBox {
    private final HBox names = new HBox();
    private final StackPane place = new StackPane();
    // No group: in one, Tab would reach the chosen name only, and the arrow keys belong to the window.
    private final List<ToggleButton> toggles = new ArrayList<>();
    private final List<Node> panels = new ArrayList<>();
    private final ReadOnlyObjectWrapper<Node> front = new ReadOnlyObjectWrapper<>(this, "front");

    /** Empty. */
    public PanelSwitch() {
        getStyleClass().add("panel-switch");
        names.getStyleClass().add("panel-names");
        VBox.setVgrow(place, Priority.ALWAYS);
        place.setMinHeight(0);
        getChildren().addAll(names, place);
        Ui.shown(names, false);
    }

    /**
     * Adds a panel; the first one is shown.
     *
     * @param id of its switch
     * @param name for the user, one word
     * @param sentence for the tooltip
     */
    public void add(String id, String name, String sentence, Node panel) {
        ToggleButton toggle = new ToggleButton(name);
        toggle.setId(id);
        toggle.setAccessibleText(name + ": " + sentence);
        Ui.tip(toggle, sentence);
        toggle.setOnAction(e -> show(panel));
        panels.add(panel);
        toggles.add(toggle);
        names.getChildren().add(toggle);
        place.getChildren().add(panel);
        Ui.shown(names, panels.size() > 1);
        show(panels.get(0));
    }

    /** Brings a panel to the front. */
    public void show(Node panel) {
        int at = panels.indexOf(panel);
        toggles.forEach(toggle -> toggle.setSelected(toggles.indexOf(toggle) == at));
        panels.forEach(other -> Ui.shown(other, other == panel));
        front.set(panel);
    }

    /** Brings the first panel to the front. */
    public void showFirst() {
        show(panels.get(0));
    }

    /** @return the panel that is shown */
    public ReadOnlyObjectProperty<Node> front() {
        return front.getReadOnlyProperty();
    }
}
