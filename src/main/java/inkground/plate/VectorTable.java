package inkground.plate;

import java.util.Arrays;

/**
 * The distinct vectors met so far, each with an index. Vectors are packed into longs, eight planes each, and found by hashing
 * with open addressing. Work goes cell by cell: {@link #gather}, then {@link #indexOf} for each pixel. Not thread-safe.
 */
public final class VectorTable {
    static final int CELL_PX = InkPlanes.CELL_W * InkPlanes.CELL_H;

    private final int planes;
    private final int words;
    private final long[] cell;
    private long[] found;
    private int[] slots = new int[1 << 10];
    private final int most;
    private int count;

    /**
     * @param planes number of planes of a vector
     * @param most most vectors to hold
     */
    public VectorTable(int planes, int most) {
        this.planes = planes;
        this.most = most;
        this.words = (planes + 7) / 8;
        this.cell = new long[CELL_PX * words];
        this.found = new long[256 * words];
    }

    /** Packs the vectors of a cell; where it has only one, just the first is filled and true is returned. */
    public boolean gather(InkPlanes from, int column, int row) {
        Arrays.fill(cell, 0, words, 0);
        boolean uniform = true;
        for (int plane = 0; plane < planes; plane++) {
            int value = from.uniform(plane, column, row);
            uniform &= value >= 0;
            cell[plane >> 3] |= (long) Math.max(0, value) << 8 * (plane & 7);
        }
        if (uniform) {
            return true;
        }
        for (int p = 1; p < CELL_PX; p++) {
            System.arraycopy(cell, 0, cell, p * words, words);
        }
        for (int plane = 0; plane < planes; plane++) {
            byte[] dense = from.dense(plane, column, row);
            int shift = 8 * (plane & 7);
            for (int p = 0, at = plane >> 3; dense != null && p < CELL_PX; p++, at += words) {
                cell[at] |= (dense[p] & 255L) << shift;
            }
        }
        return false;
    }

    /** @return whether a pixel of the cell has the vector of the one before it, row by row */
    public boolean sameAsBefore(int p) {
        int at = p * words;
        return p > 0 && Arrays.equals(cell, at, at + words, cell, at - words, at);
    }

    /** @return index of the vector of a pixel of the cell, or -1 if there are too many */
    public int indexOf(int p) {
        int at = p * words;
        int slot = slot(cell, at);
        while (slots[slot] != 0) {
            int candidate = (slots[slot] - 1) * words;
            if (Arrays.equals(cell, at, at + words, found, candidate, candidate + words)) {
                return slots[slot] - 1;
            }
            slot = slot + 1 & slots.length - 1;
        }
        if (count == most) {
            return -1;
        }
        if ((count + 1) * words > found.length) {
            found = Arrays.copyOf(found, found.length * 2);
        }
        System.arraycopy(cell, at, found, count * words, words);
        slots[slot] = ++count;
        if (count * 2 > slots.length) {
            grow();
        }
        return count - 1;
    }

    private void grow() {
        slots = new int[slots.length * 2];
        for (int i = 0; i < count; i++) {
            int slot = slot(found, i * words);
            while (slots[slot] != 0) {
                slot = slot + 1 & slots.length - 1;
            }
            slots[slot] = i + 1;
        }
    }

    private int slot(long[] from, int at) {
        long hash = 0;
        for (int w = 0; w < words; w++) {
            hash = (hash ^ from[at + w]) * 0x9E3779B97F4A7C15L;
            hash ^= hash >>> 29;
        }
        return (int) (hash >>> 32) & slots.length - 1;
    }

    /** @return number of vectors */
    public int count() {
        return count;
    }

    /** Writes the values, 0 to 255, of all planes of a vector to {@code out}. */
    public void vector(int index, int[] out) {
        for (int plane = 0; plane < planes; plane++) {
            out[plane] = (int) (found[index * words + (plane >> 3)] >>> 8 * (plane & 7)) & 255;
        }
    }

    /** @return a vector as it is packed, eight planes a long; a copy */
    public long[] packed(int index) {
        return Arrays.copyOfRange(found, index * words, (index + 1) * words);
    }

    /** Forgets all vectors; the cell stays. */
    public void clear() {
        Arrays.fill(slots, 0);
        count = 0;
    }

    /** Gives a number to a vector. */
    @FunctionalInterface
    public interface Numbering {
        /**
         * @param vector values of all planes, 0 to 255; changes after the call
         */
        int number(int[] vector);
    }

    /**
     * Writes for each pixel the number of its vector, which is asked for about once for each distinct one.
     *
     * @param out receives width × height numbers, row by row
     */
    public static void spread(InkPlanes planes, Numbering numbering, int[] out) {
        VectorTable table = new VectorTable(planes.planes(), PlanePalette.MOST_VECTORS);
        int[] vector = new int[planes.planes()];
        int[] numbers = new int[256];
        int done = 0;
        for (int cell = 0; cell < planes.cellsAcross() * planes.cellsDown(); cell++) {
            int column = cell % planes.cellsAcross();
            int row = cell / planes.cellsAcross();
            boolean uniform = table.gather(planes, column, row);
            int x0 = column * InkPlanes.CELL_W;
            int width = Math.min(InkPlanes.CELL_W, planes.width() - x0);
            int height = Math.min(InkPlanes.CELL_H, planes.height() - row * InkPlanes.CELL_H);
            for (int i = 0; i < width * height; i++) {
                int p = uniform ? 0 : i / width * InkPlanes.CELL_W + i % width;
                int to = (row * InkPlanes.CELL_H + i / width) * planes.width() + x0 + i % width;
                if (i % width > 0 && (uniform || table.sameAsBefore(p))) {
                    out[to] = out[to - 1];
                    continue;
                }
                int index = table.indexOf(p);
                if (index < 0) {
                    table.clear();
                    done = 0;
                    index = table.indexOf(p);
                }
                if (index == done) {
                    numbers = done == numbers.length ? Arrays.copyOf(numbers, 2 * done) : numbers;
                    table.vector(index, vector);
                    numbers[done++] = numbering.number(vector);
                }
                out[to] = numbers[index];
            }
        }
    }
}
