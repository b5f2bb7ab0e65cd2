package inkground.artwork.pdf;

import inkground.artwork.ColourSpace;
import java.util.Arrays;

/** Turns raw samples of 1 to 16 bits into bytes of the image's own colour space: ISO 32000-2 §8.9.5.2. */
final class Samples {
    private final ColourSpace space;
    private final int bits;
    private final double[] decode;
    private final int[] colourKey;

    /**
     * @param space of the samples
     * @param bits per raw component, 1 to 16
     * @param decode lowest and highest value per component; null for the default
     * @param colourKey lowest and highest raw value per component of what is masked out; null for none
     */
    Samples(ColourSpace space, int bits, double[] decode, int[] colourKey) {
        this.space = space;
        this.bits = bits;
        this.decode = decode != null && decode.length >= 2 * space.components() ? decode : defaultDecode(space, bits);
        this.colourKey = colourKey != null && colourKey.length >= 2 * space.components() ? colourKey : null;
    }

    private static double[] defaultDecode(ColourSpace space, int bits) {
        double[] out = new double[2 * space.components()];
        for (int i = 0; i < space.components(); i++) {
            out[2 * i] = space.min(i);
            out[2 * i + 1] = space instanceof ColourSpace.Indexed ? (1 << bits) - 1 : space.max(i);
        }
        return out;
    }

    /**
     * Unpacks rows that start on byte boundaries; missing data reads as 0.
     *
     * @param alpha receives 0 for samples inside the colour key, 255 for others; null when there is no key
     */
    byte[] unpack(byte[] data, int width, int height, byte[] alpha) {
        int n = space.components();
        byte[][] tables = tables();
        if (alpha == null && bits == 8 && unchanged(tables)) {
            int length = width * height * n;
            return data.length == length ? data : Arrays.copyOf(data, length);
        }
        byte[] out = new byte[width * height * n];
        long rowBytes = ((long) width * n * bits + 7) / 8;
        int[] raw = new int[n];
        for (int y = 0; y < height; y++) {
            long bit = y * rowBytes * 8;
            for (int x = 0; x < width; x++) {
                int at = (y * width + x) * n;
                for (int i = 0; i < n; i++, bit += bits) {
                    raw[i] = read(data, bit);
                    out[at + i] = tables == null ? scale(raw[i], i) : tables[i][raw[i]];
                }
                if (alpha != null) {
                    alpha[y * width + x] = (byte) (keyed(raw) ? 0 : 255);
                }
            }
        }
        return out;
    }

    /** Whether every byte stays what it is. */
    private static boolean unchanged(byte[][] tables) {
        for (byte[] table : tables) {
            for (int v = 0; v < table.length; v++) {
                if (table[v] != (byte) v) {
                    return false;
                }
            }
        }
        return true;
    }

    boolean hasColourKey() {
        return colourKey != null;
    }

    private byte[][] tables() {
        if (bits > 8) {
            return null;
        }
        byte[][] out = new byte[space.components()][1 << bits];
        for (int i = 0; i < out.length; i++) {
            for (int v = 0; v < out[i].length; v++) {
                out[i][v] = scale(v, i);
            }
        }
        return out;
    }

    private byte scale(int raw, int i) {
        double value = decode[2 * i] + raw * (decode[2 * i + 1] - decode[2 * i]) / ((1 << bits) - 1);
        if (space instanceof ColourSpace.Indexed indexed) {
            return (byte) Math.max(0, Math.min(indexed.highest(), Math.round(value)));
        }
        double unit = (value - space.min(i)) / (space.max(i) - space.min(i));
        return (byte) Math.round(255 * Math.max(0, Math.min(1, unit)));
    }

    private boolean keyed(int[] raw) {
        for (int i = 0; i < raw.length; i++) {
            if (raw[i] < colourKey[2 * i] || raw[i] > colourKey[2 * i + 1]) {
                return false;
            }
        }
        return true;
    }

    private int read(byte[] data, long bit) {
        int at = (int) (bit >> 3);
        if (at >= data.length) {
            return 0;
        }
        if (bits == 8) {
            return data[at] & 255;
        }
        if (bits == 16) {
            return (data[at] & 255) << 8 | (at + 1 < data.length ? data[at + 1] & 255 : 0);
        }
        return (data[at] & 255) >> 8 - bits - (int) (bit & 7) & (1 << bits) - 1; // 1, 2 and 4 never cross a byte
    }
}
