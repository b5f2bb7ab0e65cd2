package inkground.artwork.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Map;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;

/** Makes streams of inline images, so that they are read like all others: ISO 32000-2 §8.9.7. */
final class InlineImages {
    private static final Map<String, String> KEYS = Map.of(
            "BPC", "BitsPerComponent",
            "CS", "ColorSpace",
            "D", "Decode",
            "DP", "DecodeParms",
            "F", "Filter",
            "H", "Height",
            "IM", "ImageMask",
            "I", "Interpolate",
            "W", "Width");

    private InlineImages() {}

    static COSStream toStream(COSDictionary parameters, byte[] data) throws IOException {
        if (parameters == null || data == null) {
            throw new IOException("an inline image without data");
        }
        COSStream stream = new COSStream();
        for (COSName key : parameters.keySet()) {
            stream.setItem(Cos.name(KEYS.getOrDefault(key.getName(), key.getName())), parameters.getItem(key));
        }
        try (OutputStream out = stream.createRawOutputStream()) {
            out.write(data);
        }
        return stream;
    }
}
