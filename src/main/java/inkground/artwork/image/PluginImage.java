package inkground.artwork.image;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource.Pixels;
import inkground.base.ImagePlugins;
import inkground.base.Refusal;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;

/** Reads what an ImageIO reader is trusted with: WebP, GIF and BMP whole, and the coded data of JPEG. */
final class PluginImage {
    private static final int MAX_PROFILE = 32 << 20;

    private final String name;
    private final Input input;
    private final String format;

    private PluginImage(Input input, String name, String format) {
        this.input = input;
        this.name = name;
        this.format = format;
    }

    /** Reads the first picture of the file. */
    static List<Frame> read(Input input, String name, ImageKind kind) throws IOException, Refusal {
        PluginImage image = new PluginImage(input, name, kind.name().toLowerCase(java.util.Locale.ROOT));
        List<Frame.Note> notes = new ArrayList<>();
        byte[] profile = null;
        Exif exif = Exif.NONE;
        if (kind == ImageKind.WEBP) {
            byte[] block = image.riffChunk("EXIF");
            exif = block == null ? exif : Exif.of(block);
            profile = image.riffChunk("ICCP");
        }
        int[] size = image.size(notes);
        LazyImage.checkSize(name, size[0], size[1], 4);
        ColourSpace space = Spaces.of(profile, new ColourSpace.DeviceRgb(), notes);
        LazyImage source = new LazyImage(name, size[0], size[1], space, 8, exif.orientation(), image::decode);
        boolean turned = exif.orientation().swaps();
        return List.of(new Frame(
                source, turned ? exif.dpiY() : exif.dpiX(), turned ? exif.dpiX() : exif.dpiY(), notes, List.of()));
    }

    private int[] size(List<Frame.Note> notes) throws IOException {
        return with(input, format, reader -> {
            if (reader.getNumImages(true) > 1) {
                notes.add(new Frame.Note("moving pictures", "the first of them"));
            }
            return new int[] {reader.getWidth(0), reader.getHeight(0)};
        });
    }

    /** What is done with a reader. */
    @FunctionalInterface
    private interface Use<T> {
        T with(ImageReader reader) throws IOException;
    }

    private static <T> T with(Input input, String format, Use<T> use) throws IOException {
        ImageReader reader = ImagePlugins.reader(format);
        try (ImageInputStream in = input.open()) {
            reader.setInput(in, false, false);
            return use.with(reader);
        } finally {
            reader.dispose();
        }
    }

    /** Decodes without converting colours. */
    static Raster raster(Input input, String format) throws IOException {
        return with(input, format, reader -> reader.readRaster(0, null));
    }

    private Pixels decode() throws IOException {
        BufferedImage image = with(input, format, reader -> reader.read(0));
        int width = image.getWidth();
        int height = image.getHeight();
        boolean direct =
                image.getRaster().getNumBands() >= 3 && image.getColorModel().getComponentSize(0) == 8;
        boolean alpha = image.getColorModel().hasAlpha();
        byte[] colour = new byte[width * height * 3];
        byte[] mask = new byte[alpha ? width * height : 0];
        int[] row = new int[width * 4];
        boolean opaque = true;
        for (int y = 0; y < height; y++) {
            if (direct) {
                image.getRaster().getPixels(0, y, width, 1, row.length < 1 ? null : row);
            }
            int bands = direct ? image.getRaster().getNumBands() : 4;
            int[] argb = direct ? null : image.getRGB(0, y, width, 1, null, 0, width);
            for (int x = 0; x < width; x++) {
                int at = y * width + x;
                for (int c = 0; c < 3; c++) {
                    colour[at * 3 + c] = (byte) (direct ? row[x * bands + c] : argb[x] >> 16 - 8 * c);
                }
                if (alpha) {
                    mask[at] = (byte) (direct ? row[x * bands + 3] : argb[x] >>> 24);
                    opaque &= mask[at] == -1;
                }
            }
        }
        return new Pixels(width, height, 3, colour, opaque ? null : new Pixels(width, height, 1, mask, null));
    }

    /** A chunk of a WebP container (RFC 9649 §2.3); null when there is none or it is too long. */
    private byte[] riffChunk(String tag) throws IOException {
        try (ImageInputStream in = input.open()) {
            in.setByteOrder(java.nio.ByteOrder.LITTLE_ENDIAN);
            int wanted = tag.charAt(0) | tag.charAt(1) << 8 | tag.charAt(2) << 16 | tag.charAt(3) << 24;
            long at = 12;
            while (at + 8 <= in.length()) {
                in.seek(at);
                int found = in.readInt();
                long length = in.readUnsignedInt();
                if (found == wanted && length <= MAX_PROFILE && at + 8 + length <= in.length()) {
                    byte[] body = new byte[(int) length];
                    in.readFully(body);
                    return body;
                }
                at += 8 + length + (length & 1);
            }
            return null;
        }
    }
}
