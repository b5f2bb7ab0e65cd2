package inkground.artwork.svg;

import org.apache.batik.css.engine.CSSEngine;
import org.apache.batik.css.engine.value.AbstractValueManager;
import org.apache.batik.css.engine.value.StringValue;
import org.apache.batik.css.engine.value.Value;
import org.apache.batik.css.engine.value.ValueConstants;
import org.apache.batik.util.SVGTypes;
import org.w3c.css.sac.LexicalUnit;
import org.w3c.dom.css.CSSPrimitiveValue;

/** A CSS property of one or more words, which the library by itself does not know. */
final class WordProperty extends AbstractValueManager {
    /** Compositing and Blending Level 1 §3.2. */
    static final String BLEND = "mix-blend-mode";
    /** Compositing and Blending Level 1 §3.3. */
    static final String ISOLATION = "isolation";
    /** CSS Masking Level 1 §7.2. */
    static final String MASK_TYPE = "mask-type";
    /** SVG 2 §13.8. */
    static final String PAINT_ORDER = "paint-order";
    /** SVG 2 §8.13. */
    static final String VECTOR_EFFECT = "vector-effect";

    private final String name;
    private final Value initial;
    private final boolean inherited;

    WordProperty(String name, String initial, boolean inherited) {
        this.name = name;
        this.initial = new StringValue(CSSPrimitiveValue.CSS_IDENT, initial);
        this.inherited = inherited;
    }

    @Override
    public String getPropertyName() {
        return name;
    }

    @Override
    public boolean isInheritedProperty() {
        return inherited;
    }

    @Override
    public boolean isAnimatableProperty() {
        return false;
    }

    @Override
    public boolean isAdditiveProperty() {
        return false;
    }

    @Override
    public int getPropertyType() {
        return SVGTypes.TYPE_IDENT;
    }

    @Override
    public Value getDefaultValue() {
        return initial;
    }

    @Override
    public Value createValue(LexicalUnit first, CSSEngine engine) {
        StringBuilder words = new StringBuilder();
        for (LexicalUnit unit = first; unit != null; unit = unit.getNextLexicalUnit()) {
            if (unit.getLexicalUnitType() == LexicalUnit.SAC_INHERIT) {
                return ValueConstants.INHERIT_VALUE;
            } else if (unit.getLexicalUnitType() != LexicalUnit.SAC_IDENT) {
                throw createInvalidLexicalUnitDOMException(unit.getLexicalUnitType());
            }
            words.append(words.length() == 0 ? "" : " ").append(unit.getStringValue());
        }
        return new StringValue(CSSPrimitiveValue.CSS_IDENT, words.toString());
    }
}
