package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ToneValuesTest {
    private static final Lab PAPER = new Lab(95, 0, -2);
    private static final Lab SOLID = new Lab(45, 60, 35);

    @Test
    void paper_is_none_and_the_solid_is_one() {
        assertThat(ToneValues.area(PAPER, SOLID, PAPER)).isZero();
        assertThat(ToneValues.spot(PAPER, SOLID, PAPER)).isZero();
        assertThat(ToneValues.area(PAPER, SOLID, SOLID)).isEqualTo(1);
        assertThat(ToneValues.spot(PAPER, SOLID, SOLID)).isEqualTo(1);
        assertThat(ToneValues.area(PAPER, PAPER, SOLID)).isZero();
    }

    @Test
    void half_the_light_is_half_the_area() {
        double[] paper = Cie.labToXyz(PAPER);
        double[] solid = Cie.labToXyz(SOLID);
        Lab half = Cie.xyzToLab((paper[0] + solid[0]) / 2, (paper[1] + solid[1]) / 2, (paper[2] + solid[2]) / 2);
        assertThat(ToneValues.area(PAPER, SOLID, half)).isCloseTo(0.5, within(1e-9));
    }

    @Test
    void half_way_in_the_cube_roots_is_half_the_spot_tone_value() {
        // Lab is linear in the cube roots, so its middle is theirs.
        Lab half = new Lab(70, 30, 16.5);
        assertThat(ToneValues.spot(PAPER, SOLID, half)).isCloseTo(0.5, within(1e-9));
    }
}
