package inkground.handoff;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDTrueTypeFont;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.apache.pdfbox.pdmodel.font.encoding.WinAnsiEncoding;

/** Small one-page files for tests: 144 × 144 pt, content as text, two invented inks and a few states in the resources. */
final class CasePdf {
    /** The invented garment colour #1C304F as an operand. */
    static final String GARMENT = "0.1098 0.1882 0.3098 rg ";

    static final String GARMENT_STROKE = "0.1098 0.1882 0.3098 RG ";
    static final String RED = "/Red cs 1 scn ";
    static final String RED_STROKE = "/Red CS 1 SCN ";
    static final String CREAM = "/Cream cs 0.8 scn ";
    static final String SHIRT = "/Shirt cs 1 scn ";

    private final String content;
    private final Map<String, String> forms = new LinkedHashMap<>();
    private final Map<String, String> groups = new LinkedHashMap<>();
    private final List<Part> parts = new ArrayList<>();
    private float turned;

    /** Adds something to the resources. */
    interface Part {
        void addTo(PDDocument document, COSDictionary resources) throws IOException;
    }

    CasePdf(String content) {
        this.content = content;
    }

    /** Adds a form of this content with the page's resources. */
    CasePdf form(String name, String content) {
        forms.put(name, content);
        return this;
    }

    /** Adds a transparency group. */
    CasePdf group(String name, String content) {
        groups.put(name, content);
        return this;
    }

    /** Adds an image, pattern, shading or whatever else. */
    CasePdf with(Part part) {
        parts.add(part);
        return this;
    }

    /** Whether anything but the bare colour goes to the process inks by its colour: pictures and gradients do. */
    boolean isConverted() {
        return !parts.isEmpty() || content.contains("/RGB ID");
    }

    /** Turns the page, shifts its media box and enlarges its unit. */
    CasePdf turned(float unit) {
        turned = unit;
        return this;
    }

    Path write(Path file) throws IOException {
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage(turned > 0 ? new PDRectangle(-20, 10, 144, 120) : new PDRectangle(144, 144));
            document.addPage(page);
            if (turned > 0) {
                page.setRotation(90);
                page.getCOSObject().setItem(COSName.getPDFName("UserUnit"), new COSFloat(turned));
            }
            COSDictionary resources = resources(document);
            for (Map.Entry<String, String> form : forms.entrySet()) {
                addForm(document, resources, form.getKey(), form.getValue(), false);
            }
            for (Map.Entry<String, String> group : groups.entrySet()) {
                addForm(document, resources, group.getKey(), group.getValue(), true);
            }
            for (Part part : parts) {
                part.addTo(document, resources);
            }
            page.getCOSObject().setItem(COSName.RESOURCES, resources);
            page.getCOSObject().setItem(COSName.CONTENTS, stream(document, content));
            document.save(file.toFile());
        }
        return file;
    }

    private COSDictionary resources(PDDocument document) throws IOException {
        COSDictionary spaces = new COSDictionary();
        spaces.setItem("Red", separation("Reach Red", .05f, 1, .8f, 0));
        spaces.setItem("Cream", separation("Lock Gate Cream", 0, .05f, .3f, 0));
        spaces.setItem("Shirt", separation("Shirt", .9f, .7f, .3f, .3f));
        COSDictionary states = new COSDictionary();
        states.setItem("Over", state("OP", true, 1));
        states.setItem("Half", state("OP", false, .5f));
        COSDictionary fonts = new COSDictionary();
        if (content.contains("/F ")) {
            embed(document, fonts);
        }
        fonts.setItem("Absent", new PDType1Font(Standard14Fonts.FontName.HELVETICA_BOLD).getCOSObject());
        COSDictionary out = new COSDictionary();
        out.setItem(COSName.COLORSPACE, spaces);
        out.setItem(COSName.EXT_G_STATE, states);
        out.setItem(COSName.FONT, fonts);
        out.setItem(COSName.XOBJECT, new COSDictionary());
        return out;
    }

    private static void embed(PDDocument document, COSDictionary fonts) throws IOException {
        try (InputStream ttf =
                PDFont.class.getResourceAsStream("/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf")) {
            fonts.setItem(
                    "F",
                    PDTrueTypeFont.load(document, ttf, WinAnsiEncoding.INSTANCE).getCOSObject());
        }
    }

    private static COSDictionary state(String key, boolean value, float alpha) {
        COSDictionary state = new COSDictionary();
        state.setBoolean(COSName.getPDFName(key), value);
        state.setItem(COSName.getPDFName("ca"), new COSFloat(alpha));
        return state;
    }

    private static COSArray separation(String name, float... cmyk) {
        COSDictionary function = new COSDictionary();
        function.setInt(COSName.FUNCTION_TYPE, 2);
        function.setItem(COSName.DOMAIN, numbers(0, 1));
        function.setItem(COSName.C0, numbers(0, 0, 0, 0));
        function.setItem(COSName.C1, numbers(cmyk));
        function.setItem(COSName.N, COSInteger.ONE);
        COSArray space = new COSArray();
        space.add(COSName.SEPARATION);
        space.add(COSName.getPDFName(name));
        space.add(COSName.DEVICECMYK);
        space.add(function);
        return space;
    }

    static COSArray numbers(float... values) {
        COSArray out = new COSArray();
        for (float value : values) {
            out.add(new COSFloat(value));
        }
        return out;
    }

    static COSStream stream(PDDocument document, String text) throws IOException {
        COSStream stream = document.getDocument().createCOSStream();
        try (OutputStream out = stream.createOutputStream()) {
            out.write(text.getBytes(StandardCharsets.ISO_8859_1));
        }
        return stream;
    }

    private static void addForm(
            PDDocument document, COSDictionary resources, String name, String content, boolean group)
            throws IOException {
        COSStream form = stream(document, content);
        form.setItem(COSName.TYPE, COSName.XOBJECT);
        form.setItem(COSName.SUBTYPE, COSName.FORM);
        form.setItem(COSName.BBOX, numbers(0, 0, 144, 144));
        form.setItem(COSName.RESOURCES, resources);
        if (group) {
            COSDictionary attributes = new COSDictionary();
            attributes.setItem(COSName.S, COSName.TRANSPARENCY);
            attributes.setBoolean(COSName.getPDFName("I"), true);
            form.setItem(COSName.GROUP, attributes);
        }
        resources.getCOSDictionary(COSName.XOBJECT).setItem(COSName.getPDFName(name), form);
    }
}
