package inkground.artwork.svg;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.apache.batik.anim.dom.SVGDOMImplementation;
import org.apache.batik.anim.dom.SVGOMDocument;
import org.apache.batik.css.engine.CSSContext;
import org.apache.batik.css.engine.CSSEngine;
import org.apache.batik.css.engine.SVGCSSEngine;
import org.apache.batik.css.engine.value.ShorthandManager;
import org.apache.batik.css.engine.value.ValueManager;
import org.apache.batik.css.parser.ExtendedParser;
import org.apache.batik.dom.AbstractDocument;
import org.apache.batik.dom.AbstractStylableDocument;
import org.apache.batik.dom.GenericElementNS;
import org.w3c.dom.DOMException;
import org.w3c.dom.Element;

/** The library's document, with five more CSS properties, and elements that it does not know kept instead of refused. */
final class SvgDom extends SVGDOMImplementation {
    static final SvgDom INSTANCE = new SvgDom();

    private final String defaultStyle;

    private SvgDom() {
        registerCustomCSSValueManager(new WordProperty(WordProperty.BLEND, "normal", false));
        registerCustomCSSValueManager(new WordProperty(WordProperty.ISOLATION, "auto", false));
        registerCustomCSSValueManager(new WordProperty(WordProperty.MASK_TYPE, "luminance", false));
        registerCustomCSSValueManager(new WordProperty(WordProperty.PAINT_ORDER, "normal", true));
        registerCustomCSSValueManager(new WordProperty(WordProperty.VECTOR_EFFECT, "none", false));
        try (InputStream in = SVGDOMImplementation.class.getResourceAsStream("resources/UserAgentStyleSheet.css")) {
            defaultStyle = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("the library's own style sheet", e);
        }
    }

    @Override
    public CSSEngine createCSSEngine(
            AbstractStylableDocument document,
            CSSContext context,
            ExtendedParser parser,
            ValueManager[] values,
            ShorthandManager[] shorthands) {
        var address = ((SVGOMDocument) document).getParsedURL();
        CSSEngine engine = new SVGCSSEngine(document, address, parser, values, shorthands, context);
        engine.setUserAgentStyleSheet(engine.parseStyleSheet(defaultStyle, address, "all"));
        return engine;
    }

    @Override
    public Element createElementNS(AbstractDocument document, String namespace, String name) {
        try {
            return super.createElementNS(document, namespace, name);
        } catch (DOMException e) {
            return new GenericElementNS(namespace, name, document); // a newer element: it paints nothing, and is noted
        }
    }
}
