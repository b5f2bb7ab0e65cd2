package inkground.viewer.ui;

import inkground.viewer.ui.PanelSwitch.Panel;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.Observable;
import javafx.scene.Node;
import javafx.scene.control.SkinBase;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** A {@link PanelSwitch} as a row of switches above the panels, of which one is seen. */
final class PanelSwitchSkin extends SkinBase<PanelSwitch> {
    private final HBox names = new HBox();
    private final StackPane place = new StackPane();
    private final VBox column = new VBox(names, place);

    PanelSwitchSkin(PanelSwitch panels) {
        super(panels);
        consumeMouseEvents(false);
        names.getStyleClass().add("panel-names");
        VBox.setVgrow(place, Priority.ALWAYS);
        place.setMinHeight(0);
        getChildren().add(column);
        panels.panels().addListener((Observable o) -> fill());
        registerChangeListener(panels.front(), o -> turn());
        fill();
    }

    // By themselves skins ask their parts for heights without telling them a width.
    @Override
    protected double computePrefHeight(double width, double top, double right, double bottom, double left) {
        return top + column.prefHeight(width < 0 ? width : width - left - right) + bottom;
    }

    @Override
    protected double computeMinHeight(double width, double top, double right, double bottom, double left) {
        return top + column.minHeight(width < 0 ? width : width - left - right) + bottom;
    }

    private void fill() {
        List<Panel> all = getSkinnable().panels();
        // No group: in one, Tab would reach the chosen name only, and the arrow keys belong to the window.
        List<ToggleButton> toggles = new ArrayList<>();
        for (Panel panel : all) {
            ToggleButton toggle = new ToggleButton(panel.name());
            toggle.setId(panel.id());
            toggle.setAccessibleText(panel.name() + ": " + panel.sentence());
            Ui.tip(toggle, panel.sentence());
            toggle.setOnAction(e -> {
                getSkinnable().show(panel.content());
                turn(); // a name that was chosen already stays chosen
            });
            toggles.add(toggle);
        }
        names.getChildren().setAll(toggles);
        place.getChildren().setAll(all.stream().map(Panel::content).toList());
        Ui.shown(names, all.size() > 1);
        turn();
    }

    private void turn() {
        Node front = getSkinnable().front().get();
        List<Panel> all = getSkinnable().panels();
        for (int i = 0; i < all.size(); i++) {
            boolean seen = all.get(i).content() == front;
            ((ToggleButton) names.getChildren().get(i)).setSelected(seen);
            Ui.shown(all.get(i).content(), seen);
        }
    }
}
