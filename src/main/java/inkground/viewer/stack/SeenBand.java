package inkground.viewer.stack;

import inkground.colour.Srgb;
import inkground.viewer.rack.SubstrateText;
import inkground.viewer.state.Probe;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import java.util.Locale;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;
import javafx.scene.shape.Rectangle;

/** What the eye sees from above, through all layers, where the pointer is. */
final class SeenBand extends HBox {
    private static final double SEEN_H = 34;

    private final ViewerState state;
    private final Rectangle seen = new Rectangle(InkBand.LAYER_W, SEEN_H);
    private final Label first = Ui.label("", "seen-words");
    private final Label second = Ui.label("", "quiet");

    SeenBand(ViewerState state) {
        this.state = state;
        setId("seen");
        getStyleClass().add("seen-band");
        setAlignment(Pos.CENTER_LEFT);
        seen.getStyleClass().add("seen-swatch");
        first.setId("seen-cover");
        second.setId("seen-colour");
        VBox words = new VBox(first, second);
        words.setAlignment(Pos.CENTER_LEFT);
        words.getStyleClass().add("ink-words");
        words.setMinWidth(0);
        HBox.setHgrow(words, Priority.ALWAYS);
        getChildren().addAll(seen, words);
        follow();
    }

    /** Takes over what lies under the pointer. */
    void follow() {
        Probe probe = state.probe.get();
        boolean known = probe != null && probe.lab() != null;
        if (known) {
            int argb = Srgb.labToArgb(probe.lab());
            seen.setFill(Color.rgb(argb >> 16 & 255, argb >> 8 & 255, argb & 255));
            first.setText(capitalised(probe.cover())
                    + (probe.totalPercent() > 0 ? ", total " + probe.totalPercent() + " %" : ""));
            second.setText(SubstrateText.lab(probe.lab())
                    + (probe.deltaE00().isPresent()
                            ? String.format(
                                    Locale.ROOT,
                                    ", ΔE00 %.1f to asked",
                                    probe.deltaE00().getAsDouble())
                            : ""));
        } else {
            seen.setFill(Color.TRANSPARENT);
            first.setText("Seen from above");
            second.setText("Point at the proof to read it");
        }
    }

    private static String capitalised(String words) {
        return words.isEmpty() ? words : Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
