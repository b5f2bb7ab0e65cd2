package inkground.viewer.worn;

import inkground.garment.GarmentRequest;
import inkground.garment.Placed;
import inkground.geometry.Box;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.Camera;
import inkground.viewer.state.ViewerState;
import inkground.viewer.surface.CameraHand;
import inkground.viewer.task.RenderScheduler;
import inkground.viewer.ui.Ui;
import java.util.concurrent.Executor;
import javafx.beans.Observable;
import javafx.geometry.Point2D;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;

/**
 * The garment on its surround. The artwork is taken hold of and moved; anywhere else the garment is. All input only changes the
 * state; drawing happens once per pulse.
 */
public final class GarmentSurface extends Region {
    /** Within so many pixels of the centre line the artwork goes onto it; Alt keeps it off. */
    private static final double SNAP_PX = 6;

    private final ViewerState state;
    private final GarmentFeed feed;
    private final Canvas canvas = new Canvas();
    private final PlacementMarks marks;
    private final CameraHand hand;
    private Placed held;
    private Object gesture;

    public GarmentSurface(ViewerState state, RenderScheduler scheduler, Executor ui) {
        this.state = state;
        hand = new CameraHand(this, state, CameraHand.Place.ITSELF);
        feed = new GarmentFeed(state, scheduler, ui, this::requestLayout);
        marks = new PlacementMarks(state);
        setId("garment-surface");
        getStyleClass().add("surface");
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleText("The artwork on the garment; Ctrl and the arrow keys move it");
        canvas.setManaged(false);
        marks.setManaged(false);
        getChildren().addAll(canvas, marks);
        listen();
        input();
    }

    private void listen() {
        state.onLook(this::requestLayout);
        for (Observable value : new Observable[] {
            state.camera,
            state.view,
            state.unit,
            state.worn.cuts,
            state.worn.cloth,
            state.worn.area,
            state.worn.inkedPt,
            state.worn.moving
        }) {
            value.addListener(o -> requestLayout());
        }
    }

    private void input() {
        setOnMousePressed(this::grip);
        setOnMouseDragged(this::drag);
        setOnMouseReleased(e -> letGo());
        setOnMouseMoved(e -> {
            marks.hovered(overArtwork(e));
            setCursor(overArtwork(e) ? Cursor.MOVE : Cursor.DEFAULT);
            Camera camera = state.camera.get();
            state.probe.set(feed.probe(camera.toPageX(e.getX(), e.getY()), camera.toPageY(e.getX(), e.getY())));
        });
        setOnMouseExited(e -> {
            state.probe.set(null);
            marks.hovered(false);
        });
    }

    private boolean overArtwork(MouseEvent e) {
        return state.worn
                .placed()
                .map(p -> GarmentFeed.inView(state.camera.get(), p.artworkMm()))
                .filter(b -> e.getX() >= b.x0() && e.getX() < b.x1() && e.getY() >= b.y0() && e.getY() < b.y1())
                .isPresent();
    }

    private void grip(MouseEvent e) {
        requestFocus();
        if (e.getButton() != MouseButton.PRIMARY && e.getButton() != MouseButton.MIDDLE) {
            return;
        }
        hand.grip(e);
        if (e.getButton() == MouseButton.PRIMARY && overArtwork(e)) {
            held = state.worn.placed().orElseThrow();
            gesture = new Object();
        } else {
            setCursor(Cursor.CLOSED_HAND);
        }
    }

    private void drag(MouseEvent e) {
        Point2D grip = hand.grip();
        if (grip == null) {
            return;
        }
        if (held == null) {
            hand.drag(e);
            return;
        }
        state.worn.moving.set(true);
        double mmPerPx = Box.MM_PER_PT / state.camera.get().zoom();
        // Whole millimetres while they are small on the screen, tenths when looking close.
        double step = mmPerPx > 0.25 ? 1 : 0.1;
        double off = rounded(held.offCentreMm() + (e.getX() - grip.getX()) * mmPerPx, step);
        double below = rounded(held.artworkMm().y0() + (e.getY() - grip.getY()) * mmPerPx, step);
        double snapped = !e.isAltDown() && Math.abs(off) < SNAP_PX * mmPerPx ? 0 : off;
        state.worn.place("move the artwork", gesture, state.worn.placement().at(below, snapped));
    }

    private static double rounded(double mm, double step) {
        // Divided rather than multiplied, so that tenths are the nearest numbers there are.
        return Math.rint(mm / step) / Math.rint(1 / step);
    }

    private void letGo() {
        hand.letGo();
        held = null;
        state.worn.moving.set(false);
        setCursor(Cursor.DEFAULT);
    }

    /** @return whether all that is seen is there at device pixels, as wanted */
    public boolean complete() {
        return state.camera.get().outputScale() == Ui.outputScale(this) && feed.complete();
    }

    @Override
    protected void layoutChildren() {
        if (state.view.get() != BenchView.GARMENT) {
            feed.refresh(); // lets it rest
            return;
        }
        double width = Math.max(1, getWidth());
        double height = Math.max(1, getHeight());
        Camera camera = state.camera.get();
        if (camera.widthPx() != width || camera.heightPx() != height || camera.outputScale() != Ui.outputScale(this)) {
            state.resize(width, height, Ui.outputScale(this));
        }
        canvas.setWidth(width);
        canvas.setHeight(height);
        marks.resizeRelocate(0, 0, width, height);
        feed.refresh();
        draw();
        marks.place();
    }

    private void draw() {
        GraphicsContext gc = canvas.getGraphicsContext2D();
        gc.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
        if (feed.image() == null || state.worn.form().isEmpty()) {
            return;
        }
        Camera camera = state.camera.get();
        GarmentRequest r = feed.imageRegion();
        double s = camera.outputScale();
        double scaled = camera.pxPerPt() / Box.MM_PER_PT / r.pxPerMm();
        gc.setImageSmoothing(scaled != 1);
        gc.drawImage(
                feed.image(),
                (camera.originXDevice() + r.x0() * scaled) / s,
                (camera.originYDevice() + r.y0() * scaled) / s,
                r.width() * scaled / s,
                r.height() * scaled / s);
    }
}
