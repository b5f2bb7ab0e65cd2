package inkground.viewer.surface;

import inkground.geometry.Box;
import inkground.plate.PlateRequest;
import inkground.viewer.state.Camera;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/** Cuts a page into the regions that a camera needs. */
public final class TileGrid {
    /**
     * Edge of a tile in device pixels: a 2560 × 1440 surface takes about 20. Larger ones leave the coarse picture standing
     * for longer; smaller ones walk the display list more often. A multiple of the planes' cell in both directions.
     */
    public static final int TILE_PX = 512;
    /** Longer edge of the coarse picture of the whole page. */
    public static final int COARSE_PX = 640;

    private TileGrid() {}

    /** @return the whole page, coarse */
    public static PlateRequest coarse(Box page, boolean overprint, Set<Integer> layersOn) {
        double scale = COARSE_PX / Math.max(page.width(), page.height());
        return PlateRequest.of(page, scale * 72, overprint, layersOn);
    }

    /**
     * @param page what there is to see, in points
     * @return regions that cover what the camera sees of it at device pixels, nearest to its middle first
     */
    public static List<PlateRequest> visible(Camera camera, Box page, boolean overprint, Set<Integer> layersOn) {
        double scale = camera.pxPerPt();
        Box seen = camera.seen().intersect(page);
        List<PlateRequest> regions = new ArrayList<>();
        if (seen.isEmpty()) {
            return regions;
        }
        PlateRequest whole = PlateRequest.of(page, scale * 72, overprint, layersOn);
        int row1 = Math.floorDiv((int) Math.ceil(seen.y1() * scale) - 1, TILE_PX);
        int column1 = Math.floorDiv((int) Math.ceil(seen.x1() * scale) - 1, TILE_PX);
        for (int row = Math.floorDiv((int) Math.floor(seen.y0() * scale), TILE_PX); row <= row1; row++) {
            for (int column = Math.floorDiv((int) Math.floor(seen.x0() * scale), TILE_PX);
                    column <= column1;
                    column++) {
                addTile(regions, whole, column, row);
            }
        }
        double x = (seen.x0() + seen.x1()) / 2 * scale;
        double y = (seen.y0() + seen.y1()) / 2 * scale;
        regions.sort(
                Comparator.comparingDouble(r -> Math.hypot((r.x0() + r.x1()) / 2.0 - x, (r.y0() + r.y1()) / 2.0 - y)));
        return regions;
    }

    private static void addTile(List<PlateRequest> regions, PlateRequest whole, int column, int row) {
        int x0 = Math.max(whole.x0(), column * TILE_PX);
        int y0 = Math.max(whole.y0(), row * TILE_PX);
        int x1 = Math.min(whole.x1(), (column + 1) * TILE_PX);
        int y1 = Math.min(whole.y1(), (row + 1) * TILE_PX);
        if (x0 < x1 && y0 < y1) {
            regions.add(new PlateRequest(whole.pxPerPt(), x0, y0, x1, y1, whole.overprint(), whole.layersOn()));
        }
    }
}
