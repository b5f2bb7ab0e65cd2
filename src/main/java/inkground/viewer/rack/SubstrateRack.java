package inkground.viewer.rack;

import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.kordamp.ikonli.feather.Feather;

/** The papers and garments, hung side by side under the proof; the one chosen is pulled up towards it. */
public final class SubstrateRack extends HBox {
    private final RackTools tools;

    public SubstrateRack(ViewerState state) {
        tools = new RackTools(state);
        setId("rack");
        getStyleClass().add("rack");
        RackRow row = new RackRow(state);
        HBox.setHgrow(row, Priority.ALWAYS);
        getChildren()
                .addAll(
                        tools,
                        Ui.button(
                                "previous-substrate",
                                "",
                                Feather.CHEVRON_LEFT,
                                Command.PREVIOUS_SUBSTRATE,
                                () -> state.stepSubstrate(-1)),
                        row,
                        Ui.button(
                                "next-substrate",
                                "",
                                Feather.CHEVRON_RIGHT,
                                Command.NEXT_SUBSTRATE,
                                () -> state.stepSubstrate(1)));
    }

    /** Puts the caret into the search field. */
    public void search() {
        tools.search();
    }

    /** @return whether there was a search to end, or the caret to take out of the field */
    public boolean endSearch() {
        return tools.endSearch();
    }

    /** Makes the chosen substrate a favourite, or an ordinary one again. */
    public void favourite() {
        tools.favourite();
    }

    /** Marks the chosen substrate for the line-up, or takes the mark away. */
    public void mark() {
        tools.mark();
    }
}
