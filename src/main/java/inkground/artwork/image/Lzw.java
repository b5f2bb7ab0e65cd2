package inkground.artwork.image;

import java.io.IOException;

/** The LZW of TIFF 6.0 section 13: most significant bit first, codes of 9 to 12 bits, one code early. */
final class Lzw {
    private static final int CLEAR = 256;
    private static final int END = 257;
    private static final int MOST = 4096;

    private final byte[] coded;
    private int bit;

    private Lzw(byte[] coded) {
        this.coded = coded;
    }

    /** Fills {@code data}; what the code does not reach stays zero, what is too much is dropped. */
    static void decode(byte[] coded, byte[] data) throws IOException {
        new Lzw(coded).run(data);
    }

    private void run(byte[] data) throws IOException {
        // every string lies in the output already: where it starts there, and how long it is
        int[] start = new int[MOST];
        int[] length = new int[MOST];
        int next = 258;
        int width = 9;
        int lastStart = 0;
        int lastLength = 0;
        int o = 0;
        for (int code = code(width); code != END && o < data.length; code = code(width)) {
            if (code == CLEAR) {
                next = 258;
                width = 9;
                lastLength = 0;
                continue;
            }
            if (lastLength > 0 && next < MOST) {
                start[next] = lastStart; // the last string and one more byte, which follows it in the output
                length[next] = lastLength + 1;
                next++;
            }
            int from = o;
            if (code < CLEAR) {
                data[o++] = (byte) code;
            } else if (code < next) {
                for (int i = 0; i < length[code] && o < data.length; i++) {
                    data[o++] = data[start[code] + i];
                }
            } else {
                throw new IOException("a code before its string");
            }
            lastStart = from;
            lastLength = o - from;
            width = next + 1 >= 2048 ? 12 : next + 1 >= 1024 ? 11 : next + 1 >= 512 ? 10 : 9;
        }
    }

    private int code(int width) {
        if (bit + width > coded.length * 8L) {
            return END;
        }
        int value = 0;
        for (int i = 0; i < width; ) {
            int left = 8 - (bit & 7);
            int take = Math.min(left, width - i);
            value = value << take | (coded[bit >> 3] & 255) >> left - take & (1 << take) - 1;
            bit += take;
            i += take;
        }
        return value;
    }
}
