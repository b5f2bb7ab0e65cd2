package inkground.artwork.svg;

import java.awt.Composite;
import java.awt.Graphics2D;
import java.lang.ref.SoftReference;
import java.text.AttributedCharacterIterator;
import java.text.CharacterIterator;
import java.util.List;
import org.apache.batik.bridge.StrokingTextPainter;
import org.apache.batik.gvt.font.GVTFont;
import org.apache.batik.gvt.text.TextPaintInfo;
import org.w3c.dom.Element;

/** Paints type run by run and tells a recording what each run says and in which font. */
final class TypePainter extends StrokingTextPainter {
    private static final int MAX_TEXT = 10_000;

    @Override
    protected void paintTextRuns(@SuppressWarnings("rawtypes") List runs, Graphics2D g) {
        if (!(g instanceof RecordingGraphics recording)) {
            super.paintTextRuns(runs, g);
            return;
        }
        Composite outer = g.getComposite();
        for (Object each : runs) {
            TextRun run = (TextRun) each;
            AttributedCharacterIterator text = run.getACI();
            text.first();
            GVTFont font = (GVTFont) text.getAttribute(GVT_FONT);
            TextPaintInfo info = (TextPaintInfo) text.getAttribute(PAINT_INFO);
            Element element = element(text.getAttribute(TEXT_COMPOUND_ID));
            if (info != null && info.composite != null) {
                g.setComposite(info.composite);
            }
            recording.beginType(element, font, words(text));
            run.getLayout().draw(g);
            recording.endType();
            g.setComposite(outer);
        }
    }

    private static Element element(Object reference) {
        return reference instanceof SoftReference<?> soft && soft.get() instanceof Element e ? e : null;
    }

    private static String words(AttributedCharacterIterator text) {
        StringBuilder out = new StringBuilder();
        for (char c = text.first(); c != CharacterIterator.DONE && out.length() < MAX_TEXT; c = text.next()) {
            out.append(c);
        }
        text.first();
        return out.toString();
    }
}
