package inkground.artwork.svg;

import org.apache.batik.gvt.GraphicsNode;
import org.apache.batik.gvt.ProxyGraphicsNode;

/** One place where a drawing is shown. What blends in it blends within it: it is one picture. */
final class PlacedDrawing extends ProxyGraphicsNode {
    PlacedDrawing(GraphicsNode drawing) {
        setSource(drawing);
    }
}
