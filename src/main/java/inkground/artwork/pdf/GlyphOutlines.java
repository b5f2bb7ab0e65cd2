package inkground.artwork.pdf;

import inkground.geometry.Awt;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.io.IOException;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDVectorFont;
import org.apache.pdfbox.util.Vector;

/** Outlines of the glyphs of a page, each read once. */
final class GlyphOutlines {
    private final Map<PDFont, Map<Integer, GeneralPath>> glyphs = new IdentityHashMap<>();

    /**
     * Appends a glyph.
     *
     * @param to outline in page space
     * @param glyphToPage from text space scaled by the font size to page space
     * @param displacement to the next glyph, in text space
     */
    void append(Outline.Builder to, PDFont used, int code, Matrix glyphToPage, Vector displacement) throws IOException {
        Map<Integer, GeneralPath> known = glyphs.computeIfAbsent(used, f -> new HashMap<>());
        GeneralPath path = known.get(code);
        if (path == null) {
            path = path(used, code);
            known.put(code, path);
        }
        AffineTransform em = used.getFontMatrix().createAffineTransform();
        em.scale(widthFactor(used, code, displacement), 1);
        Matrix emToPage = new Matrix(
                        em.getScaleX(),
                        em.getShearY(),
                        em.getShearX(),
                        em.getScaleY(),
                        em.getTranslateX(),
                        em.getTranslateY())
                .then(glyphToPage);
        Awt.append(to, path, emToPage);
    }

    private static GeneralPath path(PDFont font, int code) throws IOException {
        boolean lineFeed = code == 10 && font.isStandard14(); // has no glyph, though the substitute may draw one
        if (lineFeed || !(font instanceof PDVectorFont vector)) {
            return new GeneralPath();
        }
        GeneralPath path = vector.getNormalizedPath(code);
        return path == null ? new GeneralPath() : path;
    }

    /** A substitute's glyph is stretched to the width that the file states for the missing font. */
    private static double widthFactor(PDFont font, int code, Vector displacement) throws IOException {
        boolean substitute = !font.isEmbedded() && !font.isVertical() && !font.isStandard14();
        if (!substitute || !font.hasExplicitWidth(code)) {
            return 1;
        }
        float own = font.getWidthFromFont(code);
        float wanted = displacement.getX() * 1000;
        return own > 0 && wanted > 0 ? wanted / own : 1;
    }

    /** Whether a font that the file does not carry has no glyph for a code that {@link #append} was asked for. */
    boolean lacks(PDFont used, int code) throws IOException {
        GeneralPath path = glyphs.getOrDefault(used, Map.of()).get(code);
        boolean empty = path == null || path.getCurrentPoint() == null;
        String said = used.toUnicode(code);
        boolean blank = said != null && said.isBlank();
        return !blank && (empty || used instanceof PDVectorFont vector && !vector.hasGlyph(code));
    }
}
