package inkground.artwork.image;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Names of extra channels from the image resource blocks (TIFF field 34377); the layout is from memory. */
final class PhotoResources {
    private static final int NAMES = 1006;
    private static final int UNICODE_NAMES = 1045;
    private static final int SIGNATURE = 0x3842494D;

    private PhotoResources() {}

    /** @return names of the channels beyond the colour ones, in order; none when nothing readable is there */
    static List<String> channelNames(TiffDirectory tags) {
        byte[] data = tags.bytes(TiffDirectory.PHOTO_RESOURCES);
        List<String> plain = List.of();
        ByteBuffer in = ByteBuffer.wrap(data == null ? new byte[0] : data);
        while (in.remaining() >= 12 && in.getInt() == SIGNATURE) {
            int id = in.getShort() & 0xffff;
            int nameLength = in.get() & 255;
            int skip = nameLength + (nameLength + 1 & 1); // the length byte counts for the padding
            if (skip + 4 > in.remaining()) {
                return plain;
            }
            in.position(in.position() + skip);
            int length = in.getInt();
            if (length < 0 || length > in.remaining()) {
                return plain;
            }
            ByteBuffer body = in.slice(in.position(), length);
            if (id == UNICODE_NAMES) {
                return unicode(body);
            } else if (id == NAMES) {
                plain = pascal(body);
            }
            in.position(in.position() + Math.min(in.remaining(), length + (length & 1)));
        }
        return plain;
    }

    private static List<String> pascal(ByteBuffer in) {
        List<String> names = new ArrayList<>();
        while (in.hasRemaining()) {
            int length = in.get() & 255;
            if (length > in.remaining()) {
                break;
            }
            byte[] text = new byte[length];
            in.get(text);
            names.add(new String(text, StandardCharsets.ISO_8859_1));
        }
        return names;
    }

    private static List<String> unicode(ByteBuffer in) {
        List<String> names = new ArrayList<>();
        while (in.remaining() >= 4) {
            int length = in.getInt();
            if (length < 0 || length > in.remaining() / 2) {
                break;
            }
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < length; i++) {
                char c = in.getChar();
                if (c != 0) {
                    text.append(c);
                }
            }
            names.add(text.toString());
        }
        return names;
    }
}
