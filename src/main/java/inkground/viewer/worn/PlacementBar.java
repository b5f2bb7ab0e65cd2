package inkground.viewer.worn;

import inkground.garment.Form;
import inkground.garment.Placed;
import inkground.garment.Placement;
import inkground.garment.PlacementCheck;
import inkground.substrate.Cut;
import inkground.viewer.state.LengthUnit;
import inkground.viewer.state.ViewerState;
import inkground.viewer.state.Worn;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javafx.beans.Observable;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.kordamp.ikonli.feather.Feather;

/** Which garment in which size and side, where the artwork lies on it in figures, and in words whether it fits there. */
final class PlacementBar extends VBox {
    private static final PseudoClass TROUBLED = PseudoClass.getPseudoClass("troubled");

    private final ViewerState state;
    private final Worn worn;
    private final ChoiceBox<Cut> cut = new ChoiceBox<>();
    private final ChoiceBox<String> size = new ChoiceBox<>();
    private final Map<Cut.Side, ToggleButton> sides = new EnumMap<>(Cut.Side.class);
    private final LengthField below;
    private final LengthField off;
    private final LengthField width;
    private final Label belowWords = Ui.label("", "field-name");
    private final Label scale = Ui.label("", "figure");
    private final ToggleButton ink = new ToggleButton("To the ink");
    private final Label verdict = Ui.label("", "verdict");
    private boolean filling;

    /**
     * @param done told when a figure was entered: the keys belong to the window again
     */
    PlacementBar(ViewerState state, Runnable done) {
        this.state = state;
        this.worn = state.worn;
        getStyleClass().add("placement-bar");
        setId("placement-bar");
        below = field(
                "below-collar",
                "From the collar down to the top of the artwork",
                v -> place(worn.placement().at(v, placedNow().offCentreMm())));
        off = field(
                "off-centre",
                "From the centre line to the middle of the artwork, to the right as seen",
                v -> place(worn.placement().at(placedNow().artworkMm().y0(), v)));
        width = new LengthField(
                "print-width",
                "Width of the artwork as it is printed; its height follows",
                Placement.NARROWEST_MM,
                Placement.WIDEST_MM,
                v -> change(
                        "make the artwork " + Math.round(v) + " mm wide",
                        worn.placement().wide(Optional.of(v))));
        for (LengthField field : List.of(below, off, width)) {
            field.onEntered(done);
        }
        FlowPane row = new FlowPane(garment());
        row.getChildren().addAll(figures());
        row.getStyleClass().add("placement-row");
        row.setPrefWrapLength(200);
        HBox words = new HBox(
                verdict,
                Ui.toggle("print-area", "Print area", Feather.SQUARE, Command.PRINT_AREA, worn.area),
                Ui.toggle("cloth", "Folds", Feather.FEATHER, Command.CLOTH, worn.cloth));
        words.setAlignment(Pos.CENTER_LEFT);
        words.getStyleClass().add("verdict-row");
        verdict.setId("verdict");
        verdict.setWrapText(true);
        verdict.setMaxWidth(Double.MAX_VALUE);
        verdict.setMinWidth(0);
        HBox.setHgrow(verdict, javafx.scene.layout.Priority.ALWAYS);
        getChildren().addAll(words, row);
        for (Observable value :
                new Observable[] {state.history.now(), state.substrate, state.page, state.unit, worn.cuts, worn.inkedPt
                }) {
            value.addListener(o -> fill());
        }
        fill();
    }

    private Placed placedNow() {
        return worn.placed().orElseThrow();
    }

    private void place(Placement to) {
        change("move the artwork", to);
    }

    private void change(String what, Placement to) {
        if (!filling && worn.placed().isPresent()) {
            worn.place(what, new Object(), to);
        }
    }

    private LengthField field(String id, String sentence, java.util.function.DoubleConsumer taken) {
        return new LengthField(id, sentence, -Placement.FARTHEST_MM, Placement.FARTHEST_MM, taken);
    }

    private Node garment() {
        cut.setId("cut");
        cut.setConverter(words(Cut::name));
        describe(cut, "The cut of the garment; its measures are this project's own, not a maker's");
        cut.valueProperty().addListener((o, before, now) -> {
            if (now != null) {
                change("wear a " + now.name(), worn.placement().wearing(now.id()));
            }
        });
        size.setId("size");
        describe(size, "The size; the artwork keeps its own size and its distance from the collar");
        size.valueProperty().addListener((o, before, now) -> {
            if (now != null) {
                change("wear size " + now, worn.placement().sized(now));
            }
        });
        return group(cut, size, sideSwitch());
    }

    private Node sideSwitch() {
        HBox both = new HBox();
        both.getStyleClass().add("over");
        for (Cut.Side side : Cut.Side.values()) {
            String word = side.word();
            ToggleButton toggle = new ToggleButton(word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1));
            toggle.setId("side-" + word);
            describe(toggle, "Lay the artwork on the " + word);
            toggle.setOnAction(e -> {
                toggle.setSelected(true);
                change("lay the artwork on the " + word, worn.placement().on(side));
            });
            sides.put(side, toggle);
            both.getChildren().add(toggle);
        }
        return both;
    }

    private List<Node> figures() {
        Button own = new Button("Own size");
        own.setId("own-size");
        describe(own, "Print the artwork in the size the file has");
        own.setOnAction(e ->
                change("print the artwork in its own size", worn.placement().wide(Optional.empty())));
        scale.setMinWidth(46);
        return List.of(
                group(belowWords, below),
                group(Ui.label("Off centre", "field-name"), off),
                group(Ui.label("Width", "field-name"), width, scale),
                group(own, measured()));
    }

    private Node measured() {
        ink.setId("measure-ink");
        describe(ink, "Measure to the ink instead of the trim: to the box around everything that prints");
        ink.setOnAction(e -> {
            boolean on = ink.isSelected();
            change(
                    on ? "measure to the ink" : "measure to the trim",
                    worn.placement().measuredTo(on ? Placement.Measured.INK : Placement.Measured.TRIM));
        });
        return ink;
    }

    private static void describe(Control control, String sentence) {
        control.setAccessibleText(sentence);
        control.setMinWidth(USE_PREF_SIZE);
        Ui.tip(control, sentence);
    }

    private static HBox group(Node... nodes) {
        HBox group = new HBox(nodes);
        group.setAlignment(Pos.CENTER_LEFT);
        group.getStyleClass().add("field-group");
        return group;
    }

    private static <T> StringConverter<T> words(java.util.function.Function<T, String> name) {
        return new StringConverter<>() {
            @Override
            public String toString(T value) {
                return value == null ? "" : name.apply(value);
            }

            @Override
            public T fromString(String text) {
                throw new UnsupportedOperationException("chosen, never typed");
            }
        };
    }

    private void fill() {
        Optional<Placed> placed = worn.placed();
        Ui.shown(this, placed.isPresent());
        if (placed.isEmpty()) {
            return;
        }
        filling = true;
        try {
            fill(placed.get());
        } finally {
            filling = false;
        }
    }

    private void fill(Placed placed) {
        Form form = placed.form();
        LengthUnit unit = state.unit.get();
        if (!cut.getItems().equals(worn.cuts)) {
            cut.getItems().setAll(worn.cuts);
        }
        cut.setValue(form.cut());
        List<String> names = form.cut().sizes().stream().map(Cut.Size::name).toList();
        if (!size.getItems().equals(names)) {
            size.getItems().setAll(names);
        }
        size.setValue(form.size().name());
        sides.forEach((side, toggle) -> {
            toggle.setSelected(side == form.face().side());
            toggle.setDisable(form.cut().face(side).isEmpty());
        });
        String from = form.face().from();
        belowWords.setText("Below the " + from.substring(from.lastIndexOf(' ') + 1));
        below.show(placed.artworkMm().y0(), unit);
        off.show(placed.offCentreMm(), unit);
        width.show(placed.artworkMm().width(), unit);
        scale.setText(unit.word()
                + (Math.abs(placed.scale() - 1) < 5e-4
                        ? ""
                        : String.format(Locale.ROOT, ", %.0f %%", placed.scale() * 100)));
        ink.setSelected(worn.placement().measured() == Placement.Measured.INK);
        verdict(worn.check().orElseThrow(), unit);
    }

    private void verdict(PlacementCheck check, LengthUnit unit) {
        List<String> troubles = check.troubles(unit::textOfMm);
        pseudoClassStateChanged(TROUBLED, !troubles.isEmpty());
        verdict.setText(
                troubles.isEmpty()
                        ? "Inside the print area '" + check.area().name() + "', "
                                + unit.numberOfMm(check.area().boxMm().width()) + " × "
                                + unit.textOfMm(check.area().boxMm().height()) + "."
                        : "The artwork " + String.join("; it ", troubles) + ".");
        Ui.tip(
                verdict,
                "Print areas are common practice, no source: your printer's own frames and platens win. "
                        + "Measures of the cut are invented for the demo.");
    }
}
