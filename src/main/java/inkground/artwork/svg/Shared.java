package inkground.artwork.svg;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.geometry.Matrix;

/** What all recorders of one page work with, and the count of what they recorded. */
final class Shared {
    private static final int REPORT_EVERY = 4096;

    final String name;
    final SvgContext context;
    final PartRaster raster;
    final Notes notes;
    final Box page;
    final Matrix pxToPage;
    private final Limits limits;
    private final Cancel cancel;
    private final Progress progress;
    private int ops;
    private int depth;

    Shared(
            String name,
            SvgContext context,
            Notes notes,
            Box page,
            Matrix pxToPage,
            Limits limits,
            Cancel cancel,
            Progress progress) {
        this.name = name;
        this.context = context;
        this.raster = new PartRaster(name, limits, cancel);
        this.notes = notes;
        this.page = page;
        this.pxToPage = pxToPage;
        this.limits = limits;
        this.cancel = cancel;
        this.progress = progress;
    }

    /** Counts one operation. @return its running number */
    int count() {
        cancel.check();
        if (++ops > limits.ops()) {
            throw new Stopped(new Refusal(name + " has more than " + limits.ops()
                    + " objects. Simplify the artwork or place its parts as images."));
        }
        if (ops % REPORT_EVERY == 0) {
            progress.report("reading " + name, -1);
        }
        return ops;
    }

    /** @return how many more operations there may be */
    int left() {
        return limits.ops() - ops;
    }

    void enter() {
        cancel.check();
        if (++depth > limits.nesting()) {
            throw new Stopped(new Refusal(name + " nests groups, patterns and masks more than " + limits.nesting()
                    + " deep. Ungroup the artwork."));
        }
    }

    void leave() {
        depth--;
    }
}
