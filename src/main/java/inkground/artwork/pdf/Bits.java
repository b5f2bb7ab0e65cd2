package inkground.artwork.pdf;

/** Reads numbers of any width from bytes, highest bit first; bits past the end read as 0. */
final class Bits {
    private final byte[] data;
    private long bit;

    Bits(byte[] data) {
        this.data = data;
    }

    /** @param count 0 to 32 */
    long read(int count) {
        long value = 0;
        int left = count;
        while (left > 0) {
            int at = (int) (bit >> 3);
            int free = 8 - (int) (bit & 7);
            int take = Math.min(free, left);
            int part = at < data.length ? (data[at] & 255) >> free - take & (1 << take) - 1 : 0;
            value = value << take | part;
            bit += take;
            left -= take;
        }
        return value;
    }

    /** Whether that many bits are left. */
    boolean has(long count) {
        return bit + count <= data.length * 8L;
    }

    /** Skips to the next whole byte. */
    void align() {
        bit = (bit + 7) / 8 * 8;
    }
}
