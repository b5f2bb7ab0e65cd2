package inkground.findings;

import inkground.base.Cancel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

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
    /** Step of the raster, in 255ths, below which nothing is looked at: an edge pixel of a line has half a line's. */
    static final int LEAST_RISE = Chords.LEAST_STEP / 2;

    /** Pixels that are broad where two lines cross, at most, in squares of the minimum. */
    private static final double CROSSING = 0.8;

    /** A line that is nowhere narrower than the minimum less this is none. */
    private static final double TOLERANCE_PX = 0.1;

    private static final int FAINTEST = 2; // step of tint where a line fades: the least that is no rounding
    private static final double SLIM = 0.6; // of its length: what is narrower is a line
    private static final double DOT = 1.06; // between a square, 1, and a disc, 2 / √π
    private static final double PIXEL = 1 / 12.0; // spread of coverage within a pixel

    private final byte[] raster;
    private final byte[] full;
    private final int width;
    private final int height;
    private final double minPx;
    private final byte[] ground;
    private final Chords chords;
    private final Tiles varying;
    private final float[] widths;
    private final Tiles marked;
    private final Mouths mouths;

    /**
     * @param raster 0 to 255, row by row
     * @param full what a pixel would be if the line covered it all: the line's own tint; corrected where lines fade
     * @param varying where the raster has a step of {@link #LEAST_RISE} within {@link #marginPx}: elsewhere nothing is thin
     * @param minPx width below which a line is thin
     */
    ThinScan(byte[] raster, byte[] full, Tiles varying, int width, int height, double minPx, Cancel cancel) {
        this.raster = raster;
        this.full = full;
        this.varying = varying;
        this.width = width;
        this.height = height;
        this.minPx = minPx;
        int reach = reach(minPx);
        byte[] smallest = Squares.smallest(raster, width, height, reach, varying.grown(reach));
        this.ground = Squares.largest(smallest, width, height, reach, varying);
        this.chords = new Chords(raster, ground, full, width, height, minPx);
        this.widths = new float[raster.length];
        measure(cancel);
        settleEnds();
        settleWhole();
        this.marked = new Tiles(width, height);
        varying.each((y, x0, x1) -> {
            for (int x = x0; x < x1; x++) {
                if (widths[y * width + x] > 0) {
                    marked.addAround(x, y);
                }
            }
        });
        this.mouths = new Mouths(raster, widths, marked, chords, width, height, minPx);
        mouths.addTo(marked);
    }

    private static int reach(double minPx) {
        return (int) Math.ceil(minPx / 2) + 1;
    }

    /** @return pixels around a region that decide about it */
    static int marginPx(double minPx) {
        return 2 * reach(minPx) + (int) Math.ceil(minPx) + 5;
    }

    private void measure(Cancel cancel) {
        varying.parallel((y, x0, x1) -> {
            cancel.check();
            for (int x = x0; x < x1; x++) {
                int at = y * width + x;
                if (step(at) >= LEAST_RISE) {
                    widths[at] = (float) chords.measured(x, y);
                }
            }
        });
    }

    /** Receives a pixel of which a thin line has a part. */
    @FunctionalInterface
    interface Sink {
        /**
         * @param thin whether the pixel itself is in the line; else it is of its rim, or where it opens
         * @param widthPx width of the line there; 0 unless thin
         * @param share what the line has of the pixel, up to 1; may be a little below 0, which makes up for others that are too large
         */
        void pixel(int x, int y, boolean thin, float widthPx, double share);
    }

    /** Hands over the pixels of all thin lines, row by row. */
    void each(Sink sink) {
        marked.each((y, x0, x1) -> {
            for (int x = x0; x < x1; x++) {
                double share = share(x, y);
                boolean thin = widths[y * width + x] > 0;
                if (thin || share != 0) {
                    sink.pixel(x, y, thin, thin ? widthAt(x, y) : 0, share);
                }
            }
        });
    }

    /**
     * Pixels that are narrow but lie between no facing edges, here negative, are a corner if they adjoin what is broad, else the end of
     * a line, where lines meet, or a dot. Those of lines are as wide as the line, those of a dot as wide as it is at most.
     */
    private void settleEnds() {
        varying.each((y, x0, x1) -> {
            for (int at = y * width + x0; at < y * width + x1; at++) {
                if (widths[at] < 0) {
                    settle(at);
                }
            }
        });
    }

    private void settle(int start) {
        int mostBroad = (int) (CROSSING * minPx * minPx);
        List<Integer> group = new ArrayList<>(List.of(start));
        Set<Integer> joined = new HashSet<>(group);
        int broad = 0;
        float line = 0;
        float own = 0;
        for (int next = 0; next < group.size(); next++) {
            int at = group.get(next);
            own = Math.max(own, -widths[at]);
            for (int near : around(at)) {
                if (widths[near] > 0) {
                    line = Math.max(line, widthAt(near % width, near / width));
                } else if (widths[near] < 0) {
                    if (joined.add(near)) {
                        group.add(near);
                    }
                } else if (isBroad(near, at) && broad <= mostBroad && joined.add(near)) {
                    group.add(near);
                    broad++;
                }
            }
        }
        boolean corner = broad > (line > 0 ? mostBroad : 0);
        for (int at : group) {
            widths[at] = corner ? 0 : line > 0 ? line : own;
        }
    }

    /** Goes on where a line fades, and settles what of each connected one is known only once all of it is. */
    private void settleWhole() {
        boolean[] seen = new boolean[widths.length];
        varying.each((y, x0, x1) -> {
            for (int at = y * width + x0; at < y * width + x1; at++) {
                if (widths[at] > 0 && !seen[at]) {
                    settle(whole(at, seen));
                }
            }
        });
    }

    private Whole whole(int start, boolean[] seen) {
        Whole whole = new Whole();
        seen[start] = true;
        whole.add(start);
        for (int next = 0; next < whole.size; next++) {
            int at = whole.pixels[next];
            for (int near : around(at)) {
                if (widths[near] == 0 && fades(near, at)) {
                    widths[near] = widthAt(at % width, at / width);
                    full[near] = full[at]; // what it is there cannot be told from so little
                }
                if (widths[near] > 0 && !seen[near]) {
                    seen[near] = true;
                    whole.add(near);
                }
            }
        }
        return whole;
    }

    /** The pixel and those of its eight neighbours that there are. */
    private int[] around(int at) {
        int[] out = new int[9];
        int count = 0;
        for (int j = Math.max(0, at / width - 1); j <= Math.min(height - 1, at / width + 1); j++) {
            for (int i = Math.max(0, at % width - 1); i <= Math.min(width - 1, at % width + 1); i++) {
                out[count++] = j * width + i;
            }
        }
        return Arrays.copyOf(out, count);
    }

    /** Whether a pixel is too faint to be measured, but goes on from one of a line. */
    private boolean fades(int at, int from) {
        int step = step(at);
        return step >= FAINTEST && step <= step(from) && step(from) < Chords.LEAST_STEP && chords.faint(at);
    }

    private int step(int at) {
        return (raster[at] & 255) - (ground[at] & 255);
    }

    private void settle(Whole whole) {
        float least = Float.MAX_VALUE;
        for (int i = 0; i < whole.size; i++) {
            int at = whole.pixels[i];
            least = Math.min(least, widthAt(at % width, at / width));
        }
        double dot = standsAlone(whole) ? dot(whole) : 0;
        boolean wide = Math.max(least, dot) >= minPx - TOLERANCE_PX;
        for (int i = 0; i < whole.size && (wide || dot > 0); i++) {
            widths[whole.pixels[i]] = wide ? 0 : (float) dot;
        }
    }

    /** Whether it is no longer than a dot may be, and part of nothing broad. */
    private boolean standsAlone(Whole whole) {
        int most = (int) Math.ceil(minPx) + 2;
        int first = whole.pixels[0];
        for (int k = 0; k < whole.size; k++) {
            int at = whole.pixels[k];
            if (Math.abs(at % width - first % width) > most || at / width - first / width > most) {
                return false;
            }
            for (int near : around(at)) {
                if (isBroad(near, at)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Whether a pixel beside a thin one is inside but not thin. */
    private boolean isBroad(int at, int beside) {
        return widths[at] == 0 && (raster[at] & 255) >= Math.max(chords.edge(beside), chords.edge(at));
    }

    /**
     * The width of a dot, since less of its pixels is covered than of a line's: from its area and from how much longer it is than
     * wide. That is 6 % at most from the true one, whether it is a rectangle or round.
     *
     * @return 0 for lines
     */
    private double dot(Whole whole) {
        Set<Integer> seen = new HashSet<>();
        double area = 0;
        double[] m = new double[5]; // x, y, xx, yy, xy
        for (int k = 0; k < whole.size; k++) {
            int at = whole.pixels[k];
            for (int near : around(at)) {
                double share = seen.add(near) ? covered(near, at) : 0;
                double i = near % width;
                double j = near / width;
                double[] terms = {i, j, i * i, j * j, i * j};
                area += share;
                for (int t = 0; t < m.length; t++) {
                    m[t] += share * terms[t];
                }
            }
        }
        double xx = m[2] / area - m[0] / area * (m[0] / area) - PIXEL;
        double yy = m[3] / area - m[1] / area * (m[1] / area) - PIXEL;
        double xy = m[4] / area - m[0] / area * (m[1] / area);
        double apart = Math.hypot((xx - yy) / 2, xy);
        double slimness = Math.sqrt(Math.max(0, (xx + yy) / 2 - apart) / Math.max(PIXEL, (xx + yy) / 2 + apart));
        return slimness < SLIM ? 0 : DOT * Math.sqrt(area * slimness);
    }

    /** Pixels that belong together. */
    private static final class Whole {
        private int[] pixels = new int[16];
        private int size;

        void add(int at) {
            pixels = size == pixels.length ? Arrays.copyOf(pixels, 2 * size) : pixels;
            pixels[size++] = at;
        }
    }

    /**
     * @return the share of a pixel that belongs to a thin line: of a thin pixel what the line covers, and the same for the rim of
     *     one; 0 to 1
     */
    private double share(int x, int y) {
        int at = y * width + x;
        if (widths[at] > 0) {
            return covered(at, at);
        }
        Double opening = mouths.share(at);
        if (opening != null) {
            return opening;
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
    private float widthAt(int x, int y) {
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
}
