package inkground.viewer.worn;

import inkground.viewer.state.LengthUnit;
import inkground.viewer.ui.Ui;
import java.util.OptionalDouble;
import java.util.function.DoubleConsumer;
import javafx.css.PseudoClass;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/**
 * A length typed as a number: taken over on Enter or when the field is left, stepped by a millimetre with Up and Down (by ten with
 * Shift), put back by Escape. What is no length is marked and not taken over.
 */
final class LengthField extends TextField {
    private static final PseudoClass WRONG = PseudoClass.getPseudoClass("wrong");

    private final double leastMm;
    private final double mostMm;
    private final DoubleConsumer taken;
    private LengthUnit unit = LengthUnit.MM;
    private double valueMm;
    private Runnable entered = () -> {};

    /**
     * @param sentence for tooltip and screen reader
     * @param taken told a new length in millimetres, within the range
     */
    LengthField(String id, String sentence, double leastMm, double mostMm, DoubleConsumer taken) {
        this.leastMm = leastMm;
        this.mostMm = mostMm;
        this.taken = taken;
        setId(id);
        setPrefColumnCount(5);
        setMinWidth(USE_PREF_SIZE);
        getStyleClass().add("length-field");
        setAccessibleText(sentence);
        Ui.tip(this, sentence + "  [Up and Down: 1 mm, with Shift 10 mm]");
        setOnAction(e -> {
            take();
            entered.run();
        });
        focusedProperty().addListener((o, before, now) -> {
            if (!now) {
                take();
            }
        });
        textProperty().addListener((o, before, now) -> pseudoClassStateChanged(WRONG, read().isEmpty()));
        addEventFilter(KeyEvent.KEY_PRESSED, this::key);
    }

    /** Sets what happens after Enter. */
    void onEntered(Runnable action) {
        entered = action;
    }

    /** Shows a length. */
    void show(double mm, LengthUnit in) {
        boolean same = mm == valueMm && in == unit;
        valueMm = mm;
        unit = in;
        if (!same || !isFocused()) {
            setText(in.numberOfMm(mm));
        }
    }

    private OptionalDouble read() {
        OptionalDouble mm = unit.parseMm(getText());
        return mm.isPresent() && mm.getAsDouble() >= leastMm && mm.getAsDouble() <= mostMm
                ? mm
                : OptionalDouble.empty();
    }

    private void take() {
        if (getText().equals(unit.numberOfMm(valueMm))) {
            return; // as shown: the finer value behind it stays
        }
        read().ifPresentOrElse(taken, () -> setText(unit.numberOfMm(valueMm)));
    }

    private void key(KeyEvent e) {
        if (e.getCode() == KeyCode.UP || e.getCode() == KeyCode.DOWN) {
            double step = (e.isShiftDown() ? 10 : 1) * (e.getCode() == KeyCode.UP ? 1 : -1);
            double from = read().orElse(valueMm);
            taken.accept(Math.max(leastMm, Math.min(mostMm, from + step)));
            e.consume();
        } else if (e.getCode() == KeyCode.ESCAPE) {
            setText(unit.numberOfMm(valueMm));
        }
    }
}
