package inkground.appearance;

import inkground.base.Cancel;
import inkground.plate.InkPlanes;
import inkground.plate.VectorTable;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * A map whose entry depends on nothing but one pixel's vector. A value is computed once for each distinct vector of a row of
 * cells, and remembered across rows and regions. Thread-safe.
 */
abstract class VectorMap implements ProofMap {
    private static final int MOST_AT_ONCE = 1 << 15;
    private static final int MEMO = 1 << 15;
    // Entries are immutable, so a race can only lose one, never mix two.
    private final Known[] memo = new Known[MEMO];

    private record Known(long[] vector, double value) {}

    /** @return the value of a vector: the tints of all inks, 0 to 255, then the mark, inked and laid planes */
    abstract double value(int[] vector);

    /** @return the entry of a value */
    abstract int entryOf(double value);

    @Override
    public final double mark(InkPlanes planes, byte[] marks, Cancel cancel) {
        double largest = IntStream.range(0, planes.cellsDown())
                .parallel()
                .mapToDouble(row -> {
                    cancel.check();
                    return new Row(planes, row, marks).mark();
                })
                .max()
                .orElse(0);
        return unit().isEmpty() ? Double.NaN : largest;
    }

    @Override
    public void paint(InkPlanes planes, int[] argb, int offset, int stride, Cancel cancel) {
        byte[] marks = new byte[planes.width() * planes.height()];
        mark(planes, marks, cancel);
        draw(planes, marks, argb, offset, stride);
    }

    private double remembered(long[] packed, int[] vector) {
        int slot = (int) (Arrays.hashCode(packed) * 0x9E3779B97F4A7C15L >>> 49);
        Known known = memo[slot];
        if (known == null || !Arrays.equals(known.vector, packed)) {
            known = new Known(packed, value(vector));
            memo[slot] = known;
        }
        return known.value;
    }

    /** One row of cells. */
    private final class Row {
        private final InkPlanes planes;
        private final int row;
        private final byte[] marks;
        private final VectorTable table;
        private final int[] vector;
        private byte[] entries = new byte[256];
        private int done;
        private double largest;

        Row(InkPlanes planes, int row, byte[] marks) {
            this.planes = planes;
            this.row = row;
            this.marks = marks;
            this.table = new VectorTable(planes.planes(), MOST_AT_ONCE);
            this.vector = new int[planes.planes()];
        }

        double mark() {
            for (int column = 0; column < planes.cellsAcross(); column++) {
                boolean uniform = table.gather(planes, column, row);
                int width = Math.min(InkPlanes.CELL_W, planes.width() - column * InkPlanes.CELL_W);
                int height = Math.min(InkPlanes.CELL_H, planes.height() - row * InkPlanes.CELL_H);
                for (int y = 0; y < height; y++) {
                    int to = (row * InkPlanes.CELL_H + y) * planes.width() + column * InkPlanes.CELL_W;
                    if (uniform) {
                        Arrays.fill(marks, to, to + width, entry(0));
                        continue;
                    }
                    for (int x = 0, p = y * InkPlanes.CELL_W; x < width; x++, p++) {
                        marks[to + x] = x > 0 && table.sameAsBefore(p) ? marks[to + x - 1] : entry(p);
                    }
                }
            }
            return largest;
        }

        private byte entry(int p) {
            int index = table.indexOf(p);
            if (index < 0) {
                table.clear();
                done = 0;
                index = table.indexOf(p);
            }
            if (index == done) { // new
                if (done == entries.length) {
                    entries = Arrays.copyOf(entries, 2 * done);
                }
                table.vector(index, vector);
                double value = remembered(table.packed(index), vector);
                largest = Math.max(largest, value);
                entries[done++] = (byte) entryOf(value);
            }
            return entries[index];
        }
    }
}
