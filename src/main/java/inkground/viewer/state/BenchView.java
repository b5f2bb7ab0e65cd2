package inkground.viewer.state;

/** The ways of laying out the artwork on the bench. */
public enum BenchView {
    /** The page alone, flat on its substrate. */
    FLAT("Flat", "The page alone, flat on the chosen substrate"),
    /** Two revisions. */
    COMPARE("Compare", "The open file and an earlier revision of it, and what changed between them");

    private final String label;
    private final String sentence;

    BenchView(String label, String sentence) {
        this.label = label;
        this.sentence = sentence;
    }

    /** @return its name for the user */
    public String label() {
        return label;
    }

    /** @return one sentence for the tooltip */
    public String sentence() {
        return sentence;
    }
}
