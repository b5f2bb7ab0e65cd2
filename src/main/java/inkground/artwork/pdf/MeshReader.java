package inkground.artwork.pdf;

import inkground.artwork.Paint;
import inkground.geometry.Matrix;
import java.io.IOException;
import java.util.Arrays;
import org.apache.pdfbox.cos.COSStream;

/** Reads the data of mesh shadings, types 4 to 7 (ISO 32000-2 §8.7.4.5.5 to 8), into triangles. */
final class MeshReader {
    private static final int MAX_DATA_BYTES = 256 << 20;
    /** Largest number of floats kept for one mesh: 240 MB. */
    private static final int MAX_FLOATS = 60_000_000;

    private final COSStream stream;
    private final boolean patches;
    private final int values;
    private final int coordinateBits;
    private final int valueBits;
    private final int flagBits;
    private final double[] decode;
    private final int dataBytes;
    private final Bits data;
    private final int perCorner;
    private float[] out = new float[1024];
    private int used;

    /** @param values number of values at a corner: components, or one parameter */
    MeshReader(COSStream stream, int type, int values) throws IOException {
        this.stream = stream;
        this.patches = type >= 6;
        this.values = values;
        this.perCorner = 2 + values;
        this.coordinateBits = bits("BitsPerCoordinate");
        this.valueBits = bits("BitsPerComponent");
        this.flagBits = type == 5 ? 0 : bits("BitsPerFlag");
        this.decode = Cos.required(stream, "Decode", 4 + 2 * values);
        byte[] bytes = StreamData.all(stream, MAX_DATA_BYTES);
        this.dataBytes = bytes.length;
        this.data = new Bits(bytes);
    }

    private int bits(String key) throws IOException {
        int bits = stream.getInt(Cos.name(key), 0);
        if (bits < 1 || bits > 32) {
            throw new IOException("a mesh shading with " + bits + " for " + key);
        }
        return bits;
    }

    /** Type 4: each vertex says which edge of the last triangle it continues. */
    Paint.Triangles freeTriangles() throws IOException {
        float[] a = null;
        float[] b = null;
        float[] c = null;
        while (data.has(flagBits + 2L * coordinateBits + (long) values * valueBits)) {
            int flag = (int) data.read(flagBits) & 3;
            float[] vertex = vertex();
            if (flag == 0 || c == null) {
                if (!data.has(2L * (flagBits + 2L * coordinateBits + (long) values * valueBits))) {
                    break;
                }
                a = vertex;
                data.read(flagBits);
                b = vertex();
                data.read(flagBits);
                c = vertex();
            } else {
                a = flag == 1 ? b : a;
                b = c;
                c = vertex;
            }
            triangle(a, b, c);
        }
        return result();
    }

    /** Type 5: rows of vertices. */
    Paint.Triangles lattice() throws IOException {
        int columns = stream.getInt(Cos.name("VerticesPerRow"), 0);
        long vertexBits = 2L * coordinateBits + (long) values * valueBits;
        if (columns < 2 || columns * vertexBits > dataBytes * 8L) {
            throw new IOException("a lattice shading with " + columns + " vertices a row");
        }
        float[][] last = null;
        while (data.has(columns * vertexBits)) {
            float[][] row = new float[columns][];
            for (int i = 0; i < columns; i++) {
                row[i] = vertex();
            }
            for (int i = 1; last != null && i < columns; i++) {
                triangle(last[i - 1], last[i], row[i - 1]);
                triangle(last[i], row[i - 1], row[i]);
            }
            last = row;
        }
        return result();
    }

    /** Types 6 and 7: patches, each cut into a grid fine enough for its size on the page. */
    Paint.Triangles patches(Matrix toPage) throws IOException {
        int points = stream.getInt(Cos.name("ShadingType"), 6) == 6 ? 12 : 16;
        double[][] p = null;
        float[][] c = null;
        while (data.has(flagBits)) {
            int flag = (int) data.read(flagBits) & 3;
            int kept = flag == 0 || p == null ? 0 : 4;
            if (!data.has((points - kept) * 2L * coordinateBits + (kept == 0 ? 4L : 2L) * values * valueBits)) {
                break;
            }
            double[][] next = new double[16][];
            float[][] colours = new float[4][];
            for (int i = 0; i < kept; i++) {
                next[i] = p[(3 * flag + i) % 12];
            }
            for (int i = 0; i < kept / 2; i++) {
                colours[i] = c[(flag + i) % 4];
            }
            for (int i = kept; i < points; i++) {
                next[i] = point();
            }
            for (int i = kept / 2; i < 4; i++) {
                colours[i] = colour();
            }
            data.align();
            p = next;
            c = colours;
            cut(Patch.of(p, points == 12), c, toPage);
        }
        return result();
    }

    private void cut(Patch patch, float[][] colours, Matrix toPage) throws IOException {
        int n = patch.steps(toPage);
        float[][] last = null;
        for (int i = 0; i <= n; i++) {
            float[][] row = new float[n + 1][];
            for (int j = 0; j <= n; j++) {
                row[j] = patch.corner((double) i / n, (double) j / n, colours, values);
            }
            for (int j = 1; last != null && j <= n; j++) {
                triangle(last[j - 1], last[j], row[j - 1]);
                triangle(last[j], row[j - 1], row[j]);
            }
            last = row;
        }
    }

    private void triangle(float[] a, float[] b, float[] c) throws IOException {
        int need = used + 3 * perCorner;
        if (need > MAX_FLOATS) {
            throw new IOException("a mesh shading of more than " + MAX_FLOATS / 3 / perCorner + " triangles");
        }
        if (need > out.length) {
            out = Arrays.copyOf(out, Math.min(MAX_FLOATS, Math.max(need, out.length * 2)));
        }
        for (float[] corner : new float[][] {a, b, c}) {
            System.arraycopy(corner, 0, out, used, perCorner);
            used += perCorner;
        }
    }

    private Paint.Triangles result() {
        return new Paint.Triangles(Arrays.copyOf(out, used), perCorner);
    }

    private float[] vertex() {
        double[] p = point();
        float[] c = colour();
        float[] corner = new float[perCorner];
        corner[0] = (float) p[0];
        corner[1] = (float) p[1];
        System.arraycopy(c, 0, corner, 2, values);
        if (!patches) {
            data.align(); // each vertex starts on a byte boundary
        }
        return corner;
    }

    private double[] point() {
        return new double[] {decoded(coordinateBits, 0), decoded(coordinateBits, 1)};
    }

    private float[] colour() {
        float[] c = new float[values];
        for (int i = 0; i < values; i++) {
            c[i] = (float) decoded(valueBits, 2 + i);
        }
        return c;
    }

    private double decoded(int bits, int entry) {
        double unit = data.read(bits) / (double) ((1L << bits) - 1);
        return decode[2 * entry] + unit * (decode[2 * entry + 1] - decode[2 * entry]);
    }
}
