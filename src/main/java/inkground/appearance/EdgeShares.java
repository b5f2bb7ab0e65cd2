package inkground.appearance;

import inkground.plate.InkPlanes;

/**
 * How much of each pixel of a region the paint beside it covers. What paint that lets through covers is measured by the most covered
 * of the pixel and its eight neighbours, so that a shadow is no edge; beyond the region's own edge nothing is looked at. Immutable.
 */
final class EdgeShares {
    private static final int WHOLE = 255;

    private final byte[] laid;
    private final int width;
    private final int height;

    EdgeShares(InkPlanes region) {
        this.laid = region.raster(region.laidPlane());
        this.width = region.width();
        this.height = region.height();
    }

    /** @return the pixel that shows the paint of this one where it is whole: itself, or the neighbour that ink covers most */
    private int whole(int at) {
        int own = laid[at] & 255;
        if (own == 0 || own == WHOLE) {
            return at;
        }
        int best = at;
        int x = at % width;
        int y = at / width;
        for (int row = Math.max(0, y - 1); row <= Math.min(height - 1, y + 1); row++) {
            for (int column = Math.max(0, x - 1); column <= Math.min(width - 1, x + 1); column++) {
                int beside = row * width + column;
                best = (laid[beside] & 255) > (laid[best] & 255) ? beside : best;
            }
        }
        return best;
    }

    /** @return share of the pixel that ink covers, 0 to 1; 1 where none does, since that is no edge either */
    double share(int at) {
        int whole = whole(at);
        return whole == at ? 1 : (laid[at] & 255) / (double) (laid[whole] & 255);
    }
}
