package inkground.artwork.pdf;

import inkground.artwork.ColourSpace;
import inkground.artwork.image.Ycc;
import java.awt.image.Raster;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;

/**
 * A JPEG 2000 file inside a PDF file: JPXDecode, ISO 32000-2 §7.4.9. The library decodes the codestream only; what the
 * components stand for is read from the boxes here.
 */
final class JpxFile {
    private final byte[] data;
    private final int codestream;
    private final int width;
    private final int height;
    private final int[] depths;
    private final JpxBoxes boxes;
    private final JpxBoxes.Channel[] channels;

    private JpxFile(byte[] data, int codestream, int width, int height, int[] depths, JpxBoxes boxes) {
        this.data = data;
        this.codestream = codestream;
        this.width = width;
        this.height = height;
        this.depths = depths;
        this.boxes = boxes;
        this.channels = boxes.channels(depths.length);
    }

    /** Reads boxes and size marker (ISO/IEC 15444-1 annexes A.5.1 and I), before anything is allocated; null for none. */
    static JpxFile of(byte[] data) {
        JpxBoxes boxes = JpxBoxes.of(data);
        for (int at = boxes.codestream(); at + 44 < data.length; at++) {
            if (JpxBoxes.u16(data, at) == 0xFF4F && JpxBoxes.u16(data, at + 2) == 0xFF51) {
                long width = JpxBoxes.u32(data, at + 8) - JpxBoxes.u32(data, at + 16);
                long height = JpxBoxes.u32(data, at + 12) - JpxBoxes.u32(data, at + 20);
                int components = JpxBoxes.u16(data, at + 40);
                boolean whole = components > 0 && at + 42 + 3L * components <= data.length;
                if (!whole || width < 1 || height < 1 || width > Integer.MAX_VALUE || height > Integer.MAX_VALUE) {
                    return null;
                }
                int[] depths = new int[components];
                for (int i = 0; i < components; i++) {
                    depths[i] = (data[at + 42 + 3 * i] & 0x7F) + 1;
                }
                return new JpxFile(data, at, (int) width, (int) height, depths, boxes);
            }
        }
        return null;
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    /** Values per sample while decoding: components of the codestream, or channels where a palette makes more of them. */
    int values() {
        return Math.max(depths.length, channels.length);
    }

    /** Bits of the first channel. */
    int bits() {
        return channels.length == 0 ? depths[0] : depth(channels[0]);
    }

    private int depth(JpxBoxes.Channel channel) {
        return channel.column() < 0
                ? depths[channel.component()]
                : boxes.palette().depths()[channel.column()];
    }

    /** The space that the file itself states, for images whose dictionary states none. */
    ColourSpace space() {
        int n = (int) Arrays.stream(channels).filter(JpxBoxes.Channel::isColour).count();
        return boxes.space(boxes.channelsTyped() || n < 2 ? n : withoutOpacity(n));
    }

    /** Files that do not say which channel is opacity have it after the colours. */
    private int withoutOpacity(int n) {
        int stated = boxes.coloursOfSpace();
        return stated > 0 && stated < n ? stated : n == 2 ? 1 : n;
    }

    /**
     * Samples in the space that the image is used with.
     *
     * @param colour interleaved bytes; indices as they stand
     * @param opacity one byte a sample; null where the file has none
     */
    record Samples(byte[] colour, byte[] opacity) {}

    /**
     * Decodes.
     *
     * @param space of the image
     * @param own whether the space is the file's own, so that its luminance and chrominance become RGB
     */
    Samples decode(ColourSpace space, boolean own) throws IOException {
        boolean indices = space instanceof ColourSpace.Indexed;
        int n = space.components();
        JpxBoxes.Channel[] all = indices ? new JpxBoxes.Channel[] {JpxBoxes.Channel.plain(0)} : channels;
        JpxBoxes.Channel[] colours =
                Arrays.stream(all).filter(JpxBoxes.Channel::isColour).toArray(JpxBoxes.Channel[]::new);
        if (colours.length < n && colours.length != 1) {
            throw new IOException("a JPEG 2000 image of " + colours.length + " channels in a space of " + n);
        }
        JpxBoxes.Channel opacity = opacity(all, colours, n);
        Raster raster = raster();
        if (raster.getNumBands() < depths.length || raster.getWidth() != width || raster.getHeight() != height) {
            throw new IOException("a JPEG 2000 image of parts that do not belong together");
        }
        byte[] colour = new byte[Math.multiplyExact(Math.multiplyExact(width, height), n)];
        for (int i = 0; i < n; i++) {
            channel(raster, colours[Math.min(i, colours.length - 1)], indices, colour, i, n);
        }
        if (own && boxes.isYcc() && n == 3) {
            Ycc.toRgb(colour, 3);
        }
        if (opacity == null) {
            return new Samples(colour, null);
        }
        byte[] alpha = new byte[width * height];
        channel(raster, opacity, false, alpha, 0, 1);
        return new Samples(colour, alpha);
    }

    private JpxBoxes.Channel opacity(JpxBoxes.Channel[] all, JpxBoxes.Channel[] colours, int n) {
        for (JpxBoxes.Channel channel : all) {
            if (channel.isOpacity()) {
                return channel;
            }
        }
        return !boxes.channelsTyped() && colours.length > n ? colours[colours.length - 1] : null;
    }

    /** Puts one channel's values, scaled to bytes, at every {@code step}th place from {@code offset}. */
    private void channel(Raster raster, JpxBoxes.Channel channel, boolean indices, byte[] out, int offset, int step) {
        int most = (int) Math.min(Integer.MAX_VALUE, (1L << depth(channel)) - 1);
        int[] lookup = channel.column() < 0 ? null : boxes.palette().columns()[channel.column()];
        int[] row = new int[width];
        int at = offset;
        for (int y = 0; y < height; y++) {
            raster.getSamples(raster.getMinX(), raster.getMinY() + y, width, 1, channel.component(), row);
            for (int x = 0; x < width; x++, at += step) {
                int value = row[x];
                if (lookup != null) {
                    value = lookup[Math.max(0, Math.min(lookup.length - 1, value))];
                }
                out[at] = (byte) (indices || most == 255 ? clip(value) : clip(Math.round(value * 255.0 / most)));
            }
        }
    }

    private static long clip(long value) {
        return Math.max(0, Math.min(255, value));
    }

    private Raster raster() throws IOException {
        Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName("JPEG2000");
        if (!readers.hasNext()) {
            throw new IOException("no reader for JPEG 2000");
        }
        ImageReader reader = readers.next();
        try (ImageInputStream in =
                new MemoryCacheImageInputStream(new ByteArrayInputStream(data, codestream, data.length - codestream))) {
            reader.setInput(in, true, true);
            return reader.canReadRaster()
                    ? reader.readRaster(0, null)
                    : reader.read(0).getRaster();
        } finally {
            reader.dispose();
        }
    }
}
