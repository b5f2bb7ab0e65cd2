package inkground.colour;

import inkground.colour.IccReader.BrokenProfile;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/**
 * Header and tag table of an ICC profile: after the header of 128 bytes a count, then signature, offset and size of each tag, all
 * four-byte big-endian numbers [ICC1]. Tags whose data lies outside the profile count as absent where they are optional.
 */
final class IccTags {
    private static final int TABLE = 128;
    private static final int ENTRY = 12;
    private static final int MAX_TAGS = 1000;

    private final ByteBuffer in;
    private final int declared;
    private final int count;

    IccTags(byte[] profile) {
        this.in = ByteBuffer.wrap(profile).asReadOnlyBuffer();
        this.declared = profile.length < TABLE + 4 ? 0 : in.getInt(TABLE);
        this.count = Math.max(0, Math.min(declared, Math.min(MAX_TAGS, room())));
    }

    private int room() {
        return Math.max(0, in.capacity() - TABLE - 4) / ENTRY;
    }

    /** @return first number of the version: 2 or 4 in real profiles */
    int version() {
        return in.capacity() > 8 ? in.get(8) : 0;
    }

    /** @return whether the header carries the signature of all ICC profiles */
    boolean signed() {
        return word(36).equals("acsp");
    }

    /** @return what the profile is of, such as {@code prtr} or {@code mntr} */
    String deviceClass() {
        return word(12);
    }

    /** @return space of the device's colours, such as {@code CMYK} */
    String space() {
        return word(16);
    }

    /** @return space of the profile's other side: {@code Lab } or {@code XYZ } */
    String connection() {
        return word(20);
    }

    private String word(int at) {
        byte[] bytes = new byte[4];
        for (int i = 0; i < 4; i++) {
            bytes[i] = at + i < in.capacity() ? in.get(at + i) : 0;
        }
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }

    /** @return whether the table lists a tag */
    boolean has(String signature) {
        return entry(signature) >= 0;
    }

    /** @return where the table's entry of a tag begins, or -1 */
    private int entry(String signature) {
        int wanted =
                ByteBuffer.wrap(signature.getBytes(StandardCharsets.US_ASCII)).getInt();
        for (int i = 0; i < count; i++) {
            int at = TABLE + 4 + ENTRY * i;
            if (in.getInt(at) == wanted) {
                return at;
            }
        }
        return -1;
    }

    /**
     * @return the data of a tag, from its type on
     * @throws BrokenProfile if it is absent or lies outside the profile; the message names it
     */
    ByteBuffer data(String signature) throws BrokenProfile {
        int entry = entry(signature);
        if (entry < 0) {
            throw new BrokenProfile("the colour profile is damaged: it lacks its tag " + signature.strip(), null);
        }
        long offset = in.getInt(entry + 4) & 0xffffffffL;
        long size = in.getInt(entry + 8) & 0xffffffffL;
        boolean beforeEnd = size >= 8 && offset + size <= in.capacity();
        if (!beforeEnd || offset < TABLE + 4 + (long) ENTRY * count) {
            throw new BrokenProfile(
                    "the colour profile is damaged: its tag " + signature.strip() + " lies outside of its data", null);
        }
        return in.slice((int) offset, (int) size);
    }

    /** Reads what a tag holds. */
    interface Content<T> {
        /** @param data of the tag, from its type on */
        T read(ByteBuffer data) throws BrokenTag;
    }

    /**
     * @return what a tag holds
     * @throws BrokenProfile if it is absent, lies outside the profile or holds what cannot be used; the message names it
     */
    <T> T read(String signature, Content<T> content) throws BrokenProfile {
        ByteBuffer data = data(signature);
        try {
            return content.read(data);
        } catch (BrokenTag e) {
            throw new BrokenProfile(
                    "the colour profile is damaged: its tag " + signature.strip() + " holds " + e.getMessage(), e);
        } catch (BufferUnderflowException e) {
            throw new BrokenProfile("the colour profile is damaged: its tag " + signature.strip() + " is cut off", e);
        }
    }

    /** @throws BrokenProfile if the table declares more tags than there is room for, or than any real profile has */
    void checkCount() throws BrokenProfile {
        if (count != declared) {
            throw new BrokenProfile(
                    "the colour profile is damaged: its table declares " + (declared & 0xffffffffL)
                            + " tags, readable are at most " + Math.min(MAX_TAGS, room()),
                    null);
        }
    }

    /** @return X, Y, Z of a tag of that type (15.16 numbers after 8 bytes), or null where there is none */
    double[] xyz(String signature) {
        try {
            ByteBuffer data = data(signature);
            if (data.capacity() < 20) {
                return null;
            }
            return new double[] {data.getInt(8) / 65536.0, data.getInt(12) / 65536.0, data.getInt(16) / 65536.0};
        } catch (BrokenProfile e) {
            return null; // what is optional and damaged is as good as absent
        }
    }
}
