package inkground.viewer.state;

import inkground.app.ColourSamples;
import inkground.app.Photograph;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** What the sheet for the user's own papers and garments works on. */
public final class OwnColours {
    /** Whether the sheet is open. */
    public final BooleanProperty sheet = new SimpleBooleanProperty(this, "sheet");
    /** The one that is being changed; null while a new one is made. */
    public final ObjectProperty<SubstrateCard> editing = new SimpleObjectProperty<>(this, "editing");
    /** Colours of the measured file that was read last. */
    public final ObservableList<ColourSamples.Sample> samples = FXCollections.observableArrayList();
    /** The photograph that was read last; null for none. */
    public final ObjectProperty<Photograph> photograph = new SimpleObjectProperty<>(this, "photograph");

    /** Closed. */
    OwnColours() {}

    /**
     * Opens the sheet.
     *
     * @param card the one to change; null to make a new one
     */
    public void open(SubstrateCard card) {
        samples.clear();
        photograph.set(null);
        editing.set(card);
        sheet.set(true);
    }

    /** Closes the sheet and lets go of what it had read. */
    public void close() {
        sheet.set(false);
        samples.clear();
        photograph.set(null);
    }
}
