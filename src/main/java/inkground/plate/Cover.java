package inkground.plate;

import java.util.Arrays;

/**
 * How much of each pixel of a cell something covers: one value for all, or one per pixel, 0 to {@link Fixed#COVER_ONE}.
 * Arrays are borrowed until a product is taken, then owned and given back by {@link #release}.
 */
final class Cover {
    private final CellPool pool;
    int all = Fixed.COVER_ONE;
    int[] cells;
    private boolean owned;

    Cover(CellPool pool) {
        this.pool = pool;
    }

    boolean nothing() {
        return cells == null && all == 0;
    }

    int at(int i) {
        return cells == null ? all : cells[i];
    }

    Cover copy() {
        Cover copy = new Cover(pool);
        copy.all = all;
        if (cells != null) {
            copy.cells = pool.take();
            System.arraycopy(cells, 0, copy.cells, 0, cells.length);
            copy.owned = true;
        }
        return copy;
    }

    void times(int factor) {
        if (factor == Fixed.COVER_ONE) {
            return;
        }
        if (factor == 0) {
            release();
            all = 0;
            return;
        }
        if (cells == null) {
            all = Fixed.times(all, factor);
            return;
        }
        int[] mine = own();
        for (int i = 0; i < mine.length; i++) {
            mine[i] = Fixed.times(mine[i], factor);
        }
    }

    void times(int[] factors) {
        if (cells == null && all == Fixed.COVER_ONE) {
            cells = factors;
            owned = false;
            return;
        }
        int[] mine = own();
        for (int i = 0; i < mine.length; i++) {
            mine[i] = Fixed.times(mine[i], factors[i]);
        }
    }

    void times(CoverBand band, int col) {
        if (band.state[col] == CoverBand.NONE) {
            release();
            all = 0;
        } else if (band.state[col] == CoverBand.MIXED && !nothing()) {
            times(band.cover[col]);
        }
    }

    /** Multiplies by an array that came from the pool, and keeps or gives back the array. */
    void adopt(int[] array) {
        if (cells == null && all == Fixed.COVER_ONE) {
            cells = array;
            owned = true;
        } else {
            times(array);
            pool.give(array);
        }
    }

    private int[] own() {
        if (!owned) {
            int[] copy = pool.take();
            if (cells == null) {
                Arrays.fill(copy, all);
            } else {
                System.arraycopy(cells, 0, copy, 0, copy.length);
            }
            cells = copy;
            owned = true;
        }
        return cells;
    }

    void release() {
        if (owned) {
            pool.give(cells);
        }
        cells = null;
        owned = false;
    }
}
