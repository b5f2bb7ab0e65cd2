package inkground.artwork.svg;

/**
 * How much of a file is read before it is refused, so that no file can use up memory or time.
 *
 * @param bytes largest size of the file, unpacked
 * @param elements largest number of elements
 * @param repeated largest number of elements that {@code use} repeats, counted each time
 * @param nesting deepest nesting of elements, patterns, masks and uses
 * @param ops largest number of painting operations
 * @param rasterPixels largest number of pixels of one part that has to be rasterised; a larger one gets fewer per inch
 * @param rasterTotal largest number of pixels of all such parts
 * @param rasterSeconds longest time for one such part
 */
record Limits(
        long bytes,
        int elements,
        int repeated,
        int nesting,
        int ops,
        long rasterPixels,
        long rasterTotal,
        int rasterSeconds) {
    /** What applies to users' files. */
    static final Limits STANDARD =
            new Limits(128L << 20, 1_000_000, 200_000, 200, 3_000_000, 25_000_000, 150_000_000, 60);
}
