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
    private static final int COLUMNS = 3;
    /** Three of them beside their keys fit the smallest window. */
    private static final double WORDS_W = 222;

    KeySheet(ViewerState state) {
        setId("key-sheet");
        getStyleClass().addAll("card", "sheet");
        setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
        GridPane table = new GridPane();
        table.getStyleClass().add("key-table");
        int rows = (Command.values().length + 2 + COLUMNS - 1) / COLUMNS;
        int at = 0;
        for (Command command : Command.values()) {
            add(table, at++, rows, command.keys(), command.sentence());
        }
        add(table, at++, rows, "Ctrl+number", "Lay the artwork out otherwise: flat, or side by side");
        add(table, at, rows, "Shift+arrows", "Move the page; so does dragging it");
        getChildren().addAll(Ui.label("Keys", "sheet-title"), table);
        setOnMouseClicked(e -> state.keySheet.set(false));
        state.keySheet.addListener((Observable o) -> Ui.shown(this, state.keySheet.get()));
        Ui.shown(this, false);
    }

    private static void add(GridPane table, int at, int rows, String keys, String sentence) {
        Label key = Ui.label(keys, "key");
        key.setMinWidth(USE_PREF_SIZE);
        Label words = Ui.label(sentence);
        words.setWrapText(true);
        words.setPrefWidth(WORDS_W);
        table.add(key, at / rows * 2, at % rows);
        table.add(words, at / rows * 2 + 1, at % rows);
    }
}
