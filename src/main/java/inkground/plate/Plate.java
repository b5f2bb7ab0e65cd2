package inkground.plate;

import inkground.artwork.Approximation;
import inkground.artwork.DisplayList;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * One page, ready to be rasterised into ink planes at any scale. Thread-safe; the planes of a pixel depend on nothing but
 * the page, the scale and the options, so that regions asked for one by one fit together exactly.
 */
public final class Plate {
    /** Most pixels in memory at once: planes beyond this are streamed to a file, not held. */
    public static final long MOST_PIXELS = 400_000_000L;

    private final DisplayList list;
    private final InkMapping mapping;
    private final LuminosityMapping luminosity;
    private final ImageCache images = new ImageCache();
    private final Set<Approximation> approximations = Collections.synchronizedSet(new LinkedHashSet<>());
    private Prepared last;

    private record Prepared(double pxPerPt, boolean overprint, Set<Integer> layersOn, PreparedList list) {
        boolean fits(PlateRequest r) {
            return pxPerPt == r.pxPerPt() && overprint == r.overprint() && layersOn.equals(r.layersOn());
        }
    }

    /** Receives finished bands, top to bottom. */
    @FunctionalInterface
    public interface BandSink {
        /**
         * @param band planes of the next rows; its request tells which
         */
        void band(InkPlanes band) throws Refusal;
    }

    /**
     * @param list what the page paints
     * @param mapping which inks its colours print with
     */
    public Plate(DisplayList list, InkMapping mapping) {
        this.list = list;
        this.mapping = mapping;
        this.luminosity = new LuminosityMapping(new ColourReader(mapping.condition()));
        approximations.addAll(list.approximations());
    }

    /** @return the page's operations */
    public DisplayList list() {
        return list;
    }

    /** @return the inks and how colours reach them */
    public InkMapping mapping() {
        return mapping;
    }

    /** @return what is not exact, as far as rasterising has shown; complete after the first rendering */
    public List<Approximation> approximations() {
        synchronized (approximations) {
            return List.copyOf(approximations);
        }
    }

    /**
     * Rasterises a region.
     *
     * @throws Refusal if it is too large to hold, or an image of it cannot be read
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    public InkPlanes render(PlateRequest request, Cancel cancel, Progress progress) throws Refusal {
        if ((long) request.width() * request.height() > MOST_PIXELS) {
            throw new Refusal("The region is " + request.width() + " × " + request.height()
                    + " pixels, more than this program holds at once; ask for a lower resolution or a smaller box.");
        }
        PreparedList prepared = prepared(request, cancel);
        progress.report("painting", 0);
        InkPlanes.Cell[] cells = cells(prepared, request, cancel, progress);
        return new InkPlanes(mapping.inks(), request, cells);
    }

    /**
     * Rasterises a region of any height in bands, without ever holding all of it.
     *
     * @param rowsAtOnce rows handed over together, rounded up to whole cells
     * @param sink gets the bands from top to bottom, on the calling thread
     */
    public void stream(PlateRequest request, int rowsAtOnce, Cancel cancel, Progress progress, BandSink sink)
            throws Refusal {
        PreparedList prepared = prepared(request, cancel);
        int step = Math.max(1, (rowsAtOnce + InkPlanes.CELL_H - 1) / InkPlanes.CELL_H) * InkPlanes.CELL_H;
        for (int y = request.y0(); y < request.y1(); y += step) {
            progress.report("painting", (double) (y - request.y0()) / request.height());
            PlateRequest part = request.part(request.x0(), y, request.x1(), Math.min(request.y1(), y + step));
            InkPlanes.Cell[] cells = cells(prepared, part, cancel, Progress.NONE);
            sink.band(new InkPlanes(mapping.inks(), part, cells));
        }
        progress.report("painting", 1);
    }

    private InkPlanes.Cell[] cells(PreparedList prepared, PlateRequest region, Cancel cancel, Progress progress) {
        InkPlanes.Cell[] cells = Bands.paint(prepared, mapping.tintPlanes(), region, cancel, progress);
        if (mapping.tintPlanes() > mapping.inkPlanes()) {
            BareFold.fold(cells, mapping.inkPlanes());
        }
        return cells;
    }

    /** Brings the page to a scale; the last result is kept, since a viewer asks for many regions at one scale. */
    private synchronized PreparedList prepared(PlateRequest request, Cancel cancel) throws Refusal {
        if (last == null || !last.fits(request)) {
            PreparedList made =
                    new Preparation(request, mapping, luminosity, images, cancel, approximations).page(list);
            last = new Prepared(request.pxPerPt(), request.overprint(), request.layersOn(), made);
        }
        return last.list;
    }
}
