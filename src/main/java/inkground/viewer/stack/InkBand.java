package inkground.viewer.stack;

import inkground.ink.InkKind;
import inkground.viewer.state.Probe;
import inkground.viewer.state.ProofEngine.Figures;
import inkground.viewer.state.ProofEngine.InkCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Drawer;
import inkground.viewer.ui.Ui;
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

/**
 * One ink in the cross-section: its layer, as long as the tint under the pointer, then its name, figures and where its colour
 * comes from, then its switches. Its settings lie in a drawer beneath it.
 */
public final class InkBand extends VBox {
    /** Length of a solid layer. */
    public static final double LAYER_W = 72;
    /** Height of a layer. */
    public static final double LAYER_H = 54;

    private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");
    private static final PseudoClass OFF = PseudoClass.getPseudoClass("off");

    private final InkCard card;
    private final int plane;
    private final Rectangle ground = new Rectangle(LAYER_W, LAYER_H);
    private final Rectangle layer = new Rectangle(LAYER_W, LAYER_H);
    private final Label figures = Ui.label("", "quiet");
    private final FontIcon eye = new FontIcon(Feather.EYE);
    private final ToggleButton show = new ToggleButton("", eye);
    private final ToggleButton solo = new ToggleButton();
    private final ToggleButton handle;
    private final HBox row = new HBox();
    private InkDrawer drawer;

    public InkBand(InkCard card, int plane, ViewerState state) {
        this.card = card;
        this.plane = plane;
        setId("ink-" + plane);
        getStyleClass().add("ink-band");
        ground.getStyleClass().add("layer-ground");
        layer.getStyleClass().add("layer");
        dress(show, "show-" + plane, "Hide or show " + card.ink().name(), Command.HIDE_INK);
        dress(solo, "solo-" + plane, "Show " + card.ink().name() + " alone", Command.SOLO_INK);
        solo.setGraphic(new FontIcon(Feather.TARGET));
        show.setOnAction(e -> state.toggleHidden(plane));
        solo.setOnAction(e -> state.toggleSolo(plane));
        handle = Drawer.handle(
                "drawer-" + plane, "Opacity, plate and place of " + card.ink().name());
        handle.setOnAction(e -> open(state, handle.isSelected()));
        VBox switches = new VBox(show, solo);
        switches.setAlignment(Pos.CENTER);
        row.setAlignment(Pos.CENTER_LEFT);
        row.getStyleClass().add("ink-row");
        row.getChildren().addAll(section(), words(), switches, handle);
        row.setOnMouseClicked(e -> state.chosenInk.set(plane));
        getChildren().add(row);
        setAccessibleText(card.ink().name() + ", " + kindWord() + ", colour from " + card.source());
    }

    private Pane section() {
        Pane section = new Pane(layer, ground);
        section.setMinSize(LAYER_W, LAYER_H);
        section.setMaxSize(LAYER_W, LAYER_H);
        return section;
    }

    private VBox words() {
        Label name = Ui.label(card.ink().name(), "ink-name");
        Label source = Ui.label(card.source(), "ink-source");
        VBox words = new VBox(name, figures, source);
        words.setAlignment(Pos.CENTER_LEFT);
        words.getStyleClass().add("ink-words");
        words.setMinWidth(0);
        HBox.setHgrow(words, Priority.ALWAYS);
        Ui.tip(name, card.ink().name() + ": drag it, or press Alt+Up or Alt+Down, to print it earlier or later");
        Ui.tip(source, "Where its colour comes from: " + card.source());
        return words;
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

    private void open(ViewerState state, boolean wanted) {
        state.chosenInk.set(plane);
        state.stack.inkDrawer.set(wanted);
    }

    int plane() {
        return plane;
    }

    /** @return the part that is taken hold of to drag the band */
    HBox row() {
        return row;
    }

    /** @return whether the band shows this ink, so that it can stay */
    boolean shows(InkCard other, int otherPlane) {
        return plane == otherPlane && card.equals(other);
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
        boolean chosen = state.chosenInk.get() == plane;
        pseudoClassStateChanged(OFF, off);
        pseudoClassStateChanged(CHOSEN, chosen);
        show.setSelected(!hidden);
        eye.setIconCode(hidden ? Feather.EYE_OFF : Feather.EYE);
        solo.setSelected(alone);
        Probe probe = state.probe.get();
        boolean known = probe != null && plane < probe.tints().size();
        layer.setWidth(off ? 0 : LAYER_W * (known ? probe.tints().get(plane) / 255.0 : 1));
        figures.setText(known ? probe.percent(plane) + " % here" : use(state.figures.get()));
        followDrawer(state, chosen && state.stack.inkDrawer.get());
    }

    private void followDrawer(ViewerState state, boolean open) {
        handle.setSelected(open);
        if (open && drawer == null) {
            drawer = new InkDrawer(card, plane, state);
            getChildren().add(drawer);
        }
        if (drawer != null) {
            Ui.shown(drawer, open);
            drawer.follow();
        }
    }

    /** Gives the keys to the opacity, in the open drawer. */
    void focusOpacity() {
        drawer.focusOpacity();
    }

    private String use(Figures measured) {
        if (measured == null || plane >= measured.inks().size()) {
            return kindWord();
        }
        double cm2 = measured.inks().get(plane).coveredCm2();
        return cm2 == 0 ? kindWord() + ", unused here" : kindWord() + ", " + Ui.area(cm2) + " cm²";
    }
}
