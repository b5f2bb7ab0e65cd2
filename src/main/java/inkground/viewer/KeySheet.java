package inkground.viewer;

import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import javafx.beans.Observable;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;

/** All keys on one sheet. */
final class KeySheet extends VBox {
    KeySheet(ViewerState state) {
        setId("key-sheet");
        getStyleClass().addAll("card", "sheet");
        setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
        GridPane table = new GridPane();
        table.getStyleClass().add("key-table");
        int half = (Command.values().length + 2) / 2;
        for (Command command : Command.values()) {
            int row = command.ordinal() % half;
            int column = command.ordinal() / half * 2;
            add(table, column, row, command.keys(), command.sentence());
        }
        add(table, 2, Command.values().length - half, "Shift+arrows", "Move the page; so does dragging it");
        getChildren().addAll(Ui.label("Keys", "sheet-title"), table);
        setOnMouseClicked(e -> state.keySheet.set(false));
        state.keySheet.addListener((Observable o) -> Ui.shown(this, state.keySheet.get()));
        Ui.shown(this, false);
    }

    private static void add(GridPane table, int column, int row, String keys, String sentence) {
        Label key = Ui.label(keys, "key");
        key.setMinWidth(USE_PREF_SIZE);
        Label words = Ui.label(sentence);
        words.setWrapText(true);
        words.setMaxWidth(300);
        table.add(key, column, row);
        table.add(words, column + 1, row);
    }
}
