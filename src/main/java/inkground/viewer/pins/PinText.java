package inkground.viewer.pins;

import inkground.artwork.PageBox;
import inkground.geometry.Box;
import inkground.viewer.rack.SubstrateText;
import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.Pins.Pin;
import inkground.viewer.state.Probe;
import inkground.viewer.state.ViewerState;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What is to be said of one pin. */
record PinText(ViewerState state, Pin pin) {
    private boolean here() {
        return state.page.get() != null && state.page.get().info().number() == pin.page();
    }

    /** @return where it is, from the corner of the trim */
    String place() {
        if (!here()) {
            return "on page " + pin.page();
        }
        Box trim = state.page.get().info().box(PageBox.TRIM);
        LengthUnit unit = state.unit.get();
        String place = "x " + unit.number(pin.xPt() - trim.x0()) + "  y " + unit.text(pin.yPt() - trim.y0());
        return place.replace('-', '−');
    }

    /** @return the tints there and their total, or why there are none */
    String tints() {
        Probe probe = state.pins.readings.get(pin);
        if (!here() || probe == null) {
            return here() ? "Not measured yet" : "Turn to its page to read it";
        }
        List<String> words = new ArrayList<>();
        for (int plane = 0;
                plane < Math.min(probe.tints().size(), state.page.get().inks().size());
                plane++) {
            if (probe.percent(plane) > 0) {
                words.add(state.inkName(plane) + " " + probe.percent(plane));
            }
        }
        return words.isEmpty() ? probe.cover() : String.join("  ", words) + "  total " + probe.totalPercent() + " %";
    }

    /** @return the colour there, and how far from the colour asked for */
    String colour() {
        Probe probe = state.pins.readings.get(pin);
        if (!here() || probe == null || probe.lab() == null) {
            return "";
        }
        return SubstrateText.lab(probe.lab()) + "  " + SubstrateText.shift(probe);
    }

    /** @return all of it in one line */
    String whole() {
        return String.format(Locale.ROOT, "%d: %s; %s; %s", pin.number(), place(), tints(), colour())
                .replaceFirst("; $", "");
    }
}
