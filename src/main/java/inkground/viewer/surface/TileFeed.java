package inkground.viewer.surface;

import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import inkground.viewer.state.Camera;
import inkground.viewer.state.Look;
import inkground.viewer.state.Probe;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.Painter;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Activity;
import inkground.viewer.task.Outcome;
import inkground.viewer.task.RenderScheduler;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.stream.Stream;

/**
 * Keeps the tiles that the camera needs in stock: looks once per pulse at what is missing or painted for another look, and
 * has the most urgent of it done. Colouring comes before rasterising, the coarse picture of the whole page before its fine
 * tiles. Used on the window's thread.
 */
public final class TileFeed {
    /** Tiles rasterised per piece of work; few, so that a moved camera is soon followed. */
    private static final int BATCH = 4;

    /**
     * What is to be done next.
     *
     * @param colour whether only colours are to be painted anew, for {@code look}; else tiles are rasterised
     */
    private record Plan(boolean colour, List<PlateRequest> requests, Look look) {}

    /** Work that was stopped or failed; it is tried again once the user looks elsewhere or otherwise. */
    private record GivenUp(Plan plan, Camera camera, Look look) {}

    private final ViewerState state;
    private final RenderScheduler scheduler;
    private final Executor ui;
    private final Runnable changed;
    private final TileCache cache;

    private OpenPage page;
    private Tile coarse;
    private Look shownLook;
    private List<PlateRequest> backdrop = List.of();
    private List<PlateRequest> visible = List.of();
    private Camera seenBy;
    private Plan running;
    private GivenUp givenUp;
    private Activity activity;
    private volatile Look wantedLook;
    private volatile PainterFor painter;

    private record PainterFor(OpenPage page, Look look, Painter painter) {}

    /**
     * @param changed told when there is something new to draw
     */
    public TileFeed(ViewerState state, RenderScheduler scheduler, Executor ui, long cacheBytes, Runnable changed) {
        this.state = state;
        this.scheduler = scheduler;
        this.ui = ui;
        this.changed = changed;
        this.cache = new TileCache(cacheBytes);
        // At once, not at the next pulse: the file behind the page before is about to be closed.
        state.page.addListener((o, before, now) -> turnTo(now));
    }

    /** Looks what is needed now, and has it done. */
    public void refresh() {
        Look look = state.look();
        turnTo(state.page.get());
        if (look == null || state.camera.get().widthPx() < 2) {
            return;
        }
        wantedLook = look;
        Set<Integer> layersOn = Set.copyOf(state.layersOn);
        Box media = page.info().box(PageBox.MEDIA);
        boolean overprint = state.overprint.get();
        seenBy = state.camera.get();
        visible = TileGrid.visible(state.camera.get(), media, overprint, layersOn);
        PlateRequest whole = TileGrid.coarse(media, overprint, layersOn);
        Plan plan = plan(look, whole);
        if (plan == null) {
            state.pictured.set(true);
            idle();
        } else if (!new GivenUp(plan, state.camera.get(), look).equals(givenUp) && !worthFinishing(plan, whole)) {
            start(plan);
        }
    }

    /** Stops the work: another view is looked at. What is in stock stays, and the rest is done when this one is seen again. */
    public void rest() {
        running = null;
        scheduler.cancel();
        idle();
    }

    private void turnTo(OpenPage now) {
        if (page != now) {
            page = now;
            cache.clear();
            coarse = null;
            shownLook = null;
            backdrop = List.of();
            visible = List.of();
            running = null;
            givenUp = null;
            scheduler.cancel();
        }
    }

    private Plan plan(Look look, PlateRequest whole) {
        List<PlateRequest> stale = inStock()
                .filter(tile -> !tile.look().equals(look))
                .map(Tile::request)
                .toList();
        if (!stale.isEmpty()) {
            return new Plan(true, stale, look);
        }
        if (coarse == null || !coarse.request().equals(whole)) {
            return new Plan(false, List.of(whole), null);
        }
        List<PlateRequest> missing =
                visible.stream().filter(r -> cache.get(r) == null).limit(BATCH).toList();
        return missing.isEmpty() ? null : new Plan(false, missing, null);
    }

    private Stream<Tile> inStock() {
        return Stream.concat(Stream.ofNullable(coarse), visible.stream().map(cache::get))
                .filter(Objects::nonNull);
    }

    /** Whether the running work is still of use, so that a small move of the camera does not restart it without end. */
    private boolean worthFinishing(Plan next, PlateRequest whole) {
        if (running == null || running.colour() != next.colour() || !Objects.equals(running.look(), next.look())) {
            return false;
        }
        return next.colour()
                || running.requests().stream()
                        .anyMatch(r -> r.equals(whole) || visible.contains(r) && cache.get(r) == null);
    }

    private void start(Plan plan) {
        running = plan;
        givenUp = null;
        if (activity == null) {
            activity = new Activity(ui, "Rasterising", false);
            state.activities.add(activity);
        }
        OpenPage from = page;
        Activity reports = activity;
        Cancel cancel = plan.colour()
                ? scheduler.submit(c -> colour(from, tilesOf(plan), plan.look(), c), outcome -> {
                    // A newer plan may be painting these tiles already.
                    if (running == plan && outcome instanceof Outcome.Done<List<Tile>> done) {
                        coloured(from, done.value(), plan.look());
                    }
                    settled(plan, outcome);
                })
                : scheduler.submit(
                        c -> rasterise(from, plan.requests(), reports, c), outcome -> settled(plan, outcome));
        reports.stopsBy(cancel);
    }

    private List<Tile> tilesOf(Plan plan) {
        return inStock()
                .filter(tile -> plan.requests().contains(tile.request()))
                .toList();
    }

    private void settled(Plan plan, Outcome<?> outcome) {
        if (running != plan) {
            return;
        }
        running = null;
        if (!(outcome instanceof Outcome.Done<?>)) {
            givenUp = new GivenUp(plan, state.camera.get(), wantedLook);
            idle();
        }
        if (outcome instanceof Outcome.Failed<?> failed) {
            state.trouble.set(failed.message());
        }
        changed.run();
    }

    private void idle() {
        if (activity != null) {
            state.activities.remove(activity);
            activity = null;
        }
    }

    // Off the window's thread.
    private Boolean rasterise(OpenPage from, List<PlateRequest> requests, Activity reports, Cancel cancel)
            throws Refusal {
        for (PlateRequest request : requests) {
            InkPlanes planes = from.render(request, cancel, reports);
            Look look = wantedLook;
            int[] argb = new int[planes.width() * planes.height()];
            painter(from, look).paint(planes, argb, 0, planes.width(), cancel);
            cancel.check();
            Tile tile = new Tile(planes, argb, look);
            ui.execute(() -> rasterised(from, tile));
            tile.quicken(painter(from, look), cancel);
        }
        return true;
    }

    // Off the window's thread. Waits for all tiles even when one stops, so that none is still being painted afterwards.
    private List<Tile> colour(OpenPage from, List<Tile> tiles, Look look, Cancel cancel) throws Refusal {
        Painter with = painter(from, look);
        Optional<Refusal> refusal = tiles.parallelStream()
                .map(tile -> paint(tile, with, look, cancel))
                .flatMap(Optional::stream)
                .reduce((one, other) -> one);
        cancel.check();
        if (refusal.isPresent()) {
            throw refusal.get();
        }
        return tiles;
    }

    private static Optional<Refusal> paint(Tile tile, Painter with, Look look, Cancel cancel) {
        try {
            tile.paintBehind(with, look, cancel);
            return Optional.empty();
        } catch (CancellationException e) {
            return Optional.empty(); // told for all tiles at once
        } catch (Refusal e) {
            return Optional.of(e);
        }
    }

    private Painter painter(OpenPage from, Look look) {
        PainterFor last = painter;
        if (last == null || last.page() != from || !last.look().equals(look)) {
            last = new PainterFor(from, look, from.painter(look));
            painter = last;
        }
        return last.painter();
    }

    private void rasterised(OpenPage from, Tile tile) {
        if (from != page) {
            return;
        }
        if (shownLook == null) {
            shownLook = tile.look();
        }
        if (isCoarse(tile.request())) {
            coarse = tile;
        } else {
            cache.put(tile);
        }
        changed.run();
    }

    private boolean isCoarse(PlateRequest request) {
        return request.equals(TileGrid.coarse(page.info().box(PageBox.MEDIA), request.overprint(), request.layersOn()));
    }

    private void coloured(OpenPage from, List<Tile> painted, Look look) {
        if (from == page) {
            painted.forEach(tile -> tile.turnOver(look));
            shownLook = look;
            state.following.picture();
        }
    }

    /** @return tiles to draw, the coarse ones first; all painted for one look, none twice. Where the fine ones suffice, only they. */
    public List<Tile> drawing() {
        List<Tile> fine = shown(visible);
        if (fine.size() == visible.size()) {
            backdrop = visible;
            return fine;
        }
        List<Tile> all = new ArrayList<>();
        if (coarse != null && coarse.look().equals(shownLook)) {
            all.add(coarse);
        }
        shown(backdrop).stream().filter(tile -> !fine.contains(tile)).forEach(all::add);
        all.addAll(fine);
        return all;
    }

    /** @return whether what is in stock is being painted in other colours */
    public boolean recolouring() {
        return running != null && running.colour();
    }

    /** @return whether the fine tiles are all there and hide all that lies beneath the page */
    public boolean covers() {
        Camera camera = state.camera.get();
        Box seen = camera.seen();
        // The tiles may end up to half a pixel before the page does.
        return page != null
                && seen.equals(seen.intersect(page.info().box(PageBox.MEDIA).grow(-1 / camera.pxPerPt())))
                && shown(visible).size() == visible.size();
    }

    private List<Tile> shown(List<PlateRequest> requests) {
        return requests.stream()
                .map(cache::get)
                .filter(tile -> tile != null && tile.look().equals(shownLook))
                .toList();
    }

    /** @return whether all that the camera sees is there at device pixels, in the colours wanted */
    public boolean complete() {
        return page != null
                && state.camera.get().equals(seenBy)
                && Objects.equals(shownLook, state.look())
                && visible.stream().allMatch(r -> cache.get(r) != null);
    }

    /** @return what lies at a page point, as far as it is rasterised */
    public Probe probe(double xPt, double yPt) {
        List<Tile> tiles = drawing();
        for (int i = tiles.size() - 1; i >= 0; i--) {
            Tile tile = tiles.get(i);
            long x = (long) Math.floor(xPt * tile.request().pxPerPt());
            long y = (long) Math.floor(yPt * tile.request().pxPerPt());
            if (tile.holds(x, y)) {
                PainterFor shown = painter;
                boolean known = shown != null && shown.page() == page;
                return Probe.of(
                        xPt,
                        yPt,
                        page,
                        known ? shown.painter() : null,
                        tile.planes(),
                        (int) x - tile.request().x0(),
                        (int) y - tile.request().y0());
            }
        }
        return Probe.empty(xPt, yPt);
    }
}
