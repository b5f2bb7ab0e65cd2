package inkground.viewer.ui;

import javafx.beans.Observable;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.SkinBase;
import javafx.scene.control.Slider;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;

/** An {@link Amount} as its name, a slider, a number and the sign of the unit, in a row. */
final class AmountSkin extends SkinBase<Amount> {
    private final HBox row = new HBox();
    private final Slider slider = new Slider();
    private final Label sign = Ui.label("", "quiet");
    private final DoubleProperty shown = new SimpleDoubleProperty(this, "shown"); // in the unit
    private NumberField number;
    private double shownPerUnit;
    private boolean telling;

    AmountSkin(Amount amount) {
        super(amount);
        consumeMouseEvents(false);
        Label name = Ui.label(amount.words(), "amount-name");
        name.setLabelFor(slider);
        slider.setId(amount.sliderId());
        slider.setMin(amount.min());
        slider.setMax(amount.max());
        slider.setBlockIncrement(amount.step());
        slider.setMinWidth(40);
        slider.setPrefWidth(90);
        slider.setAccessibleText(amount.words() + ": " + amount.sentence());
        Ui.tip(slider, amount.sentence());
        HBox.setHgrow(slider, Priority.ALWAYS);
        sign.setMinWidth(Region.USE_PREF_SIZE);
        name.setMinWidth(Region.USE_PREF_SIZE);
        row.getStyleClass().add("amount-row");
        row.setAlignment(Pos.CENTER_LEFT);
        row.getChildren().addAll(name, slider, sign);
        getChildren().add(row);
        slider.addEventFilter(MouseEvent.MOUSE_PRESSED, e -> amount.beginGesture());
        slider.focusedProperty().addListener((Observable o) -> amount.beginGesture());
        slider.valueProperty().addListener((Observable o) -> ask(slider.getValue()));
        shown.addListener((Observable o) -> ask(shown.get() / shownPerUnit));
        registerInvalidationListener(amount.value(), o -> show());
        registerChangeListener(amount.unit(), o -> measure());
        measure();
    }

    void focusSlider() {
        slider.requestFocus();
    }

    private void ask(double wanted) {
        if (!telling) {
            getSkinnable().ask(wanted);
        }
    }

    private void measure() {
        Amount amount = getSkinnable();
        Amount.Unit unit = amount.unit().get();
        boolean other = number == null || unit.perUnit() != shownPerUnit;
        sign.setText(unit.sign());
        shownPerUnit = unit.perUnit();
        show();
        if (other) {
            row.getChildren().remove(number);
            number =
                    new NumberField(shown, amount.min() * unit.perUnit(), amount.max() * unit.perUnit(), unit.digits());
            number.setId(slider.getId() + "-number");
            number.setPrefColumnCount(4);
            number.setMinWidth(Region.USE_PREF_SIZE);
            number.setAccessibleText(amount.words() + ", as a number: " + amount.sentence());
            number.focusedProperty().addListener((Observable o) -> amount.beginGesture());
            row.getChildren().add(2, number);
        }
    }

    private void show() {
        double now = getSkinnable().value().get();
        telling = true;
        slider.setValue(now);
        shown.set(now * shownPerUnit);
        telling = false;
    }
}
