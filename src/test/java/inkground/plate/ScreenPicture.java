package inkground.plate;

import inkground.artwork.Artwork;
import inkground.artwork.DisplayList;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.bench.Difference;
import inkground.colour.ScreenCondition;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;

/**
 * What a screen shows of a page on white, painted by the same painter as the plates.
 *
 * @param list what was painted
 * @param channels red, green and blue, each rows of pixels of 0 to 255
 */
public record ScreenPicture(DisplayList list, int[][][] channels) {
    /**
     * Paints the first page.
     *
     * @param widthPx of the whole media box
     */
    public static ScreenPicture of(Artwork artwork, int widthPx) throws Refusal {
        DisplayList list = artwork.record(1, new Cancel(), Progress.NONE);
        double dpi = 72 * widthPx / list.page().box(PageBox.MEDIA).width();
        PlateRequest request = PlateRequest.of(list.page().box(PageBox.MEDIA), dpi, true, list.defaultLayers());
        InkMapping mapping = InkMapping.of(artwork.declaredColorants(1), list, new ScreenCondition());
        InkPlanes planes = new Plate(list, mapping).render(request, new Cancel(), Progress.NONE);
        int[][][] channels = new int[3][planes.height()][planes.width()];
        for (int y = 0; y < planes.height(); y++) {
            for (int x = 0; x < planes.width(); x++) {
                for (int i = 0; i < 3; i++) {
                    channels[i][y][x] = Math.round((255 - planes.get(i, x, y)) * (255 - planes.get(3, x, y)) / 255f);
                }
            }
        }
        return new ScreenPicture(list, channels);
    }

    /** @return red, green and blue of a picture file laid on white, each rows of pixels */
    public static int[][][] read(Path file) throws IOException {
        BufferedImage image = ImageIO.read(file.toFile());
        int[][][] out = new int[3][image.getHeight()][image.getWidth()];
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int argb = image.getRGB(x, y);
                int alpha = argb >>> 24;
                for (int i = 0; i < 3; i++) {
                    int value = argb >> 16 - 8 * i & 255;
                    out[i][y][x] = Math.round((value * alpha + 255 * (255 - alpha)) / 255f);
                }
            }
        }
        return out;
    }

    /** @return how far red, green and blue are from those of another picture */
    public List<Difference> beside(int[][][] other) {
        return IntStream.range(0, 3)
                .mapToObj(i -> Difference.of(channels[i], other[i], null))
                .toList();
    }

    /** @return the colour of a pixel, 0xRRGGBB */
    public int rgb(int x, int y) {
        return channels[0][y][x] << 16 | channels[1][y][x] << 8 | channels[2][y][x];
    }
}
