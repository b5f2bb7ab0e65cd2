package inkground.artwork.pdf;

import inkground.artwork.image.Rasters;
import inkground.artwork.image.Ycc;
import inkground.base.ImagePlugins;
import java.awt.image.Raster;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;

/**
 * A JPEG file inside a PDF file: DCTDecode, ISO 32000-2 §7.4.8.
 *
 * @param data from the start-of-image marker on
 * @param width in samples
 * @param height in samples
 * @param components channels
 * @param bits per channel
 * @param adobe colour transform that an Adobe marker states (0 none, 1 YCbCr, 2 YCCK); −1 without one
 */
record JpegFile(byte[] data, int width, int height, int components, int bits, int adobe) {
    private static final int SOS = 0xDA;
    private static final int EOI = 0xD9;
    private static final int APP14 = 0xEE;
    private static final int ADOBE_TRANSFORM = 11;

    /** Reads the markers (ITU-T T.81 annex B), before anything is allocated; null when there is no frame. */
    static JpegFile of(byte[] data) {
        int at = 0;
        while (at + 3 < data.length && !(u8(data, at) == 0xFF && u8(data, at + 1) == 0xD8)) {
            at++;
        }
        at += 2;
        int frame = -1;
        int adobe = -1;
        while (at + 9 < data.length) {
            int marker = u8(data, at + 1);
            if (u8(data, at) != 0xFF || marker == 0xFF) {
                at++;
                continue;
            }
            if (marker == SOS || marker == EOI) {
                break;
            }
            if (marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC) {
                frame = at;
            } else if (marker == APP14 && at + 4 + ADOBE_TRANSFORM < data.length && isAdobe(data, at + 4)) {
                adobe = u8(data, at + 4 + ADOBE_TRANSFORM);
            }
            boolean alone = marker == 0x00 || marker == 0x01 || marker >= 0xD0 && marker <= 0xD8;
            at += alone ? 2 : 2 + u16(data, at + 2);
        }
        return frame < 0
                ? null
                : new JpegFile(
                        data,
                        u16(data, frame + 7),
                        u16(data, frame + 5),
                        u8(data, frame + 9),
                        u8(data, frame + 4),
                        adobe);
    }

    private static boolean isAdobe(byte[] data, int at) {
        return data[at] == 'A'
                && data[at + 1] == 'd'
                && data[at + 2] == 'o'
                && data[at + 3] == 'b'
                && data[at + 4] == 'e';
    }

    private static int u8(byte[] data, int at) {
        return data[at] & 255;
    }

    private static int u16(byte[] data, int at) {
        return u8(data, at) << 8 | u8(data, at + 1);
    }

    /**
     * Decodes to interleaved bytes: grey, RGB or CMYK. Tints are as stored: a producer that stores them inverted says so in
     * the image's Decode array, and nothing else in the standard turns them round.
     *
     * @param colorTransform of the filter's parameters; −1 where not stated. The Adobe marker goes before it; without both,
     *     three components are YCbCr and four are CMYK.
     */
    byte[] decode(int colorTransform) throws IOException {
        Raster raster = raster();
        byte[] samples = Rasters.bytes(raster, bits);
        if (raster.getNumBands() != components) {
            throw new IOException(raster.getNumBands() + " components instead of " + components);
        }
        int stated = adobe >= 0 ? adobe : colorTransform;
        if (components == 3 && stated != 0) {
            Ycc.toRgb(samples, 3);
        } else if (components == 4 && stated > 0) {
            Ycc.toCmyk(samples);
        }
        return samples;
    }

    private Raster raster() throws IOException {
        ImageReader reader = ImagePlugins.reader("jpeg");
        try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(data))) {
            reader.setInput(in, true, true);
            return reader.readRaster(0, null);
        } finally {
            reader.dispose();
        }
    }
}
