package inkground.findings;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Some of the squares of {@value #SIZE} pixels that a raster is cut into: those worth a look. Most of a page is even, and what looks
 * at the surroundings of each pixel need not look there.
 */
final class Tiles {
    /** Pixels that a tile has across and down; fewer at the right and at the bottom of a raster. */
    static final int SIZE = 8;

    private final int width;
    private final int height;
    private final int across;
    private final boolean[] held;

    /** Receives pixels next to each other. */
    @FunctionalInterface
    interface Run {
        /**
         * @param x0 first pixel of row {@code y}
         * @param x1 end, exclusive
         */
        void pixels(int y, int x0, int x1);
    }

    /** None of the tiles of a raster, whose size is in pixels. */
    Tiles(int width, int height) {
        this.width = width;
        this.height = height;
        this.across = (width + SIZE - 1) / SIZE;
        this.held = new boolean[across * ((height + SIZE - 1) / SIZE)];
    }

    /**
     * @param raster row by row
     * @param reach pixels, 0 or more
     * @return at least the tiles with a pixel that has two values within {@code reach} pixels across and down
     */
    static Tiles changing(byte[] raster, int width, int height, int reach) {
        Tiles changes = new Tiles(width, height);
        for (int y = 0; y < height; y++) {
            changes.addDifferences(y, raster, y * width, y * width + 1, width - 1);
            if (y > 0) {
                changes.addDifferences(y, raster, y * width, (y - 1) * width, width);
            }
        }
        return changes.grown(reach + 1); // a change lies between two pixels
    }

    /** Adds the tiles of a row in which two runs of so many bytes differ. */
    private void addDifferences(int y, byte[] raster, int one, int other, int count) {
        for (int x = 0; x < count; ) {
            int equal = Arrays.mismatch(raster, one + x, one + count, raster, other + x, other + count);
            if (equal < 0) {
                return;
            }
            held[y / SIZE * across + (x + equal) / SIZE] = true;
            x = ((x + equal) / SIZE + 1) * SIZE;
        }
    }

    private Tiles grown(int px) {
        int tiles = (px + SIZE - 1) / SIZE;
        Tiles out = new Tiles(width, height);
        int down = held.length / across;
        boolean[] rows = new boolean[held.length];
        for (int i = 0; i < held.length; i++) {
            if (held[i]) {
                int row = i / across * across;
                Arrays.fill(rows, Math.max(row, i - tiles), Math.min(row + across, i + tiles + 1), true);
            }
        }
        for (int i = 0; i < held.length; i++) {
            if (rows[i]) {
                for (int j = Math.max(0, i / across - tiles); j <= Math.min(down - 1, i / across + tiles); j++) {
                    out.held[j * across + i % across] = true;
                }
            }
        }
        return out;
    }

    /** Adds the tiles of a pixel and of its eight neighbours. Not thread-safe. */
    void addAround(int x, int y) {
        for (int j = Math.max(0, y - 1) / SIZE; j <= Math.min(height - 1, y + 1) / SIZE; j++) {
            for (int i = Math.max(0, x - 1) / SIZE; i <= Math.min(width - 1, x + 1) / SIZE; i++) {
                held[j * across + i] = true;
            }
        }
    }

    /** Hands over the pixels row by row, from left to right. */
    void each(Run run) {
        for (int y = 0; y < height; y++) {
            row(y, run);
        }
    }

    /** Hands over the pixels, many rows at a time. */
    void parallel(Run run) {
        IntStream.range(0, height).parallel().forEach(y -> row(y, run));
    }

    private void row(int y, Run run) {
        int row = y / SIZE * across;
        for (int i = 0; i < across; i++) {
            if (held[row + i]) {
                int first = i;
                while (i < across && held[row + i]) {
                    i++;
                }
                run.pixels(y, first * SIZE, Math.min(width, i * SIZE));
            }
        }
    }
}
