package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.app.ArtworkFiles;
import inkground.artwork.Artwork;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.colour.Srgb;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.BinaryOperator;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Filter effects on flat colours beside the exact result of Filter Effects Module Level 1, in linear light and in sRGB. */
class FilterColoursTest {
    /** Levels of 255: half of one for rounding the result, and what linear light in 16 bits rounds before. */
    private static final double EXACT = 0.51;

    private static final String FLOOD = "<feFlood flood-color='#1c304f' result='f'/>";

    private static final int[] COLOURS = {0x1c304f, 0x050a14, 0x2e8b57, 0xc5242e, 0x808080, 0x010203, 0xffcc00};

    @TempDir
    Path dir;

    /** What an effect makes of a component of the source and that of the flood, each 0 to 1 in the space that it works in. */
    private record Effect(String body, BinaryOperator<double[]> exact) {
        static Effect each(String body, DoubleBinaryOperator exact) {
            return new Effect(body, (source, flood) -> IntStream.range(0, 3)
                    .mapToDouble(i -> exact.applyAsDouble(source[i], flood[i]))
                    .toArray());
        }

        static Effect ofFlood(String primitive, DoubleBinaryOperator exact) {
            return each(FLOOD + primitive, exact);
        }

        @Override
        public String toString() {
            return body;
        }
    }

    static Stream<Effect> effects() {
        return Stream.of(
                Effect.each("<feOffset dx='0' dy='0'/>", (s, f) -> s),
                Effect.each("<feTile/>", (s, f) -> s),
                Effect.each("<feMerge><feMergeNode in='SourceGraphic'/></feMerge>", (s, f) -> s),
                Effect.each("<feComposite in2='SourceGraphic' operator='in'/>", (s, f) -> s),
                Effect.each("<feFlood flood-color='#1c304f'/>", (s, f) -> f),
                Effect.ofFlood("<feComposite in='f' in2='SourceGraphic' operator='over'/>", (s, f) -> f),
                Effect.ofFlood("<feComposite in='SourceGraphic' in2='f' operator='atop'/>", (s, f) -> s),
                Effect.ofFlood(
                        "<feMerge><feMergeNode in='SourceGraphic'/><feMergeNode in='f'/></feMerge>", (s, f) -> f),
                Effect.each(
                        "<feFlood flood-color='#1c304f' flood-opacity='.4' result='f'/><feMerge>"
                                + "<feMergeNode in='SourceGraphic'/><feMergeNode in='f'/></feMerge>",
                        (s, f) -> 0.6 * s + 0.4 * f),
                Effect.ofFlood("<feBlend in='SourceGraphic' in2='f' mode='normal'/>", (s, f) -> s),
                Effect.ofFlood("<feBlend in='SourceGraphic' in2='f' mode='multiply'/>", (s, f) -> s * f),
                Effect.ofFlood("<feBlend in='SourceGraphic' in2='f' mode='screen'/>", (s, f) -> s + f - s * f),
                Effect.ofFlood("<feBlend in='SourceGraphic' in2='f' mode='darken'/>", Math::min),
                Effect.ofFlood("<feBlend in='SourceGraphic' in2='f' mode='lighten'/>", Math::max),
                Effect.ofFlood(
                        "<feComposite in='SourceGraphic' in2='f' operator='arithmetic' k1='.2' k2='.5' k3='.3' k4='.01'/>",
                        (s, f) -> 0.2 * s * f + 0.5 * s + 0.3 * f + 0.01),
                new Effect("<feColorMatrix type='saturate' values='0'/>", (s, f) -> {
                    double grey = 0.213 * s[0] + 0.715 * s[1] + 0.072 * s[2];
                    return new double[] {grey, grey, grey};
                }),
                new Effect("<feColorMatrix values='.5 .5 0 0 0 0 .5 .5 0 0 .25 0 .5 0 .02 0 0 0 1 0'/>", (s, f) ->
                        new double[] {(s[0] + s[1]) / 2, (s[1] + s[2]) / 2, s[0] / 4 + s[2] / 2 + 0.02}),
                new Effect(
                        "<feComponentTransfer><feFuncR type='linear' slope='.5' intercept='.1'/>"
                                + "<feFuncB type='gamma' exponent='2' amplitude='.8' offset='.1'/></feComponentTransfer>",
                        (s, f) -> new double[] {s[0] / 2 + 0.1, s[1], 0.8 * s[2] * s[2] + 0.1}),
                new Effect(
                        "<feComponentTransfer><feFuncR type='table' tableValues='.1 .9 .4'/>"
                                + "<feFuncG type='discrete' tableValues='.3 .6'/></feComponentTransfer>",
                        (s, f) -> new double[] {
                            s[0] < 0.5 ? 0.1 + 1.6 * s[0] : 0.9 - (s[0] - 0.5), s[1] < 0.5 ? 0.3 : 0.6, s[2]
                        }));
    }

    private static double[] components(int rgb, boolean linear) {
        double[] out = new double[3];
        for (int i = 0; i < 3; i++) {
            double v = (rgb >> 16 - 8 * i & 255) / 255.0;
            out[i] = linear ? Srgb.decode(v) : v;
        }
        return out;
    }

    @ParameterizedTest
    @MethodSource("effects")
    void flatColoursComeOutAsTheModuleSays(Effect effect) throws Exception {
        for (boolean linear : new boolean[] {true, false}) {
            for (int colour : COLOURS) {
                ScreenPicture picture = picture(effect.body(), colour, linear);
                double[] exact = effect.exact().apply(components(colour, linear), components(0x1c304f, linear));
                for (int i = 0; i < 3; i++) {
                    double wanted = 255 * (linear ? Srgb.encode(exact[i]) : exact[i]);
                    assertThat((double) (picture.rgb(10, 10) >> 16 - 8 * i & 255))
                            .as("%06x, linear %s, component %d", colour, linear, i)
                            .isCloseTo(wanted, within(EXACT));
                }
                assertThat(told(picture)).isFalse();
            }
        }
    }

    /** Black at an alpha of 0.6 on white, by what the operators leave of alpha. */
    @Test
    void alphaIsThatOfTheOperator() throws Exception {
        String black = "<feFlood flood-opacity='.6' result='f'/>";
        Map<String, Double> alphas = Map.of(
                "<feComposite in='f' in2='SourceGraphic' operator='in'/>", 0.6,
                "<feComposite in='f' in2='SourceGraphic' operator='out'/>", 0.0,
                "<feComposite in='SourceGraphic' in2='f' operator='out'/>", 0.4,
                "<feComposite in='SourceGraphic' in2='f' operator='xor'/>", 0.4,
                "<feComposite in='f' in2='f' operator='over'/>", 0.84,
                "<feBlend in='f' in2='f' mode='multiply'/>", 0.84,
                "<feColorMatrix in='f' values='1 0 0 0 0 0 1 0 0 0 0 0 1 0 0 0 0 0 .5 .1'/>", 0.4,
                "<feComponentTransfer in='f'><feFuncA type='linear' slope='.5'/></feComponentTransfer>", 0.3);
        for (Map.Entry<String, Double> e : alphas.entrySet()) {
            ScreenPicture picture = picture(black + e.getKey(), 0, true);
            assertThat((double) (picture.rgb(10, 10) & 255))
                    .as(e.getKey())
                    .isCloseTo(255 * (1 - e.getValue()), within(1.5));
        }
    }

    @Test
    void aShadowLeavesWhatCastsItExactlyAsItWas() throws Exception {
        String shadow = "<feGaussianBlur in='SourceAlpha' stdDeviation='1'/><feOffset dx='1' dy='1' result='o'/>"
                + "<feFlood flood-color='#203040' flood-opacity='.5'/><feComposite in2='o' operator='in'/>"
                + "<feMerge><feMergeNode/><feMergeNode in='SourceGraphic'/></feMerge>";
        for (int colour : COLOURS) {
            assertThat(picture(shadow, colour, true).rgb(10, 10)).isEqualTo(colour);
        }
    }

    /** Filter Effects Module Level 1 §9.12. */
    @Test
    void aDropShadowIsWhatItsPrimitivesMakeOfIt() throws Exception {
        String half = "<feOffset dx='-10' dy='0'/>"; // leaves the right half empty
        String primitives = "<feGaussianBlur stdDeviation='1' result='b'/><feOffset in='b' dx='3' dy='1' result='o'/>"
                + "<feFlood flood-color='#203040' flood-opacity='.5'/><feComposite in2='o' operator='in' result='s'/>"
                + "<feMerge><feMergeNode in='s'/><feMergeNode in='h'/></feMerge>";
        ScreenPicture expected = picture(half.replace("/>", " result='h'/>") + primitives, 0x050a14, true);
        ScreenPicture shadow = picture(
                half + "<feDropShadow stdDeviation='1' dx='3' dy='1' style='flood-color:#203040' flood-opacity='.5'/>",
                0x050a14,
                true);
        assertThat(shadow.channels()).isDeepEqualTo(expected.channels());
        assertThat(shadow.rgb(5, 10)).isEqualTo(0x050a14);
        assertThat(shadow.rgb(11, 10)).as("shadow").isNotEqualTo(0xffffff).isNotEqualTo(0x050a14);
        assertThat(shadow.rgb(19, 10)).isEqualTo(0xffffff);
    }

    /** Only where no finer primitive is: light on a flat surface is light of one level. */
    @Test
    void whatStillCountsLinearLightInEightBitsIsToldOf() throws Exception {
        String lit = "<feDiffuseLighting lighting-color='#1c304f'><feDistantLight elevation='90'/></feDiffuseLighting>";
        assertThat(told(picture(lit, 0x1c304f, true))).isTrue();
        assertThat(told(picture(lit, 0x1c304f, false))).isFalse();
        assertThat(told(picture("<feGaussianBlur stdDeviation='1'/>", 0x1c304f, true)))
                .isFalse();
    }

    private static boolean told(ScreenPicture picture) {
        return picture.list().approximations().stream()
                .anyMatch(note -> note.feature().contains("linear light"));
    }

    private ScreenPicture picture(String effect, int colour, boolean linear) throws Exception {
        Path file = Files.writeString(
                dir.resolve("art.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' width='20' height='20'><filter id='f' x='0' y='0' width='1' height='1'"
                        + " color-interpolation-filters='" + (linear ? "linearRGB" : "sRGB") + "'>" + effect
                        + "</filter><rect width='20' height='20' fill='" + String.format("#%06x", colour)
                        + "' filter='url(#f)'/></svg>");
        try (Artwork artwork = ArtworkFiles.open(file, new Cancel(), Progress.NONE)) {
            return ScreenPicture.of(artwork, 20);
        }
    }
}
