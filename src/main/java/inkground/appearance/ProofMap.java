package inkground.appearance;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlateRequest;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A map laid over a proof: every pixel gets one entry of the legend, whose pattern is drawn over the proof and whose area is
 * measured. Thread-safe.
 */
public interface ProofMap {
    /** @return what the map shows, a few words */
    String title();

    /** @return the entries in the order of their marks; the first is where there is nothing to show */
    List<Entry> legend();

    /**
     * Marks the pixels of a region.
     *
     * @param planes of the inks the map was made for
     * @param marks receives the index of an entry for each pixel, row by row; at least width × height long
     * @return the largest value that the map measures in the region, in the unit of {@link #unit}; NaN for a map that measures
     *     none
     * @throws Refusal if planes beyond the region are needed and cannot be had
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    double mark(InkPlanes planes, byte[] marks, Cancel cancel) throws Refusal;

    /**
     * @return all planes that decide about the marks of a region, each of its size and of the same inks: its own, and those that it
     *     is compared with
     * @throws Refusal if they cannot be had
     */
    default List<InkPlanes> deciding(InkPlanes planes, Cancel cancel) throws Refusal {
        return List.of(planes);
    }

    /** @return the unit of the largest value, such as {@code %} or {@code ΔE00}; empty for a map that measures none */
    default String unit() {
        return "";
    }

    /**
     * One line of the legend.
     *
     * @param word a word or two
     * @param explanation one sentence for a tool tip
     * @param pattern how it is drawn
     */
    record Entry(String word, String explanation, MapPattern pattern) {}

    /** @return indices of the entries whose places are to be looked at; all but the first, unless a map says otherwise */
    default List<Integer> findings() {
        return IntStream.range(1, legend().size()).boxed().toList();
    }

    /**
     * Draws the map over a proof.
     *
     * @param argb holds the proof's pixels, opaque sRGB, and receives the map's
     * @param offset index of the top left pixel
     * @param stride pixels from one row to the next
     */
    default void paint(InkPlanes planes, int[] argb, int offset, int stride, Cancel cancel) throws Refusal {
        byte[] marks = new byte[planes.width() * planes.height()];
        mark(planes, marks, cancel);
        draw(planes, marks, argb, offset, stride);
    }

    /** Draws marks that are known over a proof; as {@link #paint}. */
    default void draw(InkPlanes planes, byte[] marks, int[] argb, int offset, int stride) {
        MapPattern[] patterns = legend().stream().map(Entry::pattern).toArray(MapPattern[]::new);
        int width = planes.width();
        IntStream.range(0, planes.height()).parallel().forEach(y -> {
            for (int x = 0; x < width; x++) {
                int at = offset + y * stride + x;
                argb[at] = patterns[marks[y * width + x]].argb(
                        argb[at], planes.request().x0() + x, planes.request().y0() + y);
            }
        });
    }

    /**
     * Measures a region of any size, band by band. Pixels along edges are shared out by what is covered of them, so that areas are
     * right within 0.5 % from 8 mm at 150 dpi, at any angle; where tone is soft the limit is met to a pixel. The largest value is
     * that of the region and of one pixel around it.
     *
     * @param source planes of the inks the map was made for
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    default MapFigures figures(PlaneSource source, PlateRequest region, Cancel cancel, Progress progress)
            throws Refusal {
        return figures(source, region, MarkSink.NONE, cancel, progress);
    }

    /** Receives the marks of a region while it is measured, so that it need not be rasterised again for them. */
    @FunctionalInterface
    interface MarkSink {
        /** Wants none. */
        MarkSink NONE = (band, marks, marginPx) -> {};

        /**
         * @param band the planes of a part, from top to bottom
         * @param marks of the part as {@link ProofMap#mark} gives them; valid during the call
         * @param marginPx pixels on each side of the planes that belong to other parts
         */
        void marked(InkPlanes band, byte[] marks, int marginPx);
    }

    /** As {@link #figures(PlaneSource, PlateRequest, Cancel, Progress)}, and hands over the marks that were measured. */
    default MapFigures figures(PlaneSource source, PlateRequest region, MarkSink sink, Cancel cancel, Progress progress)
            throws Refusal {
        MapAreas areas = new MapAreas(this, sink);
        source.stream(region, 1, cancel, progress, band -> areas.add(band, cancel));
        return areas.figures();
    }
}
