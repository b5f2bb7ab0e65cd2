package inkground.artwork.svg;

import inkground.artwork.BlendMode;
import inkground.artwork.Op;
import inkground.artwork.SoftMask;
import inkground.artwork.Style;
import inkground.geometry.Box;
import java.util.List;

/** Puts a group's properties on its only operation, where that is the same. */
final class Styles {
    private Styles() {}

    static boolean canTake(Op op, SoftMask mask) {
        Style style = op.style();
        return style.blend() == BlendMode.NORMAL && (mask == null || style.softMask() == null);
    }

    static Op with(Op op, double alpha, BlendMode blend, SoftMask mask) {
        Style old = op.style();
        Style style = new Style(old.alpha() * alpha, blend, false, 0, mask == null ? old.softMask() : mask, false);
        if (op instanceof Op.Fill f) {
            return new Op.Fill(f.path(), f.rule(), f.paint(), f.text(), style, f.clip(), f.origin());
        } else if (op instanceof Op.Stroke s) {
            return new Op.Stroke(s.path(), s.pen(), s.penToPage(), s.paint(), s.text(), style, s.clip(), s.origin());
        } else if (op instanceof Op.Image i) {
            return new Op.Image(i.image(), i.unitToPage(), style, i.clip(), i.origin());
        } else if (op instanceof Op.Stencil s) {
            return new Op.Stencil(s.mask(), s.unitToPage(), s.paint(), style, s.clip(), s.origin());
        } else if (op instanceof Op.Shade s) {
            return new Op.Shade(s.shading(), s.bounds(), style, s.clip(), s.origin());
        }
        Op.Group g = (Op.Group) op;
        return new Op.Group(g.ops(), g.bounds(), g.isolated(), g.knockout(), g.space(), style, g.clip(), g.origin());
    }

    /** @return box of everything the operations can paint */
    static Box bounds(List<Op> ops) {
        Box all = Box.EMPTY;
        for (Op op : ops) {
            Box box = op.bounds();
            all = all.union(op.clip() == null ? box : box.intersect(op.clip().bounds()));
        }
        return all;
    }
}
