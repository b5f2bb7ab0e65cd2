package inkground.artwork.svg;

import java.util.List;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** Writes feDropShadow, which the library does not know, as the primitives that Filter Effects Module Level 1 §9.12 says it is. */
final class DropShadows {
    private static final String NAME = "feDropShadow";
    private static final String LENGTH = "2"; // initial value of its deviation and offsets
    private static final List<String> STYLE =
            List.of("class", "style", "flood-color", "flood-opacity", "color", "color-interpolation-filters");
    private static final List<String> PLACE = List.of("x", "y", "width", "height");

    private final Element shadow;
    private final String key;

    private DropShadows(Element shadow, String key) {
        this.shadow = shadow;
        this.key = key;
    }

    /** Changes all of a document. */
    static void expand(Document document) {
        NodeList found = document.getElementsByTagNameNS(SvgXml.SVG, NAME);
        for (int i = found.getLength() - 1; i >= 0; i--) { // it loses those that are replaced
            new DropShadows((Element) found.item(i), NAME + i).expand();
        }
    }

    private void expand() {
        String in = in();
        Element blur = put("feGaussianBlur", "in", in);
        blur.setAttributeNS(null, "stdDeviation", or("stdDeviation", LENGTH));
        Element offset = put("feOffset", "result", key + "-offset");
        offset.setAttributeNS(null, "dx", or("dx", LENGTH));
        offset.setAttributeNS(null, "dy", or("dy", LENGTH));
        put("feFlood", "result", key + "-flood");
        put("feComposite", "in2", key + "-offset").setAttributeNS(null, "operator", "in");
        Element merge = put("feMerge", "result", shadow.getAttributeNS(null, "result"));
        copy(PLACE, merge);
        merge.appendChild(element("feMergeNode"));
        Element above = element("feMergeNode");
        above.setAttributeNS(null, "in", in);
        merge.appendChild(above);
        shadow.getParentNode().removeChild(shadow);
    }

    /** @return what it shadows; the result before it, where it does not say, gets a name */
    private String in() {
        Node before = shadow.getPreviousSibling();
        while (before != null
                && !(before instanceof Element e && e.getLocalName().startsWith("fe"))) {
            before = before.getPreviousSibling();
        }
        if (!(before instanceof Element e) || shadow.hasAttributeNS(null, "in")) {
            return or("in", "SourceGraphic");
        }
        if (e.getAttributeNS(null, "result").isEmpty()) {
            e.setAttributeNS(null, "result", key + "-in");
        }
        return e.getAttributeNS(null, "result");
    }

    private Element put(String name, String attribute, String value) {
        Element e = element(name);
        copy(STYLE, e);
        e.setAttributeNS(null, attribute, value);
        shadow.getParentNode().insertBefore(e, shadow);
        return e;
    }

    private Element element(String name) {
        return shadow.getOwnerDocument().createElementNS(SvgXml.SVG, name);
    }

    private void copy(List<String> names, Element to) {
        for (String name : names) {
            if (shadow.hasAttributeNS(null, name)) {
                to.setAttributeNS(null, name, shadow.getAttributeNS(null, name));
            }
        }
    }

    private String or(String name, String otherwise) {
        String value = shadow.getAttributeNS(null, name);
        return value.isEmpty() ? otherwise : value;
    }
}
