package inkground.appearance;

import inkground.geometry.Box;
import inkground.plate.InkPlanes;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Where the underbase lies: the {@linkplain InkPlanes#laidPlane laid plane}, held to where a shown ink prints that needs it, so that
 * a tint gets a whole underbase and an anti-aliased edge a partial one; less what inks take away that knock it out. A choke moves the
 * edge inwards by the exact distance, a spread outwards. Beyond the region nothing is known, and the edge stays where it is; so ask
 * for a region larger by {@link Appearance#reachPx}.
 */
final class UnderbaseCoverage {
    private static final int INSIDE = 128;
    private static final int MAX_CHOKE_PX = 256;

    private final InkPlanes planes;
    private final StackModel model;
    private final byte[] moved; // whole region, row by row; null without choke or spread

    private UnderbaseCoverage(InkPlanes planes, StackModel model, byte[] moved) {
        this.planes = planes;
        this.model = model;
        this.moved = moved;
    }

    /** @return the coverage, or null for a stack without an underbase */
    static UnderbaseCoverage of(InkPlanes planes, StackModel model) {
        Underbase underbase = model.stack().underbase();
        if (underbase == null) {
            return null;
        }
        UnderbaseCoverage plain = new UnderbaseCoverage(planes, model, null);
        double chokePx = underbase.chokeMm() / Box.MM_PER_PT * planes.request().pxPerPt();
        double px = Math.min(MAX_CHOKE_PX, Math.abs(chokePx));
        // Less than a twentieth of a pixel cannot be seen.
        if (px < 0.05) {
            return plain;
        }
        byte[] whole = plain.region();
        int width = planes.width();
        int height = planes.height();
        byte[] moved = chokePx > 0 ? choke(whole, width, height, px) : spread(whole, width, height, px);
        return new UnderbaseCoverage(planes, model, moved);
    }

    /** @return how many pixels around a region change the coverage inside it */
    static int reachPx(Underbase underbase, double pxPerPt) {
        double px = underbase == null ? 0 : Math.abs(underbase.chokeMm()) / Box.MM_PER_PT * pxPerPt;
        return px == 0 ? 0 : (int) Math.ceil(Math.min(MAX_CHOKE_PX, px)) + 2;
    }

    /** @return the one coverage all over a cell, 0 to 255, where that is known at once; else -1 */
    int uniform(int column, int row) {
        if (moved != null) {
            return -1;
        }
        int strongest = 0;
        int removed = 0;
        for (int i = 0; i < planes.inks().size(); i++) {
            if (model.needsUnderbase(i) || model.removesUnderbase(i)) {
                int value = planes.uniform(i, column, row);
                if (value < 0) {
                    return -1;
                }
                strongest = model.needsUnderbase(i) ? Math.max(strongest, value) : strongest;
                removed = model.removesUnderbase(i) ? Math.max(removed, value) : removed;
            }
        }
        if (strongest == 0) {
            return 0;
        }
        int laid = planes.uniform(planes.laidPlane(), column, row);
        return laid < 0 ? -1 : Math.min(laid, 255 - removed);
    }

    /** @return coverage of one cell, 0 to 255, in a cell's own layout */
    byte[] cell(int column, int row) {
        byte[] out = new byte[InkPlanes.CELL_W * InkPlanes.CELL_H];
        if (moved == null) {
            fill(column, row, out);
            return out;
        }
        int x0 = column * InkPlanes.CELL_W;
        int y0 = row * InkPlanes.CELL_H;
        int width = Math.min(InkPlanes.CELL_W, planes.width() - x0);
        for (int y = 0; y < InkPlanes.CELL_H; y++) {
            int from = Math.min(planes.height() - 1, y0 + y) * planes.width() + x0;
            System.arraycopy(moved, from, out, y * InkPlanes.CELL_W, width);
            // What lies beyond the region repeats its edge, so that an even cell at the edge is found to be even.
            Arrays.fill(out, y * InkPlanes.CELL_W + width, (y + 1) * InkPlanes.CELL_W, moved[from + width - 1]);
        }
        return out;
    }

    private void fill(int column, int row, byte[] out) {
        int[] strongest = new int[out.length];
        int[] removed = new int[out.length];
        for (int i = 0; i < planes.inks().size(); i++) {
            if (model.needsUnderbase(i)) {
                strongest(i, column, row, strongest);
            } else if (model.removesUnderbase(i)) {
                strongest(i, column, row, removed);
            }
        }
        int[] laid = new int[out.length];
        strongest(planes.laidPlane(), column, row, laid);
        for (int p = 0; p < out.length; p++) {
            out[p] = (byte) (strongest[p] == 0 ? 0 : Math.min(laid[p], 255 - removed[p]));
        }
    }

    private void strongest(int plane, int column, int row, int[] out) {
        byte[] dense = planes.dense(plane, column, row);
        int uniform = dense == null ? planes.uniform(plane, column, row) : 0;
        for (int p = 0; p < out.length; p++) {
            out[p] = Math.max(out[p], dense == null ? uniform : dense[p] & 255);
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

    /**
     * Moves the edge of a coverage outwards: what is not covered is moved.
     *
     * @return a new coverage, nowhere less than the old
     */
    static byte[] spread(byte[] coverage, int width, int height, double spreadPx) {
        byte[] bare = new byte[coverage.length];
        for (int i = 0; i < bare.length; i++) {
            bare[i] = (byte) (255 - (coverage[i] & 255));
        }
        byte[] out = choke(bare, width, height, spreadPx);
        for (int i = 0; i < out.length; i++) {
            out[i] = (byte) (255 - (out[i] & 255));
        }
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
