package inkground.viewer;

import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;

/**
 * Marks the node that a key gave the focus to, for the style sheet: the eye must find it, while what was clicked needs no mark. The
 * toolkit's own 'focus-visible' knows Tab alone, and not the keys of this window.
 */
final class FocusMark {
    /** Of a node that got the focus by a key. */
    static final PseudoClass KEYED = PseudoClass.getPseudoClass("keyed");

    private boolean keyed;

    private FocusMark() {}

    /** Marks the focus in a scene from now on; to be called before other filters of keys. */
    static void on(Scene scene) {
        FocusMark mark = new FocusMark();
        scene.addEventFilter(KeyEvent.KEY_PRESSED, e -> mark.keyed = true);
        scene.addEventFilter(MouseEvent.MOUSE_PRESSED, e -> {
            mark.keyed = false;
            show(scene.getFocusOwner(), false);
        });
        scene.focusOwnerProperty().addListener((o, before, now) -> {
            show(before, false);
            show(now, mark.keyed);
        });
    }

    private static void show(Node node, boolean keyed) {
        if (node != null) {
            node.pseudoClassStateChanged(KEYED, keyed);
        }
    }
}
