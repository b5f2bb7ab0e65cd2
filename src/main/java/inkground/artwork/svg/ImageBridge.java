package inkground.artwork.svg;

import inkground.artwork.ImageSource;
import java.awt.geom.Rectangle2D;
import java.nio.file.Path;
import org.apache.batik.bridge.Bridge;
import org.apache.batik.bridge.BridgeContext;
import org.apache.batik.bridge.CSSUtilities;
import org.apache.batik.bridge.SVGImageElementBridge;
import org.apache.batik.dom.util.XLinkSupport;
import org.apache.batik.gvt.CompositeGraphicsNode;
import org.apache.batik.gvt.GraphicsNode;
import org.w3c.dom.Element;

/** Places pictures as image sources in their own colours, instead of decoding them to sRGB, and drawings as drawings. */
final class ImageBridge extends SVGImageElementBridge {
    private final PlacedImages images;
    private final Reading reading;
    private final Path folder;

    /** @param folder that the document's addresses start from */
    ImageBridge(PlacedImages images, Reading reading, Path folder) {
        this.images = images;
        this.reading = reading;
        this.folder = folder;
    }

    @Override
    public Bridge getInstance() {
        return new ImageBridge(images, reading, folder);
    }

    @Override
    public GraphicsNode createGraphicsNode(BridgeContext context, Element e) {
        GraphicsNode node = super.createGraphicsNode(context, e);
        if (node != null) {
            node.setVisible(CSSUtilities.convertVisibility(e)); // the library leaves that out
        }
        return node;
    }

    @Override
    protected GraphicsNode buildImageGraphicsNode(BridgeContext context, Element e) {
        Placed placed = images.get(XLinkSupport.getXLinkHref(e).trim(), folder, e);
        if (placed instanceof Placed.Picture picture) {
            ImageSource source = picture.source();
            return fitted(context, e, source.width(), source.height(), (w, h) -> new PlacedNode(source));
        } else if (placed instanceof Drawing drawing) {
            PageSize size = drawing.size();
            Rectangle2D place = size.shaped() ? null : place(context, e, size.widthPx(), size.heightPx());
            return fitted(
                    context,
                    e,
                    place == null ? size.widthPx() : place.getWidth(),
                    place == null ? size.heightPx() : place.getHeight(),
                    (w, h) -> new PlacedDrawing(drawing.nodes((SvgContext) context, reading, w, h)));
        }
        return new CompositeGraphicsNode();
    }

    /** Makes what is placed, of a width and a height in px. */
    private interface Content {
        GraphicsNode of(double width, double height);
    }

    @SuppressWarnings("unchecked") // the library's list of children has no type
    private GraphicsNode fitted(BridgeContext context, Element e, double width, double height, Content content) {
        // a node of its own carries the clip: the placed one the fit into the box
        CompositeGraphicsNode node = new CompositeGraphicsNode();
        Rectangle2D place = place(context, e, width, height);
        if (place.getWidth() > 0 && place.getHeight() > 0) {
            node.getChildren().add(content.of(width, height));
            initializeViewport(context, e, node, new float[] {0, 0, (float) width, (float) height}, place);
        }
        return node;
    }

    /** @return where it goes, in px; SVG 2 §12.3: without a size it is the picture's own */
    private static Rectangle2D place(BridgeContext context, Element e, double width, double height) {
        own(e, "width", width, "height", height);
        own(e, "height", height, "width", width);
        return getImageBounds(context, e);
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
