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
     * @param step 1 to 255
     * @return at least the tiles with a pixel that has values so far apart within {@code reach} pixels across and down
     */
    static Tiles varying(byte[] raster, int width, int height, int reach, int step) {
        Tiles changes = new Tiles(width, height);
        for (int y = 0; y < height; y++) {
            changes.addDifferences(y, raster, y * width, y * width + 1, width - 1);
            if (y > 0) {
                changes.addDifferences(y, raster, y * width, (y - 1) * width, width);
            }
        }
        return changes.steep(raster, (reach + SIZE - 1) / SIZE, step);
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

    /** Those with such a step within some tiles around them; what changes at all is held. */
    private Tiles steep(byte[] raster, int tiles, int step) {
        int[] least = new int[held.length];
        int[] most = new int[held.length];
        for (int i = 0; i < held.length; i++) {
            int x0 = i % across * SIZE;
            int y0 = i / across * SIZE;
            least[i] = most[i] = raster[y0 * width + x0] & 255;
            if (held[i]) {
                for (int y = y0; y < Math.min(height, y0 + SIZE); y++) {
                    for (int x = x0; x < Math.min(width, x0 + SIZE); x++) {
                        int value = raster[y * width + x] & 255;
                        least[i] = Math.min(least[i], value);
                        most[i] = Math.max(most[i], value);
                    }
                }
            }
        }
        Tiles out = new Tiles(width, height);
        for (int row = 0; row < held.length; row += across) {
            int[] low = new int[across];
            int[] high = new int[across];
            Arrays.fill(low, 255);
            int first = Math.max(0, row - tiles * across);
            int end = Math.min(held.length, row + (tiles + 1) * across);
            for (int i = first; i < end; i++) {
                low[i % across] = Math.min(low[i % across], least[i]);
                high[i % across] = Math.max(high[i % across], most[i]);
            }
            for (int i = 0; i < across; i++) {
                int lowest = 255;
                int highest = 0;
                for (int j = Math.max(0, i - tiles); j <= Math.min(across - 1, i + tiles); j++) {
                    lowest = Math.min(lowest, low[j]);
                    highest = Math.max(highest, high[j]);
                }
                out.held[row + i] = highest - lowest >= step;
            }
        }
        return out;
    }

    /** @return these and all tiles within so many pixels of them */
    Tiles grown(int px) {
        int tiles = (px + SIZE - 1) / SIZE;
        Tiles out = new Tiles(width, height);
        for (int i = 0; i < held.length; i++) {
            if (held[i]) {
                int left = Math.min(tiles, i % across);
                int right = Math.min(tiles, across - 1 - i % across);
                for (int at = i % across + Math.max(0, i / across - tiles) * across;
                        at < held.length && at <= i + tiles * across;
                        at += across) {
                    Arrays.fill(out.held, at - left, at + right + 1, true);
                }
            }
        }
        return out;
    }

    /** @return whether there are none */
    boolean none() {
        for (boolean one : held) {
            if (one) {
                return false;
            }
        }
        return true;
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
        for (int row = 0; row < held.length; row += across) {
            row(row, run);
        }
    }

    /** Hands over the pixels, several rows at a time. */
    void parallel(Run run) {
        IntStream.range(0, held.length / across).parallel().forEach(row -> row(row * across, run));
    }

    private void row(int first, Run run) {
        int[] ends = new int[across + 1]; // starts and ends of what is held
        int count = 0;
        for (int i = 0; i <= across; i++) {
            if ((i < across && held[first + i]) != (count % 2 == 1)) {
                ends[count++] = Math.min(width, i * SIZE);
            }
        }
        int y0 = first / across * SIZE;
        for (int y = y0; y < Math.min(height, y0 + SIZE) && count > 0; y++) {
            for (int i = 0; i < count; i += 2) {
                run.pixels(y, ends[i], ends[i + 1]);
            }
        }
    }
}
