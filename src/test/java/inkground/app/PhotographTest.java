package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PhotographTest {
    @TempDir
    Path folder;

    private Photograph read(int width, int height, java.util.function.IntBinaryOperator rgb) throws Exception {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                image.setRGB(x, y, rgb.applyAsInt(x, y));
            }
        }
        Path file = folder.resolve("cloth.png");
        ImageIO.write(image, "png", file.toFile());
        return Photograph.read(file, new Cancel(), Progress.NONE);
    }

    @Test
    void aLargePictureIsReducedAndAnEvenPatchHasItsColour() throws Exception {
        Photograph photograph = read(1600, 1000, (x, y) -> x < 800 ? 0x336699 : 0xcc3311);
        assertThat(photograph.widthPx()).isEqualTo(640);
        assertThat(photograph.heightPx()).isEqualTo(400);
        Photograph.Patch patch = photograph.patch(100, 200, 20);
        Lab blue = Srgb.toLab(0x33 / 255.0, 0x66 / 255.0, 0x99 / 255.0);
        assertThat(Cie.deltaE00(patch.lab(), blue)).isLessThan(0.05);
        assertThat(patch.spreadDe00()).isLessThan(0.05);
        assertThat(photograph.argb()[200 * 640 + 100]).isEqualTo(0xff336699);
    }

    @Test
    void aPatchAveragesLightNotCodedValues() throws Exception {
        // Half black, half white lets through half the light: L* = 116 (1/2)^(1/3) − 16 = 76.07.
        Photograph photograph = read(200, 200, (x, y) -> (x + y) % 2 == 0 ? 0x000000 : 0xffffff);
        Photograph.Patch patch = photograph.patch(100, 100, 60);
        assertThat(patch.lab().L()).isCloseTo(76.07, within(0.3));
        assertThat(patch.spreadDe00()).isGreaterThan(20);
    }

    @Test
    void aPatchBeyondTheEdgeIsHeldWithinThePicture() throws Exception {
        Photograph photograph = read(50, 40, (x, y) -> 0x808080);
        assertThat(photograph.patch(-20, 900, 0).lab().L()).isCloseTo(53.585, within(0.01));
    }

    @Test
    void whatIsNoPictureIsRefused() throws Exception {
        Path file = Files.writeString(
                folder.resolve("drawing.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' width='10' height='10'><rect width='5' height='5'/></svg>");
        assertThatThrownBy(() -> Photograph.read(file, new Cancel(), Progress.NONE))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("is no photograph");
    }
}
