package inkground.viewer.state;

import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;

/** What is drawn over the proof, or in place of its colours. Lines stand side by side; of the maps one is shown at a time. */
public final class Overlays {
    /** Whether the trim line is shown. */
    public final BooleanProperty trim = new SimpleBooleanProperty(this, "trim", true);
    /** Whether the bleed line is shown. */
    public final BooleanProperty bleed = new SimpleBooleanProperty(this, "bleed", false);
    /** Whether the safe area is shown. */
    public final BooleanProperty safe = new SimpleBooleanProperty(this, "safe", false);
    /** The map that stands in place of the colours; null for the colours. */
    public final ObjectProperty<MapKind> map = new SimpleObjectProperty<>(this, "map");

    /** Usual lines, no map. */
    Overlays() {}

    /** Shows a map, or the colours again when it is shown already. */
    public void toggle(MapKind kind) {
        map.set(map.get() == kind ? null : kind);
    }
}
