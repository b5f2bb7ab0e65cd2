package inkground.viewer;

import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Sheet;
import inkground.viewer.ui.Ui;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** All keys on one sheet. */
final class KeySheet extends Sheet {
    private static final int COLUMNS = 3;
    /** Three of them beside their keys fit the smallest window. */
    private static final double WORDS_W = 222;

    private final ScrollPane scroll = new ScrollPane();

    KeySheet(ViewerState state) {
        super("key-sheet", "Keys", state.keySheet);
        GridPane table = new GridPane();
        table.getStyleClass().add("key-table");
        int rows = (Command.values().length + 2 + COLUMNS - 1) / COLUMNS;
        int at = 0;
        for (Command command : Command.values()) {
            add(table, at++, rows, command.keys(), command.sentence());
        }
        add(table, at++, rows, "Ctrl+number", "Look at the page flat, on the garment, in the line-up, or compared");
        add(table, at, rows, "Shift+arrows", "Move the page; so does dragging it");
        scroll.setContent(table);
        scroll.getStyleClass().add("key-scroll");
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.setMinHeight(0);
        scroll.setFocusTraversable(true);
        scroll.setAccessibleText("All keys; Up and Down scroll");
        VBox.setVgrow(scroll, Priority.ALWAYS);
        getChildren().add(scroll);
        setOnMouseClicked(e -> state.keySheet.set(false));
    }

    /** On a small screen the arrow keys scroll. */
    @Override
    protected void opened() {
        scroll.requestFocus();
    }

    private static void add(GridPane table, int at, int rows, String keys, String sentence) {
        Label key = Ui.label(keys, "key");
        key.setMinWidth(USE_PREF_SIZE);
        Label words = Ui.label(sentence);
        words.setWrapText(true);
        words.setPrefWidth(WORDS_W);
        words.setMinHeight(USE_PREF_SIZE);
        table.add(key, at / rows * 2, at % rows);
        table.add(words, at / rows * 2 + 1, at % rows);
    }
}
