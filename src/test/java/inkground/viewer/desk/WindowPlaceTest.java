package inkground.viewer.desk;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.viewer.ViewerRig;
import java.util.List;
import java.util.Optional;
import java.util.prefs.Preferences;
import javafx.geometry.Rectangle2D;
import org.junit.jupiter.api.Test;

/** Where the window is shown, given where it stood and which screens there are. */
class WindowPlaceTest {
    private static final Rectangle2D DESK = new Rectangle2D(0, 25, 1920, 1055);
    private static final Rectangle2D BESIDE = new Rectangle2D(1920, 0, 2560, 1440);

    private static Rectangle2D shown(WindowPlace kept, Rectangle2D... screens) {
        return WindowPlace.on(Optional.ofNullable(kept), List.of(screens)).bounds();
    }

    private static WindowPlace at(double x, double y, double width, double height) {
        return new WindowPlace(new Rectangle2D(x, y, width, height), false);
    }

    @Test
    void aFirstWindowStandsInTheMiddleOfTheFirstScreen() {
        assertThat(shown(null, DESK, BESIDE)).isEqualTo(new Rectangle2D(320, 152.5, 1280, 800));
    }

    @Test
    void aFirstWindowIsNeverLargerThanItsScreen() {
        Rectangle2D small = new Rectangle2D(0, 28, 1024, 740);
        assertThat(shown(null, small)).isEqualTo(small);
    }

    @Test
    void aWindowComesBackWhereItStood() {
        assertThat(shown(at(2000, 40, 1500, 1200), DESK, BESIDE)).isEqualTo(new Rectangle2D(2000, 40, 1500, 1200));
    }

    @Test
    void aWindowThatReachesBeyondItsScreenIsMovedOntoTheOneItMostlyLaysOn() {
        assertThat(shown(at(1800, 900, 1500, 1200), DESK, BESIDE)).isEqualTo(new Rectangle2D(1920, 240, 1500, 1200));
    }

    @Test
    void aWindowWhoseScreenIsGoneStandsInTheMiddleOfTheFirst() {
        assertThat(shown(at(2000, 40, 1500, 1200), DESK)).isEqualTo(new Rectangle2D(320, 152.5, 1280, 800));
    }

    @Test
    void theWindowsPlaceIsKept() {
        Preferences node = ViewerRig.preferences();
        Recents recents = new Recents(node);
        assertThat(recents.window()).isEmpty();
        WindowPlace place = new WindowPlace(new Rectangle2D(-12.5, 40, 1500, 1200), true);
        recents.keep(place);
        assertThat(new Recents(node).window()).contains(place);
        for (String damaged : List.of("here", "1 2 3 4", "1 2 NaN 4 true", "1 2 0 4 true", "a b c d e")) {
            node.put("window", damaged);
            assertThat(recents.window()).as(damaged).isEmpty();
        }
    }
}
