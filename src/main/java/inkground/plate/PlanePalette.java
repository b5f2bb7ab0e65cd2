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

    /** Stands for a cell of more than one vector. */
    private static final int MANY = -1;

    private final InkPlanes vectors;
    private final int width;
    private final int height;
    private final char[] index; // by pixel, row by row; not set in cells of one vector
    private final int[] ofCell; // index of its vector, or MANY

    private PlanePalette(InkPlanes vectors, int width, int height, char[] index, int[] ofCell) {
        this.vectors = vectors;
        this.width = width;
        this.height = height;
        this.index = index;
        this.ofCell = ofCell;
    }

    /**
     * @return the palette, or empty for a region of more than {@link #MOST_VECTORS} vectors
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    public static Optional<PlanePalette> of(InkPlanes planes, Cancel cancel) {
        VectorTable distinct = new VectorTable(planes.planes(), MOST_VECTORS);
        char[] index = new char[planes.width() * planes.height()];
        int[] ofCell = new int[planes.cellsAcross() * planes.cellsDown()];
        for (int row = 0; row < planes.cellsDown(); row++) {
            cancel.check();
            for (int column = 0; column < planes.cellsAcross(); column++) {
                boolean uniform = distinct.gather(planes, column, row);
                int only = uniform ? distinct.indexOf(0) : MANY;
                if (uniform ? only < 0 : !indexCell(planes, column, row, distinct, index)) {
                    return Optional.empty();
                }
                ofCell[row * planes.cellsAcross() + column] = only;
            }
        }
        return Optional.of(
                new PlanePalette(asPlanes(distinct, planes), planes.width(), planes.height(), index, ofCell));
    }

    private static boolean indexCell(InkPlanes planes, int column, int row, VectorTable distinct, char[] index) {
        int x0 = column * InkPlanes.CELL_W;
        int y0 = row * InkPlanes.CELL_H;
        int width = Math.min(InkPlanes.CELL_W, planes.width() - x0);
        int height = Math.min(InkPlanes.CELL_H, planes.height() - y0);
        for (int y = 0; y < height; y++) {
            int to = (y0 + y) * planes.width() + x0;
            int last = -1; // the row above may end beyond the region
            for (int x = 0; x < width; x++) {
                int at = y * InkPlanes.CELL_W + x;
                last = last >= 0 && distinct.sameAsBefore(at) ? last : distinct.indexOf(at);
                if (last < 0) {
                    return false;
                }
                index[to + x] = (char) last;
            }
        }
        return true;
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
        int across = (width + InkPlanes.CELL_W - 1) / InkPlanes.CELL_W;
        for (int cell = 0; cell < ofCell.length; cell++) {
            int x0 = cell % across * InkPlanes.CELL_W;
            int y0 = cell / across * InkPlanes.CELL_H;
            int cellWidth = Math.min(InkPlanes.CELL_W, width - x0);
            int first = y0 * width + x0;
            int end = Math.min(height, y0 + InkPlanes.CELL_H) * width;
            if (ofCell[cell] == MANY) {
                for (int row = first; row < end; row += width) {
                    for (int i = row; i < row + cellWidth; i++) {
                        out[i] = ofVector[index[i]];
                    }
                }
            } else {
                Arrays.fill(out, first, first + cellWidth, ofVector[ofCell[cell]]);
                for (int row = first + width; row < end; row += width) {
                    System.arraycopy(out, first, out, row, cellWidth);
                }
            }
        }
    }

    /** @return weight in memory, in bytes */
    public long bytes() {
        return vectors.bytes() + 2L * index.length + 4L * ofCell.length;
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
