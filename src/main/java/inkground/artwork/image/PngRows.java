package inkground.artwork.image;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;

/** Undoes the filters (ISO/IEC 15948 §9) and the interlacing (§8.2) of PNG rows. A file that ends early is an error. */
final class PngRows {
    private static final int[][] PASSES = {
        {0, 0, 8, 8}, {4, 0, 8, 8}, {0, 4, 4, 8}, {2, 0, 4, 4}, {0, 2, 2, 4}, {1, 0, 2, 2}, {0, 1, 1, 2}
    };

    private final int width;
    private final int height;
    private final int bits;
    private final int channels;
    private final int bytesPerValue;
    private final byte[] samples;

    PngRows(int width, int height, int bits, int channels) {
        this.width = width;
        this.height = height;
        this.bits = bits;
        this.channels = channels;
        this.bytesPerValue = bits == 16 ? 2 : 1;
        this.samples = new byte[Math.multiplyExact(Math.multiplyExact(width * channels, bytesPerValue), height)];
    }

    /** @return one byte per value, two for 16 bits; the values as stored */
    byte[] samples() {
        return samples;
    }

    void read(InputStream in) throws IOException {
        pass(in, 0, 0, 1, 1);
    }

    void readInterlaced(InputStream in) throws IOException {
        for (int[] p : PASSES) {
            pass(in, p[0], p[1], p[2], p[3]);
        }
    }

    private void pass(InputStream in, int x0, int y0, int dx, int dy) throws IOException {
        int columns = (width - x0 + dx - 1) / dx;
        int rows = (height - y0 + dy - 1) / dy;
        if (columns <= 0 || rows <= 0) {
            return;
        }
        int rowBytes = (int) (((long) columns * channels * bits + 7) / 8);
        int step = Math.max(1, channels * bits / 8);
        byte[] row = new byte[rowBytes];
        byte[] above = new byte[rowBytes];
        for (int y = 0; y < rows; y++) {
            int filter = in.read();
            if (filter < 0 || in.readNBytes(row, 0, rowBytes) < rowBytes) {
                throw new EOFException("the image data end early");
            }
            unfilter(filter, row, above, step);
            unpack(row, columns, x0, y0 + y * dy, dx);
            byte[] swap = above;
            above = row;
            row = swap;
        }
    }

    private static void unfilter(int filter, byte[] row, byte[] above, int step) throws IOException {
        for (int i = 0; i < row.length; i++) {
            int left = i < step ? 0 : row[i - step] & 255;
            int up = above[i] & 255;
            int corner = i < step ? 0 : above[i - step] & 255;
            int predicted =
                    switch (filter) {
                        case 0 -> 0;
                        case 1 -> left;
                        case 2 -> up;
                        case 3 -> (left + up) / 2;
                        case 4 -> paeth(left, up, corner);
                        default -> throw new IOException("row filter " + filter);
                    };
            row[i] += (byte) predicted;
        }
    }

    private static int paeth(int a, int b, int c) {
        int p = a + b - c;
        int pa = Math.abs(p - a);
        int pb = Math.abs(p - b);
        int pc = Math.abs(p - c);
        return pa <= pb && pa <= pc ? a : pb <= pc ? b : c;
    }

    private void unpack(byte[] row, int columns, int x0, int y, int dx) {
        int n = channels * bytesPerValue;
        for (int x = 0; x < columns; x++) {
            int at = (y * width + x0 + x * dx) * n;
            if (bits >= 8) {
                System.arraycopy(row, x * n, samples, at, n);
            } else { // one channel
                int bit = x * bits;
                samples[at] = (byte) (row[bit >> 3] >> 8 - bits - (bit & 7) & (1 << bits) - 1);
            }
        }
    }
}
