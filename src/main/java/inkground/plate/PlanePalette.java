package inkground.plate;

import inkground.base.Cancel;
import java.util.Arrays;
import java.util.Optional;

/**
 * The distinct vectors of a region, and which of them each pixel has. Flat artwork has few, so whatever depends on one pixel's
 * vector alone, such as its colour on another substrate, is computed once per vector and spread over the pixels by look-up.
 * Immutable once made.
 */
public final class PlanePalette {
    /** Most vectors, so that an index fits 16 bits. */
    public static final int MOST_VECTORS = 1 << 16;

    private static final int CELL_PX = InkPlanes.CELL_W * InkPlanes.CELL_H;

    private final InkPlanes vectors;
    private final char[] index;

    private PlanePalette(InkPlanes vectors, char[] index) {
        this.vectors = vectors;
        this.index = index;
    }

    /**
     * @return the palette, or empty for a region of more than {@link #MOST_VECTORS} vectors
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    public static Optional<PlanePalette> of(InkPlanes planes, Cancel cancel) {
        Vectors distinct = new Vectors(planes.planes());
        char[] index = new char[planes.width() * planes.height()];
        for (int row = 0; row < planes.cellsDown(); row++) {
            cancel.check();
            for (int column = 0; column < planes.cellsAcross(); column++) {
                if (!indexCell(planes, column, row, distinct, index)) {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(new PlanePalette(distinct.asPlanes(planes), index));
    }

    private static boolean indexCell(InkPlanes planes, int column, int row, Vectors distinct, char[] index) {
        boolean uniform = distinct.gather(planes, column, row);
        int x0 = column * InkPlanes.CELL_W;
        int y0 = row * InkPlanes.CELL_H;
        int width = Math.min(InkPlanes.CELL_W, planes.width() - x0);
        int height = Math.min(InkPlanes.CELL_H, planes.height() - y0);
        int last = uniform ? distinct.indexOf(0) : -1;
        for (int y = 0; y < height; y++) {
            int to = (y0 + y) * planes.width() + x0;
            if (uniform) {
                Arrays.fill(index, to, to + width, (char) last);
                continue;
            }
            for (int x = 0; x < width; x++) {
                int at = y * InkPlanes.CELL_W + x;
                last = last >= 0 && distinct.sameAsBefore(at) ? last : distinct.indexOf(at);
                if (last < 0) {
                    return false;
                }
                index[to + x] = (char) last;
            }
        }
        return last >= 0;
    }

    /**
     * @return the vectors as planes {@value InkPlanes#CELL_W} pixels wide, row by row: vector {@code i} is the pixel at
     *     ({@code i % CELL_W}, {@code i / CELL_W}). Neighbours there are no neighbours in the region.
     */
    public InkPlanes vectors() {
        return vectors;
    }

    /**
     * Spreads one value per vector over the pixels.
     *
     * @param ofVector by vector
     * @param out receives one per pixel of the region, row by row
     */
    public void spread(int[] ofVector, int[] out) {
        for (int i = 0; i < index.length; i++) {
            out[i] = ofVector[index[i]];
        }
    }

    /** @return weight in memory, in bytes */
    public long bytes() {
        return vectors.bytes() + 2L * index.length;
    }

    /** Vectors packed into longs, eight planes each, found by hashing with open addressing. */
    private static final class Vectors {
        private final int planes;
        private final int words;
        private final long[] cell;
        private long[] found;
        private int[] slots = new int[1 << 10];
        private int count;

        Vectors(int planes) {
            this.planes = planes;
            this.words = (planes + 7) / 8;
            this.cell = new long[CELL_PX * words];
            this.found = new long[256 * words];
        }

        /** Packs the vectors of a cell; where it has only one, just the first is filled and true is returned. */
        boolean gather(InkPlanes from, int column, int row) {
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

        boolean sameAsBefore(int p) {
            int at = p * words;
            return p > 0 && Arrays.equals(cell, at, at + words, cell, at - words, at);
        }

        /** @return index of the vector of a pixel of the cell, or -1 if there are too many */
        int indexOf(int p) {
            int at = p * words;
            int slot = slot(cell, at);
            while (slots[slot] != 0) {
                int candidate = (slots[slot] - 1) * words;
                if (Arrays.equals(cell, at, at + words, found, candidate, candidate + words)) {
                    return slots[slot] - 1;
                }
                slot = slot + 1 & slots.length - 1;
            }
            if (count == MOST_VECTORS) {
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

        InkPlanes asPlanes(InkPlanes of) {
            PlateRequest r = of.request();
            int rows = (count + InkPlanes.CELL_W - 1) / InkPlanes.CELL_W;
            InkPlanes.Cell[] cells = new InkPlanes.Cell[(rows + InkPlanes.CELL_H - 1) / InkPlanes.CELL_H];
            for (int c = 0; c < cells.length; c++) {
                byte[][] dense = new byte[planes][CELL_PX];
                int end = Math.min(CELL_PX, count - c * CELL_PX);
                for (int i = 0; i < end; i++) {
                    for (int plane = 0; plane < planes; plane++) {
                        long word = found[(c * CELL_PX + i) * words + (plane >> 3)];
                        dense[plane][i] = (byte) (word >>> 8 * (plane & 7));
                    }
                }
                cells[c] = new InkPlanes.Cell(new byte[planes], dense);
            }
            return new InkPlanes(
                    of.inks(),
                    new PlateRequest(r.pxPerPt(), 0, 0, InkPlanes.CELL_W, rows, r.overprint(), r.layersOn()),
                    cells);
        }
    }
}
