package inkground.plate;

/** Something whose tints differ from pixel to pixel. Thread-safe; scratch belongs to the caller. */
interface PixelSource {
    /** @return the planes it gives tints for; others get none */
    int[] planes();

    /**
     * Computes one cell.
     *
     * @param deviceX left device pixel of the cell
     * @param deviceY top device pixel of the cell
     * @param tints receives, per entry of {@link #planes}, one tint per pixel (0 to {@link Fixed#TINT_ONE})
     * @param cover receives how much of each pixel the source covers, 0 to {@link Fixed#COVER_ONE}
     * @return whether {@code cover} was written; false when all is covered
     */
    boolean cell(int deviceX, int deviceY, int[][] tints, int[] cover);
}
