package inkground.viewer.ui;

import javafx.beans.Observable;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.Region;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** Settings that are pulled out from under what they belong to. */
public final class Drawer {
    private Drawer() {}

    /** @return a switch that says by its arrow whether a drawer is open */
    public static ToggleButton handle(String id, String sentence) {
        ToggleButton handle = new ToggleButton();
        handle.setId(id);
        handle.getStyleClass().addAll("small-switch", "handle");
        handle.setAccessibleText(sentence);
        handle.setMinWidth(Region.USE_PREF_SIZE);
        Ui.tip(handle, sentence);
        Runnable turn =
                () -> handle.setGraphic(new FontIcon(handle.isSelected() ? Feather.CHEVRON_UP : Feather.CHEVRON_DOWN));
        handle.selectedProperty().addListener((Observable o) -> turn.run());
        turn.run();
        return handle;
    }
}
