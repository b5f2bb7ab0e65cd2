package inkground.artwork.pdf;

import inkground.artwork.TintTransform;
import inkground.artwork.Transfer;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;

/** Reads transfer functions: ISO 32000-2 §10.5. */
final class Transfers {
    private static final int PROCESS_INKS = 4;

    private Transfers() {}

    /** @return whether a value of TR or TR2 changes anything; Identity and Default do not */
    static boolean changes(COSBase stated) {
        return stated != null && !(stated instanceof COSName);
    }

    /**
     * @param stated one function for all process inks, or an array of one for each
     * @throws IOException if one of them cannot be read
     */
    static Transfer of(COSBase stated) throws IOException {
        List<TintTransform> functions = new ArrayList<>();
        for (int i = 0; i < PROCESS_INKS; i++) {
            COSBase one = stated instanceof COSArray array ? array.getObject(i) : stated;
            functions.add(changes(one) ? Functions.of(one, 1, 1) : TintTransform.UNCHANGED);
        }
        return new Transfer(functions);
    }
}
