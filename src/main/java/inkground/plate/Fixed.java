package inkground.plate;

/** The two integer scales of the painting engine. */
final class Fixed {
    /** A solid tint. 255 × 256: an 8-bit tint times 256 is exact, and rounding back is one add and one shift. */
    static final int TINT_ONE = 255 * 256;

    /** Full coverage: 2¹⁵, so that (tint difference) × coverage + ½ still fits an {@code int}. */
    static final int COVER_ONE = 1 << 15;

    private static final int HALF = COVER_ONE / 2;

    private Fixed() {}

    /** @return 0 to 1 as a tint; values outside are clipped */
    static int tint(double t) {
        return (int) Math.rint(Math.max(0, Math.min(1, t)) * TINT_ONE);
    }

    /** @return 0 to 1 as a coverage; values outside are clipped */
    static int cover(double c) {
        return (int) Math.rint(Math.max(0, Math.min(1, c)) * COVER_ONE);
    }

    /** @return {@code from} moved to {@code to} by a coverage; exact at 0, at full coverage, and when both are equal */
    static int mix(int from, int to, int cover) {
        return from + ((to - from) * cover + HALF >> 15);
    }

    /** @return product of two coverages, or of a tint and a coverage; exact at 0 and at full coverage */
    static int times(int value, int cover) {
        return value * cover + HALF >> 15;
    }

    /** @return a tint as a cover: rounded, exact at both ends */
    static int coverOfTint(int tint) {
        // 32768 / 65280 = 128 / 255; the factor is rounded up in 32 bits so that 65280 gives exactly 32768
        return (int) ((long) tint * 2155905153L + (1L << 31) >> 32);
    }

    /** @return a tint as 0 to 255 */
    static int toByte(int tint) {
        return tint + 128 >> 8;
    }
}
