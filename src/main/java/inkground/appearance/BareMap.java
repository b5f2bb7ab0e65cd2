package inkground.appearance;

import inkground.geometry.Box;
import inkground.ink.InkKind;
import inkground.plate.InkPlanes;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Where no ink arrives, and why: the areas of each {@link Cover} in a region. A pixel is
 *
 * <ul>
 *   <li>inked, if any ink that is neither white nor technical has any tint;
 *   <li>else white ink, if white ink has any tint;
 *   <li>else unpainted, if less than half of it is marked;
 *   <li>else knocked out, if at least half of it was ever inked;
 *   <li>else white paint.
 * </ul>
 *
 * <p>Half a pixel is {@value #HALF} of 255: the faint rims that anti-aliasing leaves along edges decide nothing.
 *
 * @param pixels number of pixels of each cover
 * @param cm2PerPixel area of one pixel in cm²
 */
public record BareMap(Map<Cover, Long> pixels, double cm2PerPixel) {
    /** Coverage from which a pixel counts as marked or inked. */
    public static final int HALF = 128;

    /** Copies the map. */
    public BareMap {
        EnumMap<Cover, Long> copy = new EnumMap<>(Cover.class);
        for (Cover cover : Cover.values()) {
            copy.put(cover, pixels.getOrDefault(cover, 0L));
        }
        pixels = Collections.unmodifiableMap(copy);
    }

    /** @return number of pixels of a cover */
    public long pixels(Cover cover) {
        return pixels.get(cover);
    }

    /** @return area of a cover in cm² */
    public double cm2(Cover cover) {
        return pixels(cover) * cm2PerPixel;
    }

    /** @return the map of a region */
    public static BareMap of(InkPlanes planes) {
        long[] counts = IntStream.range(0, planes.cellsDown())
                .parallel()
                .mapToObj(row -> count(planes, row))
                .reduce(new long[Cover.values().length], BareMap::sum);
        EnumMap<Cover, Long> pixels = new EnumMap<>(Cover.class);
        for (Cover cover : Cover.values()) {
            pixels.put(cover, counts[cover.ordinal()]);
        }
        double cmPerPx = Box.MM_PER_PT / 10 / planes.request().pxPerPt();
        return new BareMap(pixels, cmPerPx * cmPerPx);
    }

    /** @return the cover of one pixel; x and y count from the region's own top left */
    public static Cover classify(InkPlanes planes, int x, int y) {
        boolean white = false;
        for (int i = 0; i < planes.inks().size(); i++) {
            InkKind kind = planes.inks().get(i).kind();
            if (kind != InkKind.TECHNICAL && planes.get(i, x, y) > 0) {
                if (kind != InkKind.WHITE) {
                    return Cover.INKED;
                }
                white = true;
            }
        }
        return withoutColour(white, planes.get(planes.markPlane(), x, y), planes.get(planes.inkedPlane(), x, y));
    }

    private static Cover withoutColour(boolean white, int mark, int inked) {
        if (white) {
            return Cover.WHITE_INK;
        } else if (mark < HALF) {
            return Cover.UNPAINTED;
        }
        return inked >= HALF ? Cover.KNOCKED_OUT : Cover.WHITE_PAINT;
    }

    /**
     * Paints the map: each cover has its own pattern as well as its own colour, so that it reads without colour.
     *
     * @param argb receives opaque sRGB pixels
     * @param offset index of the top left pixel
     * @param stride pixels from one row to the next
     */
    public static void paint(InkPlanes planes, int[] argb, int offset, int stride) {
        IntStream.range(0, planes.cellsDown()).parallel().forEach(row -> {
            byte[] covers = new byte[InkPlanes.CELL_W * InkPlanes.CELL_H];
            for (int column = 0; column < planes.cellsAcross(); column++) {
                classifyCell(planes, column, row, covers);
                int x0 = column * InkPlanes.CELL_W;
                int y0 = row * InkPlanes.CELL_H;
                int width = Math.min(InkPlanes.CELL_W, planes.width() - x0);
                int height = Math.min(InkPlanes.CELL_H, planes.height() - y0);
                for (int y = 0; y < height; y++) {
                    for (int x = 0; x < width; x++) {
                        argb[offset + (y0 + y) * stride + x0 + x] = CoverPattern.argb(
                                COVERS[covers[y * InkPlanes.CELL_W + x]],
                                planes.request().x0() + x0 + x,
                                planes.request().y0() + y0 + y);
                    }
                }
            }
        });
    }

    /** @return the colour of a cover's pattern at a device pixel, for legends; opaque sRGB */
    public static int patternArgb(Cover cover, int xPx, int yPx) {
        return CoverPattern.argb(cover, xPx, yPx);
    }

    private static final Cover[] COVERS = Cover.values();

    private static long[] sum(long[] a, long[] b) {
        long[] out = a.clone();
        for (int i = 0; i < out.length; i++) {
            out[i] += b[i];
        }
        return out;
    }

    private static long[] count(InkPlanes planes, int row) {
        long[] counts = new long[COVERS.length];
        byte[] covers = new byte[InkPlanes.CELL_W * InkPlanes.CELL_H];
        int height = Math.min(InkPlanes.CELL_H, planes.height() - row * InkPlanes.CELL_H);
        for (int column = 0; column < planes.cellsAcross(); column++) {
            int width = Math.min(InkPlanes.CELL_W, planes.width() - column * InkPlanes.CELL_W);
            classifyCell(planes, column, row, covers);
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    counts[covers[y * InkPlanes.CELL_W + x]]++;
                }
            }
        }
        return counts;
    }

    private static void classifyCell(InkPlanes planes, int column, int row, byte[] covers) {
        boolean[] coloured = new boolean[covers.length];
        boolean[] white = new boolean[covers.length];
        for (int i = 0; i < planes.inks().size(); i++) {
            InkKind kind = planes.inks().get(i).kind();
            if (kind != InkKind.TECHNICAL) {
                markPrinted(planes, i, column, row, kind == InkKind.WHITE ? white : coloured);
            }
        }
        byte[] mark = planes.dense(planes.markPlane(), column, row);
        int markAll = planes.uniform(planes.markPlane(), column, row);
        byte[] inked = planes.dense(planes.inkedPlane(), column, row);
        int inkedAll = planes.uniform(planes.inkedPlane(), column, row);
        for (int p = 0; p < covers.length; p++) {
            Cover cover = coloured[p]
                    ? Cover.INKED
                    : withoutColour(
                            white[p],
                            mark == null ? markAll : mark[p] & 255,
                            inked == null ? inkedAll : inked[p] & 255);
            covers[p] = (byte) cover.ordinal();
        }
    }

    private static void markPrinted(InkPlanes planes, int plane, int column, int row, boolean[] printed) {
        byte[] dense = planes.dense(plane, column, row);
        if (dense == null) {
            if (planes.uniform(plane, column, row) > 0) {
                java.util.Arrays.fill(printed, true);
            }
            return;
        }
        for (int p = 0; p < printed.length; p++) {
            printed[p] |= dense[p] != 0;
        }
    }
}
