package inkground.viewer.desk;

import inkground.artwork.PictureSize;
import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.Comparison;
import inkground.viewer.state.ProofEngine;
import inkground.viewer.state.ProofEngine.ApprovedAs;
import inkground.viewer.state.ProofEngine.CompareRequest;
import inkground.viewer.state.ProofEngine.Earlier;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Activity;
import inkground.viewer.task.RenderScheduler;
import java.nio.file.Path;
import java.util.List;
import javafx.beans.Observable;
import javafx.collections.SetChangeListener;

/** Opens what the open page is compared with, and finds out what changed since. */
public final class CompareDesk {
    private final ViewerState state;
    private final Comparison comparison;
    private final ProofEngine engine;
    private final BackgroundWork work;
    private final WriteDesk writing;
    private final RenderScheduler reading;
    private final RenderScheduler comparing;

    /**
     * Begins to listen.
     *
     * @param writing closes the files that are no longer compared with
     */
    CompareDesk(ViewerState state, ProofEngine engine, BackgroundWork work, WriteDesk writing) {
        this.state = state;
        this.comparison = state.comparison;
        this.engine = engine;
        this.work = work;
        this.writing = writing;
        reading = work.scheduler("reading the earlier");
        comparing = work.scheduler("comparing");
        for (Observable value : List.of(
                state.view,
                state.page,
                state.substrate,
                state.solo,
                state.overprint,
                state.history.now(),
                comparison.page,
                comparison.limitDe00)) {
            value.addListener(o -> measure());
        }
        SetChangeListener<Integer> planesOrLayers = c -> measure();
        state.hidden.addListener(planesOrLayers);
        state.layersOn.addListener(planesOrLayers);
    }

    /** Opens an earlier file at the page that is open, or an approval record; an earlier one goes. */
    public void open(Path path) {
        OpenPage page = state.page.get();
        if (page == null) {
            state.trouble.set("Open the artwork as it is now first; then compare it with " + path.getFileName() + ".");
            return;
        }
        state.trouble.set(null);
        int number = page.info().number();
        PictureSize size = state.file.get().size();
        work.start(
                "Reading " + path.getFileName(),
                reading,
                new BackgroundWork.Task<Earlier>() {
                    @Override
                    public Earlier run(Cancel cancel, Activity activity) throws Refusal {
                        return engine.earlier(path, size, number, cancel, activity);
                    }

                    @Override
                    public void discard(Earlier late) {
                        late.file().close();
                    }
                },
                this::opened);
    }

    private void opened(Earlier earlier) {
        OpenFile before = comparison.file.get();
        comparison.approved.set(earlier.approved().orElse(null));
        earlier.approved().ifPresent(this::layOnTheSame);
        comparison.page.set(earlier.page());
        comparison.file.set(earlier.file());
        state.view.set(BenchView.COMPARE);
        writing.retire(before);
    }

    /** Colours compare on one substrate; where the rack has the approved one no longer, the user chooses. */
    private void layOnTheSame(ApprovedAs approved) {
        SubstrateCard on = approved.on();
        state.substrates.stream()
                .filter(card -> card.id().equals(on.id()) && card.lab().equals(on.lab()))
                .findFirst()
                .ifPresent(state.substrate::set);
    }

    private void measure() {
        comparing.cancel();
        comparison.report.set(null);
        OpenPage before = comparison.page.get();
        OpenPage after = state.page.get();
        if (before == null || after == null || state.substrate.get() == null || state.view.get() != BenchView.COMPARE) {
            return;
        }
        CompareRequest request = new CompareRequest(
                before,
                state.look().solids(state.shownInks()),
                state.overprint.get(),
                state.layersOn,
                state.history.get().placement(),
                comparison.limitDe00.get());
        work.start(
                "Comparing",
                comparing,
                (cancel, activity) -> after.compare(request, cancel, activity),
                comparison.report::set);
    }

    /** Lets go of the earlier file; what reads it is to be stopped before. */
    void close() {
        if (comparison.file.get() != null) {
            comparison.file.get().close();
        }
    }
}
