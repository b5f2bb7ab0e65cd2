package inkground.viewer.worn;

import inkground.appearance.Grain;
import inkground.base.Cancel;
import inkground.geometry.Box;
import inkground.substrate.Texture;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.Camera;
import inkground.viewer.state.Look;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Outcome;
import inkground.viewer.task.RenderScheduler;
import java.nio.IntBuffer;
import javafx.beans.Observable;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;

/**
 * The grain of a garment's cloth over the flat page: black and white of little alpha on a sheet of its own, so that stepping from
 * one garment to the next never waits for it. Black darkens all alike; white lightens cloth of this substrate by as much, and what
 * is printed on it by less.
 */
public final class ClothOverlay extends Region {
    private record Wanted(
            OpenPage page, Look look, int argb, double pxPerPt, long x0, long y0, int width, int height) {}

    private record Made(Wanted wanted, int[] argb) {}

    private final ViewerState state;
    private final RenderScheduler scheduler;
    private final ImageView view = new ImageView();
    private final Rectangle clip = new Rectangle();
    private Wanted running;
    private Wanted shown;
    // Touched by one piece of work at a time.
    private volatile Grain grain;
    private volatile Wanted grainOf;

    /**
     * @param scheduler of its own
     */
    public ClothOverlay(ViewerState state, RenderScheduler scheduler) {
        this.state = state;
        this.scheduler = scheduler;
        setId("cloth-overlay");
        setMouseTransparent(true);
        view.setManaged(false);
        getChildren().add(view);
        setClip(clip);
        for (Observable value : new Observable[] {
            state.page, state.substrate, state.camera, state.view, state.overlays.cloth, state.overlays.map
        }) {
            value.addListener(o -> requestLayout());
        }
    }

    private boolean lies() {
        return state.view.get() == BenchView.FLAT
                && state.overlays.cloth.get()
                && state.camera.get().quarters() == 0 // the grain is painted upright
                && state.page.get() != null
                && state.substrate.get() != null
                && state.substrate.get().garment()
                && state.look().map().isEmpty();
    }

    @Override
    protected void layoutChildren() {
        clip.setWidth(getWidth());
        clip.setHeight(getHeight());
        if (!lies()) {
            lift();
            return;
        }
        Wanted wanted = wanted(state.camera.get());
        if (wanted != null && !wanted.equals(shown) && !wanted.equals(running)) {
            running = wanted;
            scheduler.submit(cancel -> made(wanted, cancel), outcome -> settled(wanted, outcome));
        }
        if (shown != null && shown.page().equals(state.page.get())) {
            place(state.camera.get());
        } else {
            lift();
        }
    }

    /** Nothing is left for the painter to go over: a step on a bare page waits for no empty sheet. */
    private void lift() {
        shown = null;
        view.setImage(null);
    }

    /** What of the cloth is seen, in device pixels of the page. */
    private Wanted wanted(Camera camera) {
        double scale = camera.pxPerPt();
        double s = camera.outputScale();
        Box ground = state.ground();
        long x0 = Math.max((long) Math.floor(ground.x0() * scale), -camera.originXDevice());
        long y0 = Math.max((long) Math.floor(ground.y0() * scale), -camera.originYDevice());
        long x1 =
                Math.min((long) Math.ceil(ground.x1() * scale), (long) (camera.widthPx() * s) - camera.originXDevice());
        long y1 = Math.min(
                (long) Math.ceil(ground.y1() * scale), (long) (camera.heightPx() * s) - camera.originYDevice());
        return x0 < x1 && y0 < y1
                ? new Wanted(
                        state.page.get(),
                        state.look(),
                        state.substrate.get().argb(),
                        scale,
                        x0,
                        y0,
                        (int) (x1 - x0),
                        (int) (y1 - y0))
                : null;
    }

    private void place(Camera camera) {
        double s = camera.outputScale();
        double scaled = camera.pxPerPt() / shown.pxPerPt();
        view.setSmooth(scaled != 1);
        view.setX((camera.originXDevice() + shown.x0() * scaled) / s);
        view.setY((camera.originYDevice() + shown.y0() * scaled) / s);
        view.setFitWidth(shown.width() * scaled / s);
        view.setFitHeight(shown.height() * scaled / s);
    }

    // Off the window's thread.
    private Made made(Wanted w, Cancel cancel) {
        Texture texture = w.page().painter(w.look()).texture();
        cancel.check();
        Grain cloth = grain;
        if (cloth == null || cloth.kind() != texture.kind() || !samePlace(w, grainOf)) {
            double mmPerPx = Box.MM_PER_PT / w.pxPerPt();
            cloth = new Grain(texture.kind(), mmPerPx, (int) w.x0(), (int) w.y0(), w.width(), w.height());
            grain = cloth;
            grainOf = w;
        }
        cancel.check();
        return new Made(w, cloth.overlay(w.argb(), texture.strength()));
    }

    private static boolean samePlace(Wanted a, Wanted b) {
        return a.pxPerPt() == b.pxPerPt()
                && a.x0() == b.x0()
                && a.y0() == b.y0()
                && a.width() == b.width()
                && a.height() == b.height();
    }

    private void settled(Wanted wanted, Outcome<Made> outcome) {
        if (running == wanted) {
            running = null;
        }
        if (outcome instanceof Outcome.Done<Made> done && wanted.page().equals(state.page.get())) {
            shown = wanted;
            view.setImage(new WritableImage(new PixelBuffer<>(
                    wanted.width(),
                    wanted.height(),
                    IntBuffer.wrap(done.value().argb()),
                    PixelFormat.getIntArgbPreInstance())));
        } else if (outcome instanceof Outcome.Failed<Made> failed) {
            state.trouble.set(failed.message());
            state.overlays.cloth.set(false);
        }
        requestLayout();
    }

    /** @return whether the grain that is to lie on the page lies there */
    public boolean complete() {
        return lies() && shown != null && shown.equals(wanted(state.camera.get()));
    }
}
