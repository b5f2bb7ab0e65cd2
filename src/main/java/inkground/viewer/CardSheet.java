package inkground.viewer;

import inkground.viewer.state.TrueSize;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Sheet;
import inkground.viewer.ui.Ui;
import java.util.Locale;
import javafx.beans.Observable;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Rectangle;

/**
 * Measures the screen: the user lays a card of known size on it and makes the drawn one as large. From then on a page can be
 * seen at its true size.
 */
final class CardSheet extends Sheet {
    /** One press of an arrow key, in logical pixels of the card's width: half a pixel, a third of a millimetre at most. */
    private static final double STEP_PX = 0.5;

    private static final double LONG_STEP_PX = 10;

    private final ViewerState state;
    private final DoubleProperty pxPerMm = new SimpleDoubleProperty(this, "pxPerMm", TrueSize.USUAL_PX_PER_MM);
    private final Rectangle card = new Rectangle();
    private final Pane place = new Pane(card);
    private final Label figure = Ui.label("", "figure");

    CardSheet(ViewerState state) {
        super("card-sheet", "True size", state.trueSize.sheet);
        this.state = state;
        Label words =
                Ui.label("Lay a bank card, or any other card of that size (ISO/IEC 7810 ID-1, 85.60 × 53.98 mm), on the"
                        + " screen with its left top corner in this one's. Drag the drawn card until both are the same size, or use"
                        + " the arrow keys; with Shift they take larger steps.");
        words.setWrapText(true);
        words.setMaxWidth(520);
        words.setMinHeight(USE_PREF_SIZE);
        getChildren().addAll(words, cardPlace(), figure, buttons());
        pxPerMm.addListener((Observable o) -> draw());
        draw();
    }

    @Override
    protected void opened() {
        pxPerMm.set(state.trueSize.pxPerMm());
        place.requestFocus();
    }

    private Pane cardPlace() {
        place.setId("card-place");
        place.getStyleClass().add("card-place");
        place.setFocusTraversable(true);
        place.setCursor(Cursor.SE_RESIZE);
        place.setAccessibleRole(AccessibleRole.SLIDER);
        place.setAccessibleText("Drawn card, 85.60 × 53.98 mm: make it as large as a real one with the arrow keys");
        card.getStyleClass().add("true-card");
        place.setOnMouseDragged(this::drag);
        place.setOnMousePressed(e -> place.requestFocus());
        place.setOnKeyPressed(this::key);
        return place;
    }

    /** The card's corner follows the pointer along whichever edge is the farther. */
    private void drag(MouseEvent e) {
        double byWidth = e.getX() / TrueSize.CARD_W_MM;
        double byHeight = e.getY() / TrueSize.CARD_H_MM;
        pxPerMm.set(TrueSize.limited(Math.max(byWidth, byHeight)));
    }

    private void key(KeyEvent e) {
        double step = e.isShiftDown() ? LONG_STEP_PX : STEP_PX;
        int way =
                switch (e.getCode()) {
                    case RIGHT, UP -> 1;
                    case LEFT, DOWN -> -1;
                    default -> 0;
                };
        if (way != 0) {
            pxPerMm.set(TrueSize.limited(pxPerMm.get() + way * step / TrueSize.CARD_W_MM));
            e.consume();
        }
    }

    private void draw() {
        double scale = pxPerMm.get();
        card.setWidth(TrueSize.CARD_W_MM * scale);
        card.setHeight(TrueSize.CARD_H_MM * scale);
        card.setArcWidth(2 * TrueSize.CARD_CORNER_MM * scale);
        card.setArcHeight(2 * TrueSize.CARD_CORNER_MM * scale);
        place.setMinSize(card.getWidth(), card.getHeight());
        place.setMaxSize(card.getWidth(), card.getHeight());
        figure.setText(
                String.format(Locale.ROOT, "%.3f screen pixels per millimetre, %.1f per inch", scale, scale * 25.4));
    }

    private HBox buttons() {
        Button forget = new Button("Forget the measure");
        forget.setId("card-forget");
        forget.disableProperty().bind(state.trueSize.measuredPxPerMm.lessThanOrEqualTo(0));
        forget.setOnAction(e -> close(0));
        Ui.tip(forget, "Show sizes at 96 pixels per inch again, as on a screen that nobody measured");
        Button leave = new Button("Close");
        leave.setId("card-close");
        leave.setOnAction(e -> state.trueSize.sheet.set(false));
        Button use = new Button("The cards are the same size");
        use.setId("card-use");
        use.defaultButtonProperty().bind(visibleProperty());
        use.setOnAction(e -> close(pxPerMm.get()));
        HBox buttons = new HBox(forget, Ui.spring(), leave, use);
        buttons.getStyleClass().add("row");
        buttons.setAlignment(Pos.CENTER_LEFT);
        return buttons;
    }

    private void close(double measured) {
        state.trueSize.measuredPxPerMm.set(measured);
        state.trueSize.sheet.set(false);
        if (measured > 0 && state.page.get() != null) {
            state.showTrueSize();
        }
    }
}
