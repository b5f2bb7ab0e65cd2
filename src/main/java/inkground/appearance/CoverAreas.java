package inkground.appearance;

import inkground.base.Cancel;
import inkground.plate.InkPlanes;

/**
 * Adds up the areas of the covers. A pixel on the edge of ink, or of paint, is shared out by the part that is covered: counted
 * whole for ink, as it is drawn, each edge would add half a pixel to the ink's area. Not thread-safe.
 */
final class CoverAreas {
    private static final Cover[] COVERS = Cover.values();

    private final BareMap map;
    private final ProofMap.MarkSink sink;
    private final double[] pixels = new double[COVERS.length];

    CoverAreas(BareMap map, ProofMap.MarkSink sink) {
        this.map = map;
        this.sink = sink;
    }

    /** @return area of each cover so far, in pixels, in their order */
    double[] pixels() {
        return pixels.clone();
    }

    /** Adds a part; {@code grown} holds one pixel more on each side. */
    void add(InkPlanes grown, Cancel cancel) {
        int width = grown.width();
        byte[] covers = new byte[width * grown.height()];
        map.mark(grown, covers, cancel);
        sink.marked(grown, covers, 1);
        byte[] laid = grown.raster(grown.laidPlane());
        byte[] marked = grown.raster(grown.markPlane());
        for (int y = 1; y < grown.height() - 1; y++) {
            for (int x = 1; x < width - 1; x++) {
                int at = y * width + x;
                if (MapAreas.even(covers, at, width)) {
                    pixels[covers[at]]++;
                } else {
                    share(covers, laid, marked, at, width);
                }
            }
        }
    }

    /** What paint that lets through covers is measured by what it covers beside this pixel, so that a shadow is no edge. */
    private void share(byte[] covers, byte[] laid, byte[] marked, int at, int width) {
        int mostLaid = 1;
        int mostMarked = 1;
        boolean bareBeside = false;
        Cover painted = null;
        for (int row = at - width; row <= at + width; row += width) {
            for (int i = row - 1; i <= row + 1; i++) {
                Cover cover = COVERS[covers[i]];
                mostLaid = Math.max(mostLaid, laid[i] & 255);
                mostMarked = Math.max(mostMarked, marked[i] & 255);
                bareBeside |= cover.bare();
                if (cover == Cover.KNOCKED_OUT || cover == Cover.WHITE_PAINT) {
                    painted = painted == null || i == at ? cover : painted;
                }
            }
        }
        Cover own = COVERS[covers[at]];
        double ink = own.bare() ? 0 : bareBeside ? (laid[at] & 255) / (double) mostLaid : 1;
        double rest = 1 - ink;
        double paint =
                painted == null ? 0 : Math.max(0, Math.min(rest, (marked[at] & 255) / (double) mostMarked - ink));
        pixels[own.ordinal()] += own.bare() ? 0 : ink;
        if (painted != null) {
            pixels[painted.ordinal()] += paint;
        }
        pixels[Cover.UNPAINTED.ordinal()] += rest - paint;
    }
}
