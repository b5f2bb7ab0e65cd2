package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a path covers twice inside a pixel counts once, compared with the areas that the JDK's polygon arithmetic finds. */
class EdgeUnionTest {
    private static final int SIZE = 24;

    /** Places are rounded to 1/1024 pixel. */
    private static final double TOLERANCE = 0.006;

    /** Chords are at most 0.03 pixel off their curve. */
    private static final double CURVED_TOLERANCE = 0.036;

    @Test
    void polygonsThatOverlapThemselvesCoverEachPixelByTheAreaOfTheirUnion() {
        Random random = new Random(71);
        int cut = 0;
        for (int round = 0; round < 60; round++) {
            Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO);
            Outline.Builder outline = new Outline.Builder();
            for (int part = 0; part < 1 + round % 2; part++) {
                for (int i = 0; i < 5; i++) {
                    double x = random.nextInt(SIZE * 16 + 1) / 16.0;
                    double y = random.nextInt(SIZE * 16 + 1) / 16.0;
                    if (i == 0) {
                        path.moveTo(x, y);
                        outline.move(x, y);
                    } else {
                        path.lineTo(x, y);
                        outline.line(x, y);
                    }
                }
                path.closePath();
                outline.close();
            }
            EdgeList summed = EdgeList.of(outline.build(), Matrix.IDENTITY);
            EdgeList united = summed.united();
            cut += united == summed ? 0 : 1;
            assertCovers(united, path, TOLERANCE, "polygon " + round);
        }
        assertThat(cut).as("polygons with something to unite").isGreaterThan(30);
    }

    @ParameterizedTest
    @EnumSource(Pen.Join.class)
    void innerCornersOfStrokesCountOnce(Pen.Join join) {
        Random random = new Random(72);
        for (int round = 0; round < 20; round++) {
            float width = 0.5f + random.nextInt(12) / 2f;
            Path2D path = new Path2D.Double();
            Outline.Builder outline = new Outline.Builder();
            for (int i = 0; i < 4; i++) {
                double x = 4 + random.nextInt((SIZE - 8) * 8) / 8.0;
                double y = 4 + random.nextInt((SIZE - 8) * 8) / 8.0;
                if (i == 0) {
                    path.moveTo(x, y);
                    outline.move(x, y);
                } else {
                    path.lineTo(x, y);
                    outline.line(x, y);
                }
            }
            path.closePath();
            outline.close();
            int awt =
                    switch (join) {
                        case MITER -> BasicStroke.JOIN_MITER;
                        case ROUND -> BasicStroke.JOIN_ROUND;
                        case BEVEL -> BasicStroke.JOIN_BEVEL;
                    };
            Shape ink = new BasicStroke(width, BasicStroke.CAP_BUTT, awt, 4).createStrokedShape(path);
            Op.Stroke stroke = stroke(outline.build(), width, join);
            if (width >= 1) { // thinner lines are drawn one pixel wide
                double tolerance = join == Pen.Join.ROUND ? CURVED_TOLERANCE : TOLERANCE;
                assertCovers(Strokes.edges(stroke, Matrix.IDENTITY, 1), ink, tolerance, join + " " + round);
            }
        }
    }

    @Test
    void pathsThatDoNotOverlapThemselvesKeepTheirEdges() {
        Outline ring = new Outline.Builder()
                .append(Pages.rect(1.25, 1.5, 20.5, 20.75))
                .move(5, 5)
                .line(5, 15)
                .curve(8, 19, 12, 19, 15, 15)
                .line(15, 5)
                .close()
                .build();
        EdgeList edges = EdgeList.of(ring, Matrix.IDENTITY);
        assertThat(edges.united()).isSameAs(edges);
        EdgeList square = EdgeList.of(Pages.rect(2.5, 2.5, 2.75, 9), Matrix.IDENTITY);
        assertThat(square.united()).isSameAs(square);
    }

    @Test
    void aPathThatReachesFarBeyondAnyPageStaysSummed() {
        Outline near = new Outline.Builder()
                .append(Pages.rect(1.5, 1.5, 9.5, 9.5))
                .append(Pages.rect(9.25, 3, 12, 5))
                .build();
        Outline far = new Outline.Builder()
                .append(near)
                .append(Pages.rect(20, 0, 21, 1e6))
                .build();
        EdgeList edges = EdgeList.of(near, Matrix.IDENTITY);
        assertThat(edges.united()).isNotSameAs(edges);
        EdgeList reaching = EdgeList.of(far, Matrix.IDENTITY);
        assertThat(reaching.united()).isSameAs(reaching);
    }

    @Test
    void aPartOfAPageIsCutAsTheWholeIs() throws Refusal {
        Random random = new Random(73);
        Op[] ops = new Op[12];
        for (int i = 0; i < ops.length; i++) {
            Outline.Builder path = new Outline.Builder().move(random.nextDouble() * 150, random.nextDouble() * 150);
            for (int s = 0; s < 6; s++) {
                path.line(random.nextDouble() * 150, random.nextDouble() * 150);
            }
            ops[i] = stroke(path.build(), 0.5 + random.nextDouble() * 9, Pen.Join.values()[i % 3]);
        }
        Plate plate = Pages.plate(Pages.page(150, 150, ops));
        PlateRequest all = new PlateRequest(1, 0, 0, 150, 150, true, Set.of());
        InkPlanes whole = plate.render(all, new Cancel(), Progress.NONE);
        InkPlanes part = plate.render(all.part(37, 45, 103, 121), new Cancel(), Progress.NONE);
        for (int y = 45; y < 121; y++) {
            for (int x = 37; x < 103; x++) {
                assertThat(part.get(3, x - 37, y - 45)).isEqualTo(whole.get(3, x, y));
            }
        }
    }

    private static Op.Stroke stroke(Outline path, double width, Pen.Join join) {
        Pen pen = new Pen(width, Pen.Cap.BUTT, join, 4, new double[0], 0);
        Paint black = new Paint.Flat(Pages.cmyk(0, 0, 0, 1));
        return new Op.Stroke(path, pen, Matrix.IDENTITY, black, null, Style.PLAIN, null, Pages.ORIGIN);
    }

    private static void assertCovers(EdgeList edges, Shape expected, double tolerance, String what) {
        CoverBand band = new CoverBand(new CellPool());
        band.fill(edges, FillRule.NON_ZERO, 0, 0, InkPlanes.CELL_W);
        Area area = new Area(expected);
        for (int y = 0; y < SIZE; y++) {
            for (int x = 0; x < SIZE; x++) {
                Area pixel = new Area(new Rectangle2D.Double(x, y, 1, 1));
                pixel.intersect(area);
                double cover =
                        switch (band.state[0]) {
                            case CoverBand.NONE -> 0;
                            case CoverBand.ALL -> 1;
                            default -> band.cover[0][y * InkPlanes.CELL_W + x] / (double) Fixed.COVER_ONE;
                        };
                assertThat(cover).as("%s at %d, %d", what, x, y).isCloseTo(size(pixel), within(tolerance));
            }
        }
    }

    /** Area of a shape by the shoelace formula; the JDK's areas have no overlaps, and holes run the other way. */
    private static double size(Area area) {
        double twice = 0;
        double[] p = new double[6];
        double x = 0;
        double y = 0;
        double startX = 0;
        double startY = 0;
        for (PathIterator it = area.getPathIterator(null, 0.001); !it.isDone(); it.next()) {
            int kind = it.currentSegment(p);
            double nx = kind == PathIterator.SEG_CLOSE ? startX : p[0];
            double ny = kind == PathIterator.SEG_CLOSE ? startY : p[1];
            if (kind == PathIterator.SEG_MOVETO) {
                startX = nx;
                startY = ny;
            } else {
                twice += x * ny - nx * y;
            }
            x = nx;
            y = ny;
        }
        return Math.abs(twice) / 2;
    }

    /** Value of the black plane where a path of black is filled by the non-zero rule. */
    private static int black(Outline path, int x, int y) throws Refusal {
        InkPlanes planes = Pages.render(Pages.page(20, 20, Pages.fill(path, Pages.cmyk(0, 0, 0, 1))));
        return planes.get(3, x, y);
    }

    private static Outline.Builder rectangle(Outline.Builder path, double x0, double y0, double x1, double y1) {
        return path.move(x0, y0).line(x1, y0).line(x1, y1).line(x0, y1).close();
    }

    @Test
    void rectanglesOfOneFillThatShareAnEdgeCoverItOnce() throws Refusal {
        Outline.Builder path = new Outline.Builder();
        rectangle(path, 2, 2, 10, 5.5);
        rectangle(path, 6, 2, 14, 5.5);
        Outline both = path.build();
        for (int x = 2; x < 14; x++) {
            assertThat(black(both, x, 5)).as("half of the pixel at %d", x).isBetween(127, 128);
            assertThat(black(both, x, 4)).isEqualTo(255);
        }
        assertThat(black(both, 14, 5)).isZero();
    }

    @Test
    void barsOfOneFillThatCrossCoverTheirCornersOnce() throws Refusal {
        Outline.Builder path = new Outline.Builder();
        rectangle(path, 2, 4.5, 12, 7.5);
        rectangle(path, 4.5, 2, 7.5, 12);
        Outline cross = path.build();
        for (int x : new int[] {4, 7}) {
            for (int y : new int[] {4, 7}) {
                assertThat(black(cross, x, y))
                        .as("half and half of the rest at %d, %d", x, y)
                        .isBetween(191, 192);
            }
        }
        assertThat(black(cross, 5, 5)).isEqualTo(255);
        assertThat(black(cross, 3, 4)).isBetween(127, 128);
    }

    @Test
    void slantedBarsOfOneFillThatCrossCoverTheirMiddleOnce() throws Refusal {
        // along the row at y one bar takes [y + 0.5, y + 2.5], the other [14.5 - y, 16.5 - y]; both, a square around
        // (8.5, 7)
        Outline cross = new Outline.Builder()
                .move(2.5, 2)
                .line(4.5, 2)
                .line(14.5, 12)
                .line(12.5, 12)
                .close()
                .move(12.5, 2)
                .line(14.5, 2)
                .line(4.5, 12)
                .line(2.5, 12)
                .close()
                .build();
        for (int x : new int[] {7, 9}) {
            for (int y : new int[] {6, 7}) { // at the square's left and right corner
                assertThat(black(cross, x, y))
                        .as("one leaves out 1/8 of it; what the other has of it, 1/8, the first has too")
                        .isBetween(223 - 1, 223 + 1);
            }
        }
        assertThat(black(cross, 8, 7)).isEqualTo(255);
    }

    @Test
    void anOutlineThatGoesRoundTwiceCoversItsEdgeOnce() throws Refusal {
        Outline twice = new Outline.Builder()
                .move(2, 2)
                .line(10, 2)
                .line(10, 5.5)
                .line(2, 5.5)
                .line(2, 2)
                .line(6, 2)
                .line(14, 2)
                .line(14, 5.5)
                .line(6, 5.5)
                .line(6, 2)
                .close()
                .build();
        assertThat(black(twice, 8, 5)).isBetween(127, 128);
        assertThat(black(twice, 12, 5)).isBetween(127, 128);
        assertThat(black(twice, 8, 3)).isEqualTo(255);
    }

    @Test
    void partsDrawnTheOtherWayRoundDoNotCancelInAPixelThatBothReach() throws Refusal {
        Outline.Builder path = new Outline.Builder();
        rectangle(path, 2, 4.5, 12, 7.5);
        path.move(4.5, 2).line(4.5, 12).line(7.5, 12).line(7.5, 2).close();
        Outline holed = path.build();
        assertThat(black(holed, 5, 5)).as("windings 1 and -1: a hole").isZero();
        assertThat(black(holed, 4, 4)).as("a quarter of each").isBetween(127, 128);
        assertThat(black(holed, 3, 5)).isEqualTo(255);
    }

    @Test
    void aPartOfAnOverlappingFillIsThatPartOfTheWhole() throws Refusal {
        Outline.Builder path = new Outline.Builder();
        for (int i = 0; i < 6; i++) {
            double a = 40 + 25 * Math.cos(i);
            double b = 40 + 25 * Math.sin(i);
            path.move(a - 20, b - 11)
                    .curve(a, b - 25, a + 20, b - 9, a + 14, b + 7.3)
                    .curve(a + 3, b + 21, a - 17, b + 13, a - 20, b - 11)
                    .close();
        }
        Plate plate = Pages.plate(Pages.page(90, 90, Pages.fill(path.build(), Pages.cmyk(0, 0, 0, 1))));
        PlateRequest all = new PlateRequest(1.3, 0, 0, 117, 117, true, Set.of());
        InkPlanes whole = plate.render(all, new Cancel(), Progress.NONE);
        for (int at = 0; at < 70; at += 11) {
            PlateRequest inner = all.part(at, at + 3, at + 17, at + 41);
            assertThat(plate.render(inner, new Cancel(), Progress.NONE).raster(3))
                    .isEqualTo(whole.part(inner).raster(3));
        }
    }
}
