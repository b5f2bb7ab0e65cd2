package inkground.findings;

import inkground.appearance.MapFigures;
import inkground.appearance.MapPattern;
import inkground.appearance.ProofMap;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlateRequest;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Where lines and gaps are too narrow, of any ink. Measured at the resolution that the widths need whatever the region's own is,
 * so a coarse view takes as long as a fine one; a pixel is marked if any part of it is too narrow. Areas are those of
 * {@link ThinFeatures}, since marked pixels would add up to more.
 */
public final class ThinMap implements ProofMap {
    /** Mark of a line that is too narrow. */
    public static final int LINE = 1;
    /** Mark of a gap that is too narrow, where no line is. */
    public static final int GAP = 2;

    private static final int ROWS_AT_ONCE = 512; // of the fine planes

    private final PlaneSource source;
    private final ThinFeatures.Limits limits;

    /**
     * @param source of the same planes that are marked
     * @param limits least widths
     */
    public ThinMap(PlaneSource source, ThinFeatures.Limits limits) {
        this.source = source;
        this.limits = limits;
    }

    @Override
    public String title() {
        return "Thin features";
    }

    @Override
    public List<Entry> legend() {
        return List.of(
                new Entry("wide enough", "No line or gap here is below its least width.", MapPattern.DIMMED),
                new Entry(
                        String.format(Locale.ROOT, "line below %.2f mm", limits.lineMm()),
                        "This line may break or not print at all.",
                        MapPattern.CHEQUERED),
                new Entry(
                        String.format(Locale.ROOT, "gap below %.2f mm", limits.gapMm()),
                        "This gap may fill with ink.",
                        MapPattern.UPRIGHT));
    }

    @Override
    public double mark(InkPlanes planes, byte[] marks, Cancel cancel) throws Refusal {
        PlateRequest own = planes.request();
        int finer = finer(own);
        int rows = Math.max(1, ROWS_AT_ONCE / finer);
        Arrays.fill(marks, 0, planes.width() * planes.height(), (byte) 0);
        for (int y = 0; y < planes.height(); y += rows) {
            cancel.check();
            int end = Math.min(planes.height(), y + rows);
            PlateRequest rowsOfIt = own.part(own.x0(), own.y0() + y, own.x1(), own.y0() + end);
            band(scaled(rowsOfIt, finer), finer, marks, y * planes.width(), planes.width(), cancel);
        }
        return Double.NaN;
    }

    private int finer(PlateRequest region) {
        return (int) Math.max(1, Math.ceil(ThinFeatures.dpi(limits) / 72 / region.pxPerPt()));
    }

    private static PlateRequest scaled(PlateRequest r, int finer) {
        return new PlateRequest(
                r.pxPerPt() * finer,
                r.x0() * finer,
                r.y0() * finer,
                r.x1() * finer,
                r.y1() * finer,
                r.overprint(),
                r.layersOn());
    }

    /** @return what is too narrow in a region, measured as finely as the widths need */
    public ThinFeatures features(PlaneSource from, PlateRequest region, Cancel cancel, Progress progress)
            throws Refusal {
        return ThinFeatures.of(from, scaled(region, finer(region)), limits, cancel, progress);
    }

    /** Marks and areas are measured apart: {@link ThinFeatures} tells places as well as areas, and more exactly than marks would. */
    @Override
    public MapFigures figures(PlaneSource from, PlateRequest region, MarkSink sink, Cancel cancel, Progress progress)
            throws Refusal {
        if (sink != MarkSink.NONE) {
            from.stream(region, cancel, progress, band -> {
                byte[] marks = new byte[band.width() * band.height()];
                mark(band, marks, cancel);
                sink.marked(band, marks, 0);
            });
        }
        return figures(features(from, region, cancel, progress), region);
    }

    /** @return the areas of what was found in a region */
    public static MapFigures figures(ThinFeatures found, PlateRequest region) {
        double cm2 = region.mmPerPx() * region.mmPerPx() / 100;
        double lines = found.lineCm2() / cm2;
        double gaps = found.gapCm2() / cm2;
        // Lines of several inks may lie on each other.
        double wide = Math.max(0, (double) region.width() * region.height() - lines - gaps);
        return new MapFigures(List.of(wide, lines, gaps), cm2, Double.NaN);
    }

    private void band(PlateRequest fine, int finer, byte[] marks, int offset, int stride, Cancel cancel)
            throws Refusal {
        int margin = ThinFeatures.marginPx(limits, fine);
        InkPlanes grown = source.planes(fine.grown(margin), cancel);
        ThinFeatures.scan(grown, limits, cancel, (ink, kind, scan) -> {
            byte entry = (byte) (kind == ThinFeatures.Kind.LINE ? LINE : GAP);
            scan.each((x, y, thin, widthPx, share) -> {
                if (thin && ThinFeatures.inside(x, y, grown.request(), margin)) {
                    int at = offset + (y - margin) / finer * stride + (x - margin) / finer;
                    if (marks[at] != LINE) {
                        marks[at] = entry;
                    }
                }
            });
        });
    }
}
