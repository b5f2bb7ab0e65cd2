package inkground.artwork.svg;

import inkground.base.Refusal;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Set;
import javax.xml.XMLConstants;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParserFactory;
import org.apache.batik.anim.dom.SVGOMDocument;
import org.apache.batik.dom.util.SAXDocumentFactory;
import org.apache.batik.dom.util.SAXIOException;
import org.apache.batik.util.ParsedURL;
import org.xml.sax.Attributes;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.XMLReader;
import org.xml.sax.helpers.AttributesImpl;
import org.xml.sax.helpers.XMLFilterImpl;

/**
 * Parses SVG safely: no external entity or style sheet, few and small internal entities, bounded depth and number of
 * elements. On the way what SVG 2 writes in a new way is written in the old: plain {@code href}, colour functions.
 */
final class SvgXml extends XMLFilterImpl {
    static final String SVG = "http://www.w3.org/2000/svg";
    static final String XLINK = "http://www.w3.org/1999/xlink";

    /** Base of all references; nothing lies there. */
    static final String ADDRESS = "file:///artwork.svg";

    private static final int MAX_ENTITY_REFERENCES = 2_000;
    private static final int MAX_ENTITY_CHARS = 1_000_000;
    private static final int MAX_OCTAVES = 12;
    /** In one text element: laying out takes memory for each. */
    private static final int MAX_TEXT_CHARS = 50_000;

    private static final String LIMIT = "http://www.oracle.com/xml/jaxp/properties/";
    private static final Set<String> UNPAINTED = Set.of(
            "mesh", "meshgradient", "hatch", "solidcolor", "foreignObject", "video", "audio", "iframe", "canvas");

    private final byte[] data;
    private final String name;
    private final Reading reading;
    private final Notes notes;
    private final Deque<String> open = new ArrayDeque<>();
    private StringBuilder style;
    private int textChars;

    private SvgXml(byte[] data, String name, Reading reading) {
        this.data = data;
        this.name = name;
        this.reading = reading;
        this.notes = reading.notes;
    }

    /**
     * @param data XML text
     * @param name of the drawing, for messages
     * @throws Refusal if it is not well-formed or not SVG
     * @throws Stopped if it is beyond the limits
     */
    static SVGOMDocument parse(byte[] data, String name, Reading reading) throws Refusal {
        SvgXml filter = new SvgXml(data, name, reading);
        try {
            filter.setParent(reader());
            SVGOMDocument document = (SVGOMDocument)
                    new SAXDocumentFactory(SvgDom.INSTANCE, null).createDocument(SVG, "svg", ADDRESS, filter);
            document.setParsedURL(new ParsedURL(ADDRESS));
            document.setDocumentURI(ADDRESS);
            return document;
        } catch (IOException | ParserConfigurationException | SAXException e) {
            Throwable inner = e instanceof SAXIOException wrapped
                    ? wrapped.getSAXException().getException()
                    : null;
            throw inner instanceof Refusal refusal ? refusal : notWellFormed(name, e);
        }
    }

    private static Refusal notWellFormed(String name, Exception e) {
        boolean entities = String.valueOf(e.getMessage()).contains("JAXP0001");
        return new Refusal(
                entities
                        ? name
                                + " repeats text by entities beyond any use, which makes it unreadably large. Export it again"
                                + " without entities."
                        : name + " is not well-formed XML and cannot be read as SVG. Export it again.",
                e);
    }

    private static XMLReader reader() throws ParserConfigurationException, SAXException {
        SAXParserFactory factory = SAXParserFactory.newDefaultInstance();
        factory.setNamespaceAware(true);
        factory.setValidating(false);
        factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
        factory.setFeature("http://xml.org/sax/features/external-general-entities", false);
        factory.setFeature("http://xml.org/sax/features/external-parameter-entities", false);
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        factory.setFeature("http://xml.org/sax/features/namespace-prefixes", true);
        var parser = factory.newSAXParser();
        parser.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
        parser.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
        parser.setProperty(LIMIT + "entityExpansionLimit", String.valueOf(MAX_ENTITY_REFERENCES));
        parser.setProperty(LIMIT + "totalEntitySizeLimit", String.valueOf(MAX_ENTITY_CHARS));
        parser.setProperty(LIMIT + "maxGeneralEntitySizeLimit", String.valueOf(MAX_ENTITY_CHARS));
        return parser.getXMLReader();
    }

    @Override
    public void parse(String address) throws SAXException, IOException {
        InputSource source = new InputSource(new ByteArrayInputStream(data));
        source.setSystemId(address);
        parse(source);
    }

    @Override
    public InputSource resolveEntity(String publicId, String systemId) {
        return new InputSource(new StringReader(""));
    }

    @Override
    public void processingInstruction(String target, String text) {
        if (target.equals("xml-stylesheet")) {
            notes.add("a style sheet outside the file", "without it", null);
        }
    }

    @Override
    public void startElement(String uri, String local, String qName, Attributes attributes) throws SAXException {
        reading.parsed();
        if (open.size() >= reading.limits.nesting()) {
            throw reading.stop("nests elements more than " + reading.limits.nesting() + " deep. Ungroup the artwork.");
        }
        AttributesImpl own = new AttributesImpl(attributes);
        if (open.isEmpty()) {
            uri = root(uri, local, own);
        }
        open.push(local);
        textChars = local.equals("text") ? 0 : textChars;
        if (uri.equals(SVG)) {
            look(local);
            rewrite(local, own);
            style = local.equals("style") ? new StringBuilder() : style;
        }
        super.startElement(uri, local, qName, own);
    }

    /** An svg element without a namespace is taken for SVG, which is what it is meant to be. */
    private String root(String uri, String local, AttributesImpl own) throws SAXException {
        if (!local.equals("svg") || !uri.equals(SVG) && !uri.isEmpty()) {
            throw new SAXException(
                    new Refusal(name + " is XML but not SVG: its first element is " + local + ". Choose an SVG file."));
        }
        if (uri.isEmpty()) {
            own.addAttribute("", "xmlns", "xmlns", "CDATA", SVG);
        }
        return SVG;
    }

    private void look(String local) {
        if (local.equals("script")) {
            notes.add("a script", "it is not run", null);
        } else if (local.startsWith("animate") || local.equals("set")) {
            notes.add("animation", "the picture at its start", null);
        } else if (UNPAINTED.contains(local)) {
            notes.add("the element " + local, "without it", null);
        }
    }

    private void rewrite(String local, AttributesImpl own) {
        int href = own.getIndex("", "href");
        if (href >= 0 && !local.equals("a") && own.getIndex(XLINK, "href") < 0) {
            own.addAttribute("http://www.w3.org/2000/xmlns/", "xlink", "xmlns:xlink", "CDATA", XLINK);
            own.addAttribute(XLINK, "href", "xlink:href", "CDATA", own.getValue(href));
        }
        if (local.equals("feTurbulence")) {
            int octaves = own.getIndex("numOctaves");
            if (octaves >= 0 && own.getValue(octaves).trim().length() > 1) {
                own.setValue(octaves, String.valueOf(MAX_OCTAVES)); // further ones are below half a level
            }
        }
        ModernColours.rewrite(own);
    }

    @Override
    public void characters(char[] chars, int start, int length) throws SAXException {
        textChars += length;
        if (textChars > MAX_TEXT_CHARS && style == null && open.contains("text")) {
            throw reading.stop("has a text of more than " + MAX_TEXT_CHARS
                    + " characters in one piece. Split it into paragraphs.");
        }
        if (style != null) {
            style.append(chars, start, length);
        } else {
            super.characters(chars, start, length);
        }
    }

    @Override
    public void endElement(String uri, String local, String qName) throws SAXException {
        if (style != null && local.equals("style")) {
            String text = ModernColours.rewriteCss(style.toString());
            style = null;
            super.characters(text.toCharArray(), 0, text.length());
        }
        open.pop();
        super.endElement(uri, local, qName);
    }
}
