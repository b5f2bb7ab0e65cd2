package inkground.appearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Cancel;
import inkground.base.Refusal;
import inkground.ink.Ink;
import inkground.ink.InkSet;
import inkground.plate.InkPlanes;
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
        assertThat(figures(planes).pixels()).containsExactly(3L, 1L, 1L, 1L, 2L);
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
        Long[] counts = new Long[Cover.values().length];
        Arrays.fill(counts, 0L);
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
        return MapFigures.of(new BareMap(INKS), planes, new Cancel());
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
