package inkground.plate;

import inkground.ink.InkSet;

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
