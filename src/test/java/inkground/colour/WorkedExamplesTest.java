package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Refusal;
import inkground.colour.Characterisation.Patch;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The numbers that the Javadoc of the formulas gives as examples: published, or calculated apart from the formula's source. */
class WorkedExamplesTest {
    private static final Lab PAPER = new Lab(95, 0, -2);
    private static final Lab SOLID = new Lab(45, 60, 35);
    private static final Lab TINT = new Lab(75, 25, 10);

    @Test
    void cie() {
        assertThat(Cie.f(1)).isEqualTo(1);
        assertThat(Cie.fInverse(0.5)).isEqualTo(0.125);
        assertThat(Cie.xyzToLab(0.9642, 1, 0.8249)).isEqualTo(new Lab(100, 0, 0));
        assertThat(Cie.labToXyz(new Lab(50, 20, -30)))
                .containsExactly(new double[] {0.2177, 0.1842, 0.3066}, within(5e-5));
        assertThat(Cie.deltaE76(new Lab(50, 1, 2), new Lab(53, 5, 14))).isEqualTo(13);
        Lab blue = new Lab(50, 2.6772, -79.7751);
        assertThat(Cie.deltaE94(blue, new Lab(50, 0, -82.7485))).isCloseTo(1.3950, within(5e-5));
        assertThat(Cie.deltaE00(blue, new Lab(50, 0, -82.7485))).isCloseTo(2.0425, within(5e-5));
        assertThat(blue.chroma()).isCloseTo(79.8200, within(5e-5));
        assertThat(blue.hueDegrees()).isCloseTo(271.922, within(5e-4));
        double[] xyz = {0.4, 0.3, 0.2};
        Cie.bradford(xyz, new double[] {0.9505, 1, 1.0888}, Cie.D50);
        assertThat(xyz).containsExactly(new double[] {0.4160, 0.3056, 0.1512}, within(5e-5));
    }

    @Test
    void srgb() {
        assertThat(Srgb.decode(0.5)).isCloseTo(0.2140, within(5e-5));
        assertThat(Srgb.encode(0.2140)).isCloseTo(0.5, within(5e-5));
        double[] xyz = new double[3];
        Srgb.toXyz(1, 0.5, 0, xyz);
        assertThat(xyz).containsExactly(new double[] {0.5185, 0.3759, 0.0347}, within(5e-5));
        near(Srgb.toLab(1, 0.5, 0), 67.72, 45.73, 74.79);
    }

    @Test
    void tone_values() {
        assertThat(ToneValues.area(PAPER, SOLID, TINT)).isCloseTo(0.5861, within(5e-5));
        assertThat(ToneValues.spot(PAPER, SOLID, TINT)).isCloseTo(0.3862, within(5e-5));
        ToneCurve curve = new ToneCurve(new double[] {0, 0.5, 1}, new double[] {0, 0.7, 1});
        assertThat(curve.at(0.5)).isCloseTo(0.7, within(1e-6));
    }

    @Test
    void bands_and_neugebauer() throws Refusal {
        double[] bands = Cie.labToXyz(PAPER);
        Bands.STANDARD.fromXyz(bands, bands);
        assertThat(bands).containsExactly(new double[] {0.8722, 0.8780, 0.9027}, within(5e-5));
        Characterisation data = new Characterisation(
                "two",
                "two",
                List.of("Red"),
                List.of(new Patch(new double[] {0}, PAPER), new Patch(new double[] {1}, SOLID)));
        double[] xyz = new double[3];
        NeugebauerModel.of(data).toXyz(new double[] {0.5}, xyz);
        near(Cie.xyzToLab(xyz[0], xyz[1], xyz[2]), 70.54, 28.89, 9.60);
    }

    @Test
    void spectra() {
        double[] grey = new double[Spectra.BANDS];
        Arrays.fill(grey, 0.18);
        near(Spectra.toLab(grey), 49.4961, 0, 0);
    }

    @Test
    void black_point() {
        double[] black = {0.02 * Cie.D50_X, 0.02, 0.02 * Cie.D50_Z};
        for (double[] pair : new double[][] {{0, 0.02}, {0.5, 0.51}, {1, 1}}) {
            double[] xyz = {pair[0] * Cie.D50_X, pair[0], pair[0] * Cie.D50_Z};
            BlackPoint.compress(xyz, black);
            assertThat(xyz[1]).isCloseTo(pair[1], within(1e-12));
            BlackPoint.expand(xyz, black);
            assertThat(xyz[1]).isCloseTo(pair[0], within(1e-12));
        }
    }

    private static void near(Lab colour, double L, double a, double b) {
        assertThat(new double[] {colour.L(), colour.a(), colour.b()})
                .containsExactly(new double[] {L, a, b}, within(0.0051));
    }
}
