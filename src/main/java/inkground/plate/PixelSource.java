package inkground.plate;

/** Something whose tints differ from pixel to pixel. Thread-safe; scratch belongs to the caller. */
interface PixelSource {
    /** How much of a cell a source covers. */
    enum Extent {
        /** Nothing: neither tints nor cover were written. */
        NONE,
        /** As much as the cover says. */
        SOME,
        /** All of it: the cover was not written. */
        ALL
    }

    /** @return the planes it gives tints for, -1 for a channel that prints nothing; planes left out get no tint */
    int[] planes();

    /**
     * Computes one cell.
     *
     * @param deviceX left device pixel of the cell
     * @param deviceY top device pixel of the cell
     * @param tints receives, per entry of {@link #planes}, one tint per pixel (0 to {@link Fixed#TINT_ONE})
     * @param cover receives how much of each pixel the source covers, 0 to {@link Fixed#COVER_ONE}
     * @return what was written
     */
    Extent cell(int deviceX, int deviceY, int[][] tints, int[] cover);
}
