package inkground.colour;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.stream.IntStream;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;

/**
 * The process tints of {@value #NODES}³ sRGB colours under one print condition, computed once for all: a search for each would cost
 * seconds at every start. Nodes are evenly spaced in the encoded values; tints are kept in steps of 1/{@value #ONE}, a
 * sixteenth of an 8-bit step. Immutable.
 */
public final class SrgbGrid {
    /** Nodes on each edge. */
    public static final int NODES = 33;

    /** Stored value of a whole tint. */
    static final int ONE = 4080;

    private static final int CELLS = NODES * NODES * NODES;
    private static final int MAGIC = 0x494e4b31;

    private final short[] tints; // [ink * CELLS + node], red the slowest
    private final double blackY;

    private SrgbGrid(short[] tints, double blackY) {
        this.tints = tints;
        this.blackY = blackY;
    }

    /** @return the grid of a condition, every node searched for anew, on all processors */
    public static SrgbGrid compute(PrintCondition condition) {
        RgbToCmyk exact = new RgbToCmyk(condition, rgb -> Srgb.toLab(rgb[0], rgb[1], rgb[2]));
        short[] out = new short[4 * CELLS];
        IntStream.range(0, NODES).parallel().forEach(r -> {
            float[] cmyk = new float[4];
            for (int i = r * NODES * NODES; i < (r + 1) * NODES * NODES; i++) {
                exact.convert(coded(r), coded(i / NODES % NODES), coded(i % NODES), cmyk);
                for (int ink = 0; ink < 4; ink++) {
                    out[ink * CELLS + i] = (short) Math.round(cmyk[ink] * ONE);
                }
            }
        });
        return new SrgbGrid(out, exact.blackY());
    }

    private static float coded(int step) {
        return (float) step / (NODES - 1);
    }

    /** Writes the tints of one node, 0 to 1; the indices go from 0 to {@code NODES - 1}. */
    public void node(int r, int g, int b, float[] cmyk) {
        int at = (r * NODES + g) * NODES + b;
        for (int ink = 0; ink < 4; ink++) {
            cmyk[ink] = tints[ink * CELLS + at] / (float) ONE;
        }
    }

    /** @return light of the condition's darkest colour, Y by that of the paper */
    public double blackY() {
        return blackY;
    }

    /**
     * Writes the grid: every value less its forecast from the three neighbours below it, which leaves small numbers, low bytes
     * after high ones, deflated (RFC 1950).
     */
    void write(OutputStream file) throws IOException {
        byte[] packed = new byte[2 * tints.length];
        for (int i = 0; i < tints.length; i++) {
            int v = tints[i] - forecast(tints, i);
            int unsigned = v << 1 ^ v >> 31;
            packed[i] = (byte) (unsigned >> 8);
            packed[tints.length + i] = (byte) unsigned;
        }
        Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION);
        try (DataOutputStream out = new DataOutputStream(new DeflaterOutputStream(file, deflater))) {
            out.writeInt(MAGIC);
            out.writeDouble(blackY);
            out.write(packed);
        } finally {
            deflater.end();
        }
    }

    /** @throws IOException if the stream does not hold a grid */
    static SrgbGrid read(InputStream file) throws IOException {
        try (DataInputStream in = new DataInputStream(new InflaterInputStream(file))) {
            if (in.readInt() != MAGIC) {
                throw new IOException("not a grid of process tints");
            }
            double blackY = in.readDouble();
            byte[] packed = new byte[2 * 4 * CELLS];
            in.readFully(packed);
            short[] tints = new short[4 * CELLS];
            for (int i = 0; i < tints.length; i++) {
                int unsigned = (packed[i] & 255) << 8 | packed[tints.length + i] & 255;
                int v = unsigned >>> 1 ^ -(unsigned & 1);
                tints[i] = (short) (v + forecast(tints, i));
            }
            return new SrgbGrid(tints, blackY);
        }
    }

    // The plane through the neighbours one step down in green, in blue, and in both.
    private static int forecast(short[] tints, int i) {
        int g = i / NODES % NODES;
        int b = i % NODES;
        if (g > 0 && b > 0) {
            return tints[i - 1] + tints[i - NODES] - tints[i - NODES - 1];
        }
        return b > 0 ? tints[i - 1] : g > 0 ? tints[i - NODES] : i % CELLS > 0 ? tints[i - NODES * NODES] : 0;
    }
}
