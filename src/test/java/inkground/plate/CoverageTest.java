package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.artwork.Style;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import inkground.geometry.Pen;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The rasteriser: exact area coverage, and the same pixels whatever region is asked for. */
class CoverageTest {
    private static final int BLACK = 3;

    @Test
    void aRectangleCoversEachPixelByItsShareOfTheArea() throws Refusal {
        DisplayList page = Pages.page(10, 10, Pages.fill(Pages.rect(1.25, 2.5, 4.5, 4), Pages.cmyk(0, 0, 0, 1)));
        InkPlanes planes = Pages.render(page);
        assertThat(planes.get(BLACK, 1, 2)).isEqualTo(Math.round(0.75f * 0.5f * 255));
        assertThat(planes.get(BLACK, 2, 2)).isEqualTo(Math.round(0.5f * 255));
        assertThat(planes.get(BLACK, 2, 3)).isEqualTo(255);
        assertThat(planes.get(BLACK, 4, 3)).isEqualTo(Math.round(0.5f * 255));
        assertThat(planes.get(BLACK, 5, 3)).isZero();
        assertThat(planes.get(planes.markPlane(), 1, 2)).isEqualTo(planes.get(BLACK, 1, 2));
    }

    @Test
    void theAreaOfACircleIsFoundToAThousandth() {
        double r = 40;
        double k = r * 0.5522847498; // the usual four-curve circle, radius error 2.7e-4
        Outline circle = new Outline.Builder()
                .move(50 + r, 50)
                .curve(50 + r, 50 + k, 50 + k, 50 + r, 50, 50 + r)
                .curve(50 - k, 50 + r, 50 - r, 50 + k, 50 - r, 50)
                .curve(50 - r, 50 - k, 50 - k, 50 - r, 50, 50 - r)
                .curve(50 + k, 50 - r, 50 + r, 50 - k, 50 + r, 50)
                .close()
                .build();
        assertThat(area(circle, FillRule.NON_ZERO, 100)).isCloseTo(Math.PI * r * r, within(0.001 * Math.PI * r * r));
    }

    @Test
    void evenOddLeavesWhatIsCoveredTwiceAndNonZeroKeepsIt() {
        Outline nested = new Outline.Builder()
                .append(Pages.rect(10, 10, 50, 50))
                .append(Pages.rect(20, 20, 40, 40))
                .build();
        assertThat(area(nested, FillRule.NON_ZERO, 64)).isCloseTo(1600, within(1e-6));
        assertThat(area(nested, FillRule.EVEN_ODD, 64)).isCloseTo(1200, within(1e-6));
    }

    @Test
    void shapesThatShareAnEdgeCoverEachPixelExactlyOnceBetweenThem() {
        Random random = new Random(5);
        for (int round = 0; round < 200; round++) {
            double[] x = random.doubles(6, -20, 150).toArray();
            double[] y = random.doubles(6, -20, 120).toArray();
            // two triangles on the same edge, on opposite sides of it or not: signed areas must cancel along the edge
            Outline one = triangle(x[0], y[0], x[1], y[1], x[2], y[2]);
            Outline quad = new Outline.Builder()
                    .move(x[0], y[0])
                    .line(x[1], y[1])
                    .line(x[2], y[2])
                    .line(x[3], y[3])
                    .close()
                    .build();
            Outline two = triangle(x[0], y[0], x[2], y[2], x[3], y[3]);
            Outline both = new Outline.Builder().append(one).append(two).build();
            for (int band = 0; band < 4; band++) {
                CoverBand a = band(both, band);
                CoverBand b = band(quad, band);
                for (int i = 0; i < 128 * InkPlanes.CELL_H; i++) {
                    int px = i % 128;
                    int py = i / 128;
                    assertThat(at(a, px, py)).isEqualTo(at(b, px, py));
                }
            }
        }
    }

    @Test
    void abuttingShapesOfOneInkLeaveNoSeam() throws Refusal {
        Random random = new Random(11);
        for (int round = 0; round < 20; round++) {
            double x = 20 + random.nextDouble() * 20;
            double y = 20 + random.nextDouble() * 20;
            // four triangles about a point fill a square; each is an operation of its own, and one is drawn the other
            // way round
            InkPlanes planes = Pages.render(Pages.page(
                    64,
                    64,
                    Pages.fill(triangle(4, 4, 60, 4, x, y), Pages.cmyk(0, 0, 0, 0.8)),
                    Pages.fill(triangle(60, 4, 60, 60, x, y), Pages.cmyk(0, 0, 0, 0.8)),
                    Pages.fill(triangle(x, y, 4, 60, 60, 60), Pages.cmyk(0, 0, 0, 0.8)),
                    Pages.fill(triangle(4, 60, 4, 4, x, y), Pages.cmyk(0, 0, 0, 0.8))));
            for (int py = 4; py < 60; py++) {
                for (int px = 4; px < 60; px++) {
                    assertThat(planes.get(BLACK, px, py)).as("%d, %d", px, py).isEqualTo(204);
                }
            }
        }
    }

    @Test
    void aShapeDrawnTwiceHasTheEdgeOfOne() throws Refusal {
        Op once = Pages.fill(Pages.rect(2.25, 2, 8, 8), Pages.cmyk(0, 0, 0, 1));
        InkPlanes planes = Pages.render(Pages.page(10, 10, once, once));
        assertThat(planes.get(BLACK, 2, 4)).as("1 - 0.25 * 0.25, not 2 * 0.75").isEqualTo(239);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void aRegionEqualsThatPartOfTheWholePageBitForBit(long seed) throws Refusal {
        Random random = new Random(seed);
        DisplayList page = Pages.page(300, 200, scribble(random, 40));
        Plate plate = Pages.plate(page);
        PlateRequest all = new PlateRequest(1.37, 0, 0, 411, 274, true, Set.of());
        InkPlanes whole = plate.render(all, new Cancel(), Progress.NONE);
        for (int i = 0; i < 6; i++) {
            int x0 = random.nextInt(380);
            int y0 = random.nextInt(250);
            int x1 = Math.min(411, x0 + 1 + random.nextInt(150));
            int y1 = Math.min(274, y0 + 1 + random.nextInt(100));
            PlateRequest part = new PlateRequest(1.37, x0, y0, x1, y1, true, Set.of());
            InkPlanes tile = Pages.plate(page).render(part, new Cancel(), Progress.NONE);
            for (int p = 0; p < whole.planes(); p++) {
                for (int y = 0; y < tile.height(); y++) {
                    for (int x = 0; x < tile.width(); x++) {
                        assertThat(tile.get(p, x, y))
                                .as("plane %d at %d, %d", p, x0 + x, y0 + y)
                                .isEqualTo(whole.get(p, x0 + x, y0 + y));
                    }
                }
            }
        }
    }

    @Test
    void theStreamedBandsAreTheRowsOfTheWhole() throws Refusal {
        DisplayList page = Pages.page(150, 200, scribble(new Random(9), 30));
        PlateRequest all = new PlateRequest(1, 3, 5, 140, 190, true, Set.of());
        InkPlanes whole = Pages.plate(page).render(all, new Cancel(), Progress.NONE);
        int[] rows = {0};
        Pages.plate(page).stream(all, 40, new Cancel(), Progress.NONE, band -> {
            byte[] expected = new byte[whole.width()];
            byte[] actual = new byte[whole.width()];
            for (int y = 0; y < band.height(); y++) {
                for (int p = 0; p < whole.planes(); p++) {
                    whole.row(p, rows[0], expected, 0);
                    band.row(p, y, actual, 0);
                    assertThat(actual).isEqualTo(expected);
                }
                rows[0]++;
            }
        });
        assertThat(rows[0]).isEqualTo(whole.height());
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5})
    void theNumberOfThreadsMakesNoDifference(int threads) throws Refusal {
        DisplayList page = Pages.page(300, 400, scribble(new Random(23), 60));
        PlateRequest all = new PlateRequest(1.5, 0, 0, 450, 600, true, Set.of());
        InkPlanes usual = Pages.plate(page).render(all, new Cancel(), Progress.NONE);
        InkMapping mapping = Pages.plate(page).mapping();
        PreparedList prepared = Pages.prepared(page, all, mapping);
        CountDownLatch started = new CountDownLatch(threads - 1);
        ExecutorService workers = Executors.newFixedThreadPool(
                threads,
                task -> new Thread(() -> {
                    started.countDown();
                    task.run();
                }));
        try {
            InkPlanes.Cell[] cells = Bands.paint(
                    prepared,
                    mapping.tintPlanes(),
                    all,
                    workers,
                    threads,
                    new Cancel(),
                    (what, done) -> await(started));
            assertThat(started.getCount()).as("threads that took no part").isZero();
            assertSame(new InkPlanes(mapping.inks(), all, cells), usual);
        } finally {
            workers.shutdown();
        }
    }

    /** Holds the first bands back until every thread has begun. */
    private static void await(CountDownLatch started) {
        try {
            started.await(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void assertSame(InkPlanes actual, InkPlanes expected) {
        byte[] a = new byte[expected.width()];
        byte[] b = new byte[expected.width()];
        for (int p = 0; p < expected.planes(); p++) {
            for (int y = 0; y < expected.height(); y++) {
                actual.row(p, y, a, 0);
                expected.row(p, y, b, 0);
                assertThat(a).isEqualTo(b);
            }
        }
    }

    @Test
    void aHairlineIsDrawnOnePixelWide() throws Refusal {
        Op line = stroke(new Outline.Builder().move(5, 5.5).line(25, 5.5).build(), 0, Matrix.IDENTITY);
        InkPlanes planes = Pages.render(Pages.page(30, 10, line));
        assertThat(planes.get(BLACK, 10, 5)).isEqualTo(255);
        assertThat(planes.get(BLACK, 10, 4)).isZero();
        assertThat(planes.get(BLACK, 10, 6)).isZero();
    }

    @Test
    void aPenIsShearedAndStretchedByItsMatrix() throws Refusal {
        // A pen of width 1 under (4, 0, 0, 2): a vertical line becomes 4 wide, a horizontal one 2.
        Matrix stretch = Matrix.scale(4, 2);
        Op vertical = stroke(new Outline.Builder().move(5, 1).line(5, 9).build(), 1, stretch);
        Op horizontal = stroke(new Outline.Builder().move(7, 5).line(12, 5).build(), 1, stretch);
        InkPlanes planes = Pages.render(Pages.page(60, 24, vertical, horizontal));
        assertThat(run(planes, 10)).isEqualTo(4);
        assertThat(column(planes, 40)).isEqualTo(2);
    }

    @Test
    void aShapeFarBeyondThePageStillCoversIt() throws Refusal {
        Op huge = Pages.fill(Pages.rect(-1e9, -1e9, 1e9, 1e9), Pages.cmyk(0, 0, 0, 1));
        InkPlanes planes = Pages.render(Pages.page(100, 100, huge));
        assertThat(planes.get(BLACK, 0, 0)).isEqualTo(255);
        assertThat(planes.get(BLACK, 99, 99)).isEqualTo(255);
    }

    private static int run(InkPlanes planes, int row) {
        int n = 0;
        for (int x = 0; x < 26; x++) {
            n += planes.get(BLACK, x, row) == 255 ? 1 : 0;
        }
        return n;
    }

    private static int column(InkPlanes planes, int x) {
        int n = 0;
        for (int y = 0; y < planes.height(); y++) {
            n += planes.get(BLACK, x, y) == 255 ? 1 : 0;
        }
        return n;
    }

    private static Op stroke(Outline path, double width, Matrix penToPage) {
        Pen pen = new Pen(width, Pen.Cap.BUTT, Pen.Join.MITER, 10, new double[0], 0);
        return new Op.Stroke(
                path, pen, penToPage, new Paint.Flat(Pages.cmyk(0, 0, 0, 1)), null, Style.PLAIN, null, Pages.ORIGIN);
    }

    private static Outline triangle(double ax, double ay, double bx, double by, double cx, double cy) {
        return new Outline.Builder()
                .move(ax, ay)
                .line(bx, by)
                .line(cx, cy)
                .close()
                .build();
    }

    private static CoverBand band(Outline path, int band) {
        CoverBand out = new CoverBand(new CellPool());
        EdgeList edges = EdgeList.of(path, Matrix.IDENTITY);
        out.fill(edges, FillRule.NON_ZERO, 0, band * InkPlanes.CELL_H, 128);
        return out;
    }

    private static int at(CoverBand band, int x, int y) {
        int col = x / InkPlanes.CELL_W;
        return switch (band.state[col]) {
            case CoverBand.NONE -> 0;
            case CoverBand.ALL -> Fixed.COVER_ONE;
            default -> band.cover[col][y * InkPlanes.CELL_W + x % InkPlanes.CELL_W];
        };
    }

    private static double area(Outline path, FillRule rule, int size) {
        double sum = 0;
        EdgeList edges = EdgeList.of(path, Matrix.IDENTITY);
        CoverBand band = new CoverBand(new CellPool());
        for (int y = 0; y < size; y += InkPlanes.CELL_H) {
            band.fill(edges, rule, 0, y, size);
            for (int i = 0; i < size * InkPlanes.CELL_H; i++) {
                sum += at(band, i % size, i / size) / (double) Fixed.COVER_ONE;
            }
        }
        return sum;
    }

    private static Op[] scribble(Random random, int count) {
        Op[] ops = new Op[count];
        for (int i = 0; i < count; i++) {
            Outline.Builder path = new Outline.Builder();
            path.move(random.nextDouble() * 320 - 10, random.nextDouble() * 220 - 10);
            for (int s = 0; s < 4; s++) {
                path.curve(
                        random.nextDouble() * 320 - 10,
                        random.nextDouble() * 220 - 10,
                        random.nextDouble() * 320 - 10,
                        random.nextDouble() * 220 - 10,
                        random.nextDouble() * 320 - 10,
                        random.nextDouble() * 220 - 10);
            }
            Style style = i % 3 == 0 ? Pages.alpha(random.nextDouble()) : i % 3 == 1 ? Pages.overprint(1) : Style.PLAIN;
            Op op = Pages.fill(
                    path.close().build(),
                    i % 4 == 0
                            ? Pages.spot("Lock Gate Green", random.nextDouble())
                            : Pages.cmyk(random.nextDouble(), 0, random.nextDouble(), 0),
                    style,
                    null);
            ops[i] = i % 5 == 0 ? Pages.group(true, Pages.alpha(0.6), op) : op;
        }
        return ops;
    }
}
