package inkground.viewer.stack;

import inkground.viewer.state.ProofEngine.InkCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Amount;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import java.util.Locale;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** What can be set of one ink: how much it hides, and its place in the print order; and its plate to look at. */
final class InkDrawer extends VBox {
    private final ViewerState state;
    private final int plane;
    private final Amount opacity;
    private final Button asFiled;
    private final ToggleButton plate;
    private final Button later;
    private final Button earlier;

    InkDrawer(InkCard card, int plane, ViewerState state) {
        this.state = state;
        this.plane = plane;
        setId("ink-drawer");
        getStyleClass().add("drawer");
        Label source = Ui.label("Colour: " + card.source(), "note");
        source.setWrapText(true);
        source.setMinHeight(USE_PREF_SIZE);
        opacity = new Amount(
                "opacity",
                "Opacity",
                "At 0 all that lies under the ink shines through, at 100 it hides it",
                0,
                1,
                0.01,
                (value, gesture) -> state.printing.setOpacity(plane, Optional.of(value), gesture));
        opacity.unit(new Amount.Unit("%", 100, 0));
        asFiled = new Button(
                String.format(Locale.ROOT, "%.0f %% as given", card.opacity() * 100),
                new FontIcon(Feather.CORNER_UP_LEFT));
        asFiled.setMinWidth(USE_PREF_SIZE);
        asFiled.setId("opacity-as-filed");
        asFiled.setOnAction(e -> state.printing.setOpacity(plane, Optional.empty(), new Object()));
        Ui.tip(asFiled, "Take the opacity that the file or the ink library gives");
        plate = Ui.toggle("plate", "Plate", Command.PLATE, state::togglePlate);
        plate.setGraphic(new FontIcon(Feather.FILM));
        later = Ui.button(
                "print-later", "", Feather.ARROW_UP, Command.MOVE_INK_UP, () -> state.printing.moveBy(plane, 1));
        earlier = Ui.button(
                "print-earlier", "", Feather.ARROW_DOWN, Command.MOVE_INK_DOWN, () -> state.printing.moveBy(plane, -1));
        HBox actions = new HBox(plate, later, earlier, Ui.spring(), asFiled);
        actions.setAlignment(Pos.CENTER_LEFT);
        actions.getStyleClass().add("drawer-actions");
        getChildren().addAll(source, opacity, actions);
    }

    /** Gives the keys to the opacity. */
    void focusOpacity() {
        opacity.focusSlider();
    }

    /** Takes over what the state says. */
    void follow() {
        if (!isVisible() || state.page.get() == null) {
            return;
        }
        opacity.show(state.printing.opacity(plane));
        asFiled.setDisable(!state.history.get().opacities().containsKey(state.inkName(plane)));
        plate.setSelected(state.stack.plate.get());
        int at = state.printing.stacked().indexOf(plane);
        later.setDisable(at == state.printing.stacked().size() - 1);
        earlier.setDisable(at == 0);
    }
}
