package inkground.appearance;

import static inkground.appearance.Samples.FOGRA;
import static inkground.appearance.Samples.FOGRA_PAPER;
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
import inkground.plate.PlaneSource;
import inkground.plate.PlanesForTests;
import inkground.plate.PlateRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Areas of rectangles, turned and between the pixels, and of discs: what is covered of a pixel on their edge counts. */
class MapAreasTest {
    private static final double EDGE_MM = 24;
    private static final List<InkColour> RED = List.of(spot("Mill Red", new Lab(48, 62, 40), 0));

    /** A shape in mm. */
    private interface Shape {
        boolean holds(double xMm, double yMm);
    }

    private record Case(String name, Shape shape, double cm2) {}

    /** Where a shape may lie: at angles and between pixels. */
    private static List<Case> cases() {
        List<Case> cases = new ArrayList<>();
        for (double degrees : new double[] {0, 7, 30, 45}) {
            for (double off : new double[] {0.02, 0.07}) {
                double c = Math.cos(Math.toRadians(degrees));
                double s = Math.sin(Math.toRadians(degrees));
                cases.add(new Case(
                        degrees + "°, " + off + " mm",
                        (x, y) -> Math.abs((x - 12 - off) * c + (y - 12) * s) < 8
                                && Math.abs((y - 12) * c - (x - 12 - off) * s) < 6,
                        1.6 * 1.2));
            }
        }
        cases.add(new Case("disc", (x, y) -> Math.hypot(x - 12.03, y - 11.98) < 7, Math.PI * 0.49));
        return cases;
    }

    /**
     * Tints around and inside a shape, mixed by how much of a pixel it covers.
     *
     * @param around tint of each ink around it, 0 to 255
     * @param inside tint of each ink inside
     */
    private static PlaneSource source(InkSet inks, Shape shape, double dpi, int[] around, int[] inside) {
        double mm = 25.4 / dpi;
        int width = (int) Math.ceil(EDGE_MM / mm) + 2;
        double[] cover = new double[width * width]; // from pixel −1, −1
        IntStream.range(0, cover.length).parallel().forEach(i -> {
            int n = 16;
            for (int k = 0; k < n * n; k++) {
                double x = (i % width - 1 + (k % n + 0.5) / n) * mm;
                double y = (i / width - 1 + (k / n + 0.5) / n) * mm;
                cover[i] += shape.holds(x, y) ? 1.0 / (n * n) : 0;
            }
        });
        int laidAround = IntStream.of(around).sum() > 0 ? 255 : 0;
        return (request, cancel) -> PlanesForTests.of(inks, request, (plane, x, y) -> {
            double c = cover[clamp(y + 1, width) * width + clamp(x + 1, width)];
            int from = plane < around.length ? around[plane] : laidAround;
            int to = plane < around.length ? inside[plane] : 255;
            return (int) Math.round(from + c * (to - from));
        });
    }

    private static int clamp(int at, int width) {
        return Math.max(0, Math.min(width - 1, at));
    }

    private static InkSet set(List<InkColour> inks) {
        return new InkSet(inks.stream().map(InkColour::ink).toList());
    }

    private static int[] tints(int... tints) {
        return tints;
    }

    private interface Measure {
        MapFigures of(PlaneSource source, PlateRequest region) throws Refusal;
    }

    private static Measure by(ProofMap map) {
        return (source, region) -> map.figures(source, region, new Cancel(), Progress.NONE);
    }

    private static void assertAreas(List<InkColour> inks, int[] around, int[] inside, int entry, Measure measure)
            throws Refusal {
        for (double dpi : new double[] {150, 300}) {
            int px = (int) Math.floor(EDGE_MM * dpi / 25.4);
            PlateRequest region = new PlateRequest(dpi / 72, 0, 0, px, px, true, Set.of());
            for (Case c : cases()) {
                PlaneSource source = source(set(inks), c.shape(), dpi, around, inside);
                MapFigures figures = measure.of(source, region);
                assertThat(figures.cm2(entry))
                        .as(c.name() + ", " + dpi + " dpi")
                        .isCloseTo(c.cm2(), within(0.005 * c.cm2()));
                assertThat(figures.pixels().stream().mapToDouble(d -> d).sum())
                        .isCloseTo((double) px * px, within(1e-6));
            }
        }
    }

    @Test
    void inkAboveALimitOnInkBelowIt() throws Refusal {
        List<InkColour> cmyk = Samples.process();
        assertAreas(
                cmyk,
                tints(128, 128, 128, 0),
                tints(255, 255, 255, 51),
                TotalInkMap.ABOVE,
                by(new TotalInkMap(set(cmyk), 300)));
    }

    @Test
    void inkBelowALimitInInkAboveIt() throws Refusal {
        List<InkColour> cmyk = Samples.process();
        assertAreas(cmyk, tints(255, 255, 255, 51), tints(255, 255, 0, 20), 0, by(new TotalInkMap(set(cmyk), 300)));
    }

    @Test
    void coloursThatShiftAndThoseOutOfReach() throws Refusal {
        StackModel model = new StackModel(Stack.of(NAVY_SHIRT, RED, FOGRA));
        assertAreas(RED, tints(0), tints(255), ColourMap.BEYOND, by(ColourMap.shift(model, 5)));
        assertAreas(RED, tints(0), tints(255), ColourMap.BEYOND, by(ColourMap.reach(model, 3, 5)));
    }

    @Test
    void coloursThatAScreenCannotShowBesideThoseItCan() throws Refusal {
        List<InkColour> cmyk = Samples.process();
        StackModel model = new StackModel(Stack.of(FOGRA_PAPER, cmyk, FOGRA));
        assertAreas(
                cmyk, tints(0, 0, 0, 0), tints(255, 0, 0, 0), ColourMap.BEYOND, by(ColourMap.notDisplayed(model, 1)));
        assertAreas(
                cmyk, tints(0, 0, 128, 0), tints(255, 0, 0, 0), ColourMap.BEYOND, by(ColourMap.notDisplayed(model, 1)));
    }

    /** Red below blue all around: with overprint ignored it is knocked out, wherever it is. */
    @Test
    void whatOverprintChangesWhicheverOfTheTwoIsShown() throws Refusal {
        List<InkColour> inks = List.of(RED.get(0), spot("Reach Blue", new Lab(35, 5, -45), 0));
        StackModel model = new StackModel(Stack.of(WHITE_SHIRT, inks, FOGRA));
        for (boolean shown : new boolean[] {true, false}) {
            assertAreas(inks, tints(0, 255), tints(255, 255), DifferenceMap.BEYOND, (source, region) -> {
                PlaneSource both = (request, cancel) -> request.overprint() == shown
                        ? source.planes(request, cancel)
                        : PlanesForTests.of(set(inks), request, (plane, x, y) -> plane == 0 ? 0 : 255);
                return by(DifferenceMap.overprint(both, model, 2)).of(both, region);
            });
        }
    }

    /** Blue moves away from the line where it meets red, at any angle: a sliver as wide. */
    @Test
    void whatABlueThatMovesAwayFromRedLeavesBare() throws Refusal {
        Along red = (along, across) -> along >= -8 && along < 0 && Math.abs(across) < 6;
        Along blue = (along, across) -> along >= 0 && along < 8 && Math.abs(across) < 6;
        for (double mm : new double[] {0.2, 0.4}) {
            assertSliver(red, blue, mm, mm * 12);
        }
    }

    /** A blue square in a hole of red as large: two of its edges slide along red and open nothing. */
    @Test
    void whatABlueThatMovesInAHoleOfRedLeavesBare() throws Refusal {
        Along blue = (along, across) -> Math.abs(along) < 4 && Math.abs(across) < 4;
        Along red = (along, across) ->
                Math.abs(along) < 8 && Math.abs(across) < 8 && !(Math.abs(along) < 4 && Math.abs(across) < 4);
        for (double mm : new double[] {0.2, 0.4}) {
            assertSliver(red, blue, mm, mm * 8);
        }
    }

    /** A shape in mm from the middle, along the way an ink moves and across it. */
    private interface Along {
        boolean holds(double alongMm, double acrossMm);
    }

    private static void assertSliver(Along red, Along blue, double mm, double mm2) throws Refusal {
        List<InkColour> inks = List.of(RED.get(0), spot("Reach Blue", new Lab(35, 5, -45), 0));
        for (double dpi : new double[] {150, 300}) {
            for (double degrees : new double[] {0, 7, 22.5, 30, 45, 90}) {
                double c = Math.cos(Math.toRadians(degrees));
                double s = Math.sin(Math.toRadians(degrees));
                PlaneSource reds = source(set(inks), turned(red, c, s), dpi, tints(0, 0), tints(255, 0));
                PlaneSource blues = source(set(inks), turned(blue, c, s), dpi, tints(0, 0), tints(0, 255));
                PlaneSource source = (request, cancel) -> {
                    var r = reds.planes(request, cancel);
                    var b = blues.planes(request, cancel);
                    return PlanesForTests.of(set(inks), request, (plane, x, y) -> {
                        int px = x - request.x0();
                        int py = y - request.y0();
                        return Math.min(255, r.get(plane, px, py) + b.get(plane, px, py));
                    });
                };
                int px = (int) Math.floor(EDGE_MM * dpi / 25.4);
                PlateRequest region = new PlateRequest(dpi / 72, 0, 0, px, px, true, Set.of());
                RegisterMap map = new RegisterMap(source, new double[] {0, mm * c}, new double[] {0, mm * s});
                MapFigures figures = map.figures(source, region, new Cancel(), Progress.NONE);
                String as = mm + " mm, " + degrees + "°, " + dpi + " dpi";
                assertThat(figures.cm2(RegisterMap.SLIVER) * 100)
                        .as(as)
                        .isCloseTo(mm2, within((mm < 0.3 ? 0.01 : 0.005) * mm2));
                assertThat(figures.cm2(RegisterMap.LEFT) * 100).as(as).isLessThan(0.05);
            }
        }
    }

    private static Shape turned(Along shape, double c, double s) {
        return (x, y) -> shape.holds((x - 12.03) * c + (y - 12) * s, (y - 12) * c - (x - 12.03) * s);
    }

    /** A ramp has no edge: the limit is met to a pixel, and the entries fill the region. */
    @Test
    void softToneIsCountedToAPixel() throws Refusal {
        List<InkColour> cmyk = Samples.process();
        PlaneSource ramp = (request, cancel) ->
                PlanesForTests.of(set(cmyk), request, (plane, x, y) -> Math.max(0, Math.min(255, x)));
        PlateRequest region = new PlateRequest(1, 0, 0, 256, 100, true, Set.of());
        MapFigures figures = new TotalInkMap(set(cmyk), 300).figures(ramp, region, new Cancel(), Progress.NONE);
        assertThat(figures.pixels().get(TotalInkMap.ABOVE)).isCloseTo((256 - 0.75 * 255) * 100, within(100.0));
    }
}
