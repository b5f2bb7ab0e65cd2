package inkground.artwork.image;

import java.io.IOException;
import javax.imageio.stream.ImageInputStream;

/**
 * What Exif says that matters here.
 *
 * @param orientation how to turn the picture
 * @param dpiX samples per inch across, 0 where unsaid
 * @param dpiY samples per inch down, 0 where unsaid
 */
record Exif(Orientation orientation, double dpiX, double dpiY) {
    static final Exif NONE = new Exif(Orientation.UPRIGHT, 0, 0);

    /** @param tiff the TIFF structure inside an Exif block; a damaged one says nothing */
    static Exif of(byte[] tiff) {
        try (ImageInputStream in = Input.of(tiff).open()) {
            TiffDirectory first = TiffDirectory.readAll(in, 1).get(0);
            double[] dpi = first.dpi();
            return new Exif(new Orientation(first.number(TiffDirectory.ORIENTATION, 1)), dpi[0], dpi[1]);
        } catch (IOException | RuntimeException e) {
            return NONE; // Exif is an addition: a picture is whole without it
        }
    }
}
