package inkground.viewer.desk;

import inkground.app.Arrangement;
import inkground.app.Session;
import inkground.artwork.ColourAssignment;
import inkground.artwork.PictureSize;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.handoff.CleanFile;
import inkground.substrate.Cut;
import inkground.substrate.PrintProcess;
import inkground.viewer.state.Look;
import inkground.viewer.state.ProofEngine;
import inkground.viewer.state.ProofEngine.Figures;
import inkground.viewer.state.ProofEngine.MapReport;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Activity;
import inkground.viewer.task.Outcome;
import inkground.viewer.task.RenderScheduler;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javafx.beans.Observable;
import javafx.beans.property.BooleanProperty;
import javafx.collections.SetChangeListener;

/**
 * Does what the user asks and fills the state with what comes of it. Reading, measuring and exporting each have their own
 * scheduler, so that none of them holds up another.
 */
public final class ProofDesk implements AutoCloseable {
    /** The executors of one window. */
    public interface Threads extends AutoCloseable {
        /** @return an executor of its own for one scheduler */
        Executor background(String name);

        /** @return runs on the window's thread, later */
        Executor ui();

        @Override
        void close();
    }

    /** @param trouble why the session beside the file is not used; null if it is, or there is none */
    private record Opened(OpenFile file, OpenPage page, Optional<Session> session, String trouble) {}

    private record MapFor(OpenPage page, Look look, boolean overprint, Set<Integer> layersOn) {}

    private record Stock(List<SubstrateCard> cards, List<PrintProcess> processes, List<Cut> cuts) {}

    /** Time between two looks at the open file. */
    private static final long WATCH_MS = 700;

    private record Measured(Figures figures, Optional<Box> inked) {}

    private final ViewerState state;
    private final ProofEngine engine;
    private final Recents recents;
    private final Threads threads;
    private final List<RenderScheduler> schedulers = new ArrayList<>();
    private final List<OpenFile> retired = new ArrayList<>();
    private final RenderScheduler reading;
    private final RenderScheduler measuring;
    private final RenderScheduler exporting;
    private final RenderScheduler stocking;
    private final RackDesk rack;
    private final RenderScheduler keeping;
    private final FileWatch watch;
    private final RenderScheduler mapping;
    private final CompareDesk comparison;
    private Session.View takenUp;
    private MapFor mapped;

    public ProofDesk(ViewerState state, ProofEngine engine, Recents recents, Threads threads) {
        this.state = state;
        this.engine = engine;
        this.recents = recents;
        this.threads = threads;
        reading = scheduler("reading");
        measuring = scheduler("measuring");
        exporting = scheduler("exporting");
        stocking = scheduler("stocking the rack");
        rack = new RackDesk(state, engine, recents, this);
        keeping = scheduler("keeping");
        mapping = scheduler("mapping");
        comparison = new CompareDesk(state, engine, this);
        watch = new FileWatch(WATCH_MS, threads.ui(), this::changedOutside);
        state.recent.setAll(recents.files());
        state.theme.set(recents.theme());
        state.unit.set(recents.unit());
        state.theme.addListener((Observable o) -> recents.keep(state.theme.get(), state.unit.get()));
        state.unit.addListener((Observable o) -> recents.keep(state.theme.get(), state.unit.get()));
        state.trueSize.screen.addListener((o, before, now) -> state.trueSize.measuredPxPerMm.set(recents.pxPerMm(now)));
        state.trueSize.measuredPxPerMm.addListener((Observable o) ->
                recents.keepPxPerMm(state.trueSize.screen.get(), state.trueSize.measuredPxPerMm.get()));
        new PinReader(state, scheduler("reading the pins"));
        // Measuring waits for the first picture, which the user waits for.
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
        state.history.now().addListener((o, before, now) -> {
            if (state.file.get() != null && !state.file.get().size().equals(now.size())) {
                readAgain(state::resized);
            } else if (!before.assignment().equals(now.assignment())) {
                reassign();
            }
        });
    }

    /** @return what does the work of the rack */
    public RackDesk rack() {
        return rack;
    }

    /** @return what compares with an earlier revision or an approval record */
    public CompareDesk comparison() {
        return comparison;
    }

    RenderScheduler scheduler(String name) {
        RenderScheduler scheduler = new RenderScheduler(threads.background(name), threads.ui());
        schedulers.add(scheduler);
        return scheduler;
    }

    /** @return a scheduler of its own for a view that computes what it shows */
    public RenderScheduler forView(String name) {
        return scheduler(name);
    }

    /** @return the window's thread */
    public Executor ui() {
        return threads.ui();
    }

    /** Fills the rack. */
    public void stockRack() {
        work(
                "Reading the substrates",
                stocking,
                (cancel, activity) -> new Stock(engine.substrates(), engine.processes(), engine.cuts()),
                this::stocked);
    }

    private void stocked(Stock stock) {
        state.overlays.processes.setAll(stock.processes());
        List<SubstrateCard> cards = stock.cards();
        state.worn.cuts.setAll(stock.cuts());
        state.substrates.setAll(cards);
        if (state.substrate.get() == null && !cards.isEmpty()) {
            state.substrate.set(cards.get(0));
        }
        engine.own().faults().stream().findFirst().ifPresent(state.trouble::set);
        if (takenUp != null && state.page.get() != null) {
            state.takeUp(takenUp); // the file was faster than the rack
        }
    }

    /** @return the demo artwork, where there is one */
    public Optional<Path> demo() {
        return engine.demo();
    }

    /** Opens a file at its first page; the one now open stays until the new one is read. */
    public void open(Path path) {
        state.trouble.set(null);
        work(
                "Reading " + path.getFileName(),
                reading,
                (FileReading) (cancel, activity) -> readWithSession(path, cancel, activity),
                this::opened);
    }

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
            trouble = "The size kept for this file is not taken. " + e.getMessage();
        }
        return new Opened(opened.file(), opened.page(), session, trouble);
    }

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
        measuring.cancel();
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
        if (takenUp != null) {
            state.takeUp(takenUp);
        }
        state.trouble.set(opened.trouble());
        opened.session().ifPresent(s -> state.news.set("As it was kept: order, colours and substrate"));
        watch.watch(opened.file().path());
        state.recent.setAll(recents.add(opened.file().path()));
        retire(before);
    }

    /** Closes a file once nothing that is being written needs it. */
    void retire(OpenFile file) {
        if (file != null) {
            retired.add(file);
            closeRetired();
        }
    }

    /** Reads the page anew with the colour rules of now, and keeps looking at the same place. */
    private void reassign() {
        OpenFile file = state.file.get();
        if (file == null) {
            return;
        }
        int number = state.page.get().info().number();
        ColourAssignment assignment = state.history.get().assignment();
        work(
                "Assigning colours",
                reading,
                (cancel, activity) -> file.page(number, assignment, cancel, activity),
                page -> {
                    measuring.cancel();
                    state.replace(file, page);
                });
    }

    /** Reads the file again, as it is now, and keeps looking at the same place in the same way. */
    public void reload() {
        readAgain(state::replace);
    }

    private void readAgain(BiConsumer<OpenFile, OpenPage> show) {
        OpenFile before = state.file.get();
        if (before == null) {
            return;
        }
        int number = state.page.get().info().number();
        Arrangement arrangement = state.history.get();
        state.trouble.set(null);
        work(
                "Reading " + before.path().getFileName() + " again",
                reading,
                (FileReading) (cancel, activity) -> read(before.path(), number, arrangement, cancel, activity),
                opened -> {
                    measuring.cancel();
                    show.accept(opened.file(), opened.page());
                    retire(before);
                });
    }

    /** A proof that is being written may still need the file that was open before. */
    private void closeRetired() {
        if (!exporting.busy()) {
            retired.forEach(OpenFile::close);
            retired.clear();
        }
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
            work(
                    "Reading page " + number,
                    reading,
                    (cancel, activity) -> file.page(number, assignment, cancel, activity),
                    page -> state.show(file, page));
        }
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
            work(
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

    private void unmeasure() {
        measuring.cancel();
        state.figures.set(null);
        state.worn.inkedPt.set(null);
        state.pictured.set(false);
    }

    private void measure() {
        OpenPage page = state.page.get();
        boolean overprint = state.overprint.get();
        Set<Integer> layersOn = Set.copyOf(state.layersOn);
        work(
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
        work("Keeping the session", keeping, (cancel, activity) -> engine.keep(session, artwork), (Path file) -> {
            state.kept.set(session.arrangement());
            state.news.set("Kept in " + file.getFileName());
            then.run();
        });
    }

    /** The open file was written by another program. */
    private void changedOutside() {
        state.news.set("The file was changed; reading it again");
        reload();
    }

    /** Writes a file about a page. */
    @FunctionalInterface
    public interface PageWriter {
        /** Called off the window's thread; writes the whole file or nothing. */
        void write(OpenPage page, Cancel cancel, Progress progress) throws Refusal;
    }

    /**
     * Writes a file about the open page.
     *
     * @param target the file
     * @param sheet the sheet that asked for it, which is closed once it is written
     * @param written what to say then, before the name of the file
     */
    public void write(Path target, BooleanProperty sheet, String written, PageWriter writer) {
        state.trouble.set(null);
        OpenPage page = state.page.get();
        work(
                "Writing " + target.getFileName(),
                exporting,
                (cancel, activity) -> {
                    writer.write(page, cancel, activity);
                    return target;
                },
                file -> {
                    sheet.set(false);
                    state.news.set(written + ": " + file);
                });
    }

    /** Writes the clean file. */
    public void clean(Path target, boolean replace) {
        state.trouble.set(null);
        OpenFile file = state.file.get();
        ColourAssignment assignment = state.history.get().assignment();
        work(
                "Writing " + target.getFileName(),
                exporting,
                (cancel, activity) -> file.clean(assignment, target, replace, cancel, activity),
                (CleanFile.Result result) -> {
                    state.colours.cleanSheet.set(false);
                    state.news.set("Clean file written and compared: " + target + "; " + words(result));
                });
    }

    private static String words(CleanFile.Result result) {
        String removed = result.removed() + (result.removed() == 1 ? " object" : " objects") + " taken out";
        return result.knockedOut() == 0
                ? removed
                : removed + ", " + result.knockedOut() + " of them knocked out of what lay beneath";
    }

    /** Prints the colours of this artwork by the rules of another job, in place of those of now. */
    public void takeRules(Path from) {
        state.trouble.set(null);
        work(
                "Reading " + from.getFileName(),
                keeping,
                (cancel, activity) -> engine.rules(from),
                (ColourAssignment rules) -> {
                    state.history.change("take the colour rules of " + from.getFileName(), a -> a.assigning(rules));
                    state.news.set("Colour rules taken from " + from.getFileName() + ": "
                            + rules.rules().size());
                });
    }

    /** Stops what the user waits for. */
    public void cancelAll() {
        List.copyOf(state.activities).forEach(Activity::cancel);
    }

    /** Background work that reports to an activity. */
    interface Reading<T> {
        T run(Cancel cancel, Activity activity) throws Refusal;

        default void discard(T value) {}
    }

    /** Opens a file, and closes it again where it came too late to be wanted. */
    private interface FileReading extends Reading<Opened> {
        @Override
        default void discard(Opened late) {
            late.file().close();
        }
    }

    /**
     * Has something done on a scheduler, with an activity that the user sees and can stop.
     *
     * @param done takes what it made, on the window's thread; not called where it failed or was stopped
     */
    <T> Activity work(String what, RenderScheduler scheduler, Reading<T> work, Consumer<T> done) {
        return work(what, scheduler, work, done, () -> {});
    }

    /**
     * The same.
     *
     * @param ended called however it ends, after {@code done}
     */
    <T> Activity work(String what, RenderScheduler scheduler, Reading<T> work, Consumer<T> done, Runnable ended) {
        Activity activity = new Activity(threads.ui(), what, scheduler == exporting);
        state.activities.add(activity);
        Cancel cancel = scheduler.submit(
                new RenderScheduler.Work<T>() {
                    @Override
                    public T run(Cancel c) throws Refusal {
                        return work.run(c, activity);
                    }

                    @Override
                    public void discard(T value) {
                        work.discard(value);
                    }
                },
                outcome -> {
                    state.activities.remove(activity);
                    settle(outcome, done);
                    ended.run();
                    closeRetired();
                });
        activity.stopsBy(cancel);
        return activity;
    }

    private <T> void settle(Outcome<T> outcome, Consumer<T> done) {
        if (outcome instanceof Outcome.Done<T> made) {
            done.accept(made.value());
        } else if (outcome instanceof Outcome.Failed<T> failed) {
            state.trouble.set(failed.message());
        }
    }

    /** Stops all work and lets go of the file. */
    @Override
    public void close() {
        watch.close();
        schedulers.forEach(RenderScheduler::close);
        retired.forEach(OpenFile::close);
        Stream.of(state.file.get(), state.comparison.file.get())
                .filter(Objects::nonNull)
                .forEach(OpenFile::close);
        threads.close();
    }
}
