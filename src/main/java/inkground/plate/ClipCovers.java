package inkground.plate;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * What the clips in use let through of one band. A clip is a chain of paths whose covers are multiplied, from the outermost in.
 * Covers of links are kept, {@value #KEPT} at most; the more of them are forgotten, the fewer of the far links stay, so that a chain
 * of any length costs about its length again and not its square when it is taken apart link by link. Belongs to one thread.
 */
final class ClipCovers {
    /** A page with more than these in turn rasterises some twice. */
    static final int KEPT = 64;
    /** Of the links that one clip needs, this many evenly spaced ones are kept. */
    private static final int KEPT_OF_ONE = KEPT / 2;

    /** Rasterises the path of one link alone. */
    @FunctionalInterface
    interface Rasteriser {
        void fill(PreparedClip clip, CoverBand into);
    }

    private final Rasteriser rasteriser;
    private final Supplier<CoverBand> take;
    private final Consumer<CoverBand> give;
    private final Map<PreparedClip, CoverBand> made = new IdentityHashMap<>();

    /**
     * @param rasteriser of the band at hand
     * @param take hands out a band of no content
     * @param give takes it back
     */
    ClipCovers(Rasteriser rasteriser, Supplier<CoverBand> take, Consumer<CoverBand> give) {
        this.rasteriser = rasteriser;
        this.take = take;
        this.give = give;
    }

    /** @return what a clip lets through, until another is asked for; null for all, as of null */
    CoverBand of(PreparedClip clip) {
        Deque<PreparedClip> links = new ArrayDeque<>();
        PreparedClip known = clip;
        while (known != null && !made.containsKey(known)) {
            links.push(known);
            known = known.parent();
        }
        if (links.isEmpty()) {
            return made.get(clip);
        }
        int step = (links.size() + KEPT_OF_ONE - 1) / KEPT_OF_ONE;
        makeRoom(clip, (links.size() + step - 1) / step);
        return multiply(links, made.get(known), step);
    }

    /**
     * @param links the outermost first
     * @param outer cover around them, kept already; null for none
     * @param step every so many links one is kept, and the last
     */
    private CoverBand multiply(Deque<PreparedClip> links, CoverBand outer, int step) {
        CoverBand around = outer;
        boolean kept = true;
        for (int i = 1; !links.isEmpty(); i++) {
            PreparedClip link = links.pop();
            CoverBand cover = take.get();
            rasteriser.fill(link, cover);
            if (around != null) {
                cover.times(around);
            }
            if (!kept) {
                give.accept(around);
            }
            kept = i % step == 0 || links.isEmpty();
            if (kept) {
                made.put(link, cover);
            }
            around = cover;
        }
        return around;
    }

    /** Forgets what the next clip does not lie in, then every second link around it, but never the nearest. */
    private void makeRoom(PreparedClip next, int count) {
        if (made.size() + count <= KEPT) {
            return;
        }
        List<PreparedClip> around = new ArrayList<>();
        for (PreparedClip c = next; c != null; c = c.parent()) {
            if (made.containsKey(c)) {
                around.add(c);
            }
        }
        while (around.size() + count > KEPT) {
            List<PreparedClip> thinned = new ArrayList<>();
            for (int i = 0; i < around.size(); i += 2) {
                thinned.add(around.get(i));
            }
            around = thinned;
        }
        Set<PreparedClip> stay = new HashSet<>(around); // clips are equal by identity
        made.entrySet().removeIf(entry -> {
            boolean goes = !stay.contains(entry.getKey());
            if (goes) {
                give.accept(entry.getValue());
            }
            return goes;
        });
    }

    /** @return number of covers in memory */
    int size() {
        return made.size();
    }

    /** Forgets all, for another band. */
    void clear() {
        made.values().forEach(give);
        made.clear();
    }
}
