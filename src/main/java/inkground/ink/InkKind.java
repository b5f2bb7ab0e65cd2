package inkground.ink;

/** What an ink is for. */
public enum InkKind {
    /** One of the process inks cyan, magenta, yellow and black. */
    PROCESS,
    /** A named ink mixed or bought for its own colour. */
    SPOT,
    /** White ink: printed under or instead of colours on what is not white. */
    WHITE,
    /** Not an ink on the product: cutting, creasing, varnish and the like, carried as a separation. */
    TECHNICAL;

    /** @return the lower-case word used in files and on the command line */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
