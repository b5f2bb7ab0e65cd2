package inkground.viewer.pins;

import inkground.viewer.rack.SubstrateText;
import inkground.viewer.state.Pins.Pin;
import inkground.viewer.state.Probe;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.Observable;
import javafx.collections.ListChangeListener;
import javafx.collections.MapChangeListener;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** The pinned places, each with what lies there on the chosen substrate and how far that is from what the artwork asks for. */
public final class PinsPanel extends VBox {
    private final ViewerState state;
    private final VBox lines = new VBox();
    private final HBox actions;

    public PinsPanel(ViewerState state) {
        this.state = state;
        setId("pins");
        getStyleClass().add("pins");
        lines.getStyleClass().add("pin-lines");
        ScrollPane scroll = new ScrollPane(lines);
        scroll.setFitToWidth(true);
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.setFocusTraversable(false);
        scroll.getStyleClass().add("notes");
        VBox.setVgrow(scroll, Priority.ALWAYS);
        Button copy = new Button("Copy as text", new FontIcon(Feather.CLIPBOARD));
        copy.setId("pins-copy");
        Ui.tip(copy, "Put the whole list on the clipboard, one line for each pin, to mail it or keep it");
        copy.setOnAction(e -> copy());
        Button clear = Ui.button("pins-clear", "Remove all", Feather.TRASH_2, Command.UNPIN_ALL, state.pins::clear);
        actions = new HBox(copy, Ui.spring(), clear);
        actions.setAlignment(Pos.CENTER_LEFT);
        actions.getStyleClass().add("pin-actions");
        getChildren().addAll(scroll, actions);
        state.pins.all.addListener((ListChangeListener<Pin>) c -> fill());
        state.pins.readings.addListener((MapChangeListener<Pin, Probe>) c -> fill());
        for (Observable value : List.of(state.unit, state.page)) {
            value.addListener(o -> fill());
        }
        fill();
    }

    private void fill() {
        Ui.shown(actions, !state.pins.all.isEmpty());
        if (state.pins.all.isEmpty()) {
            Label how = Ui.label(
                    "Point at the page and press P: the place stays pinned here while you change the"
                            + " substrate or the inks.",
                    "note");
            how.setWrapText(true);
            lines.getChildren().setAll(how);
            return;
        }
        List<Node> all = new ArrayList<>();
        state.pins.all.forEach(pin -> all.add(line(pin)));
        lines.getChildren().setAll(all);
    }

    private Node line(Pin pin) {
        PinText text = new PinText(state, pin);
        Label number = Ui.label(String.valueOf(pin.number()), "pin-number");
        number.setMinWidth(USE_PREF_SIZE);
        Button remove = new Button("", new FontIcon(Feather.X));
        remove.setId("pin-remove-" + pin.number());
        remove.getStyleClass().add("small-switch");
        remove.setAccessibleText("Remove pin " + pin.number());
        Ui.tip(remove, "Take this pin away");
        remove.setOnAction(e -> state.pins.remove(pin));
        HBox head = new HBox(number, Ui.label(text.place(), "quiet"), Ui.spring(), remove);
        head.setAlignment(Pos.CENTER_LEFT);
        head.getStyleClass().add("pin-head");
        VBox line = new VBox(head);
        line.setId("pin-" + pin.number());
        line.getStyleClass().add("pin-item");
        for (String words : List.of(text.tints(), text.colour())) {
            Label label = Ui.label(words, "figure");
            label.setWrapText(true);
            line.getChildren().add(label);
        }
        line.setAccessibleText(text.whole());
        return line;
    }

    private void copy() {
        StringBuilder words = new StringBuilder();
        if (state.file.get() != null && state.substrate.get() != null) {
            words.append(state.file.get().path().getFileName()).append(" on ");
            words.append(state.substrate.get().name()).append(", ");
            words.append(SubstrateText.lab(state.substrate.get().lab())).append('\n');
        }
        state.pins.all.forEach(
                pin -> words.append(new PinText(state, pin).whole()).append('\n'));
        ClipboardContent content = new ClipboardContent();
        content.putString(words.toString());
        Clipboard.getSystemClipboard().setContent(content);
        state.news.set(state.pins.all.size() == 1 ? "One pin copied" : state.pins.all.size() + " pins copied");
    }
}
