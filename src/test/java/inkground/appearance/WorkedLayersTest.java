package inkground.appearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.colour.Cie;
import inkground.colour.Lab;
import org.junit.jupiter.api.Test;

/** The numbers that the Javadoc of the layers gives as examples, each calculated apart in Python or by hand from the formula's source. */
class WorkedLayersTest {
    @Test
    void kubelka_munk() {
        KubelkaMunk layer = KubelkaMunk.of(0.6, 0.3);
        assertThat(layer.through()).isCloseTo(0.21, within(1e-12));
        assertThat(layer.over(0.5)).isCloseTo(0.4235, within(5e-5));
        assertThat(layer.times(2).over(0.5)).isCloseTo(0.4019, within(5e-5));
    }

    @Test
    void films_from_two_grounds() {
        KubelkaMunk clear = KubelkaMunk.ofGrounds(0.8, 0.4, 0.05, 0.025);
        assertThat(clear.overBlack()).isCloseTo(0, within(1e-12));
        assertThat(clear.through()).isCloseTo(0.5, within(1e-12));
        assertThat(KubelkaMunk.ofGrounds(0.5, 0.4235, 0, 0.3).over(1)).isCloseTo(0.6, within(5e-4));
    }

    @Test
    void an_ink_over_a_ground() {
        InkLayer layer = InkLayer.of(Samples.spot("Mill Red", new Lab(45, 60, 35), 0.5));
        near(layer, 1, 33.29, 48.29, 28.14);
        near(layer, 0.5, 31.65, 24.14, 14.07);
    }

    @Test
    void another_paper() {
        // 1 + c = (0.4 − 0.02) / (0.8 − 0.02), by hand: (0.5 − 0.02) × 0.38 / 0.78 + 0.02
        assertThat(StackModel.corrected(0.5, 0.4, 0.8, 0.02)).isCloseTo(0.2538, within(5e-5));
    }

    private static void near(InkLayer layer, double tint, double L, double a, double b) {
        double[] xyz = Cie.labToXyz(new Lab(30, 0, 0));
        layer.over(tint, xyz, new double[3]);
        Lab seen = Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
        assertThat(new double[] {seen.L(), seen.a(), seen.b()}).containsExactly(new double[] {L, a, b}, within(0.0051));
    }
}
