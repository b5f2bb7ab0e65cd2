package inkground.viewer.ui;

import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.control.Control;
import javafx.scene.control.Skin;

/**
 * A quantity that is set by a slider, or as a number. It shows what it is told to show, and reports what the user asks for; the
 * changes of one drag, or of one visit by keys, carry the same gesture. Looks: {@link AmountSkin}.
 */
public final class Amount extends Control {
    /** Told what the user asks for. */
    public interface Asked {
        /**
         * @param value within the range
         * @param gesture the same object for the changes of one gesture
         */
        void value(double value, Object gesture);
    }

    /**
     * How the number is shown and typed.
     *
     * @param sign of the unit
     * @param perUnit what the quantity is multiplied by to be shown
     * @param digits after the point
     */
    public record Unit(String sign, double perUnit, int digits) {}

    private final String sliderId;
    private final String words;
    private final String sentence;
    private final double min;
    private final double max;
    private final double step;
    private final Asked asked;
    private final ReadOnlyDoubleWrapper value;
    private final ObjectProperty<Unit> unit = new SimpleObjectProperty<>(this, "unit", new Unit("", 1, 0));
    private final ObjectProperty<Object> gesture = new SimpleObjectProperty<>(this, "gesture", new Object());

    /**
     * @param id of the slider; the number's has "-number" added
     * @param words its name for the user
     * @param sentence for the tooltip
     * @param step smallest change, and what a key changes: 1 or a whole part of it
     */
    public Amount(String id, String words, String sentence, double min, double max, double step, Asked asked) {
        this.sliderId = id;
        this.words = words;
        this.sentence = sentence;
        this.min = min;
        this.max = max;
        this.step = step;
        this.asked = asked;
        this.value = new ReadOnlyDoubleWrapper(this, "value", min);
        getStyleClass().add("amount");
        setFocusTraversable(false); // its slider and its number are
    }

    @Override
    protected Skin<Amount> createDefaultSkin() {
        return new AmountSkin(this);
    }

    /** Shows a value without reporting it. */
    public void show(double now) {
        value.set(now);
    }

    /** Sets the unit in which the number is shown and typed. */
    public void unit(Unit of) {
        unit.set(of);
    }

    /** Gives the keys to the slider. */
    public void focusSlider() {
        applyCss(); // a drawer may just have been opened, and has no looks yet
        if (getSkin() instanceof AmountSkin looks) {
            looks.focusSlider();
        }
    }

    /** What follows belongs to another gesture than what went before. */
    void beginGesture() {
        gesture.set(new Object());
    }

    /**
     * Reports a wish, to the nearest step and within the range.
     *
     * @param wanted in the unit of the value
     */
    void ask(double wanted) {
        // By steps per unit, which are whole, so that 0.3 is 0.3.
        double stepsPerUnit = Math.rint(1 / step);
        double stepped = Math.rint(wanted * stepsPerUnit) / stepsPerUnit;
        asked.value(Math.max(min, Math.min(max, stepped)), gesture.get());
    }

    /** @return what is shown */
    ReadOnlyDoubleProperty value() {
        return value.getReadOnlyProperty();
    }

    ObjectProperty<Unit> unit() {
        return unit;
    }

    String sliderId() {
        return sliderId;
    }

    String words() {
        return words;
    }

    String sentence() {
        return sentence;
    }

    double min() {
        return min;
    }

    double max() {
        return max;
    }

    double step() {
        return step;
    }
}
