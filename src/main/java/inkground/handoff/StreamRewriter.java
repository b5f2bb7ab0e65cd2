package inkground.handoff;

import inkground.artwork.Op;
import inkground.artwork.Origin;
import inkground.base.Refusal;
import inkground.geometry.Matrix;
import java.awt.geom.Area;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.contentstream.PDContentStream;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdfwriter.ContentStreamWriter;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/**
 * Rewrites one content stream so that its bare objects are gone, and everything painted before such an object is clipped to
 * what lies outside of it. Follows the stream as the recorder did, so that each operator finds the operations it painted.
 */
final class StreamRewriter {
    private static final Set<String> PATH = Set.of("m", "l", "c", "v", "y", "h", "re");
    private static final Set<String> PAINT = Set.of("f", "F", "f*", "B", "B*", "b", "b*", "S", "s");
    private static final int DEEPEST = 64;

    private final Walk walk;
    private final String object;
    private final COSDictionary resources;
    private final Map<COSName, COSStream> forms = new LinkedHashMap<>();
    private final Deque<State> saved = new ArrayDeque<>();
    private final Tokens out = new Tokens();
    private final int depth;
    private State state;
    private List<Tokens.Instruction> path = new ArrayList<>();
    private Tokens.Instruction pathClip;
    private TextBlock text;
    private boolean changed;
    private int place = -1;

    /** The part of the graphics state that is followed. */
    private record State(Matrix ctm, int textMode) {}

    /** What all streams of one page share. */
    static final class Walk {
        final Scene scene;
        final Matrix userToPage;
        int next;
        long tokens;

        Walk(Scene scene, Matrix userToPage) {
            this.scene = scene;
            this.userToPage = userToPage;
        }

        /** @return whether everything but annotations has been met */
        boolean finished() {
            return next >= scene.size()
                    || scene.leaf(next).op().origin().object().contains("annotation ");
        }
    }

    private StreamRewriter(Walk walk, String object, COSDictionary resources, Matrix ctm, int depth) {
        this.walk = walk;
        this.object = object;
        this.resources = resources;
        this.state = new State(ctm, 0);
        this.depth = depth;
    }

    /**
     * Rewrites a page's content.
     *
     * @param target receives the new content and its resources; untouched when nothing changes
     */
    static void page(Walk walk, PDContentStream page, COSDictionary dictionary, COSStream target)
            throws IOException, Refusal {
        COSDictionary resources = page.getResources() == null
                ? new COSDictionary()
                : page.getResources().getCOSObject();
        StreamRewriter rewriter = new StreamRewriter(walk, "page", resources, Matrix.IDENTITY, 0);
        rewriter.run(page);
        if (rewriter.changed) {
            rewriter.write(target);
            dictionary.setItem(COSName.CONTENTS, target);
            dictionary.setItem(COSName.RESOURCES, rewriter.ownResources());
        }
    }

    private void run(PDContentStream content) throws IOException, Refusal {
        PDFStreamParser parser = new PDFStreamParser(content);
        List<COSBase> operands = new ArrayList<>();
        for (Object token = parser.parseNextToken(); token != null; token = parser.parseNextToken()) {
            if (token instanceof Operator operator) {
                place++;
                instruction(new Tokens.Instruction(operator, operands));
                operands.clear();
                if (walk.tokens + out.list().size() > Tokens.MOST) {
                    throw new Refusal("Knocking out would make this page's content too large to use; simplify the"
                            + " objects of the bare colour.");
                }
            } else if (token instanceof COSBase base) {
                operands.add(base);
            }
        }
        out.addAll(path);
        if (text != null) {
            text.finish();
        }
        walk.tokens += out.list().size();
    }

    private void instruction(Tokens.Instruction i) throws IOException, Refusal {
        String name = i.name();
        if (text != null) {
            text.add(i);
        } else if (PATH.contains(name)) {
            path.add(i);
        } else if (name.equals("W") || name.equals("W*")) {
            pathClip = i;
        } else if (name.equals("n")) {
            endPath(i);
        } else if (PAINT.contains(name)) {
            paintPath(i);
        } else if (name.equals("BT")) {
            text = new TextBlock();
            text.add(i);
        } else if (name.equals("Do")) {
            xObject(i);
        } else if (name.equals("sh") || name.equals("BI")) {
            around(i, consume());
        } else {
            follow(i);
            out.add(i);
        }
    }

    /** Follows what a state operator does. */
    private void follow(Tokens.Instruction i) {
        switch (i.name()) {
            case "q" -> saved.push(state);
            case "Q" -> state = saved.isEmpty() ? state : saved.pop();
            case "cm" -> {
                Matrix m = new Matrix(i.number(0), i.number(1), i.number(2), i.number(3), i.number(4), i.number(5));
                state = new State(m.then(state.ctm()), state.textMode());
            }
            case "Tr" -> state = new State(state.ctm(), (int) i.number(0));
            default -> {
                // paints nothing and moves nothing
            }
        }
    }

    /** @return indices of the operations that the current operator painted */
    private List<Integer> consume() {
        List<Integer> out = new ArrayList<>();
        while (walk.next < walk.scene.size()) {
            Origin origin = walk.scene.leaf(walk.next).op().origin();
            boolean own = origin.object().equals(object) && origin.place() == place;
            if (!own && !isGlyph(origin)) {
                break;
            }
            out.add(walk.next++);
        }
        return out;
    }

    private boolean isGlyph(Origin origin) {
        return origin.object().startsWith("glyph of font ") && origin.object().endsWith(" in " + object);
    }

    private boolean bare(int leaf) {
        return walk.scene.leaf(leaf).bare();
    }

    private Set<Integer> over(List<Integer> leaves) {
        Set<Integer> holes = new TreeSet<>();
        leaves.forEach(leaf -> holes.addAll(walk.scene.over(leaf)));
        return holes;
    }

    /** Saves the state and clips to what lies outside of some holes. */
    private void openClip(Set<Integer> holes) {
        List<Area> areas = holes.stream().map(walk.scene::holeOf).toList();
        out.add("q")
                .clip(Shapes.allBut(walk.scene.everything(), areas), state.ctm().then(walk.userToPage));
        changed = true;
    }

    /** Emits an instruction that paints, clipped as need be. */
    private void around(Tokens.Instruction i, List<Integer> leaves) {
        if (!leaves.isEmpty() && leaves.stream().allMatch(this::bare)) {
            changed = true; // a stencil
            return;
        }
        Set<Integer> holes = over(leaves);
        if (holes.isEmpty() || !state.ctm().invertible()) {
            out.add(i);
        } else {
            openClip(holes);
            out.add(i).add("Q");
        }
    }

    // ---- paths ----

    private void endPath(Tokens.Instruction end) {
        out.addAll(path);
        if (pathClip != null) {
            out.add(pathClip);
        }
        out.add(end);
        path = new ArrayList<>();
        pathClip = null;
    }

    private void paintPath(Tokens.Instruction paint) {
        List<Integer> leaves = consume();
        List<Integer> kept = leaves.stream().filter(leaf -> !bare(leaf)).toList();
        Set<Integer> holes = over(kept);
        if (kept.size() == leaves.size() && (holes.isEmpty() || !state.ctm().invertible())) {
            endPath(paint);
            return;
        }
        changed = true;
        if (!kept.isEmpty()) {
            if (!holes.isEmpty()) {
                openClip(holes);
            }
            out.addAll(path).add(reduced(paint.name(), leaves, kept));
            if (!holes.isEmpty()) {
                out.add("Q");
            }
        }
        if (pathClip != null) {
            endPath(new Tokens.Instruction(Operator.getOperator("n"), List.of()));
        }
        path = new ArrayList<>();
    }

    /** @return the operator that paints only what is kept of a path */
    private String reduced(String name, List<Integer> leaves, List<Integer> kept) {
        if (kept.size() == leaves.size()) {
            return name;
        }
        boolean closes = name.startsWith("b");
        boolean fill = walk.scene.leaf(kept.get(0)).op() instanceof Op.Fill;
        return fill ? (name.endsWith("*") ? "f*" : "f") : closes ? "s" : "S";
    }

    // ---- images and forms ----

    private void xObject(Tokens.Instruction i) throws IOException, Refusal {
        COSName name = !i.operands().isEmpty() && i.operands().get(0) instanceof COSName n ? n : null;
        COSDictionary xObjects = name == null ? null : resources.getCOSDictionary(COSName.XOBJECT);
        COSStream stream = xObjects == null ? null : xObjects.getCOSStream(name);
        boolean image = stream != null && COSName.IMAGE.equals(stream.getCOSName(COSName.SUBTYPE));
        if (stream == null || image || depth >= DEEPEST) {
            around(i, consume());
            return;
        }
        COSDictionary own = stream.getCOSDictionary(COSName.RESOURCES);
        Matrix inner = matrix(stream.getCOSArray(COSName.MATRIX)).then(state.ctm());
        String called = "form " + name.getName() + " in " + object;
        StreamRewriter nested = new StreamRewriter(walk, called, own == null ? resources : own, inner, depth + 1);
        nested.state = new State(inner, state.textMode());
        if (walk.next < walk.scene.size()) { // else nothing more is painted
            nested.run(new PDFormXObject(stream));
        }
        if (!nested.changed) {
            out.add(i);
            return;
        }
        changed = true;
        COSStream copy = new COSStream();
        for (COSName key : stream.keySet()) {
            if (!key.equals(COSName.LENGTH) && !key.equals(COSName.FILTER) && !key.equals(COSName.DECODE_PARMS)) {
                copy.setItem(key, stream.getItem(key));
            }
        }
        nested.write(copy);
        copy.setItem(COSName.RESOURCES, nested.ownResources());
        out.add("Do", newName(copy, xObjects));
    }

    private COSName newName(COSStream form, COSDictionary taken) {
        for (int k = 1; ; k++) {
            COSName name = COSName.getPDFName("KnockedOut" + k);
            if (!taken.containsKey(name) && !forms.containsKey(name)) {
                forms.put(name, form);
                return name;
            }
        }
    }

    private static Matrix matrix(COSArray array) {
        if (array == null || array.size() < 6) {
            return Matrix.IDENTITY;
        }
        double[] m = new double[6];
        for (int k = 0; k < 6; k++) {
            m[k] = array.getObject(k) instanceof COSNumber n ? n.floatValue() : 0;
        }
        return new Matrix(m[0], m[1], m[2], m[3], m[4], m[5]);
    }

    private void write(COSStream target) throws IOException {
        try (OutputStream bytes = target.createOutputStream(COSName.FLATE_DECODE)) {
            new ContentStreamWriter(bytes).writeTokens(out.list());
        }
    }

    /** @return the resources with the new forms; a copy, since others may share them */
    private COSDictionary ownResources() {
        COSDictionary copy = new COSDictionary(resources);
        COSDictionary old = resources.getCOSDictionary(COSName.XOBJECT);
        COSDictionary xObjects = old == null ? new COSDictionary() : new COSDictionary(old);
        forms.forEach(xObjects::setItem);
        if (xObjects.size() > 0) {
            copy.setItem(COSName.XOBJECT, xObjects);
        }
        return copy;
    }

    // ---- text ----

    /** A text object, BT to ET: clipped as a whole, since the state cannot be saved inside. */
    private final class TextBlock {
        private static final Set<String> SHOWS = Set.of("Tj", "TJ", "'", "\"");
        private static final Set<String> LASTING = Set.of(
                "Tc", "Tw", "Tz", "TL", "Tf", "Tr", "Ts", "g", "G", "rg", "RG", "k", "K", "cs", "CS", "sc", "SC", "scn",
                "SCN", "w", "J", "j", "M", "d", "ri", "i", "gs");

        private final Tokens body = new Tokens();
        private final Tokens lasting = new Tokens();
        private final List<Integer> kept = new ArrayList<>();
        private final List<Integer> gone = new ArrayList<>();
        private boolean clips;
        private boolean nested;

        void add(Tokens.Instruction i) throws Refusal {
            String name = i.name();
            if (SHOWS.contains(name)) {
                show(i);
            } else {
                follow(i);
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

        private void show(Tokens.Instruction i) throws Refusal {
            if (i.name().equals("\"") && i.operands().size() > 1) {
                lasting.add("Tw", i.operands().get(0)).add("Tc", i.operands().get(1));
            }
            clips |= state.textMode() >= 4;
            List<Integer> leaves = consume();
            List<Integer> bare =
                    leaves.stream().filter(StreamRewriter.this::bare).toList();
            leaves.stream().filter(leaf -> !bare(leaf)).forEach(kept::add);
            gone.addAll(bare);
            if (bare.isEmpty()) {
                body.add(i);
                return;
            }
            for (int leaf : leaves) {
                Op op = walk.scene.leaf(leaf).op();
                if (isGlyph(op.origin())) {
                    throw walk.scene.refused("is type in a font of drawn glyphs (Type 3)", op);
                }
            }
            changed = true;
            boolean fillKept = leaves.stream()
                    .anyMatch(leaf -> !bare(leaf) && walk.scene.leaf(leaf).op() instanceof Op.Fill);
            boolean strokeKept = leaves.stream()
                    .anyMatch(leaf -> !bare(leaf) && walk.scene.leaf(leaf).op() instanceof Op.Stroke);
            int mode = fillKept ? 0 : strokeKept ? 1 : 3; // 3: neither, but the type still moves on
            body.mode(mode + (state.textMode() & 4)).add(i).mode(state.textMode());
        }

        void finish() throws Refusal {
            Set<Integer> holes = over(kept);
            refuseOverlaps(holes);
            if (holes.isEmpty() || !state.ctm().invertible()) {
                out.list().addAll(body.list());
            } else {
                if (clips || nested) {
                    throw walk.scene.refused(
                            "lies on type that is used as a clip",
                            walk.scene.leaf(kept.get(0)).op());
                }
                openClip(holes);
                out.list().addAll(body.list());
                out.add("Q").list().addAll(lasting.list());
            }
            text = null;
        }

        /** The clip holds for the whole text object: a hole made by some of its type must not cut what comes after. */
        private void refuseOverlaps(Set<Integer> holes) throws Refusal {
            for (int hole : gone) {
                for (int leaf : kept) {
                    boolean cut = holes.contains(hole)
                            && leaf > hole
                            && !Shapes.bounds(walk.scene.holeOf(hole))
                                    .intersect(walk.scene.leaf(leaf).bounds())
                                    .isEmpty();
                    if (cut) {
                        throw walk.scene.refused(
                                "is type set under other type in one text object",
                                walk.scene.leaf(hole).op());
                    }
                }
            }
        }
    }
}
