package inkground.findings;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.base.Cancel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What is passed over holds nothing: squares and thin lines with tiles are those found by looking everywhere. */
class TilesTest {
    private static final int WIDTH = 101; // no whole number of tiles
    private static final int HEIGHT = 67;
    private static final int[] REACHES = {0, 1, 3, 9};

    /** Flat, with some bars and a corner of soft tone. */
    private static byte[] drawing(long seed) {
        Random random = new Random(seed);
        byte[] raster = new byte[WIDTH * HEIGHT];
        for (int bar = 0; bar < 3; bar++) {
            int x0 = random.nextInt(WIDTH);
            int y0 = random.nextInt(HEIGHT);
            int x1 = Math.min(WIDTH, x0 + 1 + random.nextInt(20));
            int y1 = Math.min(HEIGHT, y0 + 1 + random.nextInt(4));
            byte tint = (byte) (60 + random.nextInt(196));
            for (int y = y0; y < y1; y++) {
                Arrays.fill(raster, y * WIDTH + x0, y * WIDTH + x1, tint);
            }
        }
        for (int i = 0; i < 400; i++) {
            raster[i / 20 * WIDTH + i % 20] = (byte) (i % 20 + i / 20);
        }
        return raster;
    }

    private static boolean[] pixels(Tiles tiles) {
        boolean[] out = new boolean[WIDTH * HEIGHT];
        tiles.each((y, x0, x1) -> Arrays.fill(out, y * WIDTH + x0, y * WIDTH + x1, true));
        return out;
    }

    /** The least and the largest value around a pixel. */
    private static int[] around(byte[] raster, int at, int reach) {
        int[] range = {255, 0};
        for (int y = Math.max(0, at / WIDTH - reach); y <= Math.min(HEIGHT - 1, at / WIDTH + reach); y++) {
            for (int x = Math.max(0, at % WIDTH - reach); x <= Math.min(WIDTH - 1, at % WIDTH + reach); x++) {
                range[0] = Math.min(range[0], raster[y * WIDTH + x] & 255);
                range[1] = Math.max(range[1], raster[y * WIDTH + x] & 255);
            }
        }
        return range;
    }

    @Test
    void everyPixelWithAStepNearbyIsHeldAndFlatOnesAreNot() {
        for (long seed = 1; seed <= 20; seed++) {
            byte[] raster = drawing(seed);
            for (int reach : REACHES) {
                for (int step : new int[] {1, 25, 200}) {
                    boolean[] held = pixels(Tiles.varying(raster, WIDTH, HEIGHT, reach, step));
                    for (int at = 0; at < raster.length; at++) {
                        int[] near = around(raster, at, reach);
                        int[] wide = around(raster, at, reach + 2 * Tiles.SIZE);
                        if (near[1] - near[0] >= step) {
                            assertThat(held[at]).as(seed + ": " + at).isTrue();
                        } else if (wide[1] - wide[0] < step) {
                            assertThat(held[at]).as(seed + ": " + at).isFalse();
                        }
                    }
                }
            }
        }
    }

    @Test
    void growingAddsAllWithinTheReach() {
        Tiles one = new Tiles(WIDTH, HEIGHT);
        assertThat(one.none()).isTrue();
        one.addAround(50, 20); // a pixel inside the tile from (48, 16) to (56, 24)
        assertThat(one.none()).isFalse();
        boolean[] grown = pixels(one.grown(9));
        for (int at = 0; at < grown.length; at++) {
            boolean near = at % WIDTH >= 32 && at % WIDTH < 72 && at / WIDTH < 40;
            assertThat(grown[at]).as("pixel " + at).isEqualTo(near);
        }
    }

    @Test
    void squaresAreRightInTheTilesAndLeftAloneElsewhere() {
        for (long seed = 1; seed <= 20; seed++) {
            byte[] raster = drawing(seed);
            for (int reach : REACHES) {
                Tiles tiles = Tiles.varying(raster, WIDTH, HEIGHT, 4, 25);
                boolean[] held = pixels(tiles);
                byte[] least = Squares.smallest(raster, WIDTH, HEIGHT, reach, tiles);
                byte[] most = Squares.largest(raster, WIDTH, HEIGHT, reach, tiles);
                for (int at = 0; at < raster.length; at++) {
                    int[] near = around(raster, at, held[at] ? reach : 0);
                    assertThat(new int[] {least[at] & 255, most[at] & 255})
                            .as(seed + ": " + at)
                            .isEqualTo(near);
                }
            }
        }
    }

    private static List<String> thin(byte[] raster, Tiles where, double minPx) {
        byte[] full = new byte[raster.length];
        Arrays.fill(full, (byte) 255);
        List<String> out = new ArrayList<>();
        new ThinScan(raster, full, where, WIDTH, HEIGHT, minPx, new Cancel())
                .each((x, y, thin, widthPx, share) -> out.add(x + " " + y + " " + widthPx + " " + share));
        return out;
    }

    @Test
    void thinLinesAreThoseFoundByLookingEverywhere() {
        int found = 0;
        for (long seed = 1; seed <= 40; seed++) {
            byte[] raster = drawing(seed);
            for (double minPx : new double[] {1.5, 2.5, 5}) {
                Tiles everywhere = new Tiles(WIDTH, HEIGHT);
                for (int at = 0; at < raster.length; at++) {
                    everywhere.addAround(at % WIDTH, at / WIDTH);
                }
                int reach = ThinScan.marginPx(minPx);
                Tiles varying = Tiles.varying(raster, WIDTH, HEIGHT, reach, ThinScan.LEAST_RISE);
                List<String> all = thin(raster, everywhere, minPx);
                assertThat(thin(raster, varying, minPx))
                        .as(seed + ": " + minPx + " px")
                        .isEqualTo(all);
                found += all.size();
            }
        }
        assertThat(found).isPositive();
    }
}
