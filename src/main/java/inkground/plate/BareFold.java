package inkground.plate;

import java.util.Arrays;

/**
 * Takes the bare plane out of finished cells. While a page is painted, bareness is composited like the tint of one more ink,
 * behind the others: so it hides what lies beneath, is hidden by what comes later, and goes through groups, masks and alpha
 * by the same arithmetic. At the end what is bare is taken away from the mark: nothing is there.
 */
final class BareFold {
    private BareFold() {}

    /**
     * @param cells of inks, then the bare plane and the planes that follow the inks; replaced in place by cells without the
     *     bare plane
     * @param inks number of ink planes
     */
    static void fold(InkPlanes.Cell[] cells, int inks) {
        for (int i = 0; i < cells.length; i++) {
            cells[i] = fold(cells[i], inks);
        }
    }

    private static InkPlanes.Cell fold(InkPlanes.Cell cell, int inks) {
        byte[] uniform = new byte[inks + 3];
        byte[][] dense = new byte[inks + 3][];
        System.arraycopy(cell.uniform(), 0, uniform, 0, inks);
        System.arraycopy(cell.dense(), 0, dense, 0, inks);
        System.arraycopy(cell.uniform(), inks + 2, uniform, inks + 1, 2);
        System.arraycopy(cell.dense(), inks + 2, dense, inks + 1, 2);
        byte[] bare = cell.dense()[inks];
        byte[] mark = cell.dense()[inks + 1];
        int bareAll = cell.uniform()[inks] & 255;
        int markAll = cell.uniform()[inks + 1] & 255;
        boolean flat = bare == null
                && mark == null
                && (bareAll == 0 || Arrays.stream(dense).allMatch(d -> d == null));
        if (flat) {
            uniform[inks] = (byte) (bareAll == 0 ? markAll : mark(markAll, bareAll, cell, inks, 0));
        } else if (bare == null && bareAll == 0) {
            dense[inks] = mark;
        } else {
            byte[] out = new byte[CoverBand.CELL];
            boolean varies = false;
            for (int i = 0; i < out.length; i++) {
                int m = mark == null ? markAll : mark[i] & 255;
                int b = bare == null ? bareAll : bare[i] & 255;
                out[i] = (byte) (b == 0 ? m : mark(m, b, cell, inks, i));
                varies |= out[i] != out[0];
            }
            uniform[inks] = out[0];
            dense[inks] = varies ? out : null;
        }
        return new InkPlanes.Cell(uniform, dense);
    }

    /** What is left of the mark; ink that a bare colour overprints or blends with is still there. */
    private static int mark(int mark, int bare, InkPlanes.Cell cell, int inks, int pixel) {
        int ink = 0;
        for (int p = 0; p < inks; p++) {
            byte[] plane = cell.dense()[p];
            ink = Math.max(ink, (plane == null ? cell.uniform()[p] : plane[pixel]) & 255);
        }
        return Math.max(mark - bare, Math.min(mark, ink));
    }
}
