package inkground.viewer.desk;

import inkground.geometry.Box;
import inkground.viewer.state.Look;
import inkground.viewer.state.ProofEngine.Figures;
import inkground.viewer.state.ProofEngine.MapReport;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.RenderScheduler;
import java.util.Optional;
import java.util.Set;
import javafx.beans.Observable;
import javafx.collections.SetChangeListener;

/**
 * Measures what is shown: the inks of the page, and the map over it. Both wait for the first sharp picture, which the user waits
 * for, and both are measured anew when something changes that decides them; the newest wins, and figures of another page or look
 * are never shown. Used on the window's thread only.
 */
final class MeasureDesk {
    private record Measured(Figures figures, Optional<Box> inked) {}

    /** All that decides the figures of a map. */
    private record MapFor(OpenPage page, Look look, boolean overprint, Set<Integer> layersOn) {}

    private final ViewerState state;
    private final BackgroundWork work;
    private final RenderScheduler measuring;
    private final RenderScheduler mapping;
    private MapFor mapped;

    /** Begins to listen. */
    MeasureDesk(ViewerState state, BackgroundWork work) {
        this.state = state;
        this.work = work;
        measuring = work.scheduler("measuring");
        mapping = work.scheduler("mapping");
        state.pictured.addListener((Observable o) -> {
            if (state.pictured.get()) {
                measure();
            }
        });
        for (Observable value : new Observable[] {
            state.pictured, state.overlays.map, state.substrate, state.solo, state.hidden, state.history.now()
        }) {
            value.addListener(o -> measureMap());
        }
        state.overlays.limits().forEach(limit -> limit.addListener((Observable o) -> measureMap()));
        // What prints otherwise measures otherwise; the new picture comes first here too.
        SetChangeListener<Integer> layers = c -> unmeasure();
        state.layersOn.addListener(layers);
        state.overprint.addListener((Observable o) -> unmeasure());
    }

    private void measure() {
        OpenPage page = state.page.get();
        boolean overprint = state.overprint.get();
        Set<Integer> layersOn = Set.copyOf(state.layersOn);
        work.start(
                "Measuring the inks",
                measuring,
                (cancel, activity) -> new Measured(
                        page.measure(overprint, layersOn, cancel, activity),
                        page.inkedBox(overprint, layersOn, cancel, activity)),
                measured -> {
                    if (state.page.get() == page) {
                        state.worn.inkedPt.set(measured.inked().orElse(null));
                        state.measured(measured.figures());
                    }
                });
    }

    /** Stops measuring the inks, of a page that goes. */
    void stop() {
        measuring.cancel();
    }

    private void unmeasure() {
        measuring.cancel();
        state.figures.set(null);
        state.worn.inkedPt.set(null);
        state.pictured.set(false);
    }

    /** Measures the map that is shown, once the picture is there; forgets figures of another look at once. */
    private void measureMap() {
        mapping.cancel();
        Look look = state.look();
        MapFor wanted = look == null || look.map().isEmpty() || !state.pictured.get()
                ? null
                : new MapFor(state.page.get(), look.atRest(), state.overprint.get(), Set.copyOf(state.layersOn));
        if (wanted == null || !wanted.equals(mapped)) {
            state.overlays.report.set(null);
            mapped = null;
        }
        if (wanted != null && mapped == null) {
            work.start(
                    "Measuring the map",
                    mapping,
                    (cancel, activity) -> wanted.page()
                            .measureMap(wanted.look(), wanted.overprint(), wanted.layersOn(), cancel, activity),
                    (MapReport report) -> {
                        mapped = wanted;
                        state.overlays.report.set(report);
                    });
        }
    }
}
