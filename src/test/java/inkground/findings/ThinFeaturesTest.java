package inkground.findings;

import static inkground.plate.ExactCoverage.box;
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
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Lines, gaps, wedges and letters whose widths are known, at 600 dpi. */
class ThinFeaturesTest {
    private static final InkSet ONE = new InkSet(List.of(Ink.named("Mill Red")));
    private static final InkSet TWO = new InkSet(List.of(Ink.named("Mill Red"), Ink.named("Reach Blue")));
    private static final double MM = 25.4 / 600; // a pixel
    private static final double SIZE_MM = 10;
    private static final double BAR_X = 5.013;
    private static final double BAR_Y = 4.989;
    private static final int ROUGH = 8; // points a pixel, across and down, that tell whether an edge runs through it
    private static final int FINE = 48;

    /** Whether a point, in mm, is inked. */
    private interface Shape {
        boolean inked(double x, double y);
    }

    private static PlaneSource source(Shape shape) {
        return source(shape, 255);
    }

    /** How much of a pixel is inked, 0 to 1. */
    private interface Coverage {
        double at(int x, int y);
    }

    private static PlaneSource source(Shape shape, int tint) {
        return covered((x, y) -> coverage(shape, x, y), tint);
    }

    private static PlaneSource covered(Coverage art, int tint) {
        return (request, cancel) -> {
            double[] coverage = new double[request.width() * request.height()];
            for (int i = 0; i < coverage.length; i++) {
                coverage[i] = art.at(request.x0() + i % request.width(), request.y0() + i / request.width());
            }
            return PlanesForTests.of(ONE, request, (plane, x, y) -> {
                boolean inside = x < request.x1() && y < request.y1();
                int at = (y - request.y0()) * request.width() + x - request.x0();
                return inside ? (int) Math.round(coverage[at] * (plane == 0 ? tint : 255)) : 0;
            });
        };
    }

    private static double coverage(Shape shape, int x, int y) {
        double rough = coverage(shape, x, y, ROUGH);
        return rough == 0 || rough == 1 ? rough : coverage(shape, x, y, FINE);
    }

    private static double coverage(Shape shape, int x, int y, int points) {
        int sum = 0;
        for (int i = 0; i < points * points; i++) {
            double px = x + (i % points + 0.5) / points;
            double py = y + (i / points + 0.5) / points;
            sum += shape.inked(px * MM, py * MM) ? 1 : 0;
        }
        return (double) sum / points / points;
    }

    private static ThinFeatures measured(PlaneSource source, double lineMm, double gapMm) throws Refusal {
        int px = (int) Math.round(SIZE_MM / MM);
        return ThinFeatures.of(
                source,
                new PlateRequest(600 / 72.0, 0, 0, px, px, true, Set.of()),
                new Limits(lineMm, gapMm),
                new Cancel(),
                Progress.NONE);
    }

    /** A bar of 6 mm through the middle, turned, off the grid. */
    private static Coverage exactBar(double widthMm, double degrees) {
        return exact(List.<double[][]>of(placed(rectangle(6, widthMm), degrees, BAR_X, BAR_Y)));
    }

    /** Convex outlines in mm that do not overlap. */
    private static Coverage exact(List<double[][]> outlinesMm) {
        int size = (int) Math.round(SIZE_MM / MM);
        ExactCoverage cover = new ExactCoverage(size, size);
        outlinesMm.forEach(outline -> cover.add(scaled(outline, 1 / MM)));
        return cover::at;
    }

    /** A bar of 6 mm through the middle, turned, off the grid. */
    private static Shape bar(double widthMm, double degrees) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        return (x, y) -> {
            double u = (x - BAR_X) * c + (y - BAR_Y) * s;
            double v = (y - BAR_Y) * c - (x - BAR_X) * s;
            return Math.abs(u) < 3 && Math.abs(v) < widthMm / 2;
        };
    }

    @Test
    void linesOfKnownWidthAreMeasuredAtAnyAngle() throws Refusal {
        for (double width : new double[] {0.05, 0.1, 0.15}) {
            for (double degrees : new double[] {0, 10, 22, 45, 67.5, 90}) {
                ThinFeatures found = measured(covered(exactBar(width, degrees), 255), 0.2, 0.2);
                String what = width + " mm at " + degrees + "°: " + found;
                assertThat(found.places()).as(what).hasSize(1);
                ThinFeatures.Place place = found.places().get(0);
                assertThat(place.kind()).isEqualTo(Kind.LINE);
                assertThat(place.widthMm()).as(what).isCloseTo(width, within(0.02));
                assertThat(found.lineCm2()).as(what).isCloseTo(6 * width / 100, within(6 / 100.0 * (0.005 * width)));
                assertThat(found.gapCm2()).isZero();
            }
        }
    }

    @Test
    void gapsOfKnownWidthAreMeasuredAtAnyAngle() throws Refusal {
        for (double width : new double[] {0.05, 0.1, 0.15}) {
            for (double degrees : new double[] {0, 10, 22, 45, 90}) {
                Coverage line = exactBar(width, degrees);
                Coverage slit = (x, y) -> x > 20 && x < 215 && y > 20 && y < 215 ? 1 - line.at(x, y) : 0;
                ThinFeatures found = measured(covered(slit, 255), 0.2, 0.2);
                String what = width + " mm at " + degrees + "°: " + found;
                assertThat(found.places()).as(what).hasSize(1);
                assertThat(found.places().get(0).kind()).isEqualTo(Kind.GAP);
                assertThat(found.places().get(0).widthMm()).as(what).isCloseTo(width, within(0.02));
                assertThat(found.gapCm2()).as(what).isCloseTo(6 * width / 100, within(6 / 100.0 * (0.005 * width)));
            }
        }
    }

    private static ThinFeatures measured(double degrees, double[]... rectanglesMm) throws Refusal {
        List<double[][]> outlines = Arrays.stream(rectanglesMm)
                .map(r -> placed(box(r[0], r[1], r[2], r[3]), degrees, BAR_X, BAR_Y))
                .toList();
        return measured(covered(exact(outlines), 255), 0.2, 0.2);
    }

    private static double[] mm(double x0, double y0, double x1, double y1) {
        return new double[] {x0, y0, x1, y1};
    }

    private static final double[] DEGREES = {0, 10, 22, 37, 45, 67.5, 90};

    @Test
    void shortLinesAndDotsCountWhole() throws Refusal {
        for (double degrees : DEGREES) {
            for (double width : new double[] {0.05, 0.1, 0.15}) {
                ThinFeatures line = measured(degrees, mm(-0.3, -width / 2, 0.3, width / 2));
                assertThat(line.lineCm2() * 100)
                        .as(width + " mm at " + degrees + "°")
                        .isCloseTo(0.6 * width, within(0.005 * 0.6 * width));
            }
            ThinFeatures dots =
                    measured(degrees, mm(-1, -0.05, -0.9, 0.05), mm(0, -0.05, 0.1, 0.05), mm(1, -0.05, 1.1, 0.05));
            assertThat(dots.lineCm2() * 100).as("dots at " + degrees + "°").isCloseTo(0.03, within(0.005 * 0.03));
            assertThat(dots.places().get(0).widthMm()).isCloseTo(0.1, within(0.02));
            assertThat(measured(degrees, mm(-0.15, -0.15, 0.15, 0.15)).places())
                    .as("a dot of 0.3 mm at " + degrees + "°")
                    .isEmpty();
        }
    }

    @Test
    void aLineEndsWhereItOpensIntoSomethingBroad() throws Refusal {
        for (double degrees : DEGREES) {
            for (double width : new double[] {0.1, 0.15}) {
                String what = width + " mm at " + degrees + "°";
                double w = width / 2;
                ThinFeatures bridge = measured(degrees, mm(-3, -1, -1, 1), mm(1, -1, 3, 1), mm(-1, -w, 1, w));
                assertThat(bridge.lineCm2() * 100).as(what).isCloseTo(2 * width, within(0.005 * 2 * width));
                assertThat(bridge.gapCm2()).isZero();
                ThinFeatures gap = measured(degrees, mm(-3, -1, -w, 1), mm(w, -1, 3, 1));
                assertThat(gap.gapCm2() * 100).as(what).isCloseTo(2 * width, within(0.005 * 2 * width));
                assertThat(gap.lineCm2()).isZero();
            }
            ThinFeatures cross =
                    measured(degrees, mm(-2, -0.05, 2, 0.05), mm(-0.05, -2, 0.05, -0.05), mm(-0.05, 0.05, 0.05, 2));
            assertThat(cross.lineCm2() * 100).as("cross at " + degrees + "°").isCloseTo(0.79, within(0.005 * 0.79));
            ThinFeatures letter = measured(
                    degrees,
                    mm(-1, -2, -0.4, 2),
                    mm(-0.4, -2, 1.1, -1.9),
                    mm(-0.4, -0.05, 1.1, 0.05),
                    mm(-0.4, 1.9, 1.1, 2));
            assertThat(letter.lineCm2() * 100).as("E at " + degrees + "°").isCloseTo(0.45, within(0.015 * 0.45));
        }
    }

    @Test
    void whatIsWideEnoughIsNotFound() throws Refusal {
        for (double degrees : new double[] {0, 10, 22, 45, 67.5}) {
            assertThat(measured(source(bar(0.1, degrees)), 0.1, 0.1).places())
                    .as(degrees + "°")
                    .isEmpty();
            assertThat(measured(source(bar(0.22, degrees)), 0.2, 0.2).places())
                    .as(degrees + "°")
                    .isEmpty();
            assertThat(measured(source(bar(0.18, degrees)), 0.2, 0.2).places())
                    .as(degrees + "°")
                    .hasSize(1);
        }
    }

    @Test
    void cornersAreNoFalseAlarms() throws Refusal {
        for (double degrees : new double[] {0, 13, 30, 45}) {
            double c = Math.cos(Math.toRadians(degrees));
            double s = Math.sin(Math.toRadians(degrees));
            for (double halfAngle : new double[] {22.5, 30, 45}) {
                double tan = Math.tan(Math.toRadians(halfAngle));
                // a triangle with angles of 45° to 90°, and the same cut out of a plane
                Shape corner = (x, y) -> {
                    double u = (x - 3) * c + (y - 3) * s;
                    double v = (y - 3) * c - (x - 3) * s;
                    return u > 0 && u < 3 && Math.abs(v) < u * tan;
                };
                assertThat(measured(source(corner), 0.2, 0.2).places())
                        .as(2 * halfAngle + "° turned by " + degrees)
                        .isEmpty();
                assertThat(measured(source((x, y) -> !corner.inked(x, y)), 0.2, 0.2)
                                .places())
                        .as("hole of " + 2 * halfAngle + "° turned by " + degrees)
                        .isEmpty();
            }
        }
        assertThat(measured(source((x, y) -> Math.hypot(x - 5, y - 5) < 2), 0.3, 0.3)
                        .places())
                .isEmpty();
    }

    @Test
    void aTaperIsThinWhereItIsNarrowerThanTheMinimum() throws Refusal {
        // 0.4 mm narrowing to nothing over 6 mm: below 0.2 mm for the last 3 mm
        Shape taper = (x, y) -> x > 2 && x < 8 && Math.abs(y - 5) < (8 - x) / 6 * 0.2;
        ThinFeatures found = measured(source(taper), 0.2, 0.2);
        assertThat(found.places()).hasSize(1);
        double left = found.places().get(0).box().x0() * 25.4 / 72;
        assertThat(left).isCloseTo(5, within(0.35)); // a width off by 0.02 mm lies 0.3 mm further along
        assertThat(found.lineCm2()).isCloseTo(3 * 0.2 / 2 / 100, within(0.0005));
    }

    @Test
    void lettersWithStrongStrokesPassAndTheirHairlinesAreFound() throws Refusal {
        Shape strong = (x, y) -> letterE(x, y, 0.5) || ring(x - 6.5, y - 5, 1.2, 1.8);
        assertThat(measured(source(strong), 0.2, 0.2).places()).isEmpty();
        ThinFeatures hair = measured(source((x, y) -> letterE(x, y, 0.1)), 0.2, 0.2);
        assertThat(hair.places()).allMatch(p -> p.kind() == Kind.LINE);
        assertThat(hair.places().get(0).widthMm()).isCloseTo(0.1, within(0.02));
        assertThat(hair.lineCm2()).isCloseTo(3 * 1.5 * 0.1 / 100, within(0.0003));
        ThinFeatures ring = measured(source((x, y) -> ring(x - 5, y - 5, 1.5, 1.62)), 0.2, 0.2);
        assertThat(ring.places()).hasSize(1);
        assertThat(ring.places().get(0).widthMm()).isCloseTo(0.12, within(0.02));
        assertThat(ring.lineCm2())
                .isCloseTo(
                        Math.PI * (1.62 * 1.62 - 1.5 * 1.5) / 100,
                        within(0.005 * Math.PI * (1.62 * 1.62 - 1.5 * 1.5) / 100));
    }

    /** An upright of 0.6 mm and three arms of 1.5 mm. */
    private static boolean letterE(double x, double y, double armMm) {
        boolean upright = x > 2 && x < 2.6 && y > 2 && y < 6;
        boolean arms = x >= 2.6
                && x < 4.1
                && (y > 2 && y < 2 + armMm || Math.abs(y - 4) < armMm / 2 || y > 6 - armMm && y < 6);
        return upright || arms;
    }

    private static boolean ring(double x, double y, double inner, double outer) {
        double r = Math.hypot(x, y);
        return r > inner && r < outer;
    }

    @Test
    void tintsAndLinesOnOtherInksAreMeasuredToo() throws Refusal {
        ThinFeatures tint = measured(source(bar(0.1, 22), 128), 0.2, 0.2);
        assertThat(tint.places()).hasSize(1);
        assertThat(tint.places().get(0).widthMm()).isCloseTo(0.1, within(0.02));
        Shape line = bar(0.1, 10);
        PlaneSource onBlue = (request, cancel) -> PlanesForTests.of(
                TWO, request, (plane, x, y) -> plane == 0 ? (int) Math.round(255 * coverage(line, x, y)) : 255);
        ThinFeatures found = measured(onBlue, 0.2, 0.2);
        assertThat(found.places()).hasSize(1);
        assertThat(found.places().get(0).ink().name()).isEqualTo("Mill Red");
        assertThat(found.places().get(0).widthMm()).isCloseTo(0.1, within(0.02));
    }

    @Test
    void softTonesAreNotLines() throws Refusal {
        PlaneSource soft = (request, cancel) -> PlanesForTests.of(
                ONE,
                request,
                (plane, x, y) -> plane > 0 ? 255 : (int) (127 + 120 * Math.sin(x / 9.0) * Math.sin(y / 9.0)));
        assertThat(measured(soft, 0.2, 0.2).places()).isEmpty();
    }

    @Test
    void theResolutionFollowsTheSmallerMinimum() {
        assertThat(ThinFeatures.dpi(new Limits(0.1, 0.2))).isEqualTo(635);
        assertThat(ThinFeatures.dpi(new Limits(0.5, 0.3))).isEqualTo(212);
        assertThat(ThinFeatures.dpi(new Limits(0.01, 0))).isEqualTo(1200);
    }

    @Test
    void theMapMarksTheSamePlacesAtAnyZoom() throws Refusal {
        // a bar in page space, whatever the scale
        PlaneSource scaled = (request, cancel) -> {
            double mm = request.mmPerPx();
            return PlanesForTests.of(ONE, request, (plane, x, y) -> {
                double across = Math.max(0, Math.min((x + 1) * mm, 5.1) - Math.max(x * mm, 5)) / mm;
                return (int) Math.round(255 * across);
            });
        };
        for (int dpi : new int[] {60, 150, 600}) {
            int px = (int) Math.round(10 / 25.4 * dpi);
            PlateRequest request = new PlateRequest(dpi / 72.0, 0, 0, px, px, true, Set.of());
            byte[] marks = new byte[px * px];
            ThinMap map = new ThinMap(scaled, new Limits(0.2, 0.2));
            map.mark(scaled.planes(request, new Cancel()), marks, new Cancel());
            int at = (int) (5.05 / 25.4 * dpi);
            assertThat(marks[px / 2 * px + at]).as(dpi + " dpi").isEqualTo((byte) ThinMap.LINE);
            assertThat(marks[px / 2 * px + at + 4]).isZero();
            assertThat(marks[px / 2 * px + at - 4]).isZero();
            double lines =
                    map.figures(scaled, request, new Cancel(), Progress.NONE).cm2(ThinMap.LINE);
            assertThat(lines)
                    .as("0.1 mm × the page at " + dpi + " dpi")
                    .isCloseTo(0.01 * px * request.mmPerPx() / 10, within(0.005 * 0.01));
        }
    }
}
