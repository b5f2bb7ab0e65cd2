package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.viewer.desk.ProofDesk;
import inkground.viewer.desk.Recents;
import inkground.viewer.state.ViewerState;
import inkground.viewer.surface.Tile;
import inkground.viewer.surface.TileFeed;
import inkground.viewer.task.RenderScheduler;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.framework.junit5.ApplicationTest;

/** The stock of tiles over many changes of look; on one thread, so that every change is over before the next. */
class TileFeedTest extends ApplicationTest {
    private static final int STEPS = 10_000;
    /** What the test itself and the toolkit may come to hold meanwhile; one tile of the page weighs 3 MB. */
    private static final long SLACK_BYTES = 2L << 20;

    @TempDir
    Path folder;

    private final FakeEngine engine = new FakeEngine();
    private final ViewerState state = new ViewerState();
    private int steps;

    @Override
    public void start(Stage stage) {
        stage.show();
    }

    @Test
    void tenThousandSubstrateStepsKeepTheTilesAndLeakNothing() throws Exception {
        Path file = Files.writeString(folder.resolve("regatta.pdf"), "%PDF-fake");
        TileFeed[] feed = new TileFeed[1];
        interact(() -> {
            ProofDesk desk = new ProofDesk(state, engine, new Recents(ViewerRig.preferences()), ViewerRig.sameThread());
            desk.stockRack();
            state.resize(300, 200, 1);
            RenderScheduler scheduler = new RenderScheduler(Runnable::run, Runnable::run);
            feed[0] = new TileFeed(state, scheduler, Runnable::run, 64L << 20, () -> {});
            desk.files().open(file);
        });
        step(feed[0], STEPS / 10);
        List<Tile> tiles = feed[0].drawing();
        Set<Object> pictures = Collections.newSetFromMap(new IdentityHashMap<>());
        int renders = engine.renders.get();
        long heap = heapBytes();
        step(feed[0], STEPS);
        assertThat(heapBytes() - heap).isLessThan(SLACK_BYTES);
        assertThat(engine.renders).hasValue(renders);
        assertThat(feed[0].drawing()).isEqualTo(tiles).isNotEmpty();
        for (int i = 0; i < 10; i++) {
            step(feed[0], 1);
            feed[0].drawing().forEach(tile -> pictures.add(tile.image()));
        }
        assertThat(pictures).as("two pictures of each tile, taking turns").hasSize(2 * tiles.size());
    }

    private void step(TileFeed feed, int times) {
        interact(() -> {
            for (int i = 0; i < times; i++) {
                state.substrate.set(state.substrates.get(++steps % 3));
                while (!feed.complete()) {
                    feed.refresh();
                }
            }
        });
    }

    private static long heapBytes() throws InterruptedException {
        for (int i = 0; i < 3; i++) {
            System.gc();
            Thread.sleep(50);
        }
        return ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
    }
}
