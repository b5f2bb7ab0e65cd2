package inkground.viewer.lineup;

import inkground.viewer.state.LineUp;
import inkground.viewer.state.Rack;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import javafx.beans.Observable;
import javafx.collections.SetChangeListener;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.HBox;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** Says what lies in the line-up and in which inks, and decides its order. */
final class LineUpBar extends HBox {
    private final ViewerState state;
    private final Label what = Ui.label("", "line-up-what");
    private final Button unmark = new Button("", new FontIcon(Feather.X));

    LineUpBar(ViewerState state) {
        this.state = state;
        getStyleClass().add("line-up-bar");
        setAlignment(Pos.CENTER_LEFT);
        what.setId("line-up-what");
        what.setMinWidth(0);
        unmark.setId("line-up-unmark");
        unmark.setMinWidth(USE_PREF_SIZE);
        unmark.setAccessibleText("Take all marks away");
        unmark.setOnAction(e -> state.rack.marked.clear());
        Ui.tip(unmark, "Take all marks away; the line-up then shows the garments");
        ToggleGroup group = new ToggleGroup();
        HBox order = new HBox(
                order(
                        "line-up-by-score",
                        "By vanish",
                        "First the substrates that keep most of the artwork's edges",
                        Rack.Order.VANISH,
                        group),
                order("line-up-by-rack", "By rack", "In the order of the rack", Rack.Order.RACK, group));
        order.getStyleClass().add("over");
        order.setMinWidth(USE_PREF_SIZE);
        Button write = new Button("Contact sheet", new FontIcon(Feather.FILE_PLUS));
        write.setId("line-up-write");
        write.setMinWidth(USE_PREF_SIZE);
        write.setOnAction(e -> state.lineUp.sheet.set(true));
        Ui.tip(write, "Write all that lies in the line-up as one picture, with names and vanish scores");
        getChildren().addAll(what, unmark, Ui.spring(), order, write);
        for (Observable value :
                new Observable[] {state.lineUp.cards(), state.page, state.solo, state.history.now(), state.substrates
                }) {
            value.addListener(o -> tell());
        }
        state.hidden.addListener((SetChangeListener<Integer>) c -> tell());
        state.rack.marked.addListener((SetChangeListener<String>) c -> tell());
        tell();
    }

    private ToggleButton order(String id, String text, String sentence, Rack.Order which, ToggleGroup group) {
        ToggleButton toggle = new ToggleButton(text);
        toggle.setId(id);
        toggle.setToggleGroup(group);
        toggle.setMinWidth(USE_PREF_SIZE);
        toggle.setAccessibleText(text + ": " + sentence);
        Ui.tip(toggle, sentence);
        toggle.setOnAction(e -> {
            toggle.setSelected(true);
            state.lineUp.order.set(which);
        });
        state.lineUp.order.addListener((Observable o) -> toggle.setSelected(state.lineUp.order.get() == which));
        toggle.setSelected(state.lineUp.order.get() == which);
        return toggle;
    }

    private void tell() {
        Ui.shown(unmark, !state.rack.marked.isEmpty());
        if (state.page.get() == null) {
            what.setText("");
            return;
        }
        int count = state.lineUp.cards().size();
        int shown = state.shownInks().size();
        int all = state.page.get().inks().size();
        String inks = state.solo.get() >= 0
                ? state.inkName(state.solo.get()) + " alone"
                : shown == all ? "all " + all + " inks" : shown + " of " + all + " inks";
        boolean chosen = state.lineUp.chosen();
        String words = count
                + (chosen ? " marked, " : " garments, ")
                + inks
                + (state.history.get().underbase().isPresent() ? ", underbase" : "")
                + (chosen ? "" : ". Mark " + LineUp.FEWEST + " to " + LineUp.MOST + " in the rack to choose");
        what.setText(words);
        Ui.tip(what, words);
    }
}
