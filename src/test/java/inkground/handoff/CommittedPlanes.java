package inkground.handoff;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.plate.InkPlanes;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/**
 * A plane of ours beside one that another renderer made and that was committed. Away from edges every pixel has to agree; at an edge
 * it may differ by what the other renderer makes edges fatter, and no pixel by more.
 */
final class CommittedPlanes {
    /** Rounding to 8 bits twice. */
    static final int EXACT = 2;
    /**
     * Most by which flat process tints of RGB and of pictures were seen to differ (yellow 32), since Ghostscript separates by a
     * profile of its own.
     */
    static final int CONVERTED = 33;

    /** Values of a pixel's neighbours spread by more than this at an edge. */
    private static final int SPREAD = 2;
    /**
     * Ghostscript paints every part of a pixel that is touched, at four times the resolution: an upright edge is fatter by up to a
     * quarter pixel (64), a slanting one by up to a quarter along both axes.
     */
    static final int FAT_EDGE = 100;
    /** Poppler's edges are soft, but it sets type at whole pixels and ends gradients at whole pixels: half a pixel. */
    static final int PLACED_EDGE = 128;

    private CommittedPlanes() {}

    /**
     * @param planes painted at some resolution
     * @param over pixels on each side of a square that becomes one
     * @return a plane averaged
     */
    static int[][] averaged(InkPlanes planes, int plane, int over) {
        int[][] out = new int[planes.height() / over][planes.width() / over];
        for (int y = 0; y < out.length; y++) {
            for (int x = 0; x < out[0].length; x++) {
                int sum = over * over / 2;
                for (int i = 0; i < over * over; i++) {
                    sum += planes.get(plane, x * over + i % over, y * over + i / over);
                }
                out[y][x] = sum / (over * over);
            }
        }
        return out;
    }

    /** @return 255 for solid, from a separation film; null where there is no such file */
    static int[][] separation(Path film) throws IOException {
        return Files.exists(film) ? complement(film, 0) : null;
    }

    /** @return the opacity of a picture */
    static int[][] opacity(Path picture) throws IOException {
        int[][] out = complement(picture, 3);
        for (int[] row : out) {
            for (int x = 0; x < row.length; x++) {
                row[x] = 255 - row[x];
            }
        }
        return out;
    }

    private static int[][] complement(Path file, int band) throws IOException {
        Raster raster = ImageIO.read(file.toFile()).getRaster();
        int[][] out = new int[raster.getHeight()][raster.getWidth()];
        for (int y = 0; y < out.length; y++) {
            for (int x = 0; x < out[0].length; x++) {
                out[y][x] = 255 - raster.getSample(x, y, band);
            }
        }
        return out;
    }

    /**
     * @param ours rows of pixels, 0 to 255
     * @param theirs the same
     * @param flat most by which pixels away from edges may differ, of 255
     * @param edge most by which others may
     * @param what for messages
     */
    static void compare(int[][] ours, int[][] theirs, int flat, int edge, String what) {
        assertThat(theirs.length).as(what).isEqualTo(ours.length);
        assertThat(theirs[0].length).as(what).isEqualTo(ours[0].length);
        int worstFlat = 0;
        int worstEdge = 0;
        for (int y = 0; y < ours.length; y++) {
            for (int x = 0; x < ours[0].length; x++) {
                int apart = Math.abs(ours[y][x] - theirs[y][x]);
                if (spread(ours, x, y) <= SPREAD && spread(theirs, x, y) <= SPREAD) {
                    worstFlat = Math.max(worstFlat, apart);
                } else {
                    worstEdge = Math.max(worstEdge, apart);
                }
            }
        }
        assertThat(worstFlat).as(what + ": away from edges").isLessThanOrEqualTo(flat);
        assertThat(worstEdge).as(what + ": at an edge").isLessThanOrEqualTo(edge);
    }

    private static int spread(int[][] raster, int x, int y) {
        int least = 255;
        int most = 0;
        for (int j = Math.max(0, y - 1); j <= Math.min(raster.length - 1, y + 1); j++) {
            for (int i = Math.max(0, x - 1); i <= Math.min(raster[0].length - 1, x + 1); i++) {
                least = Math.min(least, raster[j][i]);
                most = Math.max(most, raster[j][i]);
            }
        }
        return most - least;
    }
}
