package inkground.plate;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;

/** Gives the ink planes of any region of one page. */
@FunctionalInterface
public interface PlaneSource {
    /** Rows that streaming holds at once. */
    int ROWS_AT_ONCE = 256;

    /**
     * @param request which region, at which scale
     * @throws Refusal if it is too large to hold, or an image of it cannot be read
     */
    InkPlanes planes(PlateRequest request, Cancel cancel) throws Refusal;

    /** @return the planes of a plate */
    static PlaneSource of(Plate plate) {
        return (request, cancel) -> plate.render(request, cancel, Progress.NONE);
    }

    /**
     * Hands over a region of any height in bands, from top to bottom, without ever holding all of it.
     *
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    default void stream(PlateRequest region, Cancel cancel, Progress progress, Plate.BandSink sink) throws Refusal {
        stream(region, 0, cancel, progress, sink);
    }

    /**
     * As {@link #stream(PlateRequest, Cancel, Progress, Plate.BandSink)}, for what depends on the surroundings.
     *
     * @param marginPx pixels that each band is larger on each side, 0 or more
     */
    default void stream(PlateRequest region, int marginPx, Cancel cancel, Progress progress, Plate.BandSink sink)
            throws Refusal {
        for (int y = region.y0(); y < region.y1(); y += ROWS_AT_ONCE) {
            cancel.check();
            progress.report("measuring", (double) (y - region.y0()) / region.height());
            PlateRequest band = region.part(region.x0(), y, region.x1(), Math.min(region.y1(), y + ROWS_AT_ONCE));
            sink.band(planes(band.grown(marginPx), cancel));
        }
        progress.report("measuring", 1);
    }
}
