package inkground.viewer.surface;

import inkground.artwork.PageBox;
import inkground.geometry.Box;
import inkground.viewer.state.Camera;
import inkground.viewer.state.Probe;
import inkground.viewer.state.ViewerState;
import inkground.viewer.surface.RulerScale.Tick;
import inkground.viewer.surface.RulerScale.Weight;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.Observable;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.layout.Region;
import javafx.scene.shape.LineTo;
import javafx.scene.shape.MoveTo;
import javafx.scene.shape.Path;
import javafx.scene.shape.PathElement;
import javafx.scene.shape.Polygon;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.Text;

/**
 * A ruler along one edge of the surface, in the unit of the state; where the finished product lies it is lighter. Its zero is the left or top edge of the trim: turned with
 * the page, it measures along the page's edge that lies beside it. Ticks are whole device pixels.
 */
final class Ruler extends Region {
    /** Breadth in logical pixels. */
    static final double BREADTH_PX = 20;

    private static final double NAMED_PX = 20;
    private static final double HALF_PX = 8;
    private static final double FINE_PX = 4;
    /** Between a named tick and its name. */
    private static final double GAP_PX = 3;

    private final ViewerState state;
    private final boolean across;
    private final Rectangle product = new Rectangle();
    private final Path ticks = new Path();
    private final Polygon pointer;
    private final Rectangle clip = new Rectangle();
    private final List<Text> names = new ArrayList<>();

    /**
     * @param along horizontal for the ruler above the surface, vertical for the one at its left
     */
    Ruler(ViewerState state, Orientation along) {
        this.state = state;
        this.across = along == Orientation.HORIZONTAL;
        getStyleClass().add("ruler");
        setId(across ? "ruler-across" : "ruler-down");
        setMouseTransparent(true);
        setMinSize(BREADTH_PX, BREADTH_PX);
        setPrefSize(BREADTH_PX, BREADTH_PX);
        ticks.getStyleClass().add("ruler-ticks");
        ticks.setSmooth(false);
        pointer = across
                ? new Polygon(-4, BREADTH_PX - 6, 4, BREADTH_PX - 6, 0, BREADTH_PX)
                : new Polygon(BREADTH_PX - 6, -4, BREADTH_PX - 6, 4, BREADTH_PX, 0);
        pointer.getStyleClass().add("ruler-pointer");
        pointer.setId(across ? "pointer-across" : "pointer-down");
        product.getStyleClass().add("ruler-product");
        product.setSmooth(false);
        for (Node node : new Node[] {product, ticks, pointer}) {
            node.setManaged(false);
        }
        getChildren().addAll(product, ticks, pointer);
        setClip(clip);
        for (Observable value : new Observable[] {state.camera, state.unit, state.page}) {
            value.addListener(o -> requestLayout());
        }
        state.probe.addListener((Observable o) -> point());
    }

    /** @return whether the ruler measures along the page's x */
    private boolean alongX() {
        return across != state.camera.get().sideways();
    }

    private Box trim() {
        return state.page.get().info().box(PageBox.TRIM);
    }

    /** @return place along the ruler, in logical pixels, of a length in points from its zero */
    private double toRuler(double offsetPt) {
        Camera camera = state.camera.get();
        double x = alongX() ? trim().x0() + offsetPt : 0;
        double y = alongX() ? 0 : trim().y0() + offsetPt;
        return across ? camera.toViewX(x, y) : camera.toViewY(x, y);
    }

    private void point() {
        Probe probe = state.probe.get();
        boolean shown = probe != null && state.page.get() != null;
        pointer.setVisible(shown);
        if (shown) {
            double at = toRuler(alongX() ? probe.xPt() - trim().x0() : probe.yPt() - trim().y0());
            pointer.setTranslateX(across ? at : 0);
            pointer.setTranslateY(across ? 0 : at);
        }
    }

    @Override
    protected void layoutChildren() {
        clip.setWidth(getWidth());
        clip.setHeight(getHeight());
        point();
        List<Tick> all = List.of();
        if (state.page.get() != null && state.camera.get().widthPx() > 1) {
            double length = across ? getWidth() : getHeight();
            double zero = toRuler(0);
            double pxPerPt = toRuler(1) - zero;
            double from = (pxPerPt > 0 ? -zero : length - zero) / pxPerPt;
            double to = (pxPerPt > 0 ? length - zero : -zero) / pxPerPt;
            all = RulerScale.ticks(state.unit.get(), from, to, Math.abs(pxPerPt));
        }
        product.setVisible(!all.isEmpty());
        if (!all.isEmpty()) {
            coverProduct();
        }
        draw(all);
    }

    /** The part of the ruler that lies along the finished product is lighter. */
    private void coverProduct() {
        Camera camera = state.camera.get();
        double one = camera.snap(toRuler(0));
        double other = camera.snap(toRuler(alongX() ? trim().width() : trim().height()));
        product.setX(across ? Math.min(one, other) : 0);
        product.setY(across ? 0 : Math.min(one, other));
        product.setWidth(across ? Math.abs(one - other) : BREADTH_PX);
        product.setHeight(across ? BREADTH_PX : Math.abs(one - other));
    }

    private void draw(List<Tick> all) {
        Camera camera = state.camera.get();
        double width = Math.max(1, Math.rint(camera.outputScale())) / camera.outputScale();
        ticks.setStrokeWidth(width);
        List<PathElement> path = new ArrayList<>();
        int named = 0;
        for (Tick tick : all) {
            double at = camera.snap(toRuler(tick.offsetPt())) + width / 2;
            double from = BREADTH_PX - length(tick.weight());
            path.add(across ? new MoveTo(at, from) : new MoveTo(from, at));
            path.add(across ? new LineTo(at, BREADTH_PX) : new LineTo(BREADTH_PX, at));
            if (tick.weight() == Weight.NAMED) {
                name(named++, tick.name(), at);
            }
        }
        ticks.getElements().setAll(path);
        for (int i = named; i < names.size(); i++) {
            names.get(i).setVisible(false);
        }
    }

    private static double length(Weight weight) {
        return switch (weight) {
            case NAMED -> NAMED_PX;
            case HALF -> HALF_PX;
            case FINE -> FINE_PX;
        };
    }

    /** Names stand after their tick; along the left edge they are written upwards. */
    private void name(int index, String words, double at) {
        if (index == names.size()) {
            Text made = new Text();
            made.getStyleClass().add("ruler-name");
            made.setManaged(false);
            made.setRotate(across ? 0 : -90);
            names.add(made);
            getChildren().add(made);
        }
        Text text = names.get(index);
        text.setText(words);
        text.setVisible(true);
        double w = text.getLayoutBounds().getWidth();
        double h = text.getLayoutBounds().getHeight();
        double x = across ? at + GAP_PX : 1 + h / 2 - w / 2;
        double y = across ? 0 : at - GAP_PX - w / 2 - h / 2;
        text.relocate(x, y);
    }
}
