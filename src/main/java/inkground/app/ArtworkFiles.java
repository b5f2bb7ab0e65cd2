package inkground.app;

import inkground.artwork.Artwork;
import inkground.artwork.PictureSize;
import inkground.artwork.image.ImageArtwork;
import inkground.artwork.image.ImageKind;
import inkground.artwork.pdf.PdfArtwork;
import inkground.artwork.svg.SvgArtwork;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Opens a file with the reader for its kind, told by how it starts; by its name only where that says nothing. */
public final class ArtworkFiles {
    /** For messages. */
    public static final String KINDS = "PDF, SVG, PNG, JPEG, TIFF, WebP, GIF or BMP";

    /** Name endings of these kinds, lower case, without the dot; a file of another name is still told by its content. */
    public static final List<String> ENDINGS =
            List.of("pdf", "svg", "svgz", "png", "jpg", "jpeg", "tif", "tiff", "webp", "gif", "bmp");

    private static final int HEAD_BYTES = 4096;
    private static final int PDF_HEADER_WITHIN = 1024;

    private ArtworkFiles() {}

    /**
     * Opens a file of any kind that can be read.
     *
     * @throws Refusal if there is no such file, it is of no known kind, or its reader refuses it
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    public static Artwork open(Path file, Cancel cancel, Progress progress) throws Refusal {
        return open(file, PictureSize.STATED, cancel, progress);
    }

    /**
     * Opens a file of any kind as above.
     *
     * @param size of a picture or an SVG, chosen by the user
     * @throws Refusal also if a size is chosen for a file of another kind
     */
    public static Artwork open(Path file, PictureSize size, Cancel cancel, Progress progress) throws Refusal {
        if (!Files.exists(file)) {
            throw new Refusal("There is no file " + file + ". Check the name.");
        }
        if (!Files.isRegularFile(file) || !Files.isReadable(file)) {
            throw new Refusal(file + " is not a file that can be read. Give a file of " + KINDS + ".");
        }
        byte[] head = head(file);
        String text = new String(head, StandardCharsets.ISO_8859_1);
        String name = file.getFileName().toString();
        boolean picture = ImageKind.of(Arrays.copyOf(head, Math.min(head.length, ImageKind.HEAD_BYTES)))
                .isPresent();
        boolean svg = !picture && isSvg(head, text, extension(name));
        if (size.chosen() && !picture && !svg) {
            throw new Refusal(
                    name + " is no picture and no SVG and has its own size. Leave out the size that you chose.");
        }
        if (text.substring(0, Math.min(text.length(), PDF_HEADER_WITHIN)).contains("%PDF-")) {
            return PdfArtwork.open(file, cancel, progress);
        } else if (picture) {
            return ImageArtwork.open(file, size, cancel, progress);
        } else if (svg) {
            return SvgArtwork.open(file, size, cancel, progress);
        } else if (extension(name).equals("pdf")) {
            return PdfArtwork.open(file, cancel, progress); // says what is wrong with it
        }
        throw new Refusal(name + (head.length == 0 ? " is empty." : " is of a kind that cannot be opened.")
                + " Choose a file of " + KINDS + ".");
    }

    private static byte[] head(Path file) throws Refusal {
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(HEAD_BYTES);
        } catch (IOException e) {
            throw new Refusal(file + " cannot be read. Check that it is there and that you may read it.", e);
        }
    }

    private static String extension(String name) {
        return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    }

    /** XML whose start names svg, in one byte a character or two; or by its name, packed or with a long prolog. */
    private static boolean isSvg(byte[] head, String text, String extension) {
        boolean packed = head.length > 2 && (head[0] & 255) == 0x1f && (head[1] & 255) == 0x8b;
        boolean xml =
                text.replaceAll("[\\x00\\s\u00ef\u00bb\u00bf\u00fe\u00ff]", "").startsWith("<");
        boolean named = extension.equals("svg") || extension.equals("svgz");
        return xml && (named || text.replace("\0", "").matches("(?s).*<([A-Za-z_]+:)?svg[\\s>].*")) || packed && named;
    }
}
