package inkground.viewer;

import inkground.viewer.ui.Ui;
import javafx.scene.Node;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.ListView;
import javafx.scene.control.MenuButton;
import javafx.scene.control.Slider;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyEvent;

/** Which keys a control with the focus needs for itself, so that they are no commands of the window. */
final class KeyTakers {
    private KeyTakers() {}

    /** @return whether the control takes text */
    static boolean types(Node focus) {
        return focus instanceof TextInputControl || focus instanceof ComboBox<?> box && box.isEditable();
    }

    /** @return whether the key moves something within the control */
    static boolean navigates(Node focus, KeyEvent e) {
        boolean moves = e.getCode().isNavigationKey() && !e.isAltDown() && !e.isShortcutDown();
        boolean inList = focus instanceof ListView<?>;
        boolean moving = focus instanceof Slider
                || focus instanceof ComboBox<?>
                || focus instanceof ChoiceBox<?>
                || focus instanceof MenuButton;
        boolean marked = focus != null && focus.getStyleClass().contains(Ui.TAKES_ARROWS);
        return moves && (inList || moving || marked);
    }
}
