package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.base.Cancel;
import inkground.colour.Lab;
import inkground.geometry.Box;
import inkground.ink.Ink;
import inkground.ink.InkSet;
import inkground.plate.InkPlanes;
import inkground.plate.PlanesForTests;
import inkground.plate.PlateRequest;
import inkground.substrate.Texture;
import inkground.viewer.state.Camera;
import inkground.viewer.state.Look;
import inkground.viewer.state.ProofEngine.Painter;
import inkground.viewer.surface.Tile;
import inkground.viewer.surface.TileGrid;
import inkground.viewer.surface.TileSheet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import javafx.geometry.Rectangle2D;
import javafx.scene.SnapshotParameters;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.transform.Transform;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;
import org.testfx.framework.junit5.ApplicationTest;

/**
 * A pixel of a tile is a pixel of the screen, at every output scale and every way round: noise, in which no two neighbours are
 * alike, comes out of the painter unchanged.
 */
class SharpnessTest extends ApplicationTest {
    private static final Box PAGE = new Box(0, 0, 300, 220);
    private static final Look LOOK =
            new Look("paper", Set.of(0), List.of(0), Map.of(), Optional.empty(), Optional.empty(), -1);

    @Override
    public void start(Stage stage) {
        stage.show();
    }

    /** Any two neighbouring pixels of the page differ, and none repeats the one at its mirror place. */
    private static int noise(double pxPerPt, long x, long y) {
        return 0xff000000 | new Random(x * 7919 + y * 104_729 + Double.hashCode(pxPerPt)).nextInt(1 << 24);
    }

    private static List<Tile> tiles(Camera camera) {
        List<Tile> tiles = new ArrayList<>();
        InkSet inks = new InkSet(List.of(Ink.named("Any")));
        for (PlateRequest r : TileGrid.visible(camera, PAGE, true, Set.of())) {
            InkPlanes planes = PlanesForTests.of(inks, r, (plane, x, y) -> 0);
            int[] argb = new int[r.width() * r.height()];
            for (int i = 0; i < argb.length; i++) {
                argb[i] = noise(r.pxPerPt(), r.x0() + i % r.width(), r.y0() + i / r.width());
            }
            tiles.add(new Tile(planes, argb, LOOK));
        }
        return tiles;
    }

    private WritableImage shown(Camera camera, List<Tile> tiles) {
        WritableImage[] image = new WritableImage[1];
        interact(() -> {
            TileSheet sheet = new TileSheet();
            sheet.show(PAGE, 0xff00ff00, tiles, false, camera);
            SnapshotParameters parameters = new SnapshotParameters();
            double s = camera.outputScale();
            parameters.setTransform(Transform.scale(s, s));
            parameters.setFill(Color.BLACK);
            parameters.setViewport(new Rectangle2D(0, 0, camera.widthPx() * s, camera.heightPx() * s));
            image[0] = new Pane(sheet).snapshot(parameters, null);
        });
        return image[0];
    }

    @Test
    void everyPixelOfThePageIsOnePixelOfTheScreen() {
        for (double scale : new double[] {1, 1.25, 1.5, 2}) {
            for (int quarters = 0; quarters < 4; quarters++) {
                Camera camera = new Camera(2.37, 141.3, 97.7, 400, 320, scale, quarters);
                check(camera, shown(camera, tiles(camera)));
            }
        }
    }

    private static void check(Camera camera, WritableImage image) {
        double scale = camera.pxPerPt();
        int compared = 0;
        int wrong = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                double viewX = (x + 0.5) / camera.outputScale();
                double viewY = (y + 0.5) / camera.outputScale();
                long pageX = (long) Math.floor(camera.toPageX(viewX, viewY) * scale);
                long pageY = (long) Math.floor(camera.toPageY(viewX, viewY) * scale);
                PlateRequest whole = PlateRequest.of(PAGE, scale * 72, true, Set.of());
                if (pageX >= whole.x0() && pageX < whole.x1() && pageY >= whole.y0() && pageY < whole.y1()) {
                    compared++;
                    wrong += image.getPixelReader().getArgb(x, y) == noise(scale, pageX, pageY) ? 0 : 1;
                }
            }
        }
        assertThat(compared).isGreaterThan(50_000);
        assertThat(wrong)
                .as("pixels that are not the page's, of %d, with %s", compared, camera)
                .isZero();
    }

    @Test
    void aTilePaintedForAnotherLookTakesThePlaceOfThePictureBefore() throws Exception {
        Camera camera = new Camera(1, 150, 110, 300, 220, 1);
        List<Tile> tiles = tiles(camera);
        Look next = new Look("plain-paper", Set.of(0), List.of(0), Map.of(), Optional.empty(), Optional.empty(), -1);
        for (Tile tile : tiles) {
            tile.paintBehind(new Plain(), next, new Cancel());
            assertThat(tile.look()).isEqualTo(LOOK);
        }
        assertThat(shown(camera, tiles).getPixelReader().getArgb(150, 110)).isEqualTo(noise(1, 150, 110));
        interact(() -> tiles.forEach(tile -> tile.turnOver(next)));
        assertThat(shown(camera, tiles).getPixelReader().getArgb(150, 110)).isEqualTo(Plain.ARGB);
    }

    private static final class Plain implements Painter {
        static final int ARGB = 0xff123456;

        @Override
        public void paint(InkPlanes planes, int[] argb, int offset, int stride, Cancel cancel) {
            Arrays.fill(argb, ARGB);
        }

        @Override
        public int colour(int[] tints) {
            return ARGB;
        }

        @Override
        public Texture texture() {
            return Texture.NONE;
        }

        @Override
        public Lab lab(int[] tints) {
            return new Lab(50, 0, 0);
        }
    }
}
