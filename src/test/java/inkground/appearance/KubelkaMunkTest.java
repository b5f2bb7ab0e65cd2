package inkground.appearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The limits of the theory, exact to 1e-9. Columns: reflectance over white, over black. */
class KubelkaMunkTest {
    private static final double EXACT = 1e-9;

    @ParameterizedTest
    @CsvSource({"0.9, 0.6", "0.5, 0.1", "0.3, 0.29", "0.8, 0", "0.4, 0.4", "1, 0.5", "0.02, 0.001"})
    void over_white_and_black_it_gives_what_was_measured(double white, double black) {
        KubelkaMunk layer = KubelkaMunk.of(white, black);
        assertThat(layer.over(1)).isCloseTo(white, within(EXACT));
        assertThat(layer.over(0)).isCloseTo(black, within(EXACT));
        assertThat(layer.times(1).over(0.37)).isCloseTo(layer.over(0.37), within(EXACT));
    }

    @ParameterizedTest
    @CsvSource({"0.9, 0.6", "0.5, 0.1", "0.8, 0", "1, 0.5", "0.02, 0.001"})
    void of_no_thickness_it_is_not_there(double white, double black) {
        KubelkaMunk none = KubelkaMunk.of(white, black).times(0);
        KubelkaMunk nearly = KubelkaMunk.of(white, black).times(1e-13);
        for (double ground : new double[] {0, 0.2, 0.7, 1}) {
            assertThat(none.over(ground)).isCloseTo(ground, within(EXACT));
            assertThat(nearly.over(ground)).isCloseTo(ground, within(EXACT));
        }
    }

    @ParameterizedTest
    @CsvSource({"0.9, 0.6", "0.5, 0.1", "0.3, 0.29", "0.8, 0", "1, 0.5", "0.02, 0.001"})
    void infinitely_thick_it_hides_every_ground(double white, double black) {
        KubelkaMunk layer = KubelkaMunk.of(white, black);
        KubelkaMunk thick = layer.times(Double.POSITIVE_INFINITY);
        assertThat(thick.over(1)).isCloseTo(thick.over(0), within(EXACT));
        // The thick layer laid on a ground of its own colour changes nothing: the definition of R infinity.
        double end = thick.over(0.5);
        assertThat(layer.over(end)).isCloseTo(end, within(EXACT));
        assertThat(layer.times(1e5).over(0)).isCloseTo(end, within(1e-4));
    }

    @ParameterizedTest
    @CsvSource({"0.9, 0.6", "0.5, 0.1", "0.8, 0", "1, 0.5"})
    void two_hits_are_the_layer_on_itself(double white, double black) {
        KubelkaMunk layer = KubelkaMunk.of(white, black);
        for (double ground : new double[] {0, 0.3, 1}) {
            assertThat(layer.times(2).over(ground)).isCloseTo(layer.over(layer.over(ground)), within(EXACT));
            assertThat(layer.times(0.5).times(2).over(ground)).isCloseTo(layer.over(ground), within(EXACT));
        }
    }

    @ParameterizedTest
    @CsvSource({"0.9, 0.6", "0.5, 0.1", "0.8, 0", "1, 0.5", "0.02, 0.001"})
    void it_moves_steadily_from_the_ground_to_its_own_colour(double white, double black) {
        KubelkaMunk layer = KubelkaMunk.of(white, black);
        double overBlack = 0;
        double overWhite = 1;
        for (double x = 0.05; x < 40; x *= 1.1) {
            KubelkaMunk now = layer.times(x);
            assertThat(now.over(0)).as("black ground, %f", x).isGreaterThanOrEqualTo(overBlack - EXACT);
            assertThat(now.over(1)).as("white ground, %f", x).isLessThanOrEqualTo(overWhite + EXACT);
            overBlack = now.over(0);
            overWhite = now.over(1);
        }
        assertThat(overWhite - overBlack).isLessThan(white - black);
    }

    @Test
    void a_negative_thickness_is_refused() {
        KubelkaMunk layer = KubelkaMunk.of(0.9, 0.6);
        assertThatThrownBy(() -> layer.times(-1)).isInstanceOf(IllegalArgumentException.class);
    }
}
