package inkground.findings;

import static inkground.plate.ExactCoverage.area;
import static inkground.plate.ExactCoverage.box;
import static inkground.plate.ExactCoverage.disc;
import static inkground.plate.ExactCoverage.placed;
import static inkground.plate.ExactCoverage.rectangle;
import static inkground.plate.ExactCoverage.scaled;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.findings.ThinFeatures.Kind;
import inkground.findings.ThinFeatures.Limits;
import inkground.ink.Ink;
import inkground.ink.InkSet;
import inkground.plate.ExactCoverage;
import inkground.plate.PlaneSource;
import inkground.plate.PlanesForTests;
import inkground.plate.PlateRequest;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Thin shapes whose areas and widths are known, at the resolutions that the window measures at, turned and moved between the pixels.
 * Outlines are in units of the minimum, 0.4 mm.
 */
class ThinGridTest {
    private static final InkSet ONE = new InkSet(List.of(Ink.named("Mill Red")));
    private static final double MIN_MM = 0.4;
    private static final double UNIT_CM2 = MIN_MM * MIN_MM / 100;
    private static final double EXTENT = 34;
    private static final double[] PX = {ThinFeatures.PX_PER_MINIMUM, 3.1};
    private static final double[] DEGREES = {0, 10, 22, 37, 45, 67.5};
    private static final double[][] OFFSETS = {{0, 0}, {0.3, 0.1}, {0.5, 0.5}, {0.8, 0.45}};

    /** One way of laying a shape on the pixels. */
    private record Place(double px, double degrees, double[] offset) {
        double[][] of(double[][] outline) {
            double middle = size() / 2.0;
            return placed(scaled(outline, px), degrees, middle + offset[0], middle + offset[1]);
        }

        int size() {
            return (int) (EXTENT * px);
        }
    }

    /** What is right of a measured shape. */
    @FunctionalInterface
    private interface Check {
        void check(ThinFeatures found, Place place, String what);
    }

    private static void each(List<double[][]> inked, List<double[][]> bare, Check check) throws Refusal {
        for (double px : PX) {
            for (double degrees : DEGREES) {
                for (double[] offset : OFFSETS) {
                    Place place = new Place(px, degrees, offset);
                    ExactCoverage cover = new ExactCoverage(place.size(), place.size());
                    inked.forEach(shape -> cover.add(place.of(shape)));
                    bare.forEach(shape -> cover.cutOut(place.of(shape)));
                    String what = px + " px, " + degrees + "°, " + offset[0] + ", " + offset[1];
                    check.check(measured(cover, place), place, what);
                }
            }
        }
    }

    private static ThinFeatures measured(ExactCoverage cover, Place place) throws Refusal {
        PlaneSource source = (request, cancel) ->
                PlanesForTests.of(ONE, request, (plane, x, y) -> (int) Math.round(255 * cover.at(x, y)));
        double pxPerPt = place.px / MIN_MM * 25.4 / 72;
        PlateRequest region = new PlateRequest(pxPerPt, 0, 0, place.size(), place.size(), true, Set.of());
        return ThinFeatures.of(source, region, new Limits(MIN_MM, MIN_MM), new Cancel(), Progress.NONE);
    }

    private static double units(ThinFeatures found, Kind kind) {
        return (kind == Kind.LINE ? found.lineCm2() : found.gapCm2()) / UNIT_CM2;
    }

    private static void assertThin(
            Kind kind, double area, double width, double part, List<double[][]> inked, List<double[][]> bare)
            throws Refusal {
        each(inked, bare, (found, place, what) -> {
            assertThat(units(found, kind)).as(what).isCloseTo(area, within(part * area));
            assertThat(units(found, kind == Kind.LINE ? Kind.GAP : Kind.LINE))
                    .as(what)
                    .isZero();
            assertThat(found.places().get(0).widthMm()).as(what).isCloseTo(width * MIN_MM, within(0.02));
        });
    }

    @Test
    void linesGapsRingsAndCrossesAreRightWithinHalfAPercent() throws Refusal {
        for (double w : new double[] {0.25, 0.5, 0.75}) {
            List<double[][]> bar = List.<double[][]>of(rectangle(12, w));
            assertThin(Kind.LINE, 12 * w, w, 0.005, bar, List.of());
            assertThin(Kind.LINE, 3 * w, w, 0.005, List.<double[][]>of(rectangle(3, w)), List.of());
            assertThin(Kind.GAP, 12 * w, w, 0.005, List.<double[][]>of(rectangle(18, 12)), bar);
            double[][] hole = disc(5 - w);
            assertThin(
                    Kind.LINE,
                    area(disc(5)) - area(hole),
                    w,
                    0.005,
                    List.<double[][]>of(disc(5)),
                    List.<double[][]>of(hole));
        }
        List<double[][]> cross =
                List.of(box(-5, -0.25, 5, 0.25), box(-0.25, -5, 0.25, -0.25), box(-0.25, 0.25, 0.25, 5));
        assertThin(Kind.LINE, 19.5 * 0.5, 0.5, 0.005, cross, List.of());
    }

    /** Of a dot of 5 pixels the rounding of tints alone is 0.4 %, and its width is known from its area within 6 %. */
    @Test
    void dotsAndHolesCountWhole() throws Refusal {
        for (double w : new double[] {0.5, 0.75}) {
            assertDot(Kind.LINE, w * w, w, List.<double[][]>of(rectangle(w, w)), List.of());
            assertDot(Kind.LINE, area(disc(w / 2)), w, List.<double[][]>of(disc(w / 2)), List.of());
            assertDot(Kind.GAP, w * w, w, List.<double[][]>of(rectangle(12, 12)), List.<double[][]>of(rectangle(w, w)));
        }
    }

    private static void assertDot(Kind kind, double area, double width, List<double[][]> inked, List<double[][]> bare)
            throws Refusal {
        each(inked, bare, (found, place, what) -> {
            assertThat(units(found, kind)).as(what).isCloseTo(area, within(0.005 * area));
            assertThat(found.places().get(0).widthMm()).as(what).isCloseTo(width * MIN_MM, within(0.075));
        });
    }

    @Test
    void whatIsAsWideAsTheMinimumAndMoreIsNotFound() throws Refusal {
        double[][] triangle = {{0, -4}, {4, 3}, {-4, 3}};
        for (double[][] shape : List.of(rectangle(12, 1), rectangle(1.2, 1.2), disc(0.65), rectangle(5, 5), triangle)) {
            each(List.<double[][]>of(shape), List.of(), (found, place, what) -> assertThat(found.places())
                    .as(what)
                    .isEmpty());
        }
    }

    /** Where a taper becomes thin is known to half a column of pixels as high as the minimum. */
    @Test
    void aTaperIsThinFromTheMinimumDownToItsTip() throws Refusal {
        double[][] taper = {{-14, -1}, {14, 0}, {-14, 1}};
        each(List.<double[][]>of(taper), List.of(), (found, place, what) -> assertThat(units(found, Kind.LINE))
                .as(what)
                .isCloseTo(7, within(0.75 / place.px)));
    }

    /** Where the sliver fades, what is less than two steps of tint is left out: some tenths of a pixel. */
    @Test
    void aSliverIsFollowedToItsTip() throws Refusal {
        double[][] sliver = {{-10, -0.25}, {10, 0}, {-10, 0.25}};
        each(List.<double[][]>of(sliver), List.of(), (found, place, what) -> assertThat(units(found, Kind.LINE))
                .as(what)
                .isCloseTo(5, within(0.005 * 5 + 0.8 / place.px / place.px)));
    }

    /** An end that opens into something broad is known within a pixel and a half squared. */
    @Test
    void bridgesAndOpenGapsEndWhereTheyOpen() throws Refusal {
        for (double w : new double[] {0.5, 0.75}) {
            List<double[][]> bridge = List.of(box(-12, -4, -5, 4), box(5, -4, 12, 4), box(-5, -w / 2, 5, w / 2));
            List<double[][]> gap = List.of(box(-8, -5, -w / 2, 5), box(w / 2, -5, 8, 5));
            each(bridge, List.of(), (found, place, what) -> assertThat(units(found, Kind.LINE))
                    .as("bridge of " + w + ", " + what)
                    .isCloseTo(10 * w, within(2 * 1.5 / place.px / place.px)));
            each(gap, List.of(), (found, place, what) -> assertThat(units(found, Kind.GAP))
                    .as("gap of " + w + ", " + what)
                    .isCloseTo(10 * w, within(2 * 1.5 / place.px / place.px)));
        }
    }
}
