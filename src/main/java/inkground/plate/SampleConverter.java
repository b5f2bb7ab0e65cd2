package inkground.plate;

import inkground.artwork.ColourSpace;
import java.util.Arrays;

/**
 * Converts samples of several components to tints, looking up those seen not long ago: graphics have few colours, and
 * photographs have neighbours alike. Belongs to one thread.
 */
final class SampleConverter {
    /** Places of the table of colours seen; 4,096 keep it in a processor's nearest memory. */
    private static final int SEEN_BITS = 12;

    /** A colour of more components does not fit a key. */
    private static final int MOST_KEYED = 7;

    private final ColourSpace space;
    private final ColourMapping mapping;
    private final SoftEdges edges;
    private final int components;
    private final int channels;
    private final float[] colour;
    private final int[] tints;
    private final long[] keys = new long[1 << SEEN_BITS];
    private final byte[] seen;

    /**
     * @param edges between the flat colours of the picture; null for none
     * @param channels tints kept of each colour, those of the first planes
     */
    SampleConverter(ColourSpace space, ColourMapping mapping, SoftEdges edges, int channels) {
        this.space = space;
        this.mapping = mapping;
        this.edges = edges;
        this.components = space.components();
        this.channels = channels;
        this.colour = new float[components];
        this.tints = new int[mapping.tintPlanes()];
        this.seen = new byte[channels << SEEN_BITS];
        Arrays.fill(keys, -1);
    }

    /**
     * Converts the samples from {@code first} up to {@code end}.
     *
     * @param samples interleaved, one byte a component
     * @param out receives interleaved tints at the same places
     */
    void convert(byte[] samples, int first, int end, byte[] out) {
        for (int s = first; s < end; s++) {
            int place = placeOf(samples, s * components);
            System.arraycopy(seen, place * channels, out, s * channels, channels);
        }
    }

    /** Where the tints of the colour at {@code at} stand, put there now if need be. */
    private int placeOf(byte[] samples, int at) {
        if (components > MOST_KEYED) {
            put(samples, at, 0);
            return 0;
        }
        long key = 0;
        for (int c = 0; c < components; c++) {
            key = key << 8 | samples[at + c] & 255;
        }
        int place = (int) (key * 0x9E3779B97F4A7C15L >>> 64 - SEEN_BITS);
        if (keys[place] != key) {
            put(samples, at, place);
            keys[place] = key;
        }
        return place;
    }

    private void put(byte[] samples, int at, int place) {
        for (int c = 0; c < components; c++) {
            float low = space.min(c);
            colour[c] = low + (space.max(c) - low) * (samples[at + c] & 255) / 255f;
        }
        mapping.mixedTints(space, colour, edges, tints);
        for (int p = 0; p < channels; p++) {
            seen[place * channels + p] = (byte) Fixed.toByte(tints[p]);
        }
    }
}
