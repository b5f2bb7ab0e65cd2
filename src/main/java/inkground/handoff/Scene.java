package inkground.handoff;

import inkground.artwork.BlendMode;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.PageBox;
import inkground.artwork.Paint;
import inkground.artwork.Style;
import inkground.artwork.TextUse;
import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.handoff.Bareness.Share;
import inkground.plate.InkMapping;
import java.awt.geom.Area;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What one page paints, one after the other, and which of it is bare: which objects are to go, and which earlier ones each of
 * them has to be knocked out of.
 */
final class Scene {
    /** Area in square points that is none: rounding of curves that run along each other. */
    private static final double NOTHING_PT2 = 0.005;

    /**
     * One painting operation that is not a group.
     *
     * @param groups that it is in, outermost first
     * @param bounds box of all it can paint, page space
     * @param share how much of it is bare
     */
    record Leaf(Op op, List<Op.Group> groups, Box bounds, Share share) {
        /** @return whether nothing of it is painted any more */
        boolean gone() {
            return share == Share.ALL || share == Share.COVERED;
        }

        boolean bare() {
            return share == Share.ALL;
        }

        boolean partlyBare() {
            return share == Share.PART;
        }
    }

    private final Bareness bareness;
    private final BareShapes shapes;
    private final Set<Integer> layersOn;
    private final Box everything;
    private final Paint.Tiling tiling; // whose cell this is; null for a page
    private final Map<Paint.Tiling, Scene> cells;
    private final List<Leaf> leaves = new ArrayList<>();
    private final Map<Integer, Area> holes = new HashMap<>();

    /**
     * @param page what to call the page in messages
     * @throws Refusal if a bare colour is somewhere it cannot be taken out of
     */
    Scene(String page, DisplayList list, InkMapping mapping, Cancel cancel) throws Refusal {
        this(
                new Bareness(page, mapping, cancel),
                list.ops(),
                list.defaultLayers(),
                list.page().box(PageBox.MEDIA).grow(72),
                null,
                new IdentityHashMap<>());
    }

    private Scene(
            Bareness bareness,
            List<Op> ops,
            Set<Integer> layersOn,
            Box everything,
            Paint.Tiling tiling,
            Map<Paint.Tiling, Scene> cells)
            throws Refusal {
        this.bareness = bareness;
        this.shapes = new BareShapes(bareness, this::bareOfCell);
        this.layersOn = layersOn;
        this.everything = everything;
        this.tiling = tiling;
        this.cells = cells;
        add(ops, List.of());
        for (int k = 0; k < leaves.size(); k++) {
            if (leaves.get(k).share() != Share.NONE) {
                hole(k);
            }
        }
        for (int j = 0; j < leaves.size() && !holes.isEmpty(); j++) {
            if (covered(j)) {
                Leaf leaf = leaves.get(j);
                leaves.set(j, new Leaf(leaf.op(), leaf.groups(), leaf.bounds(), Share.COVERED));
            }
        }
    }

    /** Whether all that an object paints lies beneath one hole: clipped, it would leave a line where the edges meet. */
    private boolean covered(int j) {
        Leaf leaf = leaves.get(j);
        boolean shape = !leaf.op().origin().object().startsWith("glyph of ") // drawn glyphs stay as they are
                && (leaf.op() instanceof Op.Fill || leaf.op() instanceof Op.Stroke);
        if (leaf.share() != Share.NONE || !shape) {
            return false;
        }
        for (int hole : over(j)) {
            Box rest = Shapes.bounds(holes.get(hole)).grow(1);
            boolean inside = rest.intersect(leaf.bounds()).equals(leaf.bounds());
            if (inside && Shapes.size(Shapes.minus(Shapes.of(leaf.op()), holes.get(hole))) < NOTHING_PT2) {
                return true;
            }
        }
        return false;
    }

    /** @return what the cell of a pattern paints, at the origin */
    Scene cell(Paint.Tiling tiling) throws Refusal {
        Scene cell = cells.get(tiling);
        if (cell == null) {
            Box box = tiling.toPage().bounds(tiling.cellBox()).grow(72);
            cell = new Scene(bareness, tiling.cell(), layersOn, box, tiling, cells);
            cells.put(tiling, cell);
        }
        return cell;
    }

    private Area bareOfCell(Paint.Tiling tiling) throws Refusal {
        Area out = new Area();
        Scene cell = cell(tiling);
        for (Leaf leaf : cell.leaves) {
            if ((leaf.bare() || leaf.partlyBare())
                    && leaf.op().origin().visibility().shows(layersOn)) {
                cell.refuseUnlessPlain(leaf);
                out.add(cell.shapes.of(leaf.op()));
            }
        }
        return out;
    }

    private void add(List<Op> ops, List<Op.Group> groups) throws Refusal {
        for (Op op : ops) {
            if (op instanceof Op.Group group) {
                List<Op.Group> inner = new ArrayList<>(groups);
                inner.add(group);
                add(group.ops(), List.copyOf(inner));
            } else {
                Box bounds = op.clip() == null
                        ? op.bounds()
                        : op.bounds().intersect(op.clip().bounds());
                leaves.add(new Leaf(op, groups, bounds, bareness.of(op)));
            }
        }
    }

    /** Decides whether a bare object knocks out, and what. */
    private void hole(int k) throws Refusal {
        Leaf leaf = leaves.get(k);
        Op op = leaf.op();
        if (op.origin().object().contains("annotation ")) {
            throw refused("is inside an annotation", op);
        }
        boolean shows = op.origin().visibility().shows(layersOn);
        if (!shows || overprintsItsInk(op) || !anythingBeneath(k)) {
            return;
        }
        refuseUnlessPlain(leaf);
        Area area = shapes.of(op);
        if (!area.isEmpty()) {
            holes.put(k, tiling == null ? area : BareShapes.overEdges(area, tiling));
        }
    }

    /** Only what is opaque, and knocks out all that lies beneath, leaves a hole of a certain shape. */
    private void refuseUnlessPlain(Leaf leaf) throws Refusal {
        Op op = leaf.op();
        TextUse text = op instanceof Op.Fill fill ? fill.text() : op instanceof Op.Stroke stroke ? stroke.text() : null;
        if (text != null && !text.embedded()) {
            throw refused(
                    "is type in the font " + text.font() + ", which the file does not carry, over other paint", op);
        }
        if (op.style().overprint()) {
            throw refused("overprints other paint as a process colour", op);
        }
        if (!plain(op.style())) {
            throw refused("is transparent over other paint", op);
        }
        for (Op.Group group : leaf.groups()) {
            if (!plain(group.style()) || group.knockout()) {
                throw refused("is in a transparent or knock-out group over other paint", op);
            }
        }
    }

    /** An overprinting spot ink replaces nothing but itself. */
    private static boolean overprintsItsInk(Op op) {
        ColourSpace space = null;
        if (op instanceof Op.Image image) {
            space = image.image().space();
        } else if (Bareness.paint(op) instanceof Paint.Flat flat) {
            space = flat.colour().space();
        } else if (Bareness.paint(op) instanceof Paint.Shading shading) {
            space = shading.space();
        }
        return op.style().overprint()
                && (space instanceof ColourSpace.Separation || space instanceof ColourSpace.DeviceN);
    }

    private static boolean plain(Style style) {
        return style.alpha() == 1 && style.blend() == BlendMode.NORMAL && style.softMask() == null;
    }

    private boolean anythingBeneath(int k) {
        Box box = leaves.get(k).bounds();
        for (int j = 0; j < k; j++) {
            if (!leaves.get(j).bare() && !leaves.get(j).bounds().intersect(box).isEmpty()) {
                return true;
            }
        }
        return false;
    }

    Leaf leaf(int i) {
        return leaves.get(i);
    }

    int size() {
        return leaves.size();
    }

    /** @return number of objects that are bare in part or all */
    int bareObjects() {
        return (int)
                leaves.stream().filter(leaf -> leaf.bare() || leaf.partlyBare()).count();
    }

    /** @return number of bare objects that other paint is knocked out for */
    int knockOuts() {
        return holes.size();
    }

    /** @return the bare objects painted after leaf {@code j} that it has to be knocked out for */
    List<Integer> over(int j) {
        List<Integer> out = new ArrayList<>();
        for (Map.Entry<Integer, Area> hole : holes.entrySet()) {
            if (hole.getKey() > j
                    && !leaves.get(j)
                            .bounds()
                            .grow(0.01)
                            .intersect(Shapes.bounds(hole.getValue()))
                            .isEmpty()) {
                out.add(hole.getKey());
            }
        }
        out.sort(null);
        return out;
    }

    Area holeOf(int k) {
        return holes.get(k);
    }

    /** @return a box that holds all that can be painted on the page */
    Box everything() {
        return everything;
    }

    /** @return what is left of what is bare in part */
    Bareness bareness() {
        return bareness;
    }

    Refusal refused(String why, Op op) {
        return bareness.refused(why, op);
    }
}
