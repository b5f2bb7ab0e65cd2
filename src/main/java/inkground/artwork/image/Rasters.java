package inkground.artwork.image;

import java.awt.image.DataBufferByte;
import java.awt.image.PixelInterleavedSampleModel;
import java.awt.image.Raster;

/** Samples of decoded rasters as bytes. */
public final class Rasters {
    private Rasters() {}

    /**
     * @param bits per value; scaled to 8
     * @return interleaved values; the raster's own where they are interleaved bytes already, so not to be used on
     */
    public static byte[] bytes(Raster raster, int bits) {
        int n = raster.getNumBands();
        int width = raster.getWidth();
        int length = Math.multiplyExact(Math.multiplyExact(width, n), raster.getHeight());
        byte[] own = bits == 8 ? interleaved(raster, length) : null;
        if (own != null) {
            return own;
        }
        byte[] out = new byte[length];
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

    /** The raster's own bytes where they lie in just this order, else null. */
    private static byte[] interleaved(Raster raster, int length) {
        if (raster.getParent() != null
                || !(raster.getDataBuffer() instanceof DataBufferByte buffer)
                || !(raster.getSampleModel() instanceof PixelInterleavedSampleModel model)) {
            return null;
        }
        boolean packed = buffer.getNumBanks() == 1
                && buffer.getOffset() == 0
                && buffer.getSize() == length
                && model.getPixelStride() == raster.getNumBands()
                && model.getScanlineStride() == raster.getNumBands() * raster.getWidth();
        for (int i = 0; packed && i < model.getBandOffsets().length; i++) {
            packed = model.getBandOffsets()[i] == i;
        }
        return packed ? buffer.getData() : null;
    }

    /** @return the nearest byte */
    static byte clip(double value) {
        return (byte) Math.max(0, Math.min(255, Math.round(value)));
    }
}
