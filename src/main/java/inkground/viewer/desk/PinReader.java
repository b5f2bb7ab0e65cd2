package inkground.viewer.desk;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import inkground.viewer.state.Look;
import inkground.viewer.state.Pins.Pin;
import inkground.viewer.state.Probe;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.Painter;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Outcome;
import inkground.viewer.task.RenderScheduler;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javafx.beans.Observable;
import javafx.collections.ListChangeListener;
import javafx.collections.SetChangeListener;

/**
 * Measures anew what lies at the pins whenever something changes that decides it. The tints are rasterised once for each page,
 * setting of overprint and layers; another substrate only costs the colours.
 */
final class PinReader {
    /** All that decides the tints at a pin. */
    private record Place(Pin pin, OpenPage page, boolean overprint, Set<Integer> layersOn) {}

    private record Spot(int[] tints, String cover) {}

    private final ViewerState state;
    private final RenderScheduler scheduler;
    // Used by the work alone, of which one piece runs at a time.
    private volatile Map<Place, Spot> spots = new HashMap<>();

    PinReader(ViewerState state, RenderScheduler scheduler) {
        this.state = state;
        this.scheduler = scheduler;
        for (Observable value : List.of(
                state.page, state.substrate, state.solo, state.overprint, state.history.now(), state.overlays.map)) {
            value.addListener(o -> read());
        }
        SetChangeListener<Integer> changed = c -> read();
        state.hidden.addListener(changed);
        state.layersOn.addListener(changed);
        state.pins.all.addListener((ListChangeListener<Pin>) c -> read());
    }

    private void read() {
        Look look = state.look();
        OpenPage page = state.page.get();
        List<Pin> pins = here(page);
        if (look == null || pins.isEmpty()) {
            return;
        }
        boolean overprint = state.overprint.get();
        Set<Integer> layersOn = Set.copyOf(state.layersOn);
        List<Place> places = pins.stream()
                .map(pin -> new Place(pin, page, overprint, layersOn))
                .toList();
        Look colours = look.solids(look.shown());
        scheduler.submit(cancel -> measure(places, page, colours, cancel), outcome -> settled(page, outcome));
    }

    private List<Pin> here(OpenPage page) {
        return page == null
                ? List.of()
                : state.pins.all.stream()
                        .filter(pin -> pin.page() == page.info().number())
                        .toList();
    }

    private void settled(OpenPage page, Outcome<List<Probe>> outcome) {
        if (outcome instanceof Outcome.Failed<List<Probe>> failed) {
            state.trouble.set(failed.message());
        } else if (outcome instanceof Outcome.Done<List<Probe>> done && state.page.get() == page) {
            for (Pin pin : here(page)) {
                done.value().stream()
                        .filter(probe -> probe.xPt() == pin.xPt() && probe.yPt() == pin.yPt())
                        .findFirst()
                        .ifPresent(probe -> state.pins.readings.put(pin, probe));
            }
        }
    }

    // Off the window's thread.
    private List<Probe> measure(List<Place> places, OpenPage page, Look look, Cancel cancel) throws Refusal {
        Map<Place, Spot> known = new HashMap<>();
        List<Probe> probes = new ArrayList<>();
        Painter painter = page.painter(look);
        for (Place place : places) {
            cancel.check();
            Spot spot = spots.get(place);
            if (spot == null) {
                spot = spot(place, cancel);
            }
            known.put(place, spot);
            List<Integer> tints = java.util.Arrays.stream(spot.tints()).boxed().toList();
            probes.add(new Probe(
                    place.pin().xPt(),
                    place.pin().yPt(),
                    tints,
                    spot.cover(),
                    painter.lab(spot.tints()),
                    page.asked(spot.tints())));
        }
        spots = known;
        return probes;
    }

    /** The one device pixel that the pin is in. */
    private static Spot spot(Place place, Cancel cancel) throws Refusal {
        double scale = place.pin().pxPerPt();
        int x = (int) Math.floor(place.pin().xPt() * scale);
        int y = (int) Math.floor(place.pin().yPt() * scale);
        PlateRequest pixel = new PlateRequest(scale, x, y, x + 1, y + 1, place.overprint(), place.layersOn());
        InkPlanes planes = place.page().render(pixel, cancel, Progress.NONE);
        int[] tints = new int[planes.inks().size()];
        for (int plane = 0; plane < tints.length; plane++) {
            tints[plane] = planes.get(plane, 0, 0);
        }
        return new Spot(tints, place.page().cover(planes, 0, 0));
    }
}
