package inkground.viewer.ui;

import java.util.Locale;
import javafx.beans.Observable;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;

/**
 * A quantity that is set by a slider, or as a number. It shows what it is told to show, and reports what the user asks for; the
 * changes of one drag, or of one visit by keys, carry the same gesture.
 */
public final class Amount extends HBox {
    /** Told what the user asks for. */
    public interface Asked {
        /**
         * @param value within the range
         * @param gesture the same object for the changes of one gesture
         */
        void value(double value, Object gesture);
    }

    private final Slider slider = new Slider();
    private final TextField number = new TextField();
    private final Label unit = Ui.label("", "quiet");
    private final double step;
    private final Asked asked;
    private double shownPerUnit = 1;
    private String format = "%.0f";
    private boolean telling;
    private Object gesture = new Object();
    private double value;

    /**
     * @param id of the slider; the number's has "-number" added
     * @param words its name for the user
     * @param sentence for the tooltip
     * @param step smallest change, and what a key changes
     */
    public Amount(String id, String words, String sentence, double min, double max, double step, Asked asked) {
        this.step = step;
        this.asked = asked;
        getStyleClass().add("amount");
        setAlignment(Pos.CENTER_LEFT);
        Label name = Ui.label(words, "amount-name");
        name.setLabelFor(slider);
        slider.setId(id);
        slider.setMin(min);
        slider.setMax(max);
        slider.setBlockIncrement(step);
        slider.setMinWidth(40);
        slider.setPrefWidth(90);
        slider.setAccessibleText(words + ": " + sentence);
        HBox.setHgrow(slider, Priority.ALWAYS);
        number.setId(id + "-number");
        number.setPrefColumnCount(4);
        number.setMinWidth(USE_PREF_SIZE);
        number.setAccessibleText(words + ", as a number: " + sentence);
        unit.setMinWidth(USE_PREF_SIZE);
        name.setMinWidth(USE_PREF_SIZE);
        Ui.tip(slider, sentence);
        Ui.tip(number, sentence);
        getChildren().addAll(name, slider, number, unit);
        listen();
    }

    private void listen() {
        slider.addEventFilter(MouseEvent.MOUSE_PRESSED, e -> gesture = new Object());
        slider.focusedProperty().addListener((Observable o) -> gesture = new Object());
        slider.valueProperty().addListener((Observable o) -> ask(slider.getValue()));
        number.setOnAction(e -> read());
        number.focusedProperty().addListener((Observable o) -> {
            gesture = new Object();
            if (!number.isFocused()) {
                read();
            }
        });
        number.addEventFilter(KeyEvent.KEY_PRESSED, e -> {
            if (e.getCode() == KeyCode.UP || e.getCode() == KeyCode.DOWN) {
                ask(value + (e.getCode() == KeyCode.UP ? step : -step));
                e.consume();
            }
        });
    }

    /** Reads what was typed; what is no number is put back. */
    private void read() {
        try {
            double typed = Double.parseDouble(
                    number.getText().strip().replace(',', '.').replace('−', '-'));
            if (Double.isFinite(typed) && !number.getText().equals(text())) {
                ask(typed / shownPerUnit);
            }
        } catch (NumberFormatException e) {
            number.setText(text());
        }
    }

    private void ask(double wanted) {
        if (!telling) {
            double held = Math.max(slider.getMin(), Math.min(slider.getMax(), Math.rint(wanted / step) * step));
            asked.value(held, gesture);
            show(value);
        }
    }

    /**
     * Sets the unit in which the number is shown and typed.
     *
     * @param word its sign
     * @param perUnit what the quantity is multiplied by to be shown
     * @param digits after the point
     */
    public void unit(String word, double perUnit, int digits) {
        unit.setText(word);
        shownPerUnit = perUnit;
        format = "%." + digits + "f";
        show(value);
    }

    /** Shows a value without reporting it. */
    public void show(double now) {
        value = now;
        telling = true;
        slider.setValue(now);
        number.setText(text());
        telling = false;
    }

    private String text() {
        return String.format(Locale.ROOT, format, value * shownPerUnit + 0.0);
    }
}
