package inkground.findings;

/**
 * The shortest ways across the lines of one raster. Their ends lie where the raster falls to half; both edges have to face each other
 * within {@value #WEDGE_DEGREES}°, which a corner's do not and a taper's do, down to its tip. Thread-safe.
 */
final class Chords {
    /** Opening angle from which two edges make a corner rather than a taper. */
    static final int WEDGE_DEGREES = 30;
    /** Step of tint, in 255ths, below which a line is tone: a fifth. */
    static final int LEAST_STEP = 51;

    private static final int DIRECTIONS = 16;
    private static final double STEP_PX = 0.5;
    private static final double FINE_PX = 0.125;

    private static final double FACING = Math.cos(Math.toRadians(WEDGE_DEGREES));
    private static final double ALONG_CHORD = Math.cos(Math.toRadians(25));

    private static final double[] COS = new double[DIRECTIONS];
    private static final double[] SIN = new double[DIRECTIONS];

    static {
        for (int k = 0; k < DIRECTIONS; k++) {
            COS[k] = Math.cos(k * Math.PI / DIRECTIONS);
            SIN[k] = Math.sin(k * Math.PI / DIRECTIONS);
        }
    }

    private final byte[] raster;
    private final byte[] ground;
    private final byte[] full;
    private final int width;
    private final int height;
    private final double minPx;

    /**
     * @param raster 0 to 255, row by row
     * @param ground what it is without its lines
     * @param full what a pixel would be if the line covered it all: the line's own tint
     * @param minPx width below which a line is thin
     */
    Chords(byte[] raster, byte[] ground, byte[] full, int width, int height, double minPx) {
        this.raster = raster;
        this.ground = ground;
        this.full = full;
        this.width = width;
        this.height = height;
        this.minPx = minPx;
    }

    /**
     * The shortest way across a line, through a pixel.
     *
     * @param ux from edge to edge, a unit vector
     * @param uy from edge to edge
     * @param ahead pixels to the edge along it
     * @param behind pixels to the edge against it
     * @param low what the raster is beside the line
     * @param high what it is inside
     * @param facing whether the edges face each other
     * @param sameEdge whether both ends lie on the same side of the line
     */
    record Chord(
            double ux,
            double uy,
            double ahead,
            double behind,
            double low,
            double high,
            boolean facing,
            boolean sameEdge) {}

    /**
     * @return width in pixels at a pixel of a thin line; below 0 if narrow but between no facing edges; 0 where no line is, or one
     *     that is wide enough
     */
    double measured(int x, int y) {
        Chord chord = chord(x, y);
        if (chord == null) {
            return 0;
        }
        double integral = half(x, y, chord.ux, chord.uy, chord.low, chord.high, chord.ahead)
                + half(x, y, -chord.ux, -chord.uy, chord.low, chord.high, chord.behind);
        double width = Math.max(integral, 1e-3);
        return !chord.facing ? -width : integral < minPx ? width : 0;
    }

    /** @return whether all around a pixel is too faint to be a line's own */
    boolean faint(int at) {
        return peak(at % width, at / width) - (ground[at] & 255) < LEAST_STEP;
    }

    /** @return the value at which the edge of a line through a pixel lies */
    double edge(int at) {
        return ((ground[at] & 255) + peak(at % width, at / width)) / 2;
    }

    /** @return null outside of lines, and in those that are far too wide */
    Chord chord(int x, int y) {
        int at = y * width + x;
        double low = ground[at] & 255;
        double peak = peak(x, y);
        double half = (low + peak) / 2;
        if (peak - low < LEAST_STEP || (raster[at] & 255) < half) {
            return null;
        }
        double shortest = minPx + 1.5;
        double ux = 0;
        double uy = 0;
        double ahead = 0;
        for (int k = 0; k < DIRECTIONS; k++) {
            double cos = COS[k];
            double sin = SIN[k];
            double forth = reachOf(x, y, cos, sin, half, shortest);
            double back = forth < shortest ? reachOf(x, y, -cos, -sin, half, shortest - forth) : 0;
            if (forth + back < shortest) {
                shortest = forth + back;
                ux = cos;
                uy = sin;
                ahead = forth;
            }
        }
        if (ux == 0 && uy == 0) {
            return null;
        }
        Chord chord = chord(x, y, ux, uy, ahead, shortest - ahead, low, high(at, peak));
        if (chord.sameEdge) {
            double[] out = outward(x + ahead * ux, y + ahead * uy);
            double most = minPx + 1.5;
            ahead = Math.min(most, reachOf(x, y, out[0], out[1], half, most));
            double behind = Math.min(most, reachOf(x, y, -out[0], -out[1], half, most));
            Chord across = chord(x, y, out[0], out[1], ahead, behind, low, high(at, peak));
            return across.facing ? across : chord;
        }
        return chord;
    }

    private double high(int at, double peak) {
        return Math.max(peak, full[at] & 255);
    }

    private Chord chord(int x, int y, double ux, double uy, double ahead, double behind, double low, double high) {
        double[] one = outward(x + ahead * ux, y + ahead * uy);
        double[] two = outward(x - behind * ux, y - behind * uy);
        double facing = -(one[0] * two[0] + one[1] * two[1]);
        if (facing < 0) {
            return new Chord(ux, uy, ahead, behind, low, high, false, true);
        }
        double dx = one[0] - two[0];
        double dy = one[1] - two[1];
        double length = Math.hypot(dx, dy);
        boolean across = facing >= FACING
                && one[0] * ux + one[1] * uy >= ALONG_CHORD
                && -(two[0] * ux + two[1] * uy) >= ALONG_CHORD;
        return new Chord(dx / length, dy / length, ahead, behind, low, high, across, false);
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

    /** How far from a pixel's centre the raster stays at or above a value, in one direction; infinite if beyond a limit. */
    private double reachOf(int x, int y, double ux, double uy, double value, double limit) {
        double before = at(x, y);
        for (double t = STEP_PX; t < limit + STEP_PX; t += STEP_PX) {
            double here = at(x + t * ux, y + t * uy);
            if (here < value) {
                return t - STEP_PX * (value - here) / Math.max(1e-9, before - here);
            }
            before = here;
        }
        return Double.POSITIVE_INFINITY;
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

    /** @return how far a value is from one to another, 0 to 1 */
    static double clamped(double value, double low, double high) {
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
    double at(double x, double y) {
        double mostX = width - 1.001; // plain comparisons, since every step of every chord comes here
        double mostY = height - 1.001;
        double cx = x < 0 ? 0 : x > mostX ? mostX : x;
        double cy = y < 0 ? 0 : y > mostY ? mostY : y;
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
}
