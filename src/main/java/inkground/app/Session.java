package inkground.app;

import inkground.artwork.Sizing;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * What is kept of the work on an artwork from one day to the next.
 *
 * @param arrangement what the user decided about the job
 * @param view what was looked at; empty for what is usual
 * @param groundAsked whether the user was asked about a ground in the garment's colour, and so is not asked again
 * @param sizeAsked for what the user was asked how large it is, and so is not asked again while the file is that; empty for never
 */
public record Session(Arrangement arrangement, Optional<View> view, boolean groundAsked, Optional<Extent> sizeAsked) {
    /** Rejects null. */
    public Session {
        Objects.requireNonNull(arrangement);
        Objects.requireNonNull(view);
        Objects.requireNonNull(sizeAsked);
    }

    /** A session in which nothing was asked. */
    public Session(Arrangement arrangement, Optional<View> view) {
        this(arrangement, view, false, Optional.empty());
    }

    /**
     * What a page of no stated size consists of. A file that was written anew is told by it, and one that was only touched up
     * stays the same.
     *
     * @param across samples of a picture or px of an SVG across, more than 0
     * @param down the same down
     */
    public record Extent(double across, double down) {
        /** Rejects what is no extent. */
        public Extent {
            if (!(across > 0 && down > 0)) {
                throw new IllegalArgumentException(across + " × " + down);
            }
        }

        /** @return of a page */
        public static Extent of(Sizing sizing) {
            return new Extent(sizing.across(), sizing.down());
        }
    }

    /**
     * What was looked at.
     *
     * @param substrate id of the paper or garment; may be unknown where the session is read again
     * @param page number, from 1
     * @param hiddenInks names of inks that were not shown
     */
    public record View(String substrate, int page, Set<String> hiddenInks) {
        /** Checks the page number and copies the set. */
        public View {
            if (substrate.isBlank() || page < 1) {
                throw new IllegalArgumentException("page " + page + " on '" + substrate + "'");
            }
            hiddenInks = Set.copyOf(hiddenInks);
        }
    }
}
