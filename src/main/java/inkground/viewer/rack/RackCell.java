package inkground.viewer.rack;

import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.Ikon;
import org.kordamp.ikonli.feather.Feather;
import org.kordamp.ikonli.javafx.FontIcon;

/** One substrate in the rack: its swatch, how the artwork holds on it, its name, and the marks the user has given it. */
final class RackCell extends VBox {
    /** Width of a cell in logical pixels. */
    static final double WIDTH = 88;

    private static final double SWATCH_W = 66;
    private static final double SWATCH_H = 50;
    private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");
    private static final PseudoClass ON = PseudoClass.getPseudoClass("on");

    private final ViewerState state;
    private final SubstrateCard card;
    private final VanishBar vanish = new VanishBar(30);
    private final StackPane favourite;
    private final StackPane marked;

    RackCell(ViewerState state, SubstrateCard card) {
        this.state = state;
        this.card = card;
        favourite = chip("favourite", Feather.STAR, Command.FAVOURITE, () -> state.rack.toggleFavourite(card));
        marked = chip("mark", Feather.CHECK, Command.MARK, () -> mark(state, card));
        StackPane.setAlignment(marked, Pos.TOP_LEFT);
        StackPane.setAlignment(favourite, Pos.TOP_RIGHT);
        StackPane cloth = new StackPane(new Swatch(card, SWATCH_W, SWATCH_H), marked, favourite);
        cloth.setMaxSize(SWATCH_W, SWATCH_H);
        Label name = Ui.label(card.name().replaceFirst(", ", ",\n"), "rack-name");
        name.setWrapText(true);
        name.setMaxWidth(WIDTH - 4);
        name.setPrefWidth(WIDTH - 4);
        name.setAlignment(Pos.TOP_CENTER);
        setId("substrate-" + card.id());
        getStyleClass().add("rack-item");
        setAccessibleRole(AccessibleRole.RADIO_BUTTON);
        getChildren().addAll(cloth, vanish, name);
        setOnMouseClicked(e -> state.substrate.set(card));
        Ui.tip(cloth, card.name() + "\n" + SubstrateText.colour(card) + "\n" + card.source());
        refresh();
    }

    /** Marks a substrate for the line-up, and says so when no more can be. */
    static void mark(ViewerState state, SubstrateCard card) {
        if (!state.rack.toggleMark(card)) {
            state.news.set("The line-up holds " + state.rack.marked.size() + "; take the mark from another first");
        }
    }

    private StackPane chip(String kind, Ikon icon, Command command, Runnable action) {
        StackPane chip = new StackPane(new FontIcon(icon));
        chip.setId(kind + "-" + card.id());
        chip.getStyleClass().add("rack-chip");
        chip.setMaxSize(18, 18);
        chip.setOnMouseClicked(e -> {
            action.run();
            e.consume();
        });
        Ui.tip(chip, command.tip());
        return chip;
    }

    /** Shows what the state says of it now. */
    void refresh() {
        boolean isFavourite = state.rack.favourites.contains(card.id());
        boolean isMarked = state.rack.marked.contains(card.id());
        boolean isChosen = card.equals(state.following.pictured().get());
        pseudoClassStateChanged(CHOSEN, isChosen);
        favourite.pseudoClassStateChanged(ON, isFavourite);
        marked.pseudoClassStateChanged(ON, isMarked);
        vanish.show(state.rack.scores.get().get(card.id()));
        setAccessibleText((card.garment() ? "Garment " : "Paper ")
                + card.name()
                + (isChosen ? ", chosen" : "")
                + (isFavourite ? ", favourite" : "")
                + (isMarked ? ", marked for the line-up" : ""));
    }
}
