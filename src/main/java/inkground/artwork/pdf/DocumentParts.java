package inkground.artwork.pdf;

import java.io.IOException;
import java.util.IdentityHashMap;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.ResourceCache;

/** What all pages of one document share: colour spaces, images, layers. Used under {@link #lock}. */
final class DocumentParts {
    private final PDDocument document;
    private final Limits limits;
    private final ColourSpaces spaces = new ColourSpaces();
    private final LayersReader layers;
    private final Map<COSStream, PdfImage> images = new IdentityHashMap<>();

    DocumentParts(PDDocument document, Limits limits) {
        this.limits = limits;
        this.document = document;
        this.layers = new LayersReader(document.getDocumentCatalog().getCOSObject());
    }

    /** Held while anything is read from the file: the library is not thread-safe. */
    Object lock() {
        return document;
    }

    Limits limits() {
        return limits;
    }

    ColourSpaces spaces() {
        return spaces;
    }

    LayersReader layers() {
        return layers;
    }

    ResourceCache resourceCache() {
        return document.getResourceCache();
    }

    PdfImage image(COSStream stream, COSDictionary resources) throws IOException {
        PdfImage known = images.get(stream);
        if (known == null) {
            known = PdfImage.of(stream, resources, spaces, lock());
            images.put(stream, known);
        }
        return known;
    }

    /** @return whether the page's content unpacks to a size that can be read */
    boolean checkSizes(PDPage page, Recording recording) {
        COSBase contents = Cos.get(page.getCOSObject(), "Contents");
        try {
            if (contents instanceof COSStream stream) {
                StreamData.checkSize(stream, limits.contentBytes());
            } else if (contents instanceof COSArray array) {
                for (int i = 0; i < array.size(); i++) {
                    if (array.getObject(i) instanceof COSStream stream) {
                        StreamData.checkSize(stream, limits.contentBytes());
                    }
                }
            }
            return true;
        } catch (IOException e) {
            recording.approximate("page content that cannot be unpacked or is too large", "nothing of it");
            return false;
        }
    }
}
