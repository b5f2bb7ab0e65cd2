package inkground.viewer.stack;

import inkground.app.Arrangement.WhiteBase;
import inkground.appearance.Underbase;
import inkground.ink.InkKind;
import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Amount;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Drawer;
import inkground.viewer.ui.Ui;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javafx.beans.Observable;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.scene.shape.Rectangle;

/** White between cloth and inks: whether it is laid, and in its drawer how. */
final class UnderbaseBand extends VBox {
    private static final PseudoClass OFF = PseudoClass.getPseudoClass("off");
    private static final double MM_PER_INCH = 25.4;
    private static final double LAYER_H = 34;

    private final ViewerState state;
    private final Rectangle layer = new Rectangle(InkBand.LAYER_W, LAYER_H);
    private final Label figures = Ui.label("", "quiet");
    private final ToggleButton lay;
    private final ToggleButton handle = Drawer.handle("underbase-drawer", "Tint, choke and place of the underbase");
    private final VBox drawer = new VBox();
    private final Amount tint;
    private final Amount choke;
    private final Amount hits;
    private final FlowPane under = new FlowPane();
    private List<String> offered = List.of();

    UnderbaseBand(ViewerState state) {
        this.state = state;
        setId("underbase-band");
        getStyleClass().add("underbase-band");
        lay = Ui.toggle("underbase", "Lay", Command.UNDERBASE, state.printing::toggleUnderbase);
        handle.selectedProperty().bindBidirectional(state.stack.underbaseDrawer);
        tint = new Amount(
                "underbase-tint",
                "Tint",
                "How much white: less lets the cloth dull the colours, but feels softer",
                0,
                1,
                0.01,
                (value, gesture) -> change("tint of the underbase", gesture, b -> b.ofTint(value)));
        tint.unit(new Amount.Unit("%", 100, 0));
        choke = new Amount(
                "underbase-choke",
                "Choke",
                "How far the white stays inside the edge of its ink, so that none shows when inks are out of register;"
                        + " below 0 it spreads beyond the edge",
                -Underbase.MOST_CHOKE_MM,
                Underbase.MOST_CHOKE_MM,
                0.05,
                (value, gesture) -> change("choke of the underbase", gesture, b -> b.choked(value)));
        hits = new Amount(
                "underbase-hits",
                "Hits",
                "How many times the white is printed over itself: each hides more, and feels heavier",
                1,
                Underbase.MOST_HITS,
                1,
                (value, gesture) -> change("hits of the underbase", gesture, b -> b.ofHits((int) Math.round(value))));
        hits.unit(new Amount.Unit("×", 1, 0));
        getChildren().addAll(row(), drawer());
        for (Observable value : new Observable[] {
            state.history.now(), state.substrate, state.page, state.unit, state.stack.underbaseDrawer, state.figures
        }) {
            value.addListener(o -> follow());
        }
        follow();
    }

    private HBox row() {
        layer.getStyleClass().add("underbase-layer");
        Pane section = new Pane(layer);
        section.setMinSize(InkBand.LAYER_W, LAYER_H);
        section.setMaxSize(InkBand.LAYER_W, LAYER_H);
        Label name = Ui.label("Underbase", "ink-name");
        VBox words = new VBox(name, figures);
        words.getStyleClass().add("ink-words");
        words.setAlignment(Pos.CENTER_LEFT);
        words.setMinWidth(0);
        HBox.setHgrow(words, Priority.ALWAYS);
        HBox row = new HBox(section, words, lay, handle);
        row.setAlignment(Pos.CENTER_LEFT);
        return row;
    }

    private VBox drawer() {
        Label words = Ui.label("White under", "quiet");
        under.getStyleClass().add("under-inks");
        under.setId("under-inks");
        drawer.getStyleClass().add("drawer");
        drawer.getChildren().addAll(tint, hits, choke, words, under);
        return drawer;
    }

    /** Gives the keys to the tint. */
    void focusTint() {
        tint.focusSlider();
    }

    private void change(String what, Object gesture, UnaryOperator<WhiteBase> change) {
        state.printing.changeUnderbase(what, gesture, change);
    }

    private void follow() {
        boolean cloth = state.substrate.get() != null && state.substrate.get().garment();
        boolean lies = state.printing.underbaseLies();
        Ui.shown(this, cloth);
        lay.setSelected(lies);
        pseudoClassStateChanged(OFF, !lies);
        Optional<WhiteBase> base = state.history.get().underbase().filter(b -> lies);
        figures.setText(base.map(this::words).orElse("white ink, not laid"));
        Ui.shown(drawer, state.stack.underbaseDrawer.get());
        drawer.setDisable(!lies);
        boolean mm = state.unit.get() == LengthUnit.MM;
        choke.unit(new Amount.Unit(state.unit.get().word(), mm ? 1 : 1 / MM_PER_INCH, mm ? 2 : 3));
        base.ifPresent(b -> {
            tint.show(b.tint());
            choke.show(b.chokeMm());
            hits.show(b.hits());
        });
        offer(base.orElse(WhiteBase.FULL));
    }

    private String words(WhiteBase base) {
        double mm = base.chokeMm();
        String moved = mm == 0 ? "" : (mm > 0 ? ", choke " : ", spread ") + length(Math.abs(mm));
        String times = base.hits() == 1 ? "" : ", " + base.hits() + " hits";
        return String.format(Locale.ROOT, "white ink, %.0f %%%s%s", base.tint() * 100, times, moved);
    }

    private String length(double mm) {
        return state.unit.get() == LengthUnit.MM
                ? String.format(Locale.ROOT, "%.2f mm", mm)
                : String.format(Locale.ROOT, "%.3f in", mm / MM_PER_INCH);
    }

    /** One box for each ink that can have white under it; kept while the inks stay, so that the focus does. */
    private void offer(WhiteBase base) {
        List<String> inks = state.page.get() == null
                ? List.of()
                : state.printing.stacked().stream()
                        .map(plane -> state.page.get().inks().get(plane).ink())
                        .filter(ink -> ink.kind() == InkKind.SPOT || ink.kind() == InkKind.PROCESS)
                        .map(ink -> ink.name())
                        .toList();
        if (!inks.equals(offered)) {
            offered = inks;
            under.getChildren().setAll(inks.stream().map(this::box).toList());
        }
        for (int i = 0; i < offered.size(); i++) {
            ((CheckBox) under.getChildren().get(i)).setSelected(base.liesUnder(offered.get(i)));
        }
    }

    private CheckBox box(String ink) {
        CheckBox box = new CheckBox(ink);
        box.setId("under-" + ink.replaceAll("[^A-Za-z0-9]+", "-"));
        box.setMnemonicParsing(false);
        Ui.tip(box, "Without white, " + ink + " is printed straight on the cloth");
        box.setOnAction(e -> {
            boolean white = box.isSelected();
            change(
                    (white ? "white under " : "no white under ") + ink,
                    new Object(),
                    b -> white ? b.laidUnder(ink) : b.knockedOutUnder(ink));
        });
        return box;
    }
}
