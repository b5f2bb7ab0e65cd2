package inkground.artwork.image;

import inkground.artwork.Artwork;
import inkground.artwork.ArtworkContract;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import javax.imageio.ImageIO;

class JpegContractTest extends ArtworkContract {
    @Override
    protected Artwork open(Path file, Cancel cancel) throws Refusal {
        return ImageArtwork.open(file, cancel, Progress.NONE);
    }

    @Override
    protected byte[] sound() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(16, 8, BufferedImage.TYPE_INT_RGB), "jpeg", out);
        return out.toByteArray();
    }

    @Override
    protected String ending() {
        return ".jpg";
    }

    /** A frame header (ITU-T T.81 §B.2.2) of so many samples, and a scan that ends at once. */
    private static byte[] frame(int width, int height, int components) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(Pictures.bytes(0xff, 0xd8, 0xff, 0xc0, 0, 8 + 3 * components, 8));
        out.writeBytes(Pictures.bytes(height >> 8, height, width >> 8, width, components));
        for (int c = 1; c <= components; c++) {
            out.writeBytes(Pictures.bytes(c, 0x11, 0));
        }
        out.writeBytes(Pictures.bytes(0xff, 0xda, 0, 6 + 2 * components, components));
        for (int c = 1; c <= components; c++) {
            out.writeBytes(Pictures.bytes(c, 0));
        }
        out.writeBytes(Pictures.bytes(0, 63, 0, 0xff, 0xd9));
        return out.toByteArray();
    }

    @Override
    protected Map<String, byte[]> hostile() {
        return Map.of(
                "65,500 × 65,500 samples, 12 GB",
                frame(65_500, 65_500, 3),
                "26,000 × 26,000 samples, 2 GB",
                frame(26_000, 26_000, 3),
                "no width",
                frame(0, 8, 3),
                "seven components",
                frame(8, 8, 7),
                "a segment without end",
                Pictures.bytes(0xff, 0xd8, 0xff, 0xe0, 0xff, 0xff, 1, 2, 3));
    }
}
