package inkground.viewer.colours;

import inkground.app.ColourRules;
import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourAssignment.Target;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Ui;
import java.util.List;
import java.util.function.Consumer;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;
import javafx.scene.shape.Rectangle;

/** Shows one line of the list of colours: the colour, its figures, and what it is printed as. */
final class ColourCell extends ListCell<ColourRow> {
    private static final PseudoClass HEADING = PseudoClass.getPseudoClass("heading");
    private static final PseudoClass GROUPED = PseudoClass.getPseudoClass("grouped");
    private static final PseudoClass CHANGED = PseudoClass.getPseudoClass("changed");

    private final ViewerState state;
    private final Rectangle swatch = new Rectangle(34, 30);
    private final Label words = Ui.label("", "colour-words");
    private final Label figures = Ui.label("", "quiet");
    private final Label target = Ui.label("", "colour-target");
    private final HBox colour;
    private final Label title = Ui.label("", "colour-heading");
    private final Button all = new Button("Choose all");
    private final HBox heading;

    /**
     * @param choose told to choose the colours of a group
     */
    ColourCell(ViewerState state, Consumer<List<ColourRow.Entry>> choose) {
        this.state = state;
        getStyleClass().add("colour-cell");
        setPrefWidth(0);
        swatch.getStyleClass().add("colour-swatch");
        VBox texts = new VBox(words, figures);
        texts.setMinWidth(0);
        texts.setAlignment(Pos.CENTER_LEFT);
        HBox.setHgrow(texts, Priority.ALWAYS);
        target.setMaxWidth(118);
        colour = new HBox(swatch, texts, target);
        colour.getStyleClass().add("colour-row");
        colour.setAlignment(Pos.CENTER_LEFT);
        title.setWrapText(true);
        title.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(title, Priority.ALWAYS);
        all.setMinWidth(USE_PREF_SIZE);
        all.setFocusTraversable(false);
        Ui.tip(all, "Choose all colours of the group, to print them as one ink");
        all.setOnAction(e -> {
            if (getItem() instanceof ColourRow.Heading head) {
                choose.accept(head.group());
            }
        });
        heading = new HBox(title, all);
        heading.setAlignment(Pos.CENTER_LEFT);
    }

    @Override
    protected void updateItem(ColourRow row, boolean empty) {
        super.updateItem(row, empty);
        pseudoClassStateChanged(HEADING, row instanceof ColourRow.Heading);
        pseudoClassStateChanged(GROUPED, row instanceof ColourRow.Entry entry && entry.grouped());
        setGraphic(null);
        if (empty || row == null) {
            return;
        }
        if (row instanceof ColourRow.Heading head) {
            title.setText(head.words());
            Ui.shown(all, !head.group().isEmpty());
            setGraphic(heading);
            setAccessibleText(head.words());
        } else {
            show((ColourRow.Entry) row);
        }
    }

    private void show(ColourRow.Entry entry) {
        int rgb = entry.rgb();
        swatch.setFill(Color.rgb(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255));
        words.setText(entry.words());
        figures.setText(entry.figures());
        Target to = ColourRules.ruleFor(entry.subject(), state.history.get().assignment())
                .map(Rule::to)
                .orElse(null);
        target.setText(to == null ? "as stated" : "→ " + Targets.words(to));
        target.pseudoClassStateChanged(CHANGED, to != null);
        setGraphic(colour);
        setAccessibleText(entry.words() + ", " + entry.figures() + ", printed as " + Targets.words(to));
    }
}
