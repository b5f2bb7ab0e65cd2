package inkground.bench;

/**
 * How far two rasters of 0 to 255 are apart.
 *
 * @param mean mean absolute difference of all pixels
 * @param farPercent share of all pixels that differ by more than {@value #FAR} and lie away from edges, where no neighbour in
 *     either raster differs by more than that
 */
public record Difference(double mean, double farPercent) {
    /** Apart by more than this is far. */
    static final int FAR = 32;

    static final double MEAN_LIMIT = 1;
    static final double FAR_LIMIT_PERCENT = 0.5;

    /**
     * Compares what two rasters have in common from their top left corner.
     *
     * @param a rows of pixels
     * @param b the same
     * @param without pixels left out; null for none
     */
    public static Difference of(int[][] a, int[][] b, boolean[][] without) {
        int height = Math.min(a.length, b.length);
        int width = Math.min(a[0].length, b[0].length);
        long sum = 0;
        long far = 0;
        long count = 0;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                if (without == null || !without[y][x]) {
                    int d = Math.abs(a[y][x] - b[y][x]);
                    count++;
                    sum += d;
                    far += d > FAR && flat(a, x, y, width, height) && flat(b, x, y, width, height) ? 1 : 0;
                }
            }
        }
        return new Difference((double) sum / Math.max(1, count), 100.0 * far / Math.max(1, count));
    }

    /** @return whether a limit of {@value #MEAN_LIMIT} in the mean or {@value #FAR_LIMIT_PERCENT} % far is passed */
    public boolean over() {
        return mean > MEAN_LIMIT || farPercent > FAR_LIMIT_PERCENT;
    }

    /** @return whether no neighbour of a pixel is far from it */
    static boolean flat(int[][] raster, int x, int y, int width, int height) {
        for (int j = Math.max(0, y - 1); j <= Math.min(height - 1, y + 1); j++) {
            for (int i = Math.max(0, x - 1); i <= Math.min(width - 1, x + 1); i++) {
                if (Math.abs(raster[j][i] - raster[y][x]) > FAR) {
                    return false;
                }
            }
        }
        return true;
    }
}
