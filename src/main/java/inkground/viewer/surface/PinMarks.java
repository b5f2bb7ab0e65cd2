package inkground.viewer.surface;

import inkground.viewer.state.Camera;
import inkground.viewer.state.Pins.Pin;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import java.util.HashMap;
import java.util.Map;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Label;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Line;

/** The pins of the page: a cross on the very place, and beside it the number. */
final class PinMarks extends Pane {
    /** Half length of the cross in logical pixels; its middle is left open, so that the place itself is seen. */
    private static final double ARM_PX = 9;

    private static final double OPEN_PX = 3;

    private final ViewerState state;
    private final Map<Pin, Mark> marks = new HashMap<>();

    private record Mark(Pane cross, Label number) {}

    PinMarks(ViewerState state) {
        this.state = state;
        setMouseTransparent(true);
        state.pins.all.addListener((ListChangeListener<Pin>) c -> place());
    }

    /** Puts all pins where the camera sees them. */
    void place() {
        marks.keySet().removeIf(pin -> {
            boolean gone = !state.pins.all.contains(pin);
            if (gone) {
                getChildren().removeAll(marks.get(pin).cross(), marks.get(pin).number());
            }
            return gone;
        });
        for (Pin pin : state.pins.all) {
            place(pin, marks.computeIfAbsent(pin, this::mark));
        }
    }

    private Mark mark(Pin pin) {
        Pane cross = new Pane();
        for (String style : new String[] {"pin-halo", "pin-line"}) {
            for (int[] arm : new int[][] {{1, 0}, {-1, 0}, {0, 1}, {0, -1}}) {
                Line line = new Line(arm[0] * OPEN_PX, arm[1] * OPEN_PX, arm[0] * ARM_PX, arm[1] * ARM_PX);
                line.getStyleClass().add(style);
                cross.getChildren().add(line);
            }
        }
        Label number = Ui.label(String.valueOf(pin.number()), "pin-number");
        number.setId("pin-mark-" + pin.number());
        getChildren().addAll(cross, number);
        return new Mark(cross, number);
    }

    private void place(Pin pin, Mark mark) {
        boolean here = state.page.get() != null && state.page.get().info().number() == pin.page();
        mark.cross().setVisible(here);
        mark.number().setVisible(here);
        Camera camera = state.camera.get();
        double x = camera.toViewX(pin.xPt(), pin.yPt());
        double y = camera.toViewY(pin.xPt(), pin.yPt());
        mark.cross().relocate(camera.snap(x), camera.snap(y));
        mark.cross().setTranslateX(0.5 / camera.outputScale());
        mark.cross().setTranslateY(0.5 / camera.outputScale());
        mark.number().autosize();
        mark.number().relocate(x + ARM_PX - 1, y - ARM_PX - mark.number().getHeight() + 1);
    }
}
