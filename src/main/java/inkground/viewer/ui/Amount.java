package inkground.viewer.ui;

import javafx.beans.Observable;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
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
    private final DoubleProperty shown = new SimpleDoubleProperty(this, "shown");
    private final Label unit = Ui.label("", "quiet");
    private final String sentence;
    private final double stepsPerUnit;
    private final Asked asked;
    private NumberField number;
    private double shownPerUnit;
    private boolean telling;
    private Object gesture = new Object();

    /**
     * @param id of the slider; the number's has "-number" added
     * @param words its name for the user
     * @param sentence for the tooltip
     * @param step smallest change, and what a key changes: 1 or a whole part of it
     */
    public Amount(String id, String words, String sentence, double min, double max, double step, Asked asked) {
        this.sentence = words + ", as a number: " + sentence;
        this.stepsPerUnit = Math.rint(1 / step);
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
        unit.setMinWidth(USE_PREF_SIZE);
        name.setMinWidth(USE_PREF_SIZE);
        Ui.tip(slider, sentence);
        getChildren().addAll(name, slider, unit);
        slider.addEventFilter(MouseEvent.MOUSE_PRESSED, e -> gesture = new Object());
        slider.focusedProperty().addListener((Observable o) -> gesture = new Object());
        slider.valueProperty().addListener((Observable o) -> ask(slider.getValue()));
        shown.addListener((Observable o) -> ask(shown.get() / shownPerUnit));
    }

    private void ask(double wanted) {
        if (!telling) {
            // By steps per unit, which are whole, so that 0.3 is 0.3.
            double stepped = Math.rint(wanted * stepsPerUnit) / stepsPerUnit;
            asked.value(Math.max(slider.getMin(), Math.min(slider.getMax(), stepped)), gesture);
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
        if (number != null && perUnit == shownPerUnit) {
            return;
        }
        getChildren().remove(number);
        unit.setText(word);
        shownPerUnit = perUnit;
        show(slider.getValue());
        number = new NumberField(shown, slider.getMin() * perUnit, slider.getMax() * perUnit, digits);
        number.setId(slider.getId() + "-number");
        number.setPrefColumnCount(4);
        number.setMinWidth(USE_PREF_SIZE);
        number.setAccessibleText(sentence);
        number.focusedProperty().addListener((Observable o) -> gesture = new Object());
        getChildren().add(2, number);
    }

    /** Gives the keys to the slider. */
    public void focusSlider() {
        slider.requestFocus();
    }

    /** Shows a value without reporting it. */
    public void show(double now) {
        telling = true;
        slider.setValue(now);
        shown.set(now * shownPerUnit);
        telling = false;
    }
}
