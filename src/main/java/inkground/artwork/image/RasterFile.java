package inkground.artwork.image;

import inkground.base.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** A file of pictures, or one in memory: its frames, headers read, samples not yet. */
public final class RasterFile {
    private RasterFile() {}

    /**
     * Reads the headers of a file.
     *
     * @param file to read; read again whenever a frame is decoded
     * @return its pictures, at least one
     * @throws Refusal if it is no picture of a known kind, is damaged or too large
     */
    public static List<Frame> read(Path file) throws Refusal {
        String name = file.getFileName().toString();
        byte[] head;
        try (var in = Files.newInputStream(file)) {
            head = in.readNBytes(ImageKind.HEAD_BYTES);
        } catch (IOException e) {
            throw new Refusal(name + " cannot be read. Check that it exists and that you may read it.", e);
        }
        return read(Input.of(file), name, head);
    }

    /**
     * Reads the headers of a picture in memory.
     *
     * @param data the whole file, not to be changed afterwards
     * @param name what to call it in messages
     * @return its pictures, at least one
     * @throws Refusal as above
     */
    public static List<Frame> read(byte[] data, String name) throws Refusal {
        return read(Input.of(data), name, Arrays.copyOf(data, Math.min(data.length, ImageKind.HEAD_BYTES)));
    }

    private static List<Frame> read(Input input, String name, byte[] head) throws Refusal {
        ImageKind kind = ImageKind.of(head)
                .orElseThrow(() -> new Refusal(
                        name + " is not a picture that can be read: PNG, JPEG, TIFF, WebP, GIF and BMP are."));
        try {
            return switch (kind) {
                case PNG -> PngFile.read(input, name);
                case JPEG -> JpegFile.read(input, name);
                case TIFF -> TiffFile.read(input, name);
                case WEBP, GIF, BMP -> PluginImage.read(input, name, kind);
            };
        } catch (IOException | RuntimeException e) {
            throw new Refusal(name + " is damaged and cannot be read as " + kind.title() + ". Export it again.", e);
        } catch (OutOfMemoryError e) {
            throw new Refusal(name + " needs more memory than there is. Export it at a lower resolution.", e);
        }
    }
}
