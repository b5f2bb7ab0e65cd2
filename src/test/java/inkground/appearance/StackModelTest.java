package inkground.appearance;

import static inkground.appearance.Samples.FOGRA;
import static inkground.appearance.Samples.FOGRA_PAPER;
import static inkground.appearance.Samples.NAVY_SHIRT;
import static inkground.appearance.Samples.WHITE_SHIRT;
import static inkground.appearance.Samples.spot;
import static inkground.appearance.Samples.stack;
import static inkground.appearance.Samples.substrate;
import static inkground.appearance.Samples.white;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.colour.Bands;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import inkground.substrate.Substrate;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class StackModelTest {
    private static final Lab RED = new Lab(45, 60, 35);
    private static final Lab BLUE = new Lab(35, 5, -45);

    @Test
    void on_its_own_paper_the_print_condition_is_what_is_seen() {
        StackModel model = new StackModel(Stack.of(FOGRA_PAPER, Samples.process(), FOGRA));
        double[] seen = new double[3];
        double[] condition = new double[3];
        Random random = new Random(4);
        for (int i = 0; i < 300; i++) {
            int[] tints = {random.nextInt(256), random.nextInt(256), random.nextInt(256), random.nextInt(256)};
            model.toXyz(tints, seen);
            FOGRA.cmykToXyz(
                    new float[] {tints[0] / 255f, tints[1] / 255f, tints[2] / 255f, tints[3] / 255f}, condition);
            assertThat(seen).containsExactly(condition, within(1e-6));
        }
    }

    @Test
    void another_paper_moves_white_all_the_way_and_the_darkest_not_at_all() {
        Substrate ivory = substrate(Substrate.Kind.PAPER, new Lab(90, 1, 12));
        StackModel model = new StackModel(Stack.of(ivory, Samples.process(), FOGRA));
        double[] xyz = new double[3];
        model.toXyz(new int[4], xyz);
        assertThat(xyz).containsExactly(Cie.labToXyz(ivory.lab()), within(1e-12));
        double[] darkest = new double[3];
        FOGRA.cmykToXyz(new float[] {1, 1, 1, 1}, darkest);
        model.toXyz(new int[] {255, 255, 255, 255}, xyz);
        assertThat(xyz).containsExactly(darkest, within(1e-9));
        // half way by hand: X = Xm (1 + C) − Xmin C, C = (Xi − Xp) / (Xp − Xmin)
        double[] cyan = new double[3];
        FOGRA.cmykToXyz(new float[] {1, 0, 0, 0}, cyan);
        double paperY = Cie.labToXyz(FOGRA.paper())[1];
        double c = (Cie.labToXyz(ivory.lab())[1] - paperY) / (paperY - darkest[1]);
        model.toXyz(new int[] {255, 0, 0, 0}, xyz);
        assertThat(xyz[1]).isCloseTo(cyan[1] * (1 + c) - darkest[1] * c, within(1e-9));
    }

    @Test
    void opacity_one_shows_the_inks_own_colour_on_any_ground() {
        for (Substrate ground : List.of(WHITE_SHIRT, NAVY_SHIRT, FOGRA_PAPER)) {
            double[] xyz = new double[3];
            new StackModel(stack(ground, spot("Red", RED, 1))).toXyz(new int[] {255}, xyz);
            assertThat(xyz).containsExactly(Cie.labToXyz(RED), within(1e-9));
        }
    }

    @Test
    void opacity_zero_multiplies_band_by_band() {
        double[] xyz = new double[3];
        new StackModel(stack(NAVY_SHIRT, spot("Red", RED, 0))).toXyz(new int[] {255}, xyz);
        double[] ink = new double[3];
        double[] cloth = new double[3];
        Bands.STANDARD.fromXyz(Cie.labToXyz(RED), ink);
        Bands.STANDARD.fromXyz(Cie.labToXyz(NAVY_SHIRT.lab()), cloth);
        Bands.STANDARD.fromXyz(xyz, xyz);
        assertThat(xyz)
                .containsExactly(new double[] {ink[0] * cloth[0], ink[1] * cloth[1], ink[2] * cloth[2]}, within(1e-9));
    }

    @Test
    void any_opacity_shows_the_solid_over_white_and_the_contrast_ratio_over_black() {
        Substrate black = substrate(Substrate.Kind.GARMENT, new Lab(0, 0, 0));
        double[] overWhite = new double[3];
        double[] overBlack = new double[3];
        for (double opacity = 0; opacity <= 1; opacity += 0.125) {
            new StackModel(stack(WHITE_SHIRT, spot("Red", RED, opacity))).toXyz(new int[] {255}, overWhite);
            new StackModel(stack(black, spot("Red", RED, opacity))).toXyz(new int[] {255}, overBlack);
            assertThat(overWhite).containsExactly(Cie.labToXyz(RED), within(1e-9));
            assertThat(overBlack[1]).isCloseTo(opacity * overWhite[1], within(1e-9));
        }
    }

    @Test
    void on_dark_cloth_a_more_opaque_light_ink_is_lighter() {
        double before = -1;
        double[] xyz = new double[3];
        for (double opacity = 0; opacity <= 1; opacity += 0.1) {
            new StackModel(stack(NAVY_SHIRT, white(opacity))).toXyz(new int[] {255}, xyz);
            assertThat(xyz[1]).isGreaterThan(before);
            before = xyz[1];
        }
    }

    @Test
    void tints_step_evenly_in_the_spot_tone_value_of_iso_20654() {
        StackModel model = new StackModel(stack(WHITE_SHIRT, spot("Blue", BLUE, 0.6)));
        double[] xyz = new double[3];
        for (int tint = 0; tint <= 255; tint += 15) {
            model.toXyz(new int[] {tint}, xyz);
            // Tone value: the distance from paper in the cube-root values of X, Y, Z over that of the solid
            double[] solid = Cie.labToXyz(BLUE);
            double[] white = {Cie.D50_X, 1, Cie.D50_Z};
            double part = 0;
            double whole = 0;
            for (int i = 0; i < 3; i++) {
                part += Math.pow(Cie.f(xyz[i] / white[i]) - 1, 2);
                whole += Math.pow(Cie.f(solid[i] / white[i]) - 1, 2);
            }
            assertThat(Math.sqrt(part / whole)).isCloseTo(tint / 255.0, within(1e-9));
        }
    }

    @Test
    void more_of_a_dark_ink_is_never_lighter() {
        Random random = new Random(8);
        for (int i = 0; i < 200; i++) {
            Lab ground = new Lab(40 + 60 * random.nextDouble(), random.nextInt(40) - 20, random.nextInt(40) - 20);
            InkColour dark = spot("Dark", new Lab(15, 3, -5), random.nextDouble());
            StackModel model = new StackModel(stack(substrate(Substrate.Kind.GARMENT, ground), dark));
            double before = Double.MAX_VALUE;
            double[] xyz = new double[3];
            for (int tint = 0; tint < 256; tint += 5) {
                model.toXyz(new int[] {tint}, xyz);
                assertThat(xyz[1]).isLessThanOrEqualTo(before + 1e-12);
                before = xyz[1];
            }
        }
    }

    @Test
    void the_ink_printed_last_wins_when_both_hide() {
        InkColour red = spot("Red", RED, 1);
        InkColour blue = spot("Blue", BLUE, 1);
        Stack redFirst = new Stack(WHITE_SHIRT, List.of(red, blue), FOGRA, Set.of(0, 1), List.of(0, 1), null);
        Stack blueFirst = new Stack(WHITE_SHIRT, List.of(red, blue), FOGRA, Set.of(0, 1), List.of(1, 0), null);
        double[] xyz = new double[3];
        new StackModel(redFirst).toXyz(new int[] {255, 255}, xyz);
        assertThat(xyz).containsExactly(Cie.labToXyz(BLUE), within(1e-9));
        new StackModel(blueFirst).toXyz(new int[] {255, 255}, xyz);
        assertThat(xyz).containsExactly(Cie.labToXyz(RED), within(1e-9));
    }

    @Test
    void hidden_inks_do_not_print_and_technical_ones_are_hidden_at_first() {
        InkColour cut = new InkColour(inkground.ink.Ink.named("cut"), RED, 1, "invented");
        Stack stack = stack(WHITE_SHIRT, spot("Blue", BLUE, 1), cut);
        assertThat(stack.shown()).containsExactly(0);
        int[] both = {255, 255};
        assertThat(new StackModel(stack).toArgb(both)).isEqualTo(Srgb.labToArgb(BLUE));
        assertThat(new StackModel(stack.showing(Set.of())).toArgb(both)).isEqualTo(0xffffffff);
        assertThat(new StackModel(stack.showing(Set.of(1))).toArgb(both)).isEqualTo(Srgb.labToArgb(RED));
    }

    @Test
    void an_underbase_keeps_a_filter_bright_on_dark_cloth_and_spares_knocked_out_inks() {
        InkColour yellow = spot("Yellow Spot", new Lab(88, -5, 90), 0);
        InkColour black = spot("Black Spot", new Lab(12, 0, 0), 0);
        InkColour hiding = white(1);
        Stack bare = stack(NAVY_SHIRT, yellow, black);
        Stack based = bare.over(new Underbase(hiding, 1, 0, Set.of("Black Spot")));
        double[] without = new double[3];
        double[] with = new double[3];
        new StackModel(bare).toXyz(new int[] {255, 0}, without);
        new StackModel(based).toXyz(new int[] {255, 0}, with);
        assertThat(with[1]).isGreaterThan(10 * without[1]);
        // by hand: the ink over the white's own colour, band by band
        double[] ink = new double[3];
        double[] ground = new double[3];
        Bands.STANDARD.fromXyz(Cie.labToXyz(yellow.solid()), ink);
        Bands.STANDARD.fromXyz(Cie.labToXyz(hiding.solid()), ground);
        Bands.STANDARD.fromXyz(with, with);
        assertThat(with[1]).isCloseTo(ink[1] * ground[1], within(1e-9));
        new StackModel(bare).toXyz(new int[] {0, 255}, without);
        new StackModel(based).toXyz(new int[] {0, 255}, with);
        assertThat(with).containsExactly(without, within(0.0));
        new StackModel(based).toXyz(new int[] {0, 0}, with);
        assertThat(with).containsExactly(Cie.labToXyz(NAVY_SHIRT.lab()), within(1e-12));
    }

    @Test
    void at_an_edge_the_ink_lies_on_its_underbase_without_a_light_rim() {
        Stack bare = stack(NAVY_SHIRT, spot("Red", RED, 0.4));
        StackModel model = new StackModel(bare.over(Underbase.full()));
        double[] inside = new double[3];
        double[] outside = new double[3];
        double[] edge = new double[3];
        model.toXyz(new int[] {255, 255}, inside);
        model.toXyz(new int[] {0, 0}, outside);
        model.toXyz(new int[] {51, 51}, edge); // a fifth of the pixel is covered, by underbase and ink alike
        for (int i = 0; i < 3; i++) {
            assertThat(edge[i]).isCloseTo(0.2 * inside[i] + 0.8 * outside[i], within(1e-12));
        }
        double[] tint = new double[3];
        double[] white = new double[3];
        model.toXyz(new int[] {0, 255}, white);
        model.toXyz(new int[] {51, 255}, tint); // a tint on a whole underbase shows the white between its dots
        assertThat(tint[1]).isBetween(inside[1], white[1]);
    }

    @Test
    void the_cache_gives_what_the_model_computes_from_any_thread() {
        StackModel model =
                new StackModel(stack(NAVY_SHIRT, spot("Red", RED, 0.7), spot("Blue", BLUE, 0.4), white(0.8)));
        IntStream.range(0, 40_000).parallel().forEach(i -> {
            int[] tints = {i & 255, i >> 4 & 255, i * 7 & 255};
            double[] xyz = new double[3];
            model.toXyz(tints, xyz);
            assertThat(model.toArgb(tints)).isEqualTo(Srgb.xyzD50ToArgb(xyz[0], xyz[1], xyz[2]));
        });
    }

    @Test
    void process_tints_on_paper_are_interpolated_with_a_difference_that_is_hardly_seen() {
        Lab paper = new Lab(92, 1, 9);
        StackModel model = new StackModel(Stack.of(substrate(Substrate.Kind.PAPER, paper), Samples.process(), FOGRA));
        Random random = new Random(12);
        double[] xyz = new double[3];
        double sum = 0;
        int n = 5000;
        for (int i = 0; i < n; i++) {
            int[] tints = {random.nextInt(256), random.nextInt(256), random.nextInt(256), random.nextInt(256)};
            tints[random.nextInt(4)] = 0;
            model.toXyz(tints, xyz);
            double off = Cie.deltaE00(lab(Srgb.xyzD50ToArgb(xyz[0], xyz[1], xyz[2])), lab(model.toArgb(tints)));
            assertThat(off).isLessThan(2);
            sum += off;
        }
        assertThat(sum / n).isLessThan(0.15);
        assertThat(model.toArgb(new int[4])).isEqualTo(Srgb.labToArgb(paper));
    }

    private static Lab lab(int argb) {
        return Srgb.toLab((argb >> 16 & 255) / 255.0, (argb >> 8 & 255) / 255.0, (argb & 255) / 255.0);
    }

    @Test
    void a_colour_beyond_the_display_is_told() {
        StackModel model = new StackModel(Stack.of(FOGRA_PAPER, Samples.process(), FOGRA));
        assertThat(model.displayShows(new int[] {255, 0, 0, 0})).isFalse();
        assertThat(model.displayShows(new int[] {0, 0, 0, 128})).isTrue();
    }

    @Test
    void two_hits_of_white_are_one_film_over_another_and_come_nearer_to_its_own_white() {
        InkColour white = new InkColour(new Ink("W", InkKind.WHITE), new Lab(94, 0, 0), 0.6, "test");
        double[] light = new double[4];
        for (int hits = 1; hits <= 3; hits++) {
            Underbase base = new Underbase(white, 1, hits, 0, Set.of(), Set.of());
            StackModel model = new StackModel(Samples.stack(NAVY_SHIRT, spot("Clear", new Lab(100, 0, 0), 0))
                    .over(base));
            double[] xyz = new double[3];
            model.toXyz(new int[] {255, 255}, xyz);
            light[hits] = xyz[1];
        }
        // The same film printed twice as an ink of its own: layer upon layer, which the thickness has to agree with.
        StackModel twice = new StackModel(Samples.stack(
                NAVY_SHIRT, white, new InkColour(new Ink("W2", InkKind.WHITE), white.solid(), 0.6, "test")));
        double[] xyz = new double[3];
        twice.toXyz(new int[] {255, 255}, xyz);
        assertThat(light[2]).isCloseTo(xyz[1], within(1e-9));
        assertThat(light[2]).isGreaterThan(light[1] * 1.05);
        assertThat(light[3]).isGreaterThan(light[2]);
        assertThat(light[3] - light[2]).isLessThan(light[2] - light[1]);
    }

    @Test
    void a_stack_with_wrong_indices_is_refused() {
        List<InkColour> one = List.of(white(1));
        assertThatThrownBy(() -> new Stack(WHITE_SHIRT, one, FOGRA, Set.of(1), List.of(), null))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Stack(WHITE_SHIRT, one, FOGRA, Set.of(), List.of(0, 0), null))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Stack(WHITE_SHIRT, one, FOGRA, Set.of(), List.of(3), null))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
