package inkground.handoff;

import inkground.artwork.Op;
import inkground.artwork.Origin;
import inkground.artwork.Paint;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.geometry.Matrix;
import inkground.plate.ClearedGradient;
import inkground.plate.ClearedPicture;
import java.awt.geom.Area;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
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
import org.apache.pdfbox.pdmodel.graphics.pattern.PDTilingPattern;

/**
 * Rewrites one content stream so that its bare objects are gone, and everything painted before such an object is clipped to
 * what lies outside of it. Follows the stream as the recorder did, so that each operator finds the operations it painted.
 */
final class StreamRewriter {
    private static final Set<String> PATH = Set.of("m", "l", "c", "v", "y", "h", "re");
    private static final Set<String> PAINT = Set.of("f", "F", "f*", "B", "B*", "b", "b*", "S", "s");
    private static final int DEEPEST = 64;

    final Walk walk;
    private final String object;
    final NewResources resources;
    private final Deque<State> saved = new ArrayDeque<>();
    final Tokens out = new Tokens();
    private final int depth;
    State state;
    private List<Tokens.Instruction> path = new ArrayList<>();
    private Tokens.Instruction pathClip;
    TextBlock text;
    boolean changed;
    private int place = -1;

    /**
     * The part of the graphics state that is followed.
     *
     * @param fill the pattern of fills, or null
     * @param stroke the pattern of strokes, or null
     */
    record State(Matrix ctm, int textMode, PatternUse fill, PatternUse stroke) {
        State at(Matrix inner) {
            return new State(inner, textMode, fill, stroke);
        }
    }

    /** A pattern by the name it was chosen by, in the stream where it was. */
    record PatternUse(StreamRewriter owner, COSName name) {}

    /** What all streams of one page share. */
    static final class Walk {
        final Scene scene;
        final Matrix userToPage;
        final CleanImages images;
        final COSDictionary noMask = CleanGradients.noMask();
        int next;
        long tokens;

        Walk(Scene scene, Matrix userToPage) {
            this(scene, userToPage, new CleanImages());
        }

        private Walk(Scene scene, Matrix userToPage, CleanImages images) {
            this.scene = scene;
            this.userToPage = userToPage;
            this.images = images;
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
        this.resources = new NewResources(resources);
        this.state = new State(ctm, 0, null, null);
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
            dictionary.setItem(COSName.RESOURCES, rewriter.resources.toDictionary());
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
            text = new TextBlock(this);
            text.add(i);
        } else if (name.equals("Do")) {
            xObject(i);
        } else if (name.equals("sh")) {
            shade(i);
        } else if (name.equals("BI")) {
            around(i, consume(), i.operator().getImageParameters());
        } else {
            follow(i);
            out.add(i);
        }
    }

    /** Follows what a state operator does. */
    void follow(Tokens.Instruction i) {
        switch (i.name()) {
            case "q" -> saved.push(state);
            case "Q" -> state = saved.isEmpty() ? state : saved.pop();
            case "cm" -> {
                Matrix m = new Matrix(i.number(0), i.number(1), i.number(2), i.number(3), i.number(4), i.number(5));
                state = state.at(m.then(state.ctm()));
            }
            case "Tr" -> state = new State(state.ctm(), (int) i.number(0), state.fill(), state.stroke());
            case "scn" -> state = new State(state.ctm(), state.textMode(), pattern(i), state.stroke());
            case "SCN" -> state = new State(state.ctm(), state.textMode(), state.fill(), pattern(i));
            default -> {
                // paints nothing and moves nothing
            }
        }
    }

    private PatternUse pattern(Tokens.Instruction i) {
        COSBase last =
                i.operands().isEmpty() ? null : i.operands().get(i.operands().size() - 1);
        return last instanceof COSName name ? new PatternUse(this, name) : null;
    }

    /** @return indices of the operations that the current operator painted */
    List<Integer> consume() {
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

    boolean isGlyph(Origin origin) {
        return origin.object().startsWith("glyph of font ") && origin.object().endsWith(" in " + object);
    }

    /** @return whether nothing of an operation is painted any more */
    boolean gone(int leaf) {
        return walk.scene.leaf(leaf).gone();
    }

    Set<Integer> over(List<Integer> leaves) {
        Set<Integer> holes = new TreeSet<>();
        leaves.forEach(leaf -> holes.addAll(walk.scene.over(leaf)));
        return holes;
    }

    /** Saves the state and clips to what lies outside of some holes. */
    void openClip(Set<Integer> holes) {
        List<Area> areas = holes.stream().map(walk.scene::holeOf).toList();
        out.add("q")
                .clip(Shapes.allBut(walk.scene.everything(), areas), state.ctm().then(walk.userToPage));
        changed = true;
    }

    /**
     * Emits an instruction that paints an image or a stencil, clipped as need be.
     *
     * @param image the dictionary of the image, or null
     */
    private void around(Tokens.Instruction i, List<Integer> leaves, COSDictionary image) throws IOException, Refusal {
        if (!leaves.isEmpty() && leaves.stream().allMatch(this::gone)) {
            changed = true;
            return;
        }
        Tokens.Instruction paint = i;
        for (int leaf : leaves) {
            cleanPaint(leaf);
            if (image != null && partlyBare(leaf) && walk.scene.leaf(leaf).op() instanceof Op.Image op) {
                ClearedPicture picture =
                        walk.scene.bareness().picture(op.image()).orElseThrow();
                COSStream clean = walk.images.of(picture, image, resources.old());
                paint = new Tokens.Instruction(
                        Operator.getOperator("Do"), List.of(resources.add(COSName.XOBJECT, clean)));
                changed = true;
            }
        }
        clipped(over(leaves), paint);
    }

    private void clipped(Set<Integer> holes, Tokens.Instruction paint) {
        if (holes.isEmpty() || !state.ctm().invertible()) {
            out.add(paint);
        } else {
            openClip(holes);
            out.add(paint).add("Q");
        }
    }

    // ---- patterns and gradients ----

    private boolean partlyBare(int leaf) {
        return walk.scene.leaf(leaf).partlyBare();
    }

    /** @return the gradient that an operation paints with and that is bare in part; null for none */
    ClearedGradient gradient(int leaf) {
        Op op = walk.scene.leaf(leaf).op();
        boolean shading = partlyBare(leaf) && !(op instanceof Op.Image) && Bareness.paint(op) instanceof Paint.Shading;
        return shading
                ? walk.scene
                        .bareness()
                        .gradient((Paint.Shading) Bareness.paint(op))
                        .orElse(null)
                : null;
    }

    /** Puts a clean pattern in the place of one that an operation paints with. */
    void cleanPaint(int leaf) throws IOException, Refusal {
        Op op = walk.scene.leaf(leaf).op();
        if (!partlyBare(leaf) || op instanceof Op.Image || op instanceof Op.Shade) {
            return;
        }
        PatternUse use = op instanceof Op.Stroke ? state.stroke() : state.fill();
        COSDictionary pattern =
                use == null ? null : use.owner().resources.old(COSName.PATTERN).getCOSDictionary(use.name());
        if (pattern == null) {
            throw walk.scene.refused("is in a pattern that cannot be found again", op);
        }
        changed = true;
        use.owner().changed = true;
        NewResources theirs = use.owner().resources;
        if (theirs.replaced(COSName.PATTERN, use.name())) {
            return;
        }
        ClearedGradient gradient = gradient(leaf);
        if (gradient != null) {
            COSDictionary copy = new COSDictionary(pattern);
            Paint.Shading shading = (Paint.Shading) Bareness.paint(op);
            copy.setItem(
                    COSName.SHADING,
                    CleanGradients.shading(pattern.getCOSDictionary(COSName.SHADING), shading.space(), gradient));
            theirs.replace(COSName.PATTERN, use.name(), copy);
        } else if (pattern instanceof COSStream stream) {
            theirs.replace(COSName.PATTERN, use.name(), cell(stream, (Paint.Tiling) Bareness.paint(op), op));
        }
    }

    /** Rewrites the cell of a pattern as a page of its own. */
    private COSStream cell(COSStream pattern, Paint.Tiling tiling, Op user) throws IOException, Refusal {
        Scene scene = walk.scene.cell(tiling);
        Walk inside = new Walk(scene, tiling.toPage(), walk.images);
        String first = scene.leaf(0).op().origin().object();
        String called = first.substring(Math.max(0, first.indexOf("pattern in ")));
        COSDictionary own = pattern.getCOSDictionary(COSName.RESOURCES);
        StreamRewriter cell =
                new StreamRewriter(inside, called, own == null ? new COSDictionary() : own, Matrix.IDENTITY, depth + 1);
        if (depth < DEEPEST) {
            cell.run(new PDTilingPattern(pattern, null));
        }
        if (!inside.finished()) {
            throw walk.scene.refused("is in a pattern whose content cannot be followed", user);
        }
        walk.tokens += inside.tokens;
        return cell.copyOf(pattern);
    }

    private COSStream copyOf(COSStream original) throws IOException {
        COSStream copy = new COSStream();
        for (COSName key : original.keySet()) {
            if (!key.equals(COSName.LENGTH) && !key.equals(COSName.FILTER) && !key.equals(COSName.DECODE_PARMS)) {
                copy.setItem(key, original.getItem(key));
            }
        }
        write(copy);
        copy.setItem(COSName.RESOURCES, resources.toDictionary());
        return copy;
    }

    /** @return the name of a state that lets through what is kept of a gradient, set in the current user space */
    COSName mask(int leaf, COSDictionary dictionary) throws IOException, Refusal {
        Op op = walk.scene.leaf(leaf).op();
        if (op.style().softMask() != null) {
            throw walk.scene.refused("is in a gradient under a soft mask", op);
        }
        Matrix userToPage = state.ctm().then(walk.userToPage);
        Matrix shadingToPage = ((Paint.Shading) Bareness.paint(op)).toPage();
        if (!userToPage.invertible() || !shadingToPage.invertible()) {
            throw walk.scene.refused("is in a gradient of no width", op);
        }
        Box everything = shadingToPage.inverse().bounds(walk.scene.everything());
        return resources.add(
                COSName.EXT_G_STATE,
                CleanGradients.state(dictionary, gradient(leaf), shadingToPage.then(userToPage.inverse()), everything));
    }

    /** @return the shading dictionary of the pattern that an operation paints with */
    COSDictionary patternShading(int leaf) {
        PatternUse use = walk.scene.leaf(leaf).op() instanceof Op.Stroke ? state.stroke() : state.fill();
        return use.owner()
                .resources
                .old(COSName.PATTERN)
                .getCOSDictionary(use.name())
                .getCOSDictionary(COSName.SHADING);
    }

    private void shade(Tokens.Instruction i) throws IOException, Refusal {
        List<Integer> leaves = consume();
        ClearedGradient gradient = leaves.size() == 1 ? gradient(leaves.get(0)) : null;
        if (gradient == null) {
            around(i, leaves, null);
            return;
        }
        int leaf = leaves.get(0);
        COSName name = (COSName) i.operands().get(0);
        COSDictionary shading = resources.old(COSName.SHADING).getCOSDictionary(name);
        Paint.Shading paint =
                (Paint.Shading) Bareness.paint(walk.scene.leaf(leaf).op());
        COSName mask = mask(leaf, shading);
        COSName clean = resources.add(COSName.SHADING, CleanGradients.shading(shading, paint.space(), gradient));
        changed = true;
        out.add("q").add("gs", mask);
        clipped(over(leaves), new Tokens.Instruction(i.operator(), List.of(clean)));
        out.add("Q");
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

    private void paintPath(Tokens.Instruction paint) throws IOException, Refusal {
        List<Integer> leaves = consume();
        List<Integer> kept = leaves.stream().filter(leaf -> !gone(leaf)).toList();
        for (int leaf : kept) {
            cleanPaint(leaf);
        }
        if (kept.stream().anyMatch(leaf -> gradient(leaf) != null)) {
            paintApart(paint, leaves, kept);
            return;
        }
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
        unpainted();
    }

    private void unpainted() {
        if (pathClip != null) {
            endPath(new Tokens.Instruction(Operator.getOperator("n"), List.of()));
        }
        path = new ArrayList<>();
    }

    /** Paints the fill and the stroke of a path one after the other, each under the mask of its gradient. */
    private void paintApart(Tokens.Instruction paint, List<Integer> leaves, List<Integer> kept)
            throws IOException, Refusal {
        for (int leaf : kept) {
            out.add("q");
            if (gradient(leaf) != null) {
                out.add("gs", mask(leaf, patternShading(leaf)));
            }
            Set<Integer> holes = over(List.of(leaf));
            if (!holes.isEmpty() && state.ctm().invertible()) {
                openClip(holes);
            }
            out.addAll(path).add(reduced(paint.name(), leaves, List.of(leaf))).add("Q");
            if (!holes.isEmpty() && state.ctm().invertible()) {
                out.add("Q");
            }
        }
        unpainted();
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
        COSStream stream = name == null ? null : resources.old(COSName.XOBJECT).getCOSStream(name);
        boolean image = stream != null && COSName.IMAGE.equals(stream.getCOSName(COSName.SUBTYPE));
        if (stream == null || image || depth >= DEEPEST) {
            around(i, consume(), stream);
            return;
        }
        COSDictionary own = stream.getCOSDictionary(COSName.RESOURCES);
        Matrix inner = matrix(stream.getCOSArray(COSName.MATRIX)).then(state.ctm());
        String called = "form " + name.getName() + " at operator " + place + " in " + object;
        StreamRewriter nested = new StreamRewriter(walk, called, own == null ? resources.old() : own, inner, depth + 1);
        nested.state = state.at(inner);
        if (walk.next < walk.scene.size()) { // else nothing more is painted
            nested.run(new PDFormXObject(stream));
        }
        if (!nested.changed) {
            out.add(i);
            return;
        }
        changed = true;
        out.add("Do", resources.add(COSName.XOBJECT, nested.copyOf(stream)));
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
}
