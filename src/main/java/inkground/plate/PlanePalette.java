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
        VectorTable distinct = new VectorTable(planes.planes(), MOST_VECTORS);
        char[] index = new char[planes.width() * planes.height()];
        for (int row = 0; row < planes.cellsDown(); row++) {
            cancel.check();
            for (int column = 0; column < planes.cellsAcross(); column++) {
                if (!indexCell(planes, column, row, distinct, index)) {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(new PlanePalette(asPlanes(distinct, planes), index));
    }

    private static boolean indexCell(InkPlanes planes, int column, int row, VectorTable distinct, char[] index) {
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

    private static InkPlanes asPlanes(VectorTable vectors, InkPlanes of) {
        PlateRequest r = of.request();
        int count = vectors.count();
        int planes = of.planes();
        int[] vector = new int[planes];
        int rows = (count + InkPlanes.CELL_W - 1) / InkPlanes.CELL_W;
        InkPlanes.Cell[] cells = new InkPlanes.Cell[(rows + InkPlanes.CELL_H - 1) / InkPlanes.CELL_H];
        for (int c = 0; c < cells.length; c++) {
            byte[][] dense = new byte[planes][VectorTable.CELL_PX];
            int end = Math.min(VectorTable.CELL_PX, count - c * VectorTable.CELL_PX);
            for (int i = 0; i < end; i++) {
                vectors.vector(c * VectorTable.CELL_PX + i, vector);
                for (int plane = 0; plane < planes; plane++) {
                    dense[plane][i] = (byte) vector[plane];
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
