package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Refusal;
import java.util.Collections;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpectralColumnsTest {
    @ParameterizedTest
    @CsvSource({"SPECTRAL_NM, 0.18", "SPECTRAL_, 18", "SPEC_, 0.18", "nm, 18", "R_, 0.18"})
    void a_grey_spectrum_is_its_grey_in_factors_and_in_per_cents(String prefix, double value) throws Refusal {
        Characterisation data = Characterisation.of(Cgats.parse(table(prefix, 400, 31, 10, value), "s.txt"), "s.txt");
        Lab lab = data.patches().get(0).lab();
        assertThat(lab.L()).isCloseTo(49.4961, within(1e-3));
        assertThat(Math.hypot(lab.a(), lab.b())).isLessThan(1e-6);
    }

    @Test
    void too_few_wavelengths_are_named_as_missing() {
        assertThatThrownBy(() -> Characterisation.of(Cgats.parse(table("R_", 400, 5, 10, 0.2), "s.txt"), "s.txt"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("s.txt")
                .hasMessageContaining("spectral");
    }

    private static String table(String prefix, int start, int count, int step, double value) {
        StringBuilder out = new StringBuilder("CGATS.17\nBEGIN_DATA_FORMAT\nCMYK_C CMYK_M CMYK_Y CMYK_K");
        for (int i = 0; i < count; i++) {
            out.append(' ').append(prefix).append(start + i * step);
        }
        String row = String.join(" ", Collections.nCopies(count, String.format(Locale.ROOT, "%.2f", value)));
        return out.append("\nEND_DATA_FORMAT\nBEGIN_DATA\n0 0 0 0 " + row + "\nEND_DATA\n")
                .toString();
    }
}
