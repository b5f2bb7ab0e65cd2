package inkground.viewer.state;

import inkground.app.ColourInventory;
import inkground.app.ColourUse;
import inkground.app.Grounds.Candidate;
import java.util.HashSet;
import java.util.Set;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.geometry.Point2D;

/** The colours of the artwork, as far as they are known, and what the user is doing with them. */
public final class ColourChoices {
    /** Every colour that the page paints; null until stock was taken. */
    public final ObjectProperty<ColourInventory> inventory = new SimpleObjectProperty<>(this, "inventory");
    /** Whether stock is being taken now. */
    public final BooleanProperty taking = new SimpleBooleanProperty(this, "taking");
    /** Whether a click on the proof picks the colour there. */
    public final BooleanProperty picking = new SimpleBooleanProperty(this, "picking");
    /** Where on the page the user picked, in points; null for nowhere yet. */
    public final ObjectProperty<Point2D> pickedAt = new SimpleObjectProperty<>(this, "pickedAt");
    /** The colour that was picked last; null before. */
    public final ObjectProperty<ColourUse> picked = new SimpleObjectProperty<>(this, "picked");

    /** What may be the garment painted in, while the user is asked; null for nothing to ask. */
    public final ObjectProperty<Candidate> ground = new SimpleObjectProperty<>(this, "ground");
    /** What deleting that ground instead would do; empty until it is known. */
    public final StringProperty deletion = new SimpleStringProperty(this, "deletion", "");

    /** Whether the sheet for writing a clean file is open. */
    public final BooleanProperty cleanSheet = new SimpleBooleanProperty(this, "cleanSheet");

    /** Files whose ground was asked about. */
    private final Set<Object> asked = new HashSet<>();

    /** Nothing known. */
    ColourChoices() {}

    /** Remembers that the user was asked about the ground of a file, and takes the question away. */
    public void settleGround(Object file) {
        asked.add(file);
        ground.set(null);
    }

    /** @return whether the user was asked about the ground of this file */
    public boolean groundSettled(Object file) {
        return asked.contains(file);
    }
}
