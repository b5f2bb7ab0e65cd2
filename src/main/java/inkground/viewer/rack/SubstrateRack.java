package inkground.viewer.rack;

import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import java.util.HashMap;
import java.util.Map;
import javafx.beans.Observable;
import javafx.css.PseudoClass;
import javafx.geometry.Bounds;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.feather.Feather;

/** The papers and garments, hung side by side under the proof; the one chosen is pulled up towards it. */
public final class SubstrateRack extends HBox {
    private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");
    private static final double SWATCH_W = 66;
    private static final double SWATCH_H = 50;

    private final ViewerState state;
    private final Map<SubstrateCard, VBox> items = new HashMap<>();
    private final HBox row = new HBox();
    private final ScrollPane scroll = new ScrollPane(row);

    public SubstrateRack(ViewerState state) {
        this.state = state;
        setId("rack");
        getStyleClass().add("rack");
        row.getStyleClass().add("rack-row");
        scroll.setVbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.setFitToHeight(true);
        scroll.setFocusTraversable(false);
        scroll.setOnScroll(e -> scrollBy(-(e.getDeltaY() + e.getDeltaX())));
        HBox.setHgrow(scroll, Priority.ALWAYS);
        getChildren()
                .addAll(
                        Ui.button(
                                "previous-substrate",
                                "",
                                Feather.CHEVRON_LEFT,
                                Command.PREVIOUS_SUBSTRATE,
                                () -> state.stepSubstrate(-1)),
                        scroll,
                        Ui.button(
                                "next-substrate",
                                "",
                                Feather.CHEVRON_RIGHT,
                                Command.NEXT_SUBSTRATE,
                                () -> state.stepSubstrate(1)));
        scroll.viewportBoundsProperty().addListener((Observable o) -> {
            if (items.containsKey(state.substrate.get())) {
                reveal(items.get(state.substrate.get()));
            }
        });
        state.substrates.addListener((Observable o) -> fill());
        state.substrate.addListener((o, before, now) -> choose(before, now));
        fill();
    }

    private void fill() {
        items.clear();
        row.getChildren().setAll(group("Papers", false), group("Garments", true));
        choose(null, state.substrate.get());
    }

    private VBox group(String title, boolean garments) {
        HBox hung = new HBox();
        hung.getStyleClass().add("rack-group");
        state.substrates.stream().filter(card -> card.garment() == garments).forEach(card -> hung.getChildren()
                .add(item(card)));
        VBox group = new VBox(Ui.label(title, "caption"), hung);
        Ui.shown(group, !hung.getChildren().isEmpty());
        return group;
    }

    private VBox item(SubstrateCard card) {
        Label name = Ui.label(card.name().replaceFirst(", ", ",\n"), "rack-name");
        name.setWrapText(true);
        name.setMaxWidth(SWATCH_W + 16);
        name.setPrefWidth(SWATCH_W + 16);
        name.setAlignment(Pos.TOP_CENTER);
        VBox item = new VBox(new Swatch(card, SWATCH_W, SWATCH_H), name);
        item.setId("substrate-" + card.id());
        item.getStyleClass().add("rack-item");
        item.setAccessibleRole(AccessibleRole.RADIO_BUTTON);
        item.setAccessibleText((card.garment() ? "Garment " : "Paper ") + card.name());
        item.setOnMouseClicked(e -> state.substrate.set(card));
        Tooltip.install(item, new Tooltip(card.name() + "\n" + SubstrateText.colour(card) + "\n" + card.source()));
        items.put(card, item);
        return item;
    }

    private void choose(SubstrateCard before, SubstrateCard now) {
        if (items.containsKey(before)) {
            items.get(before).pseudoClassStateChanged(CHOSEN, false);
        }
        if (items.containsKey(now)) {
            items.get(now).pseudoClassStateChanged(CHOSEN, true);
            reveal(items.get(now));
        }
    }

    private void reveal(VBox item) {
        Bounds at = row.sceneToLocal(item.localToScene(item.getLayoutBounds()));
        double seen = scroll.getViewportBounds().getWidth();
        double hidden = row.getWidth() - seen;
        if (at == null || hidden <= 0) {
            return;
        }
        double left = scroll.getHvalue() * hidden;
        double margin = item.getWidth();
        if (at.getMinX() - margin < left) {
            scroll.setHvalue(Math.max(0, (at.getMinX() - margin) / hidden));
        } else if (at.getMaxX() + margin > left + seen) {
            scroll.setHvalue(Math.min(1, (at.getMaxX() + margin - seen) / hidden));
        }
    }

    private void scrollBy(double px) {
        double hidden = row.getWidth() - scroll.getViewportBounds().getWidth();
        if (hidden > 0) {
            scroll.setHvalue(Math.max(0, Math.min(1, scroll.getHvalue() + px / hidden)));
        }
    }
}
