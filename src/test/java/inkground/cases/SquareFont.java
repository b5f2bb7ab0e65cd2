package inkground.cases;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/**
 * A TrueType font (ISO/IEC 14496-22) whose glyphs are rectangles of its em of 1000: 0 nothing, 1 the whole em, 2 its left
 * half, 3 its lower half. Every advance width is 1000.
 */
final class SquareFont {
    private static final int[][] GLYPHS = {null, {1000, 1000}, {500, 1000}, {1000, 500}};
    private static final int TABLE_ENTRY = 16;
    private static final int HEADER = 12;

    private SquareFont() {}

    /** Writes a table. */
    private interface Table {
        void write(DataOutputStream out) throws IOException;
    }

    static byte[] bytes() {
        try {
            byte[] glyf = table(SquareFont::glyf);
            int each = glyf.length / (GLYPHS.length - 1);
            String[] names = {"glyf", "head", "hhea", "hmtx", "loca", "maxp"};
            byte[][] tables = {
                glyf,
                table(SquareFont::head),
                table(SquareFont::hhea),
                table(out -> shorts(out, 1000, 0, 1000, 0, 1000, 0, 1000, 0)),
                table(out -> shorts(out, 0, 0, each / 2, each, 3 * each / 2)), // halved offsets; glyph 0 is empty
                table(SquareFont::maxp)
            };
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            DataOutputStream out = new DataOutputStream(bytes);
            out.writeInt(0x00010000);
            shorts(out, names.length, 64, 2, 32);
            int offset = HEADER + names.length * TABLE_ENTRY;
            for (int i = 0; i < names.length; i++) {
                out.write(names[i].getBytes(StandardCharsets.US_ASCII));
                out.writeInt(0); // checksums are not checked by anyone
                out.writeInt(offset);
                out.writeInt(tables[i].length);
                offset += (tables[i].length + 3) / 4 * 4;
            }
            for (byte[] table : tables) {
                out.write(table);
                out.write(new byte[(4 - table.length % 4) % 4]);
            }
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] table(Table table) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        table.write(new DataOutputStream(bytes));
        return bytes.toByteArray();
    }

    private static void shorts(DataOutputStream out, int... values) throws IOException {
        for (int value : values) {
            out.writeShort(value);
        }
    }

    private static void glyf(DataOutputStream out) throws IOException {
        for (int[] size : GLYPHS) {
            if (size != null) {
                int x = size[0];
                int y = size[1];
                shorts(out, 1, 0, 0, x, y, 3, 0); // one contour in its box, which ends at point 3; no instructions
                out.write(new byte[] {1, 1, 1, 1}); // on the curve, coordinates as words
                shorts(out, 0, 0, x, 0); // steps: from the origin up, right, down
                shorts(out, 0, y, 0, -y);
            }
        }
    }

    private static void head(DataOutputStream out) throws IOException {
        out.writeInt(0x00010000);
        out.writeInt(0x00010000);
        out.writeInt(0);
        out.writeInt(0x5F0F3CF5);
        shorts(out, 0, 1000);
        out.writeLong(0);
        out.writeLong(0);
        shorts(out, 0, 0, 1000, 1000, 0, 8, 2, 0, 0);
    }

    private static void hhea(DataOutputStream out) throws IOException {
        out.writeInt(0x00010000);
        shorts(out, 1000, 0, 0, 1000, 0, 0, 1000, 1, 0, 0, 0, 0, 0, 0, 0, GLYPHS.length);
    }

    private static void maxp(DataOutputStream out) throws IOException {
        out.writeInt(0x00010000);
        shorts(out, GLYPHS.length, 4, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0);
    }
}
