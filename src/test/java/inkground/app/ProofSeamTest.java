package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.appearance.Appearance;
import inkground.appearance.InkColours;
import inkground.appearance.Stack;
import inkground.appearance.StackModel;
import inkground.appearance.Underbase;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import inkground.substrate.Substrates;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.Set;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A proof is painted in bands; a choked underbase, which looks at its neighbours, must not show where they meet. */
class ProofSeamTest {
    @TempDir
    Path folder;

    @Test
    void a_choked_underbase_is_the_same_in_bands_as_at_once() throws Exception {
        Path file = folder.resolve("proof.png");
        double dpi = 60;
        try (Job job = Job.open(Path.of("demo", "regatta-shirt.pdf"), new Cancel(), Progress.NONE)) {
            PageJob page = job.page(1, new Cancel(), Progress.NONE);
            Underbase choked = new Underbase(InkColours.underbaseWhite(), 1, 2, 1.5, Set.of(), Set.of());
            Stack stack = page.stackOn(Substrates.load().byId("tee-navy").orElseThrow())
                    .over(choked);
            Set<Integer> layers = page.displayList().defaultLayers();
            Proofs.write(
                    new Proofs.Order(page, stack, PageBox.TRIM, dpi, true, layers, file, false),
                    new Cancel(),
                    Progress.NONE);
            PlateRequest request = PlateRequest.of(page.info().box(PageBox.TRIM), dpi, true, layers);
            assertThat(request.height()).isGreaterThan(Separations.ROWS_AT_ONCE + 50);
            InkPlanes planes = page.plate().render(request, new Cancel(), Progress.NONE);
            int[] whole = new int[request.width() * request.height()];
            Appearance.paint(planes, new StackModel(stack), whole, 0, request.width(), new Cancel());
            BufferedImage written = ImageIO.read(file.toFile());
            int near = Appearance.reachPx(stack, request.pxPerPt());
            for (int y = near; y < request.height() - near; y++) {
                for (int x = near; x < request.width() - near; x++) {
                    assertThat(written.getRGB(x, y)).isEqualTo(whole[y * request.width() + x]);
                }
            }
        }
    }
}
