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
        Kind kind = kind(file);
        String name = file.getFileName().toString();
        if (size.chosen() && !kind.sized) {
            throw new Refusal(
                    name + " is no picture and no SVG and has its own size. Leave out the size that you chose.");
        }
        return switch (kind) {
            case PDF -> PdfArtwork.open(file, cancel, progress);
            case PICTURE -> ImageArtwork.open(file, size, cancel, progress);
            case SVG -> SvgArtwork.open(file, size, cancel, progress);
            case EMPTY, OTHER ->
                throw new Refusal(name + (kind == Kind.EMPTY ? " is empty." : " is of a kind that cannot be opened.")
                        + " Choose a file of " + KINDS + ".");
        };
    }

    /**
     * A size that is meant for whichever of several files can be placed in it.
     *
     * @return the size, for a picture or an SVG; {@link PictureSize#STATED} for a file of another kind
     * @throws Refusal if there is no such file
     */
    public static PictureSize fitting(PictureSize size, Path file) throws Refusal {
        return size.chosen() && kind(file).sized ? size : PictureSize.STATED;
    }

    private enum Kind {
        PDF(false),
        PICTURE(true),
        SVG(true),
        EMPTY(false),
        OTHER(false);

        /** Whether the user can choose how large it is. */
        final boolean sized;

        Kind(boolean sized) {
            this.sized = sized;
        }
    }

    private static Kind kind(Path file) throws Refusal {
        if (!Files.exists(file)) {
            throw new Refusal("There is no file " + file + ". Check the name.");
        }
        if (!Files.isRegularFile(file) || !Files.isReadable(file)) {
            throw new Refusal(file + " is not a file that can be read. Give a file of " + KINDS + ".");
        }
        byte[] head = head(file);
        String text = new String(head, StandardCharsets.ISO_8859_1);
        String extension = extension(file.getFileName().toString());
        if (text.substring(0, Math.min(text.length(), PDF_HEADER_WITHIN)).contains("%PDF-")) {
            return Kind.PDF;
        } else if (ImageKind.of(Arrays.copyOf(head, Math.min(head.length, ImageKind.HEAD_BYTES)))
                .isPresent()) {
            return Kind.PICTURE;
        } else if (isSvg(head, text, extension)) {
            return Kind.SVG;
        } else if (extension.equals("pdf")) {
            return Kind.PDF; // its reader says what is wrong with it
        }
        return head.length == 0 ? Kind.EMPTY : Kind.OTHER;
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
