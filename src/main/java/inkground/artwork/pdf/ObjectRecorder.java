package inkground.artwork.pdf;

import inkground.artwork.Clip;
import inkground.artwork.Op;
import inkground.artwork.Origin;
import inkground.artwork.Paint;
import inkground.artwork.Style;
import inkground.artwork.TextUse;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import inkground.geometry.Pen;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;

/** Records what is painted in the graphics state in force: outlines of paths and type, shadings, images. */
final class ObjectRecorder {
    private final PageRecorder recorder;
    private final Recording recording;
    private final Paints paints;
    private final Box media;

    /** @param media of the page, which bounds what no clip does */
    ObjectRecorder(PageRecorder recorder, Recording recording, Paints paints, Box media) {
        this.recorder = recorder;
        this.recording = recording;
        this.paints = paints;
        this.media = media;
    }

    /**
     * An outline, in page space; fill and stroke are one object.
     *
     * @param fill rule to fill with; null for no fill
     * @param use what it says, if it is type; null else
     */
    void paint(Outline outline, FillRule fill, boolean stroke, TextUse use) throws IOException {
        Op.Fill filled = fill == null ? null : fill(outline, fill, use);
        Op.Stroke stroked = stroke ? stroke(outline, use) : null;
        if (filled != null && stroked != null && Knockouts.matters(List.of(filled, stroked))) {
            recording.add(Knockouts.group(filled, stroked, recording.clip(), recording.origin()));
            return;
        }
        if (filled != null) {
            recording.add(filled);
        }
        if (stroked != null) {
            recording.add(stroked);
        }
    }

    private Op.Fill fill(Outline outline, FillRule rule, TextUse use) throws IOException {
        Paint paint = paints.current(false);
        return paint == null
                ? null
                : new Op.Fill(outline, rule, paint, use, recorder.style(false), recording.clip(), recording.origin());
    }

    private Op.Stroke stroke(Outline outline, TextUse use) throws IOException {
        Paint paint = paints.current(true);
        if (paint == null) {
            return null;
        }
        Matrix toPage = recorder.ctmToPage();
        Style style = recorder.style(true);
        if (!toPage.invertible()) {
            // A pen flattened to nothing still leaves the thinnest line.
            Pen hairline = new Pen(0, Pen.Cap.BUTT, Pen.Join.MITER, 10, new double[0], 0);
            return new Op.Stroke(
                    outline, hairline, Matrix.IDENTITY, paint, use, style, recording.clip(), recording.origin());
        }
        Pen pen = recorder.pen();
        Outline inPenSpace = outline.transform(toPage.inverse());
        return new Op.Stroke(inPenSpace, pen, toPage, paint, use, style, recording.clip(), recording.origin());
    }

    /** sh, which fills the clip. */
    void shade(COSName name) throws IOException {
        COSDictionary resources = recorder.resources();
        COSDictionary dict = Cos.dictionary(Cos.dictionary(resources, "Shading"), name.getName());
        if (dict == null) {
            throw new IOException("shading " + name.getName() + " is not defined");
        }
        Paint.Shading shading = paints.shading(dict, resources, recorder.ctmToPage(), false, recorder.rendering());
        Clip clip = recording.clip();
        Box bounds = clip == null ? media : clip.bounds();
        recording.add(new Op.Shade(shading, bounds, recorder.style(false), clip, recording.origin()));
    }

    /** An image, or the current colour through a stencil. */
    void image(PdfImage image) throws IOException {
        Matrix unitToPage = recorder.ctmToPage();
        Clip clip = recording.clip();
        Origin origin = recording.origin();
        if (!image.isStencil()) {
            // §11.6.5.3: an image's own soft mask takes the place of the one in the graphics state.
            Style style = image.hasSoftMask()
                    ? States.style(recorder.getGraphicsState(), false, null, paints.transfer())
                    : recorder.style(false);
            recording.add(new Op.Image(image.by(recorder.rendering()), unitToPage, style, clip, origin));
            return;
        }
        Paint paint = paints.current(false);
        if (paint != null) {
            recording.add(new Op.Stencil(image, unitToPage, paint, recorder.style(false), clip, origin));
        }
    }
}
