package inkground.bench;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDStream;

/**
 * Copies of files in which the way from RGB to inks is said, so that two programs that read the same print profile have to
 * take the same: every RGB space becomes one ICC profile's, DefaultRGB (ISO 32000-2 §8.6.5.6) too, and the page begins
 * with the perceptual intent (§8.6.5.8), whose tables are in the print profile. So do the cells of tiling patterns, which
 * start from the state before the page's first operator (§8.7.3.1).
 */
final class SameConversion {
    private static final byte[] INTENT = "/Perceptual ri\n".getBytes(StandardCharsets.US_ASCII);

    private final PDDocument document;
    private final COSArray space;
    private final Set<COSBase> seen = Collections.newSetFromMap(new IdentityHashMap<>());

    private SameConversion(PDDocument document, byte[] profile) throws IOException {
        this.document = document;
        PDStream stream = new PDStream(document, new ByteArrayInputStream(profile));
        stream.getCOSObject().setInt(COSName.N, 3);
        space = new COSArray();
        space.add(COSName.ICCBASED);
        space.add(stream.getCOSObject());
    }

    /** Writes the copy of a file's first page. */
    static void write(Path file, Path rgbProfile, Path copy) throws IOException {
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            document.setAllSecurityToBeRemoved(true);
            SameConversion copying = new SameConversion(document, Files.readAllBytes(rgbProfile));
            PDPage page = document.getPage(0);
            copying.visit(page.getCOSObject());
            if (page.getResources() != null) {
                copying.give(page.getResources().getCOSObject());
            }
            copying.begin(page);
            document.save(copy.toFile());
        }
    }

    private void visit(COSBase base) throws IOException {
        COSBase at = base instanceof COSObject reference ? reference.getObject() : base;
        if (at == null || !seen.add(at)) {
            return;
        }
        if (at instanceof COSArray array) {
            for (int i = 0; i < array.size(); i++) {
                if (isRgb(array.getObject(i))) {
                    array.set(i, space);
                }
                visit(array.get(i));
            }
        } else if (at instanceof COSDictionary dictionary) {
            if (at instanceof COSStream stream && stream.getInt(COSName.PATTERN_TYPE) == 1) {
                begin(stream);
            }
            if (dictionary.getDictionaryObject(COSName.RESOURCES) instanceof COSDictionary resources) {
                give(resources);
            }
            for (COSName key : List.copyOf(dictionary.keySet())) {
                if (isRgb(dictionary.getDictionaryObject(key))) {
                    dictionary.setItem(key, space);
                }
                if (!COSName.PARENT.equals(key)) {
                    visit(dictionary.getItem(key));
                }
            }
        }
    }

    /** Spaces of red, green and blue: the device's, calibrated ones, and profiles of three components. */
    private boolean isRgb(COSBase base) {
        if (base == space || COSName.DEVICERGB.equals(base)) {
            return base != space;
        }
        if (!(base instanceof COSArray array) || array.size() != 2) {
            return false;
        }
        COSBase family = array.getObject(0);
        boolean profile = COSName.ICCBASED.equals(family)
                && array.getObject(1) instanceof COSStream stream
                && stream.getInt(COSName.N) == 3;
        return profile || COSName.CALRGB.equals(family);
    }

    private void give(COSDictionary resources) {
        COSBase spaces = resources.getDictionaryObject(COSName.COLORSPACE);
        COSDictionary named = spaces instanceof COSDictionary dictionary ? dictionary : new COSDictionary();
        named.setItem(COSName.getPDFName("DefaultRGB"), space);
        resources.setItem(COSName.COLORSPACE, named);
    }

    private static void begin(COSStream cell) throws IOException {
        ByteArrayOutputStream content = new ByteArrayOutputStream();
        content.write(INTENT);
        try (InputStream old = cell.createInputStream()) {
            old.transferTo(content);
        }
        try (OutputStream out = cell.createOutputStream()) {
            content.writeTo(out);
        }
    }

    private void begin(PDPage page) throws IOException {
        COSArray contents = new COSArray();
        contents.add(new PDStream(document, new ByteArrayInputStream(INTENT)).getCOSObject());
        COSBase old = page.getCOSObject().getDictionaryObject(COSName.CONTENTS);
        if (old instanceof COSArray several) {
            several.forEach(contents::add);
        } else if (old != null) {
            contents.add(page.getCOSObject().getItem(COSName.CONTENTS));
        }
        page.getCOSObject().setItem(COSName.CONTENTS, contents);
    }
}
