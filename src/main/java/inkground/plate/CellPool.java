package inkground.plate;

import java.util.ArrayDeque;
import java.util.Arrays;

/** Arrays of one cell, used again and again by one thread. Not thread-safe. */
final class CellPool {
    private final ArrayDeque<int[]> free = new ArrayDeque<>();

    /** @return an array of {@link CoverBand#CELL} ints of any content */
    int[] take() {
        int[] cell = free.poll();
        return cell != null ? cell : new int[CoverBand.CELL];
    }

    /** @return an array of zeros */
    int[] takeZeroed() {
        int[] cell = free.poll();
        if (cell == null) {
            return new int[CoverBand.CELL];
        }
        Arrays.fill(cell, 0);
        return cell;
    }

    /** Takes an array back; the caller forgets it. */
    void give(int[] cell) {
        free.push(cell);
    }
}
