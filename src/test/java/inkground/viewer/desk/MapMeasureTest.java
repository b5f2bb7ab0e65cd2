package inkground.viewer.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.app.OwnSubstrates;
import inkground.appearance.Cover;
import inkground.artwork.ColourAssignment;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.viewer.state.Look;
import inkground.viewer.state.MapChoice;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.MapLimits;
import inkground.viewer.state.ProofEngine.MapReport;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ProofEngine.OpenPage;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Figures of maps over pages whose areas are known, whichever way up a page is looked at. */
class MapMeasureTest {
    private static final float MM = 72 / 25.4f;

    @TempDir
    Path folder;

    /** A page of 100 × 60 mm: black of 40.1 × 30.2 mm with a hole of 10.3 × 10.3 mm, white paint of 20.1 × 7.9 mm. */
    private Path page(int rotate) throws Exception {
        Path file = folder.resolve("turned-" + rotate + ".pdf");
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage(new PDRectangle(100 * MM, 60 * MM));
            page.setRotation(rotate);
            document.addPage(page);
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.setNonStrokingColor(0f, 0f, 0f, 1f);
                fill(content, 5.07f, 10.03f, 40.1f, 30.2f);
                content.setNonStrokingColor(0f, 0f, 0f, 0f);
                fill(content, 15.04f, 20.06f, 10.3f, 10.3f);
                fill(content, 60.02f, 20.01f, 20.1f, 7.9f);
            }
            document.save(file.toFile());
        }
        return file;
    }

    private static void fill(PDPageContentStream content, float x, float y, float width, float height)
            throws Exception {
        content.addRect(x * MM, y * MM, width * MM, height * MM);
        content.fill();
    }

    @Test
    void bareAreasAreTheSameHoweverThePageIsTurned() throws Exception {
        JobEngine engine = new JobEngine(Optional.empty(), new OwnSubstrates(folder));
        engine.substrates();
        Cancel cancel = new Cancel();
        for (int rotate : new int[] {0, 90, 180, 270}) {
            try (OpenFile file = engine.open(page(rotate), cancel, Progress.NONE)) {
                OpenPage page = file.page(1, ColourAssignment.NONE, cancel, Progress.NONE);
                Look look = new Look(
                        "tee-white",
                        Set.of(0),
                        page.printOrder(),
                        Map.of(),
                        Optional.empty(),
                        Optional.of(
                                new MapChoice(MapKind.BARE, new MapLimits(3, 300, 0.2, 0.2, 0.2), 0, Optional.empty())),
                        -1);
                MapReport report = page.measureMap(look, true, Set.of(), cancel, Progress.NONE);
                assertArea(report, rotate, Cover.INKED, 40.1 * 30.2 - 10.3 * 10.3);
                assertArea(report, rotate, Cover.KNOCKED_OUT, 10.3 * 10.3);
                assertArea(report, rotate, Cover.WHITE_PAINT, 20.1 * 7.9);
                assertArea(report, rotate, Cover.UNPAINTED, 100 * 60 - 40.1 * 30.2 - 20.1 * 7.9);
                assertThat(report.places()).as(rotate + "°").hasSize(1);
                boolean upright = rotate % 180 == 0;
                double width = report.places().get(0).box().width() / MM;
                assertThat(width).as(rotate + "°").isCloseTo(upright ? 20.1 : 7.9, within(0.2));
            }
        }
    }

    private static void assertArea(MapReport report, int rotate, Cover cover, double mm2) {
        assertThat(report.entries().get(cover.ordinal()).cm2() * 100)
                .as(cover + " of a page turned by " + rotate + "°")
                .isCloseTo(mm2, within(0.005 * mm2));
    }
}
