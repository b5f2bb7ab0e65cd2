package inkground.artwork.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.artwork.Artwork;
import inkground.artwork.OutputIntent;
import inkground.artwork.PageBox;
import inkground.artwork.PageInfo;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CancellationException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OpeningTest {
    @TempDir
    Path dir;

    private static void assertBox(Box actual, double x0, double y0, double x1, double y1) {
        assertThat(actual.x0()).isCloseTo(x0, within(1e-4));
        assertThat(actual.y0()).isCloseTo(y0, within(1e-4));
        assertThat(actual.x1()).isCloseTo(x1, within(1e-4));
        assertThat(actual.y1()).isCloseTo(y1, within(1e-4));
    }

    private PageInfo info(String pageEntries) throws Exception {
        try (Artwork artwork = new PdfText().page(pageEntries).open(dir)) {
            return artwork.pages().get(0);
        }
    }

    @Test
    void boxesAreMeasuredFromTheTopLeftOfTheMediaBoxDownwards() throws Exception {
        PageInfo page = info("/MediaBox [10 20 210 320] /TrimBox [30 50 190 300] /BleedBox [20 40 200 310]");
        assertBox(page.box(PageBox.MEDIA), 0, 0, 200, 300);
        assertBox(page.box(PageBox.TRIM), 20, 20, 180, 270);
        assertBox(page.box(PageBox.BLEED), 10, 10, 190, 280);
        assertThat(page.stated()).containsExactlyInAnyOrder(PageBox.MEDIA, PageBox.TRIM, PageBox.BLEED);
    }

    @Test
    void missingBoxesTakeTheCropBoxAndTheCropBoxTheMediaBox() throws Exception {
        PageInfo cropped = info("/MediaBox [0 0 200 100] /CropBox [20 10 180 90]");
        assertBox(cropped.box(PageBox.ART), 20, 10, 180, 90);
        assertBox(cropped.box(PageBox.TRIM), 20, 10, 180, 90);
        assertBox(info("/MediaBox [0 0 200 100]").box(PageBox.CROP), 0, 0, 200, 100);
    }

    @Test
    void boxesAreCutByTheMediaBoxAndThoseOutsideItAreIgnored() throws Exception {
        PageInfo page = info("/MediaBox [0 0 200 100] /BleedBox [-10 -10 210 50] /TrimBox [500 500 600 600]");
        assertBox(page.box(PageBox.BLEED), 0, 50, 200, 100);
        assertBox(page.box(PageBox.TRIM), 0, 0, 200, 100);
    }

    @Test
    void rotationTurnsThePageClockwise() throws Exception {
        String boxes = "/MediaBox [0 0 200 100] /TrimBox [10 20 150 90] /Rotate ";
        assertBox(info(boxes + 90).box(PageBox.MEDIA), 0, 0, 100, 200);
        // Bottom left (10, 20) of the upright page lies 80 pt below its top: at 100 - 80 from the turned page's left.
        assertBox(info(boxes + 90).box(PageBox.TRIM), 20, 10, 90, 150);
        assertBox(info(boxes + 180).box(PageBox.TRIM), 50, 20, 190, 90);
        assertBox(info(boxes + 270).box(PageBox.TRIM), 10, 50, 80, 190);
        assertBox(info(boxes + -90).box(PageBox.TRIM), 10, 50, 80, 190);
        assertThat(info(boxes + 450).rotation()).isEqualTo(90);
    }

    @Test
    void userUnitScalesThePage() throws Exception {
        PageInfo page = info("/MediaBox [0 0 200 100] /UserUnit 2.5 /TrimBox [10 10 190 90]");
        assertBox(page.box(PageBox.MEDIA), 0, 0, 500, 250);
        assertBox(page.box(PageBox.TRIM), 25, 25, 475, 225);
        assertThat(page.userUnit()).isEqualTo(2.5);
    }

    @Test
    void contentIsTurnedAndScaledWithThePage() throws Exception {
        Box painted = new PdfText()
                .page("/MediaBox [0 0 200 100] /Rotate 90 /UserUnit 2")
                .content("10 20 30 40 re f")
                .ops(dir)
                .get(0)
                .bounds();
        assertBox(painted, 40, 20, 120, 80);
    }

    @Test
    void aPageOfMoreThanTwentyMetresIsRefusedWithItsSizeAndTheLimit() {
        assertThatThrownBy(() -> info("/MediaBox [0 0 60000 100]"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("Page 1 of page")
                .hasMessageContaining("21.17 m")
                .hasMessageContaining("limit is 20 m");
        assertThatThrownBy(() -> info("/MediaBox [0 0 30000 100] /UserUnit 2")).hasMessageContaining("21.17 m");
    }

    @Test
    void aPageOfNoSizeIsRefused() {
        assertThatThrownBy(() -> info("/MediaBox [0 0 200 0]"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("Page 1")
                .hasMessageContaining("no size");
    }

    @Test
    void aFileThatIsNoPdfIsRefused() throws Exception {
        Path file = Files.writeString(dir.resolve("notes.pdf"), "Mill Reach Regatta, start list");
        assertThatThrownBy(() -> PdfText.openFile(file))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("notes.pdf is not a PDF file");
    }

    @Test
    void aMissingFileIsRefused() {
        assertThatThrownBy(() -> PdfText.openFile(dir.resolve("gone.pdf")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("gone.pdf cannot be read");
    }

    @Test
    void aDamagedFileIsRefusedInOneLine() throws Exception {
        Path file = Files.writeString(dir.resolve("broken.pdf"), "%PDF-1.7\n1 0 obj << /Nothing");
        assertThatThrownBy(() -> PdfText.openFile(file))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("broken.pdf is damaged")
                .satisfies(e -> assertThat(e.getMessage()).doesNotContain("\n", "Exception", "org."));
    }

    @Test
    void aFileWithoutPagesIsRefused() throws Exception {
        Path file = dir.resolve("empty.pdf");
        try (PDDocument document = new PDDocument()) {
            document.save(file.toFile());
        }
        assertThatThrownBy(() -> PdfText.openFile(file))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("empty.pdf has no page");
    }

    private Path encrypted(String userPassword) throws Exception {
        Path file = dir.resolve("locked" + userPassword.length() + ".pdf");
        try (PDDocument document = new PDDocument()) {
            document.addPage(new PDPage());
            document.protect(new StandardProtectionPolicy("owner", userPassword, new AccessPermission()));
            document.save(file.toFile());
        }
        return file;
    }

    @Test
    void aFileThatNeedsAPasswordIsRefused() throws Exception {
        Path file = encrypted("oars");
        assertThatThrownBy(() -> PdfText.openFile(file))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("protected by a password")
                .hasMessageContaining("Save a copy");
    }

    @Test
    void aFileEncryptedWithoutAUserPasswordOpens() throws Exception {
        try (Artwork artwork = PdfText.openFile(encrypted(""))) {
            assertThat(artwork.pages()).hasSize(1);
        }
    }

    @Test
    void cancellingStopsReading() throws Exception {
        try (Artwork artwork = new PdfText().content("0 0 10 10 re f").open(dir)) {
            Cancel cancel = new Cancel();
            cancel.request();
            assertThatThrownBy(() -> artwork.record(1, cancel, Progress.NONE))
                    .isInstanceOf(CancellationException.class);
        }
    }

    @Test
    void aClosedFileRefusesToRecord() throws Exception {
        Artwork artwork = new PdfText().open(dir);
        artwork.close();
        artwork.close();
        assertThatThrownBy(() -> artwork.record(1, new Cancel(), Progress.NONE))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("closed");
    }

    @Test
    void theOutputIntentCarriesItsConditionAndProfile() throws Exception {
        try (Artwork artwork = new PdfText()
                        .catalog("/OutputIntents [<< /S /GTS_PDFX /OutputConditionIdentifier (Uncoated, invented)"
                                + " /DestOutputProfile 5 0 R >>]")
                        .stream("/N 4", "profile bytes")
                        .open(dir)) {
            OutputIntent intent = artwork.outputIntent().orElseThrow();
            assertThat(intent.condition()).isEqualTo("Uncoated, invented");
            assertThat(intent.profile().bytes()).asString().isEqualTo("profile bytes");
        }
    }
}
