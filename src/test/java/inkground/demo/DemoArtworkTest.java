package inkground.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DemoArtworkTest {
    private static final double PT_PER_MM = 72 / 25.4;

    @ParameterizedTest
    @ValueSource(strings = {DemoArtwork.POSTER, DemoArtwork.SHIRT})
    void theCommittedFileIsWhatTheProgramDraws(String name) throws IOException {
        byte[] drawn = DemoArtwork.draw().get(name);
        byte[] committed = Files.readAllBytes(Path.of("demo", name));
        // Objects with decoded streams are compared, not bytes: another zlib may pack the same content differently.
        assertThat(objects(drawn)).isEqualTo(objects(committed)).hasSizeGreaterThan(30);
    }

    @Test
    void drawingTwiceGivesTheSameBytes() throws IOException {
        assertThat(DemoArtwork.draw().get(DemoArtwork.SHIRT))
                .isEqualTo(DemoArtwork.draw().get(DemoArtwork.SHIRT));
    }

    @Test
    void thePosterHasTrimBleedAndAPictureFitForPrint() throws IOException {
        try (PDDocument poster = open(DemoArtwork.POSTER)) {
            PDPage page = poster.getPage(0);
            assertThat(sizeMm(page.getTrimBox())).isEqualTo("297.0 x 420.0");
            assertThat(sizeMm(page.getBleedBox())).isEqualTo("307.0 x 430.0");
            PDImageXObject picture = (PDImageXObject) page.getResources().getXObject(COSName.getPDFName("River"));
            assertThat(picture.getWidth() / (65 / 25.4)).isGreaterThan(300);
            assertThat(picture.getColorSpace().getName()).isEqualTo("DeviceCMYK");
            PDExtendedGraphicsState overprint = page.getResources().getExtGState(COSName.getPDFName("Overprint"));
            assertThat(overprint.getNonStrokingOverprintControl()).isTrue();
            assertThat(overprint.getOverprintMode()).isEqualTo(1);
        }
    }

    @Test
    void theShirtHasThreeSpotInksAndItsColourPaintedInOnALayerThatIsOn() throws IOException {
        try (PDDocument shirt = open(DemoArtwork.SHIRT)) {
            List<String> inks = new ArrayList<>();
            for (COSName space : shirt.getPage(0).getResources().getColorSpaceNames()) {
                COSArray array = (COSArray)
                        shirt.getPage(0).getResources().getColorSpace(space).getCOSObject();
                inks.add(((COSName) array.getObject(1)).getName());
            }
            assertThat(inks).containsExactlyInAnyOrder("Reach Red", "Lock Gate Cream", "White");
            var layers = shirt.getDocumentCatalog().getOCProperties();
            assertThat(layers.getGroupNames()).containsExactly("Shirt colour (preview)");
            assertThat(layers.isGroupEnabled("Shirt colour (preview)")).isTrue();
        }
    }

    private static PDDocument open(String name) throws IOException {
        return Loader.loadPDF(Path.of("demo", name).toFile());
    }

    private static String sizeMm(PDRectangle box) {
        return Math.round(box.getWidth() / PT_PER_MM * 10) / 10.0 + " x "
                + Math.round(box.getHeight() / PT_PER_MM * 10) / 10.0;
    }

    /** Every object reached from the catalogue and the info dictionary, by its path, as text. */
    private static Map<String, String> objects(byte[] pdf) throws IOException {
        Map<String, String> all = new TreeMap<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            Map<COSBase, String> seen = new IdentityHashMap<>();
            walk("Root", document.getDocumentCatalog().getCOSObject(), seen, all);
            walk("Info", document.getDocumentInformation().getCOSObject(), seen, all);
        }
        return all;
    }

    private static void walk(String at, COSBase base, Map<COSBase, String> seen, Map<String, String> all)
            throws IOException {
        COSBase object = base instanceof COSObject indirect ? indirect.getObject() : base;
        if (object instanceof COSDictionary dictionary) {
            if (seen.putIfAbsent(dictionary, at) != null) {
                return;
            }
            for (COSName key : dictionary.keySet()) {
                if (!key.equals(COSName.LENGTH)) {
                    walk(at + "/" + key.getName(), dictionary.getItem(key), seen, all);
                }
            }
            if (dictionary instanceof COSStream stream) {
                try (var in = stream.createInputStream()) {
                    all.put(at + " stream", HexFormat.of().formatHex(in.readAllBytes()));
                }
            }
        } else if (object instanceof COSArray array) {
            for (int i = 0; i < array.size(); i++) {
                walk(at + "[" + i + "]", array.get(i), seen, all);
            }
        } else {
            all.put(at, object instanceof COSString string ? string.toHexString() : String.valueOf(object));
        }
    }
}
