package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.BlendMode;
import inkground.artwork.Colour;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Style;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.geometry.Outline;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What must hold of the planes of any page; pages come from seeds. Tints are rounded once per step, hence the ± 1. */
class CompositingPropertiesTest {
    private static final int WIDTH = 150;
    private static final int HEIGHT = 80;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void noPlaneHoldsMoreThanWasPaintedOrWhereNothingWas(long seed) throws Refusal {
        Random random = new Random(seed);
        List<Op> ops = new ArrayList<>();
        for (int i = 0; i < 25; i++) {
            Style style = style(random, BlendMode.NORMAL);
            ops.add(random.nextInt(4) == 0 ? group(random, style) : shape(random, style));
        }
        InkPlanes planes = render(ops);
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                int mark = planes.get(planes.markPlane(), x, y);
                for (int i = 0; i < planes.inks().size(); i++) {
                    // normal blending is a weighted mean: no tint exceeds the largest used, 0.8, by its share
                    assertThat((double) planes.get(i, x, y))
                            .as("%s at (%d, %d)", planes.inks().get(i).name(), x, y)
                            .isBetween(0.0, 0.8 * mark + 1.5);
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14, 15, 16})
    void anOpaqueObjectPaintedTwiceIsPaintedOnce(long seed) throws Refusal {
        Random random = new Random(seed);
        List<Op> ground = shapes(random, 10);
        // on the pixel grid: a half covered edge pixel is covered to three quarters by two
        Op top = aligned(random, Style.PLAIN);
        assertSame(render(with(ground, top)), render(with(ground, top, top)), 0);
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24, 25, 26})
    void aGroupOfOneOpaqueNormalObjectIsThatObject(long seed) throws Refusal {
        Random random = new Random(seed);
        List<Op> ground = shapes(random, 10);
        Op top = shape(random, Style.PLAIN);
        InkPlanes direct = render(with(ground, top));
        for (boolean isolated : new boolean[] {true, false}) {
            for (boolean knockout : new boolean[] {true, false}) {
                assertSame(direct, render(with(ground, group(isolated, knockout, Style.PLAIN, top))), 1);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {31, 32, 33, 34, 35, 36})
    void onAnEmptyPageIsolationMakesNoDifferenceToNormalContent(long seed) throws Refusal {
        Random random = new Random(seed);
        Op[] content = new Op[12];
        for (int i = 0; i < content.length; i++) {
            content[i] = shape(random, style(random, BlendMode.NORMAL));
        }
        Style style = Pages.alpha(0.3 + 0.7 * random.nextDouble());
        for (boolean knockout : new boolean[] {true, false}) {
            assertSame(
                    render(List.of(group(true, knockout, style, content))),
                    render(List.of(group(false, knockout, style, content))),
                    1);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {41, 42, 43, 44})
    void whatHasAlphaZeroPaintsNothing(long seed) throws Refusal {
        Random random = new Random(seed);
        List<Op> ground = shapes(random, 10);
        InkPlanes without = render(ground);
        for (BlendMode mode : BlendMode.values()) {
            Style none = new Style(0, mode, random.nextBoolean(), random.nextInt(2), null, false);
            Op group = group(random.nextBoolean(), random.nextBoolean(), none, shape(random, Style.PLAIN));
            assertSame(without, render(with(ground, shape(random, none), group)), 0);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {51, 52, 53, 54, 55, 56})
    void everyCutOfThePageGivesTheSamePixels(long seed) throws Refusal {
        Random random = new Random(seed);
        List<Op> ops = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            Style style = style(random, BlendMode.values()[random.nextInt(16)]);
            ops.add(random.nextInt(3) == 0 ? group(random, style) : shape(random, style));
        }
        DisplayList list = page(ops);
        InkPlanes whole = Pages.render(list);
        Plate plate = Pages.plate(list);
        for (int i = 0; i < 6; i++) {
            int x0 = random.nextInt(WIDTH - 1);
            int y0 = random.nextInt(HEIGHT - 1);
            int x1 = x0 + 1 + random.nextInt(WIDTH - x0);
            int y1 = y0 + 1 + random.nextInt(HEIGHT - y0);
            PlateRequest cut = new PlateRequest(1, x0, y0, x1, y1, true, Set.of());
            InkPlanes part = plate.render(cut, new Cancel(), Progress.NONE);
            for (int p = 0; p < part.planes(); p++) {
                for (int y = y0; y < y1; y++) {
                    for (int x = x0; x < x1; x++) {
                        assertThat(part.get(p, x - x0, y - y0)).isEqualTo(whole.get(p, x, y));
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {61, 62, 63, 64})
    void objectsThatDoNotTouchMayBePaintedInAnyOrder(long seed) throws Refusal {
        Random random = new Random(seed);
        List<Op> apart = new ArrayList<>();
        for (int row = 0; row < 4; row++) {
            for (int col = 0; col < 7; col++) {
                double x = 20 * col + 1 + random.nextDouble();
                double y = 20 * row + 1 + random.nextDouble();
                Outline rect = Pages.rect(x, y, x + 16 * random.nextDouble(), y + 16 * random.nextDouble());
                Style style = style(random, BlendMode.values()[random.nextInt(16)]);
                apart.add(Pages.fill(rect, colour(random), style, null));
            }
        }
        List<Op> ground = shapes(random, 6);
        InkPlanes inOrder = render(with(ground, apart.toArray(Op[]::new)));
        Collections.shuffle(apart, random);
        assertSame(inOrder, render(with(ground, apart.toArray(Op[]::new))), 0);
    }

    @ParameterizedTest
    @ValueSource(longs = {71, 72, 73, 74, 75, 76})
    void aKnockoutGroupIsItsTopmostObjectOnTheBackdrop(long seed) throws Refusal {
        Random random = new Random(seed);
        List<Op> ground = shapes(random, 8);
        Outline everywhere = Pages.rect(0, 0, WIDTH, HEIGHT);
        Style style = style(random, BlendMode.values()[random.nextInt(16)]);
        Op top = Pages.fill(everywhere, colour(random), style, null);
        Op[] content = {shape(random, Style.PLAIN), shape(random, style(random, BlendMode.MULTIPLY)), top};
        InkPlanes alone = render(with(ground, top));
        // the inked plane, which comes last, also counts the ink that was knocked out
        assertSame(alone, render(with(ground, group(false, true, Style.PLAIN, content))), alone.inkedPlane(), 1);
    }

    // ---- pages from a seed ----

    private static List<Op> shapes(Random random, int count) {
        List<Op> out = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            out.add(shape(random, style(random, BlendMode.NORMAL)));
        }
        return out;
    }

    private static Op shape(Random random, Style style) {
        double x = WIDTH * random.nextDouble() - 10;
        double y = HEIGHT * random.nextDouble() - 10;
        Outline.Builder path = new Outline.Builder();
        path.move(x, y);
        path.line(x + 60 * random.nextDouble(), y + 10 * random.nextDouble());
        path.curve(x + 70, y + 20, x + 50, y + 40 * random.nextDouble(), x + 30 * random.nextDouble(), y + 40);
        path.close();
        return Pages.fill(path.build(), colour(random), style, null);
    }

    private static Op aligned(Random random, Style style) {
        int x = random.nextInt(WIDTH);
        int y = random.nextInt(HEIGHT);
        Outline rect = Pages.rect(x, y, x + 1 + random.nextInt(90), y + 1 + random.nextInt(60));
        return Pages.fill(rect, colour(random), style, null);
    }

    private static Op group(Random random, Style style) {
        BlendMode inner = style.blend();
        Op[] content = {shape(random, style(random, inner)), shape(random, style(random, inner))};
        return group(random.nextBoolean(), random.nextBoolean(), style, content);
    }

    private static Op group(boolean isolated, boolean knockout, Style style, Op... content) {
        Box box = Arrays.stream(content).map(Op::bounds).reduce(Box::union).orElseThrow();
        return new Op.Group(List.of(content), box, isolated, knockout, null, style, null, Pages.ORIGIN);
    }

    /** Tints of 0 to 0.8, so that a tint beyond is a fault. */
    private static Colour colour(Random random) {
        if (random.nextBoolean()) {
            return Pages.spot(random.nextBoolean() ? "Reed" : "Rust", 0.8 * random.nextDouble());
        }
        double[] c = random.doubles(4, 0, 0.8).toArray();
        return Pages.cmyk(c[0], random.nextBoolean() ? 0 : c[1], c[2], random.nextBoolean() ? 0 : c[3]);
    }

    private static Style style(Random random, BlendMode mode) {
        double alpha = random.nextBoolean() ? 1 : random.nextDouble();
        return new Style(alpha, mode, random.nextInt(3) == 0, random.nextInt(2), null, random.nextInt(4) == 0);
    }

    private static List<Op> with(List<Op> ground, Op... more) {
        List<Op> out = new ArrayList<>(ground);
        out.addAll(List.of(more));
        return out;
    }

    private static DisplayList page(List<Op> ops) {
        // both spots on every page, so that pages compared have the same planes
        List<Op> all = new ArrayList<>(List.of(
                Pages.fill(Pages.rect(-9, -9, -8, -8), Pages.spot("Reed", 1)),
                Pages.fill(Pages.rect(-9, -9, -8, -8), Pages.spot("Rust", 1))));
        all.addAll(ops);
        return Pages.page(WIDTH, HEIGHT, all.toArray(Op[]::new));
    }

    private static InkPlanes render(List<Op> ops) throws Refusal {
        return Pages.render(page(ops));
    }

    private static void assertSame(InkPlanes expected, InkPlanes actual, int tolerance) {
        assertThat(actual.planes()).isEqualTo(expected.planes());
        assertSame(expected, actual, expected.planes(), tolerance);
    }

    private static void assertSame(InkPlanes expected, InkPlanes actual, int planes, int tolerance) {
        for (int p = 0; p < planes; p++) {
            for (int y = 0; y < HEIGHT; y++) {
                for (int x = 0; x < WIDTH; x++) {
                    int difference = Math.abs(actual.get(p, x, y) - expected.get(p, x, y));
                    if (difference > tolerance) {
                        assertThat(actual.get(p, x, y))
                                .as("plane %d at (%d, %d)", p, x, y)
                                .isEqualTo(expected.get(p, x, y));
                    }
                }
            }
        }
    }
}
