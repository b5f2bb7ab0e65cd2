package inkground.appearance;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.ink.InkKind;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlateRequest;
import inkground.plate.Register;
import java.util.Arrays;
import java.util.List;

/**
 * Where the substrate shows that ink covered in register, once each ink has moved: slivers between inks, and rims that an ink
 * has left on open ground. A place counts as covered if at least half of it is. For the moved planes themselves
 * see {@link Register}.
 */
public final class RegisterMap implements ProofMap {
    /** Mark of a sliver: bare now, with ink on both sides of the way that the missing ink has moved. */
    public static final int SLIVER = 1;
    /** Mark of what an ink has left on open ground. */
    public static final int LEFT = 2;

    private static final int HALF = 128;
    private static final List<Entry> LEGEND = List.of(
            new Entry("as before", "Nothing that was covered has become bare.", MapPattern.DIMMED),
            new Entry("sliver", "The substrate shows between two inks that met in register.", MapPattern.CHEQUERED),
            new Entry("moved away", "An ink has moved off open ground.", MapPattern.RISING));

    private final PlaneSource source;
    private final double[] dxMm;
    private final double[] dyMm;

    /**
     * @param source of the planes that are marked, in register
     * @param dxMm how far each ink moves to the right, in mm, in plane order
     * @param dyMm how far each ink moves down
     */
    public RegisterMap(PlaneSource source, double[] dxMm, double[] dyMm) {
        this.source = source;
        this.dxMm = dxMm.clone();
        this.dyMm = dyMm.clone();
    }

    @Override
    public String title() {
        return "Registration play";
    }

    @Override
    public List<Entry> legend() {
        return LEGEND;
    }

    /** The rim that every moved ink leaves is no finding: it runs along all edges. */
    @Override
    public List<Integer> findings() {
        return List.of(SLIVER);
    }

    @Override
    public double mark(InkPlanes planes, byte[] marks, Cancel cancel) throws Refusal {
        mark(moved(planes.request(), cancel), planes, marks, cancel);
        return Double.NaN;
    }

    private static void mark(Moved moved, InkPlanes planes, byte[] marks, Cancel cancel) {
        for (int y = 0; y < planes.height(); y++) {
            cancel.check();
            for (int x = 0; x < planes.width(); x++) {
                marks[y * planes.width() + x] = (byte) moved.entry(x, y);
            }
        }
    }

    /**
     * Measures what has become bare of each pixel, so that slivers narrower than a pixel count by their width. A sliver of 0.4 mm
     * is right within 0.5 % at 150 dpi, one of 0.2 mm within 1 %, one of 0.05 mm within 3 %.
     */
    @Override
    public MapFigures figures(PlaneSource from, PlateRequest region, MarkSink sink, Cancel cancel, Progress progress)
            throws Refusal {
        double[] pixels = new double[LEGEND.size()];
        from.stream(region, cancel, progress, band -> {
            Moved moved = moved(band.request(), cancel);
            byte[] marks = new byte[band.width() * band.height()];
            mark(moved, band, marks, cancel);
            sink.marked(band, marks, 0);
            for (int y = 0; y < band.height(); y++) {
                cancel.check();
                for (int x = 0; x < band.width(); x++) {
                    double bared = moved.bared(x, y);
                    pixels[0] += 1 - bared;
                    if (bared > 0) {
                        pixels[moved.kind(x, y)] += bared;
                    }
                }
            }
        });
        return new MapFigures(Arrays.stream(pixels).boxed().toList(), MapFigures.cm2PerPixel(region), Double.NaN);
    }

    private Moved moved(PlateRequest request, Cancel cancel) throws Refusal {
        double furthest = 0;
        for (int i = 0; i < dxMm.length; i++) {
            furthest = Math.max(furthest, Math.hypot(dxMm[i], dyMm[i]));
        }
        int margin = (int) Math.ceil(2 * furthest / request.mmPerPx()) + 3;
        PlateRequest grown = request.grown(margin);
        InkPlanes after = Register.shifted(source, grown, dxMm, dyMm, cancel);
        return new Moved(source.planes(grown, cancel), after, margin, dxMm, dyMm);
    }

    /** Both states of a region and its margin; x and y count from the region's own top left. */
    private record Moved(InkPlanes before, InkPlanes after, int margin, double[] dxMm, double[] dyMm) {
        int entry(int x, int y) {
            boolean bared = covered(before, x, y) >= HALF && covered(after, x, y) < HALF;
            return bared ? kind(x, y) : 0;
        }

        /** What part of a pixel has become bare, 0 to 1. */
        double bared(int x, int y) {
            return Math.max(0, covered(before, x, y) - covered(after, x, y)) / 255.0;
        }

        int kind(int x, int y) {
            for (int i = 0; i < dxMm.length; i++) {
                double length = Math.hypot(dxMm[i], dyMm[i]) / before.request().mmPerPx();
                if (length > 0 && before.get(i, x + margin, y + margin) > 0 && between(x, y, i, length)) {
                    return SLIVER;
                }
            }
            return LEFT;
        }

        /** Whether ink lies within reach on both sides, along the way an ink has moved. */
        private boolean between(int x, int y, int ink, double length) {
            double ux = dxMm[ink] / before.request().mmPerPx() / length;
            double uy = dyMm[ink] / before.request().mmPerPx() / length;
            return meets(x, y, ux, uy, length + 1.5) && meets(x, y, -ux, -uy, length + 1.5);
        }

        private boolean meets(int x, int y, double ux, double uy, double reach) {
            int enough =
                    covered(before, x, y) / 2; // at the end of a sliver less than half of a pixel may be inked at all
            for (double t = 0.5; t <= reach; t += 0.5) {
                if (covered(after, (int) Math.round(x + t * ux), (int) Math.round(y + t * uy)) >= enough) {
                    return true;
                }
            }
            return false;
        }

        /** What ink covers of a pixel, 0 to 255. */
        private int covered(InkPlanes planes, int x, int y) {
            for (int i = 0; i < planes.inks().size(); i++) {
                if (planes.inks().get(i).kind() != InkKind.TECHNICAL && planes.get(i, x + margin, y + margin) > 0) {
                    return planes.get(planes.laidPlane(), x + margin, y + margin);
                }
            }
            return 0;
        }
    }
}
