package inkground.artwork.pdf;

/**
 * What the first bytes of a compressed image say, read before anything is allocated.
 *
 * @param width in samples
 * @param height in samples
 * @param components channels, a possible alpha channel included
 * @param bits per channel
 * @param enumeratedSpace number of the colour space in a JPX file (ISO 15444-1 annex I); 0 when not stated
 */
record ImageHeader(int width, int height, int components, int bits, int enumeratedSpace) {
    private static final int JP2_BOX_HEADER = 0x6A703268; // "jp2h"
    private static final int JP2_BOX_COLOUR = 0x636F6C72; // "colr"

    /** Reads the frame header of a JPEG file (ITU-T T.81 §B.2.2); null when there is none. */
    static ImageHeader ofJpeg(byte[] data) {
        int at = 0;
        while (at + 3 < data.length && !(u8(data, at) == 0xFF && u8(data, at + 1) == 0xD8)) {
            at++;
        }
        at += 2;
        while (at + 9 < data.length) {
            if (u8(data, at) != 0xFF) {
                at++;
                continue;
            }
            int marker = u8(data, at + 1);
            boolean frame = marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
            if (frame) {
                return new ImageHeader(u16(data, at + 7), u16(data, at + 5), u8(data, at + 9), u8(data, at + 4), 0);
            }
            boolean alone = marker == 0xFF || marker == 0x00 || marker == 0x01 || marker >= 0xD0 && marker <= 0xD8;
            at += marker == 0xFF ? 1 : alone ? 2 : 2 + u16(data, at + 2);
        }
        return null;
    }

    /** Reads the size marker of a JPEG 2000 codestream (ISO 15444-1 §A.5.1), in its box file or bare; null for none. */
    static ImageHeader ofJpx(byte[] data) {
        for (int at = 0; at + 44 < data.length; at++) {
            boolean start = u16(data, at) == 0xFF4F && u16(data, at + 2) == 0xFF51;
            if (start) {
                long width = u32(data, at + 8) - u32(data, at + 16);
                long height = u32(data, at + 12) - u32(data, at + 20);
                if (width < 1 || height < 1 || width > Integer.MAX_VALUE || height > Integer.MAX_VALUE) {
                    return null;
                }
                int bits = (u8(data, at + 42) & 0x7F) + 1;
                return new ImageHeader((int) width, (int) height, u16(data, at + 40), bits, enumerated(data, at));
            }
        }
        return null;
    }

    private static int enumerated(byte[] data, int end) {
        boolean inHeader = false;
        for (int at = 4; at + 15 < end; at++) {
            long type = u32(data, at);
            inHeader |= type == JP2_BOX_HEADER;
            if (inHeader && type == JP2_BOX_COLOUR && u8(data, at + 4) == 1) {
                return (int) u32(data, at + 7);
            }
        }
        return 0;
    }

    private static int u8(byte[] data, int at) {
        return data[at] & 255;
    }

    private static int u16(byte[] data, int at) {
        return u8(data, at) << 8 | u8(data, at + 1);
    }

    private static long u32(byte[] data, int at) {
        return (long) u16(data, at) << 16 | u16(data, at + 2);
    }
}
