package inkground.artwork.pdf;

import inkground.artwork.Clip;
import inkground.artwork.Op;
import inkground.artwork.TextUse;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.io.IOException;
import java.util.List;
import org.apache.fontbox.FontBoxFont;
import org.apache.pdfbox.pdmodel.font.PDCIDFont;
import org.apache.pdfbox.pdmodel.font.PDCIDFontType0;
import org.apache.pdfbox.pdmodel.font.PDCIDFontType2;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDSimpleFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.font.PDType3Font;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.apache.pdfbox.util.Vector;

/** Records the type of one content stream: the glyphs of a show string as one outline, with what they say. */
final class TextRecorder {
    private static final int SUBSET_TAG = 6;
    private static final int MAX_TEXT = 10_000;

    private final PageRecorder recorder;
    private final Recording recording;
    private final ObjectRecorder objects;
    private final GlyphOutlines outlines;
    private Outline.Builder shown = new Outline.Builder();
    private Outline.Builder clip = new Outline.Builder();
    private StringBuilder text = new StringBuilder();
    private PDFont font;
    private double sizePt;
    private int firstOp;
    private boolean outlinesOnly;

    /** For the page's own content. */
    TextRecorder(PageRecorder recorder, Recording recording, ObjectRecorder objects) {
        this(recorder, recording, objects, new GlyphOutlines());
    }

    private TextRecorder(PageRecorder recorder, Recording recording, ObjectRecorder objects, GlyphOutlines outlines) {
        this.recorder = recorder;
        this.recording = recording;
        this.objects = objects;
        this.outlines = outlines;
    }

    /** A recorder for a nested content stream, sharing the glyphs read so far. */
    TextRecorder nested() {
        return new TextRecorder(recorder, recording, objects, outlines);
    }

    // ---- text objects ----

    /** BT. */
    void startObject() {
        firstOp = recording.count();
        outlinesOnly = true;
        clip = new Outline.Builder();
    }

    /** ET: what render modes 4 to 7 have shown narrows the clip. */
    void endObject() {
        knockOut();
        Outline outline = clip.build();
        clip = new Outline.Builder();
        if (!outline.isEmpty()) {
            recording.clip(Clip.of(recording.clip(), outline, FillRule.NON_ZERO));
        }
    }

    /** §9.3.8: under TK, all glyphs of a text object are one object, so that overlaps do not show twice. */
    private void knockOut() {
        List<Op> parts = recording.since(firstOp);
        if (outlinesOnly && knockout() && Knockouts.matters(parts)) {
            Op whole = Knockouts.group(List.copyOf(parts), null, recording.origin());
            parts.clear();
            parts.add(whole);
        }
    }

    private boolean knockout() {
        return recorder.getGraphicsState().getTextState().getKnockoutFlag();
    }

    // ---- show strings ----

    /** Before a string, or strings on one line, are shown. */
    void startShow() {
        shown = new Outline.Builder();
        text = new StringBuilder();
        font = null;
    }

    /** Records what was shown since. */
    void endShow() throws IOException {
        Outline outline = shown.build();
        if (outline.isEmpty()) {
            return;
        }
        RenderingMode mode = recorder.getGraphicsState().getTextState().getRenderingMode();
        if (mode.isFill() || mode.isStroke()) {
            objects.paint(outline, mode.isFill() ? FillRule.NON_ZERO : null, mode.isStroke(), use());
        }
        if (mode.isClip()) {
            clip.append(outline);
        }
    }

    /**
     * A glyph of a font of outlines.
     *
     * @param glyphToPage from text space scaled by the font size to page space
     * @param displacement to the next glyph, in text space
     */
    void glyph(PDFont used, int code, Matrix glyphToPage, Vector displacement) throws IOException {
        note(used, code, glyphToPage);
        recorder.guarded(
                "a glyph of the font " + name(used),
                () -> outlines.append(shown, used, code, glyphToPage, displacement));
        if (!used.isEmbedded()) {
            noteSubstitute(used, code);
        }
        if (!knockout()
                && (Knockouts.transparent(recorder.style(false)) || Knockouts.transparent(recorder.style(true)))) {
            endShow(); // every glyph is an object of its own
            startShow();
        }
    }

    private void noteSubstitute(PDFont used, int code) throws IOException {
        String name = "the font " + name(used) + ", which the file does not carry";
        String standIn = standIn(used);
        recording.approximate(name, standIn + " in its place");
        if (outlines.lacks(used, code)) {
            recording.approximate(
                    "characters of " + name, "as blanks or boxes, since " + standIn + " has not got them");
        }
    }

    /**
     * A glyph of a font whose glyphs are content.
     *
     * @param glyphToPage as for {@link #glyph}
     * @return what the glyph alone says
     */
    TextUse type3(PDType3Font used, int code, Matrix glyphToPage) throws IOException {
        outlinesOnly = false;
        note(used, code, glyphToPage);
        String said = used.toUnicode(code);
        return new TextUse(name(used), sizePt, true, said == null ? "" : said);
    }

    /** Adds a glyph to what is said, and takes its size. */
    private void note(PDFont used, int code, Matrix glyphToPage) {
        font = used;
        sizePt = Math.hypot(glyphToPage.c(), glyphToPage.d());
        String unicode = used.toUnicode(code);
        if (unicode != null && text.length() < MAX_TEXT) {
            text.append(unicode);
        }
    }

    /** What the type shown since {@link #startShow} is; null when nothing was shown. */
    private TextUse use() {
        return font == null ? null : new TextUse(name(font), sizePt, font.isEmbedded(), text.toString());
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
