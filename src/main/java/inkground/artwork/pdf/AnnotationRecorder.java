package inkground.artwork.pdf;

import inkground.geometry.Box;
import inkground.geometry.Matrix;
import java.util.List;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;

/** Records the normal appearances of the annotations that print: ISO 32000-2 §12.5.5. */
final class AnnotationRecorder {
    private final PageRecorder recorder;
    private final DocumentParts parts;
    private final Recording recording;

    AnnotationRecorder(PageRecorder recorder, DocumentParts parts, Recording recording) {
        this.recorder = recorder;
        this.parts = parts;
        this.recording = recording;
    }

    void run(PDPage page) {
        recorder.guarded("annotations", () -> {
            List<PDAnnotation> all = page.getAnnotations();
            for (int i = 0; i < all.size(); i++) {
                PDAnnotation annotation = all.get(i);
                String name = "annotation " + (i + 1);
                recording.startObject(name, parts.layers().of(Cos.get(annotation.getCOSObject(), "OC")));
                recorder.guarded(name, () -> record(annotation));
            }
        });
    }

    private void record(PDAnnotation annotation) throws java.io.IOException {
        boolean prints = annotation.isPrinted() && !annotation.isHidden() && !"Popup".equals(annotation.getSubtype());
        PDAppearanceStream appearance = prints ? recorder.getAppearance(annotation) : null;
        if (appearance == null) {
            return;
        }
        COSStream stream = appearance.getCOSObject();
        Box rect = Cos.box(annotation.getCOSObject(), "Rect");
        Box bbox = Cos.box(stream, "BBox");
        if (rect == null || bbox == null || rect.isEmpty() || bbox.isEmpty()) {
            return;
        }
        // Algorithm of §12.5.5: the transformed appearance box is fitted to the annotation's rectangle.
        Box from = Cos.matrix(stream, "Matrix").bounds(bbox);
        if (from.isEmpty()) {
            return;
        }
        double sx = rect.width() / from.width();
        double sy = rect.height() / from.height();
        Matrix fit = new Matrix(sx, 0, 0, sy, rect.x0() - from.x0() * sx, rect.y0() - from.y0() * sy);
        recorder.saveGraphicsState();
        try {
            recorder.getGraphicsState().setCurrentTransformationMatrix(Cos.matrix(fit));
            recorder.drawForm(stream, "appearance");
        } finally {
            recorder.restoreGraphicsState();
        }
    }
}
