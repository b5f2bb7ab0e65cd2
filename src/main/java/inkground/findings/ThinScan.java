package inkground.findings;

import inkground.base.Cancel;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
    private static final int MOUTH_PX = 4; // in which a line opens, beyond its last thin pixel
    private static final int MOUTH_BACK_PX = 3;
    private static final double BESIDE_PX = 2; // from an edge to where nothing of its pixels is seen
    private static final double FACING = Math.cos(Math.toRadians(WEDGE_DEGREES));
    private static final double ALONG_CHORD = Math.cos(Math.toRadians(25));

    private final byte[] raster;
    private final byte[] full;
    private final int width;
    private final int height;
    private final double minPx;
    private final byte[] ground;
    private final float[] widths;
    private final Map<Integer, Opening> mouths = new HashMap<>(); // by pixel

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
        settleEnds();
        findMouths();
        return widths;
    }

    /**
     * Pixels that are narrow but lie between no facing edges, here negative, are a corner if they adjoin what is broad, else the end of
     * a line, where lines meet, or a dot. Those of lines are as wide as the line, those of a dot as wide as it is at most.
     */
    private void settleEnds() {
        boolean[] seen = new boolean[widths.length];
        for (int at = 0; at < widths.length; at++) {
            if (widths[at] < 0 && !seen[at]) {
                settle(at, seen);
            }
        }
    }

    private void settle(int start, boolean[] seen) {
        int mostBroad = (int) Math.max(1, minPx * minPx / 2); // more than is broad where two lines cross
        List<Integer> group = new ArrayList<>(List.of(start));
        Set<Integer> broad = new HashSet<>();
        seen[start] = true;
        float line = 0;
        float own = 0;
        for (int next = 0; next < group.size(); next++) {
            int at = group.get(next);
            own = Math.max(own, -widths[at]);
            double half = half(at);
            for (int j = Math.max(0, at / width - 1); j <= Math.min(height - 1, at / width + 1); j++) {
                for (int i = Math.max(0, at % width - 1); i <= Math.min(width - 1, at % width + 1); i++) {
                    int near = j * width + i;
                    if (widths[near] > 0) {
                        line = Math.max(line, widthAt(i, j));
                    } else if (widths[near] < 0 && !seen[near]) {
                        seen[near] = true;
                        group.add(near);
                    } else if (widths[near] == 0
                            && (raster[near] & 255) >= Math.max(half, half(near))
                            && broad.size() <= mostBroad
                            && broad.add(near)) {
                        group.add(near);
                    }
                }
            }
        }
        boolean corner = broad.size() > (line > 0 ? mostBroad : 0);
        for (int at : group) {
            widths[at] = corner ? 0 : line > 0 ? line : own;
        }
    }

    /**
     * What a line has of a pixel where it opens.
     *
     * @param share may be a little below 0, which makes up for others that are too large
     * @param aside pixels from the middle of that line
     */
    private record Opening(double share, double aside) {
        Opening nearer(Opening other) {
            return other.aside < aside ? other : this;
        }
    }

    /** Follows each line from its last thin pixels to where it opens into something broad. */
    private void findMouths() {
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                if (widths[y * width + x] > 0 && goesOn(x, y)) {
                    Chord chord = chord(x, y);
                    if (chord != null && chord.facing) {
                        follow(x, y, chord, 1);
                        follow(x, y, chord, -1);
                    }
                }
            }
        }
    }

    /** Whether a pixel beside a thin one is inside too but not thin. */
    private boolean goesOn(int x, int y) {
        int own = raster[y * width + x] & 255;
        for (int j = Math.max(0, y - 1); j <= Math.min(height - 1, y + 1); j++) {
            for (int i = Math.max(0, x - 1); i <= Math.min(width - 1, x + 1); i++) {
                if (widths[j * width + i] <= 0 && 2 * (raster[j * width + i] & 255) >= own) {
                    return true;
                }
            }
        }
        return false;
    }

    private void follow(int x, int y, Chord last, int way) {
        int nextX = (int) Math.round(x - way * last.uy);
        int nextY = (int) Math.round(y + way * last.ux);
        if (!inside(nextX, nextY)
                || widths[nextY * width + nextX] > 0
                || at(nextX, nextY) < (last.low + last.high) / 2) {
            return;
        }
        Chord line = last; // further back the mouth does not turn its edges aside
        int backX = (int) Math.round(x + MOUTH_BACK_PX * way * last.uy);
        int backY = (int) Math.round(y - MOUTH_BACK_PX * way * last.ux);
        if (inside(backX, backY) && widths[backY * width + backX] > 0) {
            Chord there = chord(backX, backY);
            line = there != null && there.facing ? there : last;
        }
        double sign = Math.signum(line.ux * last.ux + line.uy * last.uy) * way;
        double vx = -sign * line.uy;
        double vy = sign * line.ux;
        boolean one = beside(x, y, line, vx, vy, 2 * MOUTH_PX, 1) > 0.5;
        boolean other = beside(x, y, line, vx, vy, 2 * MOUTH_PX, -1) > 0.5;
        if (!one && !other) {
            return; // it widens by and by
        }
        int reach = MOUTH_PX + (int) Math.ceil(minPx);
        for (int j = Math.max(0, y - reach); j <= Math.min(height - 1, y + reach); j++) {
            for (int i = Math.max(0, x - reach); i <= Math.min(width - 1, x + reach); i++) {
                double along = (i - x) * vx + (j - y) * vy;
                double across = (i - x) * line.ux + (j - y) * line.uy;
                boolean within =
                        along > 0.5 && along <= MOUTH_PX && across <= line.ahead + 1.5 && across >= -line.behind - 1.5;
                if (within && widths[j * width + i] <= 0) {
                    double a = beside(x, y, line, vx, vy, along, 1);
                    double b = beside(x, y, line, vx, vy, along, -1);
                    double broad = one && other ? (a + b) / 2 : one ? a : b;
                    double covered = clamped(raster[j * width + i] & 255, line.low, line.high);
                    boolean flush = across > 0 ? !one : !other; // the edge of the line goes on as that of what is broad
                    double share = flush ? covered * (1 - broad) : covered - broad;
                    mouths.merge(j * width + i, new Opening(share, Math.abs(across)), Opening::nearer);
                }
            }
        }
    }

    /** What is covered beside a line, so many pixels on. */
    private double beside(int x, int y, Chord line, double vx, double vy, double along, int side) {
        double far = side > 0 ? line.ahead + BESIDE_PX : -line.behind - BESIDE_PX;
        return clamped(at(x + along * vx + far * line.ux, y + along * vy + far * line.uy), line.low, line.high);
    }

    private boolean inside(int x, int y) {
        return x >= 0 && y >= 0 && x < width && y < height;
    }

    private double half(int at) {
        return ((ground[at] & 255) + peak(at % width, at / width)) / 2;
    }

    /**
     * @return the share of a pixel that belongs to a thin line: of a thin pixel what the line covers, and the same for the rim of
     *     one; 0 to 1
     */
    double share(int x, int y) {
        int at = y * width + x;
        if (widths[at] > 0) {
            return covered(at, at);
        }
        Opening mouth = mouths.get(at);
        if (mouth != null) {
            return mouth.share;
        }
        double most = 0;
        for (int j = Math.max(0, y - 1); j <= Math.min(height - 1, y + 1); j++) {
            for (int i = Math.max(0, x - 1); i <= Math.min(width - 1, x + 1); i++) {
                int near = j * width + i;
                if (widths[near] > 0) {
                    double share = covered(at, near);
                    most = share < 0.5 ? Math.max(most, share) : most; // else a thick neighbour
                }
            }
        }
        return most;
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
    private record Chord(
            double ux,
            double uy,
            double ahead,
            double behind,
            double low,
            double high,
            boolean facing,
            boolean sameEdge) {}

    private double measured(int x, int y) {
        Chord chord = chord(x, y);
        if (chord == null) {
            return 0;
        }
        double integral = half(x, y, chord.ux, chord.uy, chord.low, chord.high, chord.ahead)
                + half(x, y, -chord.ux, -chord.uy, chord.low, chord.high, chord.behind);
        double width = Math.max(integral, 1e-3);
        return !chord.facing ? -width : integral < minPx - TOLERANCE_PX ? width : 0;
    }

    /** @return null outside of lines, and in those that are far too wide */
    private Chord chord(int x, int y) {
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
            double back = forth >= shortest ? 0 : reachOf(x, y, -cos, -sin, half, shortest - forth);
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
            ahead = reachOf(x, y, out[0], out[1], half, minPx + 1.5);
            double behind = reachOf(x, y, -out[0], -out[1], half, minPx + 1.5);
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
