package inkground.demo;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.TimeZone;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** One page under construction and the PDF objects that its content refers to. */
final class PdfParts implements AutoCloseable {
    /** Points in a millimetre. */
    static final double PT_PER_MM = 72 / 25.4;

    private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    private final PDDocument document = new PDDocument();
    private final PDPage page;
    private final COSDictionary resources = new COSDictionary();

    /** A colour at a place along a shading: {@code at} 0 to 1, inks in per cent. */
    record Stop(double at, int c, int m, int y, int k) {}

    PdfParts(String title, double widthMm, double heightMm) {
        page = new PDPage(box(0, 0, widthMm, heightMm));
        page.setResources(new PDResources(resources));
        document.addPage(page);
        document.setVersion(1.6f);
        PDDocumentInformation info = document.getDocumentInformation();
        info.setTitle(title);
        info.setAuthor("Heron Reach Rowing Club (invented)");
        info.setCreator("Inkground demo artwork");
        Calendar day = new GregorianCalendar(TimeZone.getTimeZone("UTC"));
        day.setTimeInMillis(1_780_272_000_000L); // 2026-06-01: a fixed date keeps the files the same on every run
        info.setCreationDate(day);
        info.setModificationDate(day);
        document.setDocumentId(20260601L);
    }

    PDDocument document() {
        return document;
    }

    PDPage page() {
        return page;
    }

    /** @return a rectangle in points from lengths in mm */
    static PDRectangle box(double x, double y, double width, double height) {
        return new PDRectangle((float) (x * PT_PER_MM), (float) (y * PT_PER_MM), (float) (width * PT_PER_MM), (float)
                (height * PT_PER_MM));
    }

    COSName add(COSName category, String name, COSBase value) {
        COSDictionary group = resources.getCOSDictionary(category);
        if (group == null) {
            group = new COSDictionary();
            resources.setItem(category, group);
        }
        COSName key = COSName.getPDFName(name);
        group.setItem(key, value);
        return key;
    }

    /** The open font that PDFBox carries; only the characters of {@code used} are embedded. */
    PDType0Font font(String used) throws IOException {
        try (InputStream in = PDType0Font.class.getResourceAsStream(FONT)) {
            PDType0Font font = PDType0Font.load(document, in, true);
            used.codePoints().sorted().distinct().forEach(font::addToSubset);
            return font;
        }
    }

    /** Adds a Separation whose tint goes straight from {@code none} to {@code solid} in the alternate space. */
    COSName separation(String resource, String ink, COSBase alternate, float[] none, float[] solid) {
        COSArray space = new COSArray();
        space.add(COSName.SEPARATION);
        space.add(COSName.getPDFName(ink));
        space.add(alternate);
        space.add(blend(none, solid));
        return add(COSName.COLORSPACE, resource, space);
    }

    /** CIE Lab with the D50 white of ICC.1. */
    static COSArray lab() {
        COSDictionary entries = new COSDictionary();
        entries.setItem(COSName.WHITE_POINT, floats(0.9642f, 1, 0.8249f));
        entries.setItem(COSName.RANGE, floats(-128, 127, -128, 127));
        COSArray space = new COSArray();
        space.add(COSName.LAB);
        space.add(entries);
        return space;
    }

    /** Adds an axial (4 coordinates) or radial (6) shading in DeviceCMYK that reaches on beyond both ends. */
    COSName shading(String resource, double[] coords, List<Stop> stops) {
        COSDictionary shading = new COSDictionary();
        shading.setInt(COSName.SHADING_TYPE, coords.length == 4 ? 2 : 3);
        shading.setItem(COSName.COLORSPACE, COSName.DEVICECMYK);
        float[] c = new float[coords.length];
        for (int i = 0; i < c.length; i++) {
            c[i] = (float) coords[i];
        }
        shading.setItem(COSName.COORDS, floats(c));
        COSArray extend = new COSArray();
        extend.add(org.apache.pdfbox.cos.COSBoolean.TRUE);
        extend.add(org.apache.pdfbox.cos.COSBoolean.TRUE);
        shading.setItem(COSName.EXTEND, extend);
        shading.setItem(COSName.FUNCTION, stitched(stops));
        return add(COSName.SHADING, resource, shading);
    }

    private static COSDictionary stitched(List<Stop> stops) {
        COSArray functions = new COSArray();
        COSArray bounds = new COSArray();
        COSArray encode = new COSArray();
        for (int i = 0; i + 1 < stops.size(); i++) {
            functions.add(blend(inks(stops.get(i)), inks(stops.get(i + 1))));
            encode.add(COSInteger.ZERO);
            encode.add(COSInteger.ONE);
            if (i > 0) {
                bounds.add(new COSFloat((float) stops.get(i).at()));
            }
        }
        COSDictionary function = new COSDictionary();
        function.setInt(COSName.FUNCTION_TYPE, 3);
        function.setItem(COSName.DOMAIN, floats(0, 1));
        function.setItem(COSName.FUNCTIONS, functions);
        function.setItem(COSName.BOUNDS, bounds);
        function.setItem(COSName.ENCODE, encode);
        return function;
    }

    private static float[] inks(Stop s) {
        return new float[] {s.c() / 100f, s.m() / 100f, s.y() / 100f, s.k() / 100f};
    }

    private static COSDictionary blend(float[] from, float[] to) {
        COSDictionary function = new COSDictionary();
        function.setInt(COSName.FUNCTION_TYPE, 2);
        function.setItem(COSName.DOMAIN, floats(0, 1));
        function.setItem(COSName.C0, floats(from));
        function.setItem(COSName.C1, floats(to));
        function.setInt(COSName.N, 1);
        return function;
    }

    static COSArray floats(float... values) {
        COSArray array = new COSArray();
        for (float value : values) {
            array.add(new COSFloat(value));
        }
        return array;
    }

    /** Adds an 8-bit DeviceCMYK image, deflated after horizontal differencing (predictor 2). */
    COSName image(String resource, byte[] cmyk, int width, int height) throws IOException {
        byte[] differences = cmyk.clone();
        int stride = 4 * width;
        for (int row = 0; row < height; row++) {
            for (int i = stride - 1; i >= 4; i--) {
                differences[row * stride + i] -= cmyk[row * stride + i - 4];
            }
        }
        COSStream stream = document.getDocument().createCOSStream();
        stream.setItem(COSName.TYPE, COSName.XOBJECT);
        stream.setItem(COSName.SUBTYPE, COSName.IMAGE);
        stream.setInt(COSName.WIDTH, width);
        stream.setInt(COSName.HEIGHT, height);
        stream.setInt(COSName.BITS_PER_COMPONENT, 8);
        stream.setItem(COSName.COLORSPACE, COSName.DEVICECMYK);
        try (OutputStream out = stream.createOutputStream(COSName.FLATE_DECODE)) {
            out.write(differences);
        }
        COSDictionary parms = new COSDictionary();
        parms.setInt(COSName.PREDICTOR, 2);
        parms.setInt(COSName.COLORS, 4);
        parms.setInt(COSName.COLUMNS, width);
        stream.setItem(COSName.DECODE_PARMS, parms);
        return add(COSName.XOBJECT, resource, stream);
    }

    /** Puts the content in place and gives the whole file. */
    byte[] finish(Content content, PDType0Font font) throws IOException {
        PDStream stream = new PDStream(document);
        try (OutputStream out = stream.createOutputStream(COSName.FLATE_DECODE)) {
            out.write(content.bytes());
        }
        page.setContents(stream);
        font.subset();
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        document.save(file);
        return file.toByteArray();
    }

    @Override
    public void close() throws IOException {
        document.close();
    }
}
