package inkground.appearance;

import inkground.base.Cancel;
import inkground.plate.InkPlanes;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * What the process inks of a region look like on the print condition's own paper, pixel by pixel: the answer for photographs, whose
 * pixels nearly all have a vector of their own, so that no palette helps. Every other paper follows from it by
 * {@link GroundTables}, three look-ups a pixel in place of an interpolation among four inks. Held for cells in which nothing but
 * process inks prints. Immutable once made; 4 bytes a pixel.
 */
public final class PrintedPixels {
    private final int width;
    private final int cellsAcross;
    private final int[] coded; // row by row; see ProcessGrid#code
    private final boolean[] held; // by cell

    private PrintedPixels(InkPlanes planes) {
        width = planes.width();
        cellsAcross = planes.cellsAcross();
        coded = new int[planes.width() * planes.height()];
        held = new boolean[planes.cellsAcross() * planes.cellsDown()];
    }

    /**
     * @param planes of the same inks, in the same order, as the model's stack
     * @param model any of the models that the region will be painted with; only its print condition counts
     * @return empty where most of the region would not gain, or the model is of another kind: cloth, an underbase, a screen that is
     *     not sRGB, process inks that are hidden or not the first four
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    public static Optional<PrintedPixels> of(InkPlanes planes, StackModel model, Cancel cancel) {
        if (model.codedProcess() == null) {
            return Optional.empty();
        }
        ProcessGrid own = ProcessGrid.ofOwnPaper(model.stack().condition());
        own.complete();
        PrintedPixels pixels = new PrintedPixels(planes);
        int gained = IntStream.range(0, planes.cellsDown())
                .parallel()
                .map(row -> {
                    cancel.check();
                    return pixels.code(planes, row, own);
                })
                .sum();
        return 2 * gained < pixels.held.length ? Optional.empty() : Optional.of(pixels);
    }

    /** @return how many cells of a row are held */
    private int code(InkPlanes planes, int row, ProcessGrid own) {
        ProcessCell cell = new ProcessCell(planes);
        int count = 0;
        for (int column = 0; column < cellsAcross; column++) {
            if (cell.gather(column, row, plane -> true)) {
                held[row * cellsAcross + column] = true;
                count++;
                int x0 = column * InkPlanes.CELL_W;
                int y0 = row * InkPlanes.CELL_H;
                int w = Math.min(InkPlanes.CELL_W, width - x0);
                int h = Math.min(InkPlanes.CELL_H, planes.height() - y0);
                for (int y = 0; y < h; y++) {
                    own.code(cell.tints(), y * InkPlanes.CELL_W, w, coded, (y0 + y) * width + x0);
                }
            }
        }
        return count;
    }

    /** @return whether the cell's pixels are here */
    boolean holds(int column, int row) {
        return held[row * cellsAcross + column];
    }

    /** Paints a held cell on a ground. */
    void paint(GroundTables ground, int column, int row, int[] argb, int offset, int stride) {
        int x0 = column * InkPlanes.CELL_W;
        int y0 = row * InkPlanes.CELL_H;
        int w = Math.min(InkPlanes.CELL_W, width - x0);
        int end = Math.min(y0 + InkPlanes.CELL_H, coded.length / width);
        for (int y = y0; y < end; y++) {
            ground.paint(coded, y * width + x0, w, argb, offset + y * stride + x0);
        }
    }
}
