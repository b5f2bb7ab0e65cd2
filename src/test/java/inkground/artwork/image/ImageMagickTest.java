package inkground.artwork.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import inkground.OutsideTool;
import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import inkground.colour.Cie;
import inkground.colour.PrintConditions;
import inkground.plate.ColourReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Samples of CMYK and Lab pictures beside those that ImageMagick reads; committed, see PROVENANCE.txt beside them. */
class ImageMagickTest {
    private static final Path REFERENCE = Path.of("src/test/resources/reference/pictures");

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"cmyk8.tif", "cmyk16.tif", "planar16.tif", "cmyk.jpg", "lab8.tif"})
    void samplesLookAsThoseOfImageMagick(String name) throws Exception {
        Difference difference = difference(REFERENCE.resolve(name), REFERENCE.resolve(name + ".raw"));
        assertThat(difference.mean()).as("ΔE00, mean").isLessThan(0.5); // rounding to eight bits leaves up to 0.33
        assertThat(difference.most()).as("ΔE00, most").isLessThan(1.5); // 8-bit a* and b* lie up to a unit apart
    }

    /**
     * CMYK and Lab pictures of any folder, with the samples that ImageMagick reads now: {@code -Dinkground.test.pictures=FOLDER}.
     */
    @Test
    @EnabledIfSystemProperty(named = "inkground.test.pictures", matches = ".+")
    void picturesOfAFolderLookAsThoseOfImageMagick() throws Exception {
        assumeTrue(OutsideTool.present("convert", "--version"), "ImageMagick is not installed");
        List<Path> pictures;
        try (Stream<Path> list = Files.list(Path.of(System.getProperty("inkground.test.pictures")))) {
            pictures = list.sorted().toList();
        }
        assertThat(pictures).isNotEmpty();
        for (Path picture : pictures) {
            Path samples = folder.resolve("samples.raw");
            ColourSpace space = RasterFile.read(picture).get(0).source().space();
            boolean lab = space.components() == 3;
            List<String> command = new ArrayList<>(List.of("convert", picture.toString()));
            command.addAll(lab ? List.of("-set", "colorspace", "sRGB") : List.of());
            command.addAll(List.of("-depth", "16", "-endian", "MSB", (lab ? "rgb:" : "cmyk:") + samples));
            OutsideTool.run(command.toArray(String[]::new));
            Difference difference = difference(picture, samples);
            System.out.println(picture.getFileName() + ": " + difference);
            assertThat(difference.mean())
                    .as(picture.getFileName() + ": ΔE00, mean")
                    .isLessThan(1);
        }
    }

    private record Difference(double mean, double most) {}

    private static Difference difference(Path picture, Path samples16) throws Exception {
        ImageSource source = RasterFile.read(picture).get(0).source();
        ImageSource.Pixels pixels = source.decode();
        byte[] theirs = Files.readAllBytes(samples16);
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
        return new Difference(sum / size, most);
    }
}
