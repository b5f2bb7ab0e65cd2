package inkground.artwork.svg;

import inkground.artwork.Approximation;
import inkground.artwork.Origin;
import inkground.artwork.Visibility;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.w3c.dom.Element;

/** What reading could not keep exactly, each thing once. */
final class Notes {
    private static final int MAX_NOTES = 200;

    private final Map<String, Approximation> notes = new LinkedHashMap<>();

    void add(String feature, String shownAs, Element where) {
        if (notes.size() < MAX_NOTES) {
            Origin origin = where == null ? null : new Origin(name(where), 0, Visibility.ALWAYS);
            notes.putIfAbsent(feature, new Approximation(feature, shownAs, origin));
        }
    }

    /** @return how to call an element: its tag, and its id where it has one */
    static String name(Element e) {
        String id = e.getAttributeNS(null, "id");
        String tag = e.getLocalName() == null ? e.getNodeName() : e.getLocalName();
        return id.isEmpty() ? tag : tag + " " + (id.length() > 80 ? id.substring(0, 80) : id);
    }

    List<Approximation> list() {
        return List.copyOf(notes.values());
    }
}
