package inkground.viewer.state;

/** What can be mapped over the proof; one at a time. */
public enum MapKind {
    /** Where no ink arrives, and why. */
    BARE("Bare", Limit.NONE),
    /** Which edges of the artwork lose their contrast on the substrate. */
    VANISH("Vanish", Limit.NONE),
    /** Where no mixture of the inks gives the colour asked for. */
    REACH("Ink reach", Limit.DIFFERENCE),
    /** Where the substrate changes the colour. */
    SHIFT("Colour shift", Limit.DIFFERENCE),
    /** Where the screen cannot show what is printed. */
    SCREEN("Screen", Limit.DIFFERENCE),
    /** Where more ink lies than the process takes. */
    TOTAL_INK("Total ink", Limit.TOTAL_INK),
    /** Lines and gaps narrower than the process holds. */
    THIN("Thin", Limit.WIDTHS),
    /** What shows between the inks when each lies off by the register tolerance. */
    REGISTER("Register", Limit.REGISTER),
    /** Where a device that ignores overprint prints another colour. */
    OVERPRINT("Overprint", Limit.DIFFERENCE),
    /** Where the page differs from an earlier revision; only beside that revision. */
    CHANGES("Changes", Limit.DIFFERENCE);

    /** What a map compares with. */
    public enum Limit {
        /** Nothing. */
        NONE,
        /** A colour difference, ΔE00. */
        DIFFERENCE,
        /** A sum of tints, per cent. */
        TOTAL_INK,
        /** Widths of a line and a gap, mm. */
        WIDTHS,
        /** How far an ink may lie off, mm. */
        REGISTER
    }

    private final String label;
    private final Limit limit;

    MapKind(String label, Limit limit) {
        this.label = label;
        this.limit = limit;
    }

    /** @return its name for the user, one or two words */
    public String label() {
        return label;
    }

    /** @return what it compares with */
    public Limit limit() {
        return limit;
    }
}
