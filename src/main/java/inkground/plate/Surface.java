package inkground.plate;

import static inkground.plate.CoverBand.CELL;

import java.util.Arrays;

/**
 * The planes of one band while it is painted, tints premultiplied by alpha: what a plane holds is the tint that lands on
 * the substrate. After the tints come the alpha of everything painted (the mark plane) and the alpha of everything painted
 * with ink (the inked plane); inside groups that need them, the alpha of the group without its backdrop and the shape of
 * the group. A plane that has one value all over a cell stores just that value.
 */
final class Surface {
    final int tints;
    final int planes;
    final int cols;
    /** Whether each element replaces earlier ones instead of covering them: ISO 32000-2 §11.4.6. */
    final boolean knockout;
    /** What the group started from; null for nothing. */
    final Surface initial;
    /** Whether the own and the shape plane are kept. */
    final boolean tracks;

    private final CellPool pool;
    private final int[][] uniform; // [plane][col]
    private final int[][][] dense; // [plane][col] or null

    /** A surface of nothing. */
    Surface(int tints, int cols, CellPool pool) {
        this(tints, cols, pool, false, null, false);
    }

    /**
     * The surface of a group.
     *
     * @param knockout whether each element replaces earlier ones
     * @param initial its backdrop, to be copied by {@link #copyFrom}; null for an isolated group
     * @param tracks whether the own and the shape plane are needed
     */
    Surface(int tints, int cols, CellPool pool, boolean knockout, Surface initial, boolean tracks) {
        this.tints = tints;
        this.planes = tints + 5;
        this.cols = cols;
        this.pool = pool;
        this.knockout = knockout;
        this.initial = initial;
        this.tracks = tracks;
        this.uniform = new int[planes][cols];
        this.dense = new int[planes][cols][];
    }

    /** @return plane of the alpha of everything painted, backdrop included */
    int mark() {
        return tints;
    }

    /** @return plane of the alpha of everything ever painted with ink */
    int inked() {
        return tints + 1;
    }

    /** @return plane of the alpha of paint that carries ink and lies uppermost: what an underbase has to cover */
    int laid() {
        return tints + 2;
    }

    /** @return plane of the alpha of what was painted since the surface was made, backdrop not included */
    int own() {
        return tints + 3;
    }

    /** @return plane of the shape of what was painted since the surface was made: §11.3.7.2 */
    int shape() {
        return tints + 4;
    }

    /** @return the values of a plane in a cell, or null where {@link #uniform} holds */
    int[] dense(int plane, int col) {
        return dense[plane][col];
    }

    int uniform(int plane, int col) {
        return uniform[plane][col];
    }

    /** Gives all cells back and holds zeros. */
    void release() {
        for (int p = 0; p < planes; p++) {
            for (int c = 0; c < cols; c++) {
                set(p, c, 0);
            }
        }
    }

    /** Sets a plane to one value all over a cell. */
    void set(int plane, int col, int value) {
        if (dense[plane][col] != null) {
            pool.give(dense[plane][col]);
            dense[plane][col] = null;
        }
        uniform[plane][col] = value;
    }

    /** Starts from the given columns of another surface: its tints, mark and ink. */
    void copyFrom(Surface other, int firstCol, int lastCol) {
        for (int p = 0; p <= laid(); p++) {
            for (int c = firstCol; c <= lastCol; c++) {
                int[] from = other.dense[p][c];
                if (from == null) {
                    set(p, c, other.uniform[p][c]);
                } else {
                    System.arraycopy(from, 0, own(p, c), 0, CELL);
                }
            }
        }
    }

    /** @return the plane's own array in a cell, made if need be, of undefined content in that case */
    private int[] own(int plane, int col) {
        if (dense[plane][col] == null) {
            dense[plane][col] = pool.take();
        }
        return dense[plane][col];
    }

    /** @return the plane's own array in a cell, filled with its one value if it had one */
    int[] densify(int plane, int col) {
        int[] cell = dense[plane][col];
        if (cell == null) {
            cell = pool.take();
            Arrays.fill(cell, uniform[plane][col]);
            dense[plane][col] = cell;
        }
        return cell;
    }

    /**
     * Moves a plane of a cell towards one value.
     *
     * @param cover per pixel, or null where it is {@code all} everywhere
     */
    void mix(int plane, int col, int value, int[] cover, int all) {
        int[] cell = dense[plane][col];
        if (cell == null && uniform[plane][col] == value) {
            return;
        }
        if (cover == null) {
            if (all == Fixed.COVER_ONE) {
                set(plane, col, value);
            } else if (cell == null) {
                uniform[plane][col] = Fixed.mix(uniform[plane][col], value, all);
            } else {
                for (int i = 0; i < CELL; i++) {
                    cell[i] = Fixed.mix(cell[i], value, all);
                }
            }
            return;
        }
        cell = densify(plane, col);
        for (int i = 0; i < CELL; i++) {
            cell[i] = Fixed.mix(cell[i], value, cover[i]);
        }
    }

    /** Moves a plane of a cell towards a value per pixel. */
    void mix(int plane, int col, int[] values, int[] cover, int all) {
        if (cover == null && all == Fixed.COVER_ONE) {
            System.arraycopy(values, 0, own(plane, col), 0, CELL);
            return;
        }
        int[] cell = densify(plane, col);
        if (cover == null) {
            for (int i = 0; i < CELL; i++) {
                cell[i] = Fixed.mix(cell[i], values[i], all);
            }
        } else {
            for (int i = 0; i < CELL; i++) {
                cell[i] = Fixed.mix(cell[i], values[i], cover[i]);
            }
        }
    }

    /**
     * Lays a cell of an isolated group over this one: every plane is weakened by the group's alpha and gets the group's
     * premultiplied tint.
     *
     * @param cover how much of the group shows, per pixel, or null where it is {@code all} everywhere
     */
    void over(Surface group, int col, int[] cover, int all) {
        int[] alpha = group.dense[group.mark()][col];
        int alphaAll = group.uniform[group.mark()][col];
        if (alpha == null && alphaAll == 0) {
            return;
        }
        for (int p = 0; p <= laid(); p++) {
            int[] tint = group.dense[p][col];
            int tintAll = group.uniform[p][col];
            boolean union = p == inked(); // what was inked once stays so
            int[] veil = union ? tint : alpha;
            int veilAll = union ? tintAll : alphaAll;
            if (dense[p][col] == null && tint == null && veil == null && cover == null) {
                uniform[p][col] = over(uniform[p][col], tintAll, veilAll, all);
                continue;
            }
            int[] cell = densify(p, col);
            for (int i = 0; i < CELL; i++) {
                cell[i] = over(
                        cell[i],
                        tint == null ? tintAll : tint[i],
                        veil == null ? veilAll : veil[i],
                        cover == null ? all : cover[i]);
            }
        }
    }

    private static int over(int under, int tint, int alpha, int cover) {
        // alpha is on the tint scale; under × (1 − alpha·cover) + tint·cover in 64 bits, rounded once
        long one = (long) Fixed.TINT_ONE * Fixed.COVER_ONE;
        long sum = under * (one - (long) alpha * cover) + (long) tint * cover * Fixed.TINT_ONE;
        return (int) ((sum + one / 2) / one);
    }

    /** Moves every plane of a cell towards that of {@code to}: the result of a non-isolated group of normal blending. */
    void mixTo(Surface to, int col, int[] cover, int all) {
        for (int p = 0; p <= laid(); p++) {
            int[] values = to.dense[p][col];
            if (values == null) {
                mix(p, col, to.uniform[p][col], cover, all);
            } else {
                mix(p, col, values, cover, all);
            }
        }
    }

    /** @return the cell of 8-bit planes */
    InkPlanes.Cell toCell(int col) {
        byte[] values = new byte[tints + 3];
        byte[][] bytes = new byte[tints + 3][];
        for (int p = 0; p < tints + 3; p++) {
            int[] cell = dense[p][col];
            if (cell == null) {
                values[p] = (byte) Fixed.toByte(uniform[p][col]);
                continue;
            }
            int first = Fixed.toByte(cell[0]);
            int differ = 0;
            for (int i = 0; i < CELL; i++) { // by itself, so that the compiler makes it a vector loop
                differ |= Fixed.toByte(cell[i]) ^ first;
            }
            if (differ == 0) {
                values[p] = (byte) first;
                continue;
            }
            byte[] out = new byte[CELL];
            for (int i = 0; i < CELL; i++) {
                out[i] = (byte) Fixed.toByte(cell[i]);
            }
            bytes[p] = out;
        }
        return new InkPlanes.Cell(values, bytes);
    }
}
