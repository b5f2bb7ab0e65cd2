package inkground.plate;

/**
 * The grid on which one step of a pattern is painted: whole pixels to the step, several to a device pixel.
 *
 * @param width pixels across a step
 * @param height pixels down a step
 * @param pixelAcross how many of them a device pixel is wide, to the nearest whole number
 * @param pixelDown how many it is high
 */
record StepGrid(int width, int height, long pixelAcross, long pixelDown) {
    /** Pixels of a fine grid at most: up to four to a device pixel each way, as long as they are no more than these. */
    private static final long FINE = 1 << 20;

    /** Operations in a step at most that are painted on a fine grid; of more, painting would take too long. */
    private static final double FEW = 1000;

    /** A step is no fewer pixels wide: of small ones the grid is finer, so that a device pixel is a whole number of its pixels. */
    private static final int LEAST = 64;

    /** Steps of a smaller part of a device pixel are taken for this large: their mean is the same. */
    private static final double SMALLEST_PX = 1e-4;

    /**
     * The finest grid that is worth it, at least two pixels to a device pixel.
     *
     * @param acrossPx length of a step in device pixels
     * @param downPx of a step in the other direction
     * @param sine of the angle between the two
     * @param operations that are to be painted on it
     * @param mostPixels of the grid
     * @return null where even the coarsest has more pixels
     */
    static StepGrid fine(double acrossPx, double downPx, double sine, double operations, long mostPixels) {
        for (int density = operations > FEW ? 2 : 4; density >= 2; density--) {
            StepGrid grid = of(acrossPx, downPx, sine, density);
            if (grid.pixels() <= (density > 2 ? Math.min(FINE, mostPixels) : mostPixels)) {
                return grid;
            }
        }
        return null;
    }

    /** As {@link #fine}, or as coarse as it has to be; but some thousand pixels it may have in any case. */
    static StepGrid fitting(double acrossPx, double downPx, double sine, double operations, long mostPixels) {
        StepGrid grid = fine(acrossPx, downPx, sine, operations, mostPixels);
        long most = Math.max(LEAST * LEAST, mostPixels);
        for (double density = 1; grid == null || grid.pixels() > most; density /= 2) {
            grid = of(acrossPx, downPx, sine, density);
        }
        return grid;
    }

    private static StepGrid of(double acrossPx, double downPx, double sine, double density) {
        double stretch = 1 / Math.sqrt(Math.max(0.1, Math.abs(sine))); // of slanted steps: an area of one pixel
        double across = Math.max(SMALLEST_PX, acrossPx);
        double down = Math.max(SMALLEST_PX, downPx);
        double perPixelAcross = perPixel(across, density);
        double perPixelDown = perPixel(down, density);
        return new StepGrid(
                side(across * perPixelAcross),
                side(down * perPixelDown),
                Math.max(1, Math.round(perPixelAcross * stretch)),
                Math.max(1, Math.round(perPixelDown * stretch)));
    }

    private static double perPixel(double stepPx, double density) {
        return density < 1 ? density : Math.ceil(Math.max(density, LEAST / stepPx));
    }

    private static int side(double pixels) {
        return (int) Math.max(1, Math.min(1 << 24, Math.rint(pixels)));
    }

    /** @return number of pixels, the repeated row and column counted */
    long pixels() {
        return (width + 1L) * (height + 1L);
    }

    /** @return how much finer than the device it is, as a length */
    double density() {
        return Math.sqrt((double) pixelAcross * pixelDown);
    }
}
