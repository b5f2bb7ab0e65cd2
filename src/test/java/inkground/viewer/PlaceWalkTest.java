package inkground.viewer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.geometry.Box;
import inkground.viewer.state.Camera;
import inkground.viewer.state.MapKind;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;

/** Going through the places that a map found, by key and by link. */
class PlaceWalkTest extends FakeWindow {
    private void assertLookedAt(int index) {
        assertThat(state.walk.at.get()).isEqualTo(index);
        Box place = state.walk.places().get(index).box();
        Camera camera = state.camera.get();
        double x = (place.x0() + place.x1()) / 2;
        double y = (place.y0() + place.y1()) / 2;
        assertThat(camera.toViewX(x, y)).isCloseTo(camera.widthPx() / 2.0, within(2.0));
        assertThat(camera.toViewY(x, y)).isCloseTo(camera.heightPx() / 2.0, within(2.0));
    }

    @Test
    void theKeyLeadsFromPlaceToPlaceAndAroundAndTheLegendCountsThem() throws Exception {
        openArtwork();
        press(KeyCode.F3).release(KeyCode.F3);
        assertThat(state.walk.at.get()).as("no map, no place").isEqualTo(-1);
        interact(() -> state.overlays.map.set(MapKind.THIN));
        until(() -> state.walk.places().size() == 3);
        for (int place : new int[] {0, 1, 2, 0}) {
            press(KeyCode.F3).release(KeyCode.F3);
            assertLookedAt(place);
        }
        press(KeyCode.SHIFT, KeyCode.F3).release(KeyCode.F3, KeyCode.SHIFT);
        assertLookedAt(2);
        assertThat(lookup("#map-place").queryAs(Labeled.class).getText())
                .isEqualTo("Place 3 of 3: line of 0.09 mm in Signal Red");
        clickOn("gap of 0.08 mm in Signal Red");
        assertLookedAt(1);
        interact(() -> state.overlays.map.set(null));
        assertThat(state.walk.at.get()).isEqualTo(-1);
    }
}
