package inkground.artwork.svg;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.batik.gvt.GraphicsNode;
import org.apache.batik.gvt.MarkerShapePainter;

/** The markers of a path as nodes, which the library's painter keeps to itself. */
final class OpenMarkers extends MarkerShapePainter {
    private OpenMarkers(MarkerShapePainter markers) {
        super(markers.getShape());
        setStartMarker(markers.getStartMarker());
        setMiddleMarker(markers.getMiddleMarker());
        setEndMarker(markers.getEndMarker());
    }

    /** @return nodes in painting order, in the user space of the path */
    static List<GraphicsNode> nodes(MarkerShapePainter markers) {
        OpenMarkers open = new OpenMarkers(markers);
        List<GraphicsNode> nodes = new ArrayList<>();
        if (open.getStartMarker() != null) {
            nodes.add(open.buildStartMarkerProxy());
        }
        if (open.getMiddleMarker() != null) {
            nodes.addAll(Arrays.asList(open.buildMiddleMarkerProxies()));
        }
        if (open.getEndMarker() != null) {
            nodes.add(open.buildEndMarkerProxy());
        }
        nodes.removeIf(node -> node == null);
        return nodes;
    }
}
