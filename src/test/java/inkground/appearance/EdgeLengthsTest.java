package inkground.appearance;

import static inkground.appearance.Samples.FOGRA;
import static inkground.appearance.Samples.NAVY_SHIRT;
import static inkground.appearance.Samples.spot;
import static inkground.plate.ExactCoverage.box;
import static inkground.plate.ExactCoverage.disc;
import static inkground.plate.ExactCoverage.length;
import static inkground.plate.ExactCoverage.placed;
import static inkground.plate.ExactCoverage.rectangle;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.ink.InkSet;
import inkground.plate.ExactCoverage;
import inkground.plate.PlaneSource;
import inkground.plate.PlanesForTests;
import inkground.plate.PlateRequest;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Outlines of small shapes at the resolution that edges are gathered at, at many angles and places between the pixels. */
class EdgeLengthsTest {
    private static final List<InkColour> INKS =
            List.of(spot("Navy", NAVY_SHIRT.lab(), 1), spot("Cream", new Lab(90, 0, 15), 1));
    private static final InkSet SET =
            new InkSet(INKS.stream().map(InkColour::ink).toList());
    private static final AskedColours ASKED = new AskedColours(INKS, FOGRA);
    private static final double MM = 25.4 / ArtworkEdges.DPI; // a pixel
    private static final int SIZE = 70;
    private static final double[] DEGREES = {0, 5, 10, 22.5, 37, 45, 71};
    private static final double[][] OFFSETS = {{0, 0}, {0.3, 0.1}, {0.5, 0.5}, {0.8, 0.45}};

    /** Cream on nothing, or with navy all around it. */
    private static PlaneSource source(ExactCoverage cream, boolean onNavy) {
        return (request, cancel) -> PlanesForTests.of(SET, request, (plane, x, y) -> {
            boolean page = x >= 0 && y >= 0 && x < SIZE && y < SIZE;
            double own = cream.at(x, y);
            double navy = onNavy && page ? 1 - own : 0;
            return (int) Math.round(255 * (plane == 0 ? navy : plane == 1 ? own : own + navy));
        });
    }

    private static double px(PlaneSource source, int height) throws Refusal {
        PlateRequest region = new PlateRequest(ArtworkEdges.DPI / 72, 0, 0, SIZE, height, true, Set.of());
        return ArtworkEdges.of(source, region, ASKED, new Cancel(), Progress.NONE)
                        .mm()
                / MM;
    }

    /** Shapes in which nothing else is to be found. */
    private static void assertLength(String what, double toleratedPx, double lengthPx, double[][]... shapes)
            throws Refusal {
        for (double degrees : DEGREES) {
            for (double[] offset : OFFSETS) {
                ExactCoverage cover = new ExactCoverage(SIZE, SIZE);
                for (double[][] shape : shapes) {
                    cover.add(placed(shape, degrees, SIZE / 2.0 + offset[0], SIZE / 2.0 + offset[1]));
                }
                for (boolean onNavy : new boolean[] {false, true}) {
                    assertThat(px(source(cover, onNavy), SIZE))
                            .as("%s, %s°, %s, %s px aside, on navy %s", what, degrees, offset[0], offset[1], onNavy)
                            .isCloseTo(lengthPx, within(toleratedPx));
                }
            }
        }
    }

    private static void assertLength(double toleratedPx, double[][] shape, String what) throws Refusal {
        assertLength(what, toleratedPx, length(shape), shape);
    }

    @Test
    void discsAreRightDownToARadiusOfTwoPixels() throws Refusal {
        for (double radius : new double[] {2, 3, 5, 10, 20}) {
            assertLength(0.005 * 2 * Math.PI * radius, disc(radius), "disc of " + radius + " px");
        }
    }

    @Test
    void squaresAreRightWithinAnEighthOfAPixelACorner() throws Refusal {
        for (double side : new double[] {6, 10, 20, 40}) {
            assertLength(0.5, rectangle(side, side), "square of " + side + " px");
        }
    }

    @Test
    void cornersOfAnyAngleDownToFortyDegreesGoOnToTheirTips() throws Refusal {
        for (double degrees : new double[] {40, 60, 90}) {
            double half = 20 * Math.tan(Math.toRadians(degrees / 2));
            double[][] triangle = {{0, -10}, {half, 10}, {-half, 10}};
            for (double turned : new double[] {0, 5, 22.5, 45}) {
                double[][] placed = placed(triangle, turned, SIZE / 2.0 + 0.2, SIZE / 2.0 - 0.4);
                assertThat(px(source(new ExactCoverage(SIZE, SIZE).add(placed), false), SIZE))
                        .as(degrees + "°, " + turned + "°")
                        .isCloseTo(length(placed), within(3 * 0.2));
            }
        }
    }

    /** Beyond the tip, pixels that hold less than half of an ink on another are neither's, and may count as one between. */
    @Test
    void aSharpTipOnAnotherInkCostsAtMostFourPixels() throws Refusal {
        double half = 20 * Math.tan(Math.toRadians(20));
        assertLength(4, new double[][] {{0, -10}, {half, 10}, {-half, 10}}, "40°");
    }

    @Test
    void cornersThatTurnInAreFoundToo() throws Refusal {
        assertLength("cross", 0.65, 80, box(-10, -3, 10, 3), box(-3, -10, 3, -3), box(-3, 3, 3, 10));
    }

    @Test
    void theEndsOfALineThatIsThreePixelsWideCostAtMostTwoPixels() throws Refusal {
        assertLength(2.4, rectangle(40, 3), "line of 3 px");
    }

    @Test
    void aShapeAcrossTwoBandsIsMeasuredAsInOne() throws Refusal {
        double middle = PlaneSource.ROWS_AT_ONCE;
        for (double aside = -9; aside <= 9; aside += 3) {
            ExactCoverage one = new ExactCoverage(SIZE, 2 * PlaneSource.ROWS_AT_ONCE)
                    .add(placed(rectangle(30, 20), 37, SIZE / 2.0, middle + aside));
            assertThat(px(source(one, false), 2 * PlaneSource.ROWS_AT_ONCE))
                    .as(aside + " px from the border")
                    .isCloseTo(100, within(0.5));
        }
    }

    @Test
    void smallShapesCountLikeLargeOnes() throws Refusal {
        ExactCoverage cream = new ExactCoverage(SIZE, SIZE);
        double length = 0;
        for (int i = 0; i < 4; i++) {
            double[][] dot = disc(3 + i);
            cream.add(placed(dot, 0, 10 + 15 * i, 12.3 + i));
            double[][] small = rectangle(10, 7);
            cream.add(placed(small, 20 * i, 10.4 + 16 * i, 40.7));
            length += length(dot) + length(small);
        }
        assertThat(px(source(cream, false), SIZE)).isCloseTo(length, within(0.005 * length));
    }
}
