package inkground.bench;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.color.PDColor;
import org.apache.pdfbox.pdmodel.graphics.color.PDSeparation;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;

/**
 * Writes one large page of eight inks for measuring memory and time: a photograph-like picture over two thirds of it, and on it
 * rings, strokes and small shapes in the four process inks and four spot inks. Invented artwork, the same each time.
 *
 * <p>Arguments: the file to write, then width and height in millimetres, such as {@code 420 594} for A2.
 */
public final class LargePage {
    private static final List<String> SPOTS = List.of("Reed Green", "Hull Red", "Buoy Orange", "Deep Blue");
    private static final int SHAPES = 6000;
    private static final float PT_PER_MM = 72 / 25.4f;

    private LargePage() {}

    /** Writes the file. */
    public static void main(String[] args) throws IOException {
        write(Path.of(args[0]), Float.parseFloat(args[1]), Float.parseFloat(args[2]));
    }

    static void write(Path file, float widthMm, float heightMm) throws IOException {
        float width = widthMm * PT_PER_MM;
        float height = heightMm * PT_PER_MM;
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage(new PDRectangle(width, height));
            document.addPage(page);
            List<PDSeparation> spots = SPOTS.stream().map(LargePage::spot).toList();
            Random random = new Random(11);
            try (PDPageContentStream out = new PDPageContentStream(document, page)) {
                // 150 pixels an inch over two thirds of the height.
                int across = Math.round(widthMm / 25.4f * 150);
                int down = Math.round(heightMm * 2 / 3 / 25.4f * 150);
                out.drawImage(
                        JPEGFactory.createFromImage(document, picture(across, down, random), 0.85f),
                        0,
                        height / 3,
                        width,
                        height * 2 / 3);
                for (int i = 0; i < SHAPES; i++) {
                    shape(out, spots, random, width, height);
                }
            }
            document.save(file.toFile());
        }
    }

    private static PDSeparation spot(String name) {
        COSDictionary function = new COSDictionary();
        function.setInt("FunctionType", 2);
        function.setItem("Domain", numbers(0, 1));
        function.setItem("C0", numbers(0, 0, 0, 0));
        int hue = SPOTS.indexOf(name);
        function.setItem("C1", numbers(hue == 3 ? 1 : 0.2f, hue == 1 ? 1 : 0.4f, hue == 0 ? 0.9f : 0.3f, 0.1f));
        function.setItem("N", COSInteger.ONE);
        COSArray space = new COSArray();
        space.add(COSName.SEPARATION);
        space.add(COSName.getPDFName(name));
        space.add(COSName.DEVICECMYK);
        space.add(function);
        try {
            return new PDSeparation(space, null);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static COSArray numbers(float... values) {
        COSArray array = new COSArray();
        for (float value : values) {
            array.add(new COSFloat(value));
        }
        return array;
    }

    private static BufferedImage picture(int width, int height, Random random) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double u = 9.0 * x / width;
                double v = 9.0 * y / height;
                int r = level(Math.sin(u + Math.cos(v)), random);
                int g = level(Math.sin(0.7 * v + 0.2 * u * v), random);
                int b = level(Math.cos(0.4 * u * v - v), random);
                image.setRGB(x, y, r << 16 | g << 8 | b);
            }
        }
        return image;
    }

    private static int level(double wave, Random random) {
        return (int) Math.max(0, Math.min(255, 128 + 105 * wave + 4 * random.nextGaussian()));
    }

    private static void shape(
            PDPageContentStream out, List<PDSeparation> spots, Random random, float width, float height)
            throws IOException {
        float x = random.nextFloat() * width;
        float y = random.nextFloat() * height;
        float size = 4 + 40 * random.nextFloat() * random.nextFloat();
        int kind = random.nextInt(6);
        if (kind < 4) {
            PDSeparation ink = spots.get(kind);
            PDColor colour = new PDColor(new float[] {0.3f + 0.7f * random.nextFloat()}, ink);
            out.setNonStrokingColor(colour);
            out.setStrokingColor(colour);
        } else {
            float c = random.nextFloat();
            float k = random.nextFloat() * 0.5f;
            out.setNonStrokingColor(c, 1 - c, random.nextFloat(), k);
            out.setStrokingColor(c, 1 - c, 0f, k);
        }
        out.moveTo(x, y);
        out.curveTo(x + size, y, x + 2 * size, y + size, x + size, y + 2 * size);
        out.curveTo(x, y + 2 * size, x - size, y + size, x, y);
        out.closePath();
        if (random.nextInt(3) == 0) {
            out.setLineWidth(0.3f + 2 * random.nextFloat());
            out.stroke();
        } else {
            out.fill();
        }
    }
}
