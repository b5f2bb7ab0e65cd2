package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.viewer.state.BenchView;
import inkground.viewer.state.Comparison;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.Theme;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import javafx.beans.property.BooleanProperty;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ButtonBase;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;
import org.junit.jupiter.api.Test;

/** Every screen of the window from the smallest size to a large screen, in both themes. */
class ScreensTest extends FakeWindow {
    private static final int[][] SIZES = {{1060, 640}, {1280, 800}, {1920, 1080}, {2560, 1440}};

    /** What is laid out may ask to be laid out again. */
    private static final int LAYOUT_PASSES = 3;

    /** The screen whose parts are read for the list of parts: the size and theme that the window opens with. */
    private static final int[] PARTS_SIZE = SIZES[1];

    private final ScreenCheck checks = new ScreenCheck();
    private final Map<String, List<String>> parts = new LinkedHashMap<>();

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
                    checks.look(root, screen + ", " + theme + ", " + size[0] + " × " + size[1] + ": ");
                    if (theme == Theme.LIGHT && size == PARTS_SIZE) {
                        parts.put(screen, ScreenCheck.parts(root));
                    }
                    root.resize(window.scene().getWidth(), window.scene().getHeight());
                });
            }
        }
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
            state.printing.toggleUnderbase();
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
        assertThat(checks.faults()).isEmpty();
        ScreenParts.assertAsListed(parts);
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

    /** A test of the test: what may go wrong with a screen is done to one, and told. */
    @Test
    void eachKindOfFaultIsTold() throws Exception {
        openArtwork();
        until(() -> state.figures.get() != null && state.activities.isEmpty());
        assertThat(faultsOf(() -> {}, () -> {})).isEmpty();
        List<String> whole = partsNow();
        ButtonBase proof = lookup("#proof").query();
        Pane bar = (Pane) proof.getParent();
        assertThat(partsAfter(() -> proof.setVisible(false), () -> proof.setVisible(true)))
                .as("a part that is hidden")
                .isNotEqualTo(whole);
        List<Node> order = List.copyOf(bar.getChildren());
        assertThat(partsAfter(() -> turnRound(bar), () -> bar.getChildren().setAll(order)))
                .as("parts in another order")
                .isNotEqualTo(whole);
        double least = proof.getMinWidth();
        assertThat(faultsOf(
                        () -> {
                            proof.setMinWidth(60);
                            proof.setMaxWidth(60);
                        },
                        () -> {
                            proof.setMinWidth(least);
                            proof.setMaxWidth(Region.USE_COMPUTED_SIZE);
                        }))
                .as("words that are cut off")
                .anyMatch(fault -> fault.contains("is cut off"));
        assertThat(faultsOf(() -> proof.setClip(new Rectangle(30, 100)), () -> proof.setClip(null)))
                .as("words that are clipped")
                .anyMatch(fault -> fault.contains("is clipped"));
        assertThat(faultsOf(() -> proof.setStyle("-fx-text-fill: #808080;"), () -> proof.setStyle("")))
                .as("words without contrast")
                .anyMatch(fault -> fault.contains("contrast"));
        assertThat(faultsOf(() -> proof.setTranslateX(-60), () -> proof.setTranslateX(0)))
                .as("a control over another")
                .anyMatch(fault -> fault.contains("lies over"));
        assertThat(faultsOf(() -> proof.setTranslateX(60), () -> proof.setTranslateX(0)))
                .as("a control outside the window")
                .anyMatch(fault -> fault.contains("reaches out"));
        String words = proof.getText();
        String spoken = proof.getAccessibleText();
        assertThat(faultsOf(
                        () -> {
                            proof.setText("");
                            proof.setAccessibleText(null);
                        },
                        () -> {
                            proof.setText(words);
                            proof.setAccessibleText(spoken);
                        }))
                .as("a control without a name")
                .anyMatch(fault -> fault.contains("has no name"));
        assertThat(faultsOf(() -> {}, () -> {})).as("all as it was").isEmpty();
        assertThat(partsNow()).isEqualTo(whole);
    }

    private static void turnRound(Pane bar) {
        List<Node> turned = new ArrayList<>(bar.getChildren());
        Collections.reverse(turned);
        bar.getChildren().setAll(turned);
    }

    private List<String> faultsOf(Runnable harm, Runnable undo) {
        ScreenCheck check = new ScreenCheck();
        withLayout(harm, undo, () -> check.look(window.scene().getRoot(), ""));
        return check.faults();
    }

    private List<String> partsNow() {
        return partsAfter(() -> {}, () -> {});
    }

    private List<String> partsAfter(Runnable harm, Runnable undo) {
        List<String> out = new ArrayList<>();
        withLayout(harm, undo, () -> out.addAll(ScreenCheck.parts(window.scene().getRoot())));
        return out;
    }

    private void withLayout(Runnable harm, Runnable undo, Runnable read) {
        interact(() -> {
            Parent root = window.scene().getRoot();
            harm.run();
            for (int pass = 0; pass < LAYOUT_PASSES; pass++) {
                root.applyCss();
                root.layout();
            }
            read.run();
            undo.run();
            root.applyCss();
            root.layout();
        });
    }
}
