package inkground.viewer.ui;

import java.util.Locale;
import java.util.OptionalDouble;
import javafx.beans.InvalidationListener;
import javafx.beans.Observable;
import javafx.beans.WeakInvalidationListener;
import javafx.beans.property.DoubleProperty;
import javafx.css.PseudoClass;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/**
 * A number to type, or to step by Up and Down. What is no number within the limits is marked and not taken over; leaving the
 * field brings the last good number back.
 */
public final class NumberField extends TextField {
    private static final PseudoClass BAD = PseudoClass.getPseudoClass("bad");

    private final DoubleProperty value;
    private final double min;
    private final double max;
    private final int digits;
    // The number outlives the field, and must not keep it: a legend is made anew with every figure.
    private final InvalidationListener shown = o -> show();

    /**
     * @param value shown and changed
     * @param min smallest, itself allowed
     * @param max largest, itself allowed
     * @param digits after the decimal point; a step is one of the last
     */
    public NumberField(DoubleProperty value, double min, double max, int digits) {
        this.value = value;
        this.min = min;
        this.max = max;
        this.digits = digits;
        getStyleClass().add("number-field");
        setPrefColumnCount(5);
        value.addListener(new WeakInvalidationListener(shown));
        textProperty().addListener((Observable o) -> type());
        focusedProperty().addListener((o, before, now) -> {
            if (!now) {
                show();
            }
        });
        addEventFilter(KeyEvent.KEY_PRESSED, this::key);
        show();
    }

    private void show() {
        if (!read().equals(OptionalDouble.of(rounded(value.get()))) || !isFocused()) {
            setText(String.format(Locale.ROOT, "%." + digits + "f", value.get()));
        }
    }

    private double rounded(double number) {
        double scale = Math.pow(10, digits);
        return Math.rint(number * scale) / scale;
    }

    private void type() {
        OptionalDouble number = read();
        pseudoClassStateChanged(BAD, number.isEmpty());
        number.ifPresent(n -> {
            if (n != rounded(value.get())) {
                value.set(n);
            }
        });
    }

    private OptionalDouble read() {
        String text = getText().strip().replace(',', '.');
        if (!text.matches("-?[0-9]{1,6}(\\.[0-9]{0,6})?")) {
            return OptionalDouble.empty();
        }
        double number = Double.parseDouble(text);
        return number >= min && number <= max ? OptionalDouble.of(number) : OptionalDouble.empty();
    }

    private void key(KeyEvent e) {
        boolean up = e.getCode() == KeyCode.UP;
        if (up || e.getCode() == KeyCode.DOWN) {
            double step = Math.pow(10, -digits) * (e.isShiftDown() ? 10 : 1);
            value.set(Math.max(min, Math.min(max, rounded(value.get() + (up ? step : -step)))));
            e.consume();
        }
    }
}
