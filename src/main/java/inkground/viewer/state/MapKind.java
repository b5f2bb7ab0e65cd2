package inkground.viewer.state;

/** What can be mapped in place of the colours of the proof; one at a time. */
public enum MapKind {
    /** Where no ink arrives, and why. */
    BARE
}
