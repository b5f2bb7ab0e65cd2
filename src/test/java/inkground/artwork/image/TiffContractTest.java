package inkground.artwork.image;

import inkground.artwork.Artwork;
import inkground.artwork.ArtworkContract;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;

class TiffContractTest extends ArtworkContract {
    @Override
    protected Artwork open(Path file, Cancel cancel) throws Refusal {
        return ImageArtwork.open(file, cancel, Progress.NONE);
    }

    @Override
    protected byte[] sound() throws IOException {
        return new Pictures.Tiff(4, 4, 8, 4, 5, new byte[64]).end(true); // its directory names itself as the next
    }

    @Override
    protected String ending() {
        return ".tif";
    }

    @Override
    protected Map<String, byte[]> hostile() throws IOException {
        return Map.of(
                "a huge picture",
                new Pictures.Tiff(2_000_000_000, 2_000_000_000, 8, 3, 2, new byte[9]).end(false),
                "300 samples",
                new Pictures.Tiff(2, 2, 8, 300, 5, new byte[9]).end(false),
                "floating point",
                new Pictures.Tiff(2, 2, 32, 3, 2, new byte[48]).number(339, 3).end(false),
                "tiles of no size",
                new Pictures.Tiff(8, 8, 8, 1, 1, new byte[64])
                        .number(322, 0)
                        .number(323, 0)
                        .number(324, 8)
                        .end(false));
    }
}
