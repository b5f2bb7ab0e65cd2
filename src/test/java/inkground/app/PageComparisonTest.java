package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.app.PageComparison.Side;
import inkground.appearance.AskedColours;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.substrate.Substrate;
import java.io.File;
import java.nio.file.Path;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two revisions laid on each other; distances in pixels of the comparison, 100 to an inch. */
class PageComparisonTest {
    private static final float PT_PER_PX = 0.72f;

    @TempDir
    Path folder;

    /** A page of 100 by 100 pixels with a square of 20, both so many pixels from the left. */
    private Path page(String name, double trimPx, double squarePx) throws Exception {
        File file = folder.resolve(name).toFile();
        try (PDDocument document = new PDDocument()) {
            float edge = 100 * PT_PER_PX;
            PDPage page = new PDPage(new PDRectangle(150 * PT_PER_PX, edge));
            page.setTrimBox(new PDRectangle((float) trimPx * PT_PER_PX, 0, edge, edge));
            document.addPage(page);
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.setNonStrokingColor(0f, 0f, 0f, 1f);
                content.addRect((float) squarePx * PT_PER_PX, 40 * PT_PER_PX, 20 * PT_PER_PX, 20 * PT_PER_PX);
                content.fill();
            }
            document.save(file);
        }
        return file.toPath();
    }

    /** Rounding each trim by itself would lay these a whole pixel off: 0.4 goes to 0, 10.6 to 11, and 10.2 lies between. */
    @Test
    void trimsBetweenPixelsAreLaidOnEachOtherByTheNearestPixel() throws Exception {
        try (Job one = Job.open(page("a.pdf", 0.4, 30), new Cancel(), Progress.NONE);
                Job two = Job.open(page("b.pdf", 10.6, 40), new Cancel(), Progress.NONE)) {
            PageJob before = one.page(1, new Cancel(), Progress.NONE);
            PageJob after = two.page(1, new Cancel(), Progress.NONE);
            Substrate paper = AskedColours.ownPaper(before.condition());
            var order = new PageComparison.Order(Side.of(before, paper), Side.of(after, paper), 2);
            PageComparison result = PageComparison.of(order, new Cancel(), Progress.NONE);
            assertThat(result.changedCm2()).isZero();
            assertThat(result.changed()).isFalse();
        }
    }
}
