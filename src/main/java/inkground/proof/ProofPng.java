package inkground.proof;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageOutputStream;

/** Writes a picture of a proof as PNG (ISO/IEC 15948): sRGB, resolution and notes tagged. */
public final class ProofPng {
    private static final String FORMAT = "javax_imageio_png_1.0";
    private static final double INCHES_PER_METRE = 1000 / 25.4;

    private ProofPng() {}

    /**
     * @param picture sRGB
     * @param dpi pixels per inch
     * @param texts keyword and text of each note, in Latin-1 or wider
     * @param file written over
     */
    public static void write(BufferedImage picture, double dpi, Map<String, String> texts, Path file)
            throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(file.toFile())) {
            ImageWriteParam how = writer.getDefaultWriteParam();
            IIOMetadata metadata =
                    writer.getDefaultImageMetadata(ImageTypeSpecifier.createFromRenderedImage(picture), how);
            metadata.mergeTree(FORMAT, tree(dpi, texts));
            writer.setOutput(out);
            writer.write(null, new IIOImage(picture, null, metadata), how);
        } finally {
            writer.dispose();
        }
    }

    private static IIOMetadataNode tree(double dpi, Map<String, String> texts) {
        IIOMetadataNode root = new IIOMetadataNode(FORMAT);
        IIOMetadataNode size = new IIOMetadataNode("pHYs");
        String perMetre = Long.toString(Math.round(dpi * INCHES_PER_METRE));
        size.setAttribute("pixelsPerUnitXAxis", perMetre);
        size.setAttribute("pixelsPerUnitYAxis", perMetre);
        size.setAttribute("unitSpecifier", "meter");
        root.appendChild(size);
        IIOMetadataNode srgb = new IIOMetadataNode("sRGB");
        srgb.setAttribute("renderingIntent", "Relative colorimetric");
        root.appendChild(srgb);
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
}
