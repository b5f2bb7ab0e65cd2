package inkground.artwork.image;

import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.imageio.stream.ImageInputStream;

/** One image file directory of TIFF 6.0 or BigTIFF: the fields of one picture. Values are read when asked for at opening. */
final class TiffDirectory {
    static final int SUBFILE_TYPE = 254;
    static final int WIDTH = 256;
    static final int HEIGHT = 257;
    static final int BITS = 258;
    static final int COMPRESSION = 259;
    static final int PHOTOMETRIC = 262;
    static final int FILL_ORDER = 266;
    static final int STRIP_OFFSETS = 273;
    static final int ORIENTATION = 274;
    static final int SAMPLES = 277;
    static final int ROWS_PER_STRIP = 278;
    static final int STRIP_BYTES = 279;
    static final int X_RESOLUTION = 282;
    static final int Y_RESOLUTION = 283;
    static final int PLANAR = 284;
    static final int RESOLUTION_UNIT = 296;
    static final int PREDICTOR = 317;
    static final int COLOR_MAP = 320;
    static final int TILE_WIDTH = 322;
    static final int TILE_HEIGHT = 323;
    static final int TILE_OFFSETS = 324;
    static final int TILE_BYTES = 325;
    /** Directories of pictures that belong to this one: smaller copies, or layers. */
    static final int SUB_DIRECTORIES = 330;

    static final int INK_SET = 332;
    static final int INK_NAMES = 333;
    static final int EXTRA_SAMPLES = 338;
    static final int SAMPLE_FORMAT = 339;
    static final int PHOTO_RESOURCES = 34377;
    static final int ICC_PROFILE = 34675;
    /** ImageSourceData: the layers that the picture was made of, beside it. Large, and never read. */
    static final int LAYERS = 37724;

    private static final int MAX_FIELDS = 4096;
    private static final long MAX_FIELD_BYTES = 32L << 20;
    /** Of all directories: the values of a few large fields, named again and again, would fill any memory. */
    private static final long MAX_VALUE_BYTES = 128L << 20;

    private static final int BYTES_OF_A_NUMBER = 8;
    // sizes of BYTE ASCII SHORT LONG RATIONAL SBYTE UNDEFINED SSHORT SLONG SRATIONAL FLOAT DOUBLE IFD, LONG8 SLONG8
    // IFD8
    private static final int[] SIZE = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4, 0, 0, 8, 8, 8};

    private record Field(int type, double[] numbers, byte[] bytes) {}

    /** A directory names one before it as the next. */
    static final class Loop extends IOException {
        private static final long serialVersionUID = 1L;
    }

    private final Map<Integer, Field> fields = new HashMap<>();
    private boolean layered;
    private long valueBytes;

    /**
     * Reads the chain of directories.
     *
     * @param most directories to read
     * @return at least one
     * @throws Loop if the chain comes back to a directory that it has passed
     */
    static List<TiffDirectory> readAll(ImageInputStream in, int most) throws IOException {
        in.seek(0);
        int mark = in.readUnsignedShort();
        in.setByteOrder(mark == 0x4949 ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        boolean big = in.readUnsignedShort() == 43;
        if (big) {
            in.readInt();
        }
        List<TiffDirectory> all = new ArrayList<>();
        Set<Long> seen = new HashSet<>();
        long at = big ? in.readLong() : in.readUnsignedInt();
        long bytes = 0;
        while (at > 0 && at < in.length() && all.size() < most) {
            if (!seen.add(at)) {
                throw new Loop();
            }
            TiffDirectory directory = new TiffDirectory();
            directory.valueBytes = bytes;
            at = directory.read(in, at, big);
            bytes = directory.valueBytes;
            all.add(directory);
        }
        if (all.isEmpty()) {
            throw new IOException("no directory");
        }
        return all;
    }

    private long read(ImageInputStream in, long at, boolean big) throws IOException {
        in.seek(at);
        long count = big ? in.readLong() : in.readUnsignedShort();
        if (count < 0 || count > MAX_FIELDS) {
            throw new IOException("a directory of " + count + " fields");
        }
        long entry = in.getStreamPosition();
        int entryBytes = big ? 20 : 12;
        for (long i = 0; i < count; i++) {
            in.seek(entry + i * entryBytes);
            readField(in, big);
        }
        in.seek(entry + count * entryBytes);
        if (in.getStreamPosition() + (big ? 8 : 4) > in.length()) {
            return 0;
        }
        return big ? in.readLong() : in.readUnsignedInt();
    }

    private void readField(ImageInputStream in, boolean big) throws IOException {
        int tag = in.readUnsignedShort();
        int type = in.readUnsignedShort();
        long count = big ? in.readLong() : in.readUnsignedInt();
        if (tag == LAYERS) {
            layered = true;
            return;
        }
        int size = type < SIZE.length ? SIZE[type] : 0;
        if (size == 0 || count < 1 || count > MAX_FIELD_BYTES / size) {
            return;
        }
        long bytes = count * size;
        if (bytes > (big ? 8 : 4)) {
            long at = big ? in.readLong() : in.readUnsignedInt();
            if (at < 0 || at > in.length() - bytes) {
                return;
            }
            in.seek(at);
        }
        valueBytes += size == 1 ? count : count * BYTES_OF_A_NUMBER;
        if (valueBytes > MAX_VALUE_BYTES) {
            throw new IOException("fields of more than " + MAX_VALUE_BYTES + " bytes");
        }
        if (size == 1) {
            byte[] data = new byte[(int) count];
            in.readFully(data);
            fields.put(tag, new Field(type, null, data));
            return;
        }
        double[] values = new double[(int) count];
        for (int i = 0; i < values.length; i++) {
            values[i] = value(in, type);
        }
        fields.put(tag, new Field(type, values, null));
    }

    private static double value(ImageInputStream in, int type) throws IOException {
        return switch (type) {
            case 3 -> in.readUnsignedShort();
            case 8 -> in.readShort();
            case 9 -> in.readInt();
            case 5 -> ratio(in.readUnsignedInt(), in.readUnsignedInt());
            case 10 -> ratio(in.readInt(), in.readInt());
            case 11 -> in.readFloat();
            case 12 -> in.readDouble();
            case 16, 17, 18 -> in.readLong();
            default -> in.readUnsignedInt();
        };
    }

    private static double ratio(long above, long below) {
        return below == 0 ? 0 : (double) above / below;
    }

    /** @return whether the layers of the picture lie beside it */
    boolean isLayered() {
        return layered;
    }

    /** @return the values of a field, or null */
    double[] numbers(int tag) {
        Field field = fields.get(tag);
        if (field == null) {
            return null;
        }
        if (field.numbers != null) {
            return field.numbers;
        }
        double[] out = new double[field.bytes.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = field.bytes[i] & 255;
        }
        return out;
    }

    /** @return the first value of a field, or what to take without it */
    int number(int tag, int otherwise) {
        double[] values = numbers(tag);
        return values == null ? otherwise : (int) values[0];
    }

    /** @return the bytes of a field of bytes, or null */
    byte[] bytes(int tag) {
        Field field = fields.get(tag);
        return field == null ? null : field.bytes;
    }

    /** @return texts separated by zero bytes */
    List<String> texts(int tag) {
        byte[] data = bytes(tag);
        return data == null ? List.of() : List.of(new String(data, StandardCharsets.UTF_8).split("\0"));
    }

    /** @return samples per inch across and down; 0 where unsaid */
    double[] dpi() {
        int unit = number(RESOLUTION_UNIT, 2);
        double factor = unit == 2 ? 1 : unit == 3 ? 2.54 : 0;
        double[] x = numbers(X_RESOLUTION);
        double[] y = numbers(Y_RESOLUTION);
        if (x == null || y == null) {
            return new double[] {0, 0};
        }
        return new double[] {x[0] * factor, y[0] * factor};
    }
}
