package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource.Pixels;
import inkground.base.Cancel;
import inkground.colour.PrintConditions;
import inkground.colour.Srgb;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PictureColoursTest {
    private static final ColourReader READER = new ColourReader(PrintConditions.bundled("FOGRA39L"));

    @Test
    void softEdgesAreMixturesAndNoColoursOfTheirOwn() {
        int[][] flat = {{0xc5, 0x24, 0x2e}, {0xfc, 0xef, 0xce}, {0x1c, 0x30, 0x4f}};
        int side = 120;
        byte[] samples = new byte[side * side * 3];
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                // two discs on a ground, edges two pixels soft
                double red = soft(28 - Math.hypot(x - 35, y - 60));
                double cream = soft(20 - Math.hypot(x - 90, y - 60));
                for (int c = 0; c < 3; c++) {
                    double v = red * flat[0][c] + cream * flat[1][c] + (1 - red - cream) * flat[2][c];
                    samples[(y * side + x) * 3 + c] = (byte) Math.round(v);
                }
            }
        }
        PictureColours colours = PictureColours.of(
                new Pixels(side, side, 3, samples, null), new ColourSpace.DeviceRgb(), READER, new Cancel());
        assertThat(colours.flats().stream().map(f -> Srgb.labToArgb(f.lab()) & 0xffffff))
                .containsExactly(0x1c304f, 0xc5242e, 0xfcefce);
        assertThat(colours.mixedShare()).isBetween(0.01, 0.1);
        assertThat(colours.toneShare()).isLessThan(0.005);
    }

    @Test
    void aPhotographIsToneAndHasNoFlatColours() {
        int side = 100;
        Random random = new Random(4711);
        byte[] samples = new byte[side * side * 3];
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                int[] c = {40 + 2 * x, 200 - y, 60 + x + y / 2};
                for (int i = 0; i < 3; i++) {
                    samples[(y * side + x) * 3 + i] = (byte) Math.max(0, Math.min(255, c[i] + random.nextInt(9) - 4));
                }
            }
        }
        PictureColours colours = PictureColours.of(
                new Pixels(side, side, 3, samples, null), new ColourSpace.DeviceRgb(), READER, new Cancel());
        assertThat(colours.flats()).isEmpty();
        assertThat(colours.toneShare()).isEqualTo(1);
    }

    private static double soft(double inside) {
        return Math.max(0, Math.min(1, inside / 2 + 0.5));
    }
}
