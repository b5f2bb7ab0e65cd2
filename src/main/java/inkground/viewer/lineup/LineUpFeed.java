package inkground.viewer.lineup;

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
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.surface.Tile;
import inkground.viewer.task.Activity;
import inkground.viewer.task.Outcome;
import inkground.viewer.task.RenderScheduler;
import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Executor;
import javafx.scene.image.Image;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;

/**
 * Makes the pictures of the line-up. What a cell sees is rasterised once, since all see the same; only colouring is done for
 * each substrate. A coarse picture of the whole page stands in while the page is moved. Memory is that of one surface full of
 * pixels, whatever the number of cells. Used on the window's thread.
 */
final class LineUpFeed {
    /** Longer edge of the coarse picture: 24 of them weigh 6 MB. */
    private static final int COARSE_PX = 256;

    /** One cell's picture of what was rasterised, in one look. */
    record Picture(PlateRequest request, Look look, Image image) {}

    /**
     * What is to be done next.
     *
     * @param request to rasterise, or whose planes are to be coloured
     * @param looks to colour for; empty to rasterise
     */
    private record Plan(PlateRequest request, List<Look> looks) {}

    /** Work that was stopped or failed; it is tried again once the user looks elsewhere or otherwise. */
    private record GivenUp(Plan plan, Camera camera) {}

    /** What the cell under the pointer is read by. */
    private record Reader(Look look, Painter painter) {}

    private final ViewerState state;
    private final RenderScheduler scheduler;
    private final Executor ui;
    private final Runnable changed;
    private final Map<String, Picture> coarsePictures = new HashMap<>();
    private final Map<String, Picture> finePictures = new HashMap<>();

    private OpenPage page;
    private Tile coarse;
    private Tile fine;
    private Plan running;
    private GivenUp givenUp;
    private Activity activity;
    private boolean complete;
    private Reader reader;
    private volatile Map<Look, Painter> painters = Map.of();

    /**
     * @param changed told when there is something new to draw
     */
    LineUpFeed(ViewerState state, RenderScheduler scheduler, Executor ui, Runnable changed) {
        this.state = state;
        this.scheduler = scheduler;
        this.ui = ui;
        this.changed = changed;
        // At once, not at the next pulse: the file behind the page before is about to be closed.
        state.page.addListener((o, before, now) -> turnTo(now));
    }

    /** Lets go of all pictures and stops the work: the line-up is not looked at. */
    void rest() {
        turnTo(null);
    }

    private void turnTo(OpenPage now) {
        if (page != now) {
            page = now;
            coarse = null;
            fine = null;
            coarsePictures.clear();
            finePictures.clear();
            running = null;
            givenUp = null;
            painters = Map.of();
            reader = null;
            complete = false;
            scheduler.cancel();
            idle();
        }
    }

    /** Looks what is needed now, and has it done. */
    void refresh(List<SubstrateCard> cards) {
        turnTo(state.page.get());
        complete = false;
        if (page == null || cards.isEmpty() || state.camera.get().widthPx() < 2) {
            return;
        }
        Map<String, Look> looks = new HashMap<>();
        cards.forEach(card -> looks.put(card.id(), state.lookOn(card)));
        coarsePictures.keySet().retainAll(looks.keySet());
        finePictures.keySet().retainAll(looks.keySet());
        Plan plan = plan(cards, looks);
        if (plan == null) {
            complete = true;
            state.pictured.set(true);
            idle();
        } else if (!new GivenUp(plan, state.camera.get()).equals(givenUp) && !worthFinishing(plan)) {
            start(plan);
        }
    }

    private Plan plan(List<SubstrateCard> cards, Map<String, Look> looks) {
        Set<Integer> layersOn = Set.copyOf(state.layersOn);
        Box media = page.info().box(PageBox.MEDIA);
        boolean overprint = state.overprint.get();
        double coarseScale = COARSE_PX / Math.max(media.width(), media.height());
        PlateRequest whole = PlateRequest.of(media, coarseScale * 72, overprint, layersOn);
        if (coarse == null || !coarse.request().equals(whole)) {
            return new Plan(whole, List.of());
        }
        Plan colours = colours(cards, looks, whole, coarsePictures);
        PlateRequest seen = seen(state.camera.get(), media, overprint, layersOn);
        if (colours != null || seen == null) {
            return colours;
        }
        if (fine == null || !fine.request().equals(seen)) {
            return new Plan(seen, List.of());
        }
        return colours(cards, looks, seen, finePictures);
    }

    private static Plan colours(
            List<SubstrateCard> cards, Map<String, Look> looks, PlateRequest of, Map<String, Picture> pictures) {
        List<Look> stale = cards.stream()
                .map(card -> looks.get(card.id()))
                .filter(look -> !fits(pictures.get(look.substrateId()), of, look))
                .toList();
        return stale.isEmpty() ? null : new Plan(of, stale);
    }

    private static boolean fits(Picture picture, PlateRequest request, Look look) {
        return picture != null
                && picture.request().equals(request)
                && picture.look().equals(look);
    }

    /** @return what a cell sees of the page at device pixels; null when it sees none of it */
    private static PlateRequest seen(Camera camera, Box media, boolean overprint, Set<Integer> layersOn) {
        double scale = camera.pxPerPt();
        Box seen = camera.seen().intersect(media);
        if (seen.isEmpty()) {
            return null;
        }
        PlateRequest whole = PlateRequest.of(media, scale * 72, overprint, layersOn);
        int x0 = Math.max(whole.x0(), (int) Math.floor(seen.x0() * scale));
        int y0 = Math.max(whole.y0(), (int) Math.floor(seen.y0() * scale));
        int x1 = Math.min(whole.x1(), (int) Math.ceil(seen.x1() * scale));
        int y1 = Math.min(whole.y1(), (int) Math.ceil(seen.y1() * scale));
        return x0 < x1 && y0 < y1 ? new PlateRequest(whole.pxPerPt(), x0, y0, x1, y1, overprint, layersOn) : null;
    }

    /** A picture under way is finished while the page is only moved, so that a long drag does not restart it without end. */
    private boolean worthFinishing(Plan next) {
        if (running == null) {
            return false;
        }
        boolean sameRaster = running.looks().isEmpty()
                && next.looks().isEmpty()
                && running.request().pxPerPt() == next.request().pxPerPt()
                && running.request().overprint() == next.request().overprint()
                && running.request().layersOn().equals(next.request().layersOn());
        return sameRaster
                || running.looks().containsAll(next.looks())
                        && running.request().equals(next.request());
    }

    private void start(Plan plan) {
        running = plan;
        givenUp = null;
        if (activity == null) {
            activity = new Activity(ui, "Laying the artwork on each", false);
            state.activities.add(activity);
        }
        OpenPage from = page;
        Activity reports = activity;
        Cancel cancel;
        if (plan.looks().isEmpty()) {
            cancel = scheduler.submit(c -> rasterise(from, plan.request(), reports, c), outcome -> {
                if (outcome instanceof Outcome.Done<Tile> done && from == page) {
                    rasterised(done.value());
                }
                settled(plan, outcome);
            });
        } else {
            Tile tile = plan.request().equals(coarse.request()) ? coarse : fine;
            cancel = scheduler.submit(c -> colour(from, tile, plan.looks(), c), outcome -> settled(plan, outcome));
        }
        reports.stopsBy(cancel);
    }

    private void rasterised(Tile tile) {
        if (isCoarse(tile.request())) {
            coarse = tile;
        } else {
            fine = tile;
        }
    }

    private boolean isCoarse(PlateRequest request) {
        Box media = page.info().box(PageBox.MEDIA);
        double scale = COARSE_PX / Math.max(media.width(), media.height());
        return request.equals(PlateRequest.of(media, scale * 72, request.overprint(), request.layersOn()));
    }

    private void settled(Plan plan, Outcome<?> outcome) {
        if (running != plan) {
            return;
        }
        running = null;
        if (!(outcome instanceof Outcome.Done<?>)) {
            givenUp = new GivenUp(plan, state.camera.get());
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
    private static Tile rasterise(OpenPage from, PlateRequest request, Activity reports, Cancel cancel) throws Refusal {
        InkPlanes planes = from.render(request, cancel, reports);
        Tile tile = new Tile(planes, new int[planes.width() * planes.height()], null);
        tile.quicken(cancel);
        return tile;
    }

    // Off the window's thread. Each picture is shown as soon as it is there.
    private Boolean colour(OpenPage from, Tile tile, List<Look> looks, Cancel cancel) throws Refusal {
        Map<Look, Painter> before = painters;
        Map<Look, Painter> next = new HashMap<>();
        for (Look look : looks) {
            cancel.check();
            Painter painter = before.getOrDefault(look, null);
            painter = painter == null ? from.painter(look) : painter;
            next.put(look, painter);
            int[] argb = tile.paint(painter, look, cancel);
            ui.execute(() -> coloured(from, tile, look, argb));
        }
        painters = Map.copyOf(next);
        return true;
    }

    private void coloured(OpenPage from, Tile tile, Look look, int[] argb) {
        if (from == page && (tile == coarse || tile == fine)) {
            PlateRequest r = tile.request();
            Image image = new WritableImage(new PixelBuffer<>(
                    r.width(), r.height(), IntBuffer.wrap(argb), PixelFormat.getIntArgbPreInstance()));
            Map<String, Picture> pictures = tile == coarse ? coarsePictures : finePictures;
            pictures.put(look.substrateId(), new Picture(r, look, image));
            changed.run();
        }
    }

    /** @return pictures of a cell to draw, the coarse one first */
    List<Picture> drawing(String substrateId) {
        List<Picture> all = new ArrayList<>();
        Picture fineOne = finePictures.get(substrateId);
        Picture coarseOne = coarsePictures.get(substrateId);
        boolean current =
                fineOne != null && (coarseOne == null || fineOne.look().equals(coarseOne.look()));
        if (coarseOne != null && !(current && complete)) {
            all.add(coarseOne);
        }
        if (current) {
            all.add(fineOne);
        }
        return all;
    }

    /** @return what lies at a place of the page, as a cell shows it */
    Probe probe(SubstrateCard card, double xPt, double yPt) {
        for (Tile tile : new Tile[] {fine, coarse}) {
            if (page == null || tile == null) {
                continue;
            }
            long x = (long) Math.floor(xPt * tile.request().pxPerPt());
            long y = (long) Math.floor(yPt * tile.request().pxPerPt());
            if (tile.holds(x, y)) {
                int px = (int) x - tile.request().x0();
                int py = (int) y - tile.request().y0();
                return Probe.of(xPt, yPt, page, reading(state.lookOn(card)), tile.planes(), px, py);
            }
        }
        return Probe.empty(xPt, yPt);
    }

    private Painter reading(Look look) {
        if (reader == null || !reader.look().equals(look)) {
            Painter known = painters.get(look);
            reader = new Reader(look, known == null ? page.painter(look) : known);
        }
        return reader.painter();
    }

    /** @return whether every cell shows all that it sees at device pixels, in the colours wanted */
    boolean complete() {
        return complete;
    }
}
