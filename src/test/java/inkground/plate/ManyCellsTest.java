package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.artwork.Style;
import inkground.artwork.TintTransform;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Tiling patterns of more operations than can be painted one by one, of which one step is painted once. */
class ManyCellsTest {
    private static final int SIZE = 400;
    private static final int CYAN = 0;
    private static final int MAGENTA = 1;
    private static final int BLACK = 3;

    private static Matrix turned(double degrees) {
        double a = Math.toRadians(degrees);
        return new Matrix(Math.cos(a), Math.sin(a), -Math.sin(a), Math.cos(a), 3.37, 1.61);
    }

    private static Op pattern(double xStep, double yStep, Matrix toPage, List<Op> cell) {
        Paint tiling = new Paint.Tiling(cell, new Box(0, 0, xStep, yStep), xStep, yStep, toPage);
        Outline all = Pages.rect(0, 0, SIZE, SIZE);
        return new Op.Fill(all, FillRule.NON_ZERO, tiling, null, Style.PLAIN, null, Pages.ORIGIN);
    }

    private static Op bar(double x0, double y0, double x1, double y1, Matrix m) {
        return Pages.fill(Pages.rect(x0, y0, x1, y1).transform(m), Pages.cmyk(1, 0, 0, 0));
    }

    private static double mean(InkPlanes planes, int plane) {
        long sum = 0;
        for (int i = 0; i < SIZE * SIZE; i++) {
            sum += planes.get(plane, i % SIZE, i / SIZE);
        }
        return (double) sum / SIZE / SIZE;
    }

    @ParameterizedTest(name = "{0}°, step {1} by {2} pt")
    @CsvSource({"0, 0.2, 0.2", "0, 0.23, 0.31", "30, 0.23, 0.31", "45, 0.05, 0.4", "10, 0.0001, 0.0003"})
    void stepsSmallerThanAPixelPrintTheirMeanTint(double degrees, double xStep, double yStep) throws Refusal {
        Matrix m = turned(degrees);
        Op op = pattern(xStep, yStep, m, List.of(bar(0, 0, xStep * 0.4, yStep, m)));
        InkPlanes planes = Pages.render(Pages.page(SIZE, SIZE, op));
        // a pixel holds two steps or more, whole ones and parts: a part is 0.4 ± 0.24 of a step of the shorter side
        assertThat(mean(planes, CYAN)).isBetween(0.4 * 255 - 1, 0.4 * 255 + 1);
        double most = 255 * Math.min(1, 0.24 * xStep * 1.1);
        for (int i = 0; i < SIZE * SIZE; i++) {
            assertThat((double) planes.get(CYAN, i % SIZE, i / SIZE)).isBetween(102 - 1 - most, 102 + 1 + most);
        }
    }

    /** Length of what stripes that begin at {@code x0} and at every step from it have of [x, x + 1]. */
    private static double covered(double x, double x0, double step, double stripe) {
        double sum = 0;
        for (double at = x0 + Math.floor((x - x0) / step) * step; at < x + 1; at += step) {
            sum += Math.max(0, Math.min(x + 1, at + stripe) - Math.max(x, at));
        }
        return sum;
    }

    @Test
    void stripesCoverOfEachPixelWhatLiesInIt() throws Refusal {
        Matrix m = turned(0);
        InkPlanes planes = Pages.render(Pages.page(SIZE, SIZE, pattern(1.73, 1.3, m, List.of(bar(0, 0, 0.9, 1.3, m)))));
        for (int x = 0; x < SIZE; x++) {
            double expected = 255 * covered(x, 3.37, 1.73, 0.9);
            for (int y = 0; y < SIZE; y += 7) {
                assertThat((double) planes.get(CYAN, x, y))
                        .as("at %d, %d", x, y)
                        .isBetween(expected - 3, expected + 3);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 10, 30, 45, 90})
    void chequersOfTwoInksAreNoCoarserThanTheyAre(double degrees) throws Refusal {
        Matrix m = turned(degrees);
        List<Op> cell = List.of(
                bar(0, 0, 1.6, 1.6, m),
                Pages.fill(Pages.rect(0, 0, 0.8, 0.8).transform(m), Pages.cmyk(0, 1, 0, 0)),
                Pages.fill(Pages.rect(0.8, 0.8, 1.6, 1.6).transform(m), Pages.cmyk(0, 1, 0, 0)));
        InkPlanes planes = Pages.render(Pages.page(SIZE, SIZE, pattern(1.6, 1.6, m, cell)));
        assertThat(mean(planes, CYAN)).isBetween(126.5, 128.5);
        assertThat(mean(planes, MAGENTA)).isBetween(126.5, 128.5);
        // 8 × 8 pixels hold 25 cells: what their rim cuts leaves the mean within 1/16 of the whole; aliasing would not
        for (int y = 0; y < SIZE; y += 8) {
            for (int x = 0; x < SIZE; x += 8) {
                int sum = 0;
                for (int i = 0; i < 64; i++) {
                    assertThat(planes.get(CYAN, x + i % 8, y + i / 8) + planes.get(MAGENTA, x + i % 8, y + i / 8))
                            .isBetween(253, 256);
                    sum += planes.get(CYAN, x + i % 8, y + i / 8);
                }
                assertThat(sum / 64.0).isBetween(127.5 - 16, 127.5 + 16);
            }
        }
    }

    @Test
    void aLargeCellOfManyOperationsKeepsItsEdges() throws Refusal {
        Matrix m = turned(0);
        List<Op> cell = new ArrayList<>();
        for (int i = 0; i < 13_000; i++) { // four repeats show
            cell.add(bar(10, 10, 60, 60, m));
        }
        cell.add(Pages.fill(Pages.rect(20.2, 20.6, 40.5, 40.1).transform(m), Pages.cmyk(0, 0, 0, 1)));
        InkPlanes planes = Pages.render(Pages.page(SIZE, SIZE, pattern(230.4, 230.4, m, cell)));
        double left = 3.37 + 20.2; // 23.57
        double top = 1.61 + 20.6; // 22.21
        int quarter = 64;
        assertThat((double) planes.get(BLACK, 23, 30))
                .isBetween(255 * (24 - left) - quarter, 255 * (24 - left) + quarter);
        assertThat((double) planes.get(BLACK, 30, 22))
                .isBetween(255 * (23 - top) - quarter, 255 * (23 - top) + quarter);
        assertThat(planes.get(BLACK, 22, 30)).isLessThan(quarter);
        assertThat(planes.get(BLACK, 24, 30)).isGreaterThan(255 - quarter);
        assertThat(planes.get(BLACK, 21, 30)).isZero();
        assertThat(planes.get(BLACK, 26, 30)).isEqualTo(255);
        assertThat(planes.get(BLACK, 26 + 230, 30)).isEqualTo(255);
        assertThat(planes.get(CYAN, 200, 200)).isZero();
    }

    @Test
    void aPartIsThatPartOfTheWhole() throws Refusal {
        Matrix m = turned(30);
        Op op = pattern(1.1, 1.3, m, List.of(bar(0, 0, 0.6, 1.3, m)));
        Plate plate = Pages.plate(Pages.page(SIZE, SIZE, op));
        PlateRequest all = new PlateRequest(1.37, -20, -20, 320, 220, true, Set.of());
        InkPlanes whole = plate.render(all, new Cancel(), Progress.NONE);
        for (int at = 0; at < 100; at += 13) {
            PlateRequest inner = all.part(at - 20, at - 15, at + 97, at + 40);
            assertSame(Pages.plate(plate.list()).render(inner, new Cancel(), Progress.NONE), whole.part(inner));
        }
    }

    private static void assertSame(InkPlanes actual, InkPlanes expected) {
        for (int p = 0; p < expected.planes(); p++) {
            assertThat(actual.raster(p)).as("plane %d", p).isEqualTo(expected.raster(p));
        }
    }

    @Test
    void paintingTheStepIsCancelled() {
        Cancel cancel = new Cancel();
        AtomicInteger afterwards = new AtomicInteger();
        TintTransform function = new TintTransform() {
            @Override
            public int outputs() {
                return 4;
            }

            @Override
            public void apply(float[] in, float[] out) {
                if (cancel.requested()) {
                    afterwards.incrementAndGet();
                }
                if (in[0] > 0.5) {
                    cancel.request();
                }
            }
        };
        Matrix m = turned(0);
        List<Op> cell = new ArrayList<>();
        for (int i = 0; i < 20_000; i++) {
            cell.add(bar(0, 0, 1, 1, m));
        }
        Paint.Geometry points = new Paint.OfPoint(new Box(0, 0, 1, 1), Matrix.scale(300, 300));
        Paint shading = new Paint.Shading(points, Pages.CMYK, function, null, null, m);
        Outline area = Pages.rect(0, 0, 300, 300).transform(m);
        cell.add(new Op.Fill(area, FillRule.NON_ZERO, shading, null, Style.PLAIN, null, Pages.ORIGIN));
        Plate plate = Pages.plate(Pages.page(SIZE, SIZE, pattern(300, 300, m, cell)));
        PlateRequest all = new PlateRequest(1, 0, 0, SIZE, SIZE, true, Set.of());
        assertThatThrownBy(() -> plate.render(all, cancel, Progress.NONE)).isInstanceOf(CancellationException.class);
        assertThat(afterwards.get())
                .as("points of the step after the request; it has %d", 600 * 600)
                .isLessThan(600 * 600 / 4);
    }

    /** Flat cells, shaded ones, cells that are half transparent, and very many. */
    private static DisplayList patterns() {
        Matrix m = turned(30);
        Paint shading = new Paint.Shading(
                new Paint.Axial(0, 0, 17, 9, 0, 1, true, true), Pages.GRAY, TintTransform.UNCHANGED, null, null, m);
        Outline cell = Pages.rect(0, 0, 17.3, 17.3).transform(m);
        Op shaded = new Op.Fill(cell, FillRule.NON_ZERO, shading, null, Style.PLAIN, null, Pages.ORIGIN);
        Op half = Pages.fill(cell, Pages.spot("Lock Gate Green", 0.8), Pages.alpha(0.5), null);
        return Pages.page(
                SIZE,
                SIZE,
                pattern(9.1, 9.1, m, List.of(bar(0, 0, 9.1, 9.1, m), bar(2, 2, 5, 5, m))),
                pattern(17.3, 17.3, m, List.of(half, bar(3, 3, 9, 9, m))),
                pattern(20, 18, m, List.of(shaded)),
                pattern(0.9, 1.7, m, List.of(bar(0, 0, 0.6, 0.8, m))));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 8})
    void theNumberOfThreadsMakesNoDifference(int threads) throws Refusal {
        DisplayList page = patterns();
        PlateRequest all = new PlateRequest(1.5, 0, 0, 600, 600, true, Set.of());
        InkPlanes usual = Pages.plate(page).render(all, new Cancel(), Progress.NONE);
        InkMapping mapping = Pages.plate(page).mapping();
        ExecutorService workers = Executors.newFixedThreadPool(threads);
        try {
            PreparedList prepared = Pages.prepared(page, all, mapping);
            InkPlanes.Cell[] cells =
                    Bands.paint(prepared, mapping.tintPlanes(), all, workers, threads, new Cancel(), Progress.NONE);
            assertSame(new InkPlanes(mapping.inks(), all, cells), usual);
        } finally {
            workers.shutdown();
        }
    }
}
