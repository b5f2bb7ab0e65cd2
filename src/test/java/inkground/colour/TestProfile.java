package inkground.colour;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * A CMYK output profile of our own invention, version 2, whose tables differ between the intents by more than a thing that reads the
 * wrong one could hide, on a yellowish paper. Written after ICC.1: lut16 tables with Lab as the connection space.
 */
public final class TestProfile {
    private static final int TINT_NODES = 5;
    private static final int LAB_NODES = 9;

    private TestProfile() {}

    /** @param args the file to write, for making the references */
    public static void main(String[] args) throws java.io.IOException {
        java.nio.file.Files.write(java.nio.file.Path.of(args[0]), bytes());
    }

    /** @return the profile */
    public static byte[] bytes() {
        List<byte[]> data = new ArrayList<>();
        List<String> names = new ArrayList<>();
        add(names, data, "desc", description());
        add(names, data, "cprt", text("text", "CC0"));
        add(names, data, "wtpt", xyz(0.86, 0.89, 0.66));
        for (int intent = 0; intent < 3; intent++) {
            add(names, data, "A2B" + intent, toLab(intent));
            add(names, data, "B2A" + intent, fromLab(intent));
        }
        return assemble(names, data);
    }

    private static void add(List<String> names, List<byte[]> data, String name, byte[] bytes) {
        names.add(name);
        data.add(java.util.Arrays.copyOf(bytes, (bytes.length + 3) / 4 * 4));
    }

    private static byte[] assemble(List<String> names, List<byte[]> data) {
        int offset = 128 + 4 + 12 * names.size();
        int size = offset + data.stream().mapToInt(d -> d.length).sum();
        ByteBuffer out = ByteBuffer.allocate(size);
        out.putInt(0, size).putInt(8, 0x02100000);
        out.put(12, "prtrCMYKLab ".getBytes(StandardCharsets.US_ASCII));
        out.putShort(24, (short) 2026).putShort(26, (short) 1).putShort(28, (short) 1);
        out.put(36, "acsp".getBytes(StandardCharsets.US_ASCII));
        out.putInt(68, 0xf6d6).putInt(72, 0x10000).putInt(76, 0xd32d);
        out.position(128).putInt(names.size());
        for (int i = 0; i < names.size(); i++) {
            out.put(names.get(i).getBytes(StandardCharsets.US_ASCII));
            out.putInt(offset).putInt(data.get(i).length);
            offset += data.get(i).length;
        }
        data.forEach(out::put);
        return out.array();
    }

    private static byte[] text(String type, String text) {
        return (type + "\0\0\0\0" + text + "\0").getBytes(StandardCharsets.US_ASCII);
    }

    private static byte[] description() {
        byte[] words = "Regatta test press\0".getBytes(StandardCharsets.US_ASCII);
        ByteBuffer out = ByteBuffer.allocate(12 + words.length + 8 + 3 + 67);
        out.put("desc\0\0\0\0".getBytes(StandardCharsets.US_ASCII))
                .putInt(words.length)
                .put(words);
        return out.array();
    }

    private static byte[] xyz(double x, double y, double z) {
        ByteBuffer out = ByteBuffer.allocate(20);
        out.put("XYZ \0\0\0\0".getBytes(StandardCharsets.US_ASCII));
        for (double v : new double[] {x, y, z}) {
            out.putInt((int) Math.round(v * 65536));
        }
        return out.array();
    }

    /** Writes a lut16 of these outputs at every node, first input slowest; curves are straight. */
    private static byte[] lut(int inputs, int outputs, int nodes, double[][] values) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ByteBuffer head = ByteBuffer.allocate(52);
        head.put("mft2\0\0\0\0".getBytes(StandardCharsets.US_ASCII));
        head.put((byte) inputs).put((byte) outputs).put((byte) nodes).put((byte) 0);
        for (int i = 0; i < 9; i++) {
            head.putInt(i % 4 == 0 ? 0x10000 : 0);
        }
        head.putShort((short) 2).putShort((short) 2);
        bytes.writeBytes(head.array());
        for (int i = 0; i < inputs; i++) {
            bytes.writeBytes(new byte[] {0, 0, -1, -1});
        }
        for (double[] node : values) {
            for (double v : node) {
                int word = (int) Math.round(Math.max(0, Math.min(65535, v)));
                bytes.write(word >> 8);
                bytes.write(word);
            }
        }
        for (int i = 0; i < outputs; i++) {
            bytes.writeBytes(new byte[] {0, 0, -1, -1});
        }
        return bytes.toByteArray();
    }

    // Lab of version 2: L* 100 is 65280, a* and b* 0 are 32768 with 256 a unit.
    private static byte[] toLab(int intent) {
        double[][] nodes = new double[TINT_NODES * TINT_NODES * TINT_NODES * TINT_NODES][];
        for (int i = 0; i < nodes.length; i++) {
            double last = TINT_NODES - 1;
            double c = i / 125 / last;
            double m = i / 25 % 5 / last;
            double y = i / 5 % 5 / last;
            double k = i % 5 / last;
            double light = (1 - 0.45 * c) * (1 - 0.5 * m) * (1 - 0.08 * y) * (1 - 0.85 * k);
            double left = 1 - 0.8 * k;
            double L = 100 * light;
            double a = (-38 * c + 74 * m - 6 * y) * left;
            double b = (-48 * c - 4 * m + 90 * y) * left;
            if (intent == 0) {
                L = 6 + 0.94 * L;
                a *= 0.9;
                b *= 0.9;
            } else if (intent == 2) {
                a *= 1.15;
                b *= 1.15;
            }
            nodes[i] = new double[] {L * 652.8, 32768 + 256 * a, 32768 + 256 * b};
        }
        return lut(4, 3, TINT_NODES, nodes);
    }

    private static byte[] fromLab(int intent) {
        double[][] nodes = new double[LAB_NODES * LAB_NODES * LAB_NODES][];
        for (int i = 0; i < nodes.length; i++) {
            double step = 65535.0 / (LAB_NODES - 1);
            double L = i / 81 * step / 652.8;
            double a = (i / 9 % 9 * step - 32768) / 256;
            double b = (i % 9 * step - 32768) / 256;
            double strength = intent == 0 ? 0.85 : intent == 1 ? 1 : 1.2;
            double dark = (100 - L) / 100 * (intent == 0 ? 0.9 : 1);
            nodes[i] = new double[] {
                65535 * (0.6 * dark - strength * (a + b) / 200),
                65535 * (0.5 * dark + strength * a / 130),
                65535 * (0.5 * dark + strength * b / 130),
                65535 * dark * dark
            };
        }
        return lut(3, 4, LAB_NODES, nodes);
    }
}
