package inkground.viewer.rack;

import inkground.viewer.state.Rack;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import javafx.beans.Observable;
import javafx.beans.binding.Bindings;
import javafx.collections.SetChangeListener;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** Finds what hangs in the rack, ranks it, marks it, and adds to it. */
final class RackTools extends VBox {
    private final ViewerState state;
    private final TextField search = new TextField();
    private final Label found = Ui.label("", "caption");

    RackTools(ViewerState state) {
        this.state = state;
        getStyleClass().add("rack-tools");
        setMinWidth(USE_PREF_SIZE);
        search.setId("search");
        search.setPromptText("Find  [Ctrl+F]");
        search.setPrefColumnCount(8);
        search.setAccessibleText(Command.SEARCH.sentence());
        Ui.tip(search, Command.SEARCH.tip() + ". Enter chooses what is found, one after the other; Esc clears.");
        search.textProperty().bindBidirectional(state.rack.query);
        search.setOnKeyPressed(e -> {
            if (e.getCode() == KeyCode.ENTER) {
                state.finder.chooseNext();
                e.consume();
            }
        });
        found.setId("found");
        for (Observable value : new Observable[] {state.rack.query, state.rack.hung(), state.page}) {
            value.addListener(o -> tell());
        }
        getChildren().addAll(search, switches(), own(), found);
        tell();
    }

    private HBox switches() {
        ToggleButton favourite = Ui.toggle("favourite", "", Command.FAVOURITE, this::favourite);
        favourite.setGraphic(new FontIcon(Feather.STAR));
        ToggleButton mark = Ui.toggle("mark", "", Command.MARK, this::mark);
        mark.setGraphic(new FontIcon(Feather.CHECK_SQUARE));
        ToggleButton rank = new ToggleButton("Rank");
        rank.setId("rank");
        Ui.tip(
                rank,
                "Hang first what keeps most of the artwork's edges: the vanish score is the share that loses its contrast");
        rank.setAccessibleText("Rank by vanish score");
        rank.setOnAction(e -> state.rack.order.set(rank.isSelected() ? Rack.Order.VANISH : Rack.Order.RACK));
        state.rack.order.addListener((Observable o) -> rank.setSelected(state.rack.order.get() == Rack.Order.VANISH));
        SetChangeListener<String> changed = c -> show(favourite, mark);
        state.rack.favourites.addListener(changed);
        state.rack.marked.addListener(changed);
        state.substrate.addListener((Observable o) -> show(favourite, mark));
        HBox row = new HBox(favourite, mark, rank);
        row.getStyleClass().add("rack-switches");
        return row;
    }

    private void show(ToggleButton favourite, ToggleButton mark) {
        String id = state.substrate.get() == null ? "" : state.substrate.get().id();
        favourite.setSelected(state.rack.favourites.contains(id));
        mark.setSelected(state.rack.marked.contains(id));
    }

    private HBox own() {
        Button add = new Button("Own", new FontIcon(Feather.PLUS));
        add.setId("own-add");
        add.setMinWidth(USE_PREF_SIZE);
        add.setAccessibleText("Make an own paper or garment");
        Ui.tip(add, "Make an own paper or garment: by Lab, CSS colour, measured file or photograph");
        add.setOnAction(e -> state.own.open(null));
        Button edit = new Button("", new FontIcon(Feather.EDIT_2));
        edit.setId("own-edit");
        edit.setMinWidth(USE_PREF_SIZE);
        edit.setAccessibleText("Change or remove the chosen own substrate");
        Ui.tip(edit, "Change or remove the chosen substrate, if it is one of your own");
        edit.setOnAction(e -> state.own.open(state.substrate.get()));
        edit.disableProperty()
                .bind(Bindings.createBooleanBinding(
                        () -> state.substrate.get() == null
                                || !state.substrate.get().own(),
                        state.substrate));
        HBox row = new HBox(add, edit);
        row.getStyleClass().add("rack-switches");
        return row;
    }

    void favourite() {
        if (state.substrate.get() != null) {
            state.rack.toggleFavourite(state.substrate.get());
        }
    }

    void mark() {
        if (state.substrate.get() != null) {
            RackCell.mark(state, state.substrate.get());
        }
    }

    /** Puts the caret into the field. */
    void search() {
        search.requestFocus();
        search.selectAll();
    }

    /** @return whether there was a search to end, or the caret to take out of the field */
    boolean endSearch() {
        boolean ended = state.finder.searching() || search.isFocused();
        state.rack.query.set("");
        return ended;
    }

    private void tell() {
        int count = state.finder.count();
        found.setText(
                !state.finder.searching()
                        ? count + " substrates"
                        : count == 0 ? "nothing found" : count + " found; Enter chooses");
    }
}
