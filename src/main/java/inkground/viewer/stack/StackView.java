package inkground.viewer.stack;

import inkground.ink.InkKind;
import inkground.viewer.rack.SubstrateText;
import inkground.viewer.rack.Swatch;
import inkground.viewer.state.Look;
import inkground.viewer.state.ProofEngine.InkCard;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.Painter;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import inkground.viewer.state.ViewerState;
import inkground.viewer.task.Outcome;
import inkground.viewer.task.RenderScheduler;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Drawer;
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
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.kordamp.ikonli.feather.Feather;

/**
 * The cross-section: the substrate at the bottom, on cloth the underbase, then the inks, last printed on top, and above all what
 * is seen from there. Under the pointer every layer is as long as its tint. Bands stay while their inks do, and with them the
 * focus.
 */
public final class StackView extends VBox {
    private final ViewerState state;
    private final RenderScheduler colouring;
    private final VBox inks = new VBox();
    private final BandDrag drag;
    private final SeenBand seen;
    private final UnderbaseBand underbase;
    private final ScrollPane scroll = new ScrollPane();
    private final ToggleButton unused =
            Drawer.handle("unused-inks", "List the process inks that this page does not use");
    private final HBox ground = new HBox();
    private final Label groundName = Ui.label("", "ink-name");
    private final Label groundColour = Ui.label("", "quiet");
    private final VBox groundWords = new VBox(groundName, groundColour);
    // Drawn once each: stepping along the rack must not wait for cloth to be drawn.
    private final Map<SubstrateCard, Swatch> grounds = new HashMap<>();
    private List<InkBand> bands = List.of();
    private List<Integer> colours = List.of();
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
        drag = new BandDrag(state, inks);
        seen = new SeenBand(state);
        HBox title = new HBox(
                Ui.label("Stack", "title"),
                Ui.spring(),
                Ui.toggle("overprint", "Overprint", Feather.LAYERS, Command.OVERPRINT, state.overprint));
        title.getStyleClass().add("stack-title");
        title.setAlignment(Pos.CENTER_LEFT);
        unused.getStyleClass().add("unused-inks");
        unused.setMaxWidth(Double.MAX_VALUE);
        unused.setAlignment(Pos.CENTER_LEFT);
        unused.selectedProperty().bindBidirectional(state.stack.unusedShown);
        scroll.setContent(inks);
        scroll.setFitToWidth(true);
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.setFocusTraversable(false);
        Ui.paintDirectly(scroll);
        scroll.getStyleClass().add("ink-scroll");
        VBox.setVgrow(scroll, Priority.ALWAYS);
        ground.getStyleClass().add("ground-band");
        ground.setAlignment(Pos.CENTER_LEFT);
        groundWords.setAlignment(Pos.CENTER_LEFT);
        groundWords.getStyleClass().add("ink-words");
        groundWords.setMinWidth(0);
        underbase = new UnderbaseBand(state);
        getChildren().addAll(title, seen, scroll, underbase, ground);
        listen();
        restack();
        reground();
    }

    private void listen() {
        for (Observable value : List.of(state.page, state.history.now(), state.figures, state.stack.unusedShown)) {
            value.addListener(o -> restack());
        }
        state.following.told().addListener((Observable o) -> reground());
        SetChangeListener<Integer> hidden = c -> follow();
        state.hidden.addListener(hidden);
        for (Observable value : List.of(state.solo, state.probe, state.stack.plate, state.stack.inkDrawer)) {
            value.addListener(o -> follow());
        }
        state.chosenInk.addListener((Observable o) -> {
            follow();
            reveal();
        });
    }

    private void restack() {
        OpenPage page = state.page.get();
        List<InkBand> stacked = new ArrayList<>();
        if (page != null) {
            for (int plane : state.printing.stacked()) {
                stacked.add(0, band(page.inks().get(plane), plane));
            }
        }
        if (!stacked.equals(bands)) {
            bands = List.copyOf(stacked);
            List<Node> children = new ArrayList<>(bands);
            children.add(unused);
            children.add(drag.mark());
            keepingFocus(() -> inks.getChildren().setAll(children));
            drag.over(bands);
        }
        nameUnused();
        paint();
        follow();
    }

    private InkBand band(InkCard card, int plane) {
        return bands.stream()
                .filter(band -> band.shows(card, plane))
                .findFirst()
                .orElseGet(() -> {
                    InkBand band = new InkBand(card, plane, state);
                    drag.attach(band);
                    return band;
                });
    }

    /** Opens the drawer of the chosen ink, and gives the keys to its opacity. */
    public void focusOpacity() {
        state.stack.inkDrawer.set(true);
        bands.stream().filter(band -> band.plane() == state.chosenInk.get()).forEach(InkBand::focusOpacity);
    }

    /** Opens the drawer of the underbase, where one is laid, and gives the keys to its tint. */
    public void focusUnderbase() {
        if (state.printing.underbaseLies()) {
            state.stack.underbaseDrawer.set(true);
            underbase.focusTint();
        } else {
            state.news.set("Lay an underbase on a garment first, with " + Command.UNDERBASE.keys());
        }
    }

    /** Children that are set anew lose the focus, though they were there before. */
    private void keepingFocus(Runnable change) {
        Node owner = getScene() == null ? null : getScene().getFocusOwner();
        change.run();
        Node top = owner;
        while (top != null && top != this) {
            top = top.getParent();
        }
        if (top == this) {
            owner.requestFocus();
        }
    }

    private void nameUnused() {
        long process = state.page.get() == null
                ? 0
                : state.page.get().inks().stream()
                        .filter(card -> card.ink().kind() == InkKind.PROCESS)
                        .count();
        int folded = state.printing.folded().size();
        boolean measured = state.figures.get() != null;
        unused.setText(
                state.stack.unusedShown.get()
                        ? "Process inks that are not used here"
                        : folded
                                + (folded == 1 ? " process ink" : " process inks")
                                + (measured ? " not used here" : ", being measured"));
        Ui.shown(unused, folded > 0 || process > 0 && state.stack.unusedShown.get());
    }

    private void reveal() {
        bands.stream()
                .filter(band -> band.plane() == state.chosenInk.get())
                .findFirst()
                .ifPresent(band -> {
                    double hidden =
                            inks.getHeight() - scroll.getViewportBounds().getHeight();
                    double top = band.getLayoutY();
                    double bottom =
                            top + band.getHeight() - scroll.getViewportBounds().getHeight();
                    if (hidden > 0) {
                        double y = scroll.getVvalue() * hidden;
                        scroll.setVvalue(Math.max(0, Math.min(1, Math.max(bottom, Math.min(y, top)) / hidden)));
                    }
                });
    }

    private void reground() {
        SubstrateCard card = state.following.told().get();
        if (card == null) {
            ground.getChildren().clear();
        } else {
            groundName.setText(card.name());
            groundColour.setText(SubstrateText.colour(card));
            Ui.tip(groundName, card.name() + ": " + card.source());
            Swatch swatch = grounds.computeIfAbsent(card, c -> new Swatch(c, InkBand.LAYER_W, 54));
            ground.getChildren().setAll(swatch, groundWords);
        }
        follow();
    }

    private void follow() {
        bands.forEach(band -> band.follow(state));
        seen.follow();
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
                colours = done.value();
                paint();
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

    private void paint() {
        bands.stream()
                .filter(band -> band.plane() < colours.size())
                .forEach(band -> band.colour(colours.get(band.plane())));
    }
}
