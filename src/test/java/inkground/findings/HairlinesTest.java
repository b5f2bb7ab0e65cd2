package inkground.findings;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.Artwork;
import inkground.artwork.pdf.PdfArtwork;
import inkground.base.Cancel;
import inkground.base.Progress;
import java.nio.file.Path;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Lines without width are counted. */
class HairlinesTest {
    @TempDir
    Path folder;

    @Test
    void linesOfNoWidthAreCountedAndOthersAreNot() throws Exception {
        assertThat(count(0, 0, 0.25f)).isEqualTo(2);
        assertThat(count(1, 2)).isZero();
    }

    private int count(float... widths) throws Exception {
        Path file = folder.resolve(widths.length + ".pdf");
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage();
            document.addPage(page);
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                for (int i = 0; i < widths.length; i++) {
                    content.setLineWidth(widths[i]);
                    content.moveTo(10, 10 + 10 * i);
                    content.lineTo(100, 10 + 10 * i);
                    content.stroke();
                }
            }
            document.save(file.toFile());
        }
        try (Artwork artwork = PdfArtwork.open(file, new Cancel(), Progress.NONE)) {
            var list = artwork.record(1, new Cancel(), Progress.NONE);
            assertThat(Hairlines.note(list).isPresent()).isEqualTo(Hairlines.count(list) > 0);
            return Hairlines.count(list);
        }
    }
}
