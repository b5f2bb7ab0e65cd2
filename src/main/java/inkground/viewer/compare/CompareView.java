package inkground.viewer.compare;

import inkground.viewer.state.Comparison;
import inkground.viewer.state.Comparison.Way;
import inkground.viewer.state.ProofEngine.ApprovedAs;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ViewerState;
import inkground.viewer.surface.ProofSurface;
import inkground.viewer.task.RenderScheduler;
import inkground.viewer.ui.Command;
import inkground.viewer.ui.Ui;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.Observable;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableValue;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.DragEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.scene.shape.Rectangle;
import org.kordamp.ikonli.feather.Feather;

/** The bench with two revisions on it: side by side, one wiped over the other, or the changes hatched. */
public final class CompareView extends StackPane {
    private static final double GAP = 2;
    private static final double WORDS_PX = 420;

    private final ViewerState state;
    private final Comparison comparison;
    private final TwoPages pages;
    private final StackPane left;
    private final StackPane right;
    private final Pane both = new Place();
    private final WipeEdge edge;
    private final Rectangle leftClip = new Rectangle();

    /**
     * @param scheduler makes a scheduler for a surface
     * @param choose asks for the earlier file
     * @param open opens it
     */
    public CompareView(
            ViewerState state,
            Function<String, RenderScheduler> scheduler,
            Executor ui,
            Runnable choose,
            Consumer<Path> open) {
        this.state = state;
        this.comparison = state.comparison;
        setId("compare");
        getStyleClass().add("surface");
        setMinSize(0, 0);
        setFocusTraversable(true);
        setAccessibleText("Two revisions; C changes how they are shown");
        pages = new TwoPages(state);
        left = framed(pages.before(), scheduler.apply("rasterising the earlier"), ui, captionOf(), "earlier");
        right = framed(
                pages.after(),
                scheduler.apply("rasterising the later"),
                ui,
                state.file.map(f -> "open: " + f.path().getFileName()),
                "open");
        edge = new WipeEdge(comparison);
        both.getChildren().addAll(right, left, edge);
        VBox whole = new VBox(bar(choose), both);
        VBox.setVgrow(both, Priority.ALWAYS);
        ChangeCard card = new ChangeCard(state, pages);
        StackPane.setAlignment(card, Pos.BOTTOM_RIGHT);
        VBox invitation = invitation(choose);
        getChildren().addAll(whole, card, invitation);
        whole.visibleProperty().bind(comparison.page.isNotNull());
        invitation.visibleProperty().bind(comparison.page.isNull());
        for (Observable value : new Observable[] {comparison.way, comparison.wipe}) {
            value.addListener(o -> both.requestLayout());
        }
        setOnDragOver(CompareView::dragOver);
        setOnDragDropped(e -> dropped(e, open));
    }

    private static StackPane framed(
            ViewerState one, RenderScheduler scheduler, Executor ui, ObservableValue<String> caption, String word) {
        ProofSurface surface = new ProofSurface(one, scheduler, ui, 0.5);
        surface.setId("surface-" + word);
        Label name = Ui.label("", "line-label");
        name.setMouseTransparent(true);
        name.setId("caption-" + word);
        name.textProperty().bind(caption.orElse(""));
        StackPane frame = new StackPane(surface, name);
        StackPane.setAlignment(name, Pos.TOP_LEFT);
        frame.setMinSize(0, 0);
        return frame;
    }

    private ObservableValue<String> captionOf() {
        return Bindings.createStringBinding(
                () -> {
                    OpenFile file = comparison.file.get();
                    ApprovedAs approved = comparison.approved.get();
                    String word = approved == null ? "earlier" : approved.caption();
                    return file == null ? "" : word + ": " + file.path().getFileName();
                },
                comparison.file,
                comparison.approved);
    }

    private Button approve(String id) {
        return Ui.button(
                id,
                "Keep as approved…",
                Feather.CHECK_SQUARE,
                Command.APPROVE,
                () -> comparison.approveSheet.set(true));
    }

    private HBox bar(Runnable choose) {
        HBox ways = new HBox();
        ways.getStyleClass().add("over");
        for (Way way : Way.values()) {
            ToggleButton toggle = new ToggleButton(way.label());
            toggle.setId("compare-" + way.name().toLowerCase(Locale.ROOT));
            toggle.setAccessibleText(way.label() + ": " + way.sentence());
            Ui.tip(toggle, way.sentence() + "  [" + Command.COMPARE_WAY.keys() + "]");
            toggle.setOnAction(e -> {
                toggle.setSelected(true);
                comparison.way.set(way);
            });
            comparison.way.addListener((Observable o) -> toggle.setSelected(comparison.way.get() == way));
            toggle.setSelected(comparison.way.get() == way);
            ways.getChildren().add(toggle);
        }
        HBox bar = new HBox(
                ways,
                Ui.spring(),
                approve("compare-approve"),
                Ui.button(
                        "compare-other",
                        "Other earlier file",
                        Feather.FOLDER,
                        "Choose another revision or approval record to compare with",
                        choose));
        bar.getStyleClass().add("bench-bar");
        bar.setAlignment(Pos.CENTER_LEFT);
        return bar;
    }

    private VBox invitation(Runnable choose) {
        Label words = Ui.label(
                "Choose or drop the file as it was before, or the record of what was approved.", "start-words");
        words.setWrapText(true);
        words.setMaxWidth(WORDS_PX);
        VBox ways = new VBox(
                Ui.button(
                        "compare-open",
                        "Choose the earlier file",
                        Feather.FOLDER,
                        "The open file is the later one; this asks for the one before it, or an approval record",
                        choose),
                approve("invitation-approve"));
        ways.getStyleClass().add("ways");
        VBox invitation = new VBox(Ui.label("Compare with what was before", "start-title"), words, ways);
        invitation.getStyleClass().add("start");
        invitation.setAlignment(Pos.CENTER_LEFT);
        invitation.setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
        return invitation;
    }

    private static void dragOver(DragEvent e) {
        if (e.getDragboard().hasFiles()) {
            e.acceptTransferModes(TransferMode.COPY);
            e.consume();
        }
    }

    private static void dropped(DragEvent e, Consumer<Path> open) {
        if (e.getDragboard().hasFiles()) {
            open.accept(e.getDragboard().getFiles().get(0).toPath());
            e.setDropCompleted(true);
            e.consume();
        }
    }

    /** Lays the two surfaces beside or over each other. */
    private final class Place extends Pane {
        @Override
        protected void layoutChildren() {
            double w = getWidth();
            double h = getHeight();
            Way way = comparison.way.get();
            left.setVisible(way != Way.CHANGES);
            edge.setVisible(way == Way.WIPE);
            boolean beside = way == Way.BESIDE;
            // Whole pixels, so that neither surface is drawn between pixels.
            double half = Math.floor((w - GAP) / 2);
            left.setClip(beside ? null : leftClip);
            leftClip.setWidth(Math.rint(w * comparison.wipe.get()));
            leftClip.setHeight(h);
            left.resizeRelocate(0, 0, beside ? half : w, h);
            right.resizeRelocate(beside ? w - half : 0, 0, beside ? half : w, h);
            edge.resizeRelocate(leftClip.getWidth() - WipeEdge.GRIP / 2, 0, WipeEdge.GRIP, h);
        }
    }
}
