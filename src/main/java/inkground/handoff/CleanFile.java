package inkground.handoff;

import inkground.artwork.Artwork;
import inkground.artwork.ColourAssignment;
import inkground.artwork.DisplayList;
import inkground.artwork.PageBox;
import inkground.artwork.pdf.PdfArtwork;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.base.SafeFiles;
import inkground.colour.PrintCondition;
import inkground.geometry.Matrix;
import inkground.plate.InkMapping;
import inkground.plate.Plate;
import inkground.plate.PlateRequest;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/**
 * Writes a PDF in which bare colours print nothing and nothing that they hid comes to light. Vectors stay vectors, type stays
 * type, inks keep their names, boxes and layers stay.
 *
 * <p>A bare object with nothing beneath it is taken out of the content. One with paint beneath is taken out too, and every
 * earlier object it lies on is clipped to what is outside of it, by an even-odd path: a technique of the first version of PDF,
 * that needs no transparency and that every renderer honours. What was written is painted again and its planes compared with
 * those of the artwork with the colours bare; a file that differs is not kept.
 */
public final class CleanFile {
    /** Pixels of a page that are compared; a larger page is compared more coarsely. */
    private static final double COMPARED_PX = 8_000_000;

    private static final double FINEST_DPI = 100;
    private static final int ROWS_AT_ONCE = 512;

    private CleanFile() {}

    /**
     * What to write.
     *
     * @param artwork an open PDF
     * @param nominated rules; only those that make colours bare count
     * @param condition how process inks print
     * @param file where the new file goes
     * @param replace whether an existing file may be replaced
     */
    public record Order(
            PdfArtwork artwork, ColourAssignment nominated, PrintCondition condition, Path file, boolean replace) {
        /** Keeps the bare rules alone. */
        public Order {
            nominated = new ColourAssignment(nominated.rules().stream()
                    .filter(rule -> rule.to() instanceof ColourAssignment.Bare)
                    .toList());
        }
    }

    /**
     * What was done.
     *
     * @param removed number of bare objects taken out
     * @param knockedOut how many of them lay on other paint, which was clipped
     */
    public record Result(int removed, int knockedOut) {}

    /**
     * Writes the file, whole or not at all.
     *
     * @throws Refusal if nothing is painted in a bare colour, if one is where it cannot be taken out truly, or if the file
     *     cannot be written
     */
    public static Result write(Order order, Cancel cancel, Progress progress) throws Refusal {
        int[] counts = new int[2];
        SafeFiles.file(order.file(), order.replace(), temporary -> {
            try (PDDocument document = Loader.loadPDF(order.artwork().file().toFile())) {
                refuseLocked(document, order.artwork().file());
                int page = 0;
                for (PDPage one : document.getPages()) {
                    cancel.check();
                    progress.report("knocking out", (double) page / document.getNumberOfPages());
                    Scene scene = rewrite(order, document, one, ++page, cancel);
                    counts[0] += scene.bareObjects();
                    counts[1] += scene.knockOuts();
                }
                if (counts[0] == 0) {
                    throw new Refusal(
                            order.artwork().file().getFileName()
                                    + ": nothing is painted in the colours named as bare. Check them with 'inkground colours'.");
                }
                document.save(temporary.toFile());
            }
            verify(order, temporary, cancel, progress);
        });
        return new Result(counts[0], counts[1]);
    }

    private static void refuseLocked(PDDocument document, Path file) throws Refusal {
        if (document.isEncrypted()) {
            throw new Refusal(file.getFileName()
                    + " is encrypted; a changed copy would lose its protection. Save it without encryption first.");
        }
    }

    private static Scene rewrite(Order order, PDDocument document, PDPage page, int number, Cancel cancel)
            throws Refusal, IOException {
        String name = order.artwork().file().getFileName() + ", page " + number;
        DisplayList list = order.artwork().record(number, cancel, Progress.NONE);
        InkMapping mapping =
                InkMapping.of(order.artwork().declaredColorants(number), list, order.condition(), order.nominated());
        Scene scene = new Scene(name, list, mapping, cancel);
        if (scene.bareObjects() == 0) {
            return scene;
        }
        Matrix userToPage = order.artwork().userToPage(number);
        StreamRewriter.Walk walk = new StreamRewriter.Walk(scene, userToPage);
        COSStream target = document.getDocument().createCOSStream();
        try {
            StreamRewriter.page(walk, page, page.getCOSObject(), target);
        } catch (IOException e) {
            throw new Refusal(name + ": its content is damaged and cannot be rewritten. Export the artwork again.", e);
        }
        if (!walk.finished()) {
            throw new Refusal(name + ": its content is damaged or unusual and cannot be followed to the end; nothing"
                    + " was written. Export the artwork again.");
        }
        return scene;
    }

    /** Paints what was written and compares. */
    private static void verify(Order order, Path written, Cancel cancel, Progress progress) throws Refusal {
        try (Artwork clean = PdfArtwork.open(written, cancel, Progress.NONE)) {
            for (int page = 1; page <= clean.pages().size(); page++) {
                progress.report("checking page " + page, -1);
                Plate before = plate(order.artwork(), page, order.condition(), order.nominated(), cancel);
                Plate after = plate(clean, page, order.condition(), ColourAssignment.NONE, cancel);
                var box = before.list().page().box(PageBox.MEDIA);
                double points = Math.max(1, box.width() * box.height());
                double dpi = Math.min(FINEST_DPI, 72 * Math.sqrt(COMPARED_PX / points));
                PlateRequest request =
                        PlateRequest.of(box, dpi, true, before.list().defaultLayers());
                PlaneComparison comparison = new PlaneComparison();
                before.stream(request, ROWS_AT_ONCE, cancel, Progress.NONE, band -> {
                    comparison.add(band, after.render(band.request(), cancel, Progress.NONE));
                });
                List<String> differing = comparison.differing();
                if (!differing.isEmpty()) {
                    throw new Refusal(order.artwork().file().getFileName() + ", page " + page
                            + ": the knocked-out page would not print as the artwork with the bare colours left out ("
                            + String.join(", ", differing) + "). Nothing was written.");
                }
            }
        }
    }

    private static Plate plate(
            Artwork artwork, int page, PrintCondition condition, ColourAssignment assignment, Cancel cancel)
            throws Refusal {
        DisplayList list = artwork.record(page, cancel, Progress.NONE);
        return new Plate(list, InkMapping.of(artwork.declaredColorants(page), list, condition, assignment));
    }
}
