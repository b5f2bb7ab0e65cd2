package inkground.findings;

import inkground.appearance.MapPattern;
import inkground.appearance.ProofMap;
import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlateRequest;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Where lines and gaps are too narrow, of any ink. Measured at the resolution that the widths need whatever the region's own is,
 * so a coarse view takes as long as a fine one; a pixel is marked if any part of it is too narrow. For areas and widths
 * ask {@link ThinFeatures}: this map's own areas grow with its pixels.
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
        int finer = (int) Math.max(1, Math.ceil(ThinFeatures.dpi(limits) / 72 / own.pxPerPt()));
        int rows = Math.max(1, ROWS_AT_ONCE / finer);
        Arrays.fill(marks, 0, planes.width() * planes.height(), (byte) 0);
        for (int y = 0; y < planes.height(); y += rows) {
            cancel.check();
            int end = Math.min(planes.height(), y + rows);
            PlateRequest fine = new PlateRequest(
                    own.pxPerPt() * finer,
                    own.x0() * finer,
                    (own.y0() + y) * finer,
                    own.x1() * finer,
                    (own.y0() + end) * finer,
                    own.overprint(),
                    own.layersOn());
            band(fine, finer, marks, y * planes.width(), planes.width(), cancel);
        }
        return Double.NaN;
    }

    private void band(PlateRequest fine, int finer, byte[] marks, int offset, int stride, Cancel cancel)
            throws Refusal {
        int margin = ThinFeatures.marginPx(limits, fine);
        InkPlanes grown = source.planes(fine.grown(margin), cancel);
        ThinFeatures.scan(grown, limits, cancel, (ink, kind, scan, widths) -> {
            byte entry = (byte) (kind == ThinFeatures.Kind.LINE ? LINE : GAP);
            for (int y = 0; y < fine.height(); y++) {
                for (int x = 0; x < fine.width(); x++) {
                    int at = offset + y / finer * stride + x / finer;
                    if (widths[(y + margin) * grown.width() + x + margin] > 0 && marks[at] != LINE) {
                        marks[at] = entry;
                    }
                }
            }
        });
    }
}
