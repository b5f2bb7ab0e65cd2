package inkground.appearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.substrate.Texture;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class GrainTest {
    @Test
    void grainLeavesTheColourAsItIsOnAverage() {
        for (Texture.Kind kind : Texture.Kind.values()) {
            if (kind == Texture.Kind.RECYCLED) {
                continue; // its specks are dark, and are meant to be
            }
            int[] argb = new int[200 * 200];
            Arrays.fill(argb, 0xff808080);
            new Grain(kind, 0.1, 0, 0, 200, 200).shade(argb, 1);
            double mean = Arrays.stream(argb).map(c -> c & 255).average().orElseThrow();
            assertThat(mean).as(kind.name()).isCloseTo(128, within(2.5));
            assertThat(Arrays.stream(argb).distinct().count()).as(kind.name()).isGreaterThan(1);
        }
    }

    @Test
    void grainFinerThanAPixelIsNotShown() {
        Grain far = new Grain(Texture.Kind.JERSEY, 1.5, 0, 0, 64, 64);
        assertThat(far.even()).isTrue();
        assertThat(far.shade(4096, 100, 1)).isEqualTo(4096);
    }

    @Test
    void regionsFitTogether() {
        int[] whole = new int[60 * 40];
        int[] part = new int[30 * 40];
        Arrays.fill(whole, 0xffa08060);
        Arrays.fill(part, 0xffa08060);
        new Grain(Texture.Kind.WOVEN, 0.2, -10, 5, 60, 40).shade(whole, 0.7);
        new Grain(Texture.Kind.WOVEN, 0.2, 20, 5, 30, 40).shade(part, 0.7);
        for (int y = 0; y < 40; y++) {
            for (int x = 0; x < 30; x++) {
                assertThat(part[y * 30 + x]).isEqualTo(whole[y * 60 + 30 + x]);
            }
        }
    }
}
