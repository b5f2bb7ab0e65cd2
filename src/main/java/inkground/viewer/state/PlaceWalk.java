package inkground.viewer.state;

import inkground.viewer.state.ProofEngine.MapPlace;
import java.util.List;
import javafx.beans.Observable;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.SimpleIntegerProperty;

/** Goes from one place that the map found to the next, and has each looked at. */
public final class PlaceWalk {
    /** Which place is looked at, in the order of the report; -1 for none. */
    public final IntegerProperty at = new SimpleIntegerProperty(this, "at", -1);

    private final ViewerState state;

    PlaceWalk(ViewerState state) {
        this.state = state;
        state.overlays.report.addListener((Observable o) -> at.set(-1));
    }

    /** @return the places that the map found, the worst first; none while nothing is measured */
    public List<MapPlace> places() {
        ProofEngine.MapReport report = state.overlays.report.get();
        return report == null ? List.of() : report.places();
    }

    /**
     * Goes on, and around after the last; the first step leads to the first place, or backwards to the last.
     *
     * @param by 1 or −1
     */
    public void step(int by) {
        int count = places().size();
        if (count > 0) {
            lookAt(Math.floorMod(at.get() < 0 && by < 0 ? by : at.get() + by, count));
        }
    }

    /**
     * Looks at a place.
     *
     * @param place its index, 0 to one less than there are
     */
    public void lookAt(int place) {
        at.set(place);
        state.lookAt(places().get(place).box());
    }
}
