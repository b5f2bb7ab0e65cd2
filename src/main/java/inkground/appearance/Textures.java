package inkground.appearance;

import inkground.substrate.Texture;

/**
 * The surfaces of substrates, as a factor of their light. Each is a function of the place in millimetres and of a seed alone, so
 * that tiles meet and zooms agree; what is finer than a pixel is left out rather than aliased.
 */
final class Textures {
    private Textures() {}

    /**
     * @param texture which surface
     * @param xMm place, page space
     * @param yMm place, page space
     * @param pixelMm size of a pixel; features smaller than two pixels fade
     * @return factor of the light, about 0.8 to 1.15, 1 on average
     */
    static double factor(Texture texture, double xMm, double yMm, double pixelMm) {
        if (texture.strength() == 0) {
            return 1;
        }
        long seed = texture.seed();
        double v =
                switch (texture.kind()) {
                    case COATED -> 0.010 * noise(seed, xMm, yMm, 0.25, 0.25, pixelMm);
                    case UNCOATED ->
                        0.030 * noise(seed, xMm, yMm, 1.1, 1.1, pixelMm)
                                + 0.045 * noise(seed + 1, xMm, yMm, 0.22, 0.14, pixelMm);
                    case RECYCLED ->
                        0.035 * noise(seed, xMm, yMm, 1.2, 1.2, pixelMm)
                                + 0.050 * noise(seed + 1, xMm, yMm, 0.2, 0.2, pixelMm)
                                - specks(seed + 2, xMm, yMm, pixelMm);
                    case KRAFT ->
                        0.060 * noise(seed, xMm, yMm, 3.0, 0.18, pixelMm)
                                + 0.050 * noise(seed + 1, xMm, yMm, 0.5, 0.3, pixelMm);
                    case JERSEY -> 0.09 * knit(xMm, yMm, pixelMm) + 0.03 * noise(seed, xMm, yMm, 0.5, 0.9, pixelMm);
                    case HEATHER ->
                        0.06 * knit(xMm, yMm, pixelMm)
                                + 0.10 * noise(seed, xMm, yMm, 0.45, 2.4, pixelMm)
                                + 0.06 * noise(seed + 1, xMm, yMm, 0.3, 1.0, pixelMm);
                    case WOVEN -> 0.10 * weave(xMm, yMm, pixelMm) + 0.04 * noise(seed, xMm, yMm, 0.5, 3.5, pixelMm);
                    case FLEECE ->
                        0.05 * noise(seed, xMm, yMm, 0.7, 0.9, pixelMm)
                                + 0.05 * noise(seed + 1, xMm, yMm, 0.25, 0.3, pixelMm);
                };
        return 1 + texture.strength() * v;
    }

    /** @return a display colour with its light multiplied, in the display's own coding by the usual exponent */
    static int shade(int argb, double factor) {
        double encoded = Math.sqrt(factor); // near 1 the 1/2.2 power and the square root differ by less than a step
        int r = Math.min(255, (int) ((argb >> 16 & 255) * encoded + 0.5));
        int g = Math.min(255, (int) ((argb >> 8 & 255) * encoded + 0.5));
        int b = Math.min(255, (int) ((argb & 255) * encoded + 0.5));
        return 0xff000000 | r << 16 | g << 8 | b;
    }

    /** How much of a feature of this size a pixel still resolves: all at two pixels and more, none at one. */
    private static double resolved(double sizeMm, double pixelMm) {
        return Math.max(0, Math.min(1, sizeMm / pixelMm - 1));
    }

    /** Columns of V-shaped stitches, 0.75 mm wide and 0.55 mm high; −1 to 1. */
    private static double knit(double xMm, double yMm, double pixelMm) {
        double keep = resolved(0.4, pixelMm);
        if (keep == 0) {
            return 0;
        }
        double column = xMm / 0.75;
        double across = Math.abs(column - Math.floor(column) - 0.5) * 2; // 1 between columns, 0 on the spine
        double stitch = Math.cos(2 * Math.PI * (yMm / 0.55 + 0.45 * across));
        return keep * (0.55 * stitch * (1 - 0.6 * across) + 0.45 * (1 - 2 * across * across));
    }

    /** Plain weave of threads 0.6 mm apart; −1 to 1. */
    private static double weave(double xMm, double yMm, double pixelMm) {
        double keep = resolved(0.6, pixelMm);
        if (keep == 0) {
            return 0;
        }
        double x = Math.PI * xMm / 0.6;
        double y = Math.PI * yMm / 0.6;
        boolean warpOnTop = ((long) Math.floor(xMm / 0.6) + (long) Math.floor(yMm / 0.6) & 1) == 0;
        double ridge = warpOnTop ? Math.abs(Math.sin(x)) : Math.abs(Math.sin(y));
        return keep * (2 * ridge - 1);
    }

    /** Dark specks of about 0.3 mm, thinly strewn; 0 to 0.3. */
    private static double specks(long seed, double xMm, double yMm, double pixelMm) {
        double n = noise(seed, xMm, yMm, 0.35, 0.3, pixelMm);
        return n > 0.78 ? 0.30 * Math.min(1, (n - 0.78) * 12) : 0;
    }

    /** Smooth noise of a grain in millimetres; −1 to 1, 0 on average. */
    private static double noise(long seed, double xMm, double yMm, double grainX, double grainY, double pixelMm) {
        double keep = resolved(Math.max(grainX, grainY), pixelMm);
        if (keep == 0) {
            return 0;
        }
        double x = xMm / grainX;
        double y = yMm / grainY;
        long i = (long) Math.floor(x);
        long j = (long) Math.floor(y);
        double fx = smooth(x - i);
        double fy = smooth(y - j);
        double top = lerp(hash(seed, i, j), hash(seed, i + 1, j), fx);
        double bottom = lerp(hash(seed, i, j + 1), hash(seed, i + 1, j + 1), fx);
        return keep * lerp(top, bottom, fy);
    }

    private static double smooth(double t) {
        return t * t * (3 - 2 * t);
    }

    private static double lerp(double a, double b, double t) {
        return a + t * (b - a);
    }

    /** @return a value from −1 to 1 that looks random but is fixed by its arguments */
    private static double hash(long seed, long i, long j) {
        long h = seed * 0x9E3779B97F4A7C15L + i * 0xC2B2AE3D27D4EB4FL + j * 0x165667B19E3779F9L;
        h = (h ^ h >>> 30) * 0xBF58476D1CE4E5B9L;
        h = (h ^ h >>> 27) * 0x94D049BB133111EBL;
        h ^= h >>> 31;
        return (h >> 11) * 0x1.0p-52;
    }
}
