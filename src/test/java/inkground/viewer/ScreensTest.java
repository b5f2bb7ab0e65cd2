package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.viewer.state.BenchView;
import inkground.viewer.state.Comparison;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.Theme;
import inkground.viewer.ui.Sheet;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import javafx.beans.property.BooleanProperty;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;

/** Every screen of the window from the smallest size to a large screen, in both themes. */
class ScreensTest extends FakeWindow {
    private static final int[][] SIZES = {{1060, 640}, {1280, 800}, {1920, 1080}, {2560, 1440}};

    /** What is laid out may ask to be laid out again. */
    private static final int LAYOUT_PASSES = 3;

    /** Faults met, each told once with where it was met first. */
    private final List<String> faults = new ArrayList<>();

    @Override
    FakeEngine makeEngine() {
        FakeEngine made = new FakeEngine(folder.resolve("own"));
        made.paintedGround = true;
        made.more = IntStream.range(0, 18)
                .mapToObj(i -> FakeEngine.card(
                        "hooded-" + i,
                        "Heavyweight hooded sweatshirt, bottle green " + i,
                        true,
                        30 + i,
                        0xff2f4a38,
                        "jersey"))
                .toList();
        return made;
    }

    /** Looks at what is shown now in all sizes and themes. */
    private void look(String screen) {
        Parent root = window.scene().getRoot();
        for (Theme theme : Theme.values()) {
            interact(() -> state.theme.set(theme));
            for (int[] size : SIZES) {
                // Without a pulse between, in which the window would take its own size again.
                interact(() -> {
                    root.resize(size[0], size[1]);
                    root.applyCss();
                    for (int pass = 0; pass < LAYOUT_PASSES; pass++) {
                        root.layout();
                    }
                    check(screen + ", " + theme + ", " + size[0] + " × " + size[1] + ": ");
                    root.resize(window.scene().getWidth(), window.scene().getHeight());
                });
            }
        }
    }

    private void check(String where) {
        Node top = Nodes.all(window.scene().getRoot()).stream()
                .filter(node -> node instanceof Sheet && node.isVisible())
                .findFirst()
                .orElse(window.scene().getRoot());
        List<Node> shown = Nodes.shown(top);
        List<Control> controls = shown.stream()
                .filter(node -> node instanceof Control && Nodes.reachable(node))
                .map(Control.class::cast)
                .toList();
        assertThat(shown).as(where).isNotEmpty();
        for (Node node : shown) {
            if (node instanceof Labeled labeled) {
                boolean explained = node instanceof Label && (labeled.getAccessibleHelp() != null || told(labeled));
                Nodes.cutOff(labeled)
                        .filter(drawn -> !explained)
                        .ifPresent(drawn -> fault(where, node, "is cut off: " + drawn));
            }
            Bounds at = Nodes.seen(node);
            Bounds whole = window.scene().getRoot().getLayoutBounds();
            boolean inside = at.getMinX() > -1
                    && at.getMinY() > -1
                    && at.getMaxX() < whole.getWidth() + 1
                    && at.getMaxY() < whole.getHeight() + 1;
            if (!inside && (node instanceof Labeled || controls.contains(node)) && !clipped(node)) {
                fault(where, node, "reaches out of the window: " + at);
            }
        }
        for (Control control : controls) {
            if (!Nodes.named(control)) {
                fault(where, control, "has no name");
            }
            boolean words =
                    control instanceof ButtonBase button && !button.getText().isEmpty();
            if (control.getAccessibleHelp() == null && !words && !labelled(control, shown)) {
                fault(where, control, "has neither words nor tooltip");
            }
        }
        overlaps(where, controls);
    }

    /** @return whether what it lies in tells the same words in full, as the cells of rack and line-up do */
    private static boolean told(Labeled label) {
        String words = label.getText().replace('\n', ' ');
        for (Node n = label.getParent(); n != null; n = n.getParent()) {
            if (n.getAccessibleText() != null && n.getAccessibleText().contains(words)) {
                return true;
            }
        }
        return false;
    }

    /** @return whether it is in a list, whose cells are scrolled */
    private static boolean clipped(Node node) {
        for (Node n = node; n != null; n = n.getParent()) {
            if (n instanceof ScrollPane || n.getStyleClass().contains("list-view")) {
                return true;
            }
        }
        return false;
    }

    private static boolean labelled(Control control, List<Node> shown) {
        return control.getAccessibleText() != null
                || shown.stream().anyMatch(node -> node instanceof Label label && label.getLabelFor() == control);
    }

    private void overlaps(String where, List<Control> controls) {
        for (int i = 0; i < controls.size(); i++) {
            for (int j = i + 1; j < controls.size(); j++) {
                Control a = controls.get(i);
                Control b = controls.get(j);
                Bounds both = Nodes.common(Nodes.seen(a), Nodes.seen(b));
                if (both.getWidth() > 1 && both.getHeight() > 1 && !Nodes.all(a).contains(b)) {
                    fault(where, a, "lies over " + name(b));
                }
            }
        }
    }

    private void fault(String where, Node node, String what) {
        String fault = name(node) + " " + what;
        if (faults.stream().noneMatch(told -> told.endsWith(fault))) {
            faults.add(where + fault);
        }
    }

    private static String name(Node node) {
        String words = node instanceof Labeled labeled ? " '" + labeled.getText() + "'" : "";
        return node.getClass().getSimpleName() + " #" + node.getId() + words;
    }

    private void lookAtSheet(String name, BooleanProperty open) {
        interact(() -> open.set(true));
        look(name);
        interact(() -> open.set(false));
    }

    @Test
    void nothingIsCutOffOrLiesOverAnotherAndAllIsNamed() throws Exception {
        until(() -> !state.substrates.isEmpty());
        look("start");
        openArtwork();
        until(() -> state.figures.get() != null && state.activities.isEmpty());
        look("page");
        interact(() -> {
            state.substrate.set(FakeEngine.NAVY);
            state.toggleUnderbase();
            state.stack.underbaseDrawer.set(true);
            state.chosenInk.set(0);
            state.stack.inkDrawer.set(true);
            state.overlays.map.set(MapKind.THIN);
        });
        until(() -> state.overlays.report.get() != null && shows("#ground-bar"));
        look("map, drawers and a question about the ground");
        interact(
                () -> state.trouble.set("letter.txt is not a PDF. Choose a file that a drawing program wrote as PDF."));
        look("trouble");
        interact(() -> {
            state.trouble.set(null);
            state.overlays.map.set(null);
            state.stack.underbaseDrawer.set(false);
            state.stack.inkDrawer.set(false);
            window.drop().take(List.of(folder.resolve("another.pdf").toFile()));
        });
        look("what is not kept");
        push(KeyCode.ESCAPE);
        push(KeyCode.CONTROL, KeyCode.L);
        until(() -> state.colours.inventory.get() != null);
        look("colours");
        interact(() -> state.pinProbe());
        interact(() -> ((ButtonBase) lookup("#panel-pins").query()).fire());
        look("pins");
        sheets();
        interact(() -> state.view.set(BenchView.GARMENT));
        look("garment");
        interact(() -> state.view.set(BenchView.LINE_UP));
        look("line-up");
        compared();
        assertThat(faults).isEmpty();
    }

    private void sheets() {
        lookAtSheet("proof", state.exportSheet);
        lookAtSheet("keys", state.keySheet);
        lookAtSheet("contact sheet", state.lineUp.sheet);
        lookAtSheet("true size", state.trueSize.sheet);
        lookAtSheet("clean file", state.colours.cleanSheet);
        lookAtSheet("approval", state.comparison.approveSheet);
        interact(() -> state.own.open(null));
        for (String way : List.of("#own-by-css", "#own-by-file", "#own-by-photo", "#own-by-lab")) {
            lookup(way).tryQuery().ifPresent(toggle -> interact(() -> ((ButtonBase) toggle).fire()));
            look("own paper or garment, " + way);
        }
        interact(() -> state.own.close());
    }

    private void compared() throws Exception {
        interact(() -> state.view.set(BenchView.COMPARE));
        look("comparison with nothing");
        Path record = Files.writeString(folder.resolve("client.approved.zip"), FakeEngine.RECORD);
        interact(() -> desk.comparison().open(record));
        until(() -> state.comparison.report.get() != null);
        for (Comparison.Way way : Comparison.Way.values()) {
            interact(() -> state.comparison.way.set(way));
            until(() -> state.comparison.report.get() != null);
            look("comparison with a record, " + way);
        }
    }
}
