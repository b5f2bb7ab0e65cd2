package inkground.findings;

/** The smallest and the largest value in a square around each pixel of a raster of bytes, 0 to 255. */
final class Squares {
    private Squares() {}

    /** @return the smallest value within {@code reach} pixels across and down */
    static byte[] smallest(byte[] raster, int width, int height, int reach) {
        byte[] inverted = invert(raster);
        return invert(largest(inverted, width, height, reach));
    }

    /** @return the largest value within {@code reach} pixels across and down */
    static byte[] largest(byte[] raster, int width, int height, int reach) {
        Tiles changing = Tiles.changing(raster, width, height, reach);
        byte[] across = raster.clone();
        changing.parallel((y, x0, x1) -> {
            int row = y * width;
            for (int x = x0; x < x1; x++) {
                int most = 0;
                for (int i = row + Math.max(0, x - reach); i <= row + Math.min(width - 1, x + reach); i++) {
                    most = Math.max(most, raster[i] & 255);
                }
                across[row + x] = (byte) most;
            }
        });
        byte[] out = across.clone();
        changing.parallel((y, x0, x1) -> {
            for (int j = Math.max(0, y - reach); j <= Math.min(height - 1, y + reach); j++) {
                for (int x = x0; x < x1; x++) {
                    int to = y * width + x;
                    out[to] = (byte) Math.max(out[to] & 255, across[j * width + x] & 255);
                }
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
