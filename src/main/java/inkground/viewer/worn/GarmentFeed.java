package inkground.viewer.worn;

import inkground.garment.GarmentRequest;
import inkground.garment.Placed;
import inkground.geometry.Box;
import inkground.plate.InkPlanes;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.Camera;
import inkground.viewer.state.Look;
import inkground.viewer.state.Probe;
import inkground.viewer.state.ViewerState;
import inkground.viewer.state.Worn;
import inkground.viewer.task.Activity;
import inkground.viewer.task.Outcome;
import inkground.viewer.task.RenderScheduler;
import java.nio.IntBuffer;
import java.util.concurrent.Executor;
import javafx.scene.image.Image;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;

/**
 * Keeps the picture of the garment in step with the state: one picture in the making at a time, then the one wanted by then. The
 * last one stands in meanwhile, moved and scaled as the camera has it. Used on the window's thread.
 */
final class GarmentFeed {
    /** Around what is seen, so that a little panning needs no new light; logical pixels. */
    private static final int SPARE_PX = 160;

    private final ViewerState state;
    private final RenderScheduler scheduler;
    private final Executor ui;
    private final Runnable changed;
    private final GarmentScene scene = new GarmentScene();

    private GarmentScene.Picture shown;
    private Image image;
    private GarmentScene.Wanted wanted;
    private GarmentScene.Wanted running;
    private GarmentScene.Wanted givenUp;
    private Activity activity;

    /**
     * @param changed told when there is something new to draw
     */
    GarmentFeed(ViewerState state, RenderScheduler scheduler, Executor ui, Runnable changed) {
        this.state = state;
        this.scheduler = scheduler;
        this.ui = ui;
        this.changed = changed;
        // At once: the file behind the page before is about to be closed.
        state.page.addListener((o, before, now) -> {
            rest();
            shown = null;
            image = null;
            givenUp = null;
            wanted = null;
        });
    }

    /** Stops the work; the last picture stays. */
    private void rest() {
        running = null;
        scheduler.cancel();
        idle();
    }

    /** Looks what is needed now, and has it made. */
    void refresh() {
        wanted = wanted();
        if (wanted == null) {
            rest(); // paper, or another view
            return;
        }
        if (shown != null && shown.wanted().equals(wanted)) {
            state.pictured.set(true);
            idle();
        } else if (running == null ? !wanted.equals(givenUp) : overtaken()) {
            start(wanted);
        }
    }

    /** Whether the running work is for a scale, a form or a page that is no longer seen. Else it is soon done, and of use. */
    private boolean overtaken() {
        return !running.page().equals(wanted.page())
                || running.region().pxPerMm() != wanted.region().pxPerMm()
                || !running.placed().form().equals(wanted.placed().form());
    }

    private GarmentScene.Wanted wanted() {
        Look look = state.look();
        Placed placed = state.worn.placed().orElse(null);
        Camera camera = state.camera.get();
        if (look == null || placed == null || state.view.get() != BenchView.GARMENT || camera.widthPx() < 2) {
            return null;
        }
        GarmentRequest region = region(camera, placed.form().boundsMm().grow(60));
        return region == null
                ? null
                : new GarmentScene.Wanted(
                        state.page.get(),
                        placed,
                        region,
                        look.printedAt(placed.scale()),
                        state.worn.cloth.get(),
                        state.overprint.get(),
                        state.layersOn);
    }

    /** The region of the last picture where it still holds all that is seen; else what is seen, and some more. */
    private GarmentRequest region(Camera camera, Box wholeMm) {
        double pxPerMm = camera.pxPerPt() / Box.MM_PER_PT;
        GarmentRequest whole = GarmentRequest.around(wholeMm, pxPerMm);
        GarmentRequest seen = cut(whole, camera, 0);
        GarmentRequest last = running != null
                ? running.region()
                : shown == null ? null : shown.wanted().region();
        boolean holds = seen != null
                && last != null
                && last.pxPerMm() == pxPerMm
                && last.x0() <= seen.x0()
                && last.y0() <= seen.y0()
                && last.x1() >= seen.x1()
                && last.y1() >= seen.y1();
        return holds ? last : seen == null ? null : cut(whole, camera, SPARE_PX);
    }

    private static GarmentRequest cut(GarmentRequest whole, Camera camera, double sparePx) {
        double s = camera.outputScale();
        int x0 = (int) Math.max(whole.x0(), -camera.originXDevice() - sparePx * s);
        int y0 = (int) Math.max(whole.y0(), -camera.originYDevice() - sparePx * s);
        int x1 = (int) Math.min(whole.x1(), Math.ceil((camera.widthPx() + sparePx) * s) - camera.originXDevice());
        int y1 = (int) Math.min(whole.y1(), Math.ceil((camera.heightPx() + sparePx) * s) - camera.originYDevice());
        return x0 < x1 && y0 < y1 ? new GarmentRequest(whole.pxPerMm(), x0, y0, x1, y1) : null;
    }

    private void start(GarmentScene.Wanted make) {
        running = make;
        givenUp = null;
        if (activity == null) {
            activity = new Activity(ui, "Laying out the garment", false);
            state.activities.add(activity);
        }
        Activity reports = activity;
        reports.stopsBy(
                scheduler.submit(cancel -> scene.picture(make, cancel, reports), outcome -> settled(make, outcome)));
    }

    private void settled(GarmentScene.Wanted made, Outcome<GarmentScene.Picture> outcome) {
        if (running != made) {
            return;
        }
        running = null;
        if (outcome instanceof Outcome.Done<GarmentScene.Picture> done) {
            show(done.value());
        } else {
            givenUp = made;
            idle();
        }
        if (outcome instanceof Outcome.Failed<GarmentScene.Picture> failed) {
            state.trouble.set(failed.message());
        }
        changed.run();
    }

    private void show(GarmentScene.Picture picture) {
        GarmentRequest r = picture.wanted().region();
        shown = picture;
        image = new WritableImage(new PixelBuffer<>(
                r.width(), r.height(), IntBuffer.wrap(picture.argb()), PixelFormat.getIntArgbPreInstance()));
    }

    private void idle() {
        if (activity != null) {
            state.activities.remove(activity);
            activity = null;
        }
    }

    /** @return the last picture; null before there is one */
    Image image() {
        return image;
    }

    /** @return the region of the last picture */
    GarmentRequest imageRegion() {
        return shown.wanted().region();
    }

    /** @return whether what is wanted now is what is shown */
    boolean complete() {
        GarmentScene.Wanted now = wanted();
        return now != null && shown != null && shown.wanted().equals(now);
    }

    /** @return what lies at a point of the garment, as far as it is rasterised; null beside the artwork */
    Probe probe(double xPt, double yPt) {
        if (shown == null || shown.planes() == null || !shown.wanted().page().equals(state.page.get())) {
            return null;
        }
        Box mm = new Box(xPt * Box.MM_PER_PT, yPt * Box.MM_PER_PT, xPt * Box.MM_PER_PT, yPt * Box.MM_PER_PT);
        Box page = shown.wanted().placed().toPt(mm);
        InkPlanes planes = shown.planes();
        int x = (int) Math.floor(page.x0() * planes.request().pxPerPt())
                - planes.request().x0();
        int y = (int) Math.floor(page.y0() * planes.request().pxPerPt())
                - planes.request().y0();
        if (x < 0 || y < 0 || x >= planes.width() || y >= planes.height()) {
            return null;
        }
        return Probe.of(page.x0(), page.y0(), state.page.get(), shown.painter(), planes, x, y);
    }

    /** @return a box of garment millimetres as the surface shows it, in logical pixels */
    static Box inView(Camera camera, Box mm) {
        return camera.toView(Worn.toPt(mm));
    }
}
