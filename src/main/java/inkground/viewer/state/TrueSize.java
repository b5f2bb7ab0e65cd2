package inkground.viewer.state;

import inkground.geometry.Box;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;

/**
 * How large the screen's pixels are, so that a millimetre of the page can be a millimetre on the screen. A screen says of
 * itself what is often wrong, so the user measures it once with a card of known size.
 */
public final class TrueSize {
    /** Width of a card ID-1 in mm (ISO/IEC 7810). */
    public static final double CARD_W_MM = 85.60;
    /** Height of a card ID-1 in mm (ISO/IEC 7810). */
    public static final double CARD_H_MM = 53.98;
    /** Radius of its corners in mm (ISO/IEC 7810, from memory). */
    public static final double CARD_CORNER_MM = 3.18;
    /** Logical pixels per millimetre where nobody has measured: 96 per inch. */
    public static final double USUAL_PX_PER_MM = 96 / 25.4;
    /** Coarsest screen that can be measured: about 38 pixels per inch. */
    public static final double LEAST_PX_PER_MM = 1.5;
    /** Finest screen that can be measured: about 254 logical pixels per inch. */
    public static final double MOST_PX_PER_MM = 10;
    /** Share of the zoom that does not count: far below what an eye can measure. */
    private static final double SAME = 0.0005;

    /** Which screen the window is on, as its size and scale tell; empty before the window is shown. */
    public final StringProperty screen = new SimpleStringProperty(this, "screen", "");
    /** Logical pixels per millimetre on that screen, measured; 0 while it is not. */
    public final DoubleProperty measuredPxPerMm = new SimpleDoubleProperty(this, "measuredPxPerMm", 0);
    /** Whether the sheet for measuring is open. */
    public final BooleanProperty sheet = new SimpleBooleanProperty(this, "sheet");

    /** Nothing measured. */
    TrueSize() {}

    /** @return whether the screen has been measured */
    public boolean measured() {
        return measuredPxPerMm.get() > 0;
    }

    /** @return logical pixels per millimetre: measured, or as is usual */
    public double pxPerMm() {
        return measured() ? measuredPxPerMm.get() : USUAL_PX_PER_MM;
    }

    /** @return logical pixels per point at which a page is shown as large as it is */
    public double zoom() {
        return pxPerMm() * Box.MM_PER_PT;
    }

    /** @return how large a page is shown, in words: honest about what is not measured */
    public String words(double zoom) {
        double share = zoom / zoom();
        if (!measured()) {
            return percent(share) + " at 96 px/in";
        }
        return Math.abs(share - 1) < SAME ? "true size" : percent(share);
    }

    private static String percent(double share) {
        return String.format(java.util.Locale.ROOT, share < 0.1 ? "%.1f %%" : "%.0f %%", share * 100);
    }

    /** @return a measure held within what screens have */
    public static double limited(double pxPerMm) {
        return Math.max(LEAST_PX_PER_MM, Math.min(MOST_PX_PER_MM, pxPerMm));
    }
}
