package inkground.base;

/**
 * Something the user handed in cannot be used. Carries one line for the user: what is wrong, where, and what to do.
 * The technical cause, where there is one, is kept apart for the log and never shown as the message.
 */
public final class Refusal extends Exception {
    private static final long serialVersionUID = 1L;

    /**
     * @param message one sentence or two for the user, naming the file or field; no stack trace, no class name
     */
    public Refusal(String message) {
        super(message);
    }

    /**
     * @param message as above
     * @param cause what was thrown underneath
     */
    public Refusal(String message, Throwable cause) {
        super(message, cause);
    }
}
