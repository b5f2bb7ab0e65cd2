package inkground.demo;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.font.PDFont;

/**
 * Writes content stream operators of ISO 32000-2 annex A. Numbers are rounded to four decimals, so that the same drawing
 * always gives the same bytes. Lengths are in whatever unit the current transformation makes; the demo pages use mm.
 */
final class Content {
    private final StringBuilder out = new StringBuilder();

    /** @return the operators so far */
    byte[] bytes() {
        return out.toString().getBytes(StandardCharsets.US_ASCII);
    }

    Content save() {
        return op("q");
    }

    Content restore() {
        return op("Q");
    }

    Content transform(double a, double b, double c, double d, double e, double f) {
        return op("cm", a, b, c, d, e, f);
    }

    Content move(double x, double y) {
        return transform(1, 0, 0, 1, x, y);
    }

    Content cmyk(int c, int m, int y, int k) {
        return op("k", c / 100.0, m / 100.0, y / 100.0, k / 100.0);
    }

    Content strokeCmyk(int c, int m, int y, int k) {
        return op("K", c / 100.0, m / 100.0, y / 100.0, k / 100.0);
    }

    Content rgb(double r, double g, double b) {
        return op("rg", r, g, b);
    }

    /** Sets the fill to a tint of a separation. */
    Content spot(COSName space, double tint) {
        return name(space).op("cs").op("scn", tint);
    }

    /** Sets the stroke to a tint of a separation. */
    Content strokeSpot(COSName space, double tint) {
        return name(space).op("CS").op("SCN", tint);
    }

    Content state(COSName state) {
        return name(state).op("gs");
    }

    Content fill(Shape shape) {
        return path(shape).op("f");
    }

    Content fillEvenOdd(Shape shape) {
        return path(shape).op("f*");
    }

    Content stroke(Shape shape, double width) {
        return op("w", width).path(shape).op("S");
    }

    Content roundLines() {
        return op("J", 1).op("j", 1);
    }

    Content clip(Shape shape) {
        return path(shape).op("W").op("n");
    }

    Content shade(COSName shading) {
        return name(shading).op("sh");
    }

    Content image(COSName image, double x, double y, double width, double height) {
        return save().transform(width, 0, 0, height, x, y).name(image).op("Do").restore();
    }

    Content beginLayer(COSName properties) {
        out.append("/OC ");
        return name(properties).op("BDC");
    }

    Content endLayer() {
        return op("EMC");
    }

    /** Shows one line of type with its baseline starting at (x, y). */
    Content text(COSName resource, PDFont font, double size, double x, double y, String words) throws IOException {
        op("BT").name(resource).op("Tf", size).op("Td", x, y);
        out.append('<');
        for (byte b : font.encode(words)) {
            out.append(String.format("%02X", b & 255));
        }
        out.append("> Tj\n");
        return op("ET");
    }

    private Content path(Shape shape) {
        double[] p = new double[6];
        double x = 0;
        double y = 0;
        for (PathIterator i = shape.getPathIterator(new AffineTransform()); !i.isDone(); i.next()) {
            switch (i.currentSegment(p)) {
                case PathIterator.SEG_MOVETO -> op("m", p[0], p[1]);
                case PathIterator.SEG_LINETO -> op("l", p[0], p[1]);
                case PathIterator.SEG_QUADTO -> {
                    op(
                            "c",
                            (x + 2 * p[0]) / 3,
                            (y + 2 * p[1]) / 3,
                            (2 * p[0] + p[2]) / 3,
                            (2 * p[1] + p[3]) / 3,
                            p[2],
                            p[3]);
                    p[0] = p[2];
                    p[1] = p[3];
                }
                case PathIterator.SEG_CUBICTO -> {
                    op("c", p[0], p[1], p[2], p[3], p[4], p[5]);
                    p[0] = p[4];
                    p[1] = p[5];
                }
                default -> op("h");
            }
            x = p[0];
            y = p[1];
        }
        return this;
    }

    private Content name(COSName name) {
        out.append('/').append(name.getName()).append(' ');
        return this;
    }

    private Content op(String operator, double... operands) {
        for (double operand : operands) {
            BigDecimal rounded = BigDecimal.valueOf(operand).setScale(4, RoundingMode.HALF_EVEN);
            out.append(
                            rounded.signum() == 0
                                    ? "0"
                                    : rounded.stripTrailingZeros().toPlainString())
                    .append(' ');
        }
        out.append(operator).append('\n');
        return this;
    }
}
