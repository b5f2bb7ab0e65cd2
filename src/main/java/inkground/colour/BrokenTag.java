package inkground.colour;

/** A tag of an ICC profile whose data cannot be used; {@link IccTags} adds which tag it is. */
final class BrokenTag extends Exception {
    private static final long serialVersionUID = 1L;

    /** @param holds what is wrong in it, such as "a curve of an unknown type" */
    BrokenTag(String holds) {
        super(holds);
    }

    BrokenTag(String holds, Throwable cause) {
        super(holds, cause);
    }
}
