package inkground.viewer.task;

/**
 * How a piece of background work ended.
 *
 * @param <T> what it makes
 */
public sealed interface Outcome<T> {
    /** It made {@code value}, and nothing newer was asked for meanwhile. */
    record Done<T>(T value) implements Outcome<T> {}

    /** The user, or newer work, stopped it. */
    record Cancelled<T>() implements Outcome<T> {}

    /**
     * It could not be done.
     *
     * @param message for the user
     */
    record Failed<T>(String message) implements Outcome<T> {}
}
