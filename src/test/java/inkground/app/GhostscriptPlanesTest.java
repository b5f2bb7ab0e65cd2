package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import inkground.Ghostscript;
import inkground.OutsideTool;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import java.awt.image.Raster;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Our planes beside Ghostscript's separations of the same page. Provenance of the committed reference: PROVENANCE.txt beside
 * it; made anew by src/test/reference/ghostscript.sh.
 *
 * <p>Tolerances: Ghostscript averages 4 × 4 samples of its own any-part-of-a-pixel painting, so edges are up to a quarter
 * pixel fatter than the area they cover; inside, tints may differ by the rounding of its 8-bit steps.
 */
class GhostscriptPlanesTest {
    private static final Path REFERENCE = Path.of("src/test/resources/reference/ghostscript");
    private static final double MOST_MEAN_DIFFERENCE = 0.008;
    private static final double MOST_FAR_SHARE = 0.004;
    private static final int EDGE_STEP = 96;

    @TempDir
    Path folder;

    @Test
    void ourPlanesAreThoseOfTheCommittedSeparations() throws Exception {
        compare(REFERENCE);
    }

    @Test
    void ourPlanesAreThoseOfTheInstalledGhostscript() throws Exception {
        assumeTrue(Ghostscript.present(), "Ghostscript is not installed");
        Path fresh = Files.createDirectory(folder.resolve("fresh"));
        OutsideTool.run("sh", "src/test/reference/ghostscript.sh", fresh.toString());
        compare(fresh);
    }

    private void compare(Path reference) throws Exception {
        Path out = folder.resolve("ours");
        Separations.Result result;
        try (Job job = Job.open(REFERENCE.resolve("planes.pdf"), new Cancel(), Progress.NONE)) {
            PageJob page = job.page(1, new Cancel(), Progress.NONE);
            result = Separations.write(
                    new Separations.Order(page, 100, PageBox.MEDIA, out, false), new Cancel(), Progress.NONE);
        }
        assertThat(result.planes()).hasSize(6);
        for (Separations.Plane plane : result.planes()) {
            String ink = plane.use().ink().name();
            Raster theirs = read(reference.resolve("planes(" + ink + ").tif").toFile());
            Raster ours = read(out.resolve(plane.file()).toFile());
            assertThat(ours.getWidth()).isEqualTo(theirs.getWidth());
            assertThat(ours.getHeight()).isEqualTo(theirs.getHeight());
            difference(ink, ours, theirs);
        }
    }

    private static void difference(String ink, Raster ours, Raster theirs) {
        double sum = 0;
        int far = 0;
        int pixels = ours.getWidth() * ours.getHeight();
        for (int y = 0; y < ours.getHeight(); y++) {
            for (int x = 0; x < ours.getWidth(); x++) {
                int d = Math.abs(ours.getSample(x, y, 0) - theirs.getSample(x, y, 0));
                sum += d / 255.0;
                far += d > EDGE_STEP ? 1 : 0;
            }
        }
        System.out.printf("%s: mean difference %.5f, %d of %d pixels far%n", ink, sum / pixels, far, pixels);
        assertThat(sum / pixels).as(ink + ": mean difference of tint").isLessThan(MOST_MEAN_DIFFERENCE);
        assertThat((double) far / pixels).as(ink + ": share of pixels far off").isLessThan(MOST_FAR_SHARE);
    }

    private static Raster read(File file) throws IOException {
        return ImageIO.read(file).getRaster();
    }
}
