package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/** The comparison lets a last digit pass and sees a line that is missing, or lies a pixel off. */
@DisabledIfSystemProperty(named = Snapshots.PROPERTY, matches = "rewrite")
class SnapshotsTest {
    @TempDir
    Path folder;

    private Snapshots snapshots;

    @BeforeEach
    void reference() throws Exception {
        snapshots = new Snapshots(folder, folder.resolve("results"));
        ImageIO.write(lined(60, 0x808080), "png", folder.resolve("lined.png").toFile());
    }

    /** 320 × 240 pixels of grey with an upright black line. */
    private static BufferedImage lined(int lineX, int rgb) {
        BufferedImage picture = new BufferedImage(320, 240, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < 240; y++) {
            for (int x = 0; x < 320; x++) {
                picture.setRGB(x, y, x == lineX ? 0 : rgb);
            }
        }
        return picture;
    }

    @Test
    void theLastDigitsOfAColourMayDiffer() {
        assertThatCode(() -> snapshots.check("lined", lined(60, 0x828282))).doesNotThrowAnyException();
        assertThat(folder.resolve("results")).doesNotExist();
    }

    @Test
    void aLineThatIsMissingOrAPixelOffIsSeenAndDrawn() throws Exception {
        for (int lineX : new int[] {-1, 61}) {
            assertThatThrownBy(() -> snapshots.check("lined", lined(lineX, 0x808080)))
                    .isInstanceOf(AssertionError.class)
                    .hasMessageContaining("lined-actual.png")
                    .hasMessageContaining("lined-expected.png")
                    .hasMessageContaining("lined-difference.png")
                    .hasMessageContaining(lineX < 0 ? "240 of 76800" : "480 of 76800");
            BufferedImage difference =
                    ImageIO.read(folder.resolve("results/lined-difference.png").toFile());
            assertThat(difference.getRGB(60, 100) & 0xffffff).isEqualTo(0xc00000);
            assertThat(difference.getRGB(100, 100) & 0xff).isGreaterThan(200);
        }
    }

    @Test
    void aColourThatIsAnotherOrAPictureOfAnotherSizeOrWithoutReferenceIsSeen() {
        assertThatThrownBy(() -> snapshots.check("lined", lined(60, 0x838383))).hasMessageContaining("difference");
        assertThatThrownBy(() -> snapshots.check("lined", new BufferedImage(32, 24, BufferedImage.TYPE_INT_RGB)))
                .hasMessageContaining("32 × 24 px");
        assertThatThrownBy(() -> snapshots.check("unknown", lined(60, 0))).hasMessageContaining("no reference");
        assertThat(Files.exists(folder.resolve("results/unknown-actual.png"))).isTrue();
    }
}
