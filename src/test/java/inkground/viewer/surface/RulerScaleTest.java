package inkground.viewer.surface;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.viewer.state.LengthUnit;
import inkground.viewer.surface.RulerScale.Tick;
import inkground.viewer.surface.RulerScale.Weight;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class RulerScaleTest {
    private static final double PT_PER_MM = 72 / 25.4;

    private static List<String> names(List<Tick> ticks) {
        return ticks.stream().map(Tick::name).filter(name -> !name.isEmpty()).toList();
    }

    @Test
    void atSixPixelsAMillimetreEveryTenthIsNamedAndEveryOneDrawn() {
        List<Tick> ticks = RulerScale.ticks(LengthUnit.MM, -5 * PT_PER_MM, 21 * PT_PER_MM, 6 / PT_PER_MM);
        assertThat(names(ticks)).containsExactly("0", "10", "20");
        assertThat(ticks).hasSize(27);
        assertThat(ticks.get(10).weight()).isEqualTo(Weight.HALF);
        assertThat(ticks.get(5).offsetPt()).isCloseTo(0, within(1e-9));
        assertThat(ticks.get(25).offsetPt()).isCloseTo(20 * PT_PER_MM, within(1e-9));
    }

    @Test
    void lengthsBeforeTheZeroAreNegative() {
        List<Tick> ticks = RulerScale.ticks(LengthUnit.MM, -25 * PT_PER_MM, -5 * PT_PER_MM, 6 / PT_PER_MM);
        assertThat(names(ticks)).containsExactly("−20", "−10");
    }

    @Test
    void inchesAreHalvedAndFromAfarCountedInTens() {
        assertThat(names(RulerScale.ticks(LengthUnit.INCH, 0, 72, 240 / 72.0)))
                .containsExactly("0", "0.25", "0.5", "0.75", "1");
        assertThat(names(RulerScale.ticks(LengthUnit.INCH, 0, 72 * 25, 6 / 72.0)))
                .containsExactly("0", "10", "20");
        List<Tick> one = RulerScale.ticks(LengthUnit.INCH, 0, 72, 96 / 72.0);
        assertThat(one).hasSize(17);
        assertThat(one.get(8).weight()).isEqualTo(Weight.HALF);
    }

    @ParameterizedTest
    @EnumSource(LengthUnit.class)
    void atEveryZoomNamesAndTicksKeepTheirDistanceAndAreEven(LengthUnit unit) {
        for (double pxPerPt = 0.02; pxPerPt < 64; pxPerPt *= 1.17) {
            List<Tick> ticks = RulerScale.ticks(unit, -300 / pxPerPt, 900 / pxPerPt, pxPerPt);
            List<Tick> named =
                    ticks.stream().filter(t -> t.weight() == Weight.NAMED).toList();
            assertThat(named.size()).as("names at %s", pxPerPt).isBetween(2, 24);
            double apart = (named.get(1).offsetPt() - named.get(0).offsetPt()) * pxPerPt;
            assertThat(apart).isGreaterThanOrEqualTo(RulerScale.LEAST_NAMED_PX);
            double fine = ticks.get(1).offsetPt() - ticks.get(0).offsetPt();
            assertThat(fine * pxPerPt).isGreaterThanOrEqualTo(RulerScale.LEAST_TICK_PX);
            for (int i = 1; i < ticks.size(); i++) {
                assertThat(ticks.get(i).offsetPt() - ticks.get(i - 1).offsetPt())
                        .isCloseTo(fine, within(fine * 1e-6));
            }
        }
    }
}
