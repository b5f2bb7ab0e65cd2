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
                "810,000 tiles of one sample, of which one is there",
                new Pictures.Tiff(900, 900, 8, 1, 1, new byte[9])
                        .number(322, 1)
                        .number(323, 1)
                        .number(324, 8)
                        .end(false),
                "strips of one row, of which one is there",
                new Pictures.Tiff(2, 400_000, 8, 1, 1, new byte[9])
                        .number(278, 1)
                        .end(false),
                "tiles of 16 million samples across",
                new Pictures.Tiff(8, 8, 8, 1, 1, new byte[64])
                        .number(322, 16_000_000)
                        .number(323, 16_000_000)
                        .number(324, 8)
                        .end(false),
                "a tile of 1.6 GB for 64 samples",
                new Pictures.Tiff(8, 8, 8, 1, 1, new byte[64])
                        .number(322, 40_000)
                        .number(323, 40_000)
                        .number(324, 8)
                        .end(false),
                "tiles of no size",
                new Pictures.Tiff(8, 8, 8, 1, 1, new byte[64])
                        .number(322, 0)
                        .number(323, 0)
                        .number(324, 8)
                        .end(false));
    }
}
