package inkground.artwork.pdf;

import com.github.jaiimageio.jpeg2000.impl.IISRandomAccessIO;
import com.github.jaiimageio.jpeg2000.impl.J2KImageReadParamJava;
import java.awt.Point;
import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.util.Arrays;
import javax.imageio.stream.MemoryCacheImageInputStream;
import jj2000.j2k.NotImplementedError;
import jj2000.j2k.codestream.HeaderInfo;
import jj2000.j2k.codestream.reader.BitstreamReaderAgent;
import jj2000.j2k.codestream.reader.HeaderDecoder;
import jj2000.j2k.decoder.DecoderSpecs;
import jj2000.j2k.image.BlkImgDataSrc;
import jj2000.j2k.image.DataBlkInt;
import jj2000.j2k.image.ImgDataConverter;
import jj2000.j2k.image.invcomptransf.InvCompTransf;
import jj2000.j2k.io.RandomAccessIO;
import jj2000.j2k.util.FacilityManager;
import jj2000.j2k.util.MsgLogger;
import jj2000.j2k.wavelet.synthesis.InverseWT;

/**
 * The codestream of a JPEG 2000 file: what its size marker says (ISO/IEC 15444-1 §A.5.1), and its components in their own
 * depth and at their own sampling. The library's decoder is used stage by stage, since its ImageIO reader cannot hold
 * sub-sampled components and leaves the sign out.
 */
final class JpxCodestream {
    private static final int MOST_BITS = 30; // what the decoder's integers hold
    private static final int STRIP = 64; // rows decoded at once

    /** The decoder would print its remarks on the console. */
    private static final MsgLogger UNHEARD = new MsgLogger() {
        @Override
        public void printmsg(int severity, String message) {}

        @Override
        public void println(String text, int firstIndent, int indent) {}

        @Override
        public void flush() {}
    };

    private final byte[] data;
    private final int at;
    private final int left;
    private final int top;
    private final int width;
    private final int height;
    private final Component[] components;

    /**
     * A component.
     *
     * @param bits of a value
     * @param signed whether values are centred on 0
     * @param stepX reference points from one sample to the next, rightwards
     * @param stepY the same downwards
     */
    private record Component(int bits, boolean signed, int stepX, int stepY) {}

    /** Takes decoded samples. */
    interface Sink {
        /**
         * A row of samples of one component.
         *
         * @param component number
         * @param from first picture column, inside the picture
         * @param row picture row, inside the picture
         * @param values one for each picture column from there on, 0 to all bits set
         * @param count how many
         */
        void row(int component, int from, int row, int[] values, int count);
    }

    private JpxCodestream(byte[] data, int at, int left, int top, int width, int height, Component[] components) {
        this.data = data;
        this.at = at;
        this.left = left;
        this.top = top;
        this.width = width;
        this.height = height;
        this.components = components;
    }

    /** Looks for the size marker from a place on and reads it, before anything is allocated; null for none that holds. */
    static JpxCodestream of(byte[] data, int from) {
        for (int at = from; at + 44 < data.length; at++) {
            if (JpxBoxes.u16(data, at) == 0xFF4F && JpxBoxes.u16(data, at + 2) == 0xFF51) {
                return sized(data, at);
            }
        }
        return null;
    }

    private static JpxCodestream sized(byte[] data, int at) {
        long left = JpxBoxes.u32(data, at + 16);
        long top = JpxBoxes.u32(data, at + 20);
        long right = JpxBoxes.u32(data, at + 8);
        long bottom = JpxBoxes.u32(data, at + 12);
        int count = JpxBoxes.u16(data, at + 40);
        boolean whole = count > 0 && at + 42 + 3L * count <= data.length;
        if (!whole || left >= right || top >= bottom || right > Integer.MAX_VALUE || bottom > Integer.MAX_VALUE) {
            return null;
        }
        Component[] components = new Component[count];
        for (int i = 0; i < count; i++) {
            int entry = at + 42 + 3 * i;
            int depth = JpxBoxes.u8(data, entry);
            int stepX = JpxBoxes.u8(data, entry + 1);
            int stepY = JpxBoxes.u8(data, entry + 2);
            if (stepX == 0 || stepY == 0) {
                return null;
            }
            components[i] = new Component((depth & 0x7F) + 1, depth > 0x7F, stepX, stepY);
        }
        return new JpxCodestream(
                data, at, (int) left, (int) top, (int) (right - left), (int) (bottom - top), components);
    }

    /** Width of the picture in points of the reference grid. */
    int width() {
        return width;
    }

    int height() {
        return height;
    }

    int components() {
        return components.length;
    }

    /** Bits of a component's values. */
    int bits(int component) {
        return components[component].bits();
    }

    /**
     * Decodes all components. A sub-sampled one is repeated over the points up to its next sample, which the standard leaves
     * to the reader; a signed one is moved up by half its range. What a stream that is cut off does not hold any more is left
     * out, as with the other filters.
     */
    void decode(Sink sink) throws IOException {
        for (int c = 0; c < components.length; c++) {
            if (components[c].bits() > MOST_BITS) {
                throw new IOException("a JPEG 2000 component of " + components[c].bits() + " bits");
            }
        }
        FacilityManager.registerMsgLogger(Thread.currentThread(), UNHEARD);
        try (MemoryCacheImageInputStream in =
                new MemoryCacheImageInputStream(new ByteArrayInputStream(data, at, data.length - at))) {
            BlkImgDataSrc source = stages(new Padded(in));
            Point tiles = source.getNumTiles(null);
            for (int y = 0; y < tiles.y; y++) {
                for (int x = 0; x < tiles.x; x++) {
                    source.setTile(x, y);
                    for (int c = 0; c < components.length; c++) {
                        tile(source, c, sink);
                    }
                }
            }
        } catch (NotImplementedError | ThreadDeath e) { // the decoder's way to say that it cannot go on
            throw new IOException("a JPEG 2000 image coded in a way that the decoder does not know", e);
        } finally {
            FacilityManager.unregisterMsgLogger(Thread.currentThread());
        }
    }

    /** The codestream, whose code blocks go on without end as the entropy decoder has it: ISO/IEC 15444-1 §D.4.1. */
    private static final class Padded extends IISRandomAccessIO {
        private final MemoryCacheImageInputStream in;

        Padded(MemoryCacheImageInputStream in) {
            super(in);
            this.in = in;
        }

        /** Headers end with the data; the library's own gives ones for ever, and its decoder counts them for ever. */
        @Override
        public int read() throws IOException {
            int value = in.read();
            if (value < 0) {
                throw new EOFException();
            }
            return value;
        }

        @Override
        public void readFully(byte[] out, int offset, int count) throws IOException {
            int done = 0;
            int got = 0;
            while (done < count && got >= 0) {
                got = in.read(out, offset + done, count - done);
                done += Math.max(0, got);
            }
            Arrays.fill(out, offset + done, offset + count, (byte) 0xFF);
        }
    }

    /** The stages of ISO/IEC 15444-1 from packets to components: entropy, region of interest, steps, wavelets, colours. */
    private BlkImgDataSrc stages(RandomAccessIO in) throws IOException {
        J2KImageReadParamJava parameters = new J2KImageReadParamJava();
        HeaderInfo info = new HeaderInfo();
        HeaderDecoder header = new HeaderDecoder(in, parameters, info);
        if (header.getNumComps() != components.length
                || header.getImgWidth() != width
                || header.getImgHeight() != height) {
            throw new IOException("a JPEG 2000 image of parts that do not belong together");
        }
        int[] depths = new int[components.length];
        for (int c = 0; c < depths.length; c++) {
            depths[c] = header.getOriginalBitDepth(c);
        }
        DecoderSpecs specs = header.getDecoderSpecs();
        BitstreamReaderAgent packets = BitstreamReaderAgent.createInstance(in, header, parameters, specs, false, info);
        InverseWT wavelets = InverseWT.createInstance(
                header.createDequantizer(
                        header.createROIDeScaler(header.createEntropyDecoder(packets, parameters), parameters, specs),
                        depths,
                        specs),
                specs);
        wavelets.setImgResLevel(packets.getImgRes());
        return new InvCompTransf(new ImgDataConverter(wavelets, 0), specs, depths);
    }

    private void tile(BlkImgDataSrc source, int number, Sink sink) throws IOException {
        Component component = components[number];
        int tile = source.getTileIdx();
        int tileWidth = source.getTileCompWidth(tile, number);
        int tileHeight = source.getTileCompHeight(tile, number);
        int x0 = source.getCompULX(number);
        int y0 = source.getCompULY(number);
        for (int y = 0; tileWidth > 0 && y < tileHeight; y += STRIP) {
            DataBlkInt block = new DataBlkInt(0, y, tileWidth, Math.min(STRIP, tileHeight - y));
            int rows = block.h;
            do {
                block = (DataBlkInt) source.getInternCompData(block, number);
            } while (block.progressive);
            for (int row = 0; row < rows; row++) {
                spread(block, row, tileWidth, x0, y0 + y + row, number, component, sink);
            }
        }
    }

    /** Hands one row of component samples to the picture points that it stands for. */
    private void spread(
            DataBlkInt block, int row, int count, int x0, int y, int number, Component component, Sink sink) {
        int firstX = from(x0, component.stepX(), left);
        int endX = until(x0 + count, component.stepX(), left, width);
        if (endX <= firstX) {
            return;
        }
        int[] values = new int[endX - firstX];
        int most = (1 << component.bits()) - 1;
        int half = 1 << component.bits() - 1; // the decoder centres unsigned values on 0 too
        int start = block.offset + row * block.scanw;
        for (int x = firstX; x < endX; x++) {
            int sample = Math.max(0, Math.min(count - 1, (x + left) / component.stepX() - x0));
            values[x - firstX] = Math.max(0, Math.min(most, block.data[start + sample] + half));
        }
        int endY = until(y + 1, component.stepY(), top, height);
        for (int py = from(y, component.stepY(), top); py < endY; py++) {
            sink.row(number, firstX, py, values, values.length);
        }
    }

    /** First picture point of a component's sample; the picture's first sample stands for what lies before it too. */
    private static int from(int sample, int step, int origin) {
        boolean first = sample <= ((long) origin + step - 1) / step;
        return first ? 0 : (int) ((long) sample * step - origin);
    }

    /** Point after the last that samples before {@code sample} stand for. */
    private static int until(int sample, int step, int origin, int size) {
        return (int) Math.min(size, (long) sample * step - origin);
    }
}
