package inkground.handoff;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.Ghostscript;
import inkground.OutsideTool;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;

/** Ghostscript's separations and Poppler's pictures of a file and its clean copy, compared. */
final class OtherRenderers {
    static final int DPI = 72;
    /** Each renderer places edges in its own way, within this many pixels. */
    private static final int EDGE = 2;

    private static final List<String> PROCESS = List.of("Cyan", "Magenta", "Yellow", "Black");
    /**
     * Where two soft edges lie on one line, up to a quarter of the lower colour is lost in a pixel: along the rim of a gradient
     * or picture that is bare elsewhere, at this coarse resolution. A plate has no soft edges.
     */
    private static final double SEAMS = 0.005;

    private static final int SQUARE = 2 * EDGE + 1;

    private OtherRenderers() {}

    /** How much of a pixel shows the bare colour, 0 to 255. */
    interface BareMap {
        int at(int x, int y);
    }

    static boolean poppler() throws Exception {
        return OutsideTool.present("pdftocairo", "-v");
    }

    /** @param bareInk an ink of which nothing at all may be left; null for none */
    static void compareSeparations(Path before, Path after, BareMap map, String bareInk) throws Exception {
        Map<String, BufferedImage> old = Ghostscript.separations(before, before.getParent(), DPI, 1);
        Map<String, BufferedImage> clean = Ghostscript.separations(after, after.getParent(), DPI, 1);
        BufferedImage any = old.values().iterator().next();
        byte[][] zones = zones(map, any.getWidth(), any.getHeight());
        assertThat(old.keySet()).containsAll(clean.keySet());
        for (Map.Entry<String, BufferedImage> entry : old.entrySet()) {
            BufferedImage was = entry.getValue();
            BufferedImage is = clean.get(entry.getKey());
            if (is == null) { // an ink that nothing names any more
                assertThat(entry.getKey()).isEqualTo(bareInk);
                continue;
            }
            Tally tally = new Tally(1, 0);
            for (int y = EDGE; y < was.getHeight() - EDGE; y++) {
                for (int x = EDGE; x < was.getWidth() - EDGE; x++) {
                    int now = 255 - (is.getRGB(x, y) & 255);
                    int then = 255 - (was.getRGB(x, y) & 255);
                    boolean gone = entry.getKey().equals(bareInk);
                    // a spot ink that was seen there before lies beyond an edge that Ghostscript places elsewhere
                    boolean seen = !PROCESS.contains(entry.getKey()) && then > 0;
                    boolean bare = gone || zones[y][x] == 1 && !seen;
                    tally.pixel(bare, !gone && zones[y][x] == 0, now, near(was, x, y, 0, now, then));
                }
            }
            tally.check("ink " + entry.getKey());
        }
    }

    static void comparePictures(Path before, Path after, BareMap map) throws Exception {
        BufferedImage was = picture(before);
        BufferedImage is = picture(after);
        byte[][] zones = zones(map, was.getWidth(), was.getHeight());
        Tally tally = new Tally(8, SEAMS);
        for (int y = EDGE; y < was.getHeight() - EDGE; y++) {
            for (int x = EDGE; x < was.getWidth() - EDGE; x++) {
                int now = is.getRGB(x, y);
                int then = was.getRGB(x, y);
                boolean bare = zones[y][x] == 1;
                for (int shift = 0; shift < 32; shift += 8) {
                    boolean alpha = shift == 24;
                    int level = now >> shift & 255;
                    tally.pixel(
                            bare && alpha, zones[y][x] == 0, level, near(was, x, y, shift, level, then >> shift & 255));
                }
            }
        }
        tally.check("picture");
    }

    /**
     * @param was the picture before
     * @param now a value of the one after
     * @param then the value at the same place
     * @return the nearest to it among those of the pixel and its neighbours: pictures are sampled otherwise under a mask, and
     *     edges under a clip are placed elsewhere
     */
    private static int near(BufferedImage was, int x, int y, int shift, int now, int then) {
        boolean inverted = was.getRaster().getNumBands() == 1;
        int least = then;
        int most = then;
        for (int i = 0; i < 9; i++) {
            int value = was.getRGB(x + i % 3 - 1, y + i / 3 - 1) >> shift & 255;
            value = inverted ? 255 - value : value;
            least = Math.min(least, value);
            most = Math.max(most, value);
        }
        return Math.max(least, Math.min(most, now));
    }

    /** Per pixel whether it and all pixels near it are bare (1), have nothing bare (0), or neither (-1). */
    private static byte[][] zones(BareMap map, int width, int height) {
        byte[][] out = new byte[height][width];
        for (int y = EDGE; y < height - EDGE; y++) {
            for (int x = EDGE; x < width - EDGE; x++) {
                int value = map.at(x, y);
                boolean same = value == 0 || value == 255;
                for (int i = 0; same && i < SQUARE * SQUARE; i++) {
                    same = map.at(x + i % SQUARE - EDGE, y + i / SQUARE - EDGE) == value;
                }
                out[y][x] = (byte) (!same ? -1 : value == 255 ? 1 : 0);
            }
        }
        return out;
    }

    private static final class Tally {
        private final int tolerance;
        private final double seams;
        int inside;
        int outside;
        int left;
        int changed;
        int most;

        /**
         * @param tolerance in 255ths: Poppler paints edges under a clip with other steps of softness
         * @param seams share of the values that may change by more
         */
        Tally(int tolerance, double seams) {
            this.tolerance = tolerance;
            this.seams = seams;
        }

        void pixel(boolean bare, boolean other, int now, int then) {
            if (bare) {
                inside++;
                left += now > 0 ? 1 : 0;
            } else if (other) {
                outside++;
                changed += Math.abs(now - then) > tolerance ? 1 : 0;
                most = Math.max(most, Math.abs(now - then));
            }
        }

        void check(String what) {
            assertThat(inside + outside).as(what + ": pixels looked at").isPositive();
            assertThat(left)
                    .as(what + ": printed where it is bare, of " + inside)
                    .isZero();
            assertThat(changed)
                    .as(what + ": changed elsewhere, by up to " + most + ", of " + outside)
                    .isLessThanOrEqualTo((int) (seams * outside));
        }
    }

    private static BufferedImage picture(Path pdf) throws Exception {
        Path out = Files.createTempDirectory(pdf.getParent(), "poppler").resolve("p");
        picture(pdf, out);
        return weighted(ImageIO.read(out.resolveSibling("p.png").toFile()));
    }

    /** Writes Poppler's picture of a file at {@link #DPI}, transparent where nothing is, as NAME.png. */
    static void picture(Path pdf, Path name) throws Exception {
        OutsideTool.run(
                "pdftocairo", "-png", "-transp", "-singlefile", "-r", "" + DPI, pdf.toString(), name.toString());
    }

    /** Colours times alpha: what is all but transparent has a colour of rounding only. */
    private static BufferedImage weighted(BufferedImage image) {
        BufferedImage out = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_ARGB);
        for (int y = 0; y < out.getHeight(); y++) {
            for (int x = 0; x < out.getWidth(); x++) {
                int argb = image.getRGB(x, y);
                int alpha = argb >>> 24;
                int weighted = alpha << 24;
                for (int shift = 0; shift < 24; shift += 8) {
                    weighted |= Math.round((argb >> shift & 255) * alpha / 255f) << shift;
                }
                out.setRGB(x, y, weighted);
            }
        }
        return out;
    }
}
