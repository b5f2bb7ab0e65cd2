package inkground.artwork.pdf;

import java.awt.image.Raster;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.filter.FilterFactory;

/** Decodes JPEG and JPEG 2000 data to interleaved bytes without converting colours. */
final class RasterCodec {
    private RasterCodec() {}

    /**
     * Decodes a JPEG file to 8-bit components: grey, RGB (from YCbCr) or CMYK (from YCCK). Values are as stored: a producer
     * that stores them inverted says so in the image's Decode array (ISO 32000-2 §7.4.8 has no other switch).
     */
    static byte[] jpeg(byte[] data) throws IOException {
        COSDictionary parameters = new COSDictionary();
        parameters.setItem(COSName.FILTER, COSName.DCT_DECODE);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        FilterFactory.INSTANCE.getFilter(COSName.DCT_DECODE).decode(new ByteArrayInputStream(data), out, parameters, 0);
        return out.toByteArray();
    }

    /**
     * Decodes JPEG 2000 data.
     *
     * @return width × height × components raw values scaled to bytes; palette indices stay as they are
     */
    static Decoded jpx(byte[] data, int bits, boolean indices) throws IOException {
        Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName("JPEG2000");
        if (!readers.hasNext()) {
            throw new IOException("no reader for JPEG 2000");
        }
        ImageReader reader = readers.next();
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(data))) {
            reader.setInput(in, true, true);
            Raster raster = reader.canReadRaster()
                    ? reader.readRaster(0, null)
                    : reader.read(0).getRaster();
            return bytes(raster, bits, indices);
        } finally {
            reader.dispose();
        }
    }

    private static Decoded bytes(Raster raster, int bits, boolean indices) {
        int n = raster.getNumBands();
        int width = raster.getWidth();
        byte[] out = new byte[width * raster.getHeight() * n];
        double factor = indices || bits == 8 ? 1 : 255.0 / ((1 << bits) - 1);
        int[] row = new int[width * n];
        for (int y = 0; y < raster.getHeight(); y++) {
            raster.getPixels(raster.getMinX(), raster.getMinY() + y, width, 1, row);
            for (int i = 0; i < row.length; i++) {
                out[y * row.length + i] = (byte) Math.max(0, Math.min(255, Math.round(row[i] * factor)));
            }
        }
        return new Decoded(width, raster.getHeight(), n, out);
    }

    /**
     * Decoded samples.
     *
     * @param width in samples
     * @param height in samples
     * @param components per sample
     * @param data interleaved bytes
     */
    record Decoded(int width, int height, int components, byte[] data) {}
}
