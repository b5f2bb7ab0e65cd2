package inkground.viewer.surface;

import inkground.artwork.PageBox;
import inkground.artwork.PageInfo;
import inkground.geometry.Box;
import inkground.viewer.state.Camera;
import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.beans.Observable;
import javafx.beans.property.BooleanProperty;
import javafx.scene.control.Label;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Rectangle;

/**
 * Trim, bleed and safe area, drawn over the proof. They differ by stroke and label, not by colour, and every stroke has a
 * light and a dark half so that it shows on any ink.
 */
public final class PageLines extends Pane {
    private final ViewerState state;
    private final List<Line> lines = new ArrayList<>();
    private final Rectangle clip = new Rectangle();

    private record Line(BooleanProperty shown, String style, Rectangle halo, Rectangle stroke, Label label) {}

    public PageLines(ViewerState state) {
        this.state = state;
        setMouseTransparent(true);
        setClip(clip);
        add(state.overlays.bleed, "bleed");
        add(state.overlays.trim, "trim");
        add(state.overlays.safe, "safe");
        state.unit.addListener((Observable o) -> place());
        state.overlays.process.addListener((Observable o) -> place());
    }

    private void add(BooleanProperty shown, String style) {
        Rectangle halo = new Rectangle();
        halo.getStyleClass().addAll("line-halo", style);
        Rectangle stroke = new Rectangle();
        stroke.getStyleClass().addAll("line", style);
        Label label = Ui.label("", "line-label");
        label.setId("line-" + style);
        lines.add(new Line(shown, style, halo, stroke, label));
        getChildren().addAll(halo, stroke, label);
        shown.addListener((Observable o) -> place());
    }

    /** Puts all lines where the camera sees them. */
    public void place() {
        clip.setWidth(getWidth());
        clip.setHeight(getHeight());
        for (Line line : lines) {
            boolean shown = line.shown().get() && state.page.get() != null;
            line.halo().setVisible(shown);
            line.stroke().setVisible(shown);
            line.label().setVisible(shown);
            if (shown) {
                place(line);
            }
        }
    }

    private void place(Line line) {
        Camera camera = state.camera.get();
        Box box = boxOf(line.style());
        // Half a pixel in, so that a stroke one pixel wide fills whole pixels.
        double x0 = Math.floor(camera.toViewX(box.x0())) + 0.5;
        double y0 = Math.floor(camera.toViewY(box.y0())) + 0.5;
        double x1 = Math.floor(camera.toViewX(box.x1())) + 0.5;
        double y1 = Math.floor(camera.toViewY(box.y1())) + 0.5;
        for (Rectangle r : List.of(line.halo(), line.stroke())) {
            r.setX(x0);
            r.setY(y0);
            r.setWidth(x1 - x0);
            r.setHeight(y1 - y0);
        }
        line.label().setText(words(line.style(), box));
        line.label().autosize();
        placeLabel(line, x0, y0, x1, y1);
    }

    /** Bleed is named outside at the top right, trim outside at the bottom left, safe inside at the top left. */
    private static void placeLabel(Line line, double x0, double y0, double x1, double y1) {
        Label label = line.label();
        switch (line.style()) {
            case "bleed" -> label.relocate(x1 - label.getWidth(), y0 - label.getHeight() - 2);
            case "trim" -> label.relocate(x0, y1 + 3);
            default -> label.relocate(x0 + 3, y0 + 3);
        }
    }

    private Box boxOf(String style) {
        PageInfo info = state.page.get().info();
        return switch (style) {
            case "bleed" -> info.box(PageBox.BLEED);
            case "trim" -> info.box(PageBox.TRIM);
            default -> info.box(PageBox.TRIM).grow(-state.overlays.safeMm() / Box.MM_PER_PT);
        };
    }

    private String words(String style, Box box) {
        PageInfo info = state.page.get().info();
        LengthUnit unit = state.unit.get();
        return switch (style) {
            case "trim" -> "trim " + unit.size(box) + unless(info, PageBox.TRIM);
            case "bleed" -> bleed(unit, leastBleed(info)) + unless(info, PageBox.BLEED);
            default -> "safe area, " + unit.text(state.overlays.safeMm() / Box.MM_PER_PT) + " inside the trim";
        };
    }

    private static String bleed(LengthUnit unit, double leastPt) {
        return leastPt * Box.MM_PER_PT < 0.05 ? "no bleed" : "bleed " + unit.text(leastPt);
    }

    private static String unless(PageInfo info, PageBox box) {
        return info.stated().contains(box)
                ? ""
                : String.format(Locale.ROOT, " (the file states no %s box)", box.word());
    }

    private static double leastBleed(PageInfo info) {
        Box bleed = info.box(PageBox.BLEED);
        Box trim = info.box(PageBox.TRIM);
        return Math.min(
                Math.min(trim.x0() - bleed.x0(), trim.y0() - bleed.y0()),
                Math.min(bleed.x1() - trim.x1(), bleed.y1() - trim.y1()));
    }
}
