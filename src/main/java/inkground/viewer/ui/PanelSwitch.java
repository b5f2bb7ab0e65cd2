package inkground.viewer.ui;

import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.control.Control;
import javafx.scene.control.Skin;

/**
 * Panels that share one place, with a row of names to choose by. A single panel has no row. Looks: {@link PanelSwitchSkin}.
 */
public class PanelSwitch extends Control {
    /**
     * One of the panels.
     *
     * @param id of its switch
     * @param name for the user, one word
     * @param sentence for the tooltip
     */
    record Panel(String id, String name, String sentence, Node content) {}

    private final ObservableList<Panel> panels = FXCollections.observableArrayList();
    private final ReadOnlyObjectWrapper<Node> front = new ReadOnlyObjectWrapper<>(this, "front");

    /** Empty. */
    public PanelSwitch() {
        getStyleClass().add("panel-switch");
        setFocusTraversable(false); // its names are
    }

    @Override
    protected Skin<PanelSwitch> createDefaultSkin() {
        return new PanelSwitchSkin(this);
    }

    /** Words in the panels wrap. */
    @Override
    public Orientation getContentBias() {
        return Orientation.HORIZONTAL;
    }

    /**
     * Adds a panel; the first one is shown.
     *
     * @param id of its switch
     * @param name for the user, one word
     * @param sentence for the tooltip
     */
    public void add(String id, String name, String sentence, Node panel) {
        panels.add(new Panel(id, name, sentence, panel));
        showFirst();
    }

    /** Brings a panel to the front. */
    public void show(Node panel) {
        front.set(panel);
    }

    /** Brings the first panel to the front. */
    public void showFirst() {
        show(panels.get(0).content());
    }

    /** @return the panel that is shown */
    public ReadOnlyObjectProperty<Node> front() {
        return front.getReadOnlyProperty();
    }

    ObservableList<Panel> panels() {
        return panels;
    }
}
