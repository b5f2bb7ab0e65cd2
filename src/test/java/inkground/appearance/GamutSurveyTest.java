package inkground.appearance;

import static inkground.appearance.Samples.NAVY_SHIRT;
import static inkground.appearance.Samples.spot;
import static inkground.appearance.Samples.stack;
import static org.assertj.core.api.Assertions.assertThat;
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
import java.util.Arrays;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the figures of a page and the map of the window say of reach: the same, and right areas. */
class GamutSurveyTest {
    private static final double PX_MM = 25.4 / 150;

    /** Red and blue on navy cloth: some of their mixtures are within reach of what they ask for, some are not. */
    private static final StackModel MODEL = new StackModel(
            stack(NAVY_SHIRT, spot("Mill Red", new Lab(48, 62, 40), 0.6), spot("Weir Blue", new Lab(30, 5, -45), 0.9)));

    private static final InkSet INKS =
            new InkSet(MODEL.stack().inks().stream().map(InkColour::ink).toList());

    @ParameterizedTest
    @ValueSource(doubles = {0.4, 1, 3, 8, 15})
    void map_and_figures_decide_by_one_rule(double limit) throws Refusal {
        int side = 64;
        byte[][] rasters = new byte[4][side * side];
        Random random = new Random(3);
        for (int i = 0; i < side * side; i++) {
            rasters[0][i] = (byte) (8 * random.nextInt(32));
            rasters[1][i] = (byte) (8 * random.nextInt(32));
        }
        Arrays.fill(rasters[2], (byte) 255);
        Arrays.fill(rasters[3], (byte) 255);
        InkPlanes planes = Samples.planes(MODEL.stack().inks(), side, side, rasters);
        GamutSurvey survey = new GamutSurvey(MODEL, 2, limit);
        survey.add(planes, new Cancel());
        GamutSurvey.Found found = survey.found(new Cancel());
        byte[] marks = new byte[side * side];
        double largest = ColourMap.reach(MODEL, 2, limit).mark(planes, marks, new Cancel());
        long marked = IntStream.range(0, marks.length)
                .filter(i -> marks[i] == ColourMap.BEYOND)
                .count();
        assertThat(found.beyondReach()).isEqualTo(marked);
        assertThat(found.beyondReach()).isBetween(1.0, side * side - 1.0);
        assertThat(found.worst()).isSortedAccordingTo((a, b) -> Double.compare(b.de00(), a.de00()));
        assertThat(found.worst().get(0).de00()).isCloseTo(largest, within(1e-9));
        assertThat(found.worst().stream().mapToDouble(GamutSurvey.Worst::pixels).sum())
                .isCloseTo(found.beyondReach(), within(1e-6));
    }

    /** At 150 dpi, edges between the pixels, over more than one band; the right one of paint that lets 40 % through. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.03, 0.08, 0.13})
    void areas_are_right_within_half_a_percent_wherever_edges_lie(double off) throws Refusal {
        PlaneSource art = (request, cancel) -> PlanesForTests.laidAs(
                PlanesForTests.of(INKS, request, (plane, x, y) -> plane == 1 ? 0 : laid(x, y, off)),
                (x, y) -> laid(x, y, off));
        PlateRequest region = new PlateRequest(
                150 / 72.0, 0, 0, (int) Math.round(30 / PX_MM), (int) Math.round(50 / PX_MM), true, Set.of());
        double cm2 = (6 * 32 + 5 * (32.01 - off)) / 100;
        GamutSurvey survey = new GamutSurvey(MODEL, 2, 3);
        art.stream(region, new Cancel(), Progress.NONE, band -> survey.add(band, new Cancel()));
        GamutSurvey.Found found = survey.found(new Cancel());
        double cm2PerPixel = MapFigures.cm2PerPixel(region);
        assertThat(found.pixels()).isEqualTo((double) region.width() * region.height());
        assertThat(found.beyondReach() * cm2PerPixel).isCloseTo(cm2, within(0.005 * cm2));
        MapFigures figures = ColourMap.reach(MODEL, 2, 3).figures(art, region, new Cancel(), Progress.NONE);
        assertThat(figures.cm2(ColourMap.BEYOND)).isCloseTo(cm2, within(0.005 * cm2));
        assertThat(figures.share(ColourMap.BEYOND)).isCloseTo(found.beyondReach() / found.pixels(), within(1e-4));
    }

    private static int laid(int x, int y, double off) {
        double opaque = covered(x, 5 + off, 11 + off) * covered(y, 10 + off, 42 + off);
        double sheer = covered(x, 18 + off, 23 + off) * covered(y, 10 + off, 42.01);
        return (int) Math.round(255 * (opaque + 0.6 * sheer));
    }

    /** Part of a pixel that lies between two places, in mm. */
    private static double covered(int pixel, double from, double to) {
        return Math.max(0, Math.min(to, (pixel + 1) * PX_MM) - Math.max(from, pixel * PX_MM)) / PX_MM;
    }

    @Test
    void a_shadow_that_fades_is_no_edge() throws Refusal {
        int side = 96;
        byte[] fading = new byte[side];
        for (int i = 0; i < side; i++) {
            fading[i] = (byte) (255 - 2 * i);
        }
        EdgeShares shares =
                new EdgeShares(Samples.planes(MODEL.stack().inks(), side, 1, fading, new byte[side], fading, fading));
        for (int i = 0; i < side; i++) {
            assertThat(shares.share(i)).isBetween(0.96, 1.0);
        }
    }
}
