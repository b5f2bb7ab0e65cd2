package inkground.viewer.state;

import inkground.app.PageComparison;
import inkground.viewer.state.ProofEngine.ApprovedAs;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ProofEngine.OpenPage;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;

/** The revision, or the approval record, that the open file is compared with. */
public final class Comparison {
    /** How two revisions are shown. */
    public enum Way {
        /** Both whole, next to each other. */
        BESIDE("Side by side", "The earlier revision at the left, the open file at the right"),
        /** One over the other, with an edge between them to drag. */
        WIPE("Wipe", "The earlier revision left of the edge, the open file right of it; drag the edge"),
        /** The open file with its changes hatched. */
        CHANGES("Changes", "The open file, hatched where its colour differs from the earlier revision's");

        private final String label;
        private final String sentence;

        Way(String label, String sentence) {
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

    /** The earlier file, or the artwork of the record; null before one is chosen. */
    public final ObjectProperty<OpenFile> file = new SimpleObjectProperty<>(this, "file");
    /** Its page; null before one is chosen. */
    public final ObjectProperty<OpenPage> page = new SimpleObjectProperty<>(this, "page");
    /** How it was approved; null for an earlier revision. */
    public final ObjectProperty<ApprovedAs> approved = new SimpleObjectProperty<>(this, "approved");
    /** Whether the sheet that keeps the page as approved is open. */
    public final BooleanProperty approveSheet = new SimpleBooleanProperty(this, "approveSheet");
    /** How the two are shown. */
    public final ObjectProperty<Way> way = new SimpleObjectProperty<>(this, "way", Way.BESIDE);
    /** Where the edge of the wipe is, as a share of the width from the left, 0 to 1. */
    public final DoubleProperty wipe = new SimpleDoubleProperty(this, "wipe", 0.5);
    /** Colour difference that is let pass, ΔE00. */
    public final DoubleProperty limitDe00 =
            new SimpleDoubleProperty(this, "limitDe00", PageComparison.DEFAULT_LIMIT_DE00);
    /** What changed; null until it is measured. */
    public final ObjectProperty<PageComparison> report = new SimpleObjectProperty<>(this, "report");

    /** Nothing chosen. */
    Comparison() {}

    /** Goes on to the next way of showing. */
    public void nextWay() {
        way.set(Way.values()[(way.get().ordinal() + 1) % Way.values().length]);
    }
}
