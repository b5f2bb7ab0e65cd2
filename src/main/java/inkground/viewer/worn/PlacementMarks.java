package inkground.viewer.worn;

import inkground.garment.Form;
import inkground.garment.Placed;
import inkground.garment.PlacementCheck;
import inkground.geometry.Box;
import inkground.viewer.state.Camera;
import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Line;
import javafx.scene.shape.Rectangle;
import javafx.scene.shape.Shape;

/**
 * What is drawn over the garment: print areas, and while the artwork is pointed at or moved its edge, the centre line and its
 * distances. Strokes have a light and a dark half, so that they show on any cloth, and differ by dash and label.
 */
final class PlacementMarks extends Pane {
    private final ViewerState state;
    private final Rectangle clip = new Rectangle();
    private boolean hovered;

    PlacementMarks(ViewerState state) {
        this.state = state;
        setMouseTransparent(true);
        setClip(clip);
    }

    /** Tells whether the pointer is on the artwork. */
    void hovered(boolean now) {
        if (hovered != now) {
            hovered = now;
            place();
        }
    }

    /** Draws everything anew where the camera sees it; a dozen nodes. */
    void place() {
        clip.setWidth(getWidth());
        clip.setHeight(getHeight());
        getChildren().clear();
        Placed placed = state.worn.placed().orElse(null);
        if (placed == null) {
            return;
        }
        if (state.worn.area.get()) {
            placed.form().areas().forEach(this::area);
        } else if (state.worn.showsArea()) {
            state.worn.check().map(PlacementCheck::area).ifPresent(this::area);
        }
        if (hovered || state.worn.moving.get()) {
            distances(placed);
        }
    }

    private void area(Form.Area area) {
        Box box = view(area.boxMm());
        rectangle(box, "print-area");
        LengthUnit unit = state.unit.get();
        Label label = label(
                area.name() + " " + unit.numberOfMm(area.boxMm().width()) + " × "
                        + unit.textOfMm(area.boxMm().height()),
                box.x0(),
                box.y0());
        label.relocate(box.x0(), box.y0() - label.getHeight() - 2);
        label.setId("print-area-" + area.name().replaceAll("[^a-z]+", "-"));
    }

    private void distances(Placed placed) {
        Box box = view(placed.artworkMm());
        Box zero = view(new Box(0, 0, 0, 0));
        LengthUnit unit = state.unit.get();
        rectangle(box, "artwork-edge");
        double centre = Math.floor((box.x0() + box.x1()) / 2) + 0.5;
        double middle = Math.floor(zero.x0()) + 0.5;
        line(middle, -1, middle, getHeight() + 1, "centre-line");
        double top = placed.artworkMm().y0();
        line(middle - 7, zero.y0(), middle + 7, zero.y0(), "measure");
        line(middle, zero.y0(), middle, box.y0(), "measure");
        Label below = label(unit.textOfMm(top), 0, 0);
        below.setId("below-collar-here");
        beside(below, middle + 5, (zero.y0() + box.y0()) / 2);
        double off = placed.offCentreMm();
        if (Math.abs(off) >= 0.05) {
            double y = Math.floor((box.y0() + box.y1()) / 2) + 0.5;
            line(middle, y, centre, y, "measure");
            Label aside = label(unit.textOfMm(Math.abs(off)) + (off < 0 ? " left" : " right"), 0, 0);
            aside.setId("off-centre-here");
            beside(aside, Math.max(middle, centre) + 5, y);
        }
        Label size = label(
                unit.numberOfMm(placed.artworkMm().width()) + " × "
                        + unit.textOfMm(placed.artworkMm().height()),
                0,
                0);
        size.autosize();
        size.relocate(box.x0(), box.y1() + 3);
    }

    private Box view(Box mm) {
        Camera camera = state.camera.get();
        return GarmentFeed.inView(camera, mm);
    }

    private void rectangle(Box box, String style) {
        double x0 = Math.floor(box.x0()) + 0.5;
        double y0 = Math.floor(box.y0()) + 0.5;
        for (String kind : List.of("line-halo", "line")) {
            Rectangle r = new Rectangle(
                    x0, y0, Math.max(1, Math.floor(box.x1()) + 0.5 - x0), Math.max(1, Math.floor(box.y1()) + 0.5 - y0));
            dress(r, kind, style);
        }
    }

    private void line(double x0, double y0, double x1, double y1, String style) {
        for (String kind : List.of("line-halo", "line")) {
            dress(new Line(x0, y0, x1, y1), kind, style);
        }
    }

    private void dress(Shape shape, String kind, String style) {
        shape.getStyleClass().addAll(kind, style);
        getChildren().add(shape);
    }

    private Label label(String words, double x, double y) {
        Label label = Ui.label(words, "line-label");
        getChildren().add(label);
        label.applyCss();
        label.autosize();
        label.relocate(x, y);
        return label;
    }

    private static void beside(Label label, double x, double middleY) {
        label.relocate(x, middleY - label.getHeight() / 2);
    }
}
