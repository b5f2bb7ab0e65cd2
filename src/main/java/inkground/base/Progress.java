package inkground.base;

/** Told how far a piece of long work has come. Called from any thread, often: implementations must be cheap. */
@FunctionalInterface
public interface Progress {
    /** Ignores what it is told. */
    Progress NONE = (what, fraction) -> {};

    /**
     * @param what a few words for the user, such as "reading page 1"
     * @param fraction done, 0 to 1; negative when it cannot be known
     */
    void report(String what, double fraction);
}
