package inkground.artwork.svg;

import inkground.artwork.BlendMode;
import inkground.artwork.Clip;
import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.Op;
import inkground.artwork.Origin;
import inkground.artwork.Paint;
import inkground.artwork.SoftMask;
import inkground.artwork.Style;
import inkground.artwork.TextUse;
import inkground.artwork.Visibility;
import inkground.geometry.Awt;
import inkground.geometry.Box;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import inkground.geometry.Pen;
import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.batik.bridge.SVGGVTFont;
import org.apache.batik.bridge.TextNode;
import org.apache.batik.css.engine.value.Value;
import org.apache.batik.ext.awt.MultipleGradientPaint;
import org.apache.batik.gvt.CanvasGraphicsNode;
import org.apache.batik.gvt.CompositeGraphicsNode;
import org.apache.batik.gvt.CompositeShapePainter;
import org.apache.batik.gvt.FillShapePainter;
import org.apache.batik.gvt.GraphicsNode;
import org.apache.batik.gvt.ImageNode;
import org.apache.batik.gvt.MarkerShapePainter;
import org.apache.batik.gvt.PatternPaint;
import org.apache.batik.gvt.ProxyGraphicsNode;
import org.apache.batik.gvt.ShapeNode;
import org.apache.batik.gvt.ShapePainter;
import org.apache.batik.gvt.StrokeShapePainter;
import org.apache.batik.gvt.filter.Mask;
import org.apache.batik.gvt.font.GVTFont;
import org.w3c.dom.Element;
import org.w3c.dom.css.CSSValue;

/** Walks the library's graphics nodes and writes down what they paint. One use for the page, one for each mask or cell. */
final class SvgRecorder implements RecordingGraphics.Sink {
    private static final double INVISIBLE = 0.001;

    private final Shared shared;
    private final boolean luminance;
    private final SvgPaints paints;
    private List<Op> out = new ArrayList<>();
    private Clip clip;
    private Element element;
    private TextUse text;

    /** @param luminance whether this is the content of a luminance mask */
    SvgRecorder(Shared shared, boolean luminance) {
        this.shared = shared;
        this.luminance = luminance;
        this.paints = new SvgPaints(shared.context, luminance);
    }

    List<Op> ops() {
        return out;
    }

    /**
     * Records a node and everything in it.
     *
     * @param parent from the space that holds the node to page space
     * @param outer what everything is clipped to, or null
     */
    void node(GraphicsNode node, Matrix parent, Clip outer) {
        double alpha = node.getComposite() instanceof AlphaComposite a ? a.getAlpha() : 1;
        if (alpha < INVISIBLE || node instanceof ImageNode && !node.isVisible()) {
            return;
        }
        shared.enter();
        Element before = element;
        element = shared.context.element(node) == null ? element : shared.context.element(node);
        Matrix own = node.getTransform() == null
                ? parent
                : Awt.matrix(node.getTransform()).then(parent);
        if (node.getFilter() != null) {
            filtered(node, parent, outer);
        } else if (own.invertible()) {
            Clip inner = outer;
            if (node.getClip() != null) {
                Shape path = node.getClip().getClipPath();
                inner = Clip.of(outer, Awt.outline(path, own), Awt.rule(path));
            }
            List<Op> around = out;
            out = new ArrayList<>();
            if (inner == null || !inner.bounds().isEmpty()) {
                content(node, own, inner);
            }
            List<Op> inside = out;
            out = around;
            close(node, inside, alpha, own, inner);
        }
        element = before;
        shared.leave();
    }

    /** Adds what a node holds: as it is, or as a group where it meets its backdrop as one. */
    private void close(GraphicsNode node, List<Op> inside, double alpha, Matrix own, Clip inner) {
        if (inside.isEmpty()) {
            return;
        }
        BlendMode blend = blend(node);
        SoftMask mask = node.getMask() == null ? null : mask(node.getMask(), own);
        boolean apart = alpha < 1 || blend != BlendMode.NORMAL || mask != null;
        boolean isolates = isolates(node) && inside.stream().anyMatch(SvgRecorder::blends);
        if (!apart && !isolates) {
            out.addAll(inside);
        } else if (inside.size() == 1 && !isolates && Styles.canTake(inside.get(0), mask)) {
            out.add(Styles.with(inside.get(0), alpha, blend, mask));
        } else {
            Style style = new Style(alpha, blend, false, 0, mask, false);
            out.add(new Op.Group(inside, Styles.bounds(inside), true, false, null, style, inner, origin()));
        }
    }

    private static boolean blends(Op op) {
        return op.style().blend() != BlendMode.NORMAL
                || op instanceof Op.Group g && !g.isolated() && g.ops().stream().anyMatch(SvgRecorder::blends);
    }

    /** Compositing and Blending Level 1 §3.3, and everything that clips or masks. */
    private boolean isolates(GraphicsNode node) {
        Element e = shared.context.element(node);
        boolean svg = node instanceof CanvasGraphicsNode;
        return node instanceof PlacedDrawing
                || e != null
                        && !svg
                        && (node.getClip() != null
                                || shared.context
                                        .words(e, WordProperty.ISOLATION)
                                        .equals("isolate"));
    }

    private BlendMode blend(GraphicsNode node) {
        Element e = shared.context.element(node);
        String words = e == null ? "" : shared.context.words(e, WordProperty.BLEND);
        if (words.isEmpty() || words.equals("normal")) {
            return BlendMode.NORMAL;
        }
        try {
            return BlendMode.valueOf(words.toUpperCase(Locale.ROOT).replace('-', '_'));
        } catch (IllegalArgumentException ex) {
            shared.notes.add("the blend mode " + words, "painted without it", e);
            return BlendMode.NORMAL;
        }
    }

    private SoftMask mask(Mask mask, Matrix own) {
        boolean byAlpha = shared.context.byAlpha(mask);
        SvgRecorder inner = new SvgRecorder(shared, !byAlpha);
        inner.element = element;
        Rectangle2D region = mask.getFilterRegion();
        Outline outline = Awt.outline(region, own);
        inner.node(mask.getMaskNode(), own, Clip.of(null, outline, Awt.rule(region)));
        if (!byAlpha) {
            return SvgPaints.luminosity(inner.out, outline.bounds(), origin());
        }
        Op.Group group = new Op.Group(inner.out, outline.bounds(), true, false, null, Style.PLAIN, null, origin());
        return new SoftMask(group, false, null, null);
    }

    private void content(GraphicsNode node, Matrix own, Clip inner) {
        clip = inner;
        if (node instanceof CompositeGraphicsNode composite) {
            for (Object child : composite.getChildren()) {
                node((GraphicsNode) child, own, inner);
            }
        } else if (node instanceof ProxyGraphicsNode proxy) {
            node(proxy.getSource(), own, inner);
        } else if (node instanceof ShapeNode shape) {
            if (shape.isVisible() && shape.getShapePainter() != null) {
                shape(shape.getShapePainter(), own);
            }
        } else if (node instanceof PlacedNode placed) {
            double height = placed.source().height();
            Matrix unit = new Matrix(placed.source().width(), 0, 0, -height, 0, height);
            add(new Op.Image(placed.source(), unit.then(own), Style.PLAIN, inner, origin()));
        } else if (node instanceof TextNode) {
            int from = out.size();
            node.primitivePaint(new RecordingGraphics(this, own));
            order(from);
        } else {
            node.primitivePaint(new RecordingGraphics(this, own));
        }
    }

    private void shape(ShapePainter painter, Matrix own) {
        exactColours(painter);
        int from = out.size();
        if (painter instanceof CompositeShapePainter all) {
            int at = 0;
            for (; at < all.getShapePainterCount() && !(all.getShapePainter(at) instanceof MarkerShapePainter); at++) {
                all.getShapePainter(at).paint(new RecordingGraphics(this, own));
            }
            order(from);
            for (; at < all.getShapePainterCount(); at++) {
                shape(all.getShapePainter(at), own);
            }
        } else if (painter instanceof MarkerShapePainter markers) {
            Clip around = clip;
            for (GraphicsNode marker : OpenMarkers.nodes(markers)) {
                node(marker, own, around);
            }
            clip = around;
        } else {
            painter.paint(new RecordingGraphics(this, own));
        }
    }

    /** SVG 2 §13.8: strokes before fills where the file says so. */
    private void order(int from) {
        String words = element == null ? "" : shared.context.words(element, WordProperty.PAINT_ORDER);
        if (words.startsWith("stroke") || words.startsWith("markers stroke")) {
            out.subList(from, out.size())
                    .sort((a, b) -> Boolean.compare(b instanceof Op.Stroke, a instanceof Op.Stroke));
        }
    }

    /** Where the file states a colour by a profile the library keeps only its sRGB form: look it up. */
    private void exactColours(ShapePainter painter) {
        if (painter instanceof CompositeShapePainter all) {
            for (int i = 0; i < all.getShapePainterCount(); i++) {
                exactColours(all.getShapePainter(i));
            }
        } else if (painter instanceof FillShapePainter fill) {
            exactColour(fill.getPaint(), "fill");
        } else if (painter instanceof StrokeShapePainter stroke) {
            exactColour(stroke.getPaint(), "stroke");
        }
    }

    private void exactColour(java.awt.Paint paint, String property) {
        Value value = paint instanceof Color && element != null ? shared.context.style(element, property) : null;
        if (value != null && value.getCssValueType() == CSSValue.CSS_VALUE_LIST) {
            Colour stated = ProfiledColours.of(value, element, shared.context);
            if (stated != null) {
                paints.exactly(paint, stated);
            }
        }
    }

    private void filtered(GraphicsNode node, Matrix parent, Clip outer) {
        Rectangle2D bounds = node.getTransformedBounds(Awt.transform(parent));
        Box box = bounds == null ? Box.EMPTY : Awt.box(bounds).intersect(shared.page);
        box = outer == null ? box : box.intersect(outer.bounds());
        if (box.isEmpty()) {
            return;
        }
        PartRaster.Part part = shared.raster.paint(node, Awt.transform(parent), box);
        shared.notes.add(
                "a filter effect",
                String.format(Locale.ROOT, "as a picture of %.0f pixels per inch", part.dpi()),
                element);
        Box b = part.box();
        Matrix unit = new Matrix(b.width(), 0, 0, -b.height(), b.x0(), b.y1());
        Style style = new Style(1, blend(node), false, 0, null, false);
        add(new Op.Image(MemoryImage.of(part.image()), unit, style, outer, origin()));
    }

    private Origin origin() {
        return new Origin(element == null ? "svg" : Notes.name(element), shared.count(), Visibility.ALWAYS);
    }

    private void add(Op op) {
        out.add(op);
    }

    @Override
    public void fill(Shape shape, RecordingGraphics state) {
        Outline path = Awt.outline(shape, state.toPage());
        SvgPaints.Inked inked = path.isEmpty() ? null : inked(state, path.bounds());
        if (inked != null) {
            add(new Op.Fill(path, Awt.rule(shape), inked.paint(), text, style(inked, state), clip(state), origin()));
        }
    }

    @Override
    public void stroke(Shape shape, BasicStroke stroke, RecordingGraphics state) {
        Matrix penToPage = state.toPage();
        Matrix shapeToPen = Matrix.IDENTITY;
        if (element != null
                && shared.context.words(element, WordProperty.VECTOR_EFFECT).contains("non-scaling-stroke")) {
            penToPage = shared.pxToPage;
            shapeToPen = state.toPage().then(penToPage.inverse());
        }
        Outline path = Awt.outline(shape, shapeToPen);
        Op.Stroke plain = new Op.Stroke(path, pen(stroke), penToPage, null, text, Style.PLAIN, clip(state), origin());
        SvgPaints.Inked inked = path.isEmpty() ? null : inked(state, plain.bounds());
        if (inked != null) {
            add(new Op.Stroke(
                    path,
                    plain.pen(),
                    penToPage,
                    inked.paint(),
                    text,
                    style(inked, state),
                    plain.clip(),
                    plain.origin()));
        }
    }

    private static Pen pen(BasicStroke s) {
        float[] array = s.getDashArray();
        int odd = array == null ? 0 : array.length % 2;
        double[] dash = new double[array == null ? 0 : array.length * (1 + odd)];
        for (int i = 0; i < dash.length; i++) {
            dash[i] = array[i % array.length];
        }
        return new Pen(
                s.getLineWidth(),
                Pen.Cap.values()[s.getEndCap()],
                s.getLineJoin() == BasicStroke.JOIN_MITER
                        ? Pen.Join.MITER
                        : s.getLineJoin() == BasicStroke.JOIN_ROUND ? Pen.Join.ROUND : Pen.Join.BEVEL,
                s.getMiterLimit(),
                dash,
                s.getDashPhase());
    }

    @Override
    public void picture(BufferedImage picture, AffineTransform pictureToUser, RecordingGraphics state) {
        Matrix unit = new Matrix(picture.getWidth(), 0, 0, -picture.getHeight(), 0, picture.getHeight());
        Matrix toPage = unit.then(Awt.matrix(pictureToUser)).then(state.toPage());
        shared.notes.add("a part that has to be rasterised", "as a picture", element);
        Style style = new Style(state.alpha(), BlendMode.NORMAL, false, 0, null, false);
        add(new Op.Image(MemoryImage.of(picture), toPage, style, clip(state), origin()));
    }

    @Override
    public void beginType(Element where, GVTFont font, String words, RecordingGraphics state) {
        Matrix m = state.toPage();
        double sizePt = font == null ? 0 : font.getSize() * Math.hypot(m.c(), m.d());
        String used = font == null ? "unknown" : font.getFamilyName();
        Value asked = where == null ? null : shared.context.style(where, "font-family");
        String family =
                asked == null || asked.getLength() == 0 ? used : asked.item(0).getStringValue();
        boolean embedded = font instanceof SVGGVTFont;
        boolean generic = family.matches("(?i)serif|sans-?serif|monospace|cursive|fantasy|system-ui");
        if (!generic && !embedded && !family.equalsIgnoreCase(used)) {
            shared.notes.add("type in " + family + ", which is not installed", "set in " + used, where);
        }
        text = new TextUse(family, sizePt, embedded, words);
    }

    @Override
    public void endType() {
        text = null;
    }

    private static Style style(SvgPaints.Inked inked, RecordingGraphics state) {
        return new Style(inked.alpha() * state.alpha(), BlendMode.NORMAL, false, 0, inked.mask(), false);
    }

    /** The node's clip, and what the surface was clipped to since, as markers are. */
    private Clip clip(RecordingGraphics state) {
        Shape more = state.getClip();
        return more == null ? clip : Clip.of(clip, Awt.outline(more, state.toPage()), Awt.rule(more));
    }

    private SvgPaints.Inked inked(RecordingGraphics state, Box area) {
        java.awt.Paint paint = state.getPaint();
        if (paint instanceof Color colour) {
            return colour.getAlpha() == 0 ? null : paints.flat(colour);
        } else if (paint instanceof MultipleGradientPaint gradient) {
            return paints.gradient(gradient, state.toPage(), area, origin());
        } else if (paint instanceof PatternPaint pattern) {
            return pattern(pattern, state.toPage());
        }
        shared.notes.add("an unknown kind of paint", "without it", element);
        return null;
    }

    private SvgPaints.Inked pattern(PatternPaint pattern, Matrix toPage) {
        Rectangle2D cell = pattern.getPatternRect();
        Matrix cellToPage = Awt.matrix(pattern.getPatternTransform()).then(toPage);
        SvgContext.Cell content = shared.context.cell(pattern);
        if (!cellToPage.invertible() || cell.getWidth() <= 0 || cell.getHeight() <= 0 || content == null) {
            return null;
        }
        SvgRecorder inner = new SvgRecorder(shared, luminance);
        inner.element = element;
        inner.node(content.node(), Awt.matrix(content.toCell()).then(cellToPage), null);
        return new SvgPaints.Inked(
                new Paint.Tiling(inner.out, Awt.box(cell), cell.getWidth(), cell.getHeight(), cellToPage),
                content.opacity(),
                null);
    }

    /** @return whether an operation states colours that blending in RGB would lose */
    static boolean keepsInks(Op op) {
        if (op instanceof Op.Group group) {
            return group.ops().stream().anyMatch(SvgRecorder::keepsInks);
        }
        Paint paint = op instanceof Op.Fill f ? f.paint() : op instanceof Op.Stroke s ? s.paint() : null;
        ColourSpace space = op instanceof Op.Image i
                ? i.image().space()
                : paint instanceof Paint.Flat flat ? flat.colour().space() : null;
        return space != null
                && (space.components() == 4
                        || space instanceof ColourSpace.Separation
                        || space instanceof ColourSpace.DeviceN);
    }
}
