package inkground.artwork.image;

import java.awt.image.Raster;

/** Samples of decoded rasters as bytes. */
final class Rasters {
    private Rasters() {}

    /**
     * @param bits per value; scaled to 8
     * @return interleaved values
     */
    static byte[] bytes(Raster raster, int bits) {
        int n = raster.getNumBands();
        int width = raster.getWidth();
        byte[] out = new byte[Math.multiplyExact(Math.multiplyExact(width, n), raster.getHeight())];
        double factor = 255.0 / ((1L << bits) - 1);
        int[] row = new int[width * n];
        for (int y = 0; y < raster.getHeight(); y++) {
            raster.getPixels(raster.getMinX(), raster.getMinY() + y, width, 1, row);
            for (int i = 0; i < row.length; i++) {
                out[y * row.length + i] = bits == 8 ? (byte) row[i] : clip(row[i] * factor);
            }
        }
        return out;
    }

    /** @return the nearest byte */
    static byte clip(double value) {
        return (byte) Math.max(0, Math.min(255, Math.round(value)));
    }
}
