package inkground.artwork.pdf;

import inkground.artwork.Artwork;
import inkground.artwork.ArtworkContract;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

class PdfContractTest extends ArtworkContract {
    @Override
    protected Artwork open(Path file, Cancel cancel) throws Refusal {
        return PdfArtwork.open(file, cancel, Progress.NONE);
    }

    @Override
    protected byte[] sound() throws IOException {
        return Files.readAllBytes(
                new PdfText().content("1 0 0 rg 10 10 50 50 re f").write(dir));
    }

    @Override
    protected String ending() {
        return ".pdf";
    }

    @Override
    protected Map<String, byte[]> hostile() {
        return Map.of("a header alone", "%PDF-1.7\n".getBytes(StandardCharsets.US_ASCII));
    }
}
