package inkground.appearance;

import static inkground.appearance.Samples.FOGRA;
import static inkground.appearance.Samples.WHITE_SHIRT;
import static inkground.appearance.Samples.spot;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.ink.InkSet;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlanesForTests;
import inkground.plate.PlateRequest;
import inkground.plate.Register;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Inks out of register and overprint ignored, on two rectangles that meet. */
class PlayTest {
    private static final List<InkColour> INKS =
            List.of(spot("Mill Red", new Lab(48, 62, 40), 1), spot("Reach Blue", new Lab(35, 5, -45), 1));
    private static final InkSet SET =
            new InkSet(INKS.stream().map(InkColour::ink).toList());
    /** At a tenth of a millimetre a pixel: red 10 to 20 mm, blue 20 to 30 mm across; both 10 to 20 mm down. With overprint, red runs on below the blue. */
    private static final PlaneSource ABUTTING = (request, cancel) -> PlanesForTests.of(SET, request, (plane, x, y) -> {
        boolean down = y >= 100 && y < 200;
        boolean red = down && x >= 100 && (x < 200 || request.overprint() && x < 220);
        boolean blue = down && x >= 200 && x < 300;
        return (plane == 0 ? red : plane == 1 ? blue : red || blue) ? 255 : 0;
    });

    private static PlateRequest region(boolean overprint) {
        return new PlateRequest(254 / 72.0, 0, 0, 400, 300, overprint, Set.of());
    }

    private static MapFigures figures(ProofMap map, boolean overprint) throws Refusal {
        return map.figures(ABUTTING, region(overprint), new Cancel(), Progress.NONE);
    }

    private static double[] of(double red, double blue) {
        return new double[] {red, blue};
    }

    @Test
    void anInkThatMovesAwayFromItsNeighbourLeavesASliver() throws Refusal {
        MapFigures apart = figures(new RegisterMap(ABUTTING, of(0, 0.3), of(0, 0)), false);
        assertThat(apart.cm2(RegisterMap.SLIVER)).isCloseTo(0.03 * 1, within(0.03 * 0.005));
        assertThat(apart.cm2(RegisterMap.LEFT)).isZero();
    }

    @Test
    void anInkThatMovesOntoItsNeighbourLeavesOpenGroundOnly() throws Refusal {
        MapFigures together = figures(new RegisterMap(ABUTTING, of(0, -0.3), of(0, 0)), false);
        assertThat(together.cm2(RegisterMap.SLIVER)).isZero();
        assertThat(together.cm2(RegisterMap.LEFT)).isCloseTo(0.03, within(0.03 * 0.005));
    }

    @Test
    void inksThatMoveTogetherShowNoSliverAndATrapCloses() throws Refusal {
        assertThat(figures(new RegisterMap(ABUTTING, of(0.3, 0.3), of(0, 0)), false)
                        .cm2(RegisterMap.SLIVER))
                .isZero();
        assertThat(figures(new RegisterMap(ABUTTING, of(0, 0.3), of(0, 0)), true)
                        .cm2(RegisterMap.SLIVER))
                .isZero();
    }

    @Test
    void aShiftByPartsOfAPixelKeepsTheInkAndMovesItsMiddle() throws Refusal {
        InkPlanes planes = ABUTTING.planes(region(false), new Cancel());
        InkPlanes moved = Register.shifted(planes, of(2.25, 0), of(-1.5, 0));
        double[] before = middle(planes);
        double[] after = middle(moved);
        assertThat(after[0]).isCloseTo(before[0], within(before[0] * 0.005));
        assertThat(after[1] - before[1]).isCloseTo(2.25, within(0.02));
        assertThat(after[2] - before[2]).isCloseTo(-1.5, within(0.02));
        for (int i = 0; i < 300; i++) {
            assertThat(moved.get(1, 250, i)).isEqualTo(planes.get(1, 250, i));
        }
        assertThat(moved.get(moved.laidPlane(), 100, 150)).isZero();
        assertThatThrownBy(() -> Register.shifted(planes, new double[1], new double[2]))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** Amount of red and its middle. */
    private static double[] middle(InkPlanes planes) {
        double sum = 0;
        double sumX = 0;
        double sumY = 0;
        for (int y = 0; y < planes.height(); y++) {
            for (int x = 0; x < planes.width(); x++) {
                double tint = planes.get(0, x, y);
                sum += tint;
                sumX += tint * x;
                sumY += tint * y;
            }
        }
        return new double[] {sum, sumX / sum, sumY / sum};
    }

    @Test
    void aTileOutOfRegisterIsPartOfTheWhole() throws Refusal {
        InkPlanes whole = Register.shifted(ABUTTING, region(false), of(0.17, -0.3), of(0.05, 0.2), new Cancel());
        PlateRequest tile = region(false).part(90, 80, 230, 190);
        InkPlanes part = Register.shifted(ABUTTING, tile, of(0.17, -0.3), of(0.05, 0.2), new Cancel());
        for (int plane = 0; plane < part.planes(); plane++) {
            for (int y = 0; y < part.height(); y++) {
                for (int x = 0; x < part.width(); x++) {
                    assertThat(part.get(plane, x, y)).isEqualTo(whole.get(plane, 90 + x, 80 + y));
                }
            }
        }
    }

    @Test
    void whereOverprintMattersIsTheAreaOfTheOverlap() throws Refusal {
        List<InkColour> filters = INKS.stream().map(ink -> ink.withOpacity(0)).toList();
        StackModel model = new StackModel(Stack.of(WHITE_SHIRT, filters, FOGRA));
        for (boolean overprint : new boolean[] {true, false}) {
            MapFigures figures = figures(DifferenceMap.overprint(ABUTTING, model, 2), overprint);
            assertThat(figures.cm2(DifferenceMap.BEYOND)).isCloseTo(0.2 * 1, within(0.2 * 0.005));
            assertThat(figures.largest()).isGreaterThan(10);
        }
        StackModel opaque = new StackModel(Stack.of(WHITE_SHIRT, INKS, FOGRA));
        assertThat(figures(DifferenceMap.overprint(ABUTTING, opaque, 2), true).cm2(DifferenceMap.BEYOND))
                .as("an opaque ink on top hides what is beneath")
                .isZero();
    }
}
