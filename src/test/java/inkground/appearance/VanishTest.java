package inkground.appearance;

import static inkground.appearance.Samples.FOGRA;
import static inkground.appearance.Samples.NAVY_SHIRT;
import static inkground.appearance.Samples.WHITE_SHIRT;
import static inkground.appearance.Samples.spot;
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
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Edges of shapes whose outlines are known, on garments of the ink's own colour and of others. */
class VanishTest {
    private static final List<InkColour> INKS =
            List.of(spot("Navy", NAVY_SHIRT.lab(), 1), spot("Cream", new Lab(90, 0, 15), 1));
    private static final InkSet SET =
            new InkSet(INKS.stream().map(InkColour::ink).toList());
    private static final double MM = 25.4 / 100; // a pixel

    /** How much of a pixel each ink covers, 0 to 1. */
    private interface Shape {
        double covers(int ink, double x, double y);
    }

    /** Coverage by 8 × 8 points a pixel. */
    private static PlaneSource source(Shape shape) {
        return (request, cancel) -> PlanesForTests.of(SET, request, (plane, x, y) -> {
            double sum = 0;
            for (int i = 0; i < 64; i++) {
                double px = x + (i % 8 + 0.5) / 8;
                double py = y + (i / 8 + 0.5) / 8;
                sum += plane < 2
                        ? shape.covers(plane, px, py)
                        : Math.max(shape.covers(0, px, py), shape.covers(1, px, py));
            }
            return (int) Math.round(sum / 64 * 255);
        });
    }

    private static PlateRequest region(int width, int height) {
        return new PlateRequest(100 / 72.0, 0, 0, width, height, true, Set.of());
    }

    private static StackModel on(inkground.substrate.Substrate substrate) {
        return new StackModel(Stack.of(substrate, INKS, FOGRA));
    }

    private static ArtworkEdges edges(PlaneSource source, int width, int height) throws Refusal {
        return ArtworkEdges.of(
                source, region(width, height), new AskedColours(INKS, FOGRA), new Cancel(), Progress.NONE);
    }

    private static boolean in(double x, double y, double x0, double y0, double x1, double y1) {
        return x >= x0 && x < x1 && y >= y0 && y < y1;
    }

    /** A navy square of 200 px with a cream square of 100 px inside it, at half pixels, across a border of bands. */
    private static final PlaneSource SQUARES = source((ink, x, y) -> {
        boolean cream = in(x, y, 150.5, 200.5, 250.5, 300.5);
        boolean navy = in(x, y, 100.5, 150.5, 300.5, 350.5) && !cream;
        return ink == 0 && navy || ink == 1 && cream ? 1 : 0;
    });

    @Test
    void aNavyOutlineVanishesOnNavyClothAndTheCreamInsideItStays() throws Refusal {
        ArtworkEdges edges = edges(SQUARES, 400, 500);
        assertThat(edges.mm()).isCloseTo((800 + 400) * MM, within(0.005 * 1200 * MM));
        VanishScore navy = VanishScore.of(edges, on(NAVY_SHIRT));
        assertThat(navy.score()).isCloseTo(2 / 3.0, within(0.005));
        assertThat(navy.lostMm()).isCloseTo(800 * MM, within(0.005 * 800 * MM));
        assertThat(VanishScore.of(edges, on(WHITE_SHIRT)).score()).isZero();
    }

    @Test
    void onItsOwnColourOnlyTheEdgesOfThatInkToTheClothAreLost() throws Refusal {
        inkground.substrate.Substrate cream =
                Samples.substrate(inkground.substrate.Substrate.Kind.GARMENT, new Lab(90, 0, 15));
        assertThat(VanishScore.of(edges(SQUARES, 400, 500), on(cream)).score()).isZero();
    }

    @Test
    void lightInkLaidOnNothingIsMeantToBeSeenAndVanishesOnCreamCloth() throws Refusal {
        PlaneSource alone = source((ink, x, y) -> ink == 1 && in(x, y, 50, 50, 150, 100) ? 1 : 0);
        ArtworkEdges edges = edges(alone, 200, 150);
        assertThat(edges.mm()).isCloseTo(300 * MM, within(0.005 * 300 * MM));
        inkground.substrate.Substrate cream =
                Samples.substrate(inkground.substrate.Substrate.Kind.GARMENT, new Lab(90, 0, 15));
        assertThat(VanishScore.of(edges, on(cream)).score()).isEqualTo(1);
        assertThat(VanishScore.of(edges, on(NAVY_SHIRT)).score()).isZero();
    }

    private static final double[] DEGREES = {0, 3, 7, 15, 22.5, 30, 37, 45, 52, 60, 71, 80};

    /** Seen from a point, along axes that are turned. */
    private static Shape turned(double degrees, double x0, double y0, Shape shape) {
        double c = Math.cos(Math.toRadians(degrees));
        double s = Math.sin(Math.toRadians(degrees));
        return (ink, x, y) -> shape.covers(ink, (x - x0) * c + (y - y0) * s, (y - y0) * c - (x - x0) * s);
    }

    private static double px(Shape shape, int edge) throws Refusal {
        return edges(source(shape), edge, edge).mm() / MM;
    }

    @Test
    void lengthsAreTrueAtAnyAngleWhereverAShapeLiesBetweenThePixels() throws Refusal {
        Shape rectangle = (ink, x, y) -> ink == 0 && Math.abs(x) < 100 && Math.abs(y) < 75 ? 1 : 0;
        for (double degrees : DEGREES) {
            for (double off : new double[] {0.1, 0.6}) {
                assertThat(px(turned(degrees, 135 + off, 135 - 0.7 * off, rectangle), 270))
                        .as(degrees + "°, " + off + " px")
                        .isCloseTo(700, within(0.005 * 700));
            }
        }
    }

    @Test
    void linesThreePixelsWideAndFlatTipsAreMeasuredToo() throws Refusal {
        Shape line = (ink, x, y) -> ink == 0 && Math.abs(x) < 100 && Math.abs(y) < 1.5 ? 1 : 0;
        for (double degrees : DEGREES) {
            assertThat(px(turned(degrees, 120.3, 119.8, line), 240))
                    .as(degrees + "°")
                    .isCloseTo(406, within(0.005 * 406));
        }
    }

    @Test
    void curvesAreTrueToHalfAPercentDownToARadiusOfFiveMillimetres() throws Refusal {
        for (double radius : new double[] {20, 40, 80}) {
            Shape disc = (ink, x, y) -> ink == 1 && Math.hypot(x - 100.3, y - 99.9) < radius ? 1 : 0;
            assertThat(px(disc, 200))
                    .as(radius + " px")
                    .isCloseTo(2 * Math.PI * radius, within(0.005 * 2 * Math.PI * radius));
        }
        Shape ring = (ink, x, y) -> ink == 0 && Math.abs(Math.hypot(x - 100.2, y - 100.4) - 78.5) < 1.5 ? 1 : 0;
        assertThat(px(ring, 200)).isCloseTo(2 * Math.PI * 157, within(0.005 * 2 * Math.PI * 157));
    }

    /** Cream inside navy: the pixels between them mix both, and are neither's edge. */
    @Test
    void whatVanishesOfInksThatMeetIsRightAtAnyAngle() throws Refusal {
        Shape squares = (ink, x, y) -> {
            double far = Math.max(Math.abs(x), Math.abs(y));
            return ink == 1 && far < 60 || ink == 0 && far >= 60 && far < 120 ? 1 : 0;
        };
        for (double degrees : DEGREES) {
            assertThirdStays(turned(degrees, 175.3, 175.4, squares), 350, 8 * 120, 8 * 60, degrees + "°");
        }
        Shape discs = (ink, x, y) -> {
            double far = Math.hypot(x - 100.3, y - 100.4);
            return ink == 1 && far < 40 || ink == 0 && far >= 40 && far < 80 ? 1 : 0;
        };
        assertThirdStays(discs, 200, 2 * Math.PI * 80, 2 * Math.PI * 40, "discs");
    }

    private static void assertThirdStays(Shape shape, int edge, double outerPx, double innerPx, String as)
            throws Refusal {
        VanishScore navy = VanishScore.of(edges(source(shape), edge, edge), on(NAVY_SHIRT));
        assertThat(navy.edgesMm() / MM).as(as).isCloseTo(outerPx + innerPx, within(0.005 * (outerPx + innerPx)));
        assertThat(navy.lostMm() / MM).as(as).isCloseTo(outerPx, within(0.005 * outerPx));
        assertThat(navy.score()).as(as).isCloseTo(2 / 3.0, within(0.005));
    }

    @Test
    void softTonesAreNoEdgesAndANoisyPictureStaysBounded() throws Refusal {
        PlaneSource ramp = (request, cancel) -> PlanesForTests.of(
                SET, request, (plane, x, y) -> plane == 1 ? 0 : plane > 1 ? 255 : Math.max(0, Math.min(255, x)));
        assertThat(edges(ramp, 300, 40).mm()).isZero();
        Random random = new Random(4);
        byte[] noise = new byte[1 << 16];
        random.nextBytes(noise);
        PlaneSource noisy = (request, cancel) -> PlanesForTests.of(
                SET,
                request,
                (plane, x, y) -> plane < 2 ? noise[(plane * 31 + x * 251 + y * 65_521) & 65_535] & 255 : 255);
        ArtworkEdges edges = edges(noisy, 300, 300);
        assertThat(edges.pairs().size()).isLessThanOrEqualTo(8192);
        assertThat(edges.mm()).isPositive();
    }

    @Test
    void theMapDrawsTheEdgesThatVanishAndThoseThatStayAndTilesMeet() throws Refusal {
        VanishMap map = new VanishMap(SQUARES, on(NAVY_SHIRT));
        InkPlanes whole = SQUARES.planes(region(400, 500), new Cancel());
        byte[] marks = new byte[400 * 500];
        map.mark(whole, marks, new Cancel());
        assertThat(marks[250 * 400 + 100]).isEqualTo((byte) VanishMap.LOST);
        assertThat(marks[250 * 400 + 150]).isEqualTo((byte) VanishMap.KEPT);
        assertThat(marks[250 * 400 + 125]).isZero();
        byte[] tile = new byte[120 * 130];
        map.mark(SQUARES.planes(region(1, 1).part(60, 100, 180, 230), new Cancel()), tile, new Cancel());
        for (int i = 0; i < tile.length; i++) {
            assertThat(tile[i]).isEqualTo(marks[(100 + i / 120) * 400 + 60 + i % 120]);
        }
    }
}
