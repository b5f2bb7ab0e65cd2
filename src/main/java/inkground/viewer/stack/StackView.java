package inkground.viewer.stack;

import inkground.viewer.rack.SubstrateText;
import inkground.viewer.rack.Swatch;
import inkground.viewer.state.Look;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.Painter;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Outcome;
import inkground.viewer.task.RenderScheduler;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import javafx.beans.Observable;
import javafx.collections.SetChangeListener;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.scene.shape.Rectangle;
import org.kordamp.ikonli.feather.Feather;

/**
 * The cross-section: the substrate at the bottom, on cloth the underbase, then the inks, last printed on top. Under the
 * pointer every layer is as long as its tint there.
 */
public final class StackView extends VBox {
    private static final PseudoClass OFF = PseudoClass.getPseudoClass("off");

    private final ViewerState state;
    private final RenderScheduler colouring;
    private final List<InkBand> bands = new ArrayList<>();
    private final VBox inks = new VBox();
    private final HBox underbase = new HBox();
    private final HBox ground = new HBox();
    // Drawn once each: stepping along the rack must not wait for cloth to be drawn.
    private final Map<SubstrateCard, Swatch> grounds = new HashMap<>();
    private Look colouredFor;
    private OpenPage colouredPage;

    /**
     * @param colouring works out the colours of the solid inks
     */
    public StackView(ViewerState state, RenderScheduler colouring) {
        this.state = state;
        this.colouring = colouring;
        setId("stack");
        getStyleClass().add("stack");
        HBox title = new HBox(
                Ui.label("Stack", "title"),
                Ui.spring(),
                Ui.toggle("overprint", "Overprint", Feather.LAYERS, Command.OVERPRINT, state.overprint));
        title.getStyleClass().add("stack-title");
        title.setAlignment(Pos.CENTER_LEFT);
        ScrollPane scroll = new ScrollPane(inks);
        scroll.setFitToWidth(true);
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.getStyleClass().add("ink-scroll");
        VBox.setVgrow(scroll, Priority.ALWAYS);
        layUnderbase();
        ground.getStyleClass().add("ground-band");
        ground.setAlignment(Pos.CENTER_LEFT);
        getChildren().addAll(title, scroll, underbase, ground);
        listen();
        restack();
        reground();
    }

    private void layUnderbase() {
        Rectangle layer = new Rectangle(InkBand.LAYER_W, 20);
        layer.getStyleClass().add("underbase-layer");
        Pane section = new Pane(layer);
        section.setMinSize(InkBand.LAYER_W, 20);
        section.setMaxSize(InkBand.LAYER_W, 20);
        Label words = Ui.label("Underbase, white ink", "ink-words");
        HBox.setHgrow(words, Priority.ALWAYS);
        words.setMaxWidth(Double.MAX_VALUE);
        ToggleButton lay = Ui.toggle("underbase", "Lay", Command.UNDERBASE, state::toggleUnderbase);
        underbase.setAlignment(Pos.CENTER_LEFT);
        underbase.getStyleClass().add("underbase-band");
        underbase.getChildren().setAll(section, words, lay);
        Runnable follow = () -> {
            lay.setSelected(state.underbaseLies());
            underbase.pseudoClassStateChanged(OFF, !state.underbaseLies());
        };
        state.history.now().addListener((Observable o) -> follow.run());
        state.substrate.addListener((Observable o) -> follow.run());
        follow.run();
    }

    private void listen() {
        state.page.addListener((Observable o) -> restack());
        state.history.now().addListener((Observable o) -> restack());
        state.substrate.addListener((Observable o) -> reground());
        SetChangeListener<Integer> hidden = c -> follow();
        state.hidden.addListener(hidden);
        for (Observable value : List.of(state.solo, state.chosenInk, state.probe, state.figures)) {
            value.addListener(o -> follow());
        }
    }

    private void restack() {
        bands.clear();
        OpenPage page = state.page.get();
        if (page != null) {
            for (int plane : state.printOrder()) {
                bands.add(0, new InkBand(page.inks().get(plane), plane, state));
            }
        }
        inks.getChildren().setAll(bands);
        follow();
    }

    private void reground() {
        SubstrateCard card = state.substrate.get();
        Ui.shown(underbase, card != null && card.garment());
        ground.getChildren().clear();
        if (card != null) {
            Label name = Ui.label(card.name(), "ink-name");
            Label colour = Ui.label(SubstrateText.colour(card), "quiet");
            VBox words = new VBox(name, colour);
            words.setAlignment(Pos.CENTER_LEFT);
            words.getStyleClass().add("ink-words");
            words.setMinWidth(0);
            Ui.tip(name, card.name() + ": " + card.source());
            ground.getChildren().addAll(grounds.computeIfAbsent(card, c -> new Swatch(c, InkBand.LAYER_W, 54)), words);
        }
        follow();
    }

    private void follow() {
        bands.forEach(band -> band.follow(state));
        recolour();
    }

    private void recolour() {
        Look look = state.look();
        OpenPage page = state.page.get();
        if (look == null || Objects.equals(colouredFor, solidLook(look)) && colouredPage == page) {
            return;
        }
        colouredFor = solidLook(look);
        colouredPage = page;
        colouring.submit(cancel -> solids(page, solidLook(look)), outcome -> {
            if (outcome instanceof Outcome.Done<List<Integer>> done && state.page.get() == page) {
                paint(done.value());
            }
        });
    }

    /** The colour of a layer does not hang on which other layers are shown. */
    private Look solidLook(Look look) {
        Set<Integer> all = new HashSet<>();
        for (int plane = 0; plane < state.page.get().inks().size(); plane++) {
            all.add(plane);
        }
        return look.solids(all);
    }

    // Off the window's thread.
    private static List<Integer> solids(OpenPage page, Look look) {
        Painter painter = page.painter(look);
        List<Integer> colours = new ArrayList<>();
        for (int plane = 0; plane < page.inks().size(); plane++) {
            int[] tints = new int[page.inks().size()];
            tints[plane] = 255;
            colours.add(painter.colour(tints));
        }
        return colours;
    }

    private void paint(List<Integer> colours) {
        bands.forEach(band -> band.colour(colours.get(band.plane())));
    }
}
