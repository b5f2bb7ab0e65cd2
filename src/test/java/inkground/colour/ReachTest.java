package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ReachTest {
    private final PrintCondition fogra = PrintConditions.bundled("FOGRA39L");

    @Test
    void a_mid_grey_is_reached_and_a_display_green_is_missed() {
        assertThat(Reach.of(fogra, new Lab(50, 0, 0)).missedBy()).isLessThan(0.1);
        Reach green = Reach.of(fogra, Srgb.toLab(0, 1, 0));
        assertThat(green.missedBy()).isGreaterThan(10);
        assertThat(Math.hypot(green.nearest().a(), green.nearest().b())).isLessThan(80);
    }

    @Test
    void bare_paper_is_reached_exactly() {
        Reach white = Reach.of(fogra, new Lab(100, 0, 0));
        assertThat(white.missedBy()).isLessThan(0.05);
        assertThat(white.cmyk()).containsExactly(0, 0, 0, 0);
    }
}
