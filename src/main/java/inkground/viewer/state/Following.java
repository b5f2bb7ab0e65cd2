package inkground.viewer.state;

import inkground.viewer.state.ProofEngine.SubstrateCard;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/**
 * What follows the chosen substrate, and when. Where a picture has to be coloured anew, it leads: the mark in the rack moves in
 * the same frame as the picture changes, and words are laid out after that frame, so that neither holds the picture up. Where
 * there is no picture to wait for, mark and words follow the choice at once. Used on the window's thread.
 */
public final class Following {
    private final ObjectProperty<SubstrateCard> chosen;
    private final ReadOnlyObjectWrapper<SubstrateCard> pictured = new ReadOnlyObjectWrapper<>(this, "pictured");
    private final ReadOnlyObjectWrapper<SubstrateCard> told = new ReadOnlyObjectWrapper<>(this, "told");
    private boolean pictureLeads;

    Following(ObjectProperty<SubstrateCard> chosen) {
        this.chosen = chosen;
        chosen.addListener((o, before, now) -> {
            if (!pictureLeads) {
                tell();
            }
        });
    }

    /** @return what the picture lies on from the next frame on */
    public ReadOnlyObjectProperty<SubstrateCard> pictured() {
        return pictured.getReadOnlyProperty();
    }

    /** @return what words are about */
    public ReadOnlyObjectProperty<SubstrateCard> told() {
        return told.getReadOnlyProperty();
    }

    /** @param leads whether there is a picture that will follow the next choice; it then says so by the two methods below */
    public void pictureLeads(boolean leads) {
        pictureLeads = leads;
        if (!leads) {
            tell();
        }
    }

    /** The picture is coloured for the choice, and the next frame will show it. */
    public void picture() {
        pictured.set(chosen.get());
    }

    /** The frame with the picture is on its way, or none is to come. */
    public void tell() {
        picture();
        told.set(chosen.get());
    }
}
