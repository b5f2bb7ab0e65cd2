package inkground.artwork.svg;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.apache.batik.anim.dom.SVGOMDocument;
import org.apache.batik.gvt.GraphicsNode;

/** An SVG file that another one places. Its nodes are built once and shown wherever it is placed. */
final class Drawing implements Placed {
    private final SVGOMDocument document;
    private final PageSize size;
    private final Path folder;
    private final String name;
    private final Map<String, Built> built = new HashMap<>();
    private boolean open;

    /** Nodes, and how many elements were drawn to make them. */
    private record Built(GraphicsNode node, long elements) {}

    /** @param folder that its own addresses start from */
    Drawing(SVGOMDocument document, PageSize size, Path folder, String name) {
        this.document = document;
        this.size = size;
        this.folder = folder;
        this.name = name;
    }

    /** @return the file that is being read, which no drawing in it may place again */
    static Drawing beingRead(String name) {
        Drawing drawing = new Drawing(null, new PageSize(1, 1, true, true), null, name);
        drawing.open = true;
        return drawing;
    }

    /** @return its own size; CSS Images Module Level 3 §5.1: one that states none takes that of its place */
    PageSize size() {
        return size;
    }

    /**
     * @param outer context of the document that places it
     * @return its nodes at a size in px
     * @throws Stopped if it holds itself, or drawings are placed in drawings too deep or too often
     */
    GraphicsNode nodes(SvgContext outer, Reading reading, double widthPx, double heightPx) {
        if (open) {
            throw reading.stop("places a drawing that holds itself (" + name + "). Export it again as one file.");
        }
        String key = widthPx + " " + heightPx;
        Built known = built.get(key);
        if (known != null) {
            reading.built(known.elements());
            return known.node();
        }
        open = true;
        reading.enterPlaced();
        try {
            long before = reading.built();
            GraphicsNode node = outer.placing(folder, widthPx, heightPx).build(document);
            built.put(key, new Built(node, reading.built() - before));
            return node;
        } finally {
            reading.leavePlaced();
            open = false;
        }
    }
}
