package inkground.handoff;

import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.base.Refusal;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.cos.COSName;

/** A text object, BT to ET: clipped as a whole, since the state cannot be saved inside. */
final class TextBlock {
    private static final Set<String> SHOWS = Set.of("Tj", "TJ", "'", "\"");
    private static final Set<String> LASTING = Set.of(
            "Tc", "Tw", "Tz", "TL", "Tf", "Tr", "Ts", "g", "G", "rg", "RG", "k", "K", "cs", "CS", "sc", "SC", "scn",
            "SCN", "w", "J", "j", "M", "d", "ri", "i", "gs");

    private final StreamRewriter in;
    private final Tokens body = new Tokens();
    private final Tokens lasting = new Tokens();
    private final List<Integer> kept = new ArrayList<>();
    private final List<Integer> gone = new ArrayList<>();
    private boolean clips;
    private boolean nested;

    TextBlock(StreamRewriter in) {
        this.in = in;
    }

    void add(Tokens.Instruction i) throws IOException, Refusal {
        String name = i.name();
        if (SHOWS.contains(name)) {
            show(i);
        } else {
            in.follow(i);
            body.add(i);
            nested |= name.equals("q") || name.equals("Q") || name.equals("cm");
            if (LASTING.contains(name)) {
                lasting.add(i);
            } else if (name.equals("TD")) {
                lasting.add("TL", new org.apache.pdfbox.cos.COSFloat((float) -i.number(1)));
            }
            if (name.equals("ET")) {
                finish();
            }
        }
    }

    private void show(Tokens.Instruction i) throws IOException, Refusal {
        if (i.name().equals("\"") && i.operands().size() > 1) {
            lasting.add("Tw", i.operands().get(0)).add("Tc", i.operands().get(1));
        }
        clips |= in.state.textMode() >= 4;
        List<Integer> leaves = in.consume();
        List<Integer> bare = leaves.stream().filter(in::gone).toList();
        leaves.stream().filter(leaf -> !in.gone(leaf)).forEach(kept::add);
        gone.addAll(bare);
        for (int leaf : leaves) {
            in.cleanPaint(leaf);
        }
        COSName mask = mask(leaves);
        if (mask != null) {
            body.add("gs", mask);
        }
        if (bare.isEmpty()) {
            body.add(i);
        } else {
            showKept(i, leaves);
        }
        if (mask != null) {
            body.add("gs", in.resources.add(COSName.EXT_G_STATE, in.walk.noMask));
        }
    }

    /** The mask of the gradient that type is painted with; one for its fill and its stroke alike. */
    private COSName mask(List<Integer> leaves) throws IOException, Refusal {
        List<Integer> masked =
                leaves.stream().filter(leaf -> in.gradient(leaf) != null).toList();
        if (masked.isEmpty()) {
            return null;
        }
        Paint paint = Bareness.paint(in.walk.scene.leaf(masked.get(0)).op());
        for (int leaf : leaves) {
            Op op = in.walk.scene.leaf(leaf).op();
            if (!in.gone(leaf) && Bareness.paint(op) != paint) {
                throw in.walk.scene.refused("is in a gradient on type that is stroked too", op);
            }
        }
        return in.mask(masked.get(0), in.patternShading(masked.get(0)));
    }

    private void showKept(Tokens.Instruction i, List<Integer> leaves) throws Refusal {
        for (int leaf : leaves) {
            Op op = in.walk.scene.leaf(leaf).op();
            if (in.isGlyph(op.origin())) {
                throw in.walk.scene.refused("is type in a font of drawn glyphs (Type 3)", op);
            }
        }
        in.changed = true;
        boolean fillKept = leaves.stream()
                .anyMatch(leaf -> !in.gone(leaf) && in.walk.scene.leaf(leaf).op() instanceof Op.Fill);
        boolean strokeKept = leaves.stream()
                .anyMatch(leaf -> !in.gone(leaf) && in.walk.scene.leaf(leaf).op() instanceof Op.Stroke);
        int mode = fillKept ? 0 : strokeKept ? 1 : 3; // 3: neither, but the type still moves on
        body.mode(mode + (in.state.textMode() & 4)).add(i).mode(in.state.textMode());
    }

    void finish() throws Refusal {
        Set<Integer> holes = in.over(kept);
        holes.removeIf(hole -> kept.contains(hole)); // else the type would cut itself out
        refuseOverlaps(holes);
        if (holes.isEmpty() || !in.state.ctm().invertible()) {
            in.out.list().addAll(body.list());
        } else {
            if (clips || nested) {
                throw in.walk.scene.refused(
                        "lies on type that is used as a clip",
                        in.walk.scene.leaf(kept.get(0)).op());
            }
            in.openClip(holes);
            in.out.list().addAll(body.list());
            in.out.add("Q").list().addAll(lasting.list());
        }
        in.text = null;
    }

    /** The clip holds for the whole text object: a hole made by some of its type must not cut what comes after. */
    private void refuseOverlaps(Set<Integer> holes) throws Refusal {
        for (int hole : gone) {
            for (int leaf : kept) {
                boolean cut = holes.contains(hole)
                        && leaf > hole
                        && !Shapes.bounds(in.walk.scene.holeOf(hole))
                                .intersect(in.walk.scene.leaf(leaf).bounds())
                                .isEmpty();
                if (cut) {
                    throw in.walk.scene.refused(
                            "is type set under other type in one text object",
                            in.walk.scene.leaf(hole).op());
                }
            }
        }
    }
}
