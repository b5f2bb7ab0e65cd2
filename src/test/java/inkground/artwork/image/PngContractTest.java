package inkground.artwork.image;

import static inkground.artwork.image.Pictures.bytes;

import inkground.artwork.Artwork;
import inkground.artwork.ArtworkContract;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;

class PngContractTest extends ArtworkContract {
    @Override
    protected Artwork open(Path file, Cancel cancel) throws Refusal {
        return ImageArtwork.open(file, cancel, Progress.NONE);
    }

    @Override
    protected byte[] sound() throws IOException {
        return new Pictures.Png(2, 2, 8, 2, false)
                .data(bytes(0, 255, 0, 0, 0, 255, 0, 1, 0, 0, 255, 9, 9, 9))
                .end();
    }

    @Override
    protected String ending() {
        return ".png";
    }

    @Override
    protected Map<String, byte[]> hostile() throws IOException {
        return Map.of(
                "60,000 × 60,000 samples",
                new Pictures.Png(60_000, 60_000, 8, 6, false)
                        .data(new byte[100_000])
                        .end(),
                "no width",
                new Pictures.Png(0, 5, 8, 2, false).data(new byte[9]).end(),
                "2^31 samples across",
                new Pictures.Png(-1, 1, 8, 2, false).data(new byte[9]).end(),
                "data that end early",
                new Pictures.Png(900, 900, 8, 2, false).data(new byte[9]).end(),
                "no palette",
                new Pictures.Png(2, 2, 8, 3, false).data(new byte[9]).end());
    }
}
