package inkground.artwork.svg;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import org.apache.batik.anim.dom.SVGOMUseElement;
import org.apache.batik.bridge.Bridge;
import org.apache.batik.bridge.BridgeContext;
import org.apache.batik.bridge.CSSUtilities;
import org.apache.batik.bridge.SVGClipPathElementBridge;
import org.apache.batik.bridge.SVGUtilities;
import org.apache.batik.ext.awt.image.renderable.ClipRable;
import org.apache.batik.ext.awt.image.renderable.ClipRable8Bit;
import org.apache.batik.gvt.GraphicsNode;
import org.apache.batik.gvt.ShapeNode;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Clipping paths: CSS Masking Level 1 §6. Unlike the library's own, a clip on a clip narrows it, a clipping path without
 * content clips everything away, and a single path stays exactly as it is.
 */
final class ClipBridge extends SVGClipPathElementBridge {
    @Override
    public Bridge getInstance() {
        return new ClipBridge();
    }

    /** Joins halves of halves: one part after the other would go through all that is joined already each time. */
    private static Shape union(List<Shape> parts) {
        if (parts.size() == 1) {
            return parts.get(0);
        }
        int half = parts.size() / 2;
        Area left = new Area(union(parts.subList(0, half)));
        left.add(new Area(union(parts.subList(half, parts.size()))));
        return left;
    }

    @Override
    public ClipRable createClip(BridgeContext context, Element clip, Element clipped, GraphicsNode node) {
        AffineTransform toUser = new AffineTransform();
        String transform = clip.getAttributeNS(null, "transform");
        if (!transform.isEmpty()) {
            toUser = SVGUtilities.convertTransform(clip, "transform", transform, context);
        }
        if (clip.getAttributeNS(null, "clipPathUnits").equals("objectBoundingBox")) {
            toUser = SVGUtilities.toObjectBBox(toUser, node);
        }
        List<Shape> parts = new ArrayList<>();
        for (Node n = clip.getFirstChild(); n != null; n = n.getNextSibling()) {
            Shape part = n instanceof Element child ? silhouette(context, child, toUser) : null;
            if (part != null) {
                parts.add(part);
            }
        }
        Shape whole = parts.isEmpty() ? new Path2D.Double() : union(parts);
        ShapeNode shape = new ShapeNode();
        shape.setShape(whole);
        ClipRable narrower = CSSUtilities.convertClipPath(clip, shape, context);
        if (narrower != null) {
            whole = both(whole, narrower.getClipPath());
        }
        return new ClipRable8Bit(node.getGraphicsNodeRable(true), whole, false);
    }

    private static Shape silhouette(BridgeContext context, Element child, AffineTransform toUser) {
        GraphicsNode node = context.getGVTBuilder().build(context, child);
        Shape outline = node == null || !node.isVisible() ? null : node.getOutline();
        if (outline == null) {
            return null;
        }
        Element ruled =
                child instanceof SVGOMUseElement use && use.getCSSFirstChild() instanceof Element used ? used : child;
        Path2D path = new Path2D.Double(outline);
        path.setWindingRule(CSSUtilities.convertClipRule(ruled));
        Shape own = node.getClip() == null ? path : both(path, node.getClip().getClipPath());
        AffineTransform all = new AffineTransform(toUser);
        if (node.getTransform() != null) {
            all.concatenate(node.getTransform());
        }
        return all.createTransformedShape(own);
    }

    private static Shape both(Shape a, Shape b) {
        Area area = new Area(a);
        area.intersect(new Area(b));
        return area;
    }
}
