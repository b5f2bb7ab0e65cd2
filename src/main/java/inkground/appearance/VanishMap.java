package inkground.appearance;

import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.colour.Cie;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlateRequest;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Which edges of the artwork vanish on a stack and which stay: what {@link VanishScore} counts, drawn. */
public final class VanishMap implements ProofMap {
    /** Mark of pixels at an edge that keeps its contrast. */
    public static final int KEPT = 1;
    /** Mark of pixels at an edge that loses more than half of what it needs. */
    public static final int LOST = 2;

    private static final int PEN_PX = 1;
    private static final List<Entry> LEGEND = List.of(
            new Entry("no edge", "No two inks meet here.", MapPattern.DIMMED),
            new Entry("edge stays", "The two sides are told apart on this substrate.", MapPattern.CLEAR),
            new Entry(
                    "edge vanishes",
                    "The two sides run into one on this substrate; the artwork means them to differ.",
                    MapPattern.CHEQUERED));

    private final PlaneSource source;
    private final StackModel model;
    private final AskedColours asked;

    /**
     * @param source of the same planes that are marked: an edge at the rim of a region depends on what lies beyond
     * @param model the stack
     */
    public VanishMap(PlaneSource source, StackModel model) {
        this.source = source;
        this.model = model;
        this.asked = AskedColours.of(model);
    }

    @Override
    public String title() {
        return "Vanishing edges";
    }

    @Override
    public List<Entry> legend() {
        return LEGEND;
    }

    @Override
    public List<Integer> findings() {
        return List.of(LOST);
    }

    @Override
    public double mark(InkPlanes planes, byte[] marks, Cancel cancel) throws Refusal {
        int margin = EdgeWalk.MARGIN_PX;
        PlateRequest request = planes.request().grown(margin);
        EdgeWalk walk = new EdgeWalk(planes.inks().size());
        walk.read(source.planes(request, cancel));
        cancel.check();
        java.util.Arrays.fill(marks, 0, planes.width() * planes.height(), (byte) 0);
        Map<Long, Integer> entries = new HashMap<>();
        walk.walk(edge -> {
            int entry = entries.computeIfAbsent(
                    (long) edge.from() << 32 | edge.to(), key -> entry(walk, edge.from(), edge.to()));
            if (entry != 0) {
                int far = PEN_PX + margin;
                draw(
                        planes,
                        marks,
                        edge.x() - far,
                        edge.y() - far,
                        edge.endX() + PEN_PX - margin,
                        edge.endY() + PEN_PX - margin,
                        (byte) entry);
            }
        });
        return Double.NaN;
    }

    private int entry(EdgeWalk walk, int a, int b) {
        int[] one = walk.vectors().get(a);
        int[] other = walk.vectors().get(b);
        if (asked.contrast(one, other) < ArtworkEdges.CLEAR_DE00) {
            return 0;
        }
        double here = Cie.deltaE00(AskedColours.lab(model, one), AskedColours.lab(model, other));
        return VanishScore.loss(here) > 0.5 ? LOST : KEPT;
    }

    private static void draw(InkPlanes planes, byte[] marks, int x0, int y0, int x1, int y1, byte entry) {
        for (int y = Math.max(0, y0); y <= Math.min(planes.height() - 1, y1); y++) {
            for (int x = Math.max(0, x0); x <= Math.min(planes.width() - 1, x1); x++) {
                int at = y * planes.width() + x;
                marks[at] = (byte) Math.max(marks[at], entry);
            }
        }
    }
}
