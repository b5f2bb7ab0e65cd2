package inkground.appearance;

import static inkground.appearance.Samples.FOGRA;
import static inkground.appearance.Samples.NAVY_SHIRT;
import static inkground.appearance.Samples.filled;
import static inkground.appearance.Samples.planes;
import static inkground.appearance.Samples.spot;
import static inkground.appearance.Samples.white;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Cancel;
import inkground.colour.Lab;
import inkground.plate.InkPlanes;
import inkground.plate.PlanesForTests;
import inkground.substrate.Substrate;
import inkground.substrate.Texture;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;

class AppearanceTest {
    private static final int W = 150;
    private static final int H = 70;

    @Test
    void every_pixel_is_the_models_colour_with_few_and_with_many_inks() {
        for (int inks : new int[] {1, 4, 7, 8, 11}) {
            List<InkColour> colours = new ArrayList<>();
            byte[][] rasters = new byte[inks + 2][];
            Random random = new Random(inks);
            for (int i = 0; i < inks; i++) {
                colours.add(spot("Ink " + i, new Lab(30 + 5 * i, 10 * i - 40, 40 - 10 * i), 0.1 * (i % 10)));
                rasters[i] = raster(random);
            }
            rasters[inks] = filled(W * H, 255);
            rasters[inks + 1] = filled(W * H, 255);
            InkPlanes planes = planes(colours, W, H, rasters);
            StackModel model = new StackModel(Stack.of(NAVY_SHIRT, colours, FOGRA));
            int stride = W + 5;
            int[] argb = new int[stride * H + 3];
            Appearance.paint(planes, model, argb, 3, stride, new Cancel());
            int[] tints = new int[inks];
            for (int y = 0; y < H; y++) {
                for (int x = 0; x < W; x++) {
                    for (int i = 0; i < inks; i++) {
                        tints[i] = planes.get(i, x, y);
                    }
                    assertThat(argb[3 + y * stride + x]).isEqualTo(model.toArgb(tints));
                }
            }
            assertThat(argb[0]).isZero();
            assertThat(argb[3 + W]).isZero();
        }
    }

    // Half even, half noise, so that both even and mixed cells are met.
    private static byte[] raster(Random random) {
        byte[] out = filled(W * H, random.nextInt(3) * 100);
        for (int i = 0; i < out.length; i++) {
            if (i % W >= 64) {
                out[i] = (byte) random.nextInt(256);
            }
        }
        return out;
    }

    @Test
    void the_underbase_fades_with_the_edge_of_the_artwork() {
        List<InkColour> inks = List.of(spot("Red", new Lab(45, 60, 35), 0.3));
        byte[] ink = {0, (byte) 100, (byte) 255, (byte) 128};
        byte[] mark = {0, (byte) 100, (byte) 255, (byte) 255}; // the last is a tint of a half, not an edge
        InkPlanes planes = planes(inks, 4, 1, ink, mark, mark);
        StackModel model =
                new StackModel(Stack.of(NAVY_SHIRT, inks, FOGRA).over(new Underbase(white(1), 1, 0, Set.of())));
        int[] argb = new int[4];
        Appearance.paint(planes, model, argb, 0, 4, new Cancel());
        assertThat(argb)
                .containsExactly(
                        model.toArgb(new int[] {0, 0}),
                        model.toArgb(new int[] {100, 100}),
                        model.toArgb(new int[] {255, 255}),
                        model.toArgb(new int[] {128, 255}));
    }

    @Test
    void a_choke_moves_the_edge_of_the_underbase_inwards_by_its_width() {
        int size = 81;
        byte[] square = new byte[size * size];
        for (int y = 20; y < 60; y++) {
            Arrays.fill(square, y * size + 20, y * size + 60, (byte) 255);
        }
        byte[] choked = UnderbaseCoverage.choke(square, size, size, 3.25);
        double covered = 0;
        for (int i = 0; i < choked.length; i++) {
            assertThat(choked[i] & 255).isLessThanOrEqualTo(square[i] & 255);
            covered += (choked[i] & 255) / 255.0;
        }
        assertThat(covered).isCloseTo(33.5 * 33.5, within(12.0)); // 40 − 2 × 3.25 a side; corners are a little round
        assertThat(choked[40 * size + 22] & 255).isZero();
        assertThat(choked[40 * size + 23] & 255).isBetween(185, 195); // three quarters
        assertThat(choked[40 * size + 24] & 255).isEqualTo(255);
    }

    @Test
    void a_choked_underbase_is_painted_inside_the_ink_only() {
        List<InkColour> inks = List.of(spot("Yellow", new Lab(88, -5, 90), 0));
        int n = 100;
        byte[] ink = new byte[n * n];
        for (int y = 30; y < 70; y++) {
            Arrays.fill(ink, y * n + 30, y * n + 70, (byte) 255);
        }
        InkPlanes planes = planes(inks, n, n, ink, ink, ink);
        double mmPerPx = 25.4 / 72;
        StackModel model = new StackModel(
                Stack.of(NAVY_SHIRT, inks, FOGRA).over(new Underbase(white(1), 1, 2 * mmPerPx, Set.of())));
        int[] argb = new int[n * n];
        Appearance.paint(planes, model, argb, 0, n, new Cancel());
        assertThat(argb[50 * n + 50]).isEqualTo(model.toArgb(new int[] {255, 255}));
        assertThat(argb[50 * n + 30]).isEqualTo(model.toArgb(new int[] {255, 0})); // the rim has ink, no white
        assertThat(argb[50 * n + 10]).isEqualTo(model.toArgb(new int[] {0, 0}));
    }

    @Test
    void a_spread_moves_the_edge_outwards_by_its_width() {
        int size = 81;
        byte[] square = new byte[size * size];
        for (int y = 30; y < 50; y++) {
            Arrays.fill(square, y * size + 30, y * size + 50, (byte) 255);
        }
        byte[] spread = UnderbaseCoverage.spread(square, size, size, 3.25);
        double covered = 0;
        for (int i = 0; i < spread.length; i++) {
            assertThat(spread[i] & 255).isGreaterThanOrEqualTo(square[i] & 255);
            covered += (spread[i] & 255) / 255.0;
        }
        // A square of 20 spread by r: 20² + 4 · 20 r + π r² (Steiner's formula for convex bodies)
        assertThat(covered).isCloseTo(400 + 80 * 3.25 + Math.PI * 3.25 * 3.25, within(8.0));
        assertThat(spread[40 * size + 27] & 255).isEqualTo(255);
        assertThat(spread[40 * size + 26] & 255).isBetween(60, 70); // a quarter
        assertThat(spread[40 * size + 25] & 255).isZero();
    }

    @Test
    void a_spread_underbase_is_painted_beyond_the_ink() {
        List<InkColour> inks = List.of(spot("Yellow", new Lab(88, -5, 90), 0));
        int n = 100;
        byte[] ink = new byte[n * n];
        for (int y = 30; y < 70; y++) {
            Arrays.fill(ink, y * n + 30, y * n + 70, (byte) 255);
        }
        InkPlanes planes = planes(inks, n, n, ink, ink, ink);
        Underbase wider = new Underbase(white(1), 1, -2 * 25.4 / 72, Set.of());
        Stack stack = Stack.of(NAVY_SHIRT, inks, FOGRA).over(wider);
        StackModel model = new StackModel(stack);
        int[] argb = new int[n * n];
        Appearance.paint(planes, model, argb, 0, n, new Cancel());
        assertThat(argb[50 * n + 50]).isEqualTo(model.toArgb(new int[] {255, 255}));
        assertThat(argb[50 * n + 29]).isEqualTo(model.toArgb(new int[] {0, 255})); // white peeps out
        assertThat(argb[50 * n + 10]).isEqualTo(model.toArgb(new int[] {0, 0}));
        assertThat(Appearance.reachPx(stack, 1)).isBetween(3, 5);
        assertThat(Appearance.reachPx(stack.over(null), 1)).isZero();
    }

    @Test
    void an_ink_that_knocks_the_underbase_out_lies_on_the_cloth_where_it_crosses_another() {
        List<InkColour> inks = List.of(spot("Yellow", new Lab(88, -5, 90), 0), spot("Black", new Lab(12, 0, 0), 0.3));
        int n = 64;
        byte[] yellow = new byte[n * n];
        byte[] black = new byte[n * n];
        Arrays.fill(yellow, 0, 40 * n, (byte) 255);
        Arrays.fill(black, 20 * n, n * n, (byte) 255);
        InkPlanes planes = planes(inks, n, n, yellow, black, Samples.filled(n * n, 255), Samples.filled(n * n, 255));
        Stack stack = Stack.of(NAVY_SHIRT, inks, FOGRA);
        StackModel model = new StackModel(stack.over(new Underbase(white(1), 1, 0, Set.of("Black"))));
        int[] argb = new int[n * n];
        Appearance.paint(planes, model, argb, 0, n, new Cancel());
        assertThat(argb[10 * n + 5]).isEqualTo(model.toArgb(new int[] {255, 0, 255}));
        int crossing = model.toArgb(new int[] {255, 255, 0});
        assertThat(argb[30 * n + 5]).isEqualTo(crossing).isEqualTo(model.toArgb(new int[] {255, 255}));
        assertThat(argb[60 * n + 5]).isEqualTo(model.toArgb(new int[] {0, 255, 0}));
        StackModel only = new StackModel(stack.over(new Underbase(white(1), 1, 1, 0, Set.of("Black"), Set.of())));
        assertThat(only.toArgb(new int[] {255, 0})).isEqualTo(only.toArgb(new int[] {255, 0, 0}));
        assertThat(only.toArgb(new int[] {0, 255})).isEqualTo(only.toArgb(new int[] {0, 255, 255}));
    }

    @Test
    void the_surface_is_the_same_in_any_tile_and_keeps_the_colour_on_average() {
        for (Texture.Kind kind : Texture.Kind.values()) {
            Texture texture = new Texture(kind, 1, 5);
            double sum = 0;
            int n = 200;
            for (int y = 0; y < n; y++) {
                for (int x = 0; x < n; x++) {
                    double f = Textures.factor(texture, x * 0.13, y * 0.13, 0.1);
                    assertThat(f).isBetween(0.6, 1.4);
                    sum += f;
                }
            }
            assertThat(sum / n / n).as(kind.toString()).isCloseTo(1, within(0.03));
            assertThat(Textures.factor(texture, 3, 4, 50)).isCloseTo(1, within(1e-9)); // nothing finer than a pixel
        }
        assertThat(Textures.shade(0xff808080, 1)).isEqualTo(0xff808080);
    }

    @Test
    void texture_is_painted_only_where_asked() {
        Substrate cloth =
                Samples.substrate(Substrate.Kind.GARMENT, new Lab(60, 0, 0), new Texture(Texture.Kind.HEATHER, 1, 9));
        List<InkColour> inks = List.of(white(1));
        byte[] none = new byte[64 * 64];
        InkPlanes planes = PlanesForTests.ofRasters(
                new inkground.ink.InkSet(List.of(inks.get(0).ink())),
                new inkground.plate.PlateRequest(4, 0, 0, 64, 64, true, Set.of()),
                new byte[][] {none, none, none});
        StackModel model = new StackModel(Stack.of(cloth, inks, FOGRA));
        int[] flat = new int[64 * 64];
        int[] textured = new int[64 * 64];
        Appearance.paint(planes, model, flat, 0, 64, new Cancel());
        Appearance.paint(planes, model, PaintOptions.TEXTURED, textured, 0, 64, new Cancel());
        assertThat(Arrays.stream(flat).distinct().count()).isEqualTo(1);
        assertThat(Arrays.stream(textured).distinct().count()).isGreaterThan(10);
    }

    @Test
    void the_share_that_the_display_cannot_show_is_counted() {
        List<InkColour> inks = Samples.process();
        byte[] cyan = new byte[80 * 10];
        for (int y = 0; y < 10; y++) {
            Arrays.fill(cyan, y * 80, y * 80 + 20, (byte) 255);
        }
        byte[] none = new byte[800];
        InkPlanes planes = planes(inks, 80, 10, cyan, none, none, none, cyan, cyan);
        StackModel model = new StackModel(Stack.of(Samples.FOGRA_PAPER, inks, FOGRA));
        assertThat(Appearance.shareNotDisplayed(planes, model, new Cancel())).isEqualTo(0.25);
    }

    @Test
    void a_cancelled_painting_stops_and_planes_of_other_inks_are_refused() {
        List<InkColour> inks = List.of(white(1));
        byte[] none = new byte[100];
        InkPlanes planes = planes(inks, 10, 10, none, none, none);
        StackModel model = new StackModel(Stack.of(NAVY_SHIRT, inks, FOGRA));
        Cancel cancel = new Cancel();
        cancel.request();
        int[] argb = new int[100];
        assertThatThrownBy(() -> Appearance.paint(planes, model, argb, 0, 10, cancel))
                .isInstanceOf(CancellationException.class);
        StackModel other = new StackModel(Stack.of(NAVY_SHIRT, Samples.process(), FOGRA));
        assertThatThrownBy(() -> Appearance.paint(planes, other, argb, 0, 10, new Cancel()))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
