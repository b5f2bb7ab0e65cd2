package inkground.viewer.lineup;

/**
 * An even grid of cells, in logical pixels: as large as they can be for a picture of a given shape. Immutable.
 *
 * @param count cells
 * @param columns cells side by side
 * @param cellW width of a cell and of its picture
 * @param pictureH height of a cell's picture
 * @param captionH height of the words beneath it
 * @param left x of the first cell
 * @param top y of the first cell
 */
record CellGrid(int count, int columns, double cellW, double pictureH, double captionH, double left, double top) {
    /** Between cells, and around them. */
    private static final double GAP = 10;
    /** From here on a cell's name takes one line. */
    private static final double WIDE = 160;

    /**
     * @param count cells, at least 1
     * @param width of the place, logical pixels
     * @param height likewise
     * @param aspect width by height of what a cell shows
     */
    static CellGrid of(int count, double width, double height, double aspect) {
        CellGrid best = null;
        double bestScale = -1;
        for (int columns = 1; columns <= count; columns++) {
            int rows = (count + columns - 1) / columns;
            double w = Math.max(1, Math.floor((width - (columns + 1) * GAP) / columns));
            double captionH = w < WIDE ? LineUpCell.TALL_CAPTION_H : LineUpCell.LOW_CAPTION_H;
            double h = Math.max(1, Math.floor((height - (rows + 1) * GAP) / rows) - captionH);
            double scale = Math.min(w, h * aspect);
            if (scale > bestScale) {
                bestScale = scale;
                double left = Math.floor((width - columns * w - (columns - 1) * GAP) / 2);
                best = new CellGrid(count, columns, w, h, captionH, left, GAP);
            }
        }
        return best;
    }

    /** @return left edge of a cell */
    double x(int cell) {
        return left + cell % columns * (cellW + GAP);
    }

    /** @return top edge of a cell */
    double y(int cell) {
        return top + cell / columns * (pictureH + captionH + GAP);
    }

    /** @return the cell at a point, the words included; -1 for none */
    int at(double x, double y) {
        for (int cell = 0; cell < count; cell++) {
            double dx = x - x(cell);
            double dy = y - y(cell);
            if (dx >= 0 && dx < cellW && dy >= 0 && dy < pictureH + captionH) {
                return cell;
            }
        }
        return -1;
    }
}
