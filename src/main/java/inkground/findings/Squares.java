package inkground.findings;

/** The smallest and the largest value in a square around each pixel of a raster of bytes, 0 to 255. */
final class Squares {
    private Squares() {}

    /** @return the smallest value within {@code reach} pixels across and down, in some tiles; elsewhere the raster */
    static byte[] smallest(byte[] raster, int width, int height, int reach, Tiles tiles) {
        return farthest(raster, width, height, reach, tiles, 255);
    }

    /** @return the largest value within {@code reach} pixels across and down, in some tiles; elsewhere the raster */
    static byte[] largest(byte[] raster, int width, int height, int reach, Tiles tiles) {
        return farthest(raster, width, height, reach, tiles, 0);
    }

    /** The largest value, or with the bits flipped the smallest. */
    private static byte[] farthest(byte[] raster, int width, int height, int reach, Tiles tiles, int flip) {
        byte[] across = new byte[raster.length];
        tiles.grown(reach).parallel((y, x0, x1) -> {
            int row = y * width;
            for (int x = x0; x < x1; x++) {
                int most = 0;
                for (int i = row + Math.max(0, x - reach); i <= row + Math.min(width - 1, x + reach); i++) {
                    most = Math.max(most, raster[i] & 255 ^ flip);
                }
                across[row + x] = (byte) most;
            }
        });
        byte[] out = raster.clone();
        tiles.parallel((y, x0, x1) -> {
            for (int x = x0; x < x1; x++) {
                int most = 0;
                for (int i = Math.max(0, y - reach); i <= Math.min(height - 1, y + reach); i++) {
                    most = Math.max(most, across[i * width + x] & 255);
                }
                out[y * width + x] = (byte) (most ^ flip);
            }
        });
        return out;
    }

    /** @return 255 less each value */
    static byte[] invert(byte[] raster) {
        byte[] out = new byte[raster.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = (byte) ~raster[i];
        }
        return out;
    }
}
