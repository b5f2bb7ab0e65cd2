package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class SrgbTest {
    @Test
    void the_transfer_curve_is_that_of_iec_61966_2_1() {
        assertThat(Srgb.decode(0)).isZero();
        assertThat(Srgb.decode(1)).isEqualTo(1);
        assertThat(Srgb.decode(0.04045)).isCloseTo(0.0031308, within(1e-7)); // the joint of the two parts
        assertThat(Srgb.decode(0.5)).isCloseTo(0.214041, within(1e-6)); // ((0.5 + 0.055) / 1.055)^2.4 by hand
        assertThat(Srgb.encode(0.0031308)).isCloseTo(0.04045, within(1e-6));
        assertThat(Srgb.encode(0.18)).isCloseTo(0.461356, within(1e-6));
    }

    @Test
    void the_primaries_are_those_of_the_icc_srgb_profile() {
        // Colorants of the sRGB profile of ICC, D50: from memory, four decimals.
        double[][] expected = {{0.4361, 0.2225, 0.0139}, {0.3851, 0.7169, 0.0971}, {0.1431, 0.0606, 0.7141}};
        double[] xyz = new double[3];
        for (int i = 0; i < 3; i++) {
            Srgb.toXyz(i == 0 ? 1 : 0, i == 1 ? 1 : 0, i == 2 ? 1 : 0, xyz);
            assertThat(xyz).containsExactly(expected[i], within(2e-4));
        }
    }

    @Test
    void white_is_lab_white() {
        Lab white = Srgb.toLab(1, 1, 1);
        assertThat(Cie.deltaE76(white, new Lab(100, 0, 0))).isLessThan(1e-6);
        assertThat(Srgb.labToArgb(new Lab(100, 0, 0))).isEqualTo(0xffffffff);
        assertThat(Srgb.labToArgb(new Lab(0, 0, 0))).isEqualTo(0xff000000);
    }

    @Test
    void every_grey_and_many_colours_come_back_exactly() {
        Random random = new Random(3);
        double[] xyz = new double[3];
        for (int i = 0; i < 20_000; i++) {
            int rgb = i < 256 ? i * 0x010101 : random.nextInt(1 << 24);
            Srgb.toXyz((rgb >> 16) / 255.0, (rgb >> 8 & 255) / 255.0, (rgb & 255) / 255.0, xyz);
            assertThat(Srgb.xyzD50ToArgb(xyz[0], xyz[1], xyz[2])).isEqualTo(0xff000000 | rgb);
            assertThat(Srgb.shows(xyz[0], xyz[1], xyz[2])).isTrue();
        }
    }

    @Test
    void a_colour_beyond_the_display_is_clipped_and_said_to_be() {
        double[] xyz = Cie.labToXyz(new Lab(55, -37, -50)); // the process cyan of ISO 12647-2
        assertThat(Srgb.shows(xyz[0], xyz[1], xyz[2])).isFalse();
        assertThat(Srgb.xyzD50ToArgb(xyz[0], xyz[1], xyz[2]) >> 16 & 255).isZero();
    }
}
