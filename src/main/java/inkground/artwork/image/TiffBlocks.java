package inkground.artwork.image;

import static inkground.artwork.image.TiffDirectory.*;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteOrder;
import java.util.zip.Inflater;
import java.util.zip.InflaterInputStream;
import javax.imageio.stream.ImageInputStream;

/** Reads strips and tiles: TIFF 6.0 sections 3, 9, 13, 14 and 15. Values of 9 to 16 bits are rounded to 8. */
final class TiffBlocks {
    private static final int MAX_BLOCKS = 4_000_000;

    /** Samples that a tile may have whatever the size of its picture: 4096 × 4096. */
    private static final long LARGEST_SPARE_TILE = 1 << 24;

    private final ImageInputStream in;
    private final TiffDirectory tags;
    private final int width;
    private final int height;
    private final int bits;
    private final int samples;
    private final boolean indices;
    private final boolean planar;
    private final boolean tiled;
    private final int blockWidth;
    private final int blockHeight;
    private final boolean littleEndian;
    private final byte[] out;

    /** @param indices whether values below 8 bits stay as they are, for a palette */
    TiffBlocks(ImageInputStream in, TiffDirectory tags, int width, int height, int bits, int samples, boolean indices)
            throws IOException {
        this.in = in;
        this.tags = tags;
        this.width = width;
        this.height = height;
        this.bits = bits;
        this.samples = samples;
        this.indices = indices;
        this.planar = tags.number(PLANAR, 1) == 2 && samples > 1;
        this.tiled = tags.numbers(TILE_OFFSETS) != null;
        double[] rows = tags.numbers(ROWS_PER_STRIP);
        this.blockWidth = tiled ? tags.number(TILE_WIDTH, 0) : width;
        this.blockHeight = tiled
                ? tags.number(TILE_HEIGHT, 0)
                : (int) Math.max(1, Math.min(height, rows == null ? height : rows[0]));
        if (blockWidth < 1 || blockHeight < 1 || blockWidth > 1 << 16 && tiled || blockHeight > 1 << 16 && tiled) {
            throw new IOException("blocks of " + blockWidth + " × " + blockHeight);
        }
        long most = Math.max(LARGEST_SPARE_TILE, 4L * width * height);
        if (tiled && (long) blockWidth * blockHeight > most) {
            throw new IOException("tiles of " + blockWidth + " × " + blockHeight + " for " + width + " × " + height);
        }
        in.seek(0);
        this.littleEndian = in.readUnsignedShort() == 0x4949;
        in.setByteOrder(littleEndian ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        this.out = new byte[Math.multiplyExact(Math.multiplyExact(width, samples), height)];
    }

    /** @return whether this class undoes a compression */
    static boolean reads(int compression) {
        return switch (compression) {
            case 1, 5, 8, 32946, 32773 -> true;
            default -> false;
        };
    }

    /** @return interleaved samples */
    byte[] read() throws IOException {
        double[] offsets = tags.numbers(tiled ? TILE_OFFSETS : STRIP_OFFSETS);
        double[] lengths = tags.numbers(tiled ? TILE_BYTES : STRIP_BYTES);
        int across = (width + blockWidth - 1) / blockWidth;
        int down = (height + blockHeight - 1) / blockHeight;
        int planes = planar ? samples : 1;
        if (offsets == null || (long) across * down * planes > Math.min(MAX_BLOCKS, offsets.length)) {
            throw new IOException("strips or tiles missing");
        }
        for (int i = 0; i < across * down * planes; i++) {
            int inPlane = i % (across * down);
            int x = inPlane % across * blockWidth;
            int y = inPlane / across * blockHeight;
            int rows = tiled ? blockHeight : Math.min(blockHeight, height - y);
            long rowBytes = ((long) blockWidth * (planar ? 1 : samples) * bits + 7) / 8;
            int size = Math.toIntExact(Math.multiplyExact(rowBytes, rows));
            long stored = lengths != null && i < lengths.length ? (long) lengths[i] : size;
            byte[] data = block((long) offsets[i], stored, size);
            if (tags.number(PREDICTOR, 1) == 2) {
                undoPredictor(data, (int) rowBytes, rows);
            }
            unpack(data, (int) rowBytes, x, y, rows, planar ? i / (across * down) : -1);
        }
        return out;
    }

    private byte[] block(long offset, long stored, int size) throws IOException {
        if (offset < 0 || stored < 0 || offset > in.length()) {
            throw new IOException("a block outside the file");
        }
        byte[] coded = new byte[(int) Math.min(stored, in.length() - offset)];
        in.seek(offset);
        in.readFully(coded);
        if (tags.number(FILL_ORDER, 1) == 2) {
            for (int i = 0; i < coded.length; i++) {
                coded[i] = (byte) (Integer.reverse(coded[i]) >>> 24);
            }
        }
        byte[] data = new byte[size];
        switch (tags.number(COMPRESSION, 1)) {
            case 5 -> Lzw.decode(coded, data);
            case 8, 32946 -> inflate(coded, data);
            case 32773 -> unpackBits(coded, data);
            default -> System.arraycopy(coded, 0, data, 0, Math.min(coded.length, size));
        }
        return data;
    }

    private static void inflate(byte[] coded, byte[] data) throws IOException {
        try (InflaterInputStream stream =
                new InflaterInputStream(new ByteArrayInputStream(coded), new Inflater(), 1 << 14)) {
            stream.readNBytes(data, 0, data.length);
        }
    }

    private static void unpackBits(byte[] coded, byte[] data) {
        int o = 0;
        for (int i = 0; i < coded.length && o < data.length; ) {
            int n = coded[i++];
            if (n >= 0) {
                int run = Math.min(n + 1, Math.min(coded.length - i, data.length - o));
                System.arraycopy(coded, i, data, o, run);
                i += n + 1;
                o += run;
            } else if (n != -128 && i < coded.length) {
                byte value = coded[i++];
                for (int k = 0; k < 1 - n && o < data.length; k++) {
                    data[o++] = value;
                }
            }
        }
    }

    private void undoPredictor(byte[] data, int rowBytes, int rows) {
        int step = planar ? 1 : samples;
        for (int y = 0; y < rows; y++) {
            int row = y * rowBytes;
            if (bits == 8) {
                for (int i = step; i < rowBytes; i++) {
                    data[row + i] += data[row + i - step];
                }
            } else if (bits == 16) {
                for (int i = step; i < rowBytes / 2; i++) {
                    int value = word(data, row + 2 * i) + word(data, row + 2 * (i - step));
                    data[row + 2 * i] = (byte) (littleEndian ? value : value >> 8);
                    data[row + 2 * i + 1] = (byte) (littleEndian ? value >> 8 : value);
                }
            }
        }
    }

    private int word(byte[] data, int at) {
        int a = data[at] & 255;
        int b = data[at + 1] & 255;
        return littleEndian ? b << 8 | a : a << 8 | b;
    }

    private void unpack(byte[] data, int rowBytes, int x0, int y0, int rows, int plane) {
        int n = plane < 0 ? samples : 1;
        int columns = Math.min(blockWidth, width - x0);
        for (int y = 0; y < Math.min(rows, height - y0); y++) {
            for (int i = 0; i < columns * n; i++) {
                int x = x0 + i / n;
                int at = ((y0 + y) * width + x) * samples + (plane < 0 ? i % n : plane);
                out[at] = value(data, y * rowBytes, i);
            }
        }
    }

    private byte value(byte[] data, int row, int i) {
        if (bits == 8) {
            return data[row + i];
        } else if (bits == 16) {
            return (byte) ((word(data, row + 2 * i) + 128) / 257);
        }
        int value = 0;
        for (int b = 0; b < bits; b++) {
            int bit = i * bits + b;
            value = value << 1 | data[row + (bit >> 3)] >> 7 - (bit & 7) & 1;
        }
        int most = (1 << bits) - 1;
        return (byte) (indices ? value : (value * 255 + most / 2) / most);
    }
}
