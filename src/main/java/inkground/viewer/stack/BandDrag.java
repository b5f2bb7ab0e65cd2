package inkground.viewer.stack;

import inkground.viewer.state.ViewerState;
import java.util.ArrayList;
import java.util.List;
import javafx.css.PseudoClass;
import javafx.geometry.Point2D;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;

/**
 * Moves a band of the stack by dragging. A mark shows between which layers it would come to lie; let go beside the stack, it
 * stays where it was.
 */
final class BandDrag {
    private static final PseudoClass DRAGGED = PseudoClass.getPseudoClass("dragged");
    /** Movement below this is a click, in pixels. */
    private static final double CLICK_PX = 5;
    /** How far beside the stack it still takes the band, in pixels. */
    private static final double REACH_PX = 40;

    private static final double MARK_H = 5;

    private final ViewerState state;
    private final Pane place;
    private final Region mark = new Region();
    private List<InkBand> bands = List.of();
    private Point2D start;
    private int slot = -1;

    /**
     * @param place holds the bands
     */
    BandDrag(ViewerState state, Pane place) {
        this.state = state;
        this.place = place;
        mark.setId("drop-mark");
        mark.getStyleClass().add("drop-mark");
        mark.setManaged(false);
        mark.setMouseTransparent(true);
        mark.setVisible(false);
    }

    /** @return the mark, to be laid over the bands */
    Region mark() {
        return mark;
    }

    /** Tells the bands as they lie, the top one first. */
    void over(List<InkBand> topFirst) {
        bands = List.copyOf(topFirst);
    }

    /** Lets a band be dragged. */
    void attach(InkBand band) {
        band.row().setOnMousePressed(e -> start = e.getButton() == MouseButton.PRIMARY ? at(e) : null);
        band.row().setOnMouseDragged(e -> drag(band, at(e)));
        band.row().setOnMouseReleased(e -> drop(band));
    }

    private Point2D at(MouseEvent e) {
        return place.sceneToLocal(e.getSceneX(), e.getSceneY());
    }

    private void drag(InkBand band, Point2D now) {
        if (start == null || slot < 0 && now.distance(start) < CLICK_PX) {
            return;
        }
        boolean within = now.getX() > -REACH_PX
                && now.getX() < place.getWidth() + REACH_PX
                && now.getY() > -REACH_PX
                && now.getY() < place.getHeight() + REACH_PX;
        slot = within ? slotAt(now.getY()) : bands.indexOf(band);
        band.pseudoClassStateChanged(DRAGGED, true);
        boolean moves = slot != bands.indexOf(band) && slot != bands.indexOf(band) + 1;
        mark.setVisible(moves);
        if (moves) {
            double y = slot < bands.size()
                    ? bands.get(slot).getLayoutY()
                    : bands.get(slot - 1).getBoundsInParent().getMaxY();
            mark.resizeRelocate(
                    0, Math.max(0, Math.min(place.getHeight() - MARK_H, y - MARK_H / 2)), place.getWidth(), MARK_H);
        }
    }

    /** @return number of the gap nearest to a height, 0 above the top band */
    private int slotAt(double y) {
        List<Double> middles = new ArrayList<>();
        bands.forEach(band -> middles.add(band.getLayoutY() + band.row().getHeight() / 2));
        return (int) middles.stream().filter(middle -> middle < y).count();
    }

    private void drop(InkBand band) {
        int to = slot;
        boolean moves = mark.isVisible();
        start = null;
        slot = -1;
        mark.setVisible(false);
        band.pseudoClassStateChanged(DRAGGED, false);
        if (moves) {
            state.chosenInk.set(band.plane());
            state.printing.moveAfter(
                    band.plane(), to < bands.size() ? bands.get(to).plane() : -1);
        }
    }
}
