package inkground.appearance;

import java.lang.ref.WeakReference;
import java.util.Arrays;

/**
 * Colours of vectors that one thread has looked up on one stack. It outlives a region, since tiles of one page have most of their
 * vectors in common. Direct-mapped: a vector may push out another, and is then looked up again.
 */
final class ColourMemo {
    private static final int SLOT_BITS = 12;
    private static final long GOLDEN = 0x9E3779B97F4A7C15L; // 2^64 / golden ratio: spreads neighbours over the slots
    private static final ThreadLocal<ColourMemo> LAST = new ThreadLocal<>();

    private final WeakReference<StackModel> model;
    private final int words;
    private final long[] vectors;
    private final int[] colours = new int[1 << SLOT_BITS]; // opaque, so 0 is none

    private ColourMemo(StackModel model) {
        this.model = new WeakReference<>(model);
        this.words = model.words();
        this.vectors = new long[words << SLOT_BITS];
    }

    /**
     * @return the memo of the calling thread for a stack, new where the thread's last one was for another; to be used by this
     *     thread only
     */
    static ColourMemo of(StackModel model) {
        ColourMemo memo = LAST.get();
        if (memo == null || memo.model.get() != model) {
            memo = new ColourMemo(model);
            LAST.set(memo);
        }
        return memo;
    }

    /** @return the slot of a vector of one word */
    int slot(long vector) {
        return (int) (vector * GOLDEN >>> 64 - SLOT_BITS);
    }

    /** @return the slot of the vector that begins at a place of an array */
    int slot(long[] all, int at) {
        long hash = 0;
        for (int w = 0; w < words; w++) {
            hash = (hash ^ all[at + w]) * GOLDEN;
        }
        return (int) (hash >>> 64 - SLOT_BITS);
    }

    /** @return the colour of the vector that begins at a place, 0xAARRGGBB; 0 if its slot holds another */
    int colour(int slot, long[] all, int at) {
        int from = slot * words;
        return Arrays.equals(vectors, from, from + words, all, at, at + words) ? colours[slot] : 0;
    }

    /** Keeps the colour of a vector, and returns it. */
    int keep(int slot, long[] all, int at, int colour) {
        System.arraycopy(all, at, vectors, slot * words, words);
        colours[slot] = colour;
        return colour;
    }
}
