package inkground.plate;

import inkground.ink.InkSet;
import java.util.Arrays;

/** Makes ink planes whose every value is known by construction, for tests of what reads planes. */
public final class PlanesForTests {
    /** Value of a plane at a device pixel of page space. */
    @FunctionalInterface
    public interface Art {
        /** @return 0 to 255 */
        int at(int plane, int xPx, int yPx);
    }

    private PlanesForTests() {}

    /** @return planes with dense cells throughout */
    public static InkPlanes of(InkSet inks, PlateRequest request, Art art) {
        int across = (request.width() + InkPlanes.CELL_W - 1) / InkPlanes.CELL_W;
        int down = (request.height() + InkPlanes.CELL_H - 1) / InkPlanes.CELL_H;
        InkPlanes.Cell[] cells = new InkPlanes.Cell[across * down];
        for (int i = 0; i < cells.length; i++) {
            cells[i] = cell(
                    inks.size(),
                    request.x0() + i % across * InkPlanes.CELL_W,
                    request.y0() + i / across * InkPlanes.CELL_H,
                    art);
        }
        return new InkPlanes(inks, request, cells);
    }

    /** Value of one plane at a device pixel of page space. */
    @FunctionalInterface
    public interface Plane {
        /** @return 0 to 255 */
        int at(int xPx, int yPx);
    }

    /** @return dense planes with another laid plane */
    public static InkPlanes laidAs(InkPlanes planes, Plane laid) {
        PlateRequest request = planes.request();
        InkPlanes.Cell[] cells = new InkPlanes.Cell[planes.cellsAcross() * planes.cellsDown()];
        for (int i = 0; i < cells.length; i++) {
            byte[][] dense = new byte[planes.planes()][];
            for (int p = 0; p < dense.length; p++) {
                dense[p] = planes.dense(p, i % planes.cellsAcross(), i / planes.cellsAcross());
            }
            byte[] own = new byte[InkPlanes.CELL_W * InkPlanes.CELL_H];
            for (int k = 0; k < own.length; k++) {
                own[k] = (byte) laid.at(
                        request.x0() + i % planes.cellsAcross() * InkPlanes.CELL_W + k % InkPlanes.CELL_W,
                        request.y0() + i / planes.cellsAcross() * InkPlanes.CELL_H + k / InkPlanes.CELL_W);
            }
            dense[planes.laidPlane()] = own;
            cells[i] = new InkPlanes.Cell(new byte[planes.planes()], dense);
        }
        return new InkPlanes(planes.inks(), request, cells);
    }

    /**
     * Cells planes that are whole rasters.
     *
     * @param inks in plane order
     * @param request what the rasters are of
     * @param planes one raster of width × height bytes per ink, then the mark plane and the inked plane; copied. The laid plane
     *     is taken to be the mark plane wherever any ink is.
     */
    public static InkPlanes ofRasters(InkSet inks, PlateRequest request, byte[][] planes) {
        if (planes.length != inks.size() + 2) {
            throw new IllegalArgumentException(
                    planes.length + " rasters for " + inks.size() + " inks and two planes more");
        }
        for (byte[] plane : planes) {
            if (plane.length != request.width() * request.height()) {
                throw new IllegalArgumentException("a raster of " + plane.length + " bytes");
            }
        }
        byte[][] all = Arrays.copyOf(planes, planes.length + 1);
        all[planes.length] = laid(planes, inks.size());
        int across = (request.width() + InkPlanes.CELL_W - 1) / InkPlanes.CELL_W;
        int down = (request.height() + InkPlanes.CELL_H - 1) / InkPlanes.CELL_H;
        InkPlanes.Cell[] cells = new InkPlanes.Cell[across * down];
        for (int i = 0; i < cells.length; i++) {
            cells[i] = cellOf(request, all, i % across * InkPlanes.CELL_W, i / across * InkPlanes.CELL_H);
        }
        return new InkPlanes(inks, request, cells);
    }

    private static byte[] laid(byte[][] planes, int inks) {
        byte[] laid = new byte[planes[inks].length];
        for (int ink = 0; ink < inks; ink++) {
            for (int i = 0; i < laid.length; i++) {
                laid[i] = planes[ink][i] != 0 ? planes[inks][i] : laid[i];
            }
        }
        return laid;
    }

    private static InkPlanes.Cell cellOf(PlateRequest request, byte[][] planes, int x0, int y0) {
        int columns = Math.min(InkPlanes.CELL_W, request.width() - x0);
        int rows = Math.min(InkPlanes.CELL_H, request.height() - y0);
        byte[] uniform = new byte[planes.length];
        byte[][] dense = new byte[planes.length][];
        for (int p = 0; p < planes.length; p++) {
            uniform[p] = planes[p][y0 * request.width() + x0];
            byte[] cell = new byte[InkPlanes.CELL_W * InkPlanes.CELL_H];
            boolean varies = false;
            for (int y = 0; y < rows; y++) {
                int from = (y0 + y) * request.width() + x0;
                System.arraycopy(planes[p], from, cell, y * InkPlanes.CELL_W, columns);
                for (int x = 0; x < columns; x++) {
                    varies |= planes[p][from + x] != uniform[p];
                }
            }
            dense[p] = varies ? cell : null;
        }
        return new InkPlanes.Cell(uniform, dense);
    }

    private static InkPlanes.Cell cell(int inks, int x0, int y0, Art art) {
        int planes = inks + 3;
        byte[][] dense = new byte[planes][InkPlanes.CELL_W * InkPlanes.CELL_H];
        for (int plane = 0; plane < inks + 2; plane++) {
            for (int i = 0; i < dense[plane].length; i++) {
                dense[plane][i] = (byte) art.at(plane, x0 + i % InkPlanes.CELL_W, y0 + i / InkPlanes.CELL_W);
            }
        }
        for (int ink = 0; ink < inks; ink++) { // laid is what is marked wherever any ink is
            for (int i = 0; i < dense[ink].length; i++) {
                dense[inks + 2][i] = dense[ink][i] != 0 ? dense[inks][i] : dense[inks + 2][i];
            }
        }
        return new InkPlanes.Cell(new byte[planes], dense);
    }
}
