package inkground.artwork.svg;

import java.awt.Color;
import java.awt.Paint;
import java.awt.geom.AffineTransform;
import java.awt.geom.Dimension2D;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.CancellationException;
import org.apache.batik.anim.dom.SVGOMDocument;
import org.apache.batik.bridge.BridgeContext;
import org.apache.batik.bridge.BridgeException;
import org.apache.batik.bridge.DocumentLoader;
import org.apache.batik.bridge.GVTBuilder;
import org.apache.batik.bridge.InterruptedBridgeException;
import org.apache.batik.bridge.SVGFilterElementBridge;
import org.apache.batik.bridge.SVGMaskElementBridge;
import org.apache.batik.bridge.SVGPatternElementBridge;
import org.apache.batik.bridge.SVGRadialGradientElementBridge;
import org.apache.batik.bridge.SVGUtilities;
import org.apache.batik.bridge.UnitProcessor;
import org.apache.batik.css.engine.CSSEngine;
import org.apache.batik.css.engine.CSSStylableElement;
import org.apache.batik.css.engine.value.Value;
import org.apache.batik.ext.awt.MultipleGradientPaint;
import org.apache.batik.ext.awt.image.renderable.Filter;
import org.apache.batik.gvt.CompositeGraphicsNode;
import org.apache.batik.gvt.GraphicsNode;
import org.apache.batik.gvt.PatternPaint;
import org.apache.batik.gvt.filter.Mask;
import org.w3c.dom.DOMException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** The library's bridge from document to graphics nodes, watched: which node comes from which element, and how many. */
final class SvgContext extends BridgeContext {
    private final Reading reading;
    private final PlacedImages images;
    private final Path folder;
    private final Watched watched;
    private final List<SvgContext> placed = new ArrayList<>();

    /** What was noted of the nodes of a document and of all that it places. */
    private record Watched(
            Map<GraphicsNode, Element> elements,
            Map<Mask, Boolean> alphaMasks,
            Map<Paint, Double> innerRadii,
            Map<Paint, Cell> cells) {
        Watched() {
            this(new IdentityHashMap<>(), new IdentityHashMap<>(), new IdentityHashMap<>(), new IdentityHashMap<>());
        }
    }

    /**
     * @param images what may be placed
     * @param folder that the document's addresses start from
     * @param widthPx of the page, more than 0
     * @param heightPx as well
     */
    SvgContext(Reading reading, PlacedImages images, Path folder, double widthPx, double heightPx) {
        this(reading, images, folder, new QuietAgent(widthPx, heightPx, reading.notes), new Watched());
    }

    private SvgContext(Reading reading, PlacedImages images, Path folder, QuietAgent agent, Watched watched) {
        super(agent, new ClosedLoader(agent));
        agent.setBridgeContext(this);
        this.reading = reading;
        this.images = images;
        this.folder = folder;
        this.watched = watched;
        setDynamicState(STATIC);
        setTextPainter(new TypePainter());
        setGVTBuilder(new Builder());
    }

    /** @return the nodes of a whole document. Once for each context. */
    GraphicsNode build(SVGOMDocument document) {
        Dimension2D size = getUserAgent().getViewportSize();
        Element svg = document.getDocumentElement();
        svg.setAttributeNS(null, "width", String.format(Locale.ROOT, "%.6f", size.getWidth()));
        svg.setAttributeNS(null, "height", String.format(Locale.ROOT, "%.6f", size.getHeight()));
        DropShadows.expand(document);
        return getGVTBuilder().build(this, document);
    }

    /** @return the context of a drawing that this document places, to its own size in px; it ends with this one */
    SvgContext placing(Path folderOfDrawing, double widthPx, double heightPx) {
        QuietAgent agent = new QuietAgent(widthPx, heightPx, reading.notes);
        SvgContext inner = new SvgContext(reading, images, folderOfDrawing, agent, watched);
        placed.add(inner);
        return inner;
    }

    @Override
    public void dispose() {
        placed.forEach(SvgContext::dispose);
        super.dispose();
    }

    /** @return the element a node was built from; null when it is not known */
    Element element(GraphicsNode node) {
        return watched.elements.get(node);
    }

    /** @return whether a mask works by alpha instead of luminance */
    boolean byAlpha(Mask mask) {
        return watched.alphaMasks.getOrDefault(mask, false);
    }

    /** @return the start radius of a radial gradient, in its own units */
    double innerRadius(Paint gradient) {
        return watched.innerRadii.getOrDefault(gradient, 0.0);
    }

    /** @return what a pattern repeats, or null */
    Cell cell(Paint pattern) {
        return watched.cells.get(pattern);
    }

    /**
     * What a pattern repeats.
     *
     * @param node content
     * @param toCell from the content's space to that of the pattern
     * @param opacity of the whole
     */
    record Cell(GraphicsNode node, AffineTransform toCell, float opacity) {}

    /** @return the words of one of our CSS properties; the empty string when the element has no style */
    String words(Element e, String property) {
        Value value = style(e, property);
        return value == null ? "" : value.getStringValue();
    }

    /** @return the computed value of a property, or null */
    Value style(Element e, String property) {
        if (!(e instanceof CSSStylableElement stylable)) {
            return null;
        }
        CSSEngine engine = ((SVGOMDocument) e.getOwnerDocument()).getCSSEngine();
        return engine.getComputedStyle(stylable, null, engine.getPropertyIndex(property));
    }

    @Override
    public void registerSVGBridges() {
        super.registerSVGBridges();
        putBridge(new ImageBridge(images, reading, folder));
        putBridge(new ClipBridge());
        putBridge(new Masks());
        putBridge(new Patterns());
        putBridge(new Radials());
        putBridge(new Filters());
        putBridge(new Profiles(reading.notes));
    }

    /** Loads no document but the one at hand. */
    private static final class ClosedLoader extends DocumentLoader {
        ClosedLoader(QuietAgent agent) {
            super(agent);
        }

        @Override
        public Document checkCache(String uri) {
            return null;
        }

        @Override
        public Document loadDocument(String uri) throws IOException {
            throw new IOException("outside the file");
        }

        @Override
        public Document loadDocument(String uri, InputStream in) throws IOException {
            throw new IOException("outside the file");
        }

        @Override
        public int getLineNumber(Element e) {
            return -1;
        }
    }

    /** Builds nodes; a damaged element costs itself, too many or too deep ones the file. */
    private final class Builder extends GVTBuilder {
        @Override
        public GraphicsNode build(BridgeContext context, Element e) {
            enter();
            try {
                GraphicsNode node = super.build(context, e);
                if (node != null) {
                    watched.elements.put(node, e);
                }
                return node;
            } finally {
                reading.leave();
            }
        }

        @Override
        protected void buildGraphicsNode(BridgeContext context, Element e, CompositeGraphicsNode parent) {
            enter();
            int before = parent.getChildren().size();
            try {
                super.buildGraphicsNode(context, e, parent);
            } catch (InterruptedBridgeException | CancellationException | Stopped ex) {
                throw ex;
            } catch (BridgeException | DOMException | IllegalArgumentException ex) {
                reading.notes.add(
                        "a damaged or unresolved part (" + Notes.name(e) + ")", "as far as it is understood", e);
            } finally {
                reading.leave();
            }
            for (int i = before; i < parent.getChildren().size(); i++) {
                watched.elements.put((GraphicsNode) parent.getChildren().get(i), e);
            }
        }

        private void enter() {
            reading.built(1);
            reading.enter();
        }
    }

    /** Notes what a pattern repeats, which its paint keeps to itself. */
    private final class Patterns extends SVGPatternElementBridge {
        @Override
        public Paint createPaint(
                BridgeContext context, Element pattern, Element painted, GraphicsNode node, float opacity) {
            Paint paint = super.createPaint(context, pattern, painted, node, opacity);
            if (paint instanceof PatternPaint made && context.getElementData(pattern) instanceof GraphicsNode content) {
                watched.cells.put(
                        paint, new Cell(content, made.getGraphicsNode().getTransform(), opacity));
            }
            return paint;
        }
    }

    /** Puts finer primitives in place of the library's, and notes where there is none. */
    private final class Filters extends SVGFilterElementBridge {
        @Override
        public Filter createFilter(BridgeContext context, Element filter, Element filtered, GraphicsNode node) {
            Filter made = super.createFilter(context, filter, filtered, node);
            if (made != null && !FilterGraph.refine(made)) {
                reading.notes.add(
                        "a filter effect that mixes colours in linear light",
                        "dark colours up to 10 of 255 off; color-interpolation-filters=\"sRGB\" keeps them",
                        filtered);
            }
            return made;
        }
    }

    /** Notes how a mask works: CSS Masking Level 1 §7.2. */
    private final class Masks extends SVGMaskElementBridge {
        @Override
        public Mask createMask(BridgeContext context, Element mask, Element masked, GraphicsNode node) {
            Mask made = super.createMask(context, mask, masked, node);
            if (made != null) {
                watched.alphaMasks.put(made, words(mask, WordProperty.MASK_TYPE).equals("alpha"));
            }
            return made;
        }
    }

    /** Notes the start radius of SVG 2 §14.2.3, which the library leaves out. */
    private final class Radials extends SVGRadialGradientElementBridge {
        @Override
        protected Paint buildGradient(
                Element gradient,
                Element painted,
                GraphicsNode node,
                MultipleGradientPaint.CycleMethodEnum spread,
                MultipleGradientPaint.ColorSpaceEnum space,
                AffineTransform transform,
                Color[] colours,
                float[] offsets,
                BridgeContext context) {
            Paint paint =
                    super.buildGradient(gradient, painted, node, spread, space, transform, colours, offsets, context);
            String fr = SVGUtilities.getChainableAttributeNS(gradient, null, "fr", context);
            if (!fr.isEmpty() && !(paint instanceof Color)) {
                String units = SVGUtilities.getChainableAttributeNS(gradient, null, "gradientUnits", context);
                short system = units.equals("userSpaceOnUse")
                        ? SVGUtilities.USER_SPACE_ON_USE
                        : SVGUtilities.OBJECT_BOUNDING_BOX;
                watched.innerRadii.put(paint, (double)
                        SVGUtilities.convertLength(fr, "fr", system, UnitProcessor.createContext(context, gradient)));
            }
            return paint;
        }
    }
}
