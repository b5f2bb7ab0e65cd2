package inkground.artwork.pdf;

/**
 * How much of a file is read before it is refused, so that no file can use up memory or time.
 *
 * @param ops largest number of painting operations kept for one page
 * @param operators largest number of operators interpreted for one page, repeated forms counted each time
 * @param nesting deepest nesting of forms, patterns, masks and Type 3 glyphs
 * @param savedStates deepest nesting of saved graphics states in one content stream; real files stay below a hundred
 * @param contentBytes largest size to which one content stream may unpack
 */
record Limits(int ops, int operators, int nesting, int savedStates, int contentBytes) {
    /** What applies to users' files. The nesting of 28 is the limit ISO 32000-1 annex C names for saved states. */
    static final Limits STANDARD = new Limits(3_000_000, 30_000_000, 28, 10_000, 256 << 20);
}
