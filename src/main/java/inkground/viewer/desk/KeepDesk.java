package inkground.viewer.desk;

import inkground.app.Session;
import inkground.artwork.ColourAssignment;
import inkground.viewer.state.ProofEngine;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.RenderScheduler;
import java.nio.file.Path;

/**
 * Keeps beside the artwork what was decided about it, and takes over what was kept beside another; the newest of these wins. Used
 * on the window's thread only.
 */
public final class KeepDesk {
    private final ViewerState state;
    private final ProofEngine engine;
    private final BackgroundWork work;
    private final RenderScheduler keeping;

    KeepDesk(ViewerState state, ProofEngine engine, BackgroundWork work) {
        this.state = state;
        this.engine = engine;
        this.work = work;
        keeping = work.scheduler("keeping");
    }

    /**
     * Keeps the session beside the artwork.
     *
     * @param then what to do once it is kept
     */
    public void keepSession(Runnable then) {
        if (state.page.get() == null) {
            return;
        }
        state.trouble.set(null);
        Path artwork = state.file.get().path();
        Session session = state.session();
        work.start("Keeping the session", keeping, (cancel, activity) -> engine.keep(session, artwork), (Path file) -> {
            state.kept.set(session.arrangement());
            state.news.set("Kept in " + file.getFileName());
            then.run();
        });
    }

    /** Prints the colours of this artwork by the rules of another job, in place of those of now. */
    public void takeRules(Path from) {
        state.trouble.set(null);
        work.start(
                "Reading " + from.getFileName(),
                keeping,
                (cancel, activity) -> engine.rules(from),
                (ColourAssignment rules) -> {
                    state.history.change("take the colour rules of " + from.getFileName(), a -> a.assigning(rules));
                    state.news.set("Colour rules taken from " + from.getFileName() + ": "
                            + rules.rules().size());
                });
    }
}
