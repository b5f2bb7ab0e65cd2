package inkground.appearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.ink.Ink;
import inkground.ink.InkSet;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlanesForTests;
import inkground.plate.PlateRequest;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class BareMapTest {
    private static final InkSet INKS = new InkSet(List.of(Ink.named("Mill Red"), Ink.named("White"), Ink.named("cut")));

    @Test
    void the_four_ways_of_looking_white_are_told_apart() throws Refusal {
        //                 nothing, white paint, knocked out, white ink, red, red on white, cut line, faint rim
        byte[] red = bytes(0, 0, 0, 0, 255, 9, 0, 0);
        byte[] white = bytes(0, 0, 0, 200, 0, 255, 0, 0);
        byte[] cut = bytes(0, 0, 0, 0, 0, 0, 255, 0);
        byte[] mark = bytes(0, 255, 255, 255, 255, 255, 0, 127);
        byte[] inked = bytes(0, 0, 255, 200, 255, 255, 0, 255);
        InkPlanes planes = planes(8, 1, red, white, cut, mark, inked);
        Cover[] expected = {
            Cover.UNPAINTED,
            Cover.WHITE_PAINT,
            Cover.KNOCKED_OUT,
            Cover.WHITE_INK,
            Cover.INKED,
            Cover.INKED,
            Cover.UNPAINTED,
            Cover.UNPAINTED
        };
        for (int x = 0; x < 8; x++) {
            assertThat(BareMap.classify(planes, x, 0)).as("pixel " + x).isEqualTo(expected[x]);
        }
        assertThat(figures(planes).pixels()).containsExactly(3.0, 1.0, 1.0, 1.0, 2.0);
    }

    @Test
    void areas_are_in_square_centimetres() throws Refusal {
        int n = 72; // one inch at one pixel a point
        byte[] none = new byte[n * n];
        MapFigures figures = figures(planes(n, n, none, none, none, none, none));
        assertThat(figures.cm2(Cover.UNPAINTED.ordinal())).isCloseTo(2.54 * 2.54, within(1e-9));
        assertThat(figures.share(Cover.UNPAINTED.ordinal())).isEqualTo(1);
        assertThat(figures.cm2(Cover.INKED.ordinal())).isZero();
        assertThat(figures.largest()).isNaN();
    }

    /** 150 dpi; fields whose edges lie between the pixels, in a region of more than one band. */
    @Test
    void areas_of_all_covers_are_right_within_half_a_percent_wherever_their_edges_lie() throws Refusal {
        double px = 25.4 / 150;
        for (double off : new double[] {0, 0.03, 0.08, 0.13}) {
            Rect red = new Rect(5 + off, 10 + off, 15, 42 + off);
            Rect hole = new Rect(7 + off, 20, 13, 26 + off);
            Rect paint = new Rect(18, 10 + off, 23 + off, 15);
            Rect white = new Rect(18 + off, 20 + off, 23, 42.01);
            PlaneSource art = (request, cancel) -> PlanesForTests.of(INKS, request, (plane, x, y) -> {
                double inHole = hole.covers(x * px, y * px, px);
                double inRed = red.covers(x * px, y * px, px);
                double inWhite = white.covers(x * px, y * px, px);
                double inPaint = paint.covers(x * px, y * px, px);
                double tint =
                        switch (plane) {
                            case 0 -> inRed - inHole;
                            case 1 -> inWhite;
                            case 2 -> 0;
                            case 3 -> inRed + inWhite + inPaint;
                            default -> inRed + inWhite;
                        };
                return (int) Math.round(255 * Math.max(0, Math.min(1, tint)));
            });
            // The planes of tests take the laid plane for the marked one wherever ink is, the hole's rim included.
            PlaneSource laid = (request, cancel) ->
                    PlanesForTests.laidAs(art.planes(request, cancel), (x, y) -> (int) Math.round(255
                            * (red.covers(x * px, y * px, px)
                                    - hole.covers(x * px, y * px, px)
                                    + white.covers(x * px, y * px, px))));
            PlateRequest region = new PlateRequest(
                    150 / 72.0, 0, 0, (int) Math.round(30 / px), (int) Math.round(50 / px), true, Set.of());
            MapFigures figures = new BareMap(INKS).figures(laid, region, new Cancel(), Progress.NONE);
            assertArea(figures, Cover.INKED, red.cm2() - hole.cm2());
            assertArea(figures, Cover.KNOCKED_OUT, hole.cm2());
            assertArea(figures, Cover.WHITE_PAINT, paint.cm2());
            assertArea(figures, Cover.WHITE_INK, white.cm2());
            double all = region.width() * px * region.height() * px / 100;
            assertArea(figures, Cover.UNPAINTED, all - red.cm2() - paint.cm2() - white.cm2());
        }
    }

    private static void assertArea(MapFigures figures, Cover cover, double cm2) {
        assertThat(figures.cm2(cover.ordinal())).as(cover.label()).isCloseTo(cm2, within(0.005 * cm2));
    }

    /** A rectangle in mm. */
    private record Rect(double x0, double y0, double x1, double y1) {
        /** How much of a square with this corner and edge it covers, 0 to 1. */
        double covers(double x, double y, double edge) {
            double across = Math.max(0, Math.min(x1, x + edge) - Math.max(x0, x));
            double down = Math.max(0, Math.min(y1, y + edge) - Math.max(y0, y));
            return across * down / edge / edge;
        }

        double cm2() {
            return (x1 - x0) * (y1 - y0) / 100;
        }
    }

    @Test
    void counting_by_cells_is_counting_by_pixels() throws Refusal {
        int w = 140;
        int h = 75;
        Random random = new Random(6);
        byte[][] rasters = new byte[5][w * h];
        for (byte[] raster : rasters) {
            for (int i = 0; i < raster.length; i++) {
                raster[i] = (byte) (i % w < 70 || random.nextInt(3) > 0 ? 0 : random.nextInt(256));
            }
        }
        InkPlanes planes = planes(w, h, rasters);
        Double[] counts = new Double[Cover.values().length];
        Arrays.fill(counts, 0.0);
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                counts[BareMap.classify(planes, x, y).ordinal()]++;
            }
        }
        assertThat(figures(planes).pixels()).containsExactly(counts);
        int[] argb = new int[w * h];
        new BareMap(INKS).paint(planes, argb, 0, w, new Cancel());
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                assertThat(argb[y * w + x]).isEqualTo(pattern(BareMap.classify(planes, x, y), x, y));
            }
        }
    }

    @Test
    void the_patterns_differ_without_colour_and_each_cover_has_words() {
        Set<String> patterns = new HashSet<>();
        for (Cover cover : Cover.values()) {
            StringBuilder shape = new StringBuilder();
            for (int i = 0; i < 24 * 24; i++) {
                int argb = pattern(cover, i % 24, i / 24);
                shape.append(((argb >> 16 & 255) + (argb >> 8 & 255) + (argb & 255)) / 3 > 190 ? '.' : '#');
                assertThat(argb >>> 24).isEqualTo(255);
            }
            patterns.add(cover == Cover.UNPAINTED ? "light" : shape.toString());
            assertThat(cover.label()).isNotBlank();
            assertThat(cover.explanation()).endsWith(".");
        }
        assertThat(patterns).hasSize(5);
        assertThat(Arrays.stream(Cover.values()).filter(Cover::bare)).hasSize(3);
    }

    private static int pattern(Cover cover, int x, int y) {
        return new BareMap(INKS).legend().get(cover.ordinal()).pattern().argb(0, x, y);
    }

    private static MapFigures figures(InkPlanes planes) throws Refusal {
        return Samples.marked(new BareMap(INKS), planes);
    }

    private static byte[] bytes(int... values) {
        byte[] out = new byte[values.length];
        for (int i = 0; i < values.length; i++) {
            out[i] = (byte) values[i];
        }
        return out;
    }

    private static InkPlanes planes(int width, int height, byte[]... rasters) {
        return PlanesForTests.ofRasters(INKS, new PlateRequest(1, 0, 0, width, height, true, Set.of()), rasters);
    }
}
