package inkground.handoff;

import static inkground.handoff.CasePdf.numbers;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBoolean;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;

/** Images, patterns and shadings for {@link CasePdf}. Colours are the garment's, an invented red and white. */
final class CaseParts {
    private static final int[][] FLAT = {{0x1c, 0x30, 0x4f}, {0xc5, 0x24, 0x2e}, {255, 255, 255}};
    private static final int SIDE = 96;

    private CaseParts() {}

    /** How far inside a disc a place of the unit square is, in samples. */
    private static double disc(int x, int y, double cx, double cy, double radius) {
        return radius * SIDE - Math.hypot(x + 0.5 - cx * SIDE, y + 0.5 - cy * SIDE);
    }

    private static double cover(double inside, double soft) {
        return soft == 0 ? (inside > 0 ? 1 : 0) : Math.max(0, Math.min(1, inside / soft + 0.5));
    }

    /** Shares of garment, red and white at a sample: a red disc with a white one inside, on the garment's ground. */
    private static double[] shares(int x, int y, double soft) {
        double white = cover(disc(x, y, 0.5, 0.5, 0.15), soft);
        double red = Math.min(cover(disc(x, y, 0.45, 0.5, 0.35), soft), 1 - white);
        return new double[] {1 - red - white, red, white};
    }

    /** @param soft width of the edges in samples, 0 for hard ones */
    static CasePdf.Part rgbImage(String name, double soft) {
        return (document, resources) -> add(
                resources,
                COSName.XOBJECT,
                name,
                image(document.getDocument().createCOSStream(), 3, COSName.DEVICERGB, rgb(soft)));
    }

    /** The same with a round soft mask around it, or a hard one. */
    static CasePdf.Part cutOut(String name, double maskSoft) {
        return (document, resources) -> {
            COSStream image = image(document.getDocument().createCOSStream(), 3, COSName.DEVICERGB, rgb(2));
            byte[] alpha = new byte[SIDE * SIDE];
            for (int i = 0; i < alpha.length; i++) {
                alpha[i] = (byte) Math.round(255 * cover(disc(i % SIDE, i / SIDE, 0.5, 0.5, 0.45), maskSoft));
            }
            image.setItem(COSName.SMASK, image(document.getDocument().createCOSStream(), 1, COSName.DEVICEGRAY, alpha));
            add(resources, COSName.XOBJECT, name, image);
        };
    }

    private static byte[] rgb(double soft) {
        byte[] samples = new byte[SIDE * SIDE * 3];
        for (int i = 0; i < SIDE * SIDE; i++) {
            double[] shares = shares(i % SIDE, i / SIDE, soft);
            for (int c = 0; c < 3; c++) {
                double v = shares[0] * FLAT[0][c] + shares[1] * FLAT[1][c] + shares[2] * FLAT[2][c];
                samples[3 * i + c] = (byte) Math.round(v);
            }
        }
        return samples;
    }

    /** Four inks; the garment's colour is their 90, 70, 30 and 30 %. */
    static CasePdf.Part cmykImage(String name, double soft) {
        int[][] tints = {{230, 179, 77, 77}, {0, 230, 204, 0}, {0, 0, 0, 0}};
        return (document, resources) -> {
            byte[] samples = new byte[SIDE * SIDE * 4];
            for (int i = 0; i < SIDE * SIDE; i++) {
                double[] shares = shares(i % SIDE, i / SIDE, soft);
                for (int c = 0; c < 4; c++) {
                    double v = shares[0] * tints[0][c] + shares[1] * tints[1][c] + shares[2] * tints[2][c];
                    samples[4 * i + c] = (byte) Math.round(v);
                }
            }
            add(
                    resources,
                    COSName.XOBJECT,
                    name,
                    image(document.getDocument().createCOSStream(), 4, COSName.DEVICECMYK, samples));
        };
    }

    /** A palette of the three colours. */
    static CasePdf.Part paletteImage(String name) {
        return (document, resources) -> {
            byte[] samples = new byte[SIDE * SIDE];
            for (int i = 0; i < samples.length; i++) {
                double[] shares = shares(i % SIDE, i / SIDE, 0);
                samples[i] = (byte) (shares[0] == 1 ? 0 : shares[1] == 1 ? 1 : 2);
            }
            ByteArrayOutputStream table = new ByteArrayOutputStream();
            for (int[] colour : FLAT) {
                for (int c : colour) {
                    table.write(c);
                }
            }
            COSArray space = new COSArray();
            space.add(COSName.INDEXED);
            space.add(COSName.DEVICERGB);
            space.add(org.apache.pdfbox.cos.COSInteger.get(2));
            space.add(new COSString(table.toByteArray()));
            COSStream image = image(document.getDocument().createCOSStream(), 1, null, samples);
            image.setItem(COSName.COLORSPACE, space);
            add(resources, COSName.XOBJECT, name, image);
        };
    }

    /** Tints of the Shirt ink beside those of Reach Red. */
    static CasePdf.Part twoInkImage(String name) {
        return (document, resources) -> {
            COSDictionary spaces = resources.getCOSDictionary(COSName.COLORSPACE);
            COSArray names = new COSArray();
            names.add(COSName.getPDFName("Shirt"));
            names.add(COSName.getPDFName("Reach Red"));
            COSStream program = CasePdf.stream(document, "{ 0.8 mul 0 0 }"); // shirt as cyan, red as magenta
            program.setInt(COSName.FUNCTION_TYPE, 4);
            program.setItem(COSName.DOMAIN, numbers(0, 1, 0, 1));
            program.setItem(COSName.RANGE, numbers(0, 1, 0, 1, 0, 1, 0, 1));
            COSArray space = new COSArray();
            space.add(COSName.DEVICEN);
            space.add(names);
            space.add(COSName.DEVICECMYK);
            space.add(program);
            spaces.setItem("Two", space);
            byte[] samples = new byte[SIDE * SIDE * 2];
            for (int i = 0; i < SIDE * SIDE; i++) {
                double[] shares = shares(i % SIDE, i / SIDE, 2);
                samples[2 * i] = (byte) Math.round(255 * shares[0]);
                samples[2 * i + 1] = (byte) Math.round(255 * shares[1]);
            }
            COSStream image = image(document.getDocument().createCOSStream(), 2, null, samples);
            image.setItem(COSName.COLORSPACE, space);
            add(resources, COSName.XOBJECT, name, image);
        };
    }

    private static COSStream image(COSStream image, int components, COSName space, byte[] samples)
            throws java.io.IOException {
        image.setItem(COSName.TYPE, COSName.XOBJECT);
        image.setItem(COSName.SUBTYPE, COSName.IMAGE);
        image.setInt(COSName.WIDTH, SIDE);
        image.setInt(COSName.HEIGHT, SIDE);
        image.setInt(COSName.BITS_PER_COMPONENT, 8);
        if (space != null) {
            image.setItem(COSName.COLORSPACE, space);
        }
        if (samples.length != SIDE * SIDE * components) {
            throw new IllegalArgumentException(samples.length + " bytes");
        }
        try (OutputStream out = image.createOutputStream(COSName.FLATE_DECODE)) {
            out.write(samples);
        }
        return image;
    }

    /** A coloured tiling pattern of 24 pt cells. */
    static CasePdf.Part tiling(String name, String content) {
        return (document, resources) -> {
            COSStream pattern = CasePdf.stream(document, content);
            pattern.setItem(COSName.TYPE, COSName.PATTERN);
            pattern.setInt("PatternType", 1);
            pattern.setInt("PaintType", 1);
            pattern.setInt("TilingType", 1);
            pattern.setItem(COSName.BBOX, numbers(0, 0, 24, 24));
            pattern.setInt("XStep", 24);
            pattern.setInt("YStep", 24);
            pattern.setItem(COSName.MATRIX, numbers(1, 0, 0, 1, 6, 3));
            pattern.setItem(COSName.RESOURCES, resources);
            add(resources, COSName.PATTERN, name, pattern);
        };
    }

    /** A pattern and a shading of one name, from red to the garment's colour and on to white, across the page. */
    static CasePdf.Part gradient(String name, boolean radial, boolean extend) {
        return (document, resources) -> {
            COSArray functions = new COSArray();
            functions.add(fade(FLAT[1], FLAT[0]));
            functions.add(fade(FLAT[0], FLAT[2]));
            COSDictionary function = new COSDictionary();
            function.setInt(COSName.FUNCTION_TYPE, 3);
            function.setItem(COSName.DOMAIN, numbers(0, 1));
            function.setItem(COSName.FUNCTIONS, functions);
            function.setItem(COSName.BOUNDS, numbers(.55f));
            function.setItem(COSName.ENCODE, numbers(0, 1, 0, 1));
            COSDictionary shading = new COSDictionary();
            shading.setInt(COSName.SHADING_TYPE, radial ? 3 : 2);
            shading.setItem(COSName.COLORSPACE, COSName.DEVICERGB);
            shading.setItem(COSName.COORDS, radial ? numbers(70, 70, 0, 70, 70, 55) : numbers(24, 30, 120, 60));
            shading.setItem(COSName.FUNCTION, function);
            COSArray ends = new COSArray();
            ends.add(COSBoolean.getBoolean(extend));
            ends.add(COSBoolean.getBoolean(extend));
            shading.setItem(COSName.EXTEND, ends);
            COSDictionary pattern = new COSDictionary();
            pattern.setInt("PatternType", 2);
            pattern.setItem(COSName.SHADING, shading);
            add(resources, COSName.PATTERN, name, pattern);
            add(resources, COSName.SHADING, name, shading);
        };
    }

    /**
     * A mesh over (24, 24) to (120, 120), as a shading and a pattern of one name.
     *
     * @param type 4 to 7
     * @param corners of the four colours each 0 for the garment's, 1 for red, 2 for white
     */
    static CasePdf.Part mesh(String name, int type, int... corners) {
        return (document, resources) -> {
            COSStream shading = document.getDocument().createCOSStream();
            shading.setInt(COSName.SHADING_TYPE, type);
            shading.setItem(COSName.COLORSPACE, COSName.DEVICERGB);
            shading.setInt("BitsPerCoordinate", 8);
            shading.setInt(COSName.BITS_PER_COMPONENT, 8);
            shading.setItem(COSName.DECODE, numbers(0, 255, 0, 255, 0, 1, 0, 1, 0, 1));
            if (type == 5) {
                shading.setInt("VerticesPerRow", 2);
            } else {
                shading.setInt("BitsPerFlag", 8);
            }
            try (OutputStream out = shading.createOutputStream()) {
                out.write(type < 6 ? vertices(type, corners) : patch(type, corners));
            }
            COSDictionary pattern = new COSDictionary();
            pattern.setInt("PatternType", 2);
            pattern.setItem(COSName.SHADING, shading);
            add(resources, COSName.PATTERN, name, pattern);
            add(resources, COSName.SHADING, name, shading);
        };
    }

    /** Two triangles: free ones (§8.7.4.5.5), or a lattice of two rows (§8.7.4.5.6). */
    private static byte[] vertices(int type, int[] corners) {
        int[][] places = {{24, 24}, {120, 24}, {24, 120}, {120, 120}};
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (int corner : type == 4 ? new int[] {0, 1, 2, 1, 2, 3} : new int[] {0, 1, 2, 3}) {
            if (type == 4) {
                out.write(0);
            }
            out.write(places[corner][0]);
            out.write(places[corner][1]);
            colour(corners[corner], out);
        }
        return out.toByteArray();
    }

    /** One patch with straight edges: §8.7.4.5.7, and with four points inside §8.7.4.5.8. */
    private static byte[] patch(int type, int[] corners) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(0);
        int[][] steps = {{0, 32}, {32, 0}, {0, -32}, {-32, 0}};
        int x = 24;
        int y = 24;
        for (int i = 0; i < 12; i++) {
            out.write(x);
            out.write(y);
            x += steps[i / 3][0];
            y += steps[i / 3][1];
        }
        if (type == 7) {
            out.writeBytes(new byte[] {56, 56, 56, 88, 88, 88, 88, 56});
        }
        for (int corner : corners) {
            colour(corner, out);
        }
        return out.toByteArray();
    }

    private static void colour(int which, ByteArrayOutputStream out) {
        for (int value : FLAT[which]) {
            out.write(value);
        }
    }

    private static COSDictionary fade(int[] from, int[] to) {
        COSDictionary function = new COSDictionary();
        function.setInt(COSName.FUNCTION_TYPE, 2);
        function.setItem(COSName.DOMAIN, numbers(0, 1));
        function.setItem(COSName.C0, numbers(from[0] / 255f, from[1] / 255f, from[2] / 255f));
        function.setItem(COSName.C1, numbers(to[0] / 255f, to[1] / 255f, to[2] / 255f));
        function.setInt(COSName.N, 1);
        return function;
    }

    private static void add(COSDictionary resources, COSName kind, String name, org.apache.pdfbox.cos.COSBase object) {
        COSDictionary all = resources.getCOSDictionary(kind);
        if (all == null) {
            all = new COSDictionary();
            resources.setItem(kind, all);
        }
        all.setItem(name, object);
    }
}
