package inkground.appearance;

import inkground.geometry.Box;
import inkground.plate.InkPlanes;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Where the underbase lies: the {@linkplain InkPlanes#laidPlane laid plane}, held to where a shown coloured ink prints, so that
 * a tint gets a whole underbase and an anti-aliased edge a partial one. A choke moves the edge inwards by the
 * exact distance. Beyond the region nothing is known; it counts as covered, so ask for a region larger by the choke.
 */
final class UnderbaseCoverage {
    private static final int INSIDE = 128;
    private static final int MAX_CHOKE_PX = 256;

    private final InkPlanes planes;
    private final StackModel model;
    private final byte[] choked; // whole region, row by row; null without a choke

    private UnderbaseCoverage(InkPlanes planes, StackModel model, byte[] choked) {
        this.planes = planes;
        this.model = model;
        this.choked = choked;
    }

    /** @return the coverage, or null for a stack without an underbase */
    static UnderbaseCoverage of(InkPlanes planes, StackModel model) {
        Underbase underbase = model.stack().underbase();
        if (underbase == null) {
            return null;
        }
        UnderbaseCoverage plain = new UnderbaseCoverage(planes, model, null);
        double chokePx = underbase.chokeMm() / Box.MM_PER_PT * planes.request().pxPerPt();
        // Less than a twentieth of a pixel cannot be seen.
        if (chokePx < 0.05) {
            return plain;
        }
        byte[] whole = plain.region();
        return new UnderbaseCoverage(
                planes, model, choke(whole, planes.width(), planes.height(), Math.min(MAX_CHOKE_PX, chokePx)));
    }

    /** @return the one coverage all over a cell, 0 to 255, where that is known at once; else -1 */
    int uniform(int column, int row) {
        int strongest = 0;
        for (int i = 0; i < planes.inks().size(); i++) {
            if (model.needsUnderbase(i)) {
                int value = planes.uniform(i, column, row);
                if (value < 0) {
                    return -1;
                }
                strongest = Math.max(strongest, value);
            }
        }
        if (strongest == 0) {
            return 0;
        }
        return choked != null ? -1 : planes.uniform(planes.laidPlane(), column, row);
    }

    /** @return coverage of one cell, 0 to 255, in a cell's own layout */
    byte[] cell(int column, int row) {
        byte[] out = new byte[InkPlanes.CELL_W * InkPlanes.CELL_H];
        if (choked == null) {
            fill(column, row, out);
            return out;
        }
        int x0 = column * InkPlanes.CELL_W;
        int y0 = row * InkPlanes.CELL_H;
        int width = Math.min(InkPlanes.CELL_W, planes.width() - x0);
        for (int y = 0; y < InkPlanes.CELL_H; y++) {
            int from = Math.min(planes.height() - 1, y0 + y) * planes.width() + x0;
            System.arraycopy(choked, from, out, y * InkPlanes.CELL_W, width);
            // What lies beyond the region repeats its edge, so that an even cell at the edge is found to be even.
            Arrays.fill(out, y * InkPlanes.CELL_W + width, (y + 1) * InkPlanes.CELL_W, choked[from + width - 1]);
        }
        return out;
    }

    private void fill(int column, int row, byte[] out) {
        int[] strongest = new int[out.length];
        for (int i = 0; i < planes.inks().size(); i++) {
            if (!model.needsUnderbase(i)) {
                continue;
            }
            byte[] dense = planes.dense(i, column, row);
            int uniform = dense == null ? planes.uniform(i, column, row) : 0;
            for (int p = 0; p < out.length; p++) {
                strongest[p] = Math.max(strongest[p], dense == null ? uniform : dense[p] & 255);
            }
        }
        byte[] laid = planes.dense(planes.laidPlane(), column, row);
        int laidUniform = Math.max(0, planes.uniform(planes.laidPlane(), column, row));
        for (int p = 0; p < out.length; p++) {
            int value = laid == null ? laidUniform : laid[p] & 255;
            out[p] = (byte) (strongest[p] == 0 ? 0 : value);
        }
    }

    private byte[] region() {
        int width = planes.width();
        byte[] whole = new byte[width * planes.height()];
        IntStream.range(0, planes.cellsDown()).parallel().forEach(row -> {
            byte[] cell = new byte[InkPlanes.CELL_W * InkPlanes.CELL_H];
            int rows = Math.min(InkPlanes.CELL_H, planes.height() - row * InkPlanes.CELL_H);
            for (int column = 0; column < planes.cellsAcross(); column++) {
                int x0 = column * InkPlanes.CELL_W;
                int columns = Math.min(InkPlanes.CELL_W, width - x0);
                fill(column, row, cell);
                for (int y = 0; y < rows; y++) {
                    int to = (row * InkPlanes.CELL_H + y) * width + x0;
                    System.arraycopy(cell, y * InkPlanes.CELL_W, whole, to, columns);
                }
            }
        });
        return whole;
    }

    /**
     * Moves the edge of a coverage inwards.
     *
     * @param coverage row by row, 0 to 255
     * @param chokePx above 0
     * @return a new coverage, nowhere more than the old
     */
    static byte[] choke(byte[] coverage, int width, int height, double chokePx) {
        int reach = (int) Math.ceil(chokePx) + 1;
        int[] across = new int[coverage.length];
        IntStream.range(0, height).parallel().forEach(y -> distancesAcross(coverage, y * width, width, reach, across));
        byte[] out = new byte[coverage.length];
        IntStream.range(0, height).parallel().forEach(y -> {
            for (int x = 0; x < width; x++) {
                int at = y * width + x;
                if (coverage[at] == 0) {
                    continue;
                }
                // Distance from this pixel's centre to the nearest pixel outside, whose near edge is half a pixel
                // closer;
                // the choked edge is half covered where that distance is the choke.
                double distance = distance(across, x, y, width, height, reach);
                double kept = Math.max(0, Math.min(1, distance - chokePx));
                out[at] = (byte) Math.min(coverage[at] & 255, (int) Math.round(255 * kept));
            }
        });
        return out;
    }

    private static void distancesAcross(byte[] coverage, int from, int width, int reach, int[] out) {
        int d = reach;
        for (int x = 0; x < width; x++) {
            d = (coverage[from + x] & 255) < INSIDE ? 0 : Math.min(reach, d + 1);
            out[from + x] = d;
        }
        d = reach;
        for (int x = width - 1; x >= 0; x--) {
            d = (coverage[from + x] & 255) < INSIDE ? 0 : Math.min(reach, d + 1);
            out[from + x] = Math.min(out[from + x], d);
        }
    }

    private static double distance(int[] across, int x, int y, int width, int height, int reach) {
        int best = reach * reach;
        // Outwards, so that the search ends once it is further off than what was found.
        for (int dy = 0; dy * dy < best; dy++) {
            int above = y - dy < 0 ? reach : across[(y - dy) * width + x];
            int below = y + dy >= height ? reach : across[(y + dy) * width + x];
            int d = Math.min(above, below);
            best = Math.min(best, d * d + dy * dy);
        }
        return Math.sqrt(best);
    }
}
