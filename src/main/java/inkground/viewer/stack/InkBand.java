package inkground.viewer.stack;

import inkground.ink.InkKind;
import inkground.viewer.state.Probe;
import inkground.viewer.state.ProofEngine.Figures;
import inkground.viewer.state.ProofEngine.InkCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import java.util.Locale;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;
import javafx.scene.shape.Rectangle;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** One ink in the cross-section: its layer, as long as the tint under the pointer, then its name, figures and switches. */
public final class InkBand extends HBox {
    /** Length of a solid layer. */
    public static final double LAYER_W = 72;
    /** Height of a layer. */
    public static final double LAYER_H = 44;

    private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");
    private static final PseudoClass OFF = PseudoClass.getPseudoClass("off");

    private final InkCard card;
    private final int plane;
    private final Rectangle ground = new Rectangle(LAYER_W, LAYER_H);
    private final Rectangle layer = new Rectangle(LAYER_W, LAYER_H);
    private final Label figures = Ui.label("", "quiet");
    private final ToggleButton show = new ToggleButton();
    private final ToggleButton solo = new ToggleButton();

    public InkBand(InkCard card, int plane, ViewerState state) {
        this.card = card;
        this.plane = plane;
        setId("ink-" + plane);
        getStyleClass().add("ink-band");
        setAlignment(Pos.CENTER_LEFT);
        ground.getStyleClass().add("layer-ground");
        layer.getStyleClass().add("layer");
        Pane section = new Pane(layer, ground);
        section.setMinSize(LAYER_W, LAYER_H);
        section.setMaxSize(LAYER_W, LAYER_H);
        Label name = Ui.label(card.ink().name(), "ink-name");
        VBox words = new VBox(name, figures);
        words.setAlignment(Pos.CENTER_LEFT);
        words.getStyleClass().add("ink-words");
        words.setMinWidth(0);
        HBox.setHgrow(words, Priority.ALWAYS);
        dress(show, "show-" + plane, "Hide or show " + card.ink().name(), Command.HIDE_INK);
        dress(solo, "solo-" + plane, "Show " + card.ink().name() + " alone", Command.SOLO_INK);
        solo.setGraphic(new FontIcon(Feather.TARGET));
        show.setOnAction(e -> state.toggleHidden(plane));
        solo.setOnAction(e -> state.toggleSolo(plane));
        getChildren().addAll(section, words, show, solo);
        setOnMouseClicked(e -> state.chosenInk.set(plane));
        Ui.tip(
                name,
                String.format(
                        Locale.ROOT,
                        "%s: %s. Opacity %.0f %%: 0 lets all that lies under it through, 100 hides it.",
                        card.ink().name(),
                        card.source(),
                        card.opacity() * 100));
        setAccessibleText(card.ink().name() + ", " + kindWord());
    }

    private static void dress(ToggleButton button, String id, String words, Command command) {
        button.setId(id);
        button.getStyleClass().add("small-switch");
        button.setAccessibleText(words);
        Ui.tip(button, words + "  [" + command.keys() + " for the chosen ink]");
    }

    private String kindWord() {
        return card.ink().kind() == InkKind.TECHNICAL
                ? "technical, not printed"
                : card.ink().kind().word();
    }

    int plane() {
        return plane;
    }

    /** Paints the layer in the ink's colour on the substrate. */
    public void colour(int argb) {
        layer.setFill(Color.rgb(argb >> 16 & 255, argb >> 8 & 255, argb & 255));
    }

    /** Takes over which inks are shown. */
    public void follow(ViewerState state) {
        boolean alone = state.solo.get() == plane;
        boolean hidden = state.hidden.contains(plane);
        boolean off = state.solo.get() >= 0 ? !alone : hidden;
        pseudoClassStateChanged(OFF, off);
        pseudoClassStateChanged(CHOSEN, state.chosenInk.get() == plane);
        show.setSelected(!hidden);
        show.setGraphic(new FontIcon(hidden ? Feather.EYE_OFF : Feather.EYE));
        solo.setSelected(alone);
        Probe probe = state.probe.get();
        boolean known = probe != null && plane < probe.tints().size();
        layer.setWidth(off ? 0 : LAYER_W * (known ? probe.tints().get(plane) / 255.0 : 1));
        figures.setText(known ? probe.percent(plane) + " % here" : use(state.figures.get()));
    }

    private String use(Figures measured) {
        if (measured == null || plane >= measured.inks().size()) {
            return kindWord();
        }
        double cm2 = measured.inks().get(plane).coveredCm2();
        return cm2 == 0 ? kindWord() + ", unused here" : kindWord() + ", " + Ui.area(cm2) + " cm²";
    }
}
