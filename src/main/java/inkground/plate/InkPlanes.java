package inkground.plate;

import inkground.ink.InkSet;
import java.util.Arrays;

/**
 * The rasterised inks of one region: one 8-bit plane per ink (0 none, 255 solid), then the {@linkplain #markPlane mark
 * plane}, the {@linkplain #inkedPlane inked plane} and the {@linkplain #laidPlane laid plane}. Stored sparsely: the region is cut into cells of {@value #CELL_W} ×
 * {@value #CELL_H} pixels, and a plane that has one value all over a cell stores just that value. Immutable once handed out.
 */
public final class InkPlanes {
    /** Cell width in pixels: 64 bytes is one cache line, so a row of a cell is one line. */
    public static final int CELL_W = 64;
    /** Cell height in pixels. */
    public static final int CELL_H = 32;

    private final InkSet inks;
    private final PlateRequest request;
    private final int cellsAcross;
    private final Cell[] cells;

    /**
     * One cell.
     *
     * @param uniform value of each plane, 0 to 255; meaningless where {@code dense} has one
     * @param dense per plane null or CELL_W × CELL_H bytes, row by row
     */
    record Cell(byte[] uniform, byte[][] dense) {}

    InkPlanes(InkSet inks, PlateRequest request, Cell[] cells) {
        this.inks = inks;
        this.request = request;
        this.cellsAcross = (request.width() + CELL_W - 1) / CELL_W;
        this.cells = cells;
    }

    /** @return the inks, in plane order */
    public InkSet inks() {
        return inks;
    }

    /** @return what was asked for */
    public PlateRequest request() {
        return request;
    }

    /** @return width in pixels */
    public int width() {
        return request.width();
    }

    /** @return height in pixels */
    public int height() {
        return request.height();
    }

    /** @return number of planes: the inks and three more */
    public int planes() {
        return inks.size() + 3;
    }

    /** @return index of the plane that tells where anything at all was painted, white paint included: 255 painted */
    public int markPlane() {
        return inks.size();
    }

    /** @return index of the plane that tells where any ink was ever painted, even if it was knocked out later */
    public int inkedPlane() {
        return inks.size() + 1;
    }

    /**
     * @return index of the plane that tells how much of a pixel is covered by paint that carries ink and was not knocked out: at
     *     an edge the covered part, inside a tint 255. What an underbase has to cover.
     */
    public int laidPlane() {
        return inks.size() + 2;
    }

    /** @return number of cells across */
    public int cellsAcross() {
        return cellsAcross;
    }

    /** @return number of cells down */
    public int cellsDown() {
        return (height() + CELL_H - 1) / CELL_H;
    }

    /** @return the one value of a plane in a cell, 0 to 255, or -1 where it varies */
    public int uniform(int plane, int cellX, int cellY) {
        Cell cell = cells[cellY * cellsAcross + cellX];
        return cell.dense[plane] == null ? cell.uniform[plane] & 255 : -1;
    }

    /**
     * @return the bytes of a plane in a cell, {@value #CELL_W} a row, or null where it is uniform; not to be changed. Pixels
     *     beyond the region hold anything.
     */
    public byte[] dense(int plane, int cellX, int cellY) {
        return cells[cellY * cellsAcross + cellX].dense[plane];
    }

    /** @return one value, 0 to 255; x and y count from the region's own top left */
    public int get(int plane, int x, int y) {
        Cell cell = cells[y / CELL_H * cellsAcross + x / CELL_W];
        byte[] dense = cell.dense[plane];
        return (dense == null ? cell.uniform[plane] : dense[y % CELL_H * CELL_W + x % CELL_W]) & 255;
    }

    /** @return one plane whole: width × height bytes, row by row; a copy */
    public byte[] raster(int plane) {
        byte[] out = new byte[width() * height()];
        for (int y = 0; y < height(); y++) {
            row(plane, y, out, y * width());
        }
        return out;
    }

    /** Copies one row of one plane, {@link #width} bytes, to {@code out} at {@code offset}. */
    public void row(int plane, int y, byte[] out, int offset) {
        int cellRow = y / CELL_H * cellsAcross;
        int within = y % CELL_H * CELL_W;
        for (int cx = 0; cx < cellsAcross; cx++) {
            Cell cell = cells[cellRow + cx];
            int x = cx * CELL_W;
            int n = Math.min(CELL_W, width() - x);
            byte[] dense = cell.dense[plane];
            if (dense == null) {
                Arrays.fill(out, offset + x, offset + x + n, cell.uniform[plane]);
            } else {
                System.arraycopy(dense, within, out, offset + x, n);
            }
        }
    }

    /** @return planes of the same inks and region with other values: one raster of width × height for each plane */
    InkPlanes with(byte[][] rasters) {
        return cut(request, (plane, x, y) -> rasters[plane][y * width() + x]);
    }

    /**
     * @param inner a region within this one, of its scale
     * @return the planes of that region
     */
    InkPlanes part(PlateRequest inner) {
        int dx = inner.x0() - request.x0();
        int dy = inner.y0() - request.y0();
        return cut(inner, (plane, x, y) -> (byte) get(plane, x + dx, y + dy));
    }

    private interface Value {
        byte at(int plane, int x, int y);
    }

    private InkPlanes cut(PlateRequest to, Value value) {
        int across = (to.width() + CELL_W - 1) / CELL_W;
        int down = (to.height() + CELL_H - 1) / CELL_H;
        Cell[] made = new Cell[across * down];
        for (int c = 0; c < made.length; c++) {
            int x0 = c % across * CELL_W;
            int y0 = c / across * CELL_H;
            int columns = Math.min(CELL_W, to.width() - x0);
            int rows = Math.min(CELL_H, to.height() - y0);
            byte[] uniform = new byte[planes()];
            byte[][] dense = new byte[planes()][];
            for (int p = 0; p < dense.length; p++) {
                uniform[p] = value.at(p, x0, y0);
                byte[] cell = new byte[CELL_W * CELL_H];
                boolean varies = false;
                for (int i = 0; i < rows * columns; i++) {
                    byte v = value.at(p, x0 + i % columns, y0 + i / columns);
                    cell[i / columns * CELL_W + i % columns] = v;
                    varies |= v != uniform[p];
                }
                dense[p] = varies ? cell : null;
            }
            made[c] = new Cell(uniform, dense);
        }
        return new InkPlanes(inks, to, made);
    }

    /** @return weight in memory of the planes, in bytes */
    public long bytes() {
        long sum = 0;
        for (Cell cell : cells) {
            sum += 64 + cell.uniform.length + 8L * cell.dense.length;
            for (byte[] dense : cell.dense) {
                sum += dense == null ? 0 : 16 + dense.length;
            }
        }
        return sum;
    }
}
