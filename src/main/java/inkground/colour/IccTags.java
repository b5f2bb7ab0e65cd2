package inkground.colour;

import java.nio.ByteBuffer;

/**
 * The tag table of an ICC profile: after the header of 128 bytes a count, then signature, offset and size of each tag, all
 * four-byte big-endian numbers [ICC1]. Offsets that lie outside the profile count as absent.
 */
final class IccTags {
    private static final int TABLE = 128;
    private static final int ENTRY = 12;
    private static final int MAX_TAGS = 1000;

    private final ByteBuffer in;
    private final int count;

    IccTags(byte[] profile) {
        this.in = ByteBuffer.wrap(profile);
        int declared = profile.length < TABLE + 4 ? 0 : in.getInt(TABLE);
        int room = Math.max(0, profile.length - TABLE - 4) / ENTRY;
        this.count = Math.max(0, Math.min(MAX_TAGS, Math.min(room, declared)));
    }

    /** @return where the table's entry of a tag begins, or -1 */
    private int entry(String signature) {
        int wanted = ByteBuffer.wrap(signature.getBytes(java.nio.charset.StandardCharsets.US_ASCII))
                .getInt();
        for (int i = 0; i < count; i++) {
            int at = TABLE + 4 + ENTRY * i;
            if (in.getInt(at) == wanted) {
                return at;
            }
        }
        return -1;
    }

    /** @return X, Y, Z of a tag of that type (15.16 numbers after 8 bytes), or null */
    double[] xyz(String signature) {
        int entry = entry(signature);
        int at = entry < 0 ? -1 : in.getInt(entry + 4);
        if (at < 0 || at > in.capacity() - 20) {
            return null;
        }
        return new double[] {in.getInt(at + 8) / 65536.0, in.getInt(at + 12) / 65536.0, in.getInt(at + 16) / 65536.0};
    }

    /** Lets a tag point at the data of another, if the profile has both. */
    void pointAt(String tag, String data) {
        int to = entry(tag);
        int from = entry(data);
        if (to >= 0 && from >= 0) {
            in.putInt(to + 4, in.getInt(from + 4));
            in.putInt(to + 8, in.getInt(from + 8));
        }
    }
}
