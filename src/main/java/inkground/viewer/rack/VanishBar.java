package inkground.viewer.rack;

import inkground.viewer.state.ProofEngine.Vanish;
import inkground.viewer.ui.Ui;
import java.util.Locale;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;

/** How much of the artwork's edges vanish on a substrate, as a bar and a figure. Keeps its place while nothing is known. */
public final class VanishBar extends HBox {
    private final Region lost = new Region();
    private final Pane track = new Pane(lost);
    private final Label figure = Ui.label("", "vanish-figure");
    private final double widthPx;
    private String prefix = "";
    private Vanish known;

    /**
     * @param widthPx of the bar, logical pixels
     */
    public VanishBar(double widthPx) {
        this.widthPx = widthPx;
        getStyleClass().add("vanish");
        track.getStyleClass().add("vanish-track");
        track.setMinWidth(widthPx);
        track.setMaxWidth(widthPx);
        lost.getStyleClass().add("vanish-lost");
        lost.setManaged(false);
        figure.setMinWidth(USE_PREF_SIZE);
        getChildren().addAll(track, figure);
        show(null);
    }

    /**
     * @param words put before the figure, where there is room
     */
    public void call(String words) {
        prefix = words;
    }

    /**
     * @param vanish what is known; null for nothing yet
     */
    public void show(Vanish vanish) {
        setVisible(vanish != null);
        if (vanish != null && !vanish.equals(known)) {
            figure.setText(prefix + percent(vanish));
            lost.resizeRelocate(0.5, 0.5, Math.round((widthPx - 1) * vanish.share()), 4);
            Ui.tip(this, sentence(vanish));
        }
        known = vanish;
    }

    /** @return the share in per cent, rounded */
    public static String percent(Vanish vanish) {
        return vanish.share() > 0 && vanish.share() < 0.005 ? "<1 %" : Math.round(vanish.share() * 100) + " %";
    }

    /** @return what the score means here */
    public static String sentence(Vanish vanish) {
        return String.format(
                Locale.ROOT,
                "Vanish score %s: of %.0f cm of edges that the artwork means to be seen,%nthe worth of %.0f cm loses its"
                        + " contrast on this substrate.",
                percent(vanish),
                vanish.edgesMm() / 10,
                vanish.lostMm() / 10);
    }
}
