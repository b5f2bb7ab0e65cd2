package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.artwork.Style;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import inkground.geometry.Pen;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * No facet shows at any resolution: what a curve covers of each pixel is what the true curve covers, found here from its
 * distance function by counting 64 × 64 points. Along an edge of one pixel's length a difference of coverage is the distance
 * of the two edges, in pixels, so that the tolerances below are fractions of a device pixel.
 */
class CurvesTest {
    private static final int BLACK = 3;
    private static final int SAMPLES = 64;

    /** Of a pixel: flattening 0.03, rounding of planes 0.002, counting points 0.02. */
    private static final double FILL_TOLERANCE = 0.05;

    /** Of a pixel: the offset curve of the stroker comes on top. */
    private static final double STROKE_TOLERANCE = 0.08;

    private static final Pen.Join ROUND = Pen.Join.ROUND;

    /** Distance to the edge of a shape in pixels, negative inside. */
    private interface Distance {
        double at(double x, double y);
    }

    /** A circle of 32 curves, whose own error is below 1e-9 of the radius. */
    private static Outline circle(double cx, double cy, double r) {
        int arcs = 32;
        double step = 2 * Math.PI / arcs;
        double k = 4.0 / 3 * Math.tan(step / 4) * r;
        Outline.Builder out = new Outline.Builder().move(cx + r, cy);
        for (int i = 0; i < arcs; i++) {
            double a = i * step;
            double b = a + step;
            out.curve(
                    cx + r * Math.cos(a) - k * Math.sin(a),
                    cy + r * Math.sin(a) + k * Math.cos(a),
                    cx + r * Math.cos(b) + k * Math.sin(b),
                    cy + r * Math.sin(b) - k * Math.cos(b),
                    cx + r * Math.cos(b),
                    cy + r * Math.sin(b));
        }
        return out.close().build();
    }

    private static Op stroke(Outline path, Pen pen) {
        Paint black = new Paint.Flat(Pages.cmyk(0, 0, 0, 1));
        return new Op.Stroke(path, pen, Matrix.IDENTITY, black, null, Style.PLAIN, null, Pages.ORIGIN);
    }

    /**
     * Renders a square of pixels and compares.
     *
     * @param dpi at which one point is dpi / 72 pixels
     * @param left first column compared
     * @param top first row
     * @param side columns and rows
     */
    private static void compare(Op op, double dpi, int left, int top, int side, Distance truth, double tolerance)
            throws Refusal {
        DisplayList page = Pages.page(400, 400, op);
        PlateRequest request = new PlateRequest(dpi / 72, left, top, left + side, top + side, true, Set.of());
        InkPlanes planes = Pages.plate(page).render(request, new Cancel(), Progress.NONE);
        double worst = 0;
        int edges = 0;
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                double distance = truth.at(left + x + 0.5, top + y + 0.5);
                boolean edge = Math.abs(distance) < 1;
                edges += edge ? 1 : 0;
                double exact = edge ? coverage(truth, left + x, top + y) : distance < 0 ? 1 : 0;
                worst = Math.max(worst, Math.abs(planes.get(BLACK, x, y) / 255.0 - exact));
            }
        }
        assertThat(edges).as("pixels on the edge").isGreaterThan(25);
        assertThat(worst).as("largest difference in coverage, of a pixel").isLessThan(tolerance);
    }

    private static double coverage(Distance truth, int x, int y) {
        int inside = 0;
        for (int j = 0; j < SAMPLES; j++) {
            for (int i = 0; i < SAMPLES; i++) {
                inside += truth.at(x + (i + 0.5) / SAMPLES, y + (j + 0.5) / SAMPLES) < 0 ? 1 : 0;
            }
        }
        return (double) inside / (SAMPLES * SAMPLES);
    }

    @ParameterizedTest
    @ValueSource(doubles = {72, 300, 1200, 2540})
    void aFilledCircleIsRound(double dpi) throws Refusal {
        double px = dpi / 72;
        double r = 30.3;
        Distance truth = (x, y) -> Math.hypot(x - 40.1 * px, y - 40.7 * px) - r * px;
        Op fill = Pages.fill(circle(40.1, 40.7, r), Pages.cmyk(0, 0, 0, 1));
        // the rightmost part of the edge and a slanted one
        compare(fill, dpi, (int) (70.4 * px) - 60, (int) (40 * px) - 60, 120, truth, FILL_TOLERANCE);
        int slanted = (int) ((40.4 + r * Math.sqrt(0.5)) * px) - 150;
        compare(fill, dpi, slanted, slanted, 300, truth, FILL_TOLERANCE);
    }

    @Test
    void aCircleOfThreeHundredThousandPixelsIsRound() throws Refusal {
        double px = 76_200 / 72.0; // so much enlarged that a chord of a thousandth of a curve is 60 pixels long
        Distance truth = (x, y) -> Math.hypot(x - 200 * px, y - 200 * px) - 150 * px;
        Op fill = Pages.fill(circle(200, 200, 150), Pages.cmyk(0, 0, 0, 1));
        compare(fill, 76_200, (int) (350 * px) - 100, (int) (200 * px) - 100, 200, truth, FILL_TOLERANCE);
    }

    @ParameterizedTest
    @ValueSource(doubles = {300, 1200})
    void aStrokedCircleIsARing(double dpi) throws Refusal {
        double px = dpi / 72;
        Pen pen = new Pen(4, Pen.Cap.BUTT, ROUND, 10, new double[0], 0);
        Distance truth = (x, y) -> Math.abs(Math.hypot(x - 40 * px, y - 40 * px) - 30 * px) - 2 * px;
        int at = (int) ((40 + 30 * Math.sqrt(0.5)) * px) - 150;
        compare(stroke(circle(40, 40, 30), pen), dpi, at, at, 300, truth, STROKE_TOLERANCE);
        compare(
                stroke(circle(40, 40, 30), pen),
                dpi,
                (int) (70 * px) - 150,
                (int) (40 * px),
                300,
                truth,
                STROKE_TOLERANCE);
    }

    @ParameterizedTest
    @ValueSource(doubles = {300, 1200, 2540})
    void roundCapsAndJoinsAreRound(double dpi) throws Refusal {
        double px = dpi / 72;
        Pen pen = new Pen(12, Pen.Cap.ROUND, ROUND, 10, new double[0], 0);
        Outline corner =
                new Outline.Builder().move(20, 20).line(50, 20).line(50, 50).build();
        Distance truth = (x, y) -> Math.min(
                        segment(x, y, 20 * px, 20 * px, 50 * px, 20 * px),
                        segment(x, y, 50 * px, 20 * px, 50 * px, 50 * px))
                - 6 * px;
        // Not the inner corner: there the two parts of the outline overlap inside a pixel, and their areas are added.
        int side = (int) Math.min(240, 8 * px);
        double reach = 6 * Math.sqrt(0.5);
        int cap = (int) ((20 - reach) * px) - side / 2;
        compare(stroke(corner, pen), dpi, cap, cap, side, truth, STROKE_TOLERANCE);
        int right = (int) ((50 + reach) * px) - side / 2;
        compare(stroke(corner, pen), dpi, right, cap, side, truth, STROKE_TOLERANCE);
    }

    private static double segment(double x, double y, double x0, double y0, double x1, double y1) {
        double t = ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / ((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
        double s = Math.max(0, Math.min(1, t));
        return Math.hypot(x - x0 - s * (x1 - x0), y - y0 - s * (y1 - y0));
    }

    @ParameterizedTest
    @ValueSource(doubles = {300, 1200})
    void dashesRoundACircleFollowIt(double dpi) throws Refusal {
        double px = dpi / 72;
        double r = 30;
        double dash = 2 * Math.PI * r / 12; // six dashes, six gaps, the first dash from angle 0
        Pen pen = new Pen(3, Pen.Cap.ROUND, ROUND, 10, new double[] {dash, dash}, 0);
        Distance truth = (x, y) -> {
            double angle = Math.atan2(y - 40 * px, x - 40 * px);
            double turn = angle < 0 ? angle + 2 * Math.PI : angle;
            double period = Math.PI / 3;
            double within = turn % period;
            double from = turn - within;
            double to = from + period / 2;
            double ring = Math.abs(Math.hypot(x - 40 * px, y - 40 * px) - r * px);
            double nearest =
                    within <= period / 2 ? ring : Math.min(end(x, y, px, r, to), end(x, y, px, r, from + period));
            return nearest - 1.5 * px;
        };
        int left = (int) (40 * px);
        compare(stroke(circle(40, 40, r), pen), dpi, left, left, (int) (34 * px), truth, STROKE_TOLERANCE); // a quarter
    }

    private static double end(double x, double y, double px, double r, double angle) {
        return Math.hypot(x - (40 + r * Math.cos(angle)) * px, y - (40 + r * Math.sin(angle)) * px);
    }

    @Test
    void theComparisonNoticesAFacet() {
        // a circle of 1,000 pixels as 64 straight lines is off by 1000 (1 - cos(pi / 64)) = 1.2 pixels
        Outline.Builder polygon = new Outline.Builder();
        for (int i = 0; i < 64; i++) {
            double a = 2 * Math.PI * i / 64;
            if (i == 0) {
                polygon.move(200 + 100, 200);
            } else {
                polygon.line(200 + 100 * Math.cos(a), 200 + 100 * Math.sin(a));
            }
        }
        Op fill = Pages.fill(polygon.close().build(), Pages.cmyk(0, 0, 0, 1));
        Distance truth = (x, y) -> Math.hypot(x - 2000, y - 2000) - 1000;
        assertThatThrownBy(() -> compare(fill, 720, 2900, 2000, 300, truth, FILL_TOLERANCE))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("largest difference");
    }
}
