package inkground.app;

import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * What is kept of the work on an artwork from one day to the next.
 *
 * @param arrangement what the user decided about the job
 * @param view what was looked at; empty for what is usual
 * @param groundAsked whether the user was asked about a ground in the garment's colour, and so is not asked again
 */
public record Session(Arrangement arrangement, Optional<View> view, boolean groundAsked) {
    /** Rejects null. */
    public Session {
        Objects.requireNonNull(arrangement);
        Objects.requireNonNull(view);
    }

    /** A session in which nothing was asked about the ground. */
    public Session(Arrangement arrangement, Optional<View> view) {
        this(arrangement, view, false);
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
