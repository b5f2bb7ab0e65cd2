package inkground.viewer.colours;

import inkground.app.ColourUse;
import inkground.app.ColourWords;
import inkground.app.Grounds.Candidate;
import inkground.app.Grounds.Reason;
import inkground.viewer.desk.ColourDesk;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import java.util.Locale;
import javafx.beans.Observable;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;
import javafx.scene.shape.Rectangle;

/** Asks once for each file, quietly and over the proof, whether a colour is the garment painted in for preview. */
public final class GroundBar extends HBox {
    private final ViewerState state;
    private final Rectangle swatch = new Rectangle(30, 30);
    private final Label asks = Ui.label("", "asks");
    private final Label instead = Ui.label("", "quiet");

    /** Shown while there is something to ask. */
    public GroundBar(ViewerState state, ColourDesk desk) {
        this.state = state;
        setId("ground-bar");
        getStyleClass().add("asking-bar");
        setAlignment(Pos.CENTER_LEFT);
        swatch.getStyleClass().add("colour-swatch");
        asks.setId("ground-asks");
        asks.setWrapText(true);
        instead.setId("ground-instead");
        instead.setWrapText(true);
        VBox words = new VBox(asks, instead);
        words.setMinWidth(0);
        HBox.setHgrow(words, Priority.ALWAYS);
        Button bare = Ui.button(
                "ground-bare",
                "Print as bare",
                "No ink arrives wherever this colour is seen; what lies beneath it stays hidden. Ctrl+Z takes it back",
                desk::printGroundBare);
        bare.getStyleClass().add("leading");
        Button keep = Ui.button(
                "ground-keep",
                "Keep",
                "It is part of the artwork and is printed; this is not asked again",
                desk::keepGround);
        getChildren().addAll(swatch, words, bare, keep);
        state.colours.ground.addListener((Observable o) -> ask());
        state.colours.deletion.addListener((Observable o) -> ask());
        state.view.addListener((Observable o) -> ask());
        state.size.asked.addListener((Observable o) -> ask()); // one question at a time
        ask();
    }

    private void ask() {
        Candidate candidate = state.colours.ground.get();
        BenchView view = state.view.get();
        // The other views have a bar of their own where this one lies.
        Ui.shown(
                this,
                candidate != null
                        && state.size.asked.get() == null
                        && (view == BenchView.FLAT || view == BenchView.GARMENT));
        if (candidate == null) {
            return;
        }
        int rgb = candidate.use().rgb();
        swatch.setFill(Color.rgb(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255));
        asks.setText(question(candidate));
        String deletion = state.colours.deletion.get();
        instead.setText(
                "Printed as bare, what lies beneath stays hidden" + (deletion.isEmpty() ? "." : "; " + deletion + "."));
    }

    private String question(Candidate candidate) {
        ColourUse use = candidate.use();
        boolean fills = candidate.reasons().contains(Reason.FILLS_THE_PAGE);
        boolean near = candidate.reasons().contains(Reason.NEAR_THE_GARMENT);
        String what = "The " + ColourWords.of(use.lab()).toLowerCase(Locale.ROOT)
                + (fills ? " that fills the page" : "") + " (" + use.words() + ")";
        String close = near
                ? String.format(
                        Locale.ROOT,
                        " is close to %s (ΔE00 %.1f)",
                        state.substrate.get().name(),
                        candidate.garmentDe00())
                : " is printed as ink";
        return what + close + ": is it the garment, painted in for preview?";
    }
}
