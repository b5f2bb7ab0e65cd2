package inkground.demo;

/**
 * A computed picture of the river at dawn with the depth and grain of a photograph: rows of waves in perspective that
 * mirror a sky with a low sun. CMYK, one byte an ink, no profile.
 */
final class RiverPicture {
    private static final double HORIZON = 0.36;
    private static final double SUN_X = 0.64;
    private static final double SUN_Y = 0.30;

    private RiverPicture() {}

    /** @return width × height pixels of C, M, Y, K, top row first */
    static byte[] cmyk(int width, int height) {
        byte[] pixels = new byte[4 * width * height];
        for (int row = 0; row < height; row++) {
            for (int column = 0; column < width; column++) {
                double x = (column + .5) / width;
                double y = (row + .5) / height;
                double[] light = y < HORIZON + ridge(x) ? sky(x, y) : water(x, y);
                write(pixels, 4 * (row * width + column), light, grain(column, row));
            }
        }
        return pixels;
    }

    private static double ridge(double x) {
        return -.035 - .03 * Math.sin(5.1 * x + .4) - .016 * Math.sin(13 * x) - .006 * Math.sin(47 * x);
    }

    /** Red, green, blue light, 0 to 1. */
    private static double[] sky(double x, double y) {
        double d = Math.hypot((x - SUN_X) * 1.5, y - SUN_Y);
        double glow = Math.exp(-d * d * 9);
        double disc = 1 / (1 + Math.exp((d - .052) * 260));
        double high = Math.max(0, 1 - y / HORIZON);
        double cloud = .5 + .5 * Math.sin(9 * x + 26 * y + 2.2 * Math.sin(4 * x - 9 * y));
        cloud *= Math.exp(-Math.pow((y - .14) * 9, 2)) * .2;
        return new double[] {
            mix(.96 - .42 * high, 1, glow) + cloud + disc,
            mix(.62 - .12 * high, .78, glow) + .7 * cloud + .8 * disc,
            mix(.50 + .06 * high, .42, glow) + .5 * cloud + .5 * disc
        };
    }

    private static double[] water(double x, double y) {
        double depth = (y - HORIZON) / (1 - HORIZON);
        if (depth < .012) {
            // The far bank and its dark reflection.
            return new double[] {.13, .17, .19};
        }
        double far = 1 / (depth + .045);
        double slope = .55 * Math.sin(far * 5.3 + 3 * Math.sin(x * 5.2 + far * .7))
                + .34 * Math.sin(far * 11.9 - x * 13 + 2 * Math.sin(x * 9 - far * 1.3))
                + .22 * Math.sin(far * 23 + x * 41 + 2.6 * Math.sin(far * 3.1));
        double mirrorY = HORIZON - depth * .42 + slope * .05 * (1 + depth);
        double[] light = sky(x + slope * .03, Math.max(0, mirrorY));
        double path = Math.exp(-Math.pow((x - SUN_X + slope * .05) / (.045 + .11 * depth), 2));
        double glint = Math.pow(Math.max(0, slope), 2) * path * 1.5;
        double dark = .62 - .3 * depth + .16 * slope;
        return new double[] {
            light[0] * dark * .86 + glint, light[1] * dark * .98 + glint * .8, light[2] * dark * 1.12 + glint * .5
        };
    }

    private static double mix(double a, double b, double t) {
        return a + (b - a) * Math.max(0, Math.min(1, t));
    }

    /** Noise of a fixed pattern, -1 to 1, from an integer hash. */
    private static double grain(int x, int y) {
        int h = x * 374761393 + y * 668265263;
        h = (h ^ (h >>> 13)) * 1274126177;
        return ((h ^ (h >>> 16)) & 0xffff) / 32767.5 - 1;
    }

    /** Light to ink by taking most of the common grey out as black; no profile, as in a file made on screen. */
    private static void write(byte[] pixels, int at, double[] light, double grain) {
        double least = 1;
        double[] ink = new double[3];
        for (int i = 0; i < 3; i++) {
            ink[i] = 1 - Math.max(0, Math.min(1, light[i] + grain * .012));
            least = Math.min(least, ink[i]);
        }
        double black = .75 * least * least;
        for (int i = 0; i < 3; i++) {
            pixels[at + i] = (byte) Math.round(255 * Math.max(0, Math.min(1, (ink[i] - black * .8) * .95)));
        }
        pixels[at + 3] = (byte) Math.round(255 * black);
    }
}
