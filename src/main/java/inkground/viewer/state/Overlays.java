package inkground.viewer.state;

import inkground.substrate.PrintProcess;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** What is drawn over the proof, and the limits it goes by. Lines stand side by side; of the maps one is shown at a time. */
public final class Overlays {
    /** Smallest colour difference that most people call another colour at a glance: common practice, no source. */
    static final double USUAL_DE00 = 3;
    /** Limit where no process says one: coated paper, offset. Common practice, no source. */
    static final double USUAL_TOTAL_INK = 300;

    /** Whether the trim line is shown. */
    public final BooleanProperty trim = new SimpleBooleanProperty(this, "trim", true);
    /** Whether the bleed line is shown. */
    public final BooleanProperty bleed = new SimpleBooleanProperty(this, "bleed", false);
    /** Whether the safe area is shown. */
    public final BooleanProperty safe = new SimpleBooleanProperty(this, "safe", false);
    /** The map that is shown; null for none. */
    public final ObjectProperty<MapKind> map = new SimpleObjectProperty<>(this, "map");
    /** Areas of the map that is shown; null until they are measured. */
    public final ObjectProperty<ProofEngine.MapReport> report = new SimpleObjectProperty<>(this, "report");

    /** Ways of printing to choose from. */
    public final ObservableList<PrintProcess> processes = FXCollections.observableArrayList();
    /** How the job is printed, which sets the limits; null before the processes are known. */
    public final ObjectProperty<PrintProcess> process = new SimpleObjectProperty<>(this, "process");
    /** Largest colour difference that is let pass, ΔE00. */
    public final DoubleProperty limitDe00 = new SimpleDoubleProperty(this, "limitDe00", USUAL_DE00);
    /** Largest sum of tints in one place, per cent; the process sets it, the user may change it. */
    public final DoubleProperty totalInkPercent = new SimpleDoubleProperty(this, "totalInkPercent", USUAL_TOTAL_INK);

    /** Usual lines, no map. */
    Overlays() {
        process.addListener((o, before, now) -> {
            if (now != null) {
                totalInkPercent.set(now.maxTotalInkPercent());
            }
        });
    }

    /** Shows a map, or the colours again when it is shown already. */
    public void toggle(MapKind kind) {
        map.set(map.get() == kind ? null : kind);
    }

    /** @return the map that is shown with its limits, if one is */
    public Optional<MapChoice> choice() {
        return Optional.ofNullable(map.get()).map(kind -> new MapChoice(kind, limitDe00.get(), totalInkPercent.get()));
    }

    /** @return distance that matter worth keeping has from the trim, mm: the process's, or 5, common practice, no source */
    public double safeMm() {
        return process.get() == null ? 5 : process.get().safeMm();
    }

    /** Takes the usual process for a kind of substrate, unless the one chosen prints on it. */
    void suit(boolean garment) {
        var kind = garment ? inkground.substrate.Substrate.Kind.GARMENT : inkground.substrate.Substrate.Kind.PAPER;
        if (process.get() == null || !process.get().on().contains(kind)) {
            processes.stream().filter(p -> p.on().contains(kind)).findFirst().ifPresent(process::set);
        }
    }
}
