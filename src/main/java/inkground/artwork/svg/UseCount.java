package inkground.artwork.svg;

import java.util.IdentityHashMap;
import java.util.Map;
import org.apache.batik.dom.util.XLinkSupport;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** Counts what {@code use} elements come to before anything is drawn: a few that double each other would fill any memory. */
final class UseCount {
    private static final long ACTIVE = -1;

    private final Reading reading;
    private final Limits limits;
    private final Map<Element, Long> counts = new IdentityHashMap<>();

    private UseCount(Reading reading) {
        this.reading = reading;
        this.limits = reading.limits;
    }

    /** @throws Stopped if an element uses itself, or uses repeat more elements than the limit, or too deeply */
    static void check(Element svg, Reading reading) {
        new UseCount(reading).count(svg, 0);
    }

    private long count(Element e, int depth) {
        Long known = counts.get(e);
        if (known != null && known == ACTIVE) {
            throw reading.stop("holds an element that uses itself (" + Notes.name(e) + "). Export it again.");
        } else if (known != null) {
            return known;
        }
        if (depth > limits.nesting()) {
            throw reading.stop("nests elements and uses more than " + limits.nesting() + " deep. Ungroup the artwork.");
        }
        counts.put(e, ACTIVE);
        long total = 1;
        for (Node n = e.getFirstChild(); n != null; n = n.getNextSibling()) {
            if (n instanceof Element child) {
                total += count(child, depth + 1);
            }
        }
        Element used = "use".equals(e.getLocalName()) ? used(e) : null;
        long repeated = used == null ? 0 : count(used, depth + 1);
        counts.put(e, total + repeated);
        if (repeated > 0 && total + repeated > limits.repeated()
                || total > limits.elements() + (long) limits.repeated()) {
            throw reading.stop("repeats more than " + limits.repeated()
                    + " elements by use. Simplify the artwork or place its parts as images.");
        }
        return total + repeated;
    }

    private static Element used(Element use) {
        String address = XLinkSupport.getXLinkHref(use).trim();
        return address.startsWith("#") ? use.getOwnerDocument().getElementById(address.substring(1)) : null;
    }
}
