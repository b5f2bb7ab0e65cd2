package inkground.plate;

import static inkground.plate.EdgeList.SUB;
import static inkground.plate.EdgeList.SUB_BITS;
import static inkground.plate.InkPlanes.CELL_H;
import static inkground.plate.InkPlanes.CELL_W;

import inkground.geometry.FillRule;
import java.util.Arrays;

/**
 * Coverage of one band by one path, cell by cell: none, all, or a value per pixel (0 to {@link Fixed#COVER_ONE}).
 *
 * <p>Exact area coverage: every edge adds, to the pixel it passes and to the one right of it, how much more of them and of
 * all pixels to their right lies inside; a running sum along the row is the area. All terms are integers and a pure function
 * of the edge and the pixel, so abutting shapes sum to full coverage and regions agree where they overlap. Where parts
 * of one path overlap inside a pixel, their areas are summed and clipped, unless the path was united before ({@link EdgeOverlaps}).
 */
final class CoverBand {
    static final byte NONE = 0;
    static final byte ALL = 1;
    static final byte MIXED = 2;

    static final int CELL = CELL_W * CELL_H;

    /** Area of a whole pixel in the sums: 2 × 1024 × 1024. */
    private static final int AREA_ONE = 2 * SUB * SUB;

    private static final int AREA_TO_COVER = 6;

    private final CellPool pool;
    private int cols;
    private int widthPx;
    private int x0;
    private int y0;

    /** State of each cell. */
    byte[] state = new byte[0];
    /** Coverage of each mixed cell, null elsewhere. */
    int[][] cover = new int[0][];

    private int[][] sums = new int[0][]; // per cell that an edge touches: area steps, CELL ints; else null
    private final int[] leftSum = new int[CELL_H]; // what edges left of the region add to whole rows
    private int firstTouched;
    private int lastTouched;

    CoverBand(CellPool pool) {
        this.pool = pool;
    }

    /** Fills the band whose top left device pixel is ({@code bandX}, {@code bandY}) with nothing. */
    void clear(int bandX, int bandY, int width) {
        release();
        x0 = bandX;
        y0 = bandY;
        widthPx = width;
        cols = (width + CELL_W - 1) / CELL_W;
        if (state.length < cols) {
            state = new byte[cols];
            cover = new int[cols][];
            sums = new int[cols + 1][];
        }
        Arrays.fill(state, 0, cols, NONE);
        firstTouched = 0;
        lastTouched = -1;
    }

    /** Gives cells back. */
    void release() {
        for (int c = 0; c < cover.length; c++) {
            if (cover[c] != null) {
                pool.give(cover[c]);
                cover[c] = null;
            }
        }
    }

    /** @return first column that is not {@link #NONE}, or 0 */
    int firstCol() {
        return firstTouched;
    }

    /** @return last column that is not {@link #NONE}, or -1 */
    int lastCol() {
        return lastTouched;
    }

    /** Rasterises a path into the band. */
    void fill(EdgeList path, FillRule rule, int bandX, int bandY, int width) {
        clear(bandX, bandY, width);
        if (path.bottom() <= bandY
                || path.top() >= bandY + CELL_H
                || path.left() >= bandX + width
                || path.right() <= bandX) {
            return;
        }
        Arrays.fill(leftSum, 0);
        path.feed(bandY, bandY + CELL_H, this);
        int from = Math.max(0, path.left() - bandX) / CELL_W;
        int to = Math.min(cols - 1, (path.right() - bandX) / CELL_W);
        resolve(rule, from, to);
    }

    /** Adds one edge from (xa, ya) down to (xb, yb), fixed point, device space. */
    void edge(int xa, int ya, int xb, int yb, int direction) {
        int rowFrom = Math.max(y0, ya >> SUB_BITS);
        int rowTo = Math.min(y0 + CELL_H - 1, (yb - 1) >> SUB_BITS);
        if (xa == xb) {
            vertical(xa, ya, yb, direction, rowFrom, rowTo);
            return;
        }
        double slope = (double) (xb - xa) / (yb - ya);
        int x = rowFrom << SUB_BITS <= ya ? xa : at(xa, slope, (rowFrom << SUB_BITS) - ya);
        int y = Math.max(ya, rowFrom << SUB_BITS);
        for (int row = rowFrom; row <= rowTo; row++) {
            int yEnd = Math.min(yb, (row + 1) << SUB_BITS);
            int xEnd = yEnd == yb ? xb : at(xa, slope, yEnd - ya);
            inRow(row - y0, x, y, xEnd, yEnd, direction);
            x = xEnd;
            y = yEnd;
        }
    }

    private static int at(int start, double slope, int distance) {
        return start + (int) Math.rint(slope * distance);
    }

    private void vertical(int x, int ya, int yb, int direction, int rowFrom, int rowTo) {
        int px = (x >> SUB_BITS) - x0;
        int fx = 2 * (x & SUB - 1);
        for (int row = rowFrom; row <= rowTo; row++) {
            int dy = Math.min(yb, (row + 1) << SUB_BITS) - Math.max(ya, row << SUB_BITS);
            add(row - y0, px, direction * dy, fx);
        }
    }

    /** One edge inside one pixel row, cut at pixel columns from left to right. */
    private void inRow(int row, int xa, int ya, int xb, int yb, int direction) {
        int pa = (xa >> SUB_BITS) - x0;
        int pb = (xb >> SUB_BITS) - x0;
        if (pa == pb) {
            add(row, pa, direction * (yb - ya), (xa & SUB - 1) + (xb & SUB - 1));
            return;
        }
        boolean rightwards = xa < xb;
        int xl = rightwards ? xa : xb;
        int xr = rightwards ? xb : xa;
        int pl = Math.min(pa, pb);
        int pr = Math.max(pa, pb);
        int total = yb - ya;
        double slope = (double) total / (xr - xl); // height gained per step to the right
        int done = 0; // height used up so far, measured from the left end
        int fx = xl & SUB - 1;
        if (pl < 0) { // jump over the columns left of the region
            if (pr < 0) {
                leftSum[row] += direction * total * 2 * SUB;
                return;
            }
            int height = (int) Math.rint(slope * ((x0 << SUB_BITS) - xl));
            leftSum[row] += direction * height * 2 * SUB;
            done = height;
            pl = 0;
            fx = 0;
        }
        int stop = Math.min(pr, widthPx);
        for (int p = pl; p < stop; p++) {
            int height = (int) Math.rint(slope * (((p + 1 + x0) << SUB_BITS) - xl));
            add(row, p, direction * (height - done), fx + SUB);
            done = height;
            fx = 0;
        }
        add(row, pr, direction * (total - done), fx + (xr & SUB - 1));
    }

    /** Adds the step of an edge of signed height {@code dy} inside one pixel, its two x fractions summed in {@code fx}. */
    private void add(int row, int px, int dy, int fx) {
        if (dy == 0 || px >= widthPx) {
            return;
        }
        if (px < 0) {
            leftSum[row] += dy * 2 * SUB;
            return;
        }
        int col = px >> 6;
        int within = row * CELL_W + (px & CELL_W - 1);
        int[] cell = touch(col);
        cell[within] += dy * (2 * SUB - fx);
        if ((px & CELL_W - 1) != CELL_W - 1) {
            cell[within + 1] += dy * fx;
        } else {
            touch(col + 1)[row * CELL_W] += dy * fx;
        }
    }

    private int[] touch(int col) {
        int[] cell = sums[col];
        if (cell == null) {
            cell = pool.takeZeroed();
            sums[col] = cell;
        }
        return cell;
    }

    /** Turns the steps into coverage and forgets them. */
    private void resolve(FillRule rule, int from, int to) {
        firstTouched = cols;
        int[] run = leftSum;
        for (int col = 0; col < cols; col++) {
            int[] steps = sums[col];
            if (steps == null) {
                if (col < from || col > to) {
                    continue;
                }
                flat(col, rule, run);
            } else {
                running(col, rule, run, steps);
                sums[col] = null;
            }
            if (state[col] != NONE) {
                firstTouched = Math.min(firstTouched, col);
                lastTouched = col;
            }
        }
        if (sums[cols] != null) {
            pool.give(sums[cols]);
            sums[cols] = null;
        }
        if (lastTouched < 0) {
            firstTouched = 0;
        }
    }

    /** A cell that no edge touches: each row has one value. */
    private void flat(int col, FillRule rule, int[] run) {
        int first = coverOf(run[0], rule);
        boolean same = first == 0 || first == Fixed.COVER_ONE;
        for (int row = 1; same && row < CELL_H; row++) {
            same = coverOf(run[row], rule) == first;
        }
        if (same) {
            state[col] = first == 0 ? NONE : ALL;
            return;
        }
        int[] out = pool.take();
        for (int row = 0; row < CELL_H; row++) {
            Arrays.fill(out, row * CELL_W, (row + 1) * CELL_W, coverOf(run[row], rule));
        }
        cover[col] = out;
        state[col] = MIXED;
    }

    private void running(int col, FillRule rule, int[] run, int[] steps) {
        int all = -1; // bits that are set in every value: stays COVER_ONE when all are covered
        int any = 0;
        for (int row = 0; row < CELL_H; row++) {
            int sum = run[row];
            int at = row * CELL_W;
            for (int i = at; i < at + CELL_W; i++) {
                sum += steps[i];
                int c = coverOf(sum, rule);
                steps[i] = c;
                all &= c;
                any |= c;
            }
            run[row] = sum;
        }
        if (any == 0 || all == Fixed.COVER_ONE) {
            state[col] = any == 0 ? NONE : ALL;
            pool.give(steps);
        } else {
            state[col] = MIXED;
            cover[col] = steps;
        }
    }

    private static int coverOf(int area, FillRule rule) {
        int a = Math.abs(area);
        if (rule == FillRule.NON_ZERO) {
            return Math.min(a, AREA_ONE) >> AREA_TO_COVER;
        }
        int folded = a & 2 * AREA_ONE - 1;
        return (folded > AREA_ONE ? 2 * AREA_ONE - folded : folded) >> AREA_TO_COVER;
    }

    /** Adds what {@code other} covers, up to all: exact for shapes that do not overlap, such as abutting ones. */
    void plus(CoverBand other) {
        for (int col = other.firstTouched; col <= other.lastTouched; col++) {
            if (other.state[col] == NONE || state[col] == ALL) {
                continue;
            }
            if (other.state[col] == ALL) {
                drop(col);
                state[col] = ALL;
            } else if (state[col] == NONE) {
                cover[col] = pool.take();
                System.arraycopy(other.cover[col], 0, cover[col], 0, CELL);
                state[col] = MIXED;
            } else {
                int[] mine = cover[col];
                int[] theirs = other.cover[col];
                for (int i = 0; i < CELL; i++) {
                    mine[i] = Math.min(Fixed.COVER_ONE, mine[i] + theirs[i]);
                }
            }
        }
        if (other.lastTouched >= 0) {
            firstTouched = lastTouched < 0 ? other.firstTouched : Math.min(firstTouched, other.firstTouched);
            lastTouched = Math.max(lastTouched, other.lastTouched);
        }
    }

    /** Narrows this band to what {@code other} covers too: the product of both. */
    void times(CoverBand other) {
        for (int col = 0; col < cols; col++) {
            if (state[col] == NONE || other.state[col] == ALL) {
                continue;
            }
            if (other.state[col] == NONE) {
                drop(col);
            } else if (state[col] == ALL) {
                int[] copy = pool.take();
                System.arraycopy(other.cover[col], 0, copy, 0, CELL);
                cover[col] = copy;
                state[col] = MIXED;
            } else {
                int[] mine = cover[col];
                int[] theirs = other.cover[col];
                for (int i = 0; i < CELL; i++) {
                    mine[i] = Fixed.times(mine[i], theirs[i]);
                }
            }
        }
    }

    private void drop(int col) {
        state[col] = NONE;
        if (cover[col] != null) {
            pool.give(cover[col]);
            cover[col] = null;
        }
    }
}
