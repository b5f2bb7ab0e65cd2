package inkground.viewer.surface;

import inkground.viewer.state.Camera;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.RenderScheduler;
import inkground.viewer.ui.Ui;
import java.util.List;
import java.util.concurrent.Executor;
import javafx.beans.Observable;
import javafx.geometry.Point2D;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;

/**
 * The surface that the proof lies on. Pictures are drawn at device pixels: one pixel of a fine tile is one pixel of the
 * screen. All input only changes the state; drawing happens once per pulse.
 */
public final class ProofSurface extends Region {
    /** Pixels moved by one press of an arrow key. */
    public static final double ARROW_PX = 60;

    private final ViewerState state;
    private final TileFeed feed;
    private final Rectangle surround = new Rectangle();
    private final TileSheet sheet = new TileSheet();
    private final PageLines lines;
    private final PinMarks pins;
    private final PlaceMarks places;
    private final Rectangle clip = new Rectangle();
    private final Executor ui;
    private final CameraHand hand;
    private Point2D pointer;
    private boolean refreshing;

    public ProofSurface(ViewerState state, RenderScheduler scheduler, Executor ui) {
        this(state, scheduler, ui, 1);
    }

    /**
     * @param share of the memory for tiles that this surface may take, above 0 to 1
     */
    public ProofSurface(ViewerState state, RenderScheduler scheduler, Executor ui, double share) {
        this.state = state;
        this.ui = ui;
        hand = new CameraHand(this, state, CameraHand.Place.ITSELF);
        long cacheBytes =
                (long) (share * Math.min(384L << 20, Runtime.getRuntime().maxMemory() / 4));
        feed = new TileFeed(state, scheduler, ui, cacheBytes, this::requestLayout);
        lines = new PageLines(state);
        pins = new PinMarks(state);
        places = new PlaceMarks(state);
        setId("surface");
        getStyleClass().add("surface");
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleText("Proof of the page on the chosen substrate");
        lines.setManaged(false);
        pins.setManaged(false);
        surround.setManaged(false);
        surround.setSmooth(false);
        surround.getStyleClass().add("surround");
        getChildren().addAll(surround, sheet, lines, places, pins);
        setClip(clip);
        listen();
        input();
    }

    private void listen() {
        state.onLook(this::lookAnew);
        state.camera.addListener((Observable o) -> {
            requestLayout();
            if (pointer != null) {
                probe(pointer.getX(), pointer.getY());
            }
        });
        visibleProperty().addListener((o, before, now) -> {
            requestLayout();
            if (!now) {
                state.following.pictureLeads(false);
                feed.rest();
            }
        });
    }

    /** What is to be painted is set to work at once, not at the next pulse: the eye waits for it. */
    private void lookAnew() {
        requestLayout();
        if (!refreshing) {
            refreshing = true;
            ui.execute(() -> {
                refreshing = false;
                if (isVisible()) { // another view may be looked at, and has its own work
                    feed.refresh();
                }
            });
        }
    }

    private void input() {
        setOnMousePressed(this::grip);
        setOnMouseDragged(this::drag);
        setOnMouseReleased(e -> {
            hand.letGo();
            rest();
        });
        setOnMouseClicked(this::pick);
        state.colours.picking.addListener((Observable o) -> rest());
        setOnMouseMoved(e -> {
            pointer = new Point2D(e.getX(), e.getY());
            probe(e.getX(), e.getY());
        });
        setOnMouseExited(e -> {
            pointer = null;
            state.probe.set(null);
        });
    }

    private void rest() {
        setCursor(state.colours.picking.get() ? Cursor.CROSSHAIR : Cursor.DEFAULT);
    }

    private void pick(MouseEvent e) {
        if (state.colours.picking.get() && e.isStillSincePress() && state.page.get() != null) {
            Camera camera = state.camera.get();
            state.colours.pickedAt.set(
                    new Point2D(camera.toPageX(e.getX(), e.getY()), camera.toPageY(e.getX(), e.getY())));
        }
    }

    private void grip(MouseEvent e) {
        requestFocus();
        if (e.getButton() == MouseButton.PRIMARY || e.getButton() == MouseButton.MIDDLE) {
            hand.grip(e);
            setCursor(Cursor.CLOSED_HAND);
        }
    }

    private void drag(MouseEvent e) {
        if (hand.grip() != null) {
            pointer = new Point2D(e.getX(), e.getY());
            hand.drag(e);
        }
    }

    /** Tells what lies in the middle of what is seen, as if the pointer were there. */
    public void probeMiddle() {
        probe(getWidth() / 2, getHeight() / 2);
    }

    private void probe(double viewX, double viewY) {
        if (state.page.get() != null) {
            Camera camera = state.camera.get();
            state.probe.set(feed.probe(camera.toPageX(viewX, viewY), camera.toPageY(viewX, viewY)));
        }
    }

    /** @return whether all that is seen is there at device pixels, in the colours wanted */
    public boolean complete() {
        return state.camera.get().outputScale() == Ui.outputScale(this) && feed.complete();
    }

    @Override
    protected void layoutChildren() {
        if (!isVisible()) {
            return; // another view looks through the camera
        }
        double width = Math.max(1, getWidth());
        double height = Math.max(1, getHeight());
        Camera camera = state.camera.get();
        if (camera.widthPx() != width || camera.heightPx() != height || camera.outputScale() != Ui.outputScale(this)) {
            state.resize(width, height, Ui.outputScale(this));
        }
        for (Rectangle whole : new Rectangle[] {clip, surround}) {
            whole.setWidth(width);
            whole.setHeight(height);
        }
        lines.resizeRelocate(0, 0, width, height);
        pins.resizeRelocate(0, 0, width, height);
        feed.refresh();
        draw();
        lines.place();
        pins.place();
        places.resizeRelocate(0, 0, width, height);
        places.place();
        if (pointer != null) {
            probe(pointer.getX(), pointer.getY()); // under a pointer at rest too, another substrate is another colour
        }
    }

    private void draw() {
        if (state.page.get() == null || state.substrate.get() == null) {
            surround.setVisible(true);
            sheet.clear();
            state.following.pictureLeads(false);
            return;
        }
        List<Tile> tiles = feed.drawing();
        boolean covered = feed.covers();
        surround.setVisible(!covered);
        sheet.show(state.ground(), state.substrate.get().argb(), tiles, covered, state.camera.get());
        state.following.pictureLeads(!tiles.isEmpty());
        if (!feed.recolouring() && state.following.told().get() != state.substrate.get()) {
            ui.execute(state.following::tell); // after this picture is on its way to the painter
        }
    }
}
