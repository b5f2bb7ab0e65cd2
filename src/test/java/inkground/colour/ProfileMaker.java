package inkground.colour;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Writes ICC profiles of versions 2 and 4 after ICC.1, tag by tag. For profiles of our own invention. */
final class ProfileMaker {
    /** Values at the nodes of a table. */
    interface Node {
        /**
         * @param in coordinates, 0 to 1
         * @return outputs
         */
        double[] at(double[] in);
    }

    private final int version;
    private final String head; // class, colour space, connection space
    private final List<String> names = new ArrayList<>();
    private final List<byte[]> data = new ArrayList<>();

    /** @param head twelve characters: class, colour space, connection space */
    ProfileMaker(int version, String head) {
        this.version = version;
        this.head = head;
        if (version == 2) {
            tag("desc", description());
            tag("cprt", bytes("text\0\0\0\0CC0\0"));
        } else {
            tag("desc", localised("Regatta test profile"));
            tag("cprt", localised("CC0"));
        }
    }

    ProfileMaker tag(String name, byte[] bytes) {
        names.add(name);
        data.add(Arrays.copyOf(bytes, (bytes.length + 3) / 4 * 4));
        return this;
    }

    byte[] bytes() {
        int offset = 128 + 4 + 12 * names.size();
        int size = offset + data.stream().mapToInt(d -> d.length).sum();
        ByteBuffer out = ByteBuffer.allocate(size);
        out.putInt(0, size).putInt(8, version == 2 ? 0x02100000 : 0x04300000);
        out.put(12, bytes(head));
        out.putShort(24, (short) 2026).putShort(26, (short) 1).putShort(28, (short) 1);
        out.put(36, bytes("acsp"));
        out.putInt(68, 0xf6d6).putInt(72, 0x10000).putInt(76, 0xd32d);
        out.position(128).putInt(names.size());
        for (int i = 0; i < names.size(); i++) {
            out.put(bytes(names.get(i))).putInt(offset).putInt(data.get(i).length);
            offset += data.get(i).length;
        }
        data.forEach(out::put);
        return out.array();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    private static byte[] description() {
        byte[] words = bytes("Regatta test profile\0");
        return ByteBuffer.allocate(12 + words.length + 8 + 3 + 67)
                .put(bytes("desc\0\0\0\0"))
                .putInt(words.length)
                .put(words)
                .array();
    }

    private static byte[] localised(String text) {
        byte[] words = text.getBytes(StandardCharsets.UTF_16BE);
        return ByteBuffer.allocate(28 + words.length)
                .put(bytes("mluc\0\0\0\0"))
                .putInt(1)
                .putInt(12)
                .put(bytes("enGB"))
                .putInt(words.length)
                .putInt(28)
                .put(words)
                .array();
    }

    static byte[] xyz(double x, double y, double z) {
        ByteBuffer out = ByteBuffer.allocate(20).put(bytes("XYZ \0\0\0\0"));
        for (double v : new double[] {x, y, z}) {
            out.putInt(fixed(v));
        }
        return out.array();
    }

    private static int fixed(double v) {
        return (int) Math.round(v * 65536);
    }

    /** A curve of one exponent, version 2: 8.8 fixed. */
    static byte[] gamma(double exponent) {
        return ByteBuffer.allocate(14)
                .put(bytes("curv\0\0\0\0"))
                .putInt(1)
                .putShort((short) Math.round(exponent * 256))
                .array();
    }

    /** A curve of sampled values, 0 to 1. */
    static byte[] sampled(double... values) {
        ByteBuffer out = ByteBuffer.allocate(12 + 2 * values.length)
                .put(bytes("curv\0\0\0\0"))
                .putInt(values.length);
        for (double v : values) {
            out.putShort((short) Math.round(65535 * v));
        }
        return out.array();
    }

    /** A parametric curve of type 3, version 4: (a x + b)^g from d on, c x below. */
    static byte[] parametric(double g, double a, double b, double c, double d) {
        ByteBuffer out = ByteBuffer.allocate(32)
                .put(bytes("para\0\0\0\0"))
                .putShort((short) 3)
                .putShort((short) 0);
        for (double v : new double[] {g, a, b, c, d}) {
            out.putInt(fixed(v));
        }
        return out.array();
    }

    private static double[][] nodes(int inputs, int nodes, Node node) {
        int count = (int) Math.round(Math.pow(nodes, inputs));
        double[][] out = new double[count][];
        for (int i = 0; i < count; i++) {
            double[] in = new double[inputs];
            int rest = i;
            for (int k = inputs - 1; k >= 0; k--) {
                in[k] = rest % nodes / (double) (nodes - 1);
                rest /= nodes;
            }
            out[i] = node.at(in);
        }
        return out;
    }

    private static void put16(ByteArrayOutputStream out, double value) {
        int word = (int) Math.round(Math.max(0, Math.min(65535, value)));
        out.write(word >> 8);
        out.write(word);
    }

    /** A table of version 2 with straight curves; outputs and inputs in 65535ths. */
    static byte[] lut16(int inputs, int outputs, int nodes, Node node) {
        ByteBuffer head = ByteBuffer.allocate(52).put(bytes("mft2\0\0\0\0"));
        head.put((byte) inputs).put((byte) outputs).put((byte) nodes).put((byte) 0);
        for (int i = 0; i < 9; i++) {
            head.putInt(i % 4 == 0 ? 0x10000 : 0);
        }
        head.putShort((short) 2).putShort((short) 2);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(head.array());
        for (int i = 0; i < inputs; i++) {
            out.writeBytes(new byte[] {0, 0, -1, -1});
        }
        for (double[] values : nodes(inputs, nodes, node)) {
            for (double v : values) {
                put16(out, v * 65535);
            }
        }
        for (int i = 0; i < outputs; i++) {
            out.writeBytes(new byte[] {0, 0, -1, -1});
        }
        return out.toByteArray();
    }

    /** A table of version 4, from device ({@code mAB }) or to it ({@code mBA }), with straight curves. */
    static byte[] lutAtoB(String type, int inputs, int outputs, int nodes, Node node) {
        boolean fromDevice = type.equals("mAB ");
        int device = fromDevice ? inputs : outputs;
        int pcsCurves = 32;
        int deviceCurves = pcsCurves + 3 * 12;
        int table = deviceCurves + device * 12;
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(ByteBuffer.allocate(32)
                .put(bytes(type + "\0\0\0\0"))
                .put((byte) inputs)
                .put((byte) outputs)
                .putShort((short) 0)
                .putInt(pcsCurves)
                .putInt(0)
                .putInt(0)
                .putInt(table)
                .putInt(deviceCurves)
                .array());
        for (int i = 0; i < 3 + device; i++) {
            out.writeBytes(bytes("curv\0\0\0\0\0\0\0\0")); // a count of 0 is the identity
        }
        byte[] grid = new byte[20];
        Arrays.fill(grid, 0, inputs, (byte) nodes);
        grid[16] = 2;
        out.writeBytes(grid);
        for (double[] values : nodes(inputs, nodes, node)) {
            for (double v : values) {
                put16(out, v * 65535);
            }
        }
        return out.toByteArray();
    }
}
