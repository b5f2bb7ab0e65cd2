package inkground.viewer.compare;

import inkground.viewer.state.Comparison;
import inkground.viewer.ui.Ui;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;

/** The edge between two revisions that lie over each other: dragged, or moved by Left and Right while it has the focus. */
final class WipeEdge extends StackPane {
    /** Width in which it can be gripped. */
    static final double GRIP = 13;

    private static final double KEY_STEP = 0.02;

    private final Comparison comparison;

    WipeEdge(Comparison comparison) {
        this.comparison = comparison;
        setId("wipe-edge");
        getStyleClass().addAll("wipe-edge", Ui.TAKES_ARROWS);
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.SLIDER);
        setAccessibleText("Edge between the earlier revision and the open file");
        Ui.tip(this, "Drag, or focus and press Left and Right");
        setCursor(Cursor.H_RESIZE);
        Region line = new Region();
        line.getStyleClass().add("wipe-line");
        line.setMaxWidth(3);
        StackPane.setAlignment(line, Pos.CENTER);
        getChildren().add(line);
        setOnMousePressed(e -> requestFocus());
        setOnMouseDragged(e -> {
            move(getParent().sceneToLocal(e.getSceneX(), e.getSceneY()).getX()
                    / getParent().getLayoutBounds().getWidth());
            e.consume();
        });
        addEventHandler(KeyEvent.KEY_PRESSED, e -> {
            if (e.getCode() == KeyCode.LEFT || e.getCode() == KeyCode.RIGHT) {
                move(comparison.wipe.get() + (e.getCode() == KeyCode.LEFT ? -KEY_STEP : KEY_STEP));
                e.consume();
            }
        });
    }

    private void move(double to) {
        comparison.wipe.set(Math.max(0, Math.min(1, to)));
    }
}
