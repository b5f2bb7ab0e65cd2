package inkground.artwork.image;

import inkground.artwork.Artwork;
import inkground.artwork.ArtworkContract;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Base64;
import java.util.Map;

class WebPContractTest extends ArtworkContract {
    /** One pixel, lossless; made by hand after RFC 9649 §3.4. */
    private static final String ONE = "UklGRhoAAABXRUJQVlA4TA0AAAAvAAAAEAcQERGIiP4HAA==";

    @Override
    protected Artwork open(Path file, Cancel cancel) throws Refusal {
        return ImageArtwork.open(file, cancel, Progress.NONE);
    }

    @Override
    protected byte[] sound() {
        return Base64.getDecoder().decode(ONE);
    }

    @Override
    protected String ending() {
        return ".webp";
    }

    /** RFC 9649 §2.7: an extended header of so many samples, and a chunk that ends early. */
    private static byte[] extended(int width, int height) {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        body.writeBytes("WEBPVP8X".getBytes(StandardCharsets.US_ASCII));
        body.writeBytes(Pictures.bytes(10, 0, 0, 0, 0, 0, 0, 0));
        for (int size : new int[] {width - 1, height - 1}) {
            body.writeBytes(Pictures.bytes(size, size >> 8, size >> 16));
        }
        body.writeBytes("VP8L".getBytes(StandardCharsets.US_ASCII));
        body.writeBytes(Pictures.bytes(5, 0, 0, 0, 0x2f, 0xff, 0xff, 0xff, 0x0f, 0));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes("RIFF".getBytes(StandardCharsets.US_ASCII));
        int length = body.size();
        out.writeBytes(Pictures.bytes(length, length >> 8, length >> 16, length >> 24));
        out.writeBytes(body.toByteArray());
        return out.toByteArray();
    }

    @Override
    protected Map<String, byte[]> hostile() {
        return Map.of(
                "16,777,216 × 16,777,216 samples",
                extended(1 << 24, 1 << 24),
                "16,383 × 16,383 samples, 1 GB",
                extended(16_383, 16_383),
                "a header alone",
                "RIFF\4\0\0\0WEBP".getBytes(StandardCharsets.US_ASCII));
    }
}
