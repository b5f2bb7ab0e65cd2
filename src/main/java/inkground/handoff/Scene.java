package inkground.handoff;

import inkground.artwork.BlendMode;
import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.ImageSource;
import inkground.artwork.Op;
import inkground.artwork.PageBox;
import inkground.artwork.Paint;
import inkground.artwork.Style;
import inkground.artwork.TextUse;
import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.plate.InkMapping;
import java.awt.geom.Area;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What one page paints, one after the other, and which of it is bare: which objects are to go, and which earlier ones each of
 * them has to be knocked out of.
 */
final class Scene {
    private static final int GRADIENT_STEPS = 256;

    /**
     * One painting operation that is not a group.
     *
     * @param groups that it is in, outermost first
     * @param bounds box of all it can paint, page space
     */
    record Leaf(Op op, List<Op.Group> groups, Box bounds, boolean bare) {}

    private final String page;
    private final InkMapping mapping;
    private final Set<Integer> layersOn;
    private final Cancel cancel;
    private final Box everything;
    private final List<Leaf> leaves = new ArrayList<>();
    private final Map<Integer, Area> holes = new HashMap<>();

    /**
     * @param page what to call the page in messages
     * @throws Refusal if a bare colour is somewhere it cannot be taken out of
     */
    Scene(String page, DisplayList list, InkMapping mapping, Cancel cancel) throws Refusal {
        this.page = page;
        this.mapping = mapping;
        this.layersOn = list.defaultLayers();
        this.cancel = cancel;
        this.everything = list.page().box(PageBox.MEDIA).grow(72);
        add(list.ops(), List.of());
        for (int k = 0; k < leaves.size(); k++) {
            if (leaves.get(k).bare()) {
                hole(k);
            }
        }
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
                leaves.add(new Leaf(op, groups, bounds, bare(op)));
            }
        }
    }

    private boolean bare(Op op) throws Refusal {
        cancel.check();
        if (op instanceof Op.Image image) {
            checkImage(image);
            return false;
        }
        Paint paint = op instanceof Op.Fill fill
                ? fill.paint()
                : op instanceof Op.Stroke stroke
                        ? stroke.paint()
                        : op instanceof Op.Stencil stencil ? stencil.paint() : ((Op.Shade) op).shading();
        if (paint instanceof Paint.Flat flat) {
            refuseMixture(flat.colour().space(), op);
            return mapping.isBare(flat.colour());
        } else if (paint instanceof Paint.Shading shading) {
            checkShading(shading, op);
        } else {
            for (Op child : ((Paint.Tiling) paint).cell()) {
                if (holdsBare(child)) {
                    throw refused("is inside a pattern", op);
                }
            }
        }
        return false;
    }

    private boolean holdsBare(Op op) throws Refusal {
        if (op instanceof Op.Group group) {
            for (Op child : group.ops()) {
                if (holdsBare(child)) {
                    return true;
                }
            }
            return false;
        }
        return bare(op);
    }

    private void refuseMixture(ColourSpace space, Op op) throws Refusal {
        if (mapping.mixesBare(space)) {
            throw refused("is mixed with other inks in one colour", op);
        }
    }

    private void checkImage(Op.Image image) throws Refusal {
        ColourSpace space = image.image().space();
        refuseMixture(space, image);
        ImageSource.Pixels pixels = image.image().decode();
        int n = pixels.components();
        Set<Integer> seen = new HashSet<>();
        for (int i = 0; i < pixels.samples().length; i += n) {
            int key = 0;
            float[] colour = new float[n];
            for (int c = 0; c < n; c++) {
                int sample = pixels.samples()[i + c] & 255;
                key = key * 257 + sample;
                colour[c] = space instanceof ColourSpace.Indexed
                        ? sample
                        : space.min(c) + (space.max(c) - space.min(c)) * sample / 255f;
            }
            if (seen.add(key) && mapping.isBare(new Colour(space, colour))) {
                throw refused("is inside an image", image);
            }
        }
    }

    private void checkShading(Paint.Shading shading, Op op) throws Refusal {
        refuseMixture(shading.space(), op);
        if (shading.background() != null && mapping.isBare(shading.background())) {
            throw refused("is the background of a gradient", op);
        }
        boolean ramp = shading.geometry() instanceof Paint.Axial || shading.geometry() instanceof Paint.Radial;
        double t0 = shading.geometry() instanceof Paint.Axial a
                ? a.t0()
                : shading.geometry() instanceof Paint.Radial r ? r.t0() : 0;
        double t1 = shading.geometry() instanceof Paint.Axial a
                ? a.t1()
                : shading.geometry() instanceof Paint.Radial r ? r.t1() : 1;
        for (int i = 0; ramp && i <= GRADIENT_STEPS; i++) {
            float[] values = new float
                    [Math.max(shading.function().outputs(), shading.space().components())];
            shading.function().apply(new float[] {(float) (t0 + (t1 - t0) * i / GRADIENT_STEPS)}, values);
            if (mapping.isBare(new Colour(shading.space(), values))) {
                throw refused("is inside a gradient", op);
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
        if (op instanceof Op.Stencil) {
            throw refused("is painted through a bitmap over other paint", op);
        }
        TextUse text = op instanceof Op.Fill fill ? fill.text() : ((Op.Stroke) op).text();
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
        Area area = Shapes.of(op);
        if (!area.isEmpty()) {
            holes.put(k, area);
        }
    }

    /** An overprinting spot ink replaces nothing but itself. */
    private static boolean overprintsItsInk(Op op) {
        Paint paint = op instanceof Op.Fill fill
                ? fill.paint()
                : op instanceof Op.Stroke stroke ? stroke.paint() : ((Op.Stencil) op).paint();
        ColourSpace space = ((Paint.Flat) paint).colour().space();
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

    /** @return number of bare objects */
    int bareObjects() {
        return (int) leaves.stream().filter(Leaf::bare).count();
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

    Refusal refused(String why, Op op) {
        return new Refusal(
                page + ": the bare colour " + why + " (" + op.origin().object() + ", operator "
                        + op.origin().place() + "), where it cannot be taken out without changing what is around it."
                        + " Change it there in the drawing program; nothing was written.");
    }
}
