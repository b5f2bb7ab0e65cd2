package inkground.viewer.rack;

import inkground.viewer.state.ProofEngine.Vanish;
import inkground.viewer.ui.Ui;
import java.util.Locale;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;

/** How much of the artwork's edges vanish on a substrate, as a bar and a figure. Keeps its place while nothing is known. */
public final class VanishBar extends HBox {
    private final Region lost = new Region();
    private final Pane track = new Pane(lost);
    private final Label figure = Ui.label("", "vanish-figure");
    private final double widthPx;
    private final String prefix;
    private Tooltip tip;

    /**
     * @param widthPx of the bar, logical pixels
     * @param prefix before the figure
     */
    public VanishBar(double widthPx, String prefix) {
        this.widthPx = widthPx;
        this.prefix = prefix;
        getStyleClass().add("vanish");
        track.getStyleClass().add("vanish-track");
        track.setMinWidth(widthPx);
        track.setMaxWidth(widthPx);
        lost.getStyleClass().add("vanish-lost");
        figure.setMinWidth(USE_PREF_SIZE);
        getChildren().addAll(track, figure);
        show(null);
    }

    /**
     * @param vanish what is known; null for nothing yet
     */
    public void show(Vanish vanish) {
        setVisible(vanish != null);
        if (tip != null) {
            Tooltip.uninstall(this, tip);
            tip = null;
        }
        if (vanish != null) {
            figure.setText(prefix + percent(vanish));
            lost.resizeRelocate(0, 0, Math.round(widthPx * vanish.share()), 4);
            tip = new Tooltip(sentence(vanish));
            Tooltip.install(this, tip);
        }
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
