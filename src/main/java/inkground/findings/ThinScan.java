package inkground.findings;

import inkground.base.Cancel;
import java.util.stream.IntStream;

/**
 * Measures how wide the lines of one raster are, and marks those below a minimum. Gaps are the lines of the inverted raster.
 *
 * <p>A place is looked at only if a square a little larger than the minimum does not fit there (the raster less its opening by
 * that square). Its width is the shortest chord through it, whose ends lie where the raster falls to half: the distance
 * between facing edges. Both edges have to face each other within {@value #WEDGE_DEGREES}°, which a corner's do not and a
 * taper's do, down to its tip. The width is then integrated along the chord, so that part-covered pixels count by their share:
 * for straight edges that is exact, wherever the line lies between the pixels.
 */
final class ThinScan {
    /** Opening angle from which two edges make a corner rather than a taper. */
    static final int WEDGE_DEGREES = 30;
    /** Step of tint, in 255ths, below which a line is tone: a fifth. */
    static final int LEAST_STEP = 51;

    private static final int DIRECTIONS = 16;
    private static final double STEP_PX = 0.5;
    private static final double FINE_PX = 0.125;
    private static final double TOLERANCE_PX = 0.1; // of the measure: a line of just the minimum is none
    private static final float END = -1; // narrow, but without facing edges: the end of a line, or a corner
    private static final int END_PX = 2; // how far the end of a line reaches beyond its last thin pixel
    private static final double FACING = Math.cos(Math.toRadians(WEDGE_DEGREES));
    private static final double ALONG_CHORD = Math.cos(Math.toRadians(25));

    private final byte[] raster;
    private final byte[] full;
    private final int width;
    private final int height;
    private final double minPx;
    private final byte[] ground;
    private final float[] widths;

    /**
     * @param raster 0 to 255, row by row
     * @param full what a pixel would be if the line covered it all: the line's own tint
     * @param minPx width below which a line is thin
     */
    ThinScan(byte[] raster, byte[] full, int width, int height, double minPx) {
        this.raster = raster;
        this.full = full;
        this.width = width;
        this.height = height;
        this.minPx = minPx;
        int reach = reach(minPx);
        this.ground = Squares.largest(Squares.smallest(raster, width, height, reach), width, height, reach);
        this.widths = new float[raster.length];
    }

    private static int reach(double minPx) {
        return (int) Math.ceil(minPx / 2) + 1;
    }

    /** @return pixels around a region that decide about it */
    static int marginPx(double minPx) {
        return 2 * reach(minPx) + (int) Math.ceil(minPx) + 5;
    }

    /** @return width in pixels of the thin lines, 0 or less elsewhere; row by row */
    float[] widths(Cancel cancel) {
        IntStream.range(0, height).parallel().forEach(y -> {
            cancel.check();
            for (int x = 0; x < width; x++) {
                int at = y * width + x;
                if ((raster[at] & 255) - (ground[at] & 255) >= LEAST_STEP / 2) {
                    widths[at] = (float) measured(x, y);
                }
            }
        });
        return widths;
    }

    /**
     * @return the share of a pixel that belongs to a thin line: of a thin pixel what the line covers, and the same for the rim of
     *     one, for its end, and for the rim of that; 0 to 1
     */
    double share(int x, int y) {
        int at = y * width + x;
        if (widths[at] > 0) {
            return covered(at, at);
        }
        double most = 0;
        int far = widths[at] == END ? END_PX : besideEnd(x, y) ? END_PX + 1 : 1;
        for (int j = Math.max(0, y - far); j <= Math.min(height - 1, y + far); j++) {
            for (int i = Math.max(0, x - far); i <= Math.min(width - 1, x + far); i++) {
                int near = j * width + i;
                if (widths[near] > 0) {
                    double share = covered(at, near);
                    most = share < 0.5 || widths[at] == END ? Math.max(most, share) : most; // else a thick neighbour
                }
            }
        }
        return most;
    }

    private boolean besideEnd(int x, int y) {
        for (int j = Math.max(0, y - 1); j <= Math.min(height - 1, y + 1); j++) {
            for (int i = Math.max(0, x - 1); i <= Math.min(width - 1, x + 1); i++) {
                if (widths[j * width + i] == END) {
                    return true;
                }
            }
        }
        return false;
    }

    /**
     * @return width at a thin pixel: the largest of those around it, since that of the last pixels of a line counts only part of
     *     it
     */
    float widthAt(int x, int y) {
        float most = 0;
        for (int j = Math.max(0, y - 1); j <= Math.min(height - 1, y + 1); j++) {
            for (int i = Math.max(0, x - 1); i <= Math.min(width - 1, x + 1); i++) {
                most = Math.max(most, widths[j * width + i]);
            }
        }
        return most;
    }

    private double covered(int at, int like) {
        double low = ground[like] & 255;
        double high = Math.max(low + 1, full[like] & 255);
        return Math.max(0, Math.min(1, ((raster[at] & 255) - low) / (high - low)));
    }

    private double measured(int x, int y) {
        int at = y * width + x;
        double low = ground[at] & 255;
        double peak = peak(x, y);
        double half = (low + peak) / 2;
        if (peak - low < LEAST_STEP || (raster[at] & 255) < half) {
            return 0;
        }
        double shortest = minPx + 1.5;
        double ux = 0;
        double uy = 0;
        double ahead = 0;
        for (int k = 0; k < DIRECTIONS; k++) {
            double cos = COS[k];
            double sin = SIN[k];
            double forth = reachOf(x, y, cos, sin, half, shortest);
            double back = forth >= shortest ? 0 : reachOf(x, y, -cos, -sin, half, shortest - forth);
            if (forth + back < shortest) {
                shortest = forth + back;
                ux = cos;
                uy = sin;
                ahead = forth;
            }
        }
        if (ux == 0 && uy == 0) {
            return 0;
        }
        double behind = shortest - ahead;
        double[] one = outward(x + ahead * ux, y + ahead * uy);
        double[] two = outward(x - behind * ux, y - behind * uy);
        boolean facing = -(one[0] * two[0] + one[1] * two[1]) >= FACING
                && one[0] * ux + one[1] * uy >= ALONG_CHORD
                && -(two[0] * ux + two[1] * uy) >= ALONG_CHORD;
        if (!facing) {
            return END;
        }
        double dx = one[0] - two[0];
        double dy = one[1] - two[1];
        double length = Math.hypot(dx, dy);
        double high = Math.max(peak, full[at] & 255);
        double integral = half(x, y, dx / length, dy / length, low, high, ahead)
                + half(x, y, -dx / length, -dy / length, low, high, behind);
        return integral < minPx - TOLERANCE_PX ? Math.max(integral, 1e-3) : 0;
    }

    private double peak(int x, int y) {
        int peak = 0;
        for (int j = Math.max(0, y - 1); j <= Math.min(height - 1, y + 1); j++) {
            for (int i = Math.max(0, x - 1); i <= Math.min(width - 1, x + 1); i++) {
                peak = Math.max(peak, raster[j * width + i] & 255);
            }
        }
        return peak;
    }

    /** How far from a pixel's centre the raster stays at or above a value, in one direction; at most {@code limit}. */
    private double reachOf(int x, int y, double ux, double uy, double value, double limit) {
        double before = at(x, y);
        for (double t = STEP_PX; t < limit + STEP_PX; t += STEP_PX) {
            double here = at(x + t * ux, y + t * uy);
            if (here < value) {
                return t - STEP_PX * (value - here) / Math.max(1e-9, before - here);
            }
            before = here;
        }
        return limit;
    }

    /** The covered length from a pixel's centre outwards, over the edge and up to where the next thing begins. */
    private double half(int x, int y, double ux, double uy, double low, double high, double edge) {
        double sum = 0;
        double before = clamped(at(x, y), low, high);
        for (double t = FINE_PX; t <= edge + 2.5; t += FINE_PX) {
            double here = clamped(at(x + t * ux, y + t * uy), low, high);
            if (t > edge + STEP_PX && here > before) {
                break;
            }
            sum += (before + here) / 2 * FINE_PX;
            before = here;
        }
        return sum;
    }

    private static double clamped(double value, double low, double high) {
        return Math.max(0, Math.min(1, (value - low) / (high - low)));
    }

    /** The unit vector down the slope: away from the line, at its edge. */
    private double[] outward(double x, double y) {
        double gx = 0;
        double gy = 0;
        for (int j = -1; j <= 1; j++) {
            double weight = j == 0 ? 10 : 3; // Scharr's operator, nearly the same in all directions
            gx += weight * (at(x - 1, y + j) - at(x + 1, y + j));
            gy += weight * (at(x + j, y - 1) - at(x + j, y + 1));
        }
        double length = Math.max(1e-9, Math.hypot(gx, gy));
        return new double[] {gx / length, gy / length};
    }

    /** The raster between the centres of its pixels; beyond the region it goes on as at its rim. */
    private double at(double x, double y) {
        double cx = Math.max(0, Math.min(width - 1.001, x));
        double cy = Math.max(0, Math.min(height - 1.001, y));
        int x0 = (int) cx;
        int y0 = (int) cy;
        double fx = cx - x0;
        double fy = cy - y0;
        int p = y0 * width + x0;
        int right = width > 1 ? 1 : 0;
        int below = height > 1 ? width : 0;
        double top = (raster[p] & 255) * (1 - fx) + (raster[p + right] & 255) * fx;
        double bottom = (raster[p + below] & 255) * (1 - fx) + (raster[p + below + right] & 255) * fx;
        return top * (1 - fy) + bottom * fy;
    }

    private static final double[] COS = new double[DIRECTIONS];
    private static final double[] SIN = new double[DIRECTIONS];

    static {
        for (int k = 0; k < DIRECTIONS; k++) {
            COS[k] = Math.cos(k * Math.PI / DIRECTIONS);
            SIN[k] = Math.sin(k * Math.PI / DIRECTIONS);
        }
    }
}
