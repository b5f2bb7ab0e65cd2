package inkground.viewer.surface;

import inkground.geometry.Box;
import inkground.plate.PlateRequest;
import inkground.viewer.state.Camera;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.image.ImageView;
import javafx.scene.paint.Color;
import javafx.scene.shape.Rectangle;
import javafx.scene.transform.Affine;

/**
 * The substrate and the tiles on it. Its own coordinates are device pixels of the page; one transform turns and moves all of
 * them, so that moving the page touches no tile. For a tile of the camera's scale every number of that transform is whole once
 * the screen's scale is applied: a pixel of the tile is a pixel of the screen.
 */
public final class TileSheet extends Group {
    private final Affine pageToView = new Affine();
    private final Rectangle ground = new Rectangle();
    private Map<Tile, ImageView> views = Map.of();

    /** Empty. */
    public TileSheet() {
        setManaged(false);
        setAutoSizeChildren(false);
        ground.setSmooth(false);
        getTransforms().add(pageToView);
    }

    /** Shows nothing. */
    public void clear() {
        views = Map.of();
        getChildren().clear();
    }

    /**
     * Shows tiles.
     *
     * @param cloth what the substrate covers, in points
     * @param argb its colour
     * @param tiles the lower ones first
     * @param covered whether the tiles hide all else, so that nothing needs to be painted beneath them
     */
    public void show(Box cloth, int argb, List<Tile> tiles, boolean covered, Camera camera) {
        double s = camera.outputScale();
        pageToView.setMxx(camera.cos() / s);
        pageToView.setMxy(-camera.sin() / s);
        pageToView.setMyx(camera.sin() / s);
        pageToView.setMyy(camera.cos() / s);
        pageToView.setTx(camera.originXDevice() / s);
        pageToView.setTy(camera.originYDevice() / s);
        ground.setVisible(!covered);
        cover(cloth, argb, camera);
        Map<Tile, ImageView> shown = new HashMap<>();
        List<Node> order = new ArrayList<>();
        order.add(ground);
        for (Tile tile : tiles) {
            ImageView view = views.getOrDefault(tile, new ImageView());
            place(view, tile, camera.pxPerPt());
            shown.put(tile, view);
            order.add(view);
        }
        views = shown;
        if (!getChildren().equals(order)) {
            getChildren().setAll(order);
        }
    }

    private void cover(Box cloth, int argb, Camera camera) {
        double scale = camera.pxPerPt();
        double x0 = Math.rint(cloth.x0() * scale);
        double y0 = Math.rint(cloth.y0() * scale);
        ground.setX(x0);
        ground.setY(y0);
        ground.setWidth(Math.rint(cloth.x1() * scale) - x0);
        ground.setHeight(Math.rint(cloth.y1() * scale) - y0);
        ground.setFill(Color.rgb(argb >> 16 & 255, argb >> 8 & 255, argb & 255));
    }

    private static void place(ImageView view, Tile tile, double pxPerPt) {
        PlateRequest r = tile.request();
        double scaled = pxPerPt / r.pxPerPt();
        view.setImage(tile.image());
        view.setSmooth(scaled != 1);
        view.setX(r.x0() * scaled);
        view.setY(r.y0() * scaled);
        // 0 stands for the picture's own size.
        view.setFitWidth(scaled == 1 ? 0 : r.width() * scaled);
        view.setFitHeight(scaled == 1 ? 0 : r.height() * scaled);
    }
}
