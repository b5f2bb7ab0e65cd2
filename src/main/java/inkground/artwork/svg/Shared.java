package inkground.artwork.svg;

import inkground.base.Progress;
import inkground.geometry.Box;
import inkground.geometry.Matrix;

/** What all recorders of one page work with, and the count of what they recorded. */
final class Shared {
    private static final int REPORT_EVERY = 4096;

    final SvgContext context;
    final PartRaster raster;
    final Notes notes;
    final Box page;
    final Matrix pxToPage;
    private final Reading reading;
    private final Progress progress;
    private int ops;
    private int depth;

    Shared(Reading reading, SvgContext context, Box page, Matrix pxToPage, Progress progress) {
        this.reading = reading;
        this.context = context;
        this.raster = new PartRaster(reading);
        this.notes = reading.notes;
        this.page = page;
        this.pxToPage = pxToPage;
        this.progress = progress;
    }

    /** Counts one operation. @return its running number */
    int count() {
        reading.cancel.check();
        if (++ops > reading.limits.ops()) {
            throw reading.stop("has more than " + reading.limits.ops()
                    + " objects. Simplify the artwork or place its parts as images.");
        }
        if (ops % REPORT_EVERY == 0) {
            progress.report("reading " + reading.name, -1);
        }
        return ops;
    }

    void enter() {
        reading.cancel.check();
        if (++depth > reading.limits.nesting()) {
            throw reading.stop("nests groups, patterns and masks more than " + reading.limits.nesting()
                    + " deep. Ungroup the artwork.");
        }
    }

    void leave() {
        depth--;
    }
}
