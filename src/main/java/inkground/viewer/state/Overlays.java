package inkground.viewer.state;

import inkground.app.GamutReport;
import inkground.substrate.PrintProcess;
import inkground.viewer.state.ProofEngine.OpenPage;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.value.ObservableValue;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** What is drawn over the proof, and the limits it goes by. Lines stand side by side; of the maps one is shown at a time. */
public final class Overlays {
    /** Smallest colour difference that most people call another colour at a glance: common practice, no source. */
    static final double USUAL_DE00 = GamutReport.USUAL_DE00;
    /** Limit where no process says one: coated paper, offset. Common practice, no source. */
    static final double USUAL_TOTAL_INK = 100 * GamutReport.USUAL_TOTAL_INK;

    /** Widths and register where no process says any: offset on paper. Common practice, no source. */
    static final double USUAL_WIDTH_MM = 0.1;

    /** Whether the trim line is shown. */
    public final BooleanProperty trim = new SimpleBooleanProperty(this, "trim", true);
    /** Whether the bleed line is shown. */
    public final BooleanProperty bleed = new SimpleBooleanProperty(this, "bleed", false);
    /** Whether the grain of a garment's cloth is shown on the flat page. */
    public final BooleanProperty cloth = new SimpleBooleanProperty(this, "cloth", false);
    /** Whether the safe area is shown. */
    public final BooleanProperty safe = new SimpleBooleanProperty(this, "safe", false);
    /** The map that is shown; null for none. */
    public final ObjectProperty<MapKind> map = new SimpleObjectProperty<>(this, "map");
    /** The revision that changes are mapped against; null outside a comparison. */
    public final ObjectProperty<OpenPage> before = new SimpleObjectProperty<>(this, "before");
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

    /** Thinnest line that holds, mm; the process sets it, the user may change it. */
    public final DoubleProperty minLineMm = new SimpleDoubleProperty(this, "minLineMm", USUAL_WIDTH_MM);
    /** Narrowest gap that stays open, mm; likewise. */
    public final DoubleProperty minGapMm = new SimpleDoubleProperty(this, "minGapMm", USUAL_WIDTH_MM);
    /** How far one ink may lie from another, mm; likewise. */
    public final DoubleProperty registerMm = new SimpleDoubleProperty(this, "registerMm", USUAL_WIDTH_MM);
    /** Which step the play of the inks is at, 0 to {@link MapChoice#PHASES} − 1. */
    public final IntegerProperty phase = new SimpleIntegerProperty(this, "phase", 0);
    /** Whether the legend of the map is folded to its title. */
    public final BooleanProperty legendFolded = new SimpleBooleanProperty(this, "legendFolded", false);
    /** Whether the places that a map found are marked. */
    public final BooleanProperty places = new SimpleBooleanProperty(this, "places", true);

    /** Usual lines, no map. */
    Overlays() {
        process.addListener((o, before, now) -> {
            if (now != null) {
                totalInkPercent.set(now.maxTotalInkPercent());
                minLineMm.set(now.minLineMm());
                minGapMm.set(now.minGapMm());
                registerMm.set(now.registerMm());
            }
        });
    }

    /** @return all that decides a map beside the kind of it: to be listened to together */
    public List<ObservableValue<?>> limits() {
        return List.of(limitDe00, totalInkPercent, minLineMm, minGapMm, registerMm);
    }

    /** Shows a map, or the colours again when it is shown already. */
    public void toggle(MapKind kind) {
        map.set(map.get() == kind ? null : kind);
    }

    /** Folds the legend to its title, or opens it. */
    public void toggleLegend() {
        legendFolded.set(!legendFolded.get());
    }

    /** @return the map that is shown with its limits, if one is */
    public Optional<MapChoice> choice() {
        return Optional.ofNullable(map.get())
                .filter(kind -> kind != MapKind.CHANGES || before.get() != null)
                .map(kind -> new MapChoice(
                        kind,
                        new MapLimits(
                                limitDe00.get(),
                                totalInkPercent.get(),
                                minLineMm.get(),
                                minGapMm.get(),
                                registerMm.get()),
                        kind == MapKind.REGISTER ? phase.get() : 0,
                        kind == MapKind.CHANGES ? Optional.of(before.get()) : Optional.empty()));
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
