package inkground.artwork.image;

import com.twelvemonkeys.imageio.plugins.tiff.TIFFImageReaderSpi;
import java.awt.image.Raster;
import java.io.IOException;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;

/** Lets the plug-in reader decode what is coded as fax or JPEG inside a TIFF. */
final class TiffPlugin {
    private TiffPlugin() {}

    static Raster raster(Input input, int index) throws IOException {
        ImageReader reader = new TIFFImageReaderSpi().createReaderInstance(null);
        try (ImageInputStream in = input.open()) {
            reader.setInput(in);
            return reader.readRaster(index, null);
        } finally {
            reader.dispose();
        }
    }
}
