package inkground.geometry;

/** What counts as the inside of a path: ISO 32000-2 §8.5.3.3. */
public enum FillRule {
    /** Inside where the winding number is not zero. */
    NON_ZERO,
    /** Inside where a ray crosses the path an odd number of times. */
    EVEN_ODD
}
