package inkground.viewer;

import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import javafx.beans.Observable;
import javafx.beans.value.ObservableBooleanValue;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** Says in plain words what could not be done, over the surface, until it is put away or the next try. */
final class TroubleBar extends HBox {
    /** @param sheetOpen whether a sheet lies over it, which tells the same itself */
    TroubleBar(ViewerState state, ObservableBooleanValue sheetOpen) {
        setId("trouble");
        getStyleClass().add("trouble");
        setAlignment(Pos.CENTER_LEFT);
        setMaxHeight(USE_PREF_SIZE);
        Label words = Ui.label("", "trouble-words");
        words.setId("trouble-words");
        words.setWrapText(true);
        words.setMaxWidth(Double.MAX_VALUE);
        words.textProperty().bind(state.trouble);
        HBox.setHgrow(words, Priority.ALWAYS);
        getChildren()
                .addAll(
                        new FontIcon(Feather.ALERT_TRIANGLE),
                        words,
                        Ui.button("trouble-away", "", Feather.X, Command.ESCAPE, () -> state.trouble.set(null)));
        for (Observable value : new Observable[] {state.trouble, sheetOpen}) {
            value.addListener(o -> Ui.shown(this, state.trouble.get() != null && !sheetOpen.get()));
        }
        Ui.shown(this, false);
    }
}
