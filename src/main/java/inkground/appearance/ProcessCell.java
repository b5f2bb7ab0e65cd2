package inkground.appearance;

import inkground.plate.InkPlanes;
import java.util.Arrays;
import java.util.function.IntPredicate;

/** The four process tints of a cell in which nothing else prints, such as one of a photograph. Used by one thread. */
final class ProcessCell {
    private static final int PROCESS = 4;
    /** With one ink changing there are few vectors, and looking each up once is as fast. */
    private static final int FEWEST_CHANGING = 2;

    private final InkPlanes planes;
    private final byte[][] tints = new byte[PROCESS][];
    private final byte[][] even = new byte[PROCESS][InkPlanes.CELL_W * InkPlanes.CELL_H];

    /** @param planes cyan, magenta, yellow and black first */
    ProcessCell(InkPlanes planes) {
        this.planes = planes;
    }

    /**
     * @param matters whether an ink is shown; one that is not counts as not printed
     * @return whether the cell is of process inks alone, of changing tints, so that looking pixels up one by one pays; then
     *     {@link #tints} are its tints
     */
    boolean gather(int column, int row, IntPredicate matters) {
        if (changing(planes, column, row, matters) < FEWEST_CHANGING) {
            return false;
        }
        for (int i = 0; i < PROCESS; i++) {
            tints[i] = matters.test(i) ? planes.dense(i, column, row) : null;
            if (tints[i] == null) {
                Arrays.fill(even[i], (byte) (matters.test(i) ? planes.uniform(i, column, row) : 0));
                tints[i] = even[i];
            }
        }
        return true;
    }

    /** @return whether {@link #gather} takes any cell of a region */
    static boolean any(InkPlanes planes, IntPredicate matters) {
        for (int row = 0; row < planes.cellsDown(); row++) {
            for (int column = 0; column < planes.cellsAcross(); column++) {
                if (changing(planes, column, row, matters) >= FEWEST_CHANGING) {
                    return true;
                }
            }
        }
        return false;
    }

    /** @return how many process tints change in a cell; 0 if another ink prints there */
    private static int changing(InkPlanes planes, int column, int row, IntPredicate matters) {
        for (int i = PROCESS; i < planes.inks().size(); i++) {
            if (matters.test(i) && planes.uniform(i, column, row) != 0) {
                return 0;
            }
        }
        int changing = 0;
        for (int i = 0; i < PROCESS; i++) {
            changing += matters.test(i) && planes.dense(i, column, row) != null ? 1 : 0;
        }
        return changing;
    }

    /** @return cyan, magenta, yellow and black of the cell's pixels, 0 to 255; not to be changed */
    byte[][] tints() {
        return tints;
    }
}
