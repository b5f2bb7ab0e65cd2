package inkground.viewer.state;

import java.util.stream.IntStream;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.collections.ObservableMap;

/** Places that the user watches while substrates and inks change. */
public final class Pins {
    /** Most pins: more cannot be told apart on a page, and each is measured anew when something changes. */
    public static final int MOST = 99;

    /**
     * One watched place.
     *
     * @param number that it is known by, from 1; stays while other pins go
     * @param page from 1
     * @param xPt page x in points
     * @param yPt page y in points
     * @param pxPerPt how fine it is looked at, in device pixels per point: as when it was pinned
     */
    public record Pin(int number, int page, double xPt, double yPt, double pxPerPt) {}

    /** The pins, by number. */
    public final ObservableList<Pin> all = FXCollections.observableArrayList();
    /** What lies at each pin now; nothing for a pin that is not measured yet. */
    public final ObservableMap<Pin, Probe> readings = FXCollections.observableHashMap();

    /** None. */
    Pins() {}

    /**
     * Adds a pin with the lowest free number.
     *
     * @return false if there are too many
     */
    public boolean pin(Probe probe, int page, double pxPerPt) {
        if (all.size() >= MOST) {
            return false;
        }
        int number = IntStream.rangeClosed(1, MOST)
                .filter(n -> all.stream().noneMatch(pin -> pin.number() == n))
                .findFirst()
                .orElseThrow();
        Pin pin = new Pin(number, page, probe.xPt(), probe.yPt(), pxPerPt);
        readings.put(pin, probe);
        all.add((int) all.stream().filter(other -> other.number() < number).count(), pin);
        return true;
    }

    /** Keeps the pins of a page where they are on the artwork, which became so many times as large. */
    void scale(int page, double factor) {
        all.replaceAll(pin -> pin.page() == page
                ? new Pin(pin.number(), page, pin.xPt() * factor, pin.yPt() * factor, pin.pxPerPt() / factor)
                : pin);
        readings.clear();
    }

    /** Takes one away. */
    public void remove(Pin pin) {
        all.remove(pin);
        readings.remove(pin);
    }

    /** Takes all away. */
    public void clear() {
        all.clear();
        readings.clear();
    }
}
