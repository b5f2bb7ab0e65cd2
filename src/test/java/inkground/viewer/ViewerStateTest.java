package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.app.Arrangement.WhiteBase;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.geometry.Box;
import inkground.plate.PlateRequest;
import inkground.viewer.desk.ProofDesk;
import inkground.viewer.desk.Recents;
import inkground.viewer.state.Camera;
import inkground.viewer.state.Following;
import inkground.viewer.state.ViewerState;
import inkground.viewer.surface.Tile;
import inkground.viewer.surface.TileCache;
import inkground.viewer.surface.TileGrid;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ViewerStateTest {
    @TempDir
    Path folder;

    private final FakeEngine engine = new FakeEngine();
    private final ViewerState state = new ViewerState();
    private ProofDesk desk;

    @BeforeEach
    void openAFile() throws Exception {
        desk = new ProofDesk(state, engine, new Recents(ViewerRig.preferences()), ViewerRig.sameThread());
        desk.stockRack();
        state.resize(800, 600, 1);
        desk.files().open(Files.writeString(folder.resolve("regatta.pdf"), "%PDF-fake"));
    }

    @Test
    void openingShowsTheFirstPageFittedOnTheFirstSubstrate() {
        assertThat(state.page.get().info().number()).isEqualTo(1);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.PAPER);
        Camera camera = state.camera.get();
        assertThat(camera.toViewX(0, 0)).isGreaterThanOrEqualTo(15);
        assertThat(camera.toViewX(400, 0)).isLessThanOrEqualTo(785);
        assertThat(state.activities).isEmpty();
        assertThat(state.figures.get()).isNull();
        state.pictured.set(true);
        assertThat(state.figures.get().inks()).hasSize(3);
    }

    @Test
    void markAndWordsFollowThePictureWhereOneLeadsAndTheChoiceElsewhere() {
        Following following = state.following;
        state.stepSubstrate(1);
        assertThat(following.pictured().get()).isEqualTo(FakeEngine.NAVY);
        assertThat(following.told().get()).isEqualTo(FakeEngine.NAVY);
        following.pictureLeads(true);
        state.stepSubstrate(1);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.SAND);
        assertThat(following.pictured().get()).isEqualTo(FakeEngine.NAVY);
        following.picture();
        assertThat(following.pictured().get()).isEqualTo(FakeEngine.SAND);
        assertThat(following.told().get()).isEqualTo(FakeEngine.NAVY);
        following.tell();
        assertThat(following.told().get()).isEqualTo(FakeEngine.SAND);
        state.stepSubstrate(-1);
        // Another view is looked at, and no picture is to be waited for.
        following.pictureLeads(false);
        assertThat(following.pictured().get()).isEqualTo(FakeEngine.NAVY);
        assertThat(following.told().get()).isEqualTo(FakeEngine.NAVY);
    }

    @Test
    void steppingStaysAtTheEndsOfTheRack() {
        state.stepSubstrate(-1);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.PAPER);
        state.stepSubstrate(1);
        state.stepSubstrate(1);
        state.stepSubstrate(1);
        assertThat(state.substrate.get()).isEqualTo(FakeEngine.SAND);
    }

    @Test
    void soloShowsOneInkAndASecondSoloAllThatAreNotHidden() {
        state.toggleHidden(1);
        assertThat(state.look().shown()).containsExactlyInAnyOrder(0, 2);
        state.toggleSolo(1);
        assertThat(state.look().shown()).containsExactly(1);
        state.toggleSolo(1);
        assertThat(state.look().shown()).containsExactlyInAnyOrder(0, 2);
    }

    @Test
    void theUnderbaseLiesOnClothOnly() {
        state.substrate.set(FakeEngine.NAVY);
        state.printing.toggleUnderbase();
        assertThat(state.look().underbase()).contains(WhiteBase.FULL);
        state.substrate.set(FakeEngine.PAPER);
        assertThat(state.look().underbase()).isEmpty();
        state.printing.toggleUnderbase();
        state.substrate.set(FakeEngine.SAND);
        assertThat(state.look().underbase()).contains(WhiteBase.FULL);
        state.printing.toggleUnderbase();
        assertThat(state.look().underbase()).isEmpty();
        state.history.undo();
        assertThat(state.look().underbase()).contains(WhiteBase.FULL);
    }

    @Test
    void anInkMovesInTheStackAndBack() {
        state.printing.move(2, 5);
        assertThat(state.look().printOrder()).containsExactly(0, 1, 2);
        assertThat(state.history.undoable().get()).isEqualTo("print White as number 3");
        state.history.undo();
        assertThat(state.look().printOrder()).containsExactly(2, 0, 1);
        state.history.redo();
        assertThat(state.look().printOrder()).containsExactly(0, 1, 2);
    }

    @Test
    void anotherVersionOfThePageKeepsTheViewAndWhichInksAreHidden() {
        state.toggleHidden(1);
        state.toggleSolo(2);
        state.layersOn.clear();
        state.zoom(3, 200, 150);
        Camera seen = state.camera.get();
        state.replace(state.file.get(), state.page.get());
        assertThat(state.hidden).containsExactly(1);
        assertThat(state.solo.get()).isEqualTo(2);
        assertThat(state.layersOn).isEmpty();
        assertThat(state.camera.get()).isEqualTo(seen);
    }

    @Test
    void inksAreChosenInPrintOrder() {
        state.stepInk(1);
        assertThat(state.chosenInk.get()).isEqualTo(2);
        state.stepInk(1);
        state.stepInk(1);
        state.stepInk(1);
        assertThat(state.chosenInk.get()).isEqualTo(1);
        state.stepInk(-1);
        assertThat(state.chosenInk.get()).isEqualTo(0);
    }

    @Test
    void zoomingHoldsThePointUnderThePointerStill() {
        double x = state.camera.get().toPageX(200, 150);
        double y = state.camera.get().toPageY(200, 150);
        state.zoom(3, 200, 150);
        // The page's origin falls on whole pixels, so up to half a pixel may be lost.
        assertThat(state.camera.get().toViewX(x, y)).isCloseTo(200, within(0.51));
        assertThat(state.camera.get().toViewY(x, y)).isCloseTo(150, within(0.51));
        assertThat(state.fit.get()).isFalse();
    }

    @Test
    void theMiddleCannotBePannedOffTheScene() {
        state.pan(1e6, -1e6);
        assertThat(state.camera.get().centreX()).isEqualTo(state.scene().x0());
        assertThat(state.camera.get().centreY()).isEqualTo(state.scene().y1());
    }

    @Test
    void aResizedSurfaceKeepsThePageFitted() {
        state.resize(400, 300, 2);
        assertThat(state.camera.get().toViewX(400, 0)).isLessThanOrEqualTo(385);
        assertThat(state.camera.get().pxPerPt()).isEqualTo(state.camera.get().zoom() * 2);
    }

    @Test
    void theNextPageForgetsWhatWasHidden() {
        state.toggleHidden(0);
        desk.files().turnPage(1);
        assertThat(state.page.get().info().number()).isEqualTo(2);
        assertThat(state.hidden).isEmpty();
        desk.files().turnPage(1);
        assertThat(state.page.get().info().number()).isEqualTo(2);
    }

    @Test
    void aRefusedFileLeavesTheOpenOneAndSaysWhy() throws Exception {
        desk.files().open(Files.writeString(folder.resolve("letter.txt"), "Dear printer"));
        assertThat(state.trouble.get()).startsWith("letter.txt is not a PDF.");
        assertThat(state.file.get().path()).hasFileName("regatta.pdf");
        assertThat(engine.openFiles).hasValue(1);
    }

    @Test
    void anotherFileClosesTheOneBeforeAndHeadsTheRecentFiles() throws Exception {
        desk.files().open(Files.writeString(folder.resolve("poster.pdf"), "%PDF-fake"));
        assertThat(engine.openFiles).hasValue(1);
        assertThat(state.recent.stream().map(p -> p.getFileName().toString()).toList())
                .containsExactly("poster.pdf", "regatta.pdf");
    }

    @Test
    void tilesCoverExactlyWhatIsSeenAndNeverOverlap() {
        state.zoom(4, 100, 100);
        Camera camera = state.camera.get();
        List<PlateRequest> tiles = TileGrid.visible(camera, FakeEngine.MEDIA, true, Set.of());
        Box seen = camera.seen().intersect(FakeEngine.MEDIA);
        for (double x = seen.x0() + 0.1; x < seen.x1(); x += 3.7) {
            for (double y = seen.y0() + 0.1; y < seen.y1(); y += 3.7) {
                long px = (long) Math.floor(x * camera.pxPerPt());
                long py = (long) Math.floor(y * camera.pxPerPt());
                assertThat(tiles.stream()
                                .filter(r -> px >= r.x0() && px < r.x1() && py >= r.y0() && py < r.y1())
                                .count())
                        .isEqualTo(1);
            }
        }
    }

    @Test
    void theCacheForgetsTheLongestUnusedOnceItIsTooHeavy() throws Exception {
        Tile[] tiles = new Tile[3];
        for (int i = 0; i < tiles.length; i++) {
            PlateRequest request = new PlateRequest(1, 64 * i, 0, 64 * i + 64, 64, true, Set.of());
            tiles[i] = new Tile(
                    state.page.get().render(request, new Cancel(), Progress.NONE), new int[64 * 64], state.look());
        }
        assertThat(tiles[0].bytes()).isBetween(16_384L, 100_000L);
        TileCache two = new TileCache(tiles[0].bytes() * 2);
        two.put(tiles[0]);
        two.put(tiles[1]);
        two.get(tiles[0].request());
        two.put(tiles[2]);
        assertThat(two.get(tiles[0].request())).isNotNull();
        assertThat(two.get(tiles[1].request())).isNull();
        assertThat(two.size()).isEqualTo(2);
        assertThat(two.bytes()).isEqualTo(tiles[0].bytes() * 2);
    }
}
