package inkground.appearance;

/** What the artwork does at one place. The four ways of looking white are kept apart. */
public enum Cover {
    /** Nothing was painted: the substrate shows. */
    UNPAINTED("unpainted", "Nothing is painted here: the substrate shows."),
    /** Ink was painted and later paint removed it: the substrate shows. */
    KNOCKED_OUT("knocked out", "Later paint removed the ink that was here: the substrate shows."),
    /** White paint that prints no ink: the substrate shows. */
    WHITE_PAINT("white paint", "White paint without ink: nothing prints here, and the substrate shows."),
    /** White ink and no other. */
    WHITE_INK("white ink", "White ink prints here."),
    /** At least one ink that is not white. */
    INKED("inked", "Ink prints here.");

    private final String label;
    private final String explanation;

    Cover(String label, String explanation) {
        this.label = label;
        this.explanation = explanation;
    }

    /** @return a word or two for a legend */
    public String label() {
        return label;
    }

    /** @return one sentence for a tool tip */
    public String explanation() {
        return explanation;
    }

    /** @return whether the substrate shows: no ink arrives */
    public boolean bare() {
        return this == UNPAINTED || this == KNOCKED_OUT || this == WHITE_PAINT;
    }
}
