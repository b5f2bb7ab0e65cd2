package inkground.artwork.pdf;

import inkground.artwork.TextUse;
import inkground.geometry.Awt;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.io.IOException;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import org.apache.fontbox.FontBoxFont;
import org.apache.pdfbox.pdmodel.font.PDCIDFont;
import org.apache.pdfbox.pdmodel.font.PDCIDFontType0;
import org.apache.pdfbox.pdmodel.font.PDCIDFontType2;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDSimpleFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.font.PDVectorFont;
import org.apache.pdfbox.util.Vector;

/** Collects the glyphs of one show string into one outline, and what they say. */
final class TextRecorder {
    private static final int SUBSET_TAG = 6;
    private static final int MAX_TEXT = 10_000;

    private final Map<PDFont, Map<Integer, GeneralPath>> glyphs;
    private Outline.Builder shown = new Outline.Builder();
    private Outline.Builder clip = new Outline.Builder();
    private StringBuilder text = new StringBuilder();
    private PDFont font;
    private double sizePt;
    private int firstOp;
    private boolean outlinesOnly;

    TextRecorder() {
        this.glyphs = new IdentityHashMap<>();
    }

    private TextRecorder(Map<PDFont, Map<Integer, GeneralPath>> glyphs) {
        this.glyphs = glyphs;
    }

    /** A recorder for a nested content stream, sharing the glyphs read so far. */
    TextRecorder nested() {
        return new TextRecorder(glyphs);
    }

    /** @param opsBefore operations recorded before the text object that begins */
    void startObject(int opsBefore) {
        firstOp = opsBefore;
        outlinesOnly = true;
        clip = new Outline.Builder();
    }

    /** Notes that a glyph of a Type 3 font was shown in this text object. */
    void type3Shown() {
        outlinesOnly = false;
    }

    /** @return operations recorded before this text object */
    int firstOp() {
        return firstOp;
    }

    /** @return whether all glyphs shown in this text object were outlines */
    boolean outlinesOnly() {
        return outlinesOnly;
    }

    void startShow() {
        shown = new Outline.Builder();
        text = new StringBuilder();
        font = null;
    }

    /**
     * Adds a glyph's code to what is said and takes its size; the outline is added by {@link #outline}.
     *
     * @param glyphToPage from text space scaled by the font size to page space
     */
    void note(PDFont used, int code, Matrix glyphToPage) {
        font = used;
        sizePt = Math.hypot(glyphToPage.c(), glyphToPage.d());
        String unicode = used.toUnicode(code);
        if (unicode != null && text.length() < MAX_TEXT) {
            text.append(unicode);
        }
    }

    void outline(PDFont used, int code, Matrix glyphToPage, Vector displacement) throws IOException {
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
        Awt.append(shown, path, emToPage);
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

    Outline shown() {
        return shown.build();
    }

    /** What the type shown since {@link #startShow} is; null when nothing was shown. */
    TextUse use() {
        return font == null ? null : new TextUse(name(font), sizePt, font.isEmbedded(), text.toString());
    }

    void addToClip(Outline outline) {
        clip.append(outline);
    }

    /** The clip collected by render modes 4 to 7 since the text object began; it starts afresh. */
    Outline takeClip() {
        Outline taken = clip.build();
        clip = new Outline.Builder();
        return taken;
    }

    /** The font's name without the tag of six letters and a plus that marks a subset. */
    static String name(PDFont font) {
        String name = font.getName();
        if (name == null) {
            return "unnamed";
        }
        boolean tagged = name.length() > SUBSET_TAG + 1
                && name.charAt(SUBSET_TAG) == '+'
                && name.chars().limit(SUBSET_TAG).allMatch(c -> c >= 'A' && c <= 'Z');
        return tagged ? name.substring(SUBSET_TAG + 1) : name;
    }

    /** Whether a font that the file does not carry has no glyph for a code that {@link #outline} was asked for. */
    boolean lacks(PDFont used, int code) throws IOException {
        GeneralPath path = glyphs.getOrDefault(used, Map.of()).get(code);
        boolean empty = path == null || path.getCurrentPoint() == null;
        String said = used.toUnicode(code);
        boolean blank = said != null && said.isBlank();
        return !blank && (empty || used instanceof PDVectorFont vector && !vector.hasGlyph(code));
    }

    /** Names the font whose glyphs are drawn for one that the file does not carry; which it is depends on the machine. */
    static String standIn(PDFont font) throws IOException {
        FontBoxFont drawn = null;
        if (font instanceof PDSimpleFont simple) {
            drawn = simple.getFontBoxFont();
        } else if (font instanceof PDType0Font composite) {
            PDCIDFont descendant = composite.getDescendantFont();
            drawn = descendant instanceof PDCIDFontType0 outlines
                    ? outlines.getFontBoxFont()
                    : ((PDCIDFontType2) descendant).getTrueTypeFont();
        }
        String name = drawn == null ? null : drawn.getName();
        return name == null ? "a similar font" : "the font " + name;
    }
}
