package inkground.viewer.surface;

import inkground.geometry.Box;
import inkground.plate.PlateRequest;
import inkground.viewer.state.Camera;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.RenderScheduler;
import javafx.beans.Observable;
import javafx.collections.SetChangeListener;
import javafx.geometry.Point2D;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.stage.Window;

/**
 * The surface that the proof lies on. Pictures are drawn at device pixels: one pixel of a fine tile is one pixel of the
 * screen. All input only changes the state; drawing happens once per pulse.
 */
public final class ProofSurface extends Region {
    /** Zoom of one notch of a wheel (40 units of scrolling): about 1.13. */
    private static final double ZOOM_PER_UNIT = 0.003;
    /** Pixels moved by one press of an arrow key. */
    public static final double ARROW_PX = 60;

    private final ViewerState state;
    private final TileFeed feed;
    private final Canvas canvas = new Canvas();
    private final PageLines lines;
    private final PlaceMarks places;
    private Point2D grip;

    public ProofSurface(ViewerState state, RenderScheduler scheduler, java.util.concurrent.Executor ui) {
        this(state, scheduler, ui, 1);
    }

    /**
     * @param share of the memory for tiles that this surface may take, above 0 to 1
     */
    public ProofSurface(ViewerState state, RenderScheduler scheduler, java.util.concurrent.Executor ui, double share) {
        this.state = state;
        long cacheBytes =
                (long) (share * Math.min(384L << 20, Runtime.getRuntime().maxMemory() / 4));
        feed = new TileFeed(state, scheduler, ui, cacheBytes, this::requestLayout);
        lines = new PageLines(state);
        places = new PlaceMarks(state);
        setId("surface");
        getStyleClass().add("surface");
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleText("Proof of the page on the chosen substrate");
        canvas.setManaged(false);
        lines.setManaged(false);
        getChildren().addAll(canvas, lines, places);
        listen();
        input();
    }

    private void listen() {
        for (Observable value : new Observable[] {
            state.page,
            state.substrate,
            state.solo,
            state.stack.plate,
            state.chosenInk,
            state.camera,
            state.overlays.map,
            state.overlays.phase,
            state.overprint,
            state.history.now()
        }) {
            value.addListener(o -> requestLayout());
        }
        state.overlays.limits().forEach(limit -> limit.addListener((Observable o) -> requestLayout()));
        SetChangeListener<Integer> changed = c -> requestLayout();
        state.hidden.addListener(changed);
        state.layersOn.addListener(changed);
    }

    private void input() {
        addEventHandler(ScrollEvent.SCROLL, e -> {
            if (state.page.get() != null && e.getDeltaY() != 0) {
                state.zoom(Math.exp(e.getDeltaY() * ZOOM_PER_UNIT), e.getX(), e.getY());
                probe(e.getX(), e.getY());
            }
            e.consume();
        });
        setOnZoom(e -> state.zoom(e.getZoomFactor(), e.getX(), e.getY()));
        setOnMousePressed(this::grip);
        setOnMouseDragged(this::drag);
        setOnMouseReleased(e -> {
            grip = null;
            rest();
        });
        setOnMouseClicked(this::pick);
        state.colours.picking.addListener((Observable o) -> rest());
        setOnMouseMoved(e -> probe(e.getX(), e.getY()));
        setOnMouseExited(e -> state.probe.set(null));
    }

    private void rest() {
        setCursor(state.colours.picking.get() ? Cursor.CROSSHAIR : Cursor.DEFAULT);
    }

    private void pick(MouseEvent e) {
        if (state.colours.picking.get() && e.isStillSincePress() && state.page.get() != null) {
            Camera camera = state.camera.get();
            state.colours.pickedAt.set(new Point2D(camera.toPageX(e.getX()), camera.toPageY(e.getY())));
        }
    }

    private void grip(MouseEvent e) {
        requestFocus();
        if (e.getButton() == MouseButton.PRIMARY || e.getButton() == MouseButton.MIDDLE) {
            grip = new Point2D(e.getX(), e.getY());
            setCursor(Cursor.CLOSED_HAND);
        }
    }

    private void drag(MouseEvent e) {
        if (grip != null) {
            state.pan(e.getX() - grip.getX(), e.getY() - grip.getY());
            grip = new Point2D(e.getX(), e.getY());
            probe(e.getX(), e.getY());
        }
    }

    private void probe(double viewX, double viewY) {
        if (state.page.get() != null) {
            Camera camera = state.camera.get();
            state.probe.set(feed.probe(camera.toPageX(viewX), camera.toPageY(viewY)));
        }
    }

    /** @return whether all that is seen is there at device pixels, in the colours wanted */
    public boolean complete() {
        return state.camera.get().outputScale() == outputScale() && feed.complete();
    }

    private double outputScale() {
        Window window = getScene() == null ? null : getScene().getWindow();
        double scale = window == null ? 1 : window.getOutputScaleX();
        return scale > 0 ? scale : 1;
    }

    @Override
    protected void layoutChildren() {
        double width = Math.max(1, getWidth());
        double height = Math.max(1, getHeight());
        Camera camera = state.camera.get();
        if (camera.widthPx() != width || camera.heightPx() != height || camera.outputScale() != outputScale()) {
            state.resize(width, height, outputScale());
        }
        canvas.setWidth(width);
        canvas.setHeight(height);
        lines.resizeRelocate(0, 0, width, height);
        feed.refresh();
        draw();
        lines.place();
        places.resizeRelocate(0, 0, width, height);
        places.place();
    }

    private void draw() {
        GraphicsContext gc = canvas.getGraphicsContext2D();
        gc.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
        if (state.page.get() == null || state.substrate.get() == null) {
            return;
        }
        Camera camera = state.camera.get();
        fill(gc, camera, state.ground(), state.substrate.get().argb());
        for (Tile tile : feed.drawing()) {
            draw(gc, camera, tile);
        }
    }

    private static void fill(GraphicsContext gc, Camera camera, Box box, int argb) {
        gc.setFill(Color.rgb(argb >> 16 & 255, argb >> 8 & 255, argb & 255));
        double s = camera.outputScale();
        double x0 = Math.rint(camera.toViewX(box.x0()) * s) / s;
        double y0 = Math.rint(camera.toViewY(box.y0()) * s) / s;
        gc.fillRect(
                x0,
                y0,
                Math.rint(camera.toViewX(box.x1()) * s) / s - x0,
                Math.rint(camera.toViewY(box.y1()) * s) / s - y0);
    }

    private static void draw(GraphicsContext gc, Camera camera, Tile tile) {
        PlateRequest r = tile.request();
        double s = camera.outputScale();
        double scaled = camera.pxPerPt() / r.pxPerPt();
        gc.setImageSmoothing(scaled != 1);
        gc.drawImage(
                tile.image(),
                (camera.originXDevice() + r.x0() * scaled) / s,
                (camera.originYDevice() + r.y0() * scaled) / s,
                r.width() * scaled / s,
                r.height() * scaled / s);
    }
}
