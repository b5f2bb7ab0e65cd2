package inkground.viewer.state;

/** What can be mapped in place of the colours of the proof; one at a time. */
public enum MapKind {
    /** Where no ink arrives, and why. */
    BARE,
    /** The chosen ink as the printer sees it: its plate, black on white. */
    PLATE
}
