package inkground.viewer.state;

import inkground.artwork.PageBox;
import inkground.garment.Form;
import inkground.garment.Placed;
import inkground.garment.Placement;
import inkground.garment.PlacementCheck;
import inkground.geometry.Box;
import inkground.substrate.Cut;
import inkground.substrate.Texture;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ProofEngine.WornAs;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.beans.Observable;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/**
 * The artwork on a garment: what there is to wear, and where the arrangement lays it. Garment space is in points like the page's,
 * with its origin at the point that placements are measured from. Used on the window's thread.
 */
public final class Worn {
    /** One step of an arrow key. */
    public static final double NUDGE_MM = 1;
    /** One step of an arrow key with Shift. */
    public static final double LONG_NUDGE_MM = 10;

    /** Table shown around the garment. */
    private static final double MARGIN_MM = 22;

    /** Cuts to choose from. */
    public final ObservableList<Cut> cuts = FXCollections.observableArrayList();
    /** Whether the print areas are shown. */
    public final BooleanProperty area = new SimpleBooleanProperty(this, "area", false);
    /** Whether the grain of the fabric and its folds are shown. */
    public final BooleanProperty cloth = new SimpleBooleanProperty(this, "cloth", true);
    /** Box around all ink of the page, in points; null until it is measured, or where there is no ink. */
    public final ObjectProperty<Box> inkedPt = new SimpleObjectProperty<>(this, "inkedPt");
    /** The garment chosen last; null before there is one. */
    public final ObjectProperty<SubstrateCard> lastGarment = new SimpleObjectProperty<>(this, "lastGarment");
    /** Whether the artwork is being moved by the pointer. */
    public final BooleanProperty moving = new SimpleBooleanProperty(this, "moving", false);

    private final ViewerState state;
    private Form form;
    private List<Object> formOf = List.of();

    Worn(ViewerState state) {
        this.state = state;
        state.substrate.addListener((Observable o) -> {
            if (state.substrate.get() != null && state.substrate.get().garment()) {
                lastGarment.set(state.substrate.get());
            }
        });
    }

    /** @return the garment to offer in place of paper: the last one, or the first of the rack */
    public Optional<SubstrateCard> offered() {
        return Optional.ofNullable(lastGarment.get())
                .or(() ->
                        state.substrates.stream().filter(SubstrateCard::garment).findFirst());
    }

    /** @return where the arrangement lays the artwork */
    public Placement placement() {
        return state.history.get().placement();
    }

    /** @return what is worn; empty on paper, and before the rack is loaded */
    public Optional<Form> form() {
        SubstrateCard substrate = state.substrate.get();
        if (substrate == null || !substrate.garment() || cuts.isEmpty()) {
            return Optional.empty();
        }
        Placement p = placement();
        List<Object> key = List.of(p.cut(), p.size(), p.side(), kind(substrate), List.copyOf(cuts));
        if (!key.equals(formOf)) {
            form = Form.of(p, cuts, kind(substrate)).orElseThrow();
            formOf = key;
        }
        return Optional.of(form);
    }

    /** @return kind of cloth of a garment; jersey where the word is not known */
    public static Texture.Kind kind(SubstrateCard substrate) {
        return Arrays.stream(Texture.Kind.values())
                .filter(k -> k.name().toLowerCase(Locale.ROOT).equals(substrate.texture()))
                .findFirst()
                .orElse(Texture.Kind.JERSEY);
    }

    /** @return how it is worn and seen where the garment is looked at; empty in every other view */
    public Optional<WornAs> seen() {
        return state.view.get() == BenchView.GARMENT
                ? form().map(f -> new WornAs(placement(), f, cloth.get()))
                : Optional.empty();
    }

    /** @return the artwork on the garment; empty without either */
    public Optional<Placed> placed() {
        return state.page.get() == null ? Optional.empty() : form().map(f -> Placed.of(placement(), f, edgePt()));
    }

    private Box edgePt() {
        boolean ink = placement().measured() == Placement.Measured.INK && inkedPt.get() != null;
        return ink ? inkedPt.get() : state.page.get().info().box(PageBox.TRIM);
    }

    /** @return whether the print fits where it lies; by the trim until the ink is measured */
    public Optional<PlacementCheck> check() {
        return placed().map(p -> PlacementCheck.of(
                p.form(), p.toMm(Optional.ofNullable(inkedPt.get()).orElse(p.artworkPt()))));
    }

    /** Changes the placement as one step, or as part of a gesture. */
    public void place(String what, Object gesture, Placement to) {
        state.history.change(what, gesture, a -> a.placed(to));
    }

    /** Moves the artwork; the steps of one run of keys are undone together. */
    public void nudge(double rightMm, double downMm) {
        placed().ifPresent(p -> place(
                "move the artwork", "nudge", placement().at(p.artworkMm().y0() + downMm, p.offCentreMm() + rightMm)));
    }

    /** @return the region that counts as the whole picture, in points; empty on paper */
    Optional<Box> scene() {
        return form().map(f -> toPt(f.boundsMm().grow(MARGIN_MM)));
    }

    /** @return a box of garment millimetres in points */
    public static Box toPt(Box mm) {
        double k = 1 / Box.MM_PER_PT;
        return new Box(mm.x0() * k, mm.y0() * k, mm.x1() * k, mm.y1() * k);
    }

    /** @return the print area that the artwork is judged by, on the page in points; empty without a garment */
    public Optional<Box> areaOnPage() {
        return placed().flatMap(p -> check().map(c -> p.toPt(c.area().boxMm())));
    }

    /** @return what that print area is, and how large on the garment */
    public String areaWords() {
        PlacementCheck check = check().orElseThrow();
        LengthUnit unit = state.unit.get();
        Box box = check.area().boxMm();
        return "print area, " + check.area().name() + " " + unit.numberOfMm(box.width()) + " × "
                + unit.textOfMm(box.height());
    }

    /** @return whether the print areas stand in the garment's picture: when asked for, and while the artwork leaves one */
    public boolean showsArea() {
        return area.get() || check().map(c -> c.beyondArea().most() > 0).orElse(false);
    }
}
