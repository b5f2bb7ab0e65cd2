package inkground.appearance;

/**
 * How one entry of a map is drawn over a proof. Patterns differ in shape and in lightness, so that they are told apart without
 * seeing colour; hatches have a dark and a light line, so that they are seen on any ground. They are fixed to device pixels, so
 * that tiles meet.
 */
@FunctionalInterface
public interface MapPattern {
    /**
     * @param under the proof's pixel, opaque sRGB
     * @param xPx device pixel of the page
     * @param yPx device pixel of the page
     * @return opaque sRGB
     */
    int argb(int under, int xPx, int yPx);

    /** The proof as it is. */
    MapPattern CLEAR = (under, x, y) -> under;

    /** The proof drawn back: half of its contrast, around a middle grey. */
    MapPattern DIMMED = (under, x, y) -> dimmed(under);

    /** Lines that rise to the right. */
    MapPattern RISING = (under, x, y) -> hatch(under, x + y);

    /** Lines that fall to the right. */
    MapPattern FALLING = (under, x, y) -> hatch(under, x - y);

    /** Upright lines. */
    MapPattern UPRIGHT = (under, x, y) -> hatch(under, x);

    /** Dots, dark with a light rim. */
    MapPattern DOTS = (under, x, y) -> {
        int dx = Math.floorMod(x, 8) - 4;
        int dy = Math.floorMod(y, 8) - 4;
        int far = dx * dx + dy * dy;
        return far <= 2 ? 0xff161616 : far <= 6 ? 0xfff4f4f4 : dimmed(under);
    };

    /** Solid, for what is too small to be hatched: dark and light in squares of two pixels. */
    MapPattern CHEQUERED =
            (under, x, y) -> (Math.floorMod(x, 4) < 2) == (Math.floorMod(y, 4) < 2) ? 0xff161616 : 0xfff4f4f4;

    private static int hatch(int under, int along) {
        int phase = Math.floorMod(along, 8);
        return phase < 2 ? 0xff161616 : phase < 4 ? 0xfff4f4f4 : dimmed(under);
    }

    private static int dimmed(int argb) {
        // the mean with 0x8c8c8c, without a carry from one component to the next
        return 0xff000000 | ((argb & 0xfefefe) >> 1) + 0x464646;
    }

    /** @return a square sample for a legend, over a light grey; row by row, opaque sRGB */
    default int[] sample(int edgePx) {
        int[] argb = new int[edgePx * edgePx];
        for (int i = 0; i < argb.length; i++) {
            argb[i] = argb(0xffd8d8d8, i % edgePx, i / edgePx);
        }
        return argb;
    }
}
