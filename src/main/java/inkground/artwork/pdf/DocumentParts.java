package inkground.artwork.pdf;

import java.io.IOException;
import java.util.IdentityHashMap;
import java.util.Iterator;
import java.util.Map;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.ResourceCache;
import org.apache.pdfbox.pdmodel.common.PDStream;

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
        try {
            for (Iterator<PDStream> i = page.getContentStreams(); i.hasNext(); ) {
                StreamData.checkSize(i.next().getCOSObject(), limits.contentBytes());
            }
            return true;
        } catch (IOException e) {
            recording.approximate("page content that unpacks to more than can be read", "nothing of it");
            return false;
        }
    }
}
