package inkground.artwork.image;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import inkground.colour.Cie;
import inkground.colour.PrintConditions;
import inkground.plate.ColourReader;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Samples of CMYK and Lab pictures beside those that ImageMagick reads; committed, see PROVENANCE.txt beside them. */
class ImageMagickTest {
    private static final Path REFERENCE = Path.of("src/test/resources/reference/pictures");

    @ParameterizedTest
    @ValueSource(strings = {"cmyk8.tif", "cmyk16.tif", "planar16.tif", "cmyk.jpg", "lab8.tif"})
    void samplesLookAsThoseOfImageMagick(String name) throws Exception {
        ImageSource source = RasterFile.read(REFERENCE.resolve(name)).get(0).source();
        ImageSource.Pixels pixels = source.decode();
        byte[] theirs = Files.readAllBytes(REFERENCE.resolve(name + ".raw"));
        ColourSpace space = source.space();
        ColourReader reader = new ColourReader(PrintConditions.bundled("FOGRA39L"));
        int n = pixels.components();
        assertThat(theirs).hasSize(pixels.samples().length * 2);
        int size = pixels.width() * pixels.height();
        double sum = 0;
        double most = 0;
        for (int i = 0; i < size; i++) {
            float[] ours = new float[n];
            float[] wanted = new float[n];
            for (int c = 0; c < n; c++) {
                int at = i * n + c;
                ours[c] = space.min(c) + (space.max(c) - space.min(c)) * (pixels.samples()[at] & 255) / 255f;
                float value = ((theirs[2 * at] & 255) << 8 | theirs[2 * at + 1] & 255) / 65535f;
                wanted[c] = n == 4 ? value : c == 0 ? 100 * value : 255 * (value - 0.5f);
            }
            double difference = Cie.deltaE00(reader.toLab(space, ours), reader.toLab(space, wanted));
            sum += difference;
            most = Math.max(most, difference);
        }
        assertThat(sum / size).as("ΔE00, mean").isLessThan(0.5); // rounding to eight bits leaves up to 0.33
        assertThat(most).as("ΔE00, most").isLessThan(1);
    }
}
