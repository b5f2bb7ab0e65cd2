package inkground.viewer.desk;

import inkground.app.ColourSamples;
import inkground.app.OwnSubstrates;
import inkground.app.Photograph;
import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.ink.InkKind;
import inkground.substrate.Cut;
import inkground.substrate.PrintProcess;
import inkground.viewer.state.Look;
import inkground.viewer.state.ProofEngine;
import inkground.viewer.state.ProofEngine.Edges;
import inkground.viewer.state.ProofEngine.InkCard;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ProofEngine.Vanish;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Activity;
import inkground.viewer.task.RenderScheduler;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javafx.beans.Observable;
import javafx.collections.SetChangeListener;

/** Does the work of the rack: fills it, keeps favourites and own substrates, and finds out how the artwork holds on each. */
public final class RackDesk {
    /** Scores told at once, so that the first are seen soon. */
    private static final int TOLD_AT_ONCE = 12;

    private final ViewerState state;
    private final ProofEngine engine;
    private final BackgroundWork work;
    private final Executor ui;
    private final RenderScheduler stocking;
    private final RenderScheduler keeping;
    private final RenderScheduler reading;
    private final RenderScheduler scoring;
    private Gathered gathered;

    /** The edges of a page under its switches; they do not hang on the substrate. */
    private record Gathered(OpenPage page, boolean overprint, Set<Integer> layersOn, Edges edges) {
        boolean isOf(OpenPage other, boolean honoured, Set<Integer> on) {
            return page == other && overprint == honoured && layersOn.equals(on);
        }
    }

    /** All that hangs in the rack, and what it is printed by and cut into. */
    private record Stock(List<SubstrateCard> cards, List<PrintProcess> processes, List<Cut> cuts) {}

    /** One substrate to be scored. */
    private record Wanted(String id, Look look) {}

    RackDesk(ViewerState state, ProofEngine engine, Recents recents, BackgroundWork work) {
        this.state = state;
        this.engine = engine;
        this.work = work;
        ui = work.ui();
        stocking = work.scheduler("stocking the rack");
        keeping = work.scheduler("keeping own substrates");
        reading = work.scheduler("reading colours");
        scoring = work.scheduler("scoring substrates");
        state.rack.favourites.addAll(recents.favourites());
        state.rack.favourites.addListener(
                (SetChangeListener<String>) c -> recents.keepFavourites(state.rack.favourites));
        // Scores wait for the first picture, which the user waits for.
        state.pictured.addListener((Observable o) -> score());
        state.history.now().addListener((Observable o) -> score());
        state.substrates.addListener((Observable o) -> score());
        state.page.addListener((Observable o) -> unscore());
    }

    /**
     * Fills the rack.
     *
     * @param then what to do once it is filled
     */
    void stock(Runnable then) {
        work.start(
                "Reading the substrates",
                stocking,
                (cancel, activity) -> new Stock(engine.substrates(), engine.processes(), engine.cuts()),
                stock -> {
                    stocked(stock);
                    then.run();
                });
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
    }

    /** Keeps a new substrate and lays the artwork on it. */
    public void add(OwnSubstrates.Draft draft) {
        keep("Keeping " + draft.name(), () -> engine.own().add(draft), card -> card);
    }

    /** Keeps a substrate in place of another and lays the artwork on it. */
    public void replace(SubstrateCard before, OwnSubstrates.Draft draft) {
        keep("Keeping " + draft.name(), () -> engine.own().replace(before.id(), draft), card -> {
            state.rack.succeed(before.id(), card);
            return card;
        });
    }

    /** Removes a substrate; the artwork moves on to its neighbour. */
    public void remove(SubstrateCard card) {
        List<SubstrateCard> hung = state.rack.cards();
        int at = hung.indexOf(card);
        SubstrateCard neighbour =
                hung.size() < 2 ? state.substrates.get(0) : hung.get(at + 1 < hung.size() ? at + 1 : at - 1);
        keep(
                "Removing " + card.name(),
                () -> {
                    engine.own().remove(card.id());
                    return card;
                },
                removed -> {
                    state.rack.succeed(card.id(), null);
                    return state.substrate.get().equals(card) ? neighbour : state.substrate.get();
                });
    }

    private interface Keeping {
        SubstrateCard run() throws Refusal;
    }

    private record Kept(SubstrateCard card, List<SubstrateCard> all) {}

    private interface Next {
        SubstrateCard after(SubstrateCard kept);
    }

    private void keep(String what, Keeping change, Next next) {
        state.trouble.set(null);
        work.start(what, keeping, (cancel, activity) -> new Kept(change.run(), engine.substrates()), kept -> {
            SubstrateCard chosen = next.after(kept.card());
            state.substrates.setAll(kept.all());
            state.rack.query.set("");
            state.substrate.set(chosen);
            state.own.close();
            state.news.set(
                    kept.all().contains(kept.card())
                            ? "Kept as " + engine.own().file(kept.card().id())
                            : kept.card().name() + " removed");
        });
    }

    /** Reads a file of measured colours for the sheet. */
    public void readSamples(Path file) {
        state.trouble.set(null);
        work.start(
                "Reading " + file.getFileName(),
                reading,
                (cancel, activity) -> ColourSamples.read(file),
                state.own.samples::setAll);
    }

    /** Reads a photograph for the sheet. */
    public void readPhotograph(Path file) {
        state.trouble.set(null);
        work.start(
                "Reading " + file.getFileName(),
                reading,
                (cancel, activity) -> Photograph.read(file, cancel, activity),
                state.own.photograph::set);
    }

    private void unscore() {
        scoring.cancel();
        gathered = null;
        state.rack.scores.set(Map.of());
    }

    /** Scores all substrates that hang on what is arranged now; what is known stands until it is known anew. */
    private void score() {
        OpenPage page = state.page.get();
        if (page == null || !state.pictured.get() || state.substrates.isEmpty()) {
            scoring.cancel();
            return;
        }
        boolean overprint = state.overprint.get();
        Set<Integer> layersOn = Set.copyOf(state.layersOn);
        Gathered before = gathered;
        List<Wanted> wanted = state.substrates.stream()
                .map(card -> new Wanted(card.id(), printed(page, state.lookOn(card))))
                .toList();
        work.start(
                "Scoring how the artwork holds",
                scoring,
                (cancel, activity) -> {
                    Edges edges = before != null && before.isOf(page, overprint, layersOn)
                            ? before.edges()
                            : page.edges(overprint, layersOn, cancel, activity);
                    scoreAll(page, edges, wanted, cancel, activity);
                    return new Gathered(page, overprint, layersOn, edges);
                },
                done -> gathered = done);
    }

    /** All that prints counts, whatever is hidden from view. */
    private static Look printed(OpenPage page, Look look) {
        List<InkCard> inks = page.inks();
        return look.solids(IntStream.range(0, inks.size())
                .filter(plane -> inks.get(plane).ink().kind() != InkKind.TECHNICAL)
                .boxed()
                .collect(Collectors.toSet()));
    }

    // Off the window's thread.
    private void scoreAll(OpenPage page, Edges edges, List<Wanted> wanted, Cancel cancel, Activity activity) {
        Map<String, Vanish> found = new HashMap<>();
        List<Wanted> rest = new ArrayList<>(wanted);
        while (!rest.isEmpty()) {
            List<Wanted> part = rest.subList(0, Math.min(TOLD_AT_ONCE, rest.size()));
            for (Wanted one : part) {
                cancel.check();
                found.put(one.id(), edges.on(one.look()));
            }
            part.clear();
            activity.report("Scoring how the artwork holds", 1 - (double) rest.size() / wanted.size());
            Map<String, Vanish> sofar = Map.copyOf(found);
            ui.execute(() -> tell(page, sofar, cancel));
        }
    }

    private void tell(OpenPage page, Map<String, Vanish> found, Cancel cancel) {
        if (state.page.get() == page && !cancel.requested()) {
            Map<String, Vanish> all = new HashMap<>(state.rack.scores.get());
            all.putAll(found);
            state.rack.scores.set(Map.copyOf(all));
        }
    }
}
