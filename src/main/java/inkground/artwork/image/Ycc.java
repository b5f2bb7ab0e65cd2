package inkground.artwork.image;

/** Turns luminance and chrominance into red, green and blue: ITU-T T.871 §7, which sYCC of IEC 61966-2-1 follows. */
public final class Ycc {
    private static final int SHIFT = 16;
    private static final int HALF = 1 << SHIFT - 1;
    private static final int RED_OF_CR = fixed(1.402);
    private static final int GREEN_OF_CB = fixed(0.114 * 1.772 / 0.587);
    private static final int GREEN_OF_CR = fixed(0.299 * 1.402 / 0.587);
    private static final int BLUE_OF_CB = fixed(1.772);

    private Ycc() {}

    /**
     * Converts in place.
     *
     * @param samples interleaved bytes; the first three of each sample are Y, Cb, Cr and become R, G, B
     * @param step components of a sample, 3 or more
     */
    public static void toRgb(byte[] samples, int step) {
        for (int i = 0; i + 2 < samples.length; i += step) {
            int y = ((samples[i] & 255) << SHIFT) + HALF;
            int cb = (samples[i + 1] & 255) - 128;
            int cr = (samples[i + 2] & 255) - 128;
            samples[i] = clip(y + RED_OF_CR * cr >> SHIFT);
            samples[i + 1] = clip(y - GREEN_OF_CB * cb - GREEN_OF_CR * cr >> SHIFT);
            samples[i + 2] = clip(y + BLUE_OF_CB * cb >> SHIFT);
        }
    }

    /**
     * The same for the inks of YCCK: what comes out as red, green and blue is turned into cyan, magenta and yellow, and the
     * fourth component stays.
     *
     * @param samples interleaved, four bytes a sample
     */
    public static void toCmyk(byte[] samples) {
        toRgb(samples, 4);
        for (int i = 0; i + 3 < samples.length; i += 4) {
            samples[i] = (byte) ~samples[i];
            samples[i + 1] = (byte) ~samples[i + 1];
            samples[i + 2] = (byte) ~samples[i + 2];
        }
    }

    private static int fixed(double factor) {
        return (int) Math.round(factor * (1 << SHIFT));
    }

    private static byte clip(int value) {
        return (byte) Math.max(0, Math.min(255, value));
    }
}
