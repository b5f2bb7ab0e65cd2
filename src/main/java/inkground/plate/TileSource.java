package inkground.plate;

import static inkground.plate.InkPlanes.CELL_H;
import static inkground.plate.InkPlanes.CELL_W;

import inkground.geometry.Matrix;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * A pattern of very many cells: one step of it is rasterised once, then looked up by every pixel. A step smaller than a pixel
 * becomes a raster of one pixel, whose area coverage is the pattern's mean.
 */
final class TileSource implements PixelSource {
    /** Largest side of the raster; the step of a larger one is shown at this resolution. */
    static final int MOST_PX = 2048;

    private final Matrix toStep; // from device pixels to steps: whole numbers are the corners of cells
    private final int width;
    private final int height;
    private final int[][] tints; // per plane, not premultiplied
    private final int[] cover;

    /**
     * @param toStep from device pixels to steps of the pattern
     * @param cells the raster of one step: tints premultiplied, then the mark plane
     * @param tintPlanes number of tints
     */
    TileSource(Matrix toStep, int width, int height, InkPlanes.Cell[] cells, int tintPlanes) {
        this.toStep = toStep;
        this.width = width;
        this.height = height;
        this.tints = new int[tintPlanes][width * height];
        this.cover = new int[width * height];
        int across = (width + CELL_W - 1) / CELL_W;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                InkPlanes.Cell cell = cells[y / CELL_H * across + x / CELL_W];
                int within = y % CELL_H * CELL_W + x % CELL_W;
                int mark = value(cell, tintPlanes, within);
                int at = y * width + x;
                cover[at] = Fixed.coverOfTint(mark << 8);
                for (int p = 0; p < tintPlanes && mark > 0; p++) {
                    tints[p][at] = Math.min(Fixed.TINT_ONE, value(cell, p, within) * Fixed.TINT_ONE / mark);
                }
            }
        }
    }

    private static int value(InkPlanes.Cell cell, int plane, int within) {
        byte[] dense = cell.dense()[plane];
        return (dense == null ? cell.uniform()[plane] : dense[within]) & 255;
    }

    @Override
    public int[] planes() {
        return IntStream.range(0, tints.length).toArray();
    }

    @Override
    public Extent cell(int deviceX, int deviceY, int[][] out, int[] outCover) {
        for (int y = 0; y < CELL_H; y++) {
            for (int x = 0; x < CELL_W; x++) {
                double px = deviceX + x + 0.5;
                double py = deviceY + y + 0.5;
                // the cover array holds the place in the raster until the tints have been looked up
                outCover[y * CELL_W + x] = part(toStep.y(px, py), height) * width + part(toStep.x(px, py), width);
            }
        }
        for (int p = 0; p < tints.length; p++) {
            int[] from = tints[p];
            for (int i = 0; i < outCover.length; i++) {
                out[p][i] = from[outCover[i]];
            }
        }
        Arrays.setAll(outCover, i -> cover[outCover[i]]);
        return Extent.SOME;
    }

    private static int part(double step, int size) {
        return Math.min(size - 1, (int) ((step - Math.floor(step)) * size));
    }
}
