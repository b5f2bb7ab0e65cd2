package inkground.viewer.state;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.geometry.Box;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CameraTest {
    private static final Box PAGE = new Box(0, 0, 400, 300);

    private static Camera turned(int quarters) {
        return new Camera(1.7, 120, 90, 801, 613, 1.25, quarters);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void aPagePointSeenAndLookedUpAgainIsTheSame(int quarters) {
        Camera camera = turned(quarters);
        double viewX = camera.toViewX(37.5, 211);
        double viewY = camera.toViewY(37.5, 211);
        assertThat(camera.toPageX(viewX, viewY)).isCloseTo(37.5, within(1e-9));
        assertThat(camera.toPageY(viewX, viewY)).isCloseTo(211, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"0, 1, 0", "1, 0, 1", "2, -1, 0", "3, 0, -1"})
    void turnedClockwiseThePagesXRunsRightDownLeftUp(int quarters, int right, int down) {
        Camera camera = turned(quarters);
        assertThat(camera.toViewX(10, 0) - camera.toViewX(0, 0)).isCloseTo(17 * right, within(1e-9));
        assertThat(camera.toViewY(10, 0) - camera.toViewY(0, 0)).isCloseTo(17 * down, within(1e-9));
        assertThat(camera.toViewX(0, 10) - camera.toViewX(0, 0)).isCloseTo(-17 * down, within(1e-9));
        assertThat(camera.toViewY(0, 10) - camera.toViewY(0, 0)).isCloseTo(17 * right, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void thePageIsDrawnFromAWholeDevicePixel(int quarters) {
        Camera camera = turned(quarters);
        double device = camera.toViewX(0, 0) * 1.25;
        assertThat(device).isCloseTo(Math.rint(device), within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void zoomingHoldsThePointUnderThePointerStill(int quarters) {
        Camera camera = turned(quarters);
        Camera closer = camera.zoomedAbout(200, 77, 9);
        double x = camera.toPageX(200, 77);
        double y = camera.toPageY(200, 77);
        // The page's origin falls on whole device pixels, so up to half of one may be lost.
        assertThat(closer.toViewX(x, y)).isCloseTo(200, within(0.41));
        assertThat(closer.toViewY(x, y)).isCloseTo(77, within(0.41));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void thePictureFollowsTheHandThatMovesIt(int quarters) {
        Camera camera = turned(quarters);
        Camera moved = camera.panned(20, -12, PAGE);
        assertThat(moved.toViewX(100, 100) - camera.toViewX(100, 100)).isCloseTo(20, within(0.81));
        assertThat(moved.toViewY(100, 100) - camera.toViewY(100, 100)).isCloseTo(-12, within(0.81));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void aFittedPageIsSeenWholeAndFillsTheSurfaceOneWay(int quarters) {
        Camera camera = turned(quarters).fitted(PAGE, 16);
        Box seen = camera.toView(PAGE);
        assertThat(seen.x0()).isGreaterThan(15);
        assertThat(seen.y0()).isGreaterThan(15);
        assertThat(seen.x1()).isLessThan(801 - 15);
        assertThat(seen.y1()).isLessThan(613 - 15);
        double fill = Math.max(seen.width() / (801 - 32), seen.height() / (613 - 32));
        assertThat(fill).isCloseTo(1, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void whatIsSeenIsThePartOfThePageWithinTheSurface(int quarters) {
        Camera camera = turned(quarters);
        Box view = camera.toView(camera.seen());
        assertThat(view.x0()).isCloseTo(0, within(1e-9));
        assertThat(view.y0()).isCloseTo(0, within(1e-9));
        assertThat(view.x1()).isCloseTo(801, within(1e-9));
        assertThat(view.y1()).isCloseTo(613, within(1e-9));
    }
}
