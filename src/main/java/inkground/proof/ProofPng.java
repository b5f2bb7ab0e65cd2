package inkground.proof;

import inkground.base.ImagePlugins;
import inkground.colour.DisplayProfile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageOutputStream;

/** Writes a picture of a proof as PNG (ISO/IEC 15948): colour space, resolution and notes tagged. */
public final class ProofPng {
    private static final String FORMAT = "javax_imageio_png_1.0";
    private static final double INCHES_PER_METRE = 1000 / 25.4;

    private ProofPng() {}

    /** Writes a picture for an sRGB screen. */
    public static void write(BufferedImage picture, double dpi, Map<String, String> texts, Path file)
            throws IOException {
        write(picture, DisplayProfile.SRGB, dpi, texts, file);
    }

    /**
     * @param picture in the colours of the screen
     * @param screen it is for; its profile is embedded unless it is sRGB, which is named
     * @param dpi pixels per inch
     * @param texts keyword and text of each note, in Latin-1 or wider
     * @param file written over
     */
    public static void write(
            BufferedImage picture, DisplayProfile screen, double dpi, Map<String, String> texts, Path file)
            throws IOException {
        ImageWriter writer = ImagePlugins.writer("png");
        try (ImageOutputStream out = ImageIO.createImageOutputStream(file.toFile())) {
            ImageWriteParam how = writer.getDefaultWriteParam();
            IIOMetadata metadata =
                    writer.getDefaultImageMetadata(ImageTypeSpecifier.createFromRenderedImage(picture), how);
            metadata.mergeTree(FORMAT, tree(screen, dpi, texts));
            writer.setOutput(out);
            writer.write(null, new IIOImage(picture, null, metadata), how);
        } finally {
            writer.dispose();
        }
    }

    private static IIOMetadataNode tree(DisplayProfile screen, double dpi, Map<String, String> texts) {
        IIOMetadataNode root = new IIOMetadataNode(FORMAT);
        IIOMetadataNode size = new IIOMetadataNode("pHYs");
        String perMetre = Long.toString(Math.round(dpi * INCHES_PER_METRE));
        size.setAttribute("pixelsPerUnitXAxis", perMetre);
        size.setAttribute("pixelsPerUnitYAxis", perMetre);
        size.setAttribute("unitSpecifier", "meter");
        root.appendChild(size);
        root.appendChild(space(screen));
        IIOMetadataNode notes = new IIOMetadataNode("iTXt");
        texts.forEach((keyword, text) -> {
            IIOMetadataNode entry = new IIOMetadataNode("iTXtEntry");
            entry.setAttribute("keyword", keyword);
            entry.setAttribute("compressionFlag", "FALSE");
            entry.setAttribute("compressionMethod", "0");
            entry.setAttribute("languageTag", "");
            entry.setAttribute("translatedKeyword", "");
            entry.setAttribute("text", text);
            notes.appendChild(entry);
        });
        root.appendChild(notes);
        return root;
    }

    private static IIOMetadataNode space(DisplayProfile screen) {
        if (screen.profile().isEmpty()) {
            IIOMetadataNode srgb = new IIOMetadataNode("sRGB");
            srgb.setAttribute("renderingIntent", "Relative colorimetric");
            return srgb;
        }
        IIOMetadataNode profile = new IIOMetadataNode("iCCP");
        profile.setAttribute("profileName", "Screen");
        profile.setAttribute("compressionMethod", "deflate");
        profile.setUserObject(deflated(screen.profile().get()));
        return profile;
    }

    private static byte[] deflated(byte[] bytes) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflater = new DeflaterOutputStream(out)) {
            deflater.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }
}
