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
    private final boolean named;
    private final List<Line> lines = new ArrayList<>();

    private record Line(BooleanProperty shown, String style, Rectangle halo, Rectangle stroke, Label label) {}

    /** Of the page on the surface: with their names, and with the print area of the garment that is chosen. */
    public PageLines(ViewerState state) {
        this(state, true);
    }

    /**
     * @param named whether each has its name and measure beside it, for which small pictures have no room; without, the print area
     *     is left out too
     */
    public PageLines(ViewerState state, boolean named) {
        this.named = named;
        this.state = state;
        setMouseTransparent(true);
        add(state.overlays.bleed, "bleed");
        add(state.overlays.trim, "trim");
        add(state.overlays.safe, "safe");
        if (named) {
            add(state.worn.area, "print-area");
        }
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
        for (Line line : lines) {
            boolean shown = line.shown().get()
                    && state.page.get() != null
                    && (!line.style().equals("print-area")
                            || state.worn.areaOnPage().isPresent());
            line.halo().setVisible(shown);
            line.stroke().setVisible(shown);
            line.label().setVisible(shown && named);
            if (shown) {
                place(line);
            }
        }
    }

    private void place(Line line) {
        Camera camera = state.camera.get();
        Box box = boxOf(line.style());
        Box seen = camera.toView(box);
        // One whole number of device pixels wide, and on whole device pixels.
        double width = Math.max(1, Math.rint(camera.outputScale())) / camera.outputScale();
        double x0 = camera.snap(seen.x0()) + width / 2;
        double y0 = camera.snap(seen.y0()) + width / 2;
        double x1 = camera.snap(seen.x1()) + width / 2;
        double y1 = camera.snap(seen.y1()) + width / 2;
        for (Rectangle r : List.of(line.halo(), line.stroke())) {
            r.setStrokeWidth(width);
            r.setX(x0);
            r.setY(y0);
            r.setWidth(x1 - x0);
            r.setHeight(y1 - y0);
        }
        line.label().setText(words(line.style(), box));
        line.label().autosize();
        placeLabel(line, x0, y0, x1, y1);
    }

    /** Bleed is named outside at the top right, trim outside at the bottom left, safe inside at the top left, the print area outside at the
     * bottom right. */
    private static void placeLabel(Line line, double x0, double y0, double x1, double y1) {
        Label label = line.label();
        switch (line.style()) {
            case "bleed" -> label.relocate(x1 - label.getWidth(), y0 - label.getHeight() - 2);
            case "trim" -> label.relocate(x0, y1 + 3);
            case "print-area" -> label.relocate(x1 - label.getWidth(), y1 + 3);
            default -> label.relocate(x0 + 3, y0 + 3);
        }
    }

    private Box boxOf(String style) {
        PageInfo info = state.page.get().info();
        return switch (style) {
            case "bleed" -> info.box(PageBox.BLEED);
            case "trim" -> info.box(PageBox.TRIM);
            case "print-area" -> state.worn.areaOnPage().orElseThrow();
            default -> info.box(PageBox.TRIM).grow(-state.overlays.safeMm() / Box.MM_PER_PT);
        };
    }

    private String words(String style, Box box) {
        PageInfo info = state.page.get().info();
        LengthUnit unit = state.unit.get();
        return switch (style) {
            case "trim" -> "trim " + unit.size(box) + unless(info, PageBox.TRIM);
            case "print-area" -> state.worn.areaWords();
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
