package inkground.artwork.svg;

import inkground.artwork.image.Frame;
import java.awt.geom.Rectangle2D;
import org.apache.batik.bridge.Bridge;
import org.apache.batik.bridge.BridgeContext;
import org.apache.batik.bridge.SVGImageElementBridge;
import org.apache.batik.dom.util.XLinkSupport;
import org.apache.batik.gvt.CompositeGraphicsNode;
import org.apache.batik.gvt.GraphicsNode;
import org.w3c.dom.Element;

/** Places pictures as image sources in their own colours, instead of decoding them to sRGB. */
final class ImageBridge extends SVGImageElementBridge {
    private final PlacedImages images;

    ImageBridge(PlacedImages images) {
        this.images = images;
    }

    @Override
    public Bridge getInstance() {
        return new ImageBridge(images);
    }

    @Override
    @SuppressWarnings("unchecked") // the library's list of children has no type
    protected GraphicsNode buildImageGraphicsNode(BridgeContext context, Element e) {
        Frame frame = images.get(XLinkSupport.getXLinkHref(e).trim(), e);
        if (frame == null) {
            return new CompositeGraphicsNode();
        }
        int width = frame.source().width();
        int height = frame.source().height();
        // SVG 2 §12.3: without a size it is the picture's own, in pixels
        own(e, "width", width, "height", height);
        own(e, "height", height, "width", width);
        Rectangle2D bounds = getImageBounds(context, e);
        if (bounds.getWidth() <= 0 || bounds.getHeight() <= 0) {
            return new CompositeGraphicsNode();
        }
        // a node of its own carries the clip: the placed one the fit into the box
        CompositeGraphicsNode node = new CompositeGraphicsNode();
        node.getChildren().add(new PlacedNode(frame.source()));
        initializeViewport(context, e, node, new float[] {0, 0, width, height}, bounds);
        return node;
    }

    private static void own(Element e, String side, double size, String other, double otherSize) {
        String stated = e.getAttributeNS(null, side).trim();
        if (!stated.isEmpty() && !stated.equals("auto")) {
            return;
        }
        double value = size;
        try {
            String beside = e.getAttributeNS(null, other).trim();
            if (!beside.isEmpty() && !beside.equals("auto")) {
                value = Double.parseDouble(beside.replaceAll("px$", "")) * size / otherSize;
            }
        } catch (NumberFormatException ex) {
            value = size; // a side in other units: the picture's own pixels
        }
        e.setAttributeNS(null, side, String.valueOf(value));
    }
}
