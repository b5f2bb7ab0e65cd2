package inkground.appearance;

import inkground.base.Cancel;
import inkground.geometry.Box;
import inkground.plate.InkPlanes;
import inkground.substrate.Texture;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Paints ink planes as they look on a stack. Works cell by cell on all processors; a cell of one vector is one look-up, and in
 * the others each distinct vector is looked up about once.
 */
public final class Appearance {
    private Appearance() {}

    /**
     * @param stack with or without an underbase
     * @param pxPerPt scale of the planes
     * @return how many pixels around a region its colours depend on: a choked or spread underbase looks at its neighbours
     */
    public static int reachPx(Stack stack, double pxPerPt) {
        return UnderbaseCoverage.reachPx(stack.underbase(), pxPerPt);
    }

    /** Paints flat colour, without the surface of the substrate. */
    public static void paint(InkPlanes planes, StackModel model, int[] argb, int offset, int stride, Cancel cancel) {
        paint(planes, model, PaintOptions.FLAT, argb, offset, stride, cancel);
    }

    /**
     * Paints planes.
     *
     * @param planes of the same inks, in the same order, as the model's stack
     * @param model what inks look like
     * @param options what else to show
     * @param argb receives opaque sRGB pixels, 0xffRRGGBB
     * @param offset index of the top left pixel
     * @param stride pixels from one row to the next
     * @param cancel checked at every row of cells
     * @throws java.util.concurrent.CancellationException if cancelled; some pixels are painted then
     */
    public static void paint(
            InkPlanes planes,
            StackModel model,
            PaintOptions options,
            int[] argb,
            int offset,
            int stride,
            Cancel cancel) {
        paint(planes, null, model, options, argb, offset, stride, cancel);
    }

    /**
     * The same, flat, sooner: what was found out about the pixels before serves for every paper.
     *
     * @param known of these planes and the model's print condition; null for nothing
     */
    public static void paint(
            InkPlanes planes,
            PrintedPixels known,
            StackModel model,
            int[] argb,
            int offset,
            int stride,
            Cancel cancel) {
        paint(planes, known, model, PaintOptions.FLAT, argb, offset, stride, cancel);
    }

    private static void paint(
            InkPlanes planes,
            PrintedPixels known,
            StackModel model,
            PaintOptions options,
            int[] argb,
            int offset,
            int stride,
            Cancel cancel) {
        if (planes.inks().size() != model.stack().inks().size()) {
            throw new IllegalArgumentException("planes of " + planes.inks() + " for a stack of "
                    + model.stack().inks().size() + " inks");
        }
        UnderbaseCoverage underbase = UnderbaseCoverage.of(planes, model);
        ProcessGrid process = model.leadingProcess(); // made here, once, rather than by the first rows at the same time
        if (process != null && underbase == null && ProcessCell.any(planes, model::shows)) {
            process.complete();
        }
        PrintedPixels printed = model.codedProcess() == null ? null : known;
        IntStream.range(0, planes.cellsDown()).parallel().forEach(row -> {
            cancel.check();
            CellPainter painter = new CellPainter(planes, model, underbase, process);
            for (int column = 0; column < planes.cellsAcross(); column++) {
                if (printed != null && printed.holds(column, row)) {
                    printed.paint(process.ground(), column, row, argb, offset, stride);
                } else {
                    painter.paint(column, row, argb, offset, stride);
                }
            }
            if (options.texture()) {
                texture(planes, model, row, argb, offset, stride);
            }
        });
    }

    private static void texture(InkPlanes planes, StackModel model, int cellRow, int[] argb, int offset, int stride) {
        Texture texture = model.stack().substrate().texture();
        if (texture.strength() == 0) {
            return;
        }
        double mmPerPx = Box.MM_PER_PT / planes.request().pxPerPt();
        int y0 = cellRow * InkPlanes.CELL_H;
        int y1 = Math.min(planes.height(), y0 + InkPlanes.CELL_H);
        for (int y = y0; y < y1; y++) {
            double yMm = (planes.request().y0() + y + 0.5) * mmPerPx;
            int at = offset + y * stride;
            for (int x = 0; x < planes.width(); x++) {
                double xMm = (planes.request().x0() + x + 0.5) * mmPerPx;
                argb[at + x] = Textures.shade(argb[at + x], Textures.factor(texture, xMm, yMm, mmPerPx));
            }
        }
    }

    /**
     * How much of the painted region an sRGB display cannot show as the inks will print it.
     *
     * @return share of the pixels, 0 to 1
     */
    public static double shareNotDisplayed(InkPlanes planes, StackModel model, Cancel cancel) {
        UnderbaseCoverage underbase = UnderbaseCoverage.of(planes, model);
        long outside = IntStream.range(0, planes.cellsDown())
                .parallel()
                .mapToLong(row -> {
                    cancel.check();
                    CellPainter painter = new CellPainter(planes, model, underbase, null);
                    long sum = 0;
                    for (int column = 0; column < planes.cellsAcross(); column++) {
                        sum += painter.countNotDisplayed(column, row);
                    }
                    return sum;
                })
                .sum();
        return (double) outside / ((double) planes.width() * planes.height());
    }

    /** Paints the cells of one thread. */
    private static final class CellPainter {
        private static final int PIXELS = InkPlanes.CELL_W * InkPlanes.CELL_H;

        private final InkPlanes planes;
        private final StackModel model;
        private final UnderbaseCoverage underbase;
        private final int words;
        private final ProcessGrid process; // null where process inks are not the first four on paper
        private final ProcessCell processCell;
        private final long[] base;
        private final long[] vectors;
        private final long[] one;
        private final ColourMemo memo;

        CellPainter(InkPlanes planes, StackModel model, UnderbaseCoverage underbase, ProcessGrid process) {
            this.planes = planes;
            this.model = model;
            this.underbase = underbase;
            this.words = model.words();
            this.process = process;
            this.processCell = new ProcessCell(planes);
            this.base = new long[words];
            this.vectors = new long[PIXELS * words];
            this.one = new long[words];
            this.memo = ColourMemo.of(model);
        }

        void paint(int column, int row, int[] argb, int offset, int stride) {
            int x0 = column * InkPlanes.CELL_W;
            int y0 = row * InkPlanes.CELL_H;
            int width = Math.min(InkPlanes.CELL_W, planes.width() - x0);
            int height = Math.min(InkPlanes.CELL_H, planes.height() - y0);
            if (processAlone(column, row)) {
                for (int y = 0; y < height; y++) {
                    process.paint(
                            processCell.tints(), y * InkPlanes.CELL_W, width, argb, offset + (y0 + y) * stride + x0);
                }
                return;
            }
            boolean uniform = gather(column, row);
            int only = uniform ? model.argb(base.clone()) : 0;
            for (int y = 0; y < height; y++) {
                int to = offset + (y0 + y) * stride + x0;
                if (uniform) {
                    Arrays.fill(argb, to, to + width, only);
                } else if (words == 1) {
                    paintRowOfOneWord(y * InkPlanes.CELL_W, width, argb, to);
                } else {
                    paintRow(y * InkPlanes.CELL_W, width, argb, to);
                }
            }
        }

        private boolean processAlone(int column, int row) {
            return process != null && underbase == null && processCell.gather(column, row, model::shows);
        }

        private void paintRowOfOneWord(int from, int width, int[] argb, int to) {
            long last = vectors[from];
            int colour = remembered(memo.slot(last), from);
            for (int x = 0; x < width; x++) {
                long vector = vectors[from + x];
                if (vector != last) {
                    colour = vector >>> 32 == 0 && process != null
                            ? process.argb(
                                    (int) vector & 255,
                                    (int) vector >> 8 & 255,
                                    (int) vector >> 16 & 255,
                                    (int) vector >>> 24)
                            : remembered(memo.slot(vector), from + x);
                    last = vector;
                }
                argb[to + x] = colour;
            }
        }

        private int remembered(int slot, int at) {
            int known = memo.colour(slot, vectors, at);
            return known != 0 ? known : memo.keep(slot, vectors, at, lookUp(at));
        }

        private void paintRow(int from, int width, int[] argb, int to) {
            int colour = 0;
            for (int x = 0; x < width; x++) {
                int at = (from + x) * words;
                boolean same = x > 0 && Arrays.equals(vectors, at, at + words, vectors, at - words, at);
                colour = same ? colour : remembered(memo.slot(vectors, at), at);
                argb[to + x] = colour;
            }
        }

        private int lookUp(int at) {
            System.arraycopy(vectors, at, one, 0, words);
            return model.argb(one);
        }

        long countNotDisplayed(int column, int row) {
            boolean uniform = gather(column, row);
            int width = Math.min(InkPlanes.CELL_W, planes.width() - column * InkPlanes.CELL_W);
            int height = Math.min(InkPlanes.CELL_H, planes.height() - row * InkPlanes.CELL_H);
            if (uniform) {
                return displayShows(base, 0) ? 0 : (long) width * height;
            }
            long sum = 0;
            for (int y = 0; y < height; y++) {
                boolean shows = true;
                for (int x = 0; x < width; x++) {
                    int at = (y * InkPlanes.CELL_W + x) * words;
                    boolean same = x > 0 && Arrays.equals(vectors, at, at + words, vectors, at - words, at);
                    shows = same ? shows : displayShows(vectors, at);
                    sum += shows ? 0 : 1;
                }
            }
            return sum;
        }

        private boolean displayShows(long[] from, int at) {
            int[] tints = new int[planes.inks().size() + (underbase == null ? 0 : 1)];
            for (int i = 0; i < tints.length; i++) {
                tints[i] = (int) (from[at + (i >> 3)] >>> 8 * (i & 7)) & 255;
            }
            return model.displayShows(tints);
        }

        /** Packs a cell's vectors; where it has only one, just {@link #base} is filled and true is returned. */
        private boolean gather(int column, int row) {
            Arrays.fill(base, 0);
            boolean uniform = true;
            int inks = planes.inks().size();
            for (int i = 0; i < inks; i++) {
                if (model.shows(i)) {
                    int value = planes.uniform(i, column, row);
                    uniform &= value >= 0;
                    put(base, i, Math.max(0, value));
                }
            }
            byte[] under = null;
            if (underbase != null) {
                int even = underbase.uniform(column, row);
                under = even < 0 ? underbase.cell(column, row) : null;
                if (under != null && uniformBytes(under)) {
                    even = under[0] & 255;
                    under = null;
                }
                put(base, inks, Math.max(0, even));
            }
            if (uniform && under == null) {
                return true;
            }
            if (words == 1) {
                Arrays.fill(vectors, base[0]);
            } else {
                for (int p = 0; p < PIXELS; p++) {
                    System.arraycopy(base, 0, vectors, p * words, words);
                }
            }
            for (int i = 0; i < inks; i++) {
                byte[] dense = model.shows(i) ? planes.dense(i, column, row) : null;
                if (dense != null) {
                    spread(dense, i);
                }
            }
            if (under != null) {
                spread(under, inks);
            }
            return false;
        }

        private static void put(long[] vector, int plane, int value) {
            vector[plane >> 3] |= (long) value << 8 * (plane & 7);
        }

        private void spread(byte[] dense, int plane) {
            int word = plane >> 3;
            int shift = 8 * (plane & 7);
            for (int p = 0; p < PIXELS; p++) {
                vectors[p * words + word] |= (dense[p] & 255L) << shift;
            }
        }

        private boolean uniformBytes(byte[] cell) {
            for (byte b : cell) {
                if (b != cell[0]) {
                    return false;
                }
            }
            return true;
        }
    }
}
