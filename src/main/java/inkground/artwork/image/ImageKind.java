package inkground.artwork.image;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;

/** The kinds of picture that can be read, told apart by how a file starts. */
public enum ImageKind {
    /** Portable Network Graphics: ISO/IEC 15948. */
    PNG("PNG"),
    /** JPEG: ISO/IEC 10918-1. */
    JPEG("JPEG"),
    /** TIFF 6.0, and BigTIFF. */
    TIFF("TIFF"),
    /** WebP: RFC 9649. */
    WEBP("WebP"),
    /** GIF. */
    GIF("GIF"),
    /** Windows bitmap. */
    BMP("BMP");

    /** How many bytes {@link #of} wants to see. */
    public static final int HEAD_BYTES = 16;

    private final String title;

    ImageKind(String title) {
        this.title = title;
    }

    /** @return what users call it */
    public String title() {
        return title;
    }

    /**
     * @param head the first bytes of a file, {@link #HEAD_BYTES} where there are as many
     * @return the kind, or nothing when it starts like none of them
     */
    public static Optional<ImageKind> of(byte[] head) {
        String text = new String(head, StandardCharsets.ISO_8859_1);
        if (text.startsWith("\u0089PNG\r\n\u001a\n")) {
            return Optional.of(PNG);
        } else if (text.startsWith("\u00ff\u00d8\u00ff")) {
            return Optional.of(JPEG);
        } else if (Arrays.stream(new String[] {"II*\0", "MM\0*", "II+\0", "MM\0+"})
                .anyMatch(text::startsWith)) {
            return Optional.of(TIFF);
        } else if (text.startsWith("RIFF") && text.length() >= 12 && text.startsWith("WEBP", 8)) {
            return Optional.of(WEBP);
        } else if (text.startsWith("GIF87a") || text.startsWith("GIF89a")) {
            return Optional.of(GIF);
        } else if (text.startsWith("BM") && text.length() >= 10 && text.startsWith("\0\0\0\0", 6)) {
            return Optional.of(BMP);
        }
        return Optional.empty();
    }
}
