package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.BlendMode;
import inkground.artwork.Colour;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.Family;
import inkground.artwork.ColourAssignment.InkAt;
import inkground.artwork.ColourAssignment.InkNamed;
import inkground.artwork.ColourAssignment.Process;
import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourAssignment.Seen;
import inkground.artwork.ColourAssignment.Source;
import inkground.artwork.ColourAssignment.Stated;
import inkground.artwork.ColourAssignment.Target;
import inkground.artwork.ColourAssignment.WhiteInk;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.artwork.Style;
import inkground.artwork.TintTransform;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import inkground.ink.InkKind;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What assigned colours do to the planes; the garment's colour in these pages is the invented #1C304F. */
class ColourAssignmentTest {
    private static final Outline ALL = Pages.rect(0, 0, 20, 20);
    private static final Outline LEFT = Pages.rect(0, 0, 10, 20);
    private static final Colour GARMENT = new Colour(Pages.RGB, 0x1c / 255f, 0x30 / 255f, 0x4f / 255f);
    private static final Colour RED = Pages.spot("Reach Red", 1);
    private static final Source SEEN = new Seen(0x1c304f, 1);
    private static final ColourAssignment BARE = rules(SEEN, new Bare());

    @Test
    void aBareColourAloneIsAsIfNothingWerePainted() throws Refusal {
        InkPlanes planes = render(BARE, Pages.fill(ALL, GARMENT));
        assertThat(at(planes, 5)).isEqualTo("{} mark 0 inked 0");
    }

    @Test
    void whatLiesBeneathABareColourStaysHidden() throws Refusal {
        InkPlanes planes = render(BARE, Pages.fill(ALL, RED), Pages.fill(LEFT, GARMENT));
        assertThat(at(planes, 5)).isEqualTo("{} mark 0 inked 255");
        assertThat(at(planes, 15)).isEqualTo("{Reach Red=255} mark 255 inked 255");
    }

    @Test
    void whatLiesOnABareColourIsPaintedAndItsWhiteIsWhitePaint() throws Refusal {
        InkPlanes planes = render(BARE, Pages.fill(ALL, GARMENT), Pages.fill(LEFT, Pages.cmyk(0, 0, 0, 0)));
        assertThat(at(planes, 5)).isEqualTo("{} mark 255 inked 0");
        assertThat(at(render(BARE, Pages.fill(ALL, GARMENT), Pages.fill(LEFT, RED)), 5))
                .isEqualTo("{Reach Red=255} mark 255 inked 255");
    }

    @Test
    void aTransparentBareColourLetsTheBeneathThroughByItsShare() throws Refusal {
        InkPlanes planes = render(BARE, Pages.fill(ALL, RED), Pages.fill(LEFT, GARMENT, Pages.alpha(0.6), null));
        assertThat(at(planes, 5)).isEqualTo("{Reach Red=102} mark 102 inked 255");
    }

    @Test
    void aBareColourInsideAnIsolatedGroupHidesWhatLiesBeneathTheGroup() throws Refusal {
        Op group = Pages.group(true, Style.PLAIN, Pages.fill(LEFT, GARMENT));
        assertThat(at(render(BARE, Pages.fill(ALL, RED), group), 5)).isEqualTo("{} mark 0 inked 255");
        Op half = Pages.group(true, Pages.alpha(0.5), Pages.fill(LEFT, GARMENT));
        assertThat(at(render(BARE, Pages.fill(ALL, RED), half), 5)).startsWith("{Reach Red=128}");
    }

    @Test
    void anOverprintingBareColourKnocksOutOnlyWhatItWouldHaveReplaced() throws Refusal {
        Op[] ops = {
            Pages.fill(ALL, RED),
            Pages.fill(ALL, Pages.cmyk(0.4, 0, 0, 0), Pages.overprint(0), null),
            Pages.fill(LEFT, GARMENT, Pages.overprint(0), null)
        };
        InkPlanes planes = render(BARE, ops);
        assertThat(at(planes, 5)).startsWith("{Reach Red=255}");
        assertThat(at(planes, 15)).startsWith("{Cyan=102, Reach Red=255}");
    }

    @Test
    void aMultipliedBareColourLeavesTheInkBeneath() throws Refusal {
        Style multiply = new Style(1, BlendMode.MULTIPLY, false, 0, null, false);
        assertThat(at(render(BARE, Pages.fill(ALL, RED), Pages.fill(LEFT, GARMENT, multiply, null)), 5))
                .startsWith("{Reach Red=255}");
    }

    @Test
    void aBareInkHasNoPlaneButItsObjectsKnockOutAsTheyDid() throws Refusal {
        ColourAssignment noShirt = rules(new InkNamed("Shirt"), new Bare());
        InkPlanes planes = render(noShirt, Pages.fill(ALL, RED), Pages.fill(LEFT, Pages.spot("Shirt", 0.3)));
        assertThat(planes.inks().indexOf("Shirt")).isEqualTo(-1);
        assertThat(at(planes, 5)).isEqualTo("{} mark 0 inked 255");
        Op over = Pages.fill(LEFT, Pages.spot("Shirt", 1), Pages.overprint(0), null);
        assertThat(at(render(noShirt, Pages.fill(ALL, RED), over), 5)).startsWith("{Reach Red=255}");
    }

    @Test
    void aMixtureWithABareInkPrintsItsOtherInks() throws Refusal {
        ColourSpace.DeviceN both = new ColourSpace.DeviceN(
                List.of("Shirt", "Reach Red"), Pages.CMYK, Pages.separation("x").tint(), List.of());
        InkPlanes planes = render(
                rules(new InkNamed("Shirt"), new Bare()),
                Pages.fill(ALL, new Colour(both, 0.5f, 0.4f)),
                Pages.fill(LEFT, new Colour(both, 0.5f, 0f)));
        assertThat(at(planes, 15)).isEqualTo("{Reach Red=102} mark 255 inked 255");
        assertThat(at(planes, 5)).isEqualTo("{} mark 0 inked 255");
    }

    @Test
    void aColourBecomesAnInkAtATintAndOverprintsAsThatInk() throws Refusal {
        ColourAssignment blue = rules(SEEN, new InkAt("Night Water", 0.6));
        Op[] ops = {Pages.fill(ALL, Pages.cmyk(1, 0, 0, 0)), Pages.fill(LEFT, GARMENT, Pages.overprint(0), null)};
        assertThat(at(render(blue, ops), 5)).isEqualTo("{Cyan=255, Night Water=153} mark 255 inked 255");
        InkMapping mapping = InkMapping.of(List.of(), Pages.page(20, 20, ops), Pages.PLAIN, blue);
        assertThat(mapping.newColorants())
                .extracting(ColourSpace.Separation::name)
                .containsExactly("Night Water");
    }

    @Test
    void aColourBecomesTheWhiteInkOfTheFileOrANewOne() throws Refusal {
        ColourAssignment white = rules(new Stated(Family.CMYK, List.of(0.0, 0.0, 0.0, 0.0)), new WhiteInk());
        Op paper = Pages.fill(LEFT, Pages.cmyk(0, 0, 0, 0));
        InkPlanes made = render(white, paper);
        assertThat(at(made, 5)).startsWith("{White=255}");
        assertThat(made.inks().get(made.inks().indexOf("White")).kind()).isEqualTo(InkKind.WHITE);
        assertThat(at(render(white, Pages.fill(ALL, Pages.spot("Opaque White", 1)), paper), 5))
                .startsWith("{Opaque White=255}");
    }

    @Test
    void anInkIsPrintedAsAnotherOrWithTheProcessInks() throws Refusal {
        assertThat(at(render(rules(new InkNamed("Reach Red"), new InkAt("Club Red", 0.5)), Pages.fill(ALL, RED)), 5))
                .startsWith("{Club Red=128}");
        assertThat(at(render(rules(new InkNamed("Reach Red"), new Process()), Pages.fill(ALL, RED)), 5))
                .startsWith("{Cyan=51, Magenta=204}");
    }

    @Test
    void theFirstRuleThatFitsCounts() throws Refusal {
        ColourAssignment kept = rules(
                        new Stated(Family.RGB, List.of(28 / 255.0, 48 / 255.0, 79 / 255.0)), new Process())
                .then(BARE);
        assertThat(at(render(kept, Pages.fill(ALL, GARMENT)), 5))
                .contains("Black=")
                .contains("mark 255");
    }

    @Test
    void aColourBeyondTheToleranceIsNotTouched() throws Refusal {
        Colour near = new Colour(Pages.RGB, 0x24 / 255f, 0x3a / 255f, 0x5c / 255f);
        assertThat(at(render(BARE, Pages.fill(ALL, near)), 5)).contains("mark 255");
        assertThat(at(render(rules(new Seen(0x1c304f, 8), new Bare()), Pages.fill(ALL, near)), 5))
                .contains("mark 0");
    }

    @Test
    void samplesOfAnImageInABareColourAreBare() throws Refusal {
        Matrix whole = new Matrix(20, 0, 0, -20, 0, 20);
        InkPlanes planes = render(
                BARE, Pages.fill(ALL, RED), Pages.image(Pages.RGB, 2, 1, whole, 0x1c, 0x30, 0x4f, 255, 255, 255));
        assertThat(at(planes, 5)).isEqualTo("{} mark 0 inked 255");
        assertThat(at(planes, 15)).isEqualTo("{} mark 255 inked 255");
    }

    @Test
    void aShadingOfABareInkIsBareAllOver() throws Refusal {
        Paint.Shading fade = new Paint.Shading(
                new Paint.Axial(0, 0, 20, 0, 0, 1, true, true),
                Pages.separation("Shirt"),
                null,
                null,
                null,
                Matrix.IDENTITY);
        Op op = new Op.Fill(ALL, FillRule.NON_ZERO, withRamp(fade), null, Style.PLAIN, null, Pages.ORIGIN);
        InkPlanes planes = render(rules(new InkNamed("Shirt"), new Bare()), Pages.fill(ALL, RED), op);
        assertThat(at(planes, 5)).isEqualTo("{} mark 0 inked 255");
    }

    @Test
    void bareColoursAreBareInAGroupThatBlendsInRgb() throws Refusal {
        Op half = Pages.fill(LEFT, Pages.cmyk(0, 1, 0, 0), Pages.alpha(0.5), null);
        Op group = new Op.Group(
                List.of(Pages.fill(ALL, GARMENT), half),
                new Box(0, 0, 20, 20),
                true,
                false,
                Pages.RGB,
                Style.PLAIN,
                null,
                Pages.ORIGIN);
        InkPlanes planes = render(BARE, Pages.fill(ALL, RED), group);
        assertThat(at(planes, 15)).isEqualTo("{} mark 0 inked 255");
        assertThat(planes.get(planes.markPlane(), 5, 5)).isBetween(127, 128);
    }

    @Test
    void softEdgesBetweenThreeAssignedColoursMakeThoseInksAndNoOthers() throws Refusal {
        int[][] flat = {{0xc5, 0x24, 0x2e}, {0xfc, 0xef, 0xce}, {0x1c, 0x30, 0x4f}};
        int side = 32;
        int[] samples = new int[side * side * 3];
        double[][] shares = new double[side * side][3];
        java.util.Random random = new java.util.Random(20261125);
        for (int i = 0; i < side * side; i++) {
            int a = random.nextInt(3);
            int b = (a + 1) % 3;
            boolean three = random.nextInt(8) == 0;
            double t = i % 3 == 0 ? 0 : random.nextDouble();
            double u = three ? random.nextDouble() * (1 - t) : 0;
            shares[i][a] += 1 - t - u;
            shares[i][b] += t;
            shares[i][(a + 2) % 3] += u;
            for (int c = 0; c < 3; c++) {
                double v = 0;
                for (int k = 0; k < 3; k++) {
                    v += shares[i][k] * flat[k][c];
                }
                samples[3 * i + c] = (int) Math.round(v);
            }
        }
        ColourAssignment inks = rules(new Seen(0xc5242e, 1), new InkAt("Reach Red", 1))
                .then(rules(new Seen(0xfcefce, 1), new InkAt("Cream", 1)))
                .then(BARE);
        DisplayList list = Pages.page(
                side, side, Pages.image(Pages.RGB, side, side, new Matrix(side, 0, 0, -side, 0, side), samples));
        InkPlanes planes = new Plate(list, InkMapping.of(List.of(), list, Pages.PLAIN, inks))
                .render(PlateRequest.of(new Box(0, 0, side, side), 72, true, Set.of()), new Cancel(), Progress.NONE);
        double error = 0;
        int red = planes.inks().indexOf("Reach Red");
        int cream = planes.inks().indexOf("Cream");
        for (int i = 0; i < side * side; i++) {
            int x = i % side;
            int y = i / side;
            assertThat(Pages.inksAt(planes, x, y).keySet()).isSubsetOf("Reach Red", "Cream");
            int r = planes.get(red, x, y);
            int c = planes.get(cream, x, y);
            // what is neither is bare: the mark is what the two inks cover
            assertThat(planes.get(planes.markPlane(), x, y)).isCloseTo(r + c, org.assertj.core.data.Offset.offset(1));
            error += Math.abs(r - 255 * shares[i][0]) + Math.abs(c - 255 * shares[i][1]);
        }
        assertThat(error / (2 * side * side))
                .as("mean error of coverage in 255ths")
                .isLessThan(2);
    }

    @Test
    void aSoftEdgeOfABareColourIsTheOtherColourByItsShareAndNoFringe() throws Refusal {
        int[] bare = {0x1c, 0x30, 0x4f};
        int[] red = {0xc5, 0x24, 0x2e};
        int[] samples = new int[20 * 20 * 3];
        for (int i = 0; i < 400; i++) {
            int x = i % 20;
            boolean soft = i / 20 == 10;
            double share = soft && x == 9 ? 0.3 : soft && x == 10 ? 0.8 : x < 10 ? 0 : 1;
            for (int c = 0; c < 3; c++) {
                samples[3 * i + c] = (int) Math.round(share * red[c] + (1 - share) * bare[c]);
            }
        }
        Matrix whole = new Matrix(20, 0, 0, -20, 0, 20);
        InkPlanes planes = render(BARE, Pages.fill(ALL, RED), Pages.image(Pages.RGB, 20, 20, whole, samples));
        Map<String, Integer> solid = Pages.inksAt(planes, 15, 10);
        assertThat(at(planes, 4)).isEqualTo("{} mark 0 inked 255");
        for (int x = 9; x <= 10; x++) {
            double share = x == 9 ? 0.3 : 0.8;
            Map<String, Integer> mixed = Pages.inksAt(planes, x, 10);
            assertThat(mixed.keySet()).isEqualTo(solid.keySet()).isNotEmpty();
            solid.forEach((ink, tint) -> assertThat(mixed.get(ink))
                    .as(ink)
                    .isCloseTo((int) Math.round(share * tint), org.assertj.core.data.Offset.offset(3)));
            assertThat(planes.get(planes.markPlane(), x, 10))
                    .isCloseTo((int) Math.round(255 * share), org.assertj.core.data.Offset.offset(3));
        }
    }

    @Test
    void aGradientToABareColourFadesAndDoesNotStep() throws Refusal {
        Paint.Shading fade = new Paint.Shading(
                new Paint.Axial(0, 0, 20, 0, 0, 1, true, true),
                Pages.RGB,
                new Fade(new double[] {0xc5, 0x24, 0x2e}, new double[] {0x1c, 0x30, 0x4f}),
                null,
                null,
                Matrix.IDENTITY);
        Op op = new Op.Fill(ALL, FillRule.NON_ZERO, fade, null, Style.PLAIN, null, Pages.ORIGIN);
        InkPlanes planes = render(BARE, Pages.fill(ALL, RED), op);
        for (int x = 0; x < 20; x++) {
            double kept = 1 - (x + 0.5) / 20;
            assertThat(planes.get(planes.markPlane(), x, 10))
                    .as("at " + x)
                    .isCloseTo((int) Math.round(255 * kept), org.assertj.core.data.Offset.offset(8));
        }
    }

    /** From one colour to another, in 255ths. */
    private record Fade(double[] from, double[] to) implements inkground.artwork.TintTransform {
        @Override
        public int outputs() {
            return 3;
        }

        @Override
        public void apply(float[] in, float[] out) {
            for (int c = 0; c < 3; c++) {
                out[c] = (float) ((from[c] + in[0] * (to[c] - from[c])) / 255);
            }
        }
    }

    @Test
    void aRuleTakesThePlaceOfOneForTheSameColourAndCanBeTakenAway() {
        Rule bare = new Rule(SEEN, new Bare());
        Rule ink = new Rule(SEEN, new InkAt("Night Water", 1));
        Rule other = new Rule(new InkNamed("Reach Red"), new Process());
        ColourAssignment both = new ColourAssignment(List.of(bare)).with(other);
        assertThat(both.with(ink).rules()).containsExactly(ink, other);
        assertThat(both.without(ink).rules()).containsExactly(other);
        assertThat(both.rules()).as("the old one stays as it was").containsExactly(bare, other);
    }

    private static Paint.Shading withRamp(Paint.Shading s) {
        return new Paint.Shading(s.geometry(), s.space(), TintTransform.UNCHANGED, s.background(), s.box(), s.toPage());
    }

    private static ColourAssignment rules(Source from, Target to) {
        return new ColourAssignment(List.of(new Rule(from, to)));
    }

    private static InkPlanes render(ColourAssignment assignment, Op... ops) throws Refusal {
        DisplayList list = Pages.page(20, 20, ops);
        InkMapping mapping = InkMapping.of(List.of(), list, Pages.PLAIN, assignment);
        return new Plate(list, mapping)
                .render(PlateRequest.of(new Box(0, 0, 20, 20), 72, true, Set.of()), new Cancel(), Progress.NONE);
    }

    private static String at(InkPlanes planes, int x) {
        Map<String, Integer> inks = Pages.inksAt(planes, x, 10);
        return inks + " mark " + planes.get(planes.markPlane(), x, 10) + " inked "
                + planes.get(planes.inkedPlane(), x, 10);
    }
}
