package inkground.viewer.rack;

import inkground.viewer.state.ProofEngine.Vanish;
import java.util.Locale;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.scene.control.Control;
import javafx.scene.control.Skin;

/**
 * How much of the artwork's edges vanish on a substrate, as a bar and a figure. Keeps its place while nothing is known. Looks:
 * {@link VanishBarSkin}.
 */
public final class VanishBar extends Control {
    private final double widthPx;
    private final ReadOnlyStringWrapper words = new ReadOnlyStringWrapper(this, "words", "");
    private final ReadOnlyObjectWrapper<Vanish> known = new ReadOnlyObjectWrapper<>(this, "known");

    /**
     * @param widthPx of the bar, logical pixels
     */
    public VanishBar(double widthPx) {
        this.widthPx = widthPx;
        getStyleClass().add("vanish");
        setFocusTraversable(false); // it is read, not worked
        setVisible(false);
    }

    @Override
    protected Skin<VanishBar> createDefaultSkin() {
        return new VanishBarSkin(this);
    }

    /**
     * @param before words put before the figure, where there is room
     */
    public void call(String before) {
        words.set(before);
    }

    /**
     * @param vanish what is known; null for nothing yet
     */
    public void show(Vanish vanish) {
        setVisible(vanish != null);
        known.set(vanish);
    }

    ReadOnlyObjectProperty<Vanish> known() {
        return known.getReadOnlyProperty();
    }

    ReadOnlyStringProperty words() {
        return words.getReadOnlyProperty();
    }

    double widthPx() {
        return widthPx;
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
