package inkground.appearance;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.geometry.Box;
import inkground.ink.Ink;
import inkground.ink.InkSet;
import inkground.plate.InkPlanes;
import inkground.plate.PlanesForTests;
import inkground.plate.PlateRequest;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PlateMapTest {
    @Test
    void aSolidIsBlackNoTintWhiteAndOtherInksAreNotSeen() {
        InkSet inks = new InkSet(List.of(Ink.named("Red"), Ink.named("Blue")));
        PlateRequest request = PlateRequest.of(new Box(0, 0, 3, 1), 72, true, Set.of());
        InkPlanes planes = PlanesForTests.of(inks, request, (plane, x, y) -> plane == 0 ? 255 * x / 2 : 255);
        int[] argb = new int[5];
        PlateMap.paint(planes, 0, argb, 1, 3);
        assertThat(argb).containsExactly(0, 0xffffffff, 0xff808080, 0xff000000, 0);
    }
}
