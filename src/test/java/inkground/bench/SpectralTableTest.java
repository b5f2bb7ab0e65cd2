package inkground.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Spectra;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The comparison of ways from Lab to spectra is what is committed, and the ways are what they claim to be. */
class SpectralTableTest {
    private static final Pattern NUMBER = Pattern.compile("\\d+\\.\\d+");

    @ParameterizedTest
    @EnumSource
    void a_spectrum_has_the_colour_it_was_made_from(SpectrumFromLab way) {
        Random random = new Random(4);
        for (int i = 0; i < 25; i++) {
            Lab lab = new Lab(
                    25 + 60 * random.nextDouble(), 50 * random.nextDouble() - 25, 50 * random.nextDouble() - 25);
            double[] spectrum = way.of(lab);
            assertThat(spectrum).hasSize(Spectra.BANDS);
            for (double reflectance : spectrum) {
                assertThat(reflectance).isBetween(0.0, 1.0);
            }
            assertThat(Cie.deltaE76(Spectra.toLab(spectrum), lab))
                    .as(way + " of " + lab)
                    .isLessThan(1e-3);
        }
    }

    @ParameterizedTest
    @EnumSource
    void a_grey_is_level(SpectrumFromLab way) {
        for (double reflectance : way.of(new Lab(49.4961, 0, 0))) {
            assertThat(reflectance).isCloseTo(0.18, within(1e-4)); // L* 49.4961 is Y 0.18
        }
    }

    @Test
    void the_table_is_the_committed_one() throws Exception {
        List<String> committed;
        try (InputStream in = getClass().getResourceAsStream("spectra-from-lab.txt")) {
            committed = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
        }
        List<String> now = SpectralTable.lines();
        assertThat(now).hasSameSizeAs(committed);
        for (int i = 0; i < now.size(); i++) {
            assertThat(NUMBER.matcher(now.get(i)).replaceAll("n"))
                    .isEqualTo(NUMBER.matcher(committed.get(i)).replaceAll("n"));
            Matcher one = NUMBER.matcher(now.get(i));
            Matcher other = NUMBER.matcher(committed.get(i));
            while (one.find() && other.find()) {
                double number = Double.parseDouble(other.group());
                assertThat(Double.parseDouble(one.group())).as(committed.get(i)).isCloseTo(number, within(0.02));
            }
        }
    }
}
