package inkground.viewer.surface;

import inkground.viewer.state.ViewerState;
import javafx.geometry.Point2D;
import javafx.scene.Cursor;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.input.ZoomEvent;
import javafx.scene.layout.Region;

/**
 * Moves the camera by what is done over a view: the wheel and two fingers zoom about their place, a hand that has taken hold pans.
 * Whether a press takes hold, and what else it may mean, is the view's affair. For the UI thread.
 */
public final class CameraHand {
    private final Region view;
    private final ViewerState state;
    private final Place place;
    private Point2D grip;

    /** Where a point of the view lies in the camera's picture. */
    @FunctionalInterface
    public interface Place {
        /** Views that show one picture, all over. */
        Place ITSELF = Point2D::new;

        /** @return pixels from the picture's top left; null outside of all pictures */
        Point2D of(double x, double y);
    }

    /**
     * @param view over which wheel and fingers are listened to
     * @param place of its points in the camera's picture
     */
    public CameraHand(Region view, ViewerState state, Place place) {
        this.view = view;
        this.state = state;
        this.place = place;
        view.addEventHandler(ScrollEvent.SCROLL, this::wheel);
        view.setOnZoom(this::spread);
    }

    private void wheel(ScrollEvent e) {
        Point2D at = place.of(e.getX(), e.getY());
        if (at != null && state.page.get() != null) {
            state.scroll(e.getDeltaY(), at.getX(), at.getY());
        }
        e.consume();
    }

    private void spread(ZoomEvent e) {
        Point2D at = place.of(e.getX(), e.getY());
        if (at != null) {
            state.zoom(e.getZoomFactor(), at.getX(), at.getY());
        }
    }

    /** Takes hold where the pointer is. */
    public void grip(MouseEvent e) {
        grip = new Point2D(e.getX(), e.getY());
    }

    /** @return where it has taken hold, or was dragged to last; null where it has not */
    public Point2D grip() {
        return grip;
    }

    /** Pans by the way from where it has hold; without hold, does nothing. */
    public void drag(MouseEvent e) {
        if (grip != null) {
            view.setCursor(Cursor.CLOSED_HAND);
            state.pan(e.getX() - grip.getX(), e.getY() - grip.getY());
            grip(e);
        }
    }

    /** Lets go. */
    public void letGo() {
        grip = null;
    }
}
