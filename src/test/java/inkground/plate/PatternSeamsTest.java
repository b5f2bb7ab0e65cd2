package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.Clip;
import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.Op;
import inkground.artwork.Origin;
import inkground.artwork.Paint;
import inkground.artwork.Style;
import inkground.artwork.TintTransform;
import inkground.artwork.Visibility;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import inkground.geometry.Pen;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Cells of a tiling pattern that abut cover what lies beneath them as one shape would: ISO 32000-2 §8.7.3. */
class PatternSeamsTest {
    private static final int SIZE = 90;
    private static final int CYAN = 0;
    private static final int MAGENTA = 1;

    /** Of 255: what rounding may let through. */
    private static final int UNSEEN = 2;

    private static final Outline ALL = Pages.rect(0, 0, SIZE, SIZE);
    private static final Op BENEATH = Pages.fill(ALL, Pages.cmyk(1, 0, 0, 0));
    private static final Colour GROUND = Pages.cmyk(0, 1, 0, 0);
    private static final Colour DOT = Pages.cmyk(0, 1, 0.6, 0);

    /** A pattern space turned and moved off the grid of pixels. */
    private static Matrix turned(double degrees) {
        double a = Math.toRadians(degrees);
        return new Matrix(Math.cos(a), Math.sin(a), -Math.sin(a), Math.cos(a), 3.37, 1.61);
    }

    private static Op pattern(double step, Box box, Matrix toPage, List<Op> cell) {
        Paint tiling = new Paint.Tiling(cell, box, step, step, toPage);
        return new Op.Fill(ALL, FillRule.NON_ZERO, tiling, null, Style.PLAIN, null, Pages.ORIGIN);
    }

    private static Op abutting(double step, Matrix toPage, List<Op> cell) {
        return pattern(step, new Box(0, 0, step, step), toPage, cell);
    }

    private static Outline square(double from, double to, Matrix toPage) {
        return Pages.rect(from, from, to, to).transform(toPage);
    }

    private static void assertHidden(Op over) throws Refusal {
        Op overprinting =
                Pages.fill(Pages.rect(20, 20, 70, 70), Pages.spot("Lock Gate Green", 1), Pages.overprint(0), null);
        InkPlanes planes = Pages.render(Pages.page(SIZE, SIZE, BENEATH, overprinting, over));
        int spot = 4;
        int seenCyan = 0;
        int seenSpot = 0;
        for (int y = 0; y < SIZE; y++) {
            for (int x = 0; x < SIZE; x++) {
                seenCyan = Math.max(seenCyan, planes.get(CYAN, x, y));
                seenSpot = Math.max(seenSpot, planes.get(spot, x, y));
                assertThat(planes.get(MAGENTA, x, y)).as("at %d, %d", x, y).isGreaterThanOrEqualTo(255 - UNSEEN);
            }
        }
        assertThat(seenCyan).as("ink beneath").isLessThanOrEqualTo(UNSEEN);
        assertThat(seenSpot).as("overprinted ink beneath").isLessThanOrEqualTo(UNSEEN);
    }

    @ParameterizedTest(name = "{0}°, step {1} pt")
    @CsvSource({
        "0, 7.3", "10, 7.3", "30, 7.3", "45, 7.3", "0, 2", "10, 2", "30, 2.4", "45, 2.4", "10, 24", "30, 24", "45, 24"
    })
    void aGroundWithADotOnItHidesWhatIsBeneath(double degrees, double step) throws Refusal {
        Matrix m = turned(degrees);
        assertHidden(abutting(
                step,
                m,
                List.of(Pages.fill(square(0, step, m), GROUND), Pages.fill(square(step * 0.3, step * 0.6, m), DOT))));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 10, 30, 45})
    void aCellOfOneColourHidesWhatIsBeneath(double degrees) throws Refusal { // as an uncoloured pattern is
        Matrix m = turned(degrees);
        assertHidden(abutting(2.4, m, List.of(Pages.fill(square(0, 2.4, m), GROUND))));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 10, 30, 45})
    void aGroundThatReachesBeyondItsCellHidesWhatIsBeneath(double degrees) throws Refusal {
        Matrix m = turned(degrees);
        for (double beyond : new double[] {1e-4, 0.02, 0.4, 5}) {
            assertHidden(abutting(
                    7.3,
                    m,
                    List.of(Pages.fill(square(-beyond, 7.3 + beyond, m), GROUND), Pages.fill(square(2, 5, m), DOT))));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 10, 30, 45})
    void aGroundClippedToItsCellHidesWhatIsBeneath(double degrees) throws Refusal {
        Matrix m = turned(degrees);
        Clip own = Clip.of(null, square(0, 7.3, m), FillRule.EVEN_ODD);
        assertHidden(abutting(
                7.3,
                m,
                List.of(
                        Pages.fill(square(-1, 9, m), GROUND, Style.PLAIN, own),
                        Pages.fill(square(2, 5, m), DOT, Style.PLAIN, own))));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 10, 30, 45})
    void aStrokeAcrossTheCellHidesWhatIsBeneath(double degrees) throws Refusal {
        Matrix m = turned(degrees);
        Pen pen = new Pen(9, Pen.Cap.SQUARE, Pen.Join.MITER, 10, new double[0], 0);
        Outline middle = new Outline.Builder().move(-1, 3.65).line(9, 3.65).build();
        Op stroke = new Op.Stroke(middle, pen, m, new Paint.Flat(GROUND), null, Style.PLAIN, null, Pages.ORIGIN);
        assertHidden(abutting(7.3, m, List.of(stroke, Pages.fill(square(2, 5, m), DOT))));
    }

    @Test
    void overprintingCellsLayFullInkAndKeepWhatIsBeneath() throws Refusal {
        Matrix m = turned(30);
        Style style = Pages.overprint(1);
        Op op = abutting(
                7.3,
                m,
                List.of(
                        Pages.fill(square(0, 7.3, m), GROUND, style, null),
                        Pages.fill(square(2, 5, m), DOT, style, null)));
        InkPlanes planes = Pages.render(Pages.page(SIZE, SIZE, BENEATH, op));
        for (int y = 0; y < SIZE; y++) {
            for (int x = 0; x < SIZE; x++) {
                assertThat(planes.get(MAGENTA, x, y)).isGreaterThanOrEqualTo(255 - UNSEEN);
                assertThat(planes.get(CYAN, x, y)).isEqualTo(255);
            }
        }
    }

    /** The repeats as operations of their own, one cell after the other. */
    private static List<Op> byHand(double step, Matrix m, List<Op> cell) {
        List<Op> out = new ArrayList<>();
        out.add(BENEATH);
        for (int j = -30; j <= 30; j++) {
            for (int i = -30; i <= 30; i++) {
                Matrix shift =
                        Matrix.translate(i * step * m.a() + j * step * m.c(), i * step * m.b() + j * step * m.d());
                cell.forEach(op -> out.add(Shifted.of(op, shift, null)));
            }
        }
        return out;
    }

    private static void assertSame(InkPlanes actual, InkPlanes expected, int dx, int dy, int tolerance) {
        for (int p = 0; p < actual.planes(); p++) {
            for (int y = 0; y < actual.height(); y++) {
                for (int x = 0; x < actual.width(); x++) {
                    assertThat(Math.abs(actual.get(p, x, y) - expected.get(p, x + dx, y + dy)))
                            .as("plane %d at %d, %d", p, x + dx, y + dy)
                            .isLessThanOrEqualTo(tolerance);
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 10, 30, 45})
    void cellsWithGapsKeepTheirGaps(double degrees) throws Refusal {
        Matrix m = turned(degrees);
        List<Op> cell = List.of(Pages.fill(square(0, 5, m), GROUND), Pages.fill(square(2, 4, m), DOT));
        InkPlanes planes = Pages.render(Pages.page(SIZE, SIZE, BENEATH, pattern(8.5, new Box(0, 0, 5, 5), m, cell)));
        InkPlanes expected =
                Pages.render(Pages.page(SIZE, SIZE, byHand(8.5, m, cell).toArray(Op[]::new)));
        assertSame(planes, expected, 0, 0, 1);
        int gaps = 0;
        for (int i = 0; i < SIZE * SIZE; i++) {
            gaps += planes.get(CYAN, i % SIZE, i / SIZE) == 255 ? 1 : 0;
        }
        assertThat(gaps).as("pixels between the cells").isGreaterThan(SIZE * SIZE / 3);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 10, 30, 45})
    void transparentCellsThatAbutCoverAllOfThePlaneAlike(double degrees) throws Refusal {
        Matrix m = turned(degrees);
        List<Op> cell = List.of(Pages.fill(square(0, 7.3, m), GROUND, Pages.alpha(0.5), null));
        assertHalf(Pages.render(Pages.page(SIZE, SIZE, BENEATH, abutting(7.3, m, cell))));
    }

    /** The mean of what lies beneath and of the ground, everywhere. */
    private static void assertHalf(InkPlanes planes) {
        for (int y = 0; y < SIZE; y++) {
            for (int x = 0; x < SIZE; x++) {
                assertThat(planes.get(CYAN, x, y)).as("at %d, %d", x, y).isBetween(126, 129);
                assertThat(planes.get(MAGENTA, x, y)).as("at %d, %d", x, y).isBetween(126, 129);
                assertThat(planes.get(planes.markPlane(), x, y)).isEqualTo(255);
                assertThat(planes.get(planes.inkedPlane(), x, y)).isEqualTo(255);
            }
        }
    }

    @Test
    void cellsThatOverlapAreLaidOverOneAnotherInOrder() throws Refusal {
        Matrix m = turned(10);
        List<Op> cell = List.of(Pages.fill(square(0, 9, m), GROUND), Pages.fill(square(3, 9, m), DOT));
        InkPlanes planes = Pages.render(Pages.page(SIZE, SIZE, BENEATH, pattern(6, new Box(0, 0, 9, 9), m, cell)));
        InkPlanes expected =
                Pages.render(Pages.page(SIZE, SIZE, byHand(6, m, cell).toArray(Op[]::new)));
        assertSame(planes, expected, 0, 0, 1);
    }

    @Test
    void aPartOfAPatternIsThatPartOfTheWhole() throws Refusal {
        Matrix m = turned(30);
        Op op = abutting(
                2.4,
                m,
                List.of(Pages.fill(square(-1, 3, m), GROUND), Pages.fill(square(1, 2.4, m), Pages.cmyk(0, 0, 0, 1))));
        Plate plate = Pages.plate(Pages.page(SIZE, SIZE, BENEATH, op));
        PlateRequest all = new PlateRequest(1.37, 0, 0, 123, 123, true, Set.of());
        InkPlanes whole = plate.render(all, new Cancel(), Progress.NONE);
        for (int at = 0; at < 60; at += 13) {
            InkPlanes part = plate.render(all.part(at, at + 5, at + 37, at + 60), new Cancel(), Progress.NONE);
            assertSame(part, whole, at, at + 5, 0);
        }
    }

    /** Turned, of unequal scales and off the grid of pixels: steps of 6 to 17 pixels. */
    private static Matrix placed(double degrees, double sx, double sy) {
        return Matrix.scale(sx, sy).then(turned(degrees));
    }

    private static final double STEP = 7.3;

    /** Magenta everywhere, with yellow that varies from left to right. */
    private static Paint.Shading gradient(Matrix m) {
        return gradient(m, Pages.CMYK, 0, 1, 1, 0);
    }

    /** The given tints, the last but one of them (or the only one) growing from none. */
    private static Paint.Shading gradient(Matrix m, ColourSpace space, float... tints) {
        int varying = Math.max(0, tints.length - 2);
        TintTransform function = new TintTransform() {
            @Override
            public int outputs() {
                return tints.length;
            }

            @Override
            public void apply(float[] in, float[] out) {
                System.arraycopy(tints, 0, out, 0, tints.length);
                out[varying] *= in[0];
            }
        };
        return new Paint.Shading(new Paint.Axial(0, 0, STEP, 0, 0, 1, true, true), space, function, null, null, m);
    }

    private static Op filled(Outline path, Paint paint, Style style, Clip clip) {
        return new Op.Fill(path, FillRule.NON_ZERO, paint, null, style, clip, Pages.ORIGIN);
    }

    @ParameterizedTest
    @CsvSource({"0, 1, 1", "0, 1.7, 0.83", "90, 1, 1", "90, 2.3, 1.1", "30, 1, 1", "30, 1.7, 0.83"})
    void picturesThatFillTheirCellsHideWhatIsBeneath(double degrees, double sx, double sy) throws Refusal {
        Matrix m = placed(degrees, sx, sy);
        int[] magentaWithYellow = {0, 255, 0, 0, 0, 255, 90, 0, 0, 255, 180, 0, 0, 255, 255, 0};
        Op picture = Pages.image(Pages.CMYK, 2, 2, Matrix.scale(STEP, STEP).then(m), magentaWithYellow);
        assertHidden(abutting(STEP, m, List.of(picture)));
        Matrix beyond = new Matrix(STEP + 2, 0, 0, STEP + 2, -1, -1).then(m);
        assertHidden(abutting(STEP, m, List.of(Pages.image(Pages.CMYK, 2, 2, beyond, magentaWithYellow))));
    }

    @ParameterizedTest
    @CsvSource({"0, 1, 1", "0, 1.7, 0.83", "90, 1, 1", "90, 2.3, 1.1", "30, 1, 1", "30, 1.7, 0.83"})
    void gradientsThatFillTheirCellsHideWhatIsBeneath(double degrees, double sx, double sy) throws Refusal {
        Matrix m = placed(degrees, sx, sy);
        assertHidden(abutting(STEP, m, List.of(filled(square(0, STEP, m), gradient(m), Style.PLAIN, null))));
        assertHidden(abutting(STEP, m, List.of(filled(square(-1, STEP + 3, m), gradient(m), Style.PLAIN, null))));
    }

    @ParameterizedTest
    @CsvSource({"0, 1, 1", "0, 1.7, 0.83", "90, 1, 1", "90, 2.3, 1.1", "30, 1, 1", "30, 1.7, 0.83"})
    void groupsThatFillTheirCellsCoverAllOfThePlaneAlike(double degrees, double sx, double sy) throws Refusal {
        Matrix m = placed(degrees, sx, sy);
        Op ground = Pages.fill(square(0, STEP, m), GROUND);
        Op half = Pages.group(true, Pages.alpha(0.5), ground, Pages.fill(square(2, 5, m), DOT));
        assertHalf(Pages.render(Pages.page(SIZE, SIZE, BENEATH, abutting(STEP, m, List.of(half)))));
        Op solid = Pages.group(false, Style.PLAIN, ground, Pages.fill(square(2, 5, m), DOT, Pages.alpha(0.5), null));
        assertHidden(abutting(STEP, m, List.of(solid)));
    }

    @ParameterizedTest
    @CsvSource({"0, 1, 1", "0, 1.7, 0.83", "90, 1, 1", "90, 2.3, 1.1", "30, 1, 1", "30, 1.7, 0.83"})
    void patternsThatFillTheirCellsHideWhatIsBeneath(double degrees, double sx, double sy) throws Refusal {
        Matrix m = placed(degrees, sx, sy);
        Matrix within = Matrix.translate(0.7, 0.4).then(m);
        Op ground = Pages.fill(square(0, 2.4, within), GROUND);
        Op dot = Pages.fill(square(0.5, 1.5, within), DOT);
        Paint inner = new Paint.Tiling(List.of(ground, dot), new Box(0, 0, 2.4, 2.4), 2.4, 2.4, within);
        assertHidden(abutting(STEP, m, List.of(filled(square(0, STEP, m), inner, Style.PLAIN, null))));
        Paint shaded = new Paint.Tiling(
                List.of(filled(square(0, 2.4, within), gradient(m), Style.PLAIN, null)),
                new Box(0, 0, 2.4, 2.4),
                2.4,
                2.4,
                within);
        assertHidden(abutting(STEP, m, List.of(filled(square(0, STEP, m), shaded, Style.PLAIN, null))));
    }

    @ParameterizedTest
    @CsvSource({"0, 1, 1", "0, 1.7, 0.83", "90, 1, 1", "90, 2.3, 1.1", "30, 1, 1", "30, 1.7, 0.83"})
    void cellsUnderARoundClipHideWhatIsBeneath(double degrees, double sx, double sy) throws Refusal {
        Matrix m = placed(degrees, sx, sy);
        Outline round = new Outline.Builder()
                .move(-4, STEP / 2)
                .curve(-4, -8, STEP + 4, -8, STEP + 4, STEP / 2)
                .curve(STEP + 4, STEP + 8, -4, STEP + 8, -4, STEP / 2)
                .close()
                .build()
                .transform(m);
        Clip clip = Clip.of(null, round, FillRule.NON_ZERO);
        assertHidden(abutting(STEP, m, List.of(Pages.fill(square(0, STEP, m), GROUND, Style.PLAIN, clip))));
    }

    @ParameterizedTest
    @CsvSource({"0, 24", "90, 24", "30, 24", "45, 24", "0, 41.7", "30, 41.7"})
    void detailInAShadedCellIsAsSharpAsByItself(double degrees, double step) throws Refusal {
        Matrix m = turned(degrees);
        double size = step / STEP;
        Op ground = filled(square(0, step, m), gradient(Matrix.scale(size, size).then(m)), Style.PLAIN, null);
        Outline dot = new Outline.Builder()
                .move(0.3 * step, 0.2 * step)
                .line(0.8 * step, 0.35 * step)
                .line(0.45 * step, 0.8 * step)
                .close()
                .build()
                .transform(m);
        List<Op> cell = List.of(ground, Pages.fill(dot, Pages.cmyk(0, 0, 0, 1)));
        InkPlanes planes = Pages.render(Pages.page(SIZE, SIZE, BENEATH, abutting(step, m, cell)));
        InkPlanes expected =
                Pages.render(Pages.page(SIZE, SIZE, byHand(step, m, cell).toArray(Op[]::new)));
        int atEdges = 0;
        int elsewhere = 0;
        for (int y = 1; y < SIZE - 1; y++) {
            for (int x = 1; x < SIZE - 1; x++) {
                if (nearCellEdge(m.inverse(), step, x, y)) {
                    continue;
                }
                for (int p = 0; p < planes.planes(); p++) {
                    int off = Math.abs(planes.get(p, x, y) - expected.get(p, x, y));
                    boolean edge = spread(expected, p, x, y) > 30; // the gradient alone changes by 255 / 24 a pixel
                    atEdges = edge ? Math.max(atEdges, off) : atEdges;
                    elsewhere = edge ? elsewhere : Math.max(elsewhere, off);
                }
            }
        }
        assertThat(elsewhere).as("away from edges").isLessThanOrEqualTo(4);
        assertThat(atEdges).as("at edges, a quarter of a pixel being 64").isLessThanOrEqualTo(32);
    }

    private static boolean nearCellEdge(Matrix toPattern, double step, int x, int y) {
        double u = toPattern.x(x + 0.5, y + 0.5) / step;
        double v = toPattern.y(x + 0.5, y + 0.5) / step;
        return Math.min(Math.abs(u - Math.rint(u)), Math.abs(v - Math.rint(v))) * step < 1.5;
    }

    private static int spread(InkPlanes planes, int plane, int x, int y) {
        int least = 255;
        int most = 0;
        for (int i = 0; i < 9; i++) {
            int value = planes.get(plane, x - 1 + i % 3, y - 1 + i / 3);
            least = Math.min(least, value);
            most = Math.max(most, value);
        }
        return most - least;
    }

    @Test
    void aPartOfAPatternOfShadedCellsIsThatPartOfTheWhole() throws Refusal {
        Matrix m = turned(30);
        Op op = abutting(STEP, m, List.of(filled(square(0, STEP, m), gradient(m), Pages.alpha(0.7), null)));
        Plate plate = Pages.plate(Pages.page(SIZE, SIZE, BENEATH, op));
        PlateRequest all = new PlateRequest(1.37, -20, -20, 123, 123, true, Set.of());
        InkPlanes whole = plate.render(all, new Cancel(), Progress.NONE);
        for (int at = 0; at < 60; at += 13) {
            PlateRequest inner = all.part(at - 20, at - 15, at + 17, at + 40);
            InkPlanes part = Pages.plate(plate.list()).render(inner, new Cancel(), Progress.NONE);
            assertSame(part, whole, at, at + 5, 0);
        }
    }

    @Test
    void paintThatWasKnockedOutInACellIsToldFromNoPaint() throws Refusal {
        Matrix m = turned(30);
        Op ground = filled(square(0, STEP, m), gradient(m), Style.PLAIN, null);
        Op white = Pages.fill(square(1, 6, m), Pages.cmyk(0, 0, 0, 0));
        InkPlanes planes = Pages.render(Pages.page(SIZE, SIZE, abutting(STEP, m, List.of(ground, white))));
        int x = (int) m.x(STEP * 5.5, STEP * 3.5);
        int y = (int) m.y(STEP * 5.5, STEP * 3.5);
        assertThat(Pages.inksAt(planes, x, y)).isEmpty();
        assertThat(planes.get(planes.markPlane(), x, y)).isEqualTo(255);
        assertThat(planes.get(planes.inkedPlane(), x, y)).isEqualTo(255);
        assertThat(planes.get(planes.laidPlane(), x, y)).isZero();
    }

    @Test
    void overprintingPicturesStillLookBeneath() throws Refusal {
        Matrix m = turned(30);
        Paint spot = gradient(m, Pages.separation("Lock Gate Green"), 1);
        Op overprinting = filled(square(0, STEP, m), spot, Pages.overprint(0), null);
        InkPlanes planes = Pages.render(Pages.page(SIZE, SIZE, BENEATH, abutting(STEP, m, List.of(overprinting))));
        for (int i = 0; i < SIZE * SIZE; i++) {
            assertThat(planes.get(CYAN, i % SIZE, i / SIZE)).isEqualTo(255);
        }
        assertThat(Pages.inksAt(planes, 40, 40)).hasSize(2);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 30})
    void theThinnestLineOfAShadedCellIsAPixelWide(double degrees) throws Refusal {
        Matrix m = turned(degrees);
        Op ground = filled(square(0, 24, m), gradient(m), Style.PLAIN, null);
        Outline line = new Outline.Builder().move(12, 0).line(12, 24).build();
        Pen pen = new Pen(0, Pen.Cap.BUTT, Pen.Join.MITER, 10, new double[0], 0);
        Paint black = new Paint.Flat(Pages.cmyk(0, 0, 0, 1));
        Op stroke = new Op.Stroke(line, pen, m, black, null, Style.PLAIN, null, Pages.ORIGIN);
        InkPlanes planes = Pages.render(Pages.page(SIZE, SIZE, abutting(24, m, List.of(ground, stroke))));
        long sum = 0;
        for (int i = 0; i < SIZE * SIZE; i++) {
            sum += planes.get(3, i % SIZE, i / SIZE);
        }
        double mean = sum / 255.0 / SIZE / SIZE;
        assertThat(mean).as("lines a pixel wide, 24 apart").isBetween(0.9 / 24, 1.1 / 24);
    }

    @Test
    void whatALayerHidesInACellIsNotRepeated() throws Refusal {
        Matrix m = turned(30);
        Origin hidden = new Origin("page", 0, new Visibility.Of(7));
        Op ground = Pages.fill(square(0, STEP, m), GROUND);
        Op dot = new Op.Fill(square(2, 5, m), FillRule.NON_ZERO, new Paint.Flat(DOT), null, Style.PLAIN, null, hidden);
        InkPlanes planes = Pages.render(Pages.page(SIZE, SIZE, abutting(STEP, m, List.of(ground, dot))));
        for (int i = 0; i < SIZE * SIZE; i++) {
            assertThat(planes.get(2, i % SIZE, i / SIZE))
                    .as("yellow of the dot")
                    .isZero();
        }
    }

    @Test
    void cellsTooLargeForTheMemoryArePaintedOneByOne() throws Refusal {
        double step = 3000.3;
        Op ground = filled(square(0, step, Matrix.IDENTITY), gradient(Matrix.IDENTITY), Style.PLAIN, null);
        Paint tiling = new Paint.Tiling(List.of(ground), new Box(0, 0, step, step), step, step, Matrix.IDENTITY);
        Outline wide = Pages.rect(0, 0, 2 * step, 20);
        Op op = new Op.Fill(wide, FillRule.NON_ZERO, tiling, null, Style.PLAIN, null, Pages.ORIGIN);
        InkPlanes planes = Pages.render(Pages.page(6000, 20, BENEATH, op));
        assertThat(planes.get(MAGENTA, 2999, 10)).isEqualTo(255);
        assertThat(planes.get(MAGENTA, 3000, 10)).as("a seam").isBetween(190, 220);
        assertThat(planes.get(MAGENTA, 3001, 10)).isEqualTo(255);
    }
}
