package inkground.artwork.image;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource.Pixels;
import inkground.base.Refusal;
import java.awt.image.Raster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.imageio.stream.ImageInputStream;

/**
 * Reads JPEG: grey, RGB, CMYK, YCCK. Which of them it is follows from the Adobe and JFIF markers; a file of four components
 * with an Adobe marker stores its inks inverted.
 */
final class JpegFile {
    private static final int SOI = 0xD8;
    private static final int SOS = 0xDA;
    private static final int EOI = 0xD9;
    private static final int APP0 = 0xE0;
    private static final int APP1 = 0xE1;
    private static final int APP2 = 0xE2;
    private static final int APP14 = 0xEE;
    private static final String ICC_TAG = "ICC_PROFILE\0";
    private static final String EXIF_TAG = "Exif\0\0";
    private static final int MAX_SEGMENTS = 10_000;
    private static final int NO_ADOBE = -1;

    private final String name;
    private final Input input;
    private final List<Frame.Note> notes = new ArrayList<>();
    private int width;
    private int height;
    private int bits;
    private int components;
    private String ids = "";
    private boolean jfif;
    private int adobe = NO_ADOBE;
    private double dpiX;
    private double dpiY;
    private Exif exif = Exif.NONE;
    private final Map<Integer, byte[]> profileParts = new TreeMap<>();

    private JpegFile(Input input, String name) {
        this.input = input;
        this.name = name;
    }

    static List<Frame> read(Input input, String name) throws IOException, Refusal {
        JpegFile jpeg = new JpegFile(input, name);
        jpeg.readSegments();
        return List.of(jpeg.frame());
    }

    private void readSegments() throws IOException, Refusal {
        try (ImageInputStream in = input.open()) {
            in.readUnsignedShort();
            int segments = 0;
            for (int marker = nextMarker(in); marker != SOS && marker != EOI; marker = nextMarker(in)) {
                if (++segments > MAX_SEGMENTS) {
                    throw new IOException("too many segments");
                }
                if (marker == SOI || marker >= 0xD0 && marker <= 0xD7 || marker == 1) {
                    continue;
                }
                int length = in.readUnsignedShort() - 2;
                byte[] body = new byte[Math.max(0, length)];
                in.readFully(body);
                segment(marker, body);
            }
        }
        if (components == 0) {
            throw new IOException("no frame header");
        }
        if (components == 2 || components > 4) {
            throw new Refusal(name + " is a JPEG of " + components
                    + " components, which has no known meaning. Save it as grey, RGB or CMYK.");
        }
        LazyImage.checkSize(name, width, height, components);
    }

    private static int nextMarker(ImageInputStream in) throws IOException {
        int value = in.readUnsignedByte();
        while (value != 0xFF) {
            value = in.readUnsignedByte();
        }
        while (value == 0xFF) {
            value = in.readUnsignedByte();
        }
        return value;
    }

    private void segment(int marker, byte[] body) {
        boolean frame = marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
        if (frame && body.length >= 6) {
            bits = body[0] & 255;
            height = word(body, 1);
            width = word(body, 3);
            components = body[5] & 255;
            StringBuilder text = new StringBuilder();
            for (int i = 6; i + 2 < body.length; i += 3) {
                text.append((char) (body[i] & 255));
            }
            ids = text.toString();
        } else if (marker == APP0 && starts(body, "JFIF\0") && body.length >= 12) {
            jfif = true;
            double factor = body[7] == 1 ? 1 : body[7] == 2 ? 2.54 : 0;
            dpiX = word(body, 8) * factor;
            dpiY = word(body, 10) * factor;
        } else if (marker == APP1 && starts(body, EXIF_TAG)) {
            exif = Exif.of(Arrays.copyOfRange(body, EXIF_TAG.length(), body.length));
        } else if (marker == APP2 && starts(body, ICC_TAG) && body.length > ICC_TAG.length() + 2) {
            profileParts.put(body[ICC_TAG.length()] & 255, Arrays.copyOfRange(body, ICC_TAG.length() + 2, body.length));
        } else if (marker == APP14 && starts(body, "Adobe") && body.length >= 12) {
            adobe = body[11] & 255;
        }
    }

    private static boolean starts(byte[] body, String text) {
        byte[] wanted = text.getBytes(StandardCharsets.ISO_8859_1);
        return body.length >= wanted.length && Arrays.equals(body, 0, wanted.length, wanted, 0, wanted.length);
    }

    private static int word(byte[] b, int at) {
        return (b[at] & 255) << 8 | b[at + 1] & 255;
    }

    private Frame frame() {
        ColourSpace space = Spaces.of(profile(), Spaces.device(components), notes);
        if (components == 4 && adobe == NO_ADOBE) {
            notes.add(new Frame.Note("a CMYK JPEG that does not say which way its tints run", "0 is taken as no ink"));
        }
        boolean stated = dpiX > 0 && dpiY > 0;
        double x = stated ? dpiX : exif.dpiX();
        double y = stated ? dpiY : exif.dpiY();
        Orientation turn = exif.orientation();
        LazyImage image = new LazyImage(name, width, height, space, bits, turn, this::decode);
        return new Frame(image, turn.swaps() ? y : x, turn.swaps() ? x : y, notes, List.of());
    }

    private byte[] profile() {
        if (profileParts.isEmpty()) {
            return null;
        }
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        profileParts.values().forEach(whole::writeBytes);
        return whole.toByteArray();
    }

    private Pixels decode() throws IOException {
        Raster raster = PluginImage.raster(input, "jpeg");
        byte[] data = Rasters.bytes(raster, bits);
        if (raster.getNumBands() != components) {
            throw new IOException(raster.getNumBands() + " components instead of " + components);
        }
        if (components == 3 && isYcc()) {
            Ycc.toRgb(data, 3);
        } else if (components == 4 && adobe == 2) {
            // the Y, Cb and Cr of the inverted tints: taken as red, green and blue they give the tints themselves
            Ycc.toRgb(data, 4);
            invert(data, 3);
        } else if (components == 4 && adobe != NO_ADOBE) {
            for (int c = 0; c < 4; c++) {
                invert(data, c);
            }
        }
        return new Pixels(raster.getWidth(), raster.getHeight(), components, data, null);
    }

    private static void invert(byte[] data, int component) {
        for (int i = component; i < data.length; i += 4) {
            data[i] = (byte) ~data[i];
        }
    }

    /** Without a word about it, three components are YCbCr unless they call themselves R, G, B. */
    private boolean isYcc() {
        return adobe != NO_ADOBE ? adobe == 1 : jfif || !ids.equals("RGB");
    }
}
