package inkground.plate;

import static inkground.plate.InkPlanes.CELL_H;
import static inkground.plate.InkPlanes.CELL_W;

import inkground.base.Cancel;
import inkground.geometry.Matrix;
import java.util.Arrays;

/**
 * One step of a tiling pattern, painted once on a {@linkplain StepGrid grid} of its own and shown at every repeat. The edges
 * of the step are edges of the grid: what reaches them covers the grid's pixels there in full, so that repeats leave no seam
 * wherever they fall on the device. A device pixel shows the mean of the grid over its area, premultiplied, the grid going on
 * from its far edge at its near one. The area is taken along the axes of the pattern; where these are turned from the device's
 * an edge is off by 0.043 of a pixel's coverage at most (the corner of a square at 45° that a square along the edge leaves
 * out).
 *
 * <p>The means of all areas that begin at a corner of the grid are computed once; between them a mean changes linearly, for
 * an area is a whole number of the grid's pixels wide. Immutable, one byte per pixel and plane that varies.
 */
final class StepRaster {
    private final StepGrid grid;
    private final Matrix toGrid; // from device pixel centres to where their areas begin
    private final int[] uniform; // per plane, 0 to 255; where means has none
    /** Per plane null or (width + 1) × (height + 1) values: after the last comes the first of the next repeat. */
    private final byte[][] means;

    /**
     * @param deviceToGrid from device pixels to pixels of the grid
     * @param cells the painted grid: tints premultiplied, then mark, inked and laid plane
     * @param planes how many
     */
    StepRaster(StepGrid grid, Matrix deviceToGrid, InkPlanes.Cell[] cells, int planes, Cancel cancel) {
        this.grid = grid;
        this.toGrid = deviceToGrid.then(Matrix.translate(-grid.pixelAcross() / 2.0, -grid.pixelDown() / 2.0));
        this.uniform = new int[planes];
        this.means = new byte[planes][];
        for (int p = 0; p < planes; p++) {
            means[p] = means(cells, p, cancel);
            uniform[p] = means[p][0] & 255;
            if (allAs(means[p])) {
                means[p] = null;
            }
        }
    }

    private static boolean allAs(byte[] values) {
        for (byte value : values) {
            if (value != values[0]) {
                return false;
            }
        }
        return true;
    }

    /** @return weight in memory, in bytes */
    long bytes() {
        return Arrays.stream(means).mapToLong(m -> m == null ? 0 : m.length).sum();
    }

    private byte[] means(InkPlanes.Cell[] cells, int plane, Cancel cancel) {
        int width = grid.width();
        char[] across = new char[width * grid.height()];
        int[] row = new int[width];
        for (int y = 0; y < grid.height(); y++) {
            cancel.check();
            read(cells, plane, y, row);
            meansAcross(row, across, y * width);
        }
        return meansDown(across, cancel);
    }

    private static void read(InkPlanes.Cell[] cells, int plane, int y, int[] row) {
        int columns = (row.length + CELL_W - 1) / CELL_W;
        for (int x = 0; x < row.length; x++) {
            InkPlanes.Cell cell = cells[y / CELL_H * columns + x / CELL_W];
            byte[] dense = cell.dense()[plane];
            row[x] = (dense == null ? cell.uniform()[plane] : dense[y % CELL_H * CELL_W + x % CELL_W]) & 255;
        }
    }

    /** Means of a row over the width of a device pixel, times 256. */
    private void meansAcross(int[] row, char[] out, int at) {
        int width = row.length;
        long rounds = grid.pixelAcross() / width; // a pixel may be wider than the step
        int rest = (int) (grid.pixelAcross() % width);
        long sum = rounds * Arrays.stream(row).asLongStream().sum();
        for (int x = 0; x < rest; x++) {
            sum += row[x];
        }
        double scale = 256.0 / grid.pixelAcross();
        for (int x = 0; x < width; x++) {
            out[at + x] = (char) (sum * scale + 0.5);
            sum += row[(x + rest) % width] - row[x];
        }
    }

    private byte[] meansDown(char[] across, Cancel cancel) {
        int width = grid.width();
        int height = grid.height();
        long rounds = grid.pixelDown() / height;
        int rest = (int) (grid.pixelDown() % height);
        long[] sums = new long[width];
        for (int i = 0; i < across.length; i++) {
            sums[i % width] += across[i] * (i / width < rest ? rounds + 1 : rounds);
        }
        double scale = 1.0 / 256 / grid.pixelDown();
        byte[] out = new byte[(width + 1) * (height + 1)];
        for (int y = 0; y < height; y++) {
            cancel.check();
            int row = y * (width + 1);
            int leaving = y * width;
            int coming = (y + rest) % height * width;
            for (int x = 0; x < width; x++) {
                out[row + x] = (byte) (sums[x] * scale + 0.5);
                sums[x] += across[coming + x] - across[leaving + x];
            }
            out[row + width] = out[row];
        }
        System.arraycopy(out, 0, out, height * (width + 1), width + 1);
        return out;
    }

    /**
     * Paints the pattern over cells of a band.
     *
     * @param surface of an isolated group that holds nothing yet
     * @param bandX left device pixel of the band
     * @param bandY top device pixel
     */
    void paint(Surface surface, int firstCol, int lastCol, int bandX, int bandY, CellPool pool) {
        int[] place = pool.take();
        int[] part = pool.take();
        for (int col = firstCol; col <= lastCol; col++) {
            locate(bandX + col * CELL_W, bandY, place, part);
            for (int p = 0; p < means.length; p++) {
                show(p, surface, p, col, place, part);
            }
            if (surface.tracks) { // nothing lies beneath, and what is thin is taken for absent
                show(surface.mark(), surface, surface.own(), col, place, part);
                show(surface.mark(), surface, surface.shape(), col, place, part);
            }
        }
        pool.give(place);
        pool.give(part);
    }

    /** Where in the grid the area of each pixel of a cell begins: the grid's corner before, and 256ths beyond, x above y. */
    private void locate(int deviceX, int deviceY, int[] place, int[] part) {
        for (int i = 0; i < place.length; i++) {
            double px = deviceX + i % CELL_W + 0.5;
            double py = deviceY + i / CELL_W + 0.5;
            double u = within(toGrid.x(px, py), grid.width());
            double v = within(toGrid.y(px, py), grid.height());
            int x = (int) u;
            int y = (int) v;
            place[i] = y * (grid.width() + 1) + x;
            part[i] = (int) ((u - x) * 256) << 8 | (int) ((v - y) * 256);
        }
    }

    private static double within(double at, int size) {
        double rest = at - Math.floor(at / size) * size;
        return rest >= 0 && rest < size ? rest : 0; // rounding may bring what lies just below 0 to the size itself
    }

    private void show(int plane, Surface surface, int to, int col, int[] place, int[] part) {
        byte[] from = means[plane];
        if (from == null) {
            surface.set(to, col, uniform[plane] << 8);
            return;
        }
        int[] out = surface.densify(to, col);
        int below = grid.width() + 1;
        for (int i = 0; i < out.length; i++) {
            int at = place[i];
            int fx = part[i] >> 8;
            int fy = part[i] & 255;
            int top = (from[at] & 255) * (256 - fx) + (from[at + 1] & 255) * fx;
            int bottom = (from[at + below] & 255) * (256 - fx) + (from[at + below + 1] & 255) * fx;
            out[i] = top * (256 - fy) + bottom * fy + 128 >> 8;
        }
    }
}
