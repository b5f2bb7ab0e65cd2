package inkground.app;

import inkground.artwork.Colour;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;

/** Walks display lists, and makes copies of them in other colours. */
final class Repaint {
    private final Function<Colour, Optional<Colour>> colours;
    private final Map<Paint.Tiling, Paint.Tiling> tilings = new IdentityHashMap<>();

    private Repaint(Function<Colour, Optional<Colour>> colours) {
        this.colours = colours;
    }

    /**
     * @param colours what each flat colour becomes; nothing to leave its objects out. Shadings and images stay.
     * @return the list so painted
     */
    static DisplayList of(DisplayList list, Function<Colour, Optional<Colour>> colours) {
        List<Op> ops = new Repaint(colours).all(list.ops());
        return new DisplayList(list.page(), ops, list.layers(), list.groupSpace(), list.approximations());
    }

    /** Hands over every operation that shows, those inside groups and the cells of patterns included; each cell once. */
    static void each(List<Op> ops, Set<Integer> layersOn, Consumer<Op> visitor) {
        each(ops, layersOn, visitor, java.util.Collections.newSetFromMap(new IdentityHashMap<>()));
    }

    private static void each(List<Op> ops, Set<Integer> layersOn, Consumer<Op> visitor, Set<Paint> cells) {
        for (Op op : ops) {
            if (!op.origin().visibility().shows(layersOn)) {
                continue;
            }
            visitor.accept(op);
            if (op instanceof Op.Group group) {
                each(group.ops(), layersOn, visitor, cells);
            } else if (paint(op) instanceof Paint.Tiling tiling && cells.add(tiling)) {
                each(tiling.cell(), layersOn, visitor, cells);
            }
        }
    }

    /** @return what a fill, stroke, stencil or shade paints with; null for images and groups */
    static Paint paint(Op op) {
        if (op instanceof Op.Fill fill) {
            return fill.paint();
        } else if (op instanceof Op.Stroke stroke) {
            return stroke.paint();
        } else if (op instanceof Op.Stencil stencil) {
            return stencil.paint();
        }
        return op instanceof Op.Shade shade ? shade.shading() : null;
    }

    private List<Op> all(List<Op> ops) {
        List<Op> out = new ArrayList<>(ops.size());
        for (Op op : ops) {
            Op made = one(op);
            if (made != null) {
                out.add(made);
            }
        }
        return out;
    }

    private Op one(Op op) {
        if (op instanceof Op.Group g) {
            return new Op.Group(
                    all(g.ops()), g.bounds(), g.isolated(), g.knockout(), g.space(), g.style(), g.clip(), g.origin());
        }
        Paint old = paint(op);
        Paint paint = old == null ? null : repainted(old);
        if (paint == old) {
            return op;
        } else if (paint == null) {
            return null;
        } else if (op instanceof Op.Fill f) {
            return new Op.Fill(f.path(), f.rule(), paint, f.text(), f.style(), f.clip(), f.origin());
        } else if (op instanceof Op.Stroke s) {
            return new Op.Stroke(s.path(), s.pen(), s.penToPage(), paint, s.text(), s.style(), s.clip(), s.origin());
        }
        Op.Stencil s = (Op.Stencil) op;
        return new Op.Stencil(s.mask(), s.unitToPage(), paint, s.style(), s.clip(), s.origin());
    }

    private Paint repainted(Paint old) {
        if (old instanceof Paint.Flat flat) {
            return colours.apply(flat.colour()).map(Paint.Flat::new).orElse(null);
        } else if (old instanceof Paint.Tiling t) {
            return tilings.computeIfAbsent(
                    t, k -> new Paint.Tiling(all(t.cell()), t.cellBox(), t.xStep(), t.yStep(), t.toPage()));
        }
        return old;
    }
}
