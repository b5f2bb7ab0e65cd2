package inkground.appearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.PrintCondition;
import inkground.colour.Reach;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import inkground.substrate.Substrate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class StackGamutTest {
    private static final PrintCondition FOGRA = Samples.FOGRA;
    private static final Substrate PAPER = Samples.FOGRA_PAPER;
    private static final Substrate NAVY = Samples.NAVY_SHIRT;
    private static final Substrate WHITE = Samples.WHITE_SHIRT;

    private static List<InkColour> eight() {
        List<InkColour> inks = new ArrayList<>(Samples.process());
        inks.add(Samples.spot("Orange", new Lab(65, 50, 70), 0.7));
        inks.add(Samples.spot("Green", new Lab(45, -60, 25), 0.7));
        inks.add(Samples.spot("Violet", new Lab(25, 45, -50), 0.7));
        inks.add(Samples.spot("Pink", new Lab(60, 70, -10), 0.4));
        return inks;
    }

    @Test
    void what_a_stack_prints_itself_it_can_reach() {
        everyColourComesBack(Stack.of(PAPER, Samples.process(), FOGRA), 4);
        everyColourComesBack(Stack.of(WHITE, Samples.process(), FOGRA), 4);
        everyColourComesBack(Stack.of(PAPER, eight(), FOGRA), 8);
        everyColourComesBack(Stack.of(NAVY, eight(), FOGRA), 8);
        everyColourComesBack(Stack.of(NAVY, eight(), FOGRA).over(Underbase.full()), 8);
    }

    @Test
    void under_inks_that_knock_it_out_no_underbase_lightens_a_colour() {
        Underbase open = new Underbase(InkColours.underbaseWhite(), 1, 0, Set.of("Pink"));
        Stack stack = Stack.of(NAVY, eight(), FOGRA).over(open);
        everyColourComesBack(stack, 8);
        // Solid pink takes the white from under whatever else is printed, so white beneath pink is out of reach.
        Stack pinkAlone = Stack.of(
                        NAVY,
                        List.of(
                                Samples.spot("Pink", new Lab(60, 70, -10), 0.4),
                                Samples.spot("Clear", new Lab(99, 0, 0), 0.01)),
                        FOGRA)
                .over(open);
        double[] onWhite = new double[3];
        new StackModel(pinkAlone).layer(new double[] {1, 0}, true, onWhite, new double[3]);
        Lab asked = Cie.xyzToLab(onWhite[0], onWhite[1], onWhite[2]);
        assertThat(StackGamut.of(new StackModel(pinkAlone), 2).missedBy(asked)).isGreaterThan(5);
    }

    private static void everyColourComesBack(Stack stack, double limit) {
        StackModel model = new StackModel(stack);
        StackGamut gamut = StackGamut.of(model, limit);
        Random random = new Random(4);
        double[] xyz = new double[3];
        for (int i = 0; i < 150; i++) {
            int[] tints = IntStream.range(0, stack.inks().size())
                    .map(t -> random.nextInt(3) == 0 ? random.nextInt(256) : random.nextInt(3) == 0 ? 255 : 0)
                    .toArray();
            model.toXyz(tints, xyz);
            assertThat(gamut.missedBy(Cie.xyzToLab(xyz[0], xyz[1], xyz[2])))
                    .as("%s of %s", Arrays.toString(tints), stack.inks())
                    .isLessThan(0.5);
        }
    }

    @Test
    void a_colour_no_ink_makes_is_missed_by_its_difference_from_the_nearest() {
        StackGamut gamut = StackGamut.of(new StackModel(Stack.of(PAPER, Samples.process(), FOGRA)), 3);
        // Green of sRGB; the nearest print by 80,000 mixtures is what the search has to come to.
        Lab green = new Lab(87.8, -79.3, 81);
        double nearest = nearestOfMany(green);
        assertThat(nearest).isGreaterThan(8);
        assertThat(gamut.missedBy(green)).isBetween(nearest - 0.6, nearest + 1e-9);
        // Whiter than the paper is beyond any ink: by CIEDE2000 alone.
        Lab brighter = new Lab(100, 0, -2);
        assertThat(gamut.missedBy(brighter)).isCloseTo(Cie.deltaE00(brighter, PAPER.lab()), within(1e-3));
    }

    private static double nearestOfMany(Lab asked) {
        double[] xyz = new double[3];
        double least = Double.MAX_VALUE;
        for (int c = 0; c <= 40; c++) {
            for (int y = 0; y <= 40; y++) {
                for (int m = 0; m <= 6; m++) {
                    for (int k = 0; k <= 6; k++) {
                        FOGRA.cmykToXyz(new float[] {c / 40f, m / 20f, y / 40f, k / 20f}, xyz);
                        least = Math.min(least, Cie.deltaE00(Cie.xyzToLab(xyz[0], xyz[1], xyz[2]), asked));
                    }
                }
            }
        }
        return least;
    }

    @Test
    void on_paper_process_inks_reach_what_the_print_condition_says() {
        StackGamut gamut = StackGamut.of(new StackModel(Stack.of(PAPER, Samples.process(), FOGRA)), 3);
        Random random = new Random(8);
        for (int i = 0; i < 60; i++) {
            Lab asked = new Lab(
                    15 + 80 * random.nextDouble(), 160 * random.nextDouble() - 80, 160 * random.nextDouble() - 80);
            // The condition's own search keeps hue before chroma, so it may end further off, never nearer.
            assertThat(gamut.missedBy(StackGamut.askedOn(PAPER, asked)))
                    .as(asked.toString())
                    .isLessThan(Reach.of(FOGRA, asked).missedBy() * 1.1 + 0.6);
        }
    }

    @Test
    void a_dark_garment_is_out_of_reach_of_light_colours_without_white_beneath() {
        Stack bare = Stack.of(NAVY, Samples.process(), FOGRA);
        Lab yellow = new Lab(85, -5, 80);
        assertThat(StackGamut.of(new StackModel(bare), 3).missedBy(yellow)).isGreaterThan(30);
        assertThat(StackGamut.of(new StackModel(bare.over(Underbase.full())), 3).missedBy(yellow))
                .isLessThan(8);
        // The bare garment stays within reach with an underbase: where no ink prints, no white is laid.
        assertThat(StackGamut.of(new StackModel(bare.over(Underbase.full())), 3).missedBy(NAVY.lab()))
                .isLessThan(0.01);
    }

    @Test
    void the_tints_told_make_the_colour_told_within_the_ink_limit() {
        Stack stack = Stack.of(WHITE, eight(), FOGRA);
        StackModel model = new StackModel(stack);
        StackGamut gamut = StackGamut.of(model, 1.5);
        Random random = new Random(6);
        double[] xyz = new double[3];
        for (int i = 0; i < 40; i++) {
            Lab asked =
                    new Lab(90 * random.nextDouble(), 120 * random.nextDouble() - 60, 120 * random.nextDouble() - 60);
            StackGamut.Nearest nearest = gamut.nearest(asked);
            assertThat(nearest.tints().stream().mapToDouble(t -> t).sum()).isLessThan(1.5 + 1e-9);
            assertThat(nearest.tints()).allMatch(t -> t >= 0 && t <= 1);
            assertThat(Cie.deltaE00(asked, nearest.lab())).isEqualTo(nearest.missedBy());
            model.toXyz(
                    nearest.tints().stream()
                            .mapToInt(t -> (int) Math.round(255 * t))
                            .toArray(),
                    xyz);
            assertThat(Cie.deltaE00(Cie.xyzToLab(xyz[0], xyz[1], xyz[2]), nearest.lab()))
                    .isLessThan(1);
        }
    }

    @Test
    void hidden_inks_and_those_for_the_finishing_machine_reach_nothing() {
        List<InkColour> inks = List.of(
                new InkColour(new Ink("Cut", InkKind.TECHNICAL), new Lab(50, 70, 0), 1, "test"),
                Samples.spot("Red", new Lab(45, 60, 40), 1));
        Stack stack = Stack.of(WHITE, inks, FOGRA);
        Lab pink = new Lab(50, 70, 0);
        assertThat(StackGamut.of(new StackModel(stack.showing(Set.of(0, 1))), 3).missedBy(pink))
                .isGreaterThan(5);
        Lab red = new Lab(45, 60, 40);
        assertThat(StackGamut.of(new StackModel(stack), 3).missedBy(red)).isLessThan(0.1);
        assertThat(StackGamut.of(new StackModel(stack.showing(Set.of())), 3).missedBy(red))
                .isEqualTo(Cie.deltaE00(red, WHITE.lab()));
    }

    @Test
    void twelve_inks_are_searched_as_well() {
        List<InkColour> inks = new ArrayList<>(eight());
        for (int i = 0; i < 4; i++) {
            inks.add(Samples.spot("Extra " + i, new Lab(30 + 10 * i, 20 * i - 30, 30 - 20 * i), 0.6));
        }
        everyColourComesBack(Stack.of(WHITE, inks, FOGRA), 12);
    }

    @Test
    void a_limit_of_no_ink_is_refused() {
        StackModel model = new StackModel(Stack.of(PAPER, Samples.process(), FOGRA));
        assertThatThrownBy(() -> StackGamut.of(model, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> StackGamut.of(model, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }
}
