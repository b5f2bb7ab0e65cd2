package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.Clip;
import inkground.artwork.Colour;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.artwork.Style;
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
    void transparentCellsCoverNoMoreThanTheyDidOneByOne(double degrees) throws Refusal {
        Matrix m = turned(degrees);
        List<Op> cell = List.of(Pages.fill(square(0, 7.3, m), GROUND, Pages.alpha(0.5), null));
        InkPlanes planes = Pages.render(Pages.page(SIZE, SIZE, BENEATH, abutting(7.3, m, cell)));
        InkPlanes expected =
                Pages.render(Pages.page(SIZE, SIZE, byHand(7.3, m, cell).toArray(Op[]::new)));
        assertSame(planes, expected, 0, 0, 1);
        assertThat(planes.get(CYAN, 40, 40)).isBetween(127, 160);
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
}
