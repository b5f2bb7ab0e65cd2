package inkground.plate;

import inkground.artwork.Clip;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.geometry.Box;
import inkground.geometry.Matrix;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/** Copies of operations moved elsewhere on the page: the repeats of a pattern's cell. */
final class Shifted {
    private Shifted() {}

    /**
     * @param op an operation of the cell
     * @param shift a translation in page space
     * @param outer clip of the copy's cell, put around the operation's own clips
     */
    static Op of(Op op, Matrix shift, Clip outer) {
        Clip clip = clip(op.clip(), shift, outer);
        if (op instanceof Op.Fill f) {
            return new Op.Fill(
                    f.path().transform(shift),
                    f.rule(),
                    paint(f.paint(), shift),
                    f.text(),
                    f.style(),
                    clip,
                    f.origin());
        } else if (op instanceof Op.Stroke s) {
            return new Op.Stroke(
                    s.path(),
                    s.pen(),
                    s.penToPage().then(shift),
                    paint(s.paint(), shift),
                    s.text(),
                    s.style(),
                    clip,
                    s.origin());
        } else if (op instanceof Op.Image i) {
            return new Op.Image(i.image(), i.unitToPage().then(shift), i.style(), clip, i.origin());
        } else if (op instanceof Op.Stencil s) {
            return new Op.Stencil(
                    s.mask(), s.unitToPage().then(shift), paint(s.paint(), shift), s.style(), clip, s.origin());
        } else if (op instanceof Op.Shade s) {
            return new Op.Shade(
                    (Paint.Shading) paint(s.shading(), shift), shift.bounds(s.bounds()), s.style(), clip, s.origin());
        }
        Op.Group g = (Op.Group) op;
        List<Op> children = new ArrayList<>(g.ops().size());
        for (Op child : g.ops()) {
            children.add(of(child, shift, outer));
        }
        Box bounds = shift.bounds(g.bounds());
        return new Op.Group(children, bounds, g.isolated(), g.knockout(), g.space(), g.style(), clip, g.origin());
    }

    private static Clip clip(Clip clip, Matrix shift, Clip outer) {
        Deque<Clip> links = new ArrayDeque<>();
        for (Clip link = clip; link != null; link = link.parent()) {
            links.push(link);
        }
        Clip around = outer;
        for (Clip link : links) { // the outermost first
            around = Clip.of(around, link.path().transform(shift), link.rule());
        }
        return around;
    }

    private static Paint paint(Paint paint, Matrix shift) {
        if (paint instanceof Paint.Shading s) {
            return new Paint.Shading(
                    s.geometry(),
                    s.space(),
                    s.function(),
                    s.background(),
                    s.box(),
                    s.toPage().then(shift));
        } else if (paint instanceof Paint.Tiling t) {
            List<Op> cell = new ArrayList<>(t.cell().size());
            for (Op child : t.cell()) {
                cell.add(of(child, shift, null));
            }
            return new Paint.Tiling(
                    cell, t.cellBox(), t.xStep(), t.yStep(), t.toPage().then(shift));
        }
        return paint;
    }
}
