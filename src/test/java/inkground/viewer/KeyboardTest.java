package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.app.Arrangement.WhiteBase;
import inkground.viewer.desk.Recents;
import inkground.viewer.state.BenchView;
import inkground.viewer.state.Comparison;
import inkground.viewer.state.MapKind;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import javafx.geometry.Bounds;
import javafx.geometry.Rectangle2D;
import javafx.scene.Node;
import javafx.scene.SnapshotParameters;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** The window without a mouse: every act of a job can be done by keys, and one sees where they go. */
class KeyboardTest extends FakeWindow {
    private static final int MOST_STOPS = 120;
    private static final List<String> PARTS =
            List.of("rack", "panel-switch", "stack", "top-strip", "overlay-strip", "bench", "status-line");

    private Path artwork;

    /** The artwork was opened before, and a navy is painted in for preview. */
    @Override
    FakeEngine makeEngine() {
        try {
            artwork = Files.writeString(folder.resolve("regatta.pdf"), "%PDF-fake");
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        new Recents(preferences).add(artwork);
        FakeEngine made = new FakeEngine(folder.resolve("own"));
        made.paintedGround = true;
        return made;
    }

    private Node focus() {
        return window.scene().getFocusOwner();
    }

    private void tabTo(String query) {
        Node wanted = lookup(query).query();
        for (int stop = 0; stop < MOST_STOPS && focus() != wanted; stop++) {
            push(KeyCode.TAB);
        }
        assertThat(focus()).as(query).isSameAs(wanted);
    }

    private void typeOver(String text) {
        push(KeyCode.CONTROL, KeyCode.A);
        write(text);
    }

    private void look(BenchView view) {
        push(KeyCode.CONTROL, KeyCode.values()[KeyCode.DIGIT1.ordinal() + view.ordinal()]);
        assertThat(state.view.get()).isEqualTo(view);
    }

    private void openFromTheList() throws Exception {
        until(() -> !state.substrates.isEmpty());
        tabTo(".hyperlink");
        push(KeyCode.SPACE);
        until(() -> window.surface().complete() && state.activities.isEmpty());
        assertThat(state.file.get().path()).isEqualTo(artwork);
        assertThat(focus()).isSameAs(window.surface());
    }

    @Test
    void aWholeJobIsDoneByKeysAlone() throws Exception {
        openFromTheList();
        substrates();
        inks();
        underbase();
        maps();
        colours();
        onTheGarment();
        lineUp();
        compare();
        approve();
        export();
        openAnotherAndClose();
    }

    private void substrates() throws Exception {
        push(KeyCode.RIGHT);
        push(KeyCode.RIGHT);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.SAND);
        push(KeyCode.CONTROL, KeyCode.F);
        write("navy");
        push(KeyCode.ENTER);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.NAVY);
        push(KeyCode.ESCAPE);
        assertThat(state.rack.query.get()).isEmpty();
        until(() -> focus() == window.surface());
        until(() -> shows("#ground-bar"));
        push(KeyCode.F6);
        assertThat(focus()).isSameAs(lookup("#ground-bare").query());
        tabTo("#ground-keep");
        push(KeyCode.SPACE);
        until(() -> !shows("#ground-bar") && focus() == window.surface());
        assertThat(rgbAt(10, 10)).isEqualTo(FakeColours.GROUND_RGB);
    }

    private void inks() throws Exception {
        push(KeyCode.UP);
        push(KeyCode.UP);
        assertThat(state.inkName(state.chosenInk.get())).isEqualTo("Signal Red");
        push(KeyCode.H);
        assertThat(rgbAt(200, 130)).isEqualTo(FakeEngine.INK_RGB[2]);
        push(KeyCode.H);
        push(KeyCode.S);
        assertThat(state.shownInks()).containsExactly(0);
        push(KeyCode.S);
        assertThat(state.shownInks()).containsExactly(0, 1, 2);
        push(KeyCode.ALT, KeyCode.UP);
        assertThat(state.printing.order()).containsExactly(2, 1, 0);
        push(KeyCode.Q);
        assertThat(focus()).isSameAs(lookup("#opacity").query());
        push(KeyCode.LEFT);
        assertThat(state.printing.opacity(0)).isEqualTo(0.99);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.NAVY);
        tabTo("#opacity-number");
        typeOver("40");
        assertThat(state.printing.opacity(0)).isEqualTo(0.4);
        push(KeyCode.ESCAPE);
        until(() -> focus() == window.surface());
        push(KeyCode.CONTROL, KeyCode.Z);
        assertThat(state.printing.opacity(0)).isEqualTo(0.99);
        push(KeyCode.CONTROL, KeyCode.Y);
        assertThat(state.printing.opacity(0)).isEqualTo(0.4);
    }

    private void underbase() throws Exception {
        push(KeyCode.SHIFT, KeyCode.U);
        assertThat(state.news.get()).startsWith("Lay an underbase");
        push(KeyCode.U);
        push(KeyCode.SHIFT, KeyCode.U);
        assertThat(focus()).isSameAs(lookup("#underbase-tint").query());
        push(KeyCode.LEFT);
        tabTo("#under-Signal-Red");
        push(KeyCode.SPACE);
        assertThat(state.look().underbase())
                .contains(WhiteBase.FULL.ofTint(0.99).knockedOutUnder("Signal Red"));
        push(KeyCode.ESCAPE);
        until(() -> focus() == window.surface());
    }

    private void maps() throws Exception {
        push(KeyCode.M);
        assertThat(state.overlays.map.get()).isEqualTo(MapKind.BARE);
        push(KeyCode.N);
        until(() -> state.overlays.report.get() != null);
        assertThat(state.overlays.map.get()).isEqualTo(MapKind.REACH);
        tabTo("#map-limit");
        typeOver("5.5");
        assertThat(state.overlays.limitDe00.get()).isEqualTo(5.5);
        push(KeyCode.ESCAPE);
        until(() -> focus() == window.surface());
        push(KeyCode.N);
        assertThat(state.overlays.map.get()).isNull();
        push(KeyCode.P);
        assertThat(state.pins.all).hasSize(1);
        push(KeyCode.SHIFT, KeyCode.P);
        assertThat(state.pins.all).isEmpty();
    }

    private void colours() throws Exception {
        until(() -> state.colours.inventory.get() != null);
        push(KeyCode.CONTROL, KeyCode.L);
        until(() -> focus() == lookup("#colour-list").query());
        assertThat(lookup("#assign-editor .assign-what").<Label>query().getText())
                .startsWith("RGB 28 48 79");
        tabTo("#assign-bare");
        push(KeyCode.SPACE);
        until(() -> state.activities.isEmpty());
        assertThat(rgbAt(10, 10)).isEqualTo(FakeEngine.NAVY.argb() & 0xffffff);
        push(KeyCode.CONTROL, KeyCode.Z);
        until(() -> state.activities.isEmpty());
        assertThat(rgbAt(10, 10)).isEqualTo(FakeColours.GROUND_RGB);
        push(KeyCode.CONTROL, KeyCode.Y);
        until(() -> state.activities.isEmpty());
        assertThat(rgbAt(10, 10)).isEqualTo(FakeEngine.NAVY.argb() & 0xffffff);
        push(KeyCode.CONTROL, KeyCode.L);
        until(() -> focus() == window.surface());
    }

    private void onTheGarment() throws Exception {
        look(BenchView.GARMENT);
        until(() -> focus() == window.garment().surface()
                && window.garment().surface().complete());
        tabTo("#below-collar");
        typeOver("95");
        push(KeyCode.ENTER);
        assertThat(state.worn.placed().orElseThrow().artworkMm().y0()).isEqualTo(95, within(1e-6));
        assertThat(focus()).isSameAs(window.garment().surface());
        push(KeyCode.CONTROL, KeyCode.RIGHT);
        assertThat(state.worn.placement().offCentreMm()).isEqualTo(1);
        tabTo("#side-back");
        push(KeyCode.SPACE);
        assertThat(state.worn.placed().orElseThrow().form().face().side().word())
                .isEqualTo("back");
    }

    private void lineUp() throws Exception {
        look(BenchView.LINE_UP);
        until(() -> focus() == window.lineUp() && window.lineUp().complete());
        push(KeyCode.LEFT); // it is ranked: the lighter keeps more
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.SAND);
        push(KeyCode.SPACE);
        assertThat(state.rack.marked).containsExactly(FakeEngine.SAND.id());
        push(KeyCode.SPACE);
        push(KeyCode.ENTER);
        assertThat(state.view.get()).isEqualTo(BenchView.FLAT);
        until(() -> focus() == window.surface());
    }

    private void compare() throws Exception {
        answered = Files.writeString(folder.resolve("earlier.pdf"), "%PDF-fake");
        look(BenchView.COMPARE);
        tabTo("#compare-open");
        push(KeyCode.SPACE);
        until(() -> state.comparison.report.get() != null);
        assertThat(state.comparison.file.get().path()).isEqualTo(answered);
        push(KeyCode.C);
        assertThat(state.comparison.way.get()).isEqualTo(Comparison.Way.WIPE);
        until(() -> lookup("#wipe-edge").query().isVisible());
        tabTo("#wipe-edge");
        push(KeyCode.LEFT);
        assertThat(state.comparison.wipe.get()).isEqualTo(0.48, within(1e-9));
    }

    private void approve() throws Exception {
        push(KeyCode.CONTROL, KeyCode.K);
        assertThat(focus()).isSameAs(lookup("#approve-by").query());
        write("Ada Reach");
        push(KeyCode.ENTER);
        until(() -> !state.comparison.approveSheet.get());
        assertThat(folder.resolve("regatta.pdf.approved.zip")).exists();
        assertThat(engine.approved.by()).contains("Ada Reach");
        look(BenchView.FLAT);
        until(() -> focus() == window.surface());
    }

    private void export() throws Exception {
        push(KeyCode.CONTROL, KeyCode.E);
        assertThat(focus()).isSameAs(lookup("#export-target").query());
        Path target = folder.resolve("by-keys.png");
        typeOver(target.toString());
        push(KeyCode.SHIFT, KeyCode.TAB);
        assertThat(focus()).isSameAs(lookup("#export-dpi").query());
        typeOver("36");
        push(KeyCode.ENTER);
        until(() -> !state.exportSheet.get());
        BufferedImage proof = ImageIO.read(target.toFile());
        assertThat(proof.getWidth()).isEqualTo(180);
        assertThat(proof.getRGB(2, 2)).isEqualTo(FakeEngine.SAND.argb());
        until(() -> focus() == window.surface());
    }

    private void openAnotherAndClose() throws Exception {
        push(KeyCode.CONTROL, KeyCode.S);
        until(() -> !state.unsaved.get());
        assertThat(engine.sessions.get(artwork).arrangement().opacities()).containsEntry("Signal Red", 0.4);
        answered = Files.writeString(folder.resolve("poster.pdf"), "%PDF-fake");
        push(KeyCode.CONTROL, KeyCode.O);
        until(() -> state.file.get().path().equals(answered) && window.surface().complete());
        push(KeyCode.UP);
        push(KeyCode.ALT, KeyCode.UP);
        push(KeyCode.CONTROL, KeyCode.Q);
        assertThat(stage.isShowing()).isTrue();
        assertThat(focus()).isSameAs(lookup("#answer-0").query());
        push(KeyCode.SPACE);
        until(() -> !stage.isShowing());
        assertThat(engine.sessions).containsKey(answered);
    }

    /** @return what Tab goes to, from the surface until it is there again */
    private List<Node> stops() {
        interact(() -> window.surface().requestFocus());
        List<Node> stops = new ArrayList<>();
        do {
            stops.add(focus());
            push(KeyCode.TAB);
        } while (focus() != window.surface() && stops.size() < MOST_STOPS);
        return stops;
    }

    @Test
    void tabGoesRoundEveryControlAndOneSeesWhereTheKeysAre() throws Exception {
        openFromTheList();
        push(KeyCode.RIGHT);
        push(KeyCode.U);
        interact(() -> state.stack.underbaseDrawer.set(true));
        push(KeyCode.UP);
        push(KeyCode.Q);
        push(KeyCode.N);
        until(() -> state.overlays.report.get() != null && state.activities.isEmpty() && shows("#ground-bar"));
        List<Node> stops = stops();
        assertThat(stops).as("no stop twice").doesNotHaveDuplicates();
        Set<Node> wanted = new LinkedHashSet<>(Nodes.all(window.scene().getRoot()));
        wanted.removeIf(node -> !Nodes.reachable(node));
        assertThat(stops).containsAll(wanted);
        List<String> parts = stops.stream().map(KeyboardTest::part).toList();
        for (int i = 1; i < parts.size(); i++) {
            assertThat(parts.get(i).equals(parts.get(i - 1))
                            || !parts.subList(0, i).contains(parts.get(i)))
                    .as("Tab comes back to %s by %s", parts.get(i), stops.get(i))
                    .isTrue();
        }
        List<Node> unseen = new ArrayList<>();
        for (Node stop : stops) {
            assertThat(focus()).isSameAs(stop);
            int[] with = pictureOf(stop);
            push(KeyCode.TAB);
            assertThat(pictureOf(stop)).as("%s keeps its size", stop).hasSameSizeAs(with);
            if (stop instanceof Control && !differs(with, pictureOf(stop))) {
                unseen.add(stop);
            }
        }
        assertThat(unseen).as("have the keys, and one does not see it").isEmpty();
    }

    private int[] pictureOf(Node node) {
        int[][] argb = new int[1][];
        interact(() -> {
            Bounds on = node.localToScene(node.getLayoutBounds());
            SnapshotParameters parameters = new SnapshotParameters();
            parameters.setViewport(new Rectangle2D(
                    Math.floor(on.getMinX()) - 3,
                    Math.floor(on.getMinY()) - 3,
                    Math.ceil(on.getWidth()) + 6,
                    Math.ceil(on.getHeight()) + 6));
            WritableImage image = window.scene().getRoot().snapshot(parameters, null);
            int w = (int) image.getWidth();
            int h = (int) image.getHeight();
            argb[0] = new int[w * h];
            image.getPixelReader().getPixels(0, 0, w, h, PixelFormat.getIntArgbInstance(), argb[0], 0, w);
        });
        return argb[0];
    }

    /** @return whether at least a thin line of the picture is another */
    private static boolean differs(int[] a, int[] b) {
        int others = 0;
        for (int i = 0; i < a.length; i++) {
            others += a[i] == b[i] ? 0 : 1;
        }
        return others >= 12;
    }

    @Test
    void oneKeyGoesFromPartToPartAndBack() throws Exception {
        openFromTheList();
        List<String> there = new ArrayList<>();
        for (int step = 0; step < 6; step++) {
            push(KeyCode.F6);
            there.add(part(focus()));
        }
        assertThat(there).containsExactly("rack", "panel-switch", "stack", "top-strip", "overlay-strip", "bench");
        for (int step = 4; step >= 0; step--) {
            push(KeyCode.SHIFT, KeyCode.F6);
            assertThat(part(focus())).isEqualTo(there.get(step));
        }
    }

    private static String part(Node of) {
        for (Node node = of; node != null; node = node.getParent()) {
            for (String name : PARTS) {
                if (node.getStyleClass().contains(name)) {
                    return name;
                }
            }
        }
        return "none";
    }
}
