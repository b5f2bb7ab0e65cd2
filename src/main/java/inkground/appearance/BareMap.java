package inkground.appearance;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.ink.InkKind;
import inkground.ink.InkSet;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlateRequest;
import java.util.Arrays;
import java.util.List;

/**
 * Where no ink arrives, and why: one entry for each {@link Cover}, in its order. Drawn in place of the proof. A pixel is
 *
 * <ul>
 *   <li>inked, if any ink that is neither white nor technical has any tint;
 *   <li>else white ink, if white ink has any tint;
 *   <li>else unpainted, if less than half of it is marked;
 *   <li>else knocked out, if at least half of it was ever inked;
 *   <li>else white paint.
 * </ul>
 *
 * <p>So it is drawn; areas count of a pixel on an edge what is covered.
 *
 * <p>Half a pixel is {@value #HALF} of 255: the faint rims that anti-aliasing leaves along edges decide nothing.
 */
public final class BareMap extends VectorMap {
    /** Coverage from which a pixel counts as marked or inked. */
    public static final int HALF = 128;

    private static final List<Entry> LEGEND = Arrays.stream(Cover.values())
            .map(cover ->
                    new Entry(cover.label(), cover.explanation(), (under, x, y) -> CoverPattern.argb(cover, x, y)))
            .toList();

    private final InkSet inks;

    /** @param inks of the planes */
    public BareMap(InkSet inks) {
        this.inks = inks;
    }

    @Override
    public String title() {
        return "Bare map";
    }

    @Override
    public List<Entry> legend() {
        return LEGEND;
    }

    /** White paint alone: it looks white on a screen and prints nothing. */
    @Override
    public List<Integer> findings() {
        return List.of(Cover.WHITE_PAINT.ordinal());
    }

    /** @return the cover of one pixel; x and y count from the region's own top left */
    public static Cover classify(InkPlanes planes, int x, int y) {
        int[] vector = new int[planes.planes()];
        for (int p = 0; p < vector.length; p++) {
            vector[p] = planes.get(p, x, y);
        }
        return classify(planes.inks(), vector);
    }

    private static Cover classify(InkSet inks, int[] vector) {
        boolean white = false;
        for (int i = 0; i < inks.size(); i++) {
            InkKind kind = inks.get(i).kind();
            if (kind != InkKind.TECHNICAL && vector[i] > 0) {
                if (kind != InkKind.WHITE) {
                    return Cover.INKED;
                }
                white = true;
            }
        }
        if (white) {
            return Cover.WHITE_INK;
        } else if (vector[inks.size()] < HALF) {
            return Cover.UNPAINTED;
        }
        return vector[inks.size() + 1] >= HALF ? Cover.KNOCKED_OUT : Cover.WHITE_PAINT;
    }

    /** Measures with the pixels along edges shared out by what is covered of them, right within 0.5 % from 5 mm at 150 dpi. */
    @Override
    public MapFigures figures(PlaneSource source, PlateRequest region, MarkSink sink, Cancel cancel, Progress progress)
            throws Refusal {
        CoverAreas areas = new CoverAreas(this, sink);
        source.stream(region, 1, cancel, progress, band -> areas.add(band, cancel));
        return new MapFigures(
                Arrays.stream(areas.pixels()).boxed().toList(), MapFigures.cm2PerPixel(region), Double.NaN);
    }

    @Override
    double value(int[] vector) {
        return classify(inks, vector).ordinal();
    }

    @Override
    int entryOf(double value) {
        return (int) value;
    }
}
