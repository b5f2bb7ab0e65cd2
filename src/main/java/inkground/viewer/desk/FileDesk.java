package inkground.viewer.desk;

import inkground.app.Arrangement;
import inkground.app.Session;
import inkground.app.SessionFile;
import inkground.artwork.ColourAssignment;
import inkground.artwork.PictureSize;
import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.viewer.state.ProofEngine;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Activity;
import inkground.viewer.task.RenderScheduler;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.BiConsumer;

/**
 * Opens files, turns their pages, and reads the page again when its file, its size or the ink of a colour changed. All of it is
 * one kind of work, of which the newest wins: who opens another file no longer waits for the page asked for before. What is shown
 * stays until the new page is read. Used on the window's thread only.
 */
public final class FileDesk {
    /** @param trouble why the session beside the file is not used; null if it is, or there is none */
    private record Opened(OpenFile file, OpenPage page, Optional<Session> session, String trouble) {}

    /** Opens a file, and closes it again where it came too late to be wanted. */
    private interface Opening extends BackgroundWork.Task<Opened> {
        @Override
        default void discard(Opened late) {
            late.file().close();
        }
    }

    /** Time between two looks at the open file. */
    private static final long WATCH_MS = 700;

    private final ViewerState state;
    private final ProofEngine engine;
    private final Recents recents;
    private final BackgroundWork work;
    private final MeasureDesk measuring;
    private final WriteDesk writing;
    private final RenderScheduler reading;
    private final FileWatch watch;
    private Session.View takenUp;

    /**
     * Begins to listen.
     *
     * @param measuring measures the page, and stops where another takes its place
     * @param writing closes the files that are no longer shown
     */
    FileDesk(
            ViewerState state,
            ProofEngine engine,
            Recents recents,
            BackgroundWork work,
            MeasureDesk measuring,
            WriteDesk writing) {
        this.state = state;
        this.engine = engine;
        this.recents = recents;
        this.work = work;
        this.measuring = measuring;
        this.writing = writing;
        reading = work.scheduler("reading");
        watch = new FileWatch(WATCH_MS, work.ui(), this::changedOutside);
        state.recent.setAll(recents.files());
        state.history.now().addListener((o, before, now) -> {
            if (state.file.get() != null && !state.file.get().size().equals(now.size())) {
                readAgain(state::resized);
            } else if (!before.assignment().equals(now.assignment())) {
                reassign();
            }
        });
    }

    /** @return the demo artwork, where there is one */
    public Optional<Path> demo() {
        return engine.demo();
    }

    /** Opens a file at its first page, or as it was kept; the one now open stays until the new one is read. */
    public void open(Path path) {
        state.trouble.set(null);
        work.start(
                "Reading " + path.getFileName(),
                reading,
                (Opening) (cancel, activity) -> readWithSession(path, cancel, activity),
                this::opened);
    }

    // Off the window's thread.
    private Opened readWithSession(Path path, Cancel cancel, Activity activity) throws Refusal {
        Optional<Session> session = Optional.empty();
        String trouble = null;
        try {
            session = engine.session(path);
        } catch (Refusal e) {
            // The artwork itself is sound; what was decided about it earlier is not lost, only not used.
            trouble = "What was kept about this file is not used. " + e.getMessage();
        }
        Arrangement arrangement = session.map(Session::arrangement).orElse(Arrangement.AS_FILED);
        int page = session.flatMap(Session::view).map(Session.View::page).orElse(1);
        Opened opened;
        try {
            opened = read(path, page, arrangement, cancel, activity);
        } catch (Refusal e) {
            if (!arrangement.size().chosen()) {
                throw e;
            }
            // Another file took the place of the one that had this size.
            arrangement = arrangement.sized(PictureSize.STATED);
            opened = read(path, page, arrangement, cancel, activity);
            session = Optional.of(new Session(arrangement, session.orElseThrow().view()));
            trouble = SessionFile.sizeNotTaken(e);
        }
        return new Opened(opened.file(), opened.page(), session, trouble);
    }

    // Off the window's thread.
    private Opened read(Path path, int page, Arrangement arrangement, Cancel cancel, Activity activity) throws Refusal {
        OpenFile file = engine.open(path, arrangement.size(), cancel, activity);
        boolean read = false;
        try {
            int number = Math.min(page, file.pageCount());
            Opened opened = new Opened(
                    file, file.page(number, arrangement.assignment(), cancel, activity), Optional.empty(), null);
            read = true;
            return opened;
        } finally {
            if (!read) {
                file.close();
            }
        }
    }

    private void opened(Opened opened) {
        OpenFile before = state.file.get();
        measuring.stop();
        Arrangement arrangement = opened.session().map(Session::arrangement).orElse(Arrangement.AS_FILED);
        if (before != null
                && !state.history.get().size().equals(state.kept.get().size())) {
            state.size.forget(before.path());
        }
        state.file.set(null); // what was decided about one file says nothing about the next
        state.history.restart(arrangement);
        if (opened.session().map(Session::groundAsked).orElse(false)) {
            state.colours.settleGround(opened.file().path());
        }
        opened.session()
                .flatMap(Session::sizeAsked)
                .ifPresent(extent -> state.size.settle(opened.file().path(), extent));
        state.kept.set(arrangement);
        state.pins.clear();
        state.camera.set(state.camera.get().turned(-state.camera.get().quarters()));
        state.show(opened.file(), opened.page());
        takenUp = opened.session().flatMap(Session::view).orElse(null);
        takeUpView();
        state.trouble.set(opened.trouble());
        opened.session().ifPresent(s -> state.news.set("As it was kept: order, colours and substrate"));
        watch.watch(opened.file().path());
        state.recent.setAll(recents.add(opened.file().path()));
        writing.retire(before);
    }

    /** Takes up what was looked at when the open file was kept; once more when the file was faster than the rack. */
    void takeUpView() {
        if (takenUp != null && state.page.get() != null) {
            state.takeUp(takenUp);
        }
    }

    /** Reads the file again, as it is now, and keeps looking at the same place in the same way. */
    public void reload() {
        readAgain(state::replace);
    }

    private void changedOutside() {
        state.news.set("The file was changed; reading it again");
        reload();
    }

    private void readAgain(BiConsumer<OpenFile, OpenPage> show) {
        OpenFile before = state.file.get();
        if (before == null) {
            return;
        }
        int number = state.page.get().info().number();
        Arrangement arrangement = state.history.get();
        state.trouble.set(null);
        work.start(
                "Reading " + before.path().getFileName() + " again",
                reading,
                (Opening) (cancel, activity) -> read(before.path(), number, arrangement, cancel, activity),
                opened -> {
                    measuring.stop();
                    show.accept(opened.file(), opened.page());
                    writing.retire(before);
                });
    }

    /** Reads the page anew with the colour rules of now, and keeps looking at the same place. */
    private void reassign() {
        OpenFile file = state.file.get();
        if (file == null) {
            return;
        }
        int number = state.page.get().info().number();
        ColourAssignment assignment = state.history.get().assignment();
        work.start(
                "Assigning colours",
                reading,
                (cancel, activity) -> file.page(number, assignment, cancel, activity),
                page -> {
                    measuring.stop();
                    state.replace(file, page);
                });
    }

    /** Turns to another page of the file; does nothing beyond its ends. */
    public void turnPage(int by) {
        if (state.page.get() != null) {
            turnTo(state.page.get().info().number() + by);
        }
    }

    /** Turns to a page of the file; does nothing beyond its ends. */
    public void turnTo(int number) {
        OpenFile file = state.file.get();
        if (file != null && number >= 1 && number <= file.pageCount()) {
            state.trouble.set(null);
            ColourAssignment assignment = state.history.get().assignment();
            work.start(
                    "Reading page " + number,
                    reading,
                    (cancel, activity) -> file.page(number, assignment, cancel, activity),
                    page -> state.show(file, page));
        }
    }

    /** Lets go of the open file; what reads it is to be stopped before. */
    void close() {
        watch.close();
        if (state.file.get() != null) {
            state.file.get().close();
        }
    }
}
