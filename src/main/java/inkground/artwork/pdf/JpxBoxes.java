package inkground.artwork.pdf;

import inkground.artwork.ColourSpace;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** What the boxes around a JPEG 2000 codestream say: ISO/IEC 15444-1 annex I, with the further spaces of 15444-2 annex M. */
final class JpxBoxes {
    private static final int HEADER = 0x6A703268; // "jp2h"
    private static final int COLOUR = 0x636F6C72; // "colr"
    private static final int PALETTE = 0x70636C72; // "pclr"
    private static final int MAPPING = 0x636D6170; // "cmap"
    private static final int DEFINITION = 0x63646566; // "cdef"
    private static final int CODESTREAM = 0x6A703263; // "jp2c"
    private static final int ENUMERATED = 1;
    private static final int CMYK = 12;
    private static final int LAB = 14;
    private static final int SRGB = 16;
    private static final int GREY = 17;
    private static final int SYCC = 18;
    private static final int MOST_CHANNELS = 255;
    private static final int MOST_ENTRIES = 1024; // ISO/IEC 15444-1 §I.5.3.4
    private static final List<Double> D50 = List.of(0.9642, 1.0, 0.8249);
    // The default range of enumerated Lab, offsets 128 and 96 of 255: 15444-2 annex M, from memory.
    private static final List<Double> LAB_RANGE = List.of(-128 / 1.5, 127 / 1.5, -96 * 200 / 255.0, 159 * 200 / 255.0);

    private final byte[] data;
    private int codestream;
    private int enumerated;
    private byte[] profile;
    private Palette palette;
    private int[] mapping = {};
    private int[] definitions = {};

    /**
     * Values that an index stands for.
     *
     * @param depths bits per column
     * @param columns per column the values by index
     */
    record Palette(int[] depths, int[][] columns) {}

    /**
     * One channel of the picture.
     *
     * @param component of the codestream
     * @param column of the palette that turns its values; −1 for none
     * @param type 0 colour, 1 opacity, 2 opacity that the colours are multiplied by, else unspecified
     * @param association number of the colour, from 1; 0 for the whole picture
     */
    record Channel(int component, int column, int type, int association) {
        static Channel plain(int component) {
            return new Channel(component, -1, 0, component + 1);
        }

        boolean isColour() {
            return type == 0;
        }

        boolean isOpacity() {
            return type == 1 || type == 2;
        }
    }

    private JpxBoxes(byte[] data) {
        this.data = data;
    }

    /** Reads the boxes; a bare codestream has none. Boxes that run past their end are passed over. */
    static JpxBoxes of(byte[] data) {
        JpxBoxes boxes = new JpxBoxes(data);
        boolean boxed = data.length > 12 && u32(data, 4) == 0x6A502020;
        if (boxed) {
            boxes.read(0, data.length);
        }
        return boxes;
    }

    private void read(int from, int to) {
        int at = from;
        while (at + 8 <= to) {
            long length = u32(data, at);
            int body = at + 8;
            if (length == 1 && at + 16 <= to) {
                length = u32(data, at + 12); // the upper half of a 64-bit length is 0 in what fits an array
                body = at + 16;
            }
            long end = length == 0 ? to : at + length;
            if (end < body || end > to) {
                end = to; // cut off, or a length that lies: what is left
            }
            box((int) u32(data, at + 4), body, (int) end);
            at = (int) end;
        }
    }

    private void box(int type, int from, int to) {
        int length = to - from;
        if (type == HEADER) {
            read(from, to);
        } else if (type == CODESTREAM && codestream == 0) {
            codestream = from;
        } else if (type == COLOUR && length >= 7 && enumerated == 0 && profile == null) {
            if (u8(data, from) == ENUMERATED) {
                enumerated = (int) u32(data, from + 3);
            } else {
                profile = Arrays.copyOfRange(data, from + 3, to);
            }
        } else if (type == PALETTE && length >= 3) {
            palette(from, to);
        } else if (type == MAPPING) {
            mapping = words(from, length / 4 * 2);
        } else if (type == DEFINITION && length >= 2) {
            definitions = words(from + 2, Math.min(u16(data, from), (length - 2) / 6) * 3);
        }
    }

    private int[] words(int from, int count) {
        int[] out = new int[count];
        for (int i = 0; i < count; i++) {
            out[i] = u16(data, from + 2 * i);
        }
        return out;
    }

    private void palette(int from, int to) {
        int entries = u16(data, from);
        int count = u8(data, from + 2);
        if (entries == 0 || entries > MOST_ENTRIES || count == 0 || (long) entries * count > to - from) {
            return;
        }
        int[] depths = new int[count];
        int[][] columns = new int[count][entries];
        int at = from + 3 + count;
        for (int c = 0; c < count; c++) {
            depths[c] = (data[from + 3 + c] & 0x7F) + 1;
        }
        for (int e = 0; e < entries; e++) {
            for (int c = 0; c < count; c++) {
                for (int left = (depths[c] + 7) / 8; left > 0 && at < to; left--) {
                    columns[c][e] = columns[c][e] << 8 | u8(data, at++);
                }
            }
        }
        palette = new Palette(depths, columns);
    }

    /** Where the codestream may start; it is looked for from here. */
    int codestream() {
        return codestream;
    }

    Palette palette() {
        return palette;
    }

    /** Whether the file says what its channels are. */
    boolean channelsTyped() {
        return definitions.length > 0;
    }

    /** Channels, colours in the order of their space. */
    Channel[] channels(int components) {
        boolean mapped = palette != null && mapping.length > 0;
        int count = Math.min(MOST_CHANNELS, mapped ? mapping.length / 2 : components);
        Channel[] out = new Channel[count];
        for (int i = 0; i < count; i++) {
            int component = mapped ? mapping[2 * i] : i;
            int kind = mapped ? mapping[2 * i + 1] : 0; // type of mapping, then column
            boolean through = kind >> 8 == 1 && (kind & 255) < palette.columns().length;
            out[i] = new Channel(Math.min(component, components - 1), through ? kind & 255 : -1, 0, i + 1);
        }
        for (int i = 0; i + 2 < definitions.length; i += 3) {
            int channel = definitions[i];
            if (channel < count) {
                Channel plain = out[channel];
                out[channel] = new Channel(plain.component(), plain.column(), definitions[i + 1], definitions[i + 2]);
            }
        }
        Arrays.sort(out, Comparator.comparingInt(Channel::association));
        return out;
    }

    boolean isYcc() {
        return enumerated == SYCC;
    }

    /** Colours of the space stated; 0 where none is. */
    int coloursOfSpace() {
        if (profile != null) {
            return coloursOf(profile);
        }
        return switch (enumerated) {
            case CMYK -> 4;
            case LAB, SRGB, SYCC -> 3;
            case GREY -> 1;
            default -> 0;
        };
    }

    /** Colours of an ICC profile, from its header: ICC.1 §7.2.6. */
    private static int coloursOf(byte[] profile) {
        String space = profile.length < 20 ? "" : new String(profile, 16, 4, StandardCharsets.ISO_8859_1);
        return switch (space) {
            case "GRAY" -> 1;
            case "RGB " -> 3;
            case "CMYK" -> 4;
            default -> 0;
        };
    }

    /** The space of pictures with that many colour channels. */
    ColourSpace space(int colours) {
        if (enumerated == LAB && colours == 3) {
            return new ColourSpace.CieLab(D50, LAB_RANGE);
        }
        ColourSpace device =
                switch (colours) {
                    case 0, 1, 2 -> new ColourSpace.DeviceGray();
                    case 3 -> new ColourSpace.DeviceRgb();
                    default -> new ColourSpace.DeviceCmyk();
                };
        boolean usable = profile != null && coloursOf(profile) == device.components();
        return usable ? new ColourSpace.Icc(new ColourSpace.Profile(profile), device.components(), device) : device;
    }

    static int u8(byte[] data, int at) {
        return data[at] & 255;
    }

    static int u16(byte[] data, int at) {
        return u8(data, at) << 8 | u8(data, at + 1);
    }

    static long u32(byte[] data, int at) {
        return (long) u16(data, at) << 16 | u16(data, at + 2);
    }
}
