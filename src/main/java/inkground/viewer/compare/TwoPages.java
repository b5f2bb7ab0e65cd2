package inkground.viewer.compare;

import inkground.artwork.PageBox;
import inkground.geometry.Box;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.Camera;
import inkground.viewer.state.Comparison;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.ProofEngine.ApprovedAs;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ViewerState;
import java.util.HashSet;
import java.util.Set;
import javafx.beans.Observable;
import javafx.collections.SetChangeListener;

/**
 * The two states that the surfaces of a comparison look at. Both follow the window's state in substrate, inks and arrangement, but
 * for what was approved, which stays as it was; and each other in what part of the page is seen, laid on each other by the top left corners of their trims.
 */
final class TwoPages {
    private final ViewerState state;
    private final ViewerState before = new ViewerState();
    private final ViewerState after = new ViewerState();
    private boolean following;

    TwoPages(ViewerState state) {
        this.state = state;
        for (ViewerState one : new ViewerState[] {before, after}) {
            one.overlays.trim.set(false);
            one.unit.bind(state.unit);
        }
        after.overprint.bind(state.overprint);
        after.overlays.before.bind(state.comparison.page);
        after.overlays.limitDe00.bind(state.comparison.limitDe00);
        for (Observable value :
                new Observable[] {state.view, state.comparison.file, state.page, state.substrate, state.overprint}) {
            value.addListener(o -> turn());
        }
        for (Observable value : new Observable[] {state.solo, state.history.now()}) {
            value.addListener(o -> arrange());
        }
        SetChangeListener<Integer> hidden = c -> arrange();
        state.hidden.addListener(hidden);
        SetChangeListener<Integer> layers = c -> turn();
        state.layersOn.addListener(layers);
        state.comparison.way.addListener((Observable o) -> map());
        before.camera.addListener((Observable o) -> lead(before, after));
        after.camera.addListener((Observable o) -> lead(after, before));
        turn();
        map();
    }

    /** @return the state of the earlier revision's surface */
    ViewerState before() {
        return before;
    }

    /** @return the state of the open file's surface */
    ViewerState after() {
        return after;
    }

    /** Out of sight nothing is followed, so that nothing is rasterised. */
    private boolean inSight() {
        return state.view.get() == BenchView.COMPARE;
    }

    private void turn() {
        if (!inSight()) {
            return;
        }
        ApprovedAs approved = state.comparison.approved.get();
        before.substrate.set(approved == null ? state.substrate.get() : approved.on());
        before.overprint.set(approved == null ? state.overprint.get() : approved.overprint());
        after.substrate.set(state.substrate.get());
        show(before, state.comparison.file.get(), state.comparison.page.get());
        show(after, state.file.get(), state.page.get());
        if (approved != null) {
            print(before, approved.layersOn());
        }
        print(after, state.layersOn);
        arrange();
    }

    private static void print(ViewerState one, Set<Integer> layers) {
        one.layersOn.retainAll(layers);
        one.layersOn.addAll(layers);
    }

    private static void show(ViewerState one, OpenFile file, OpenPage page) {
        if (page != null && one.page.get() != page) {
            one.show(file, page);
        }
    }

    private void arrange() {
        arrange(before);
        arrange(after);
    }

    /** Inks are meant by their names: the other revision may have others. */
    private void arrange(ViewerState one) {
        if (!inSight() || one.page.get() == null || state.page.get() == null) {
            return;
        }
        one.history.restart(state.history.get());
        Set<Integer> hidden = new HashSet<>();
        int solo = -1;
        for (int plane = 0; plane < one.page.get().inks().size(); plane++) {
            int here = plane(one.inkName(plane));
            if (here >= 0 && state.hidden.contains(here)) {
                hidden.add(plane);
            }
            solo = here >= 0 && here == state.solo.get() ? plane : solo;
        }
        one.hidden.retainAll(hidden);
        one.hidden.addAll(hidden);
        one.solo.set(solo);
    }

    private int plane(String name) {
        for (int plane = 0; plane < state.page.get().inks().size(); plane++) {
            if (state.inkName(plane).equals(name)) {
                return plane;
            }
        }
        return -1;
    }

    private void map() {
        after.overlays.map.set(state.comparison.way.get() == Comparison.Way.CHANGES ? MapKind.CHANGES : null);
    }

    private void lead(ViewerState leader, ViewerState follower) {
        if (following || leader.page.get() == null || follower.page.get() == null) {
            return;
        }
        following = true;
        Camera from = leader.camera.get();
        Camera to = follower.camera.get();
        Box a = trim(leader);
        Box b = trim(follower);
        follower.fit.set(false);
        follower.camera.set(new Camera(
                from.zoom(),
                from.centreX() - a.x0() + b.x0(),
                from.centreY() - a.y0() + b.y0(),
                to.widthPx(),
                to.heightPx(),
                to.outputScale(),
                from.quarters()));
        following = false;
    }

    private static Box trim(ViewerState one) {
        return one.page.get().info().box(PageBox.TRIM);
    }

    /** Brings a place into the middle of both, large enough to be judged. */
    void lookAt(double x0Mm, double y0Mm, double x1Mm, double y1Mm) {
        Box trim = trim(after);
        Box place = new Box(
                trim.x0() + x0Mm / Box.MM_PER_PT,
                trim.y0() + y0Mm / Box.MM_PER_PT,
                trim.x0() + x1Mm / Box.MM_PER_PT,
                trim.y0() + y1Mm / Box.MM_PER_PT);
        after.lookAt(place);
    }
}
