package inkground.viewer;

import inkground.artwork.PictureSize;
import inkground.artwork.Sizing;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.viewer.desk.SizeDesk;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import java.util.Locale;
import javafx.beans.Observable;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Asks over the proof, which already shows the size taken, how wide the artwork is; the height follows. */
final class SizeBar extends HBox {
    private static final PseudoClass WRONG = PseudoClass.getPseudoClass("wrong");

    private final ViewerState state;
    private final SizeDesk desk;
    private final Label asks = Ui.label("", "asks");
    private final Label words = Ui.label("", "quiet");
    private final TextField width = new TextField();
    private final Label height = Ui.label("");

    /** Shown while there is something to ask. */
    SizeBar(ViewerState state, SizeDesk desk) {
        this.state = state;
        this.desk = desk;
        setId("size-bar");
        getStyleClass().add("asking-bar");
        setAlignment(Pos.CENTER_LEFT);
        asks.setId("size-asks");
        asks.setWrapText(true);
        words.setId("size-words");
        words.setWrapText(true);
        VBox text = new VBox(asks, words);
        text.setMinWidth(0);
        HBox.setHgrow(text, Priority.ALWAYS);
        width.setId("size-width");
        width.getStyleClass().add("length-field");
        width.setPrefColumnCount(6);
        width.setMinWidth(USE_PREF_SIZE);
        width.setAccessibleText("Width of the artwork; its height follows");
        Ui.tip(width, "Width of the artwork; its height follows  [Enter takes it]");
        width.textProperty().addListener((Observable o) -> tell());
        width.setOnAction(e -> take());
        height.setId("size-height");
        height.setMinWidth(USE_PREF_SIZE);
        Button set = Ui.button(
                "size-set", "Set", "Reads the artwork again as wide as that. Ctrl+Z takes it back", this::take);
        set.getStyleClass().add("leading");
        Button keep = Ui.button("size-keep", "Keep", "Leaves the size as it is; this is not asked again", desk::keep);
        getChildren().addAll(text, width, height, set, keep);
        for (Observable value : new Observable[] {state.size.asked, state.view, state.unit}) {
            value.addListener(o -> ask());
        }
        ask();
    }

    /** Gives the keys to the width. */
    void focusWidth() {
        if (isVisible()) {
            width.requestFocus();
            width.selectAll();
        }
    }

    private void ask() {
        Sizing asked = state.size.asked.get();
        BenchView view = state.view.get();
        Ui.shown(this, asked != null && (view == BenchView.FLAT || view == BenchView.GARMENT));
        if (asked == null) {
            return;
        }
        asks.setText(
                asked.stated()
                        ? "How wide is this " + asked.unit().page() + "?"
                        : "This " + asked.unit().page() + " does not say how large it is: how wide is it?");
        width.setText(
                state.unit.get().numberOfMm(asked.page(state.file.get().size()).widthMm()));
        tell();
    }

    /** Says what the typed width comes to, or what is wrong with it. */
    private void tell() {
        Sizing asked = state.size.asked.get();
        if (asked == null) {
            return;
        }
        LengthUnit unit = state.unit.get();
        try {
            PictureSize size = asShown() ? state.file.get().size() : desk.read(width.getText());
            Box page = asked.page(size);
            marked(false);
            height.setText("× " + unit.textOfMm(page.heightMm()));
            words.setText(String.format(
                    Locale.ROOT,
                    "%.0f × %.0f %s, %.0f per inch",
                    asked.across(),
                    asked.down(),
                    asked.unit().words(),
                    asked.perInch(size)));
        } catch (Refusal e) {
            marked(true);
            height.setText("× – " + unit.word());
            words.setText(e.getMessage());
        }
    }

    private void marked(boolean wrong) {
        width.pseudoClassStateChanged(WRONG, wrong);
    }

    /** The number shown is rounded: unchanged, it means the size as it is. */
    private boolean asShown() {
        double mm = state.size.asked.get().page(state.file.get().size()).widthMm();
        return width.getText().strip().equals(state.unit.get().numberOfMm(mm));
    }

    private void take() {
        if (asShown()) {
            desk.keep();
            return;
        }
        try {
            desk.take(desk.read(width.getText()));
        } catch (Refusal e) {
            tell();
            width.requestFocus();
        }
    }
}
