package inkground.appearance;

import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.ink.InkKind;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.Register;
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

    @Override
    public double mark(InkPlanes planes, byte[] marks, Cancel cancel) throws Refusal {
        double furthest = 0;
        for (int i = 0; i < dxMm.length; i++) {
            furthest = Math.max(furthest, Math.hypot(dxMm[i], dyMm[i]));
        }
        int margin = (int) Math.ceil(2 * furthest / planes.request().mmPerPx()) + 3;
        var grown = planes.request().grown(margin);
        Moved moved = new Moved(
                source.planes(grown, cancel), Register.shifted(source, grown, dxMm, dyMm, cancel), dxMm, dyMm);
        for (int y = 0; y < planes.height(); y++) {
            cancel.check();
            for (int x = 0; x < planes.width(); x++) {
                marks[y * planes.width() + x] = (byte) moved.entry(x + margin, y + margin);
            }
        }
        return Double.NaN;
    }

    /** Both states of a region. */
    private record Moved(InkPlanes before, InkPlanes after, double[] dxMm, double[] dyMm) {
        int entry(int x, int y) {
            if (!covered(before, x, y) || covered(after, x, y)) {
                return 0;
            }
            for (int i = 0; i < dxMm.length; i++) {
                double length = Math.hypot(dxMm[i], dyMm[i]) / before.request().mmPerPx();
                if (length > 0 && before.get(i, x, y) > 0 && between(x, y, i, length)) {
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
            for (double t = 0.5; t <= reach; t += 0.5) {
                if (covered(after, (int) Math.round(x + t * ux), (int) Math.round(y + t * uy))) {
                    return true;
                }
            }
            return false;
        }

        private static boolean covered(InkPlanes planes, int x, int y) {
            if (planes.get(planes.laidPlane(), x, y) < HALF) {
                return false;
            }
            for (int i = 0; i < planes.inks().size(); i++) {
                if (planes.inks().get(i).kind() != InkKind.TECHNICAL && planes.get(i, x, y) > 0) {
                    return true;
                }
            }
            return false;
        }
    }
}
