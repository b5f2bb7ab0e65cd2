package inkground.viewer.ui;

import java.util.function.Supplier;
import javafx.beans.Observable;
import javafx.beans.property.BooleanProperty;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** A card in the middle of the window, over everything else, as long as its property says so. */
public abstract class Sheet extends VBox {
    private final BooleanProperty open;
    private final Label title;

    /**
     * @param id of the node
     * @param title for the user
     * @param open whether it is seen
     */
    protected Sheet(String id, String title, BooleanProperty open) {
        this.open = open;
        this.title = Ui.label(title, "sheet-title");
        setId(id);
        getStyleClass().addAll("card", "sheet");
        setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
        getChildren().add(this.title);
        Ui.shown(this, false);
        open.addListener((Observable o) -> follow());
    }

    /** @return the place of a sheet in the window; it is built when it is first opened */
    public static <S extends Sheet> Later<S> place(BooleanProperty open, Supplier<S> make) {
        Later<S> place = new Later<>(make, sheet -> ((Sheet) sheet).follow());
        place.visibleProperty().bind(open);
        return place;
    }

    private void follow() {
        Ui.shown(this, open.get());
        if (open.get()) {
            opened();
        }
    }

    /** Adds a row to the fields of a sheet: a name, and on the same line of writing what it names. */
    protected static void row(GridPane fields, String words, Node named) {
        Label name = Ui.label(words);
        name.setLabelFor(named);
        fields.addRow(fields.getRowCount(), name, named);
        // Boxes have no baseline of their own: the name is as tall as the first line, and in its middle.
        GridPane.setValignment(name, VPos.TOP);
        GridPane.setValignment(named, VPos.TOP);
        name.minHeightProperty().bind(firstLine(named).heightProperty());
    }

    private static Region firstLine(Node named) {
        return named instanceof VBox lines ? firstLine(lines.getChildren().get(0)) : (Region) named;
    }

    /** Changes the title. */
    protected final void title(String now) {
        title.setText(now);
    }

    /** Told whenever the sheet has come into sight. */
    protected void opened() {}
}
