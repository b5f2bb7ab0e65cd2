package inkground.artwork.svg;

import inkground.colour.Srgb;

/** Between the 8-bit levels of sRGB and linear light in 16 bits, which keep every level apart and take it back exactly. */
final class Levels {
    /** Full linear light; none is 0. */
    static final int ONE = 65_535;

    private static final char[] LINEAR = new char[256];
    private static final byte[] LEVEL = new byte[ONE + 1];

    static {
        for (int v = 0; v < LINEAR.length; v++) {
            LINEAR[v] = (char) Math.round(ONE * Srgb.decode(v / 255.0));
        }
        for (int v = 0; v <= ONE; v++) {
            LEVEL[v] = (byte) Math.round(255 * Srgb.encode(v / (double) ONE));
        }
    }

    private Levels() {}

    /**
     * @param level 0 to 255
     * @param linear whether light is counted; else the level itself in 16 bits
     * @return 0 to {@link #ONE}
     */
    static int decoded(int level, boolean linear) {
        return linear ? LINEAR[level] : level * 257;
    }

    /**
     * @param value 0 to 1
     * @param linear as in {@link #decoded}
     * @return the nearest level, 0 to 255
     */
    static int encoded(float value, boolean linear) {
        return linear ? LEVEL[Math.round(value * ONE)] & 255 : Math.round(value * 255);
    }
}
