package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CieTest {
    @Test
    void ciede2000_agrees_with_all_34_published_pairs_in_both_directions() {
        List<double[]> pairs = ReferenceTable.read("sharma-wu-dalal.txt");
        assertThat(pairs).hasSize(34);
        for (double[] p : pairs) {
            assertThat(Cie.deltaE00(p[0], p[1], p[2], p[3], p[4], p[5])).isCloseTo(p[6], within(1e-4));
            assertThat(Cie.deltaE00(p[3], p[4], p[5], p[0], p[1], p[2])).isCloseTo(p[6], within(1e-4));
        }
    }

    @Test
    void the_difference_of_1976_is_the_distance() {
        assertThat(Cie.deltaE76(new Lab(50, 1, 2), new Lab(53, 5, 14))).isCloseTo(13, within(1e-12)); // 3, 4, 12
    }

    /**
     * On the pairs of Sharma, Wu and Dalal, calculated apart in Python: {@code c1 = hypot(a1, b1); dc = c1 - c2; dh2 = da**2 + db**2 -
     * dc**2; sqrt(dl**2 + (dc / (1 + .045 * c1))**2 + dh2 / (1 + .015 * c1)**2)}. The last one is the example of a public Python colour
     * library, from memory.
     */
    @ParameterizedTest
    @CsvSource({
        "50, 2.6772, -79.7751, 50, 0, -82.7485, 1.395039",
        "50, 0, -82.7485, 50, 2.6772, -79.7751, 1.365285",
        "50, 0, 0, 50, -1, 2, 2.236068",
        "50, 2.5, 0, 73, 25, -18, 34.689163",
        "73, 25, -18, 50, 2.5, 0, 26.139752",
        "22.7233, 20.0904, -46.694, 23.0331, 14.973, -42.5619, 2.556133",
        "2.0776, 0.0795, -1.135, 0.9033, -0.0636, -0.5514, 1.306545",
        "48.99183622, -0.10561667, 400.65619925, 50.65907324, -0.11671910, 402.82235718, 1.671119"
    })
    void the_difference_of_1994_weighs_by_the_chroma_of_the_reference(
            double l1, double a1, double b1, double l2, double a2, double b2, double difference) {
        assertThat(Cie.deltaE94(new Lab(l1, a1, b1), new Lab(l2, a2, b2))).isCloseTo(difference, within(1e-6));
    }

    @Test
    void lightness_chroma_and_hue_are_lab_in_a_circle() {
        Lab blue = new Lab(50, 2.6772, -79.7751);
        assertThat(blue.chroma()).isCloseTo(79.82001, within(1e-5)); // √(a² + b²) by hand
        assertThat(blue.hueDegrees()).isCloseTo(271.92209, within(1e-5));
        Lab back = Lab.ofLch(50, blue.chroma(), blue.hueDegrees() + 360);
        assertThat(Cie.deltaE76(back, blue)).isLessThan(1e-9);
        assertThat(new Lab(50, 1, 0).hueDegrees()).isZero();
        assertThat(new Lab(50, 0, 1).hueDegrees()).isEqualTo(90);
        assertThat(new Lab(50, 0, 0).hueDegrees()).isZero();
        assertThat(new Lab(50, 1, -1e-300).hueDegrees()).isBetween(0.0, 359.9999);
    }

    @Test
    void white_and_a_mid_grey_have_the_lightness_of_cie_15() {
        assertThat(Cie.xyzToLab(0.9642, 1, 0.8249)).isEqualTo(new Lab(100, 0, 0));
        // L* of Y = 0.184 is 116 × 0.184^(1/3) − 16 = 49.976 by hand
        assertThat(Cie.xyzToLab(0.184 * 0.9642, 0.184, 0.184 * 0.8249).L()).isCloseTo(49.976, within(0.01));
        // below Y = 0.008856 the scale is straight: 903.3 × 0.001
        assertThat(Cie.xyzToLab(0, 0.001, 0).L()).isCloseTo(0.9033, within(1e-4));
    }

    @Test
    void lab_comes_back_through_xyz_for_random_colours() {
        Random random = new Random(7);
        double[] v = new double[3];
        for (int i = 0; i < 10_000; i++) {
            double l = random.nextDouble() * 100;
            double a = random.nextDouble() * 200 - 100;
            double b = random.nextDouble() * 200 - 100;
            Cie.labToXyz(l, a, b, v);
            Cie.xyzToLab(v, v);
            assertThat(v[0]).isCloseTo(l, within(1e-9));
            assertThat(v[1]).isCloseTo(a, within(1e-9));
            assertThat(v[2]).isCloseTo(b, within(1e-9));
        }
    }

    @Test
    void bradford_takes_one_white_to_the_other_and_back() {
        double[] d65 = {0.95047, 1, 1.08883};
        double[] d50 = {Cie.D50_X, 1, Cie.D50_Z};
        double[] xyz = d65.clone();
        Cie.bradford(xyz, d65, d50);
        assertThat(xyz).containsExactly(d50, within(1e-6));
        Cie.bradford(xyz, d50, d65);
        assertThat(xyz).containsExactly(d65, within(1e-6));
    }

    @Test
    void a_black_white_point_is_refused() {
        assertThatThrownBy(() -> Cie.bradford(new double[] {1, 1, 1}, new double[3], new double[] {1, 1, 1}))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
