package inkground.artwork.image;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource.Pixels;
import inkground.base.Refusal;
import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.InflaterInputStream;
import javax.imageio.stream.ImageInputStream;

/** Reads PNG: ISO/IEC 15948, with cICP, iCCP, sRGB, gAMA, cHRM, pHYs, tRNS and eXIf. Samples are never colour-converted. */
final class PngFile {
    private static final int SIGNATURE_BYTES = 8;
    private static final int GREY = 0;
    private static final int PALETTE = 3;
    private static final int MAX_CHUNK = 32 << 20;
    private static final double METRES_PER_INCH = 0.0254;
    /** The gamma of 1 / 2.2 that sRGB files state, and how far a file's may be off: gAMA has five digits. */
    private static final int SRGB_GAMMA = 45455;

    private static final int GAMMA_NEAR = 500;
    private static final double[] SRGB_CHROMATICITIES = {0.3127, 0.329, 0.64, 0.33, 0.3, 0.6, 0.15, 0.06};

    private final String name;
    private final Input input;
    private final List<Frame.Note> notes = new ArrayList<>();
    private int width;
    private int height;
    private int bits;
    private int type;
    private boolean interlaced;
    private byte[] palette;
    private byte[] transparency;
    private byte[] profile;
    private byte[] codePoints;
    private boolean srgb;
    private int gamma;
    private double[] chromaticities;
    private double dpiX;
    private double dpiY;
    private Orientation orientation = Orientation.UPRIGHT;
    /** Where the chunks of image data lie: offset and length in turn. */
    private final List<long[]> data = new ArrayList<>();

    private PngFile(Input input, String name) {
        this.input = input;
        this.name = name;
    }

    static List<Frame> read(Input input, String name) throws IOException, Refusal {
        PngFile png = new PngFile(input, name);
        png.readChunks();
        return List.of(png.frame());
    }

    private void readChunks() throws IOException, Refusal {
        try (ImageInputStream in = input.open()) {
            long at = SIGNATURE_BYTES;
            boolean ended = false;
            while (!ended && at + 12 <= in.length()) {
                in.seek(at);
                long length = in.readUnsignedInt();
                int tag = in.readInt();
                long start = at + 8;
                if (tag == tag("IDAT")) {
                    data.add(new long[] {start, Math.min(length, in.length() - start)});
                } else if (tag == tag("IEND")) {
                    ended = true;
                } else if (length <= MAX_CHUNK && start + length <= in.length() && wanted(tag)) {
                    byte[] body = new byte[(int) length];
                    in.readFully(body);
                    chunk(tag, ByteBuffer.wrap(body));
                }
                at = start + length + 4;
            }
        }
        if (width == 0 || data.isEmpty() || type == PALETTE && palette == null) {
            throw new IOException("a PNG without a header, a palette or data");
        }
    }

    private static int tag(String name) {
        return name.charAt(0) << 24 | name.charAt(1) << 16 | name.charAt(2) << 8 | name.charAt(3);
    }

    private static boolean wanted(int tag) {
        return List.of("IHDR", "PLTE", "tRNS", "iCCP", "cICP", "sRGB", "gAMA", "cHRM", "pHYs", "eXIf").stream()
                .anyMatch(n -> tag(n) == tag);
    }

    private void chunk(int tag, ByteBuffer in) throws IOException, Refusal {
        if (tag == tag("IHDR")) {
            header(in);
        } else if (tag == tag("PLTE")) {
            palette = in.array();
        } else if (tag == tag("tRNS")) {
            transparency = in.array();
        } else if (tag == tag("iCCP")) {
            profile = inflateProfile(in.array());
        } else if (tag == tag("cICP") && in.remaining() >= 4) {
            codePoints = in.array();
        } else if (tag == tag("sRGB")) {
            srgb = true;
        } else if (tag == tag("gAMA") && in.remaining() >= 4) {
            gamma = in.getInt();
        } else if (tag == tag("cHRM") && in.remaining() >= 32) {
            chromaticities = new double[8];
            for (int i = 0; i < 8; i++) {
                chromaticities[i] = in.getInt() / 100_000.0;
            }
        } else if (tag == tag("pHYs") && in.remaining() >= 9) {
            double perMetreX = in.getInt() & 0xffffffffL;
            double perMetreY = in.getInt() & 0xffffffffL;
            if (in.get() == 1) {
                dpiX = perMetreX * METRES_PER_INCH;
                dpiY = perMetreY * METRES_PER_INCH;
            }
        } else if (tag == tag("eXIf")) {
            orientation = Exif.of(in.array()).orientation();
        }
    }

    private void header(ByteBuffer in) throws IOException, Refusal {
        if (in.remaining() < 13) {
            throw new IOException("a short header");
        }
        long w = in.getInt() & 0xffffffffL;
        long h = in.getInt() & 0xffffffffL;
        bits = in.get();
        type = in.get();
        in.getShort();
        interlaced = in.get() == 1;
        boolean known =
                switch (type) {
                    case GREY -> List.of(1, 2, 4, 8, 16).contains(bits);
                    case PALETTE -> List.of(1, 2, 4, 8).contains(bits);
                    case 2, 4, 6 -> bits == 8 || bits == 16;
                    default -> false;
                };
        if (!known) {
            throw new IOException("colour type " + type + " of " + bits + " bits");
        }
        LazyImage.checkSize(name, w, h, channels() * (bits == 16 ? 2 : 1));
        width = (int) w;
        height = (int) h;
    }

    /** Values per sample as stored: grey, RGB, index, grey and alpha, RGB and alpha. */
    private int channels() {
        return new int[] {1, 0, 3, 1, 2, 0, 4}[type];
    }

    private static byte[] inflateProfile(byte[] chunk) throws IOException {
        int name = 0;
        while (name < chunk.length && chunk[name] != 0) {
            name++;
        }
        if (name + 2 >= chunk.length) {
            return null;
        }
        InputStream in = new InflaterInputStream(new ByteArrayInputStream(chunk, name + 2, chunk.length - name - 2));
        return in.readNBytes(MAX_CHUNK);
    }

    private Frame frame() {
        ColourSpace space = space();
        LazyImage image = new LazyImage(name, width, height, space, bits, orientation, this::decode);
        boolean turned = orientation.swaps();
        return new Frame(image, turned ? dpiY : dpiX, turned ? dpiX : dpiY, notes, List.of());
    }

    private ColourSpace space() {
        boolean grey = type == GREY || type == 4;
        ColourSpace base = grey ? new ColourSpace.DeviceGray() : new ColourSpace.DeviceRgb();
        if (codePoints != null) {
            base = ofCodePoints(base);
        } else if (profile != null) {
            base = Spaces.of(profile, base, notes);
        } else if (!srgb && gamma > 0) {
            base = ofGamma(base, grey);
        }
        return type == PALETTE
                ? new ColourSpace.Indexed(base, Math.max(0, palette.length / 3 - 1), new ColourSpace.Table(palette))
                : base;
    }

    /** Coding-independent code points of ITU-T H.273: primaries 1 and transfer 13 are sRGB. */
    private ColourSpace ofCodePoints(ColourSpace base) {
        if (codePoints[0] != 1 || codePoints[1] != 13) {
            notes.add(new Frame.Note(
                    "colours coded by primaries " + codePoints[0] + " and transfer " + codePoints[1] + " (cICP)",
                    "read as sRGB"));
        }
        return base;
    }

    private ColourSpace ofGamma(ColourSpace base, boolean grey) {
        boolean like = Math.abs(gamma - SRGB_GAMMA) <= GAMMA_NEAR;
        for (int i = 0; chromaticities != null && i < 8; i++) {
            like &= Math.abs(chromaticities[i] - SRGB_CHROMATICITIES[i]) < 0.002;
        }
        double[] c = chromaticities == null ? SRGB_CHROMATICITIES : chromaticities;
        if (like || c[1] <= 0 || c[3] <= 0 || c[5] <= 0 || c[7] <= 0) {
            return base;
        }
        double exponent = 100_000.0 / gamma;
        return grey
                ? new ColourSpace.CalGray(white(c), exponent)
                : new ColourSpace.CalRgb(white(c), List.of(exponent, exponent, exponent), primaries(c));
    }

    private static List<Double> white(double[] c) {
        return List.of(c[0] / c[1], 1.0, (1 - c[0] - c[1]) / c[1]);
    }

    /** XYZ of the primaries, scaled so that they add up to the white point. */
    private static List<Double> primaries(double[] c) {
        double[][] m = new double[3][3];
        for (int i = 0; i < 3; i++) {
            double x = c[2 + 2 * i];
            double y = c[3 + 2 * i];
            m[i] = new double[] {x / y, 1, (1 - x - y) / y};
        }
        List<Double> w = white(c);
        double whole = det(m[0], m[1], m[2]);
        double[] target = {w.get(0), w.get(1), w.get(2)};
        double[] scale = {
            det(target, m[1], m[2]) / whole, det(m[0], target, m[2]) / whole, det(m[0], m[1], target) / whole
        };
        List<Double> out = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                out.add(m[i][j] * scale[i]);
            }
        }
        return out;
    }

    private static double det(double[] a, double[] b, double[] c) {
        return a[0] * (b[1] * c[2] - b[2] * c[1])
                - a[1] * (b[0] * c[2] - b[2] * c[0])
                + a[2] * (b[0] * c[1] - b[1] * c[0]);
    }

    private Pixels decode() throws IOException {
        try (ImageInputStream in = input.open();
                InputStream stream =
                        new BufferedInputStream(new InflaterInputStream(new DataChunks(in, data)), 1 << 16)) {
            PngRows rows = new PngRows(width, height, bits, channels());
            if (interlaced) {
                rows.readInterlaced(stream);
            } else {
                rows.read(stream);
            }
            return pixels(rows.samples());
        }
    }

    /** @param raw values per sample, 16-bit ones as two bytes */
    private Pixels pixels(byte[] raw) {
        int count = width * height;
        int channels = channels();
        byte[] key = keyed(raw, count, channels);
        byte[] values = bits == 16 ? narrowed(raw) : type == PALETTE ? raw : widened(raw);
        int alphaAt = type == 4 || type == 6 ? channels - 1 : -1;
        byte[] alpha = alphaAt < 0 ? key : new byte[count];
        if (alphaAt < 0) {
            return new Pixels(width, height, channels, values, masked(alpha));
        }
        byte[] colour = new byte[count * alphaAt];
        for (int i = 0; i < count; i++) {
            System.arraycopy(values, i * channels, colour, i * alphaAt, alphaAt);
            alpha[i] = values[i * channels + alphaAt];
        }
        return new Pixels(width, height, alphaAt, colour, masked(alpha));
    }

    private Pixels masked(byte[] alpha) {
        boolean all = true;
        for (int i = 0; alpha != null && all && i < alpha.length; i++) {
            all = alpha[i] == -1;
        }
        return all ? null : new Pixels(width, height, 1, alpha, null);
    }

    /** Alpha from tRNS: of palette entries, or of the one colour that is clear. */
    private byte[] keyed(byte[] raw, int count, int channels) {
        if (transparency == null || type == 4 || type == 6) {
            return null;
        }
        byte[] alpha = new byte[count];
        for (int i = 0; i < count; i++) {
            if (type == PALETTE) {
                int index = raw[i] & 255;
                alpha[i] = index < transparency.length ? transparency[index] : -1;
            } else {
                alpha[i] = (byte) (isKey(raw, i * channels, channels) ? 0 : 255);
            }
        }
        return alpha;
    }

    private boolean isKey(byte[] raw, int sample, int channels) {
        if (transparency.length < 2 * channels) {
            return false;
        }
        for (int c = 0; c < channels; c++) {
            int key = (transparency[2 * c] & 255) << 8 | transparency[2 * c + 1] & 255;
            int at = sample + c;
            int value = bits == 16 ? (raw[2 * at] & 255) << 8 | raw[2 * at + 1] & 255 : raw[at] & 255;
            if (key != value) {
                return false;
            }
        }
        return true;
    }

    private byte[] widened(byte[] raw) {
        int most = (1 << bits) - 1;
        if (bits < 8) {
            for (int i = 0; i < raw.length; i++) {
                raw[i] = (byte) (raw[i] * 255 / most);
            }
        }
        return raw;
    }

    private static byte[] narrowed(byte[] raw) {
        byte[] out = new byte[raw.length / 2];
        for (int i = 0; i < out.length; i++) {
            int value = (raw[2 * i] & 255) << 8 | raw[2 * i + 1] & 255;
            out[i] = (byte) ((value + 128) / 257);
        }
        return out;
    }
}
