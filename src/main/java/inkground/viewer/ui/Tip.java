package inkground.viewer.ui;

import javafx.scene.Node;
import javafx.scene.control.Tooltip;
import javafx.scene.input.MouseEvent;
import javafx.util.Duration;

/**
 * What a node says when the pointer rests on it. The tooltip is made when the pointer first comes: each is a window with a scene
 * of its own, a screen full of controls has hundreds, and few are ever seen. Screen readers read the text from the node.
 */
final class Tip {
    private static final Duration DELAY = Duration.millis(400);
    private static final Duration STAYS = Duration.seconds(20);
    private static final double WIDTH_PX = 360;

    private final Node node;
    private Tooltip shown;

    private Tip(Node node) {
        this.node = node;
        node.addEventHandler(MouseEvent.MOUSE_ENTERED, e -> hang());
    }

    /** Gives a node its text, or another. */
    static void on(Node node, String text) {
        node.setAccessibleHelp(text);
        Tip tip = (Tip) node.getProperties().computeIfAbsent(Tip.class, key -> new Tip(node));
        if (tip.shown != null) {
            tip.shown.setText(text);
        }
    }

    /** The pointer has come; the next move of it starts the delay. */
    private void hang() {
        if (shown == null) {
            shown = new Tooltip(node.getAccessibleHelp());
            shown.setShowDelay(DELAY);
            shown.setShowDuration(STAYS);
            shown.setWrapText(true);
            shown.setMaxWidth(WIDTH_PX);
            Tooltip.install(node, shown);
        }
    }
}
