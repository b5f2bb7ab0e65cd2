package inkground.artwork.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.artwork.Artwork;
import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.artwork.TextUse;
import inkground.base.Cancel;
import inkground.base.Progress;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TextRecordingTest {
    private static final String HELVETICA =
            "/Font << /F << /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >> >>";
    /** Glyph a: a uncoloured square of half an em; glyph b: a square that sets its own red. */
    private static final String TYPE3 = "/Font << /F << /Type /Font /Subtype /Type3 /FontBBox [0 0 1000 1000]"
            + " /FontMatrix [0.001 0 0 0.001 0 0] /FirstChar 97 /LastChar 98 /Widths [1000 1000]"
            + " /Encoding << /Differences [97 /a /b] >> /CharProcs << /a 5 0 R /b 6 0 R >> /Resources << >> >> >>";

    @TempDir
    Path dir;

    private DisplayList helvetica(String content) throws Exception {
        return new PdfText().resources(HELVETICA).content(content).record(dir);
    }

    @Test
    void aShowStringIsOneOperationThatSaysItsFontSizeAndText() throws Exception {
        List<Op> ops = helvetica("2 0 0 2 0 0 cm BT /F 10 Tf 5 5 Td [(Re) -200 (ed)] TJ ET")
                .ops();
        assertThat(ops).hasSize(1);
        Op.Fill fill = (Op.Fill) ops.get(0);
        TextUse use = fill.text();
        assertThat(use.font()).isEqualTo("Helvetica");
        assertThat(use.sizePt()).isCloseTo(20, within(1e-4));
        assertThat(use.embedded()).isFalse();
        assertThat(use.text()).isEqualTo("Reed");
        // The baseline lies at y = 100 - 10; capitals of Helvetica are 0.7 em or so high.
        assertThat(fill.bounds().y1()).isBetween(89.0, 91.0);
        assertThat(fill.bounds().y0()).isBetween(74.0, 77.0);
        assertThat(fill.bounds().x0()).isBetween(10.0, 13.0);
    }

    @Test
    void eachShowOperatorIsAnOperationOfItsOwn() throws Exception {
        List<Op> ops = helvetica("BT /F 10 Tf 12 TL 5 50 Td (a) Tj (b) ' 1 2 (c) \" ET")
                .ops();
        assertThat(ops).extracting(op -> ((Op.Fill) op).text().text()).containsExactly("a", "b", "c");
    }

    /** What stands in for a missing font is the machine's own, so only that it is named can be held. */
    private static void assertNamesFontAndStandIn(DisplayList list, String font) {
        assertThat(PdfText.messages(list)).singleElement().satisfies(m -> assertThat(m)
                .matches("this page uses the font " + font
                        + ", which the file does not carry, shown approximately: the font \\S+ in its place"));
    }

    @Test
    void aSimpleFontThatTheFileDoesNotCarryIsNamedOnceWithWhatIsDrawnInItsPlace() throws Exception {
        assertNamesFontAndStandIn(helvetica("BT /F 10 Tf 5 50 Td (a) Tj (b) Tj ET"), "Helvetica");
        String trueType = "/Font << /F << /Type /Font /Subtype /TrueType /BaseFont /ABCDEF+Absent /FirstChar 97"
                + " /LastChar 97 /Widths [500] /Encoding /WinAnsiEncoding /FontDescriptor << /Type /FontDescriptor"
                + " /FontName /ABCDEF+Absent /Flags 32 >> >> >>";
        DisplayList list = new PdfText()
                .resources(trueType)
                .content("BT /F 10 Tf 5 50 Td (a) Tj ET")
                .record(dir);
        assertNamesFontAndStandIn(list, "Absent");
        assertThat(list.ops()).as("a glyph is drawn").hasSize(1);
    }

    /** Code 36 of an Identity encoding names a glyph by its number: the machine's font draws its own glyph 36. */
    @Test
    void aCompositeFontThatTheFileDoesNotCarryIsNamedOnceWithWhatIsDrawnInItsPlace() throws Exception {
        DisplayList list = new PdfText()
                .resources(composite("CIDFontType2", "Identity", "/Identity-H"))
                .content("BT /F 20 Tf 10 30 Td <00240025> Tj <0026> Tj ET")
                .record(dir);
        assertNamesFontAndStandIn(list, "Invented");
        Op.Fill fill = (Op.Fill) list.ops().get(0);
        assertThat(fill.text().font()).isEqualTo("Invented");
        assertThat(fill.text().embedded()).isFalse();
        assertThat(fill.bounds().width()).as("two glyphs are drawn").isBetween(20.0, 45.0);
    }

    /** No collection has a character 65,534. */
    @Test
    void charactersThatTheSubstituteHasNotEitherAreTold() throws Exception {
        for (String kind : List.of("CIDFontType0", "CIDFontType2")) {
            DisplayList list = new PdfText()
                    .resources(composite(kind, "Japan1", "/Identity-H"))
                    .content("BT /F 20 Tf 10 30 Td <FFFE> Tj ET")
                    .record(dir);
            assertThat(PdfText.messages(list)).hasSize(2).anySatisfy(m -> assertThat(m)
                    .matches("this page uses characters of the font Invented, which the file does not carry, shown"
                            + " approximately: as blanks or boxes, since the font \\S+ has not got them"));
        }
    }

    private static String composite(String kind, String ordering, String encoding) {
        return "/Font << /F << /Type /Font /Subtype /Type0 /BaseFont /Invented /Encoding " + encoding
                + " /DescendantFonts [<< /Type /Font /Subtype /" + kind + " /BaseFont /Invented /CIDSystemInfo"
                + " << /Registry (Adobe) /Ordering (" + ordering
                + ") /Supplement 0 >> /DW 1000 /FontDescriptor << /Type"
                + " /FontDescriptor /FontName /Invented /Flags 4 >> >>] >> >>";
    }

    @Test
    void renderModesFillStrokeHideAndClip() throws Exception {
        String show = "BT /F 20 Tf 5 50 Td %d Tr (Oar) Tj ET 0 0 200 100 re f";
        assertThat(helvetica(show.formatted(0)).ops()).hasExactlyElementsOfTypes(Op.Fill.class, Op.Fill.class);
        assertThat(helvetica(show.formatted(1)).ops()).hasExactlyElementsOfTypes(Op.Stroke.class, Op.Fill.class);
        assertThat(helvetica(show.formatted(2)).ops())
                .hasExactlyElementsOfTypes(Op.Fill.class, Op.Stroke.class, Op.Fill.class);
        assertThat(helvetica(show.formatted(3)).ops()).hasSize(1);
        for (int mode = 0; mode <= 7; mode++) {
            List<Op> ops = helvetica(show.formatted(mode)).ops();
            Op last = ops.get(ops.size() - 1);
            assertThat(ops)
                    .as("mode " + mode)
                    .hasSize(List.of(2, 2, 3, 1, 2, 2, 3, 1).get(mode));
            assertThat(last.clip() != null).as("mode " + mode).isEqualTo(mode >= 4);
        }
    }

    @Test
    void textClipsCollectUntilTheTextObjectEnds() throws Exception {
        List<Op> ops = helvetica("BT /F 20 Tf 7 Tr 5 50 Td (l) Tj 100 0 Td (l) Tj ET 0 0 200 100 re f")
                .ops();
        assertThat(ops.get(0).clip().bounds().width()).isBetween(100.0, 110.0);
        assertThat(ops.get(0).clip().parent()).isNull();
        assertThat(helvetica("BT /F 20 Tf 7 Tr 5 50 Td ( ) Tj ET 0 0 9 9 re f")
                        .ops()
                        .get(0)
                        .clip())
                .as("blanks do not clip")
                .isNull();
    }

    @Test
    void strokedTextCarriesItsPenInUserSpace() throws Exception {
        Op.Stroke stroke = (Op.Stroke)
                helvetica("3 0 0 3 0 0 cm 2 w BT /F 10 Tf 1 Tr (o) Tj ET").ops().get(0);
        assertThat(stroke.pen().width()).isEqualTo(2);
        assertThat(stroke.path().bounds().height()).isLessThan(10);
        assertThat(stroke.text().sizePt()).isCloseTo(30, within(1e-4));
    }

    private PdfText type3(String content) {
        return new PdfText()
                .resources(TYPE3).stream("", "1000 0 0 0 500 500 d1 1 0 0 rg 0 0 500 500 re f").stream(
                                "", "1000 0 d0 1 0 0 rg 0 0 500 500 re f")
                        .content(content);
    }

    @Test
    void anUncolouredType3GlyphTakesTheCurrentColour() throws Exception {
        Op.Fill fill = type3("0 0 1 rg BT /F 20 Tf 10 30 Td (a) Tj ET").only(Op.Fill.class, dir);
        assertThat(fill.paint()).isEqualTo(new Paint.Flat(new Colour(new ColourSpace.DeviceRgb(), 0, 0, 1)));
        assertThat(fill.bounds().x0()).isCloseTo(10, within(1e-4));
        assertThat(fill.bounds().y0()).isCloseTo(60, within(1e-4));
        assertThat(fill.bounds().x1()).isCloseTo(20, within(1e-4));
        assertThat(fill.bounds().y1()).isCloseTo(70, within(1e-4));
        assertThat(fill.text().sizePt()).isCloseTo(20, within(1e-4));
        assertThat(fill.text().embedded()).isTrue();
        assertThat(fill.origin().object()).contains("glyph");
    }

    @Test
    void aColouredType3GlyphBringsItsOwnColour() throws Exception {
        List<Op> ops = type3("0 0 1 rg BT /F 20 Tf 10 30 Td (ba) Tj ET").ops(dir);
        assertThat(ops)
                .extracting(op -> ((Op.Fill) op).paint())
                .containsExactly(
                        new Paint.Flat(new Colour(new ColourSpace.DeviceRgb(), 1, 0, 0)),
                        new Paint.Flat(new Colour(new ColourSpace.DeviceRgb(), 0, 0, 1)));
        assertThat(ops.get(1).bounds().x0()).isCloseTo(30, within(1e-4));
    }

    @Test
    void aType3GlyphThatShowsItselfEnds() throws Exception {
        DisplayList list = new PdfText()
                .resources(TYPE3.replace("/Resources << >>", "/Resources << /Font << /F 7 0 R >> >>")).stream(
                                "", "1000 0 d0 0 0 9 9 re f BT /F 1 Tf (a) Tj ET")
                        .stream("", "1000 0 d0")
                        .object(TYPE3.substring("/Font << /F ".length(), TYPE3.length() - 3)
                                .replace("/Resources << >>", "/Resources << /Font << /F 7 0 R >> >>"))
                        .content("BT /F 20 Tf (a) Tj ET")
                        .record(dir);
        assertThat(list.ops()).hasSize(1);
        assertThat(PdfText.messages(list)).anyMatch(m -> m.contains("contains itself"));
    }

    @Test
    void anEmbeddedCompositeFontGivesItsNameWithoutTheSubsetTagAndItsText() throws Exception {
        Path file = dir.resolve("embedded.pdf");
        try (PDDocument document = new PDDocument();
                InputStream font = PDDocument.class.getResourceAsStream(
                        "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf")) {
            PDPage page = new PDPage();
            document.addPage(page);
            PDType0Font loaded = PDType0Font.load(document, font);
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.beginText();
                content.setFont(loaded, 24);
                content.newLineAtOffset(100, 700);
                content.showText("Regatta é");
                content.endText();
            }
            document.save(file.toFile());
        }
        try (Artwork artwork = PdfText.openFile(file)) {
            DisplayList list = artwork.record(1, new Cancel(), Progress.NONE);
            assertThat(list.approximations()).isEmpty();
            Op.Fill fill = (Op.Fill) list.ops().get(0);
            assertThat(fill.text()).isEqualTo(new TextUse("LiberationSans", 24, true, "Regatta é"));
            // R of Liberation Sans is 0.729 em high (1409 of 2048 units, 0.688) and starts 0.082 em in.
            assertThat(fill.bounds().x0()).isCloseTo(100 + 24 * 168 / 2048.0, within(0.05));
            assertThat(792 - 700 - fill.bounds().y0()).isGreaterThan(24 * 0.68);
        }
    }

    @Test
    void verticalWritingRunsDownThePage() throws Exception {
        DisplayList list = new PdfText()
                .page("/MediaBox [0 0 200 400]")
                .resources(composite("CIDFontType2", "Identity", "/Identity-V"))
                .content("BT /F 20 Tf 100 380 Td <0024> Tj <0024> Tj ET")
                .record(dir);
        assertThat(list.ops()).hasSize(2);
        double step =
                list.ops().get(1).bounds().y0() - list.ops().get(0).bounds().y0();
        assertThat(step).isCloseTo(20, within(1e-3));
    }
}
