package inkground.artwork.image;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;

/** Writes small pictures by hand. */
final class Pictures {
    private Pictures() {}

    /** A PNG under construction. */
    static final class Png {
        private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        private final DataOutputStream out = new DataOutputStream(bytes);

        Png(int width, int height, int bits, int type, boolean interlaced) throws IOException {
            out.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'});
            ByteArrayOutputStream header = new ByteArrayOutputStream();
            DataOutputStream h = new DataOutputStream(header);
            h.writeInt(width);
            h.writeInt(height);
            h.write(new byte[] {(byte) bits, (byte) type, 0, 0, (byte) (interlaced ? 1 : 0)});
            chunk("IHDR", header.toByteArray());
        }

        Png chunk(String tag, byte[] body) throws IOException {
            byte[] name = tag.getBytes(StandardCharsets.US_ASCII);
            CRC32 crc = new CRC32();
            crc.update(name);
            crc.update(body);
            out.writeInt(body.length);
            out.write(name);
            out.write(body);
            out.writeInt((int) crc.getValue());
            return this;
        }

        /** @param rows each with its filter byte first */
        Png data(byte[] rows) throws IOException {
            ByteArrayOutputStream packed = new ByteArrayOutputStream();
            try (DeflaterOutputStream zip = new DeflaterOutputStream(packed)) {
                zip.write(rows);
            }
            return chunk("IDAT", packed.toByteArray());
        }

        byte[] end() throws IOException {
            chunk("IEND", new byte[0]);
            return bytes.toByteArray();
        }
    }

    /** A big-endian TIFF under construction. */
    static final class Tiff {
        private final List<long[]> fields = new ArrayList<>();
        private final ByteArrayOutputStream values = new ByteArrayOutputStream();
        private final byte[] strip;
        private static final int VALUES_AT = 8 + 2 + 30 * 12 + 4;

        /** @param strip all image data, in one strip after the values */
        Tiff(int width, int height, int bits, int samples, int photometric, byte[] strip) {
            this.strip = strip;
            number(256, width).number(257, height).numbers(258, bits, samples).number(262, photometric);
            number(277, samples).number(278, height).number(279, strip.length);
        }

        Tiff number(int tag, long value) {
            fields.add(new long[] {tag, 4, 1, value});
            return this;
        }

        private Tiff numbers(int tag, int value, int times) {
            if (times == 1) {
                return number(tag, value);
            }
            byte[] all = new byte[4 * times];
            for (int i = 0; i < times; i++) {
                all[4 * i + 3] = (byte) value;
            }
            return bytes(tag, 4, times, all);
        }

        Tiff text(int tag, String text) {
            byte[] all = text.getBytes(StandardCharsets.UTF_8);
            return bytes(tag, 2, all.length, all);
        }

        Tiff data(int tag, byte[] all) {
            return bytes(tag, 7, all.length, all);
        }

        Tiff ratio(int tag, int value) {
            return bytes(tag, 5, 1, new byte[] {
                (byte) (value >> 24), (byte) (value >> 16), (byte) (value >> 8), (byte) value, 0, 0, 0, 1
            });
        }

        private Tiff bytes(int tag, int type, int count, byte[] all) {
            byte[] padded = all.length < 5 ? java.util.Arrays.copyOf(all, 6) : all;
            fields.add(new long[] {tag, type, count, VALUES_AT + values.size()});
            values.writeBytes(padded);
            return this;
        }

        byte[] end(boolean loop) throws IOException {
            int stripAt = VALUES_AT + values.size();
            number(273, stripAt);
            fields.sort((a, b) -> Long.compare(a[0], b[0]));
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            DataOutputStream out = new DataOutputStream(bytes);
            out.write(new byte[] {'M', 'M', 0, 42, 0, 0, 0, 8});
            out.writeShort(fields.size());
            for (long[] field : fields) {
                out.writeShort((int) field[0]);
                out.writeShort((int) field[1]);
                out.writeInt((int) field[2]);
                out.writeInt((int) field[3]);
            }
            out.writeInt(loop ? 8 : 0);
            out.write(new byte[VALUES_AT - out.size()]);
            out.write(values.toByteArray());
            out.write(strip);
            return bytes.toByteArray();
        }
    }

    static byte[] bytes(int... values) {
        byte[] out = new byte[values.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = (byte) values[i];
        }
        return out;
    }
}
