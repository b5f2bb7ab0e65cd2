package inkground.artwork.pdf;

import com.github.jaiimageio.jpeg2000.J2KImageWriteParam;
import inkground.base.ImagePlugins;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/** Makes JPEG and JPEG 2000 files of one flat colour, component by component as given. */
final class Coded {
    /** Width and height in samples. */
    static final int SIDE = 16;

    /** For {@link #jpeg}: no marker says what the components are. */
    static final int NO_MARKER = -1;

    private Coded() {}

    private static Raster flat(int... values) {
        WritableRaster raster = Raster.createInterleavedRaster(0, SIDE, SIDE, values.length, null);
        for (int i = 0; i < SIDE * SIDE; i++) {
            raster.setPixel(i % SIDE, i / SIDE, values);
        }
        return raster;
    }

    private static byte[] written(ImageWriter writer, ImageWriteParam param, Raster raster) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ImageOutputStream stream = ImageIO.createImageOutputStream(out)) {
            writer.setOutput(stream);
            writer.write(null, new IIOImage(raster, null, null), param);
        } finally {
            writer.dispose();
        }
        return out.toByteArray();
    }

    /**
     * A JPEG file whose components are stored as given.
     *
     * @param transform that an Adobe marker states; {@link #NO_MARKER} for no marker
     */
    static byte[] jpeg(int transform, int... values) throws IOException {
        byte[] jpeg = written(ImagePlugins.writer("jpeg"), null, flat(values));
        if (transform == NO_MARKER) {
            return jpeg;
        }
        byte[] marker = {(byte) 0xFF, (byte) 0xEE, 0, 14, 'A', 'd', 'o', 'b', 'e', 0, 100, 0, 0, 0, 0, (byte) transform
        };
        return join(Arrays.copyOf(jpeg, 2), marker, Arrays.copyOfRange(jpeg, 2, jpeg.length));
    }

    /** A JPEG 2000 codestream without loss and without a transform of its components. */
    static byte[] codestream(int... values) throws IOException {
        ImageWriter writer = ImagePlugins.writer("jpeg2000");
        J2KImageWriteParam param = (J2KImageWriteParam) writer.getDefaultWriteParam();
        param.setLossless(true);
        param.setFilter("w5x3");
        param.setComponentTransformation(false);
        byte[] file = written(writer, param, flat(values));
        for (int at = 0; at + 3 < file.length; at++) {
            boolean start = (file[at] & 255) == 0xFF && file[at + 1] == 0x4F && (file[at + 2] & 255) == 0xFF;
            if (start && file[at + 3] == 0x51) {
                return Arrays.copyOfRange(file, at, file.length);
            }
        }
        throw new IOException("no codestream written");
    }

    /**
     * The codestream with other depths in its size marker (ISO/IEC 15444-1 §A.5.1). Values are coded as distances from the
     * middle of their range, so that v of b bits has to be encoded as v − 2^(b−1) + 128.
     */
    static byte[] depths(byte[] codestream, int... bits) {
        byte[] out = codestream.clone();
        for (int i = 0; i < bits.length; i++) {
            out[42 + 3 * i] = (byte) (bits[i] - 1);
        }
        return out;
    }

    /** Boxes of a JP2 file (ISO/IEC 15444-1 annex I) around a codestream; the image header box is not needed to read it. */
    static byte[] jp2(byte[] headerBoxes, byte[] codestream) {
        return join(
                box("jP  ", 0x0D, 0x0A, 0x87, 0x0A),
                box("ftyp", 'j', 'p', '2', ' ', 0, 0, 0, 0, 'j', 'p', '2', ' '),
                box("jp2h", headerBoxes),
                box("jp2c", codestream));
    }

    /** A colour box with the number of a space. */
    static byte[] enumerated(int space) {
        return box("colr", 1, 0, 0, 0, 0, 0, space);
    }

    static byte[] box(String type, int... body) {
        byte[] bytes = new byte[body.length];
        for (int i = 0; i < body.length; i++) {
            bytes[i] = (byte) body[i];
        }
        return box(type, bytes);
    }

    static byte[] box(String type, byte[] body) {
        int length = body.length + 8;
        byte[] size = {(byte) (length >> 24), (byte) (length >> 16), (byte) (length >> 8), (byte) length};
        return join(size, type.getBytes(StandardCharsets.ISO_8859_1), body);
    }

    static byte[] join(byte[]... parts) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            out.writeBytes(part);
        }
        return out.toByteArray();
    }
}
