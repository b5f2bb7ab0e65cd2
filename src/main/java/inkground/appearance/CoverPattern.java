package inkground.appearance;

/**
 * The patterns of the bare map. They differ in shape and in lightness, so that they are told apart without seeing colour, and
 * are fixed to device pixels, so that tiles meet.
 */
final class CoverPattern {
    private static final int PERIOD = 12;

    private CoverPattern() {}

    /** @return opaque sRGB of a cover at a device pixel */
    static int argb(Cover cover, int x, int y) {
        int across = Math.floorMod(x, PERIOD);
        int down = Math.floorMod(y, PERIOD);
        return switch (cover) {
            // a light checkerboard: nothing there
            case UNPAINTED -> (across < PERIOD / 2) == (down < PERIOD / 2) ? 0xfff4f4f0 : 0xffdededa;
            // rising lines: taken away
            case KNOCKED_OUT -> Math.floorMod(x + y, PERIOD) < 3 ? 0xff8a3d00 : 0xffffd9a8;
            // dots: painted but empty
            case WHITE_PAINT -> square(across - 6) + square(down - 6) <= 6 ? 0xff6a1b6e : 0xfff3d9f5;
            // level lines
            case WHITE_INK -> down < 2 ? 0xff0b5c7a : 0xffbfe6f2;
            case INKED -> 0xff3c4248;
        };
    }

    private static int square(int v) {
        return v * v;
    }
}
