package inkground.viewer.desk;

import inkground.viewer.state.ProofEngine;
import inkground.viewer.state.ViewerState;
import javafx.beans.Observable;

/**
 * Does what the user asks and fills the state with what comes of it: sets up all that works for one window, and hands out who does
 * what. Made and used on the window's thread only; how work leaves that thread and comes back is the matter of {@link
 * BackgroundWork}.
 */
public final class ProofDesk implements AutoCloseable {
    private final BackgroundWork work;
    private final WriteDesk writing;
    private final RackDesk rack;
    private final CompareDesk comparison;
    private final FileDesk files;
    private final KeepDesk keeping;

    /** Begins to listen, and takes from {@code recents} what the user chose in earlier windows. */
    public ProofDesk(ViewerState state, ProofEngine engine, Recents recents, BackgroundWork.Threads threads) {
        work = new BackgroundWork(state, threads);
        writing = new WriteDesk(state, work);
        keeping = new KeepDesk(state, engine, work);
        remember(state, recents);
        // In this order: those who listen to the same value are told in turn.
        rack = new RackDesk(state, engine, recents, work);
        comparison = new CompareDesk(state, engine, work, writing);
        new PinReader(state, work.scheduler("reading the pins"));
        MeasureDesk measuring = new MeasureDesk(state, work);
        files = new FileDesk(state, engine, recents, work, measuring, writing);
    }

    private static void remember(ViewerState state, Recents recents) {
        state.theme.set(recents.theme());
        state.unit.set(recents.unit());
        state.theme.addListener((Observable o) -> recents.keep(state.theme.get(), state.unit.get()));
        state.unit.addListener((Observable o) -> recents.keep(state.theme.get(), state.unit.get()));
        state.trueSize.screen.addListener((o, before, now) -> state.trueSize.measuredPxPerMm.set(recents.pxPerMm(now)));
        state.trueSize.measuredPxPerMm.addListener((Observable o) ->
                recents.keepPxPerMm(state.trueSize.screen.get(), state.trueSize.measuredPxPerMm.get()));
    }

    /** Fills the rack; a file that was opened meanwhile is laid on the substrate it was kept on. */
    public void stockRack() {
        rack.stock(files::takeUpView);
    }

    /** @return what opens files and turns their pages */
    public FileDesk files() {
        return files;
    }

    /** @return what keeps what was decided */
    public KeepDesk keeping() {
        return keeping;
    }

    /** @return what writes files for the client and the printer */
    public WriteDesk writing() {
        return writing;
    }

    /** @return what does the work of the rack */
    public RackDesk rack() {
        return rack;
    }

    /** @return what compares with an earlier revision or an approval record */
    public CompareDesk comparison() {
        return comparison;
    }

    /** @return what has work done off the window's thread */
    public BackgroundWork work() {
        return work;
    }

    /** Stops all work and lets go of all files. */
    @Override
    public void close() {
        work.close(); // first, as work that is not stopped would trip over a file that is closed under it
        writing.close();
        files.close();
        comparison.close();
    }
}
