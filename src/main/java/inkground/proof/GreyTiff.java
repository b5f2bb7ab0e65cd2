package inkground.proof;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Writes an 8-bit grey baseline TIFF (TIFF 6.0), uncompressed, in one strip, row by row from the top: 0 is black. The
 * resolution is tagged. Uncompressed, because the file can then be written while the page is still being painted, with
 * nothing held in memory. Not thread-safe.
 */
public final class GreyTiff implements Closeable {
    private static final int ENTRIES = 12;
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int RATIONAL = 5;

    private final OutputStream out;
    private final long expected;
    private long written;

    /**
     * Opens the file and writes its header.
     *
     * @param widthPx above 0
     * @param heightPx above 0; width × height below 2³² − 1,000
     * @param dpi pixels per inch, above 0
     */
    public GreyTiff(Path file, int widthPx, int heightPx, double dpi) throws IOException {
        expected = (long) widthPx * heightPx;
        if (widthPx < 1 || heightPx < 1 || expected > 0xffffffffL - 1000) {
            throw new IllegalArgumentException(widthPx + " × " + heightPx + " pixels");
        }
        out = Files.newOutputStream(file); // rows come in large pieces: a buffer would only copy them
        out.write(header(widthPx, heightPx, dpi).array());
    }

    private static ByteBuffer header(int width, int height, double dpi) {
        int directory = 8;
        int after = directory + 2 + ENTRIES * 12 + 4;
        int pixels = after + 16;
        ByteBuffer b = ByteBuffer.allocate(pixels).order(ByteOrder.LITTLE_ENDIAN);
        b.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(directory);
        b.putShort((short) ENTRIES);
        entry(b, 256, LONG, width);
        entry(b, 257, LONG, height);
        entry(b, 258, SHORT, 8); // bits per sample
        entry(b, 259, SHORT, 1); // no compression
        entry(b, 262, SHORT, 1); // black is zero
        entry(b, 273, LONG, pixels); // where the strip starts
        entry(b, 277, SHORT, 1); // samples per pixel
        entry(b, 278, LONG, height); // rows per strip
        entry(b, 279, LONG, (int) ((long) width * height)); // bytes in the strip, unsigned
        entry(b, 282, RATIONAL, after);
        entry(b, 283, RATIONAL, after + 8);
        entry(b, 296, SHORT, 2); // pixels per inch
        b.putInt(0);
        int thousandths = (int) Math.round(Math.min(dpi, 1e6) * 1000);
        b.putInt(thousandths).putInt(1000).putInt(thousandths).putInt(1000);
        return b;
    }

    private static void entry(ByteBuffer b, int tag, int type, int value) {
        b.putShort((short) tag).putShort((short) type).putInt(1).putInt(value);
    }

    /** Appends bytes of whole rows. */
    public void rows(byte[] bytes, int offset, int length) throws IOException {
        out.write(bytes, offset, length);
        written += length;
    }

    /**
     * Closes the file.
     *
     * @throws IOException if the disk fails; rows may be missing when writing was given up before the end
     */
    @Override
    public void close() throws IOException {
        out.close();
    }

    /** @return whether all rows are there */
    public boolean complete() {
        return written == expected;
    }
}
