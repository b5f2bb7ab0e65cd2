package inkground.appearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.substrate.Texture;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class GrainTest {
    @Test
    void grainLeavesTheColourAsItIsOnAverage() {
        for (Texture.Kind kind : Texture.Kind.values()) {
            if (kind == Texture.Kind.RECYCLED) {
                continue; // its specks are dark, and are meant to be
            }
            Grain grain = new Grain(kind, 0.1, 0, 0, 200, 200);
            int[] light = IntStream.range(0, 200 * 200)
                    .map(i -> grain.shade(4096, i, 1))
                    .toArray();
            assertThat(Arrays.stream(light).average().orElseThrow() / 4096)
                    .as(kind.name())
                    .isCloseTo(1, within(0.02));
            assertThat(Arrays.stream(light).distinct().count()).as(kind.name()).isGreaterThan(1);
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
        Grain whole = new Grain(Texture.Kind.WOVEN, 0.2, -10, 5, 60, 40);
        Grain part = new Grain(Texture.Kind.WOVEN, 0.2, 20, 5, 30, 40);
        for (int y = 0; y < 40; y++) {
            for (int x = 0; x < 30; x++) {
                assertThat(part.shade(4096, y * 30 + x, 0.7)).isEqualTo(whole.shade(4096, y * 60 + 30 + x, 0.7));
            }
        }
    }

    @Test
    void anOverlayDoesToTheClothWhatTheGrainDoes() {
        Grain grain = new Grain(Texture.Kind.JERSEY, 0.1, 0, 0, 100, 100);
        int[] sheet = grain.overlay(0xff606060, 1);
        for (int i = 0; i < sheet.length; i++) {
            int alpha = sheet[i] >>> 24;
            double laid = (sheet[i] & 255) + 0x60 * (255 - alpha) / 255.0;
            assertThat(laid).isCloseTo(0x60 * grain.shade(4096, i, 1) / 4096.0, within(0.6));
        }
    }
}
