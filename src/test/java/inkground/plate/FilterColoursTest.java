package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.app.ArtworkFiles;
import inkground.artwork.Approximation;
import inkground.artwork.Artwork;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.colour.Srgb;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Filter effects on flat colours beside the exact result of Filter Effects Module Level 1, in linear light and in sRGB. */
class FilterColoursTest {
    private static final double EXACT = 2;
    /** The library counts linear light in 8 bits, which leaves few steps to dark colours (most seen: 9.9); the page says so. */
    private static final double LINEAR = 10;

    private static final int[] COLOURS = {0x1c304f, 0x050a14, 0x2e8b57, 0xc5242e, 0x808080, 0x010203, 0xffcc00};

    @TempDir
    Path dir;

    private record Effect(String body, UnaryOperator<double[]> exact) {
        @Override
        public String toString() {
            return body;
        }
    }

    /** Effects by components of the space that they work in, 0 to 1; clause of the module. */
    static Stream<Effect> effects() {
        return Stream.of(
                new Effect("<feOffset dx='0' dy='0'/>", rgb -> rgb),
                new Effect("<feMerge><feMergeNode in='SourceGraphic'/></feMerge>", rgb -> rgb),
                new Effect("<feComposite in2='SourceGraphic' operator='in'/>", rgb -> rgb),
                new Effect("<feFlood flood-color='#1c304f'/>", null),
                new Effect("<feColorMatrix type='saturate' values='0'/>", rgb -> {
                    double grey = 0.213 * rgb[0] + 0.715 * rgb[1] + 0.072 * rgb[2];
                    return new double[] {grey, grey, grey};
                }),
                new Effect("<feColorMatrix values='.5 .5 0 0 0 0 .5 .5 0 0 .25 0 .5 0 0 0 0 0 1 0'/>", rgb ->
                        new double[] {(rgb[0] + rgb[1]) / 2, (rgb[1] + rgb[2]) / 2, rgb[0] / 4 + rgb[2] / 2}),
                new Effect(
                        "<feComponentTransfer><feFuncR type='linear' slope='.5' intercept='.1'/>"
                                + "<feFuncG type='linear' slope='.5'/><feFuncB type='gamma' exponent='2'/></feComponentTransfer>",
                        rgb -> new double[] {rgb[0] / 2 + 0.1, rgb[1] / 2, rgb[2] * rgb[2]}),
                new Effect(
                        "<feFlood flood-color='#1c304f' result='f'/><feComposite in='SourceGraphic' in2='f'"
                                + " operator='arithmetic' k2='.5' k3='.5'/>",
                        null));
    }

    private static double[] components(int rgb, boolean linear) {
        double[] out = new double[3];
        for (int i = 0; i < 3; i++) {
            double v = (rgb >> 16 - 8 * i & 255) / 255.0;
            out[i] = linear ? Srgb.decode(v) : v;
        }
        return out;
    }

    private static double[] exact(Effect effect, int colour, boolean linear) {
        double[] garment = components(0x1c304f, linear);
        double[] source = components(colour, linear);
        if (effect.exact() != null) {
            return effect.exact().apply(source);
        }
        double share = effect.body().contains("arithmetic") ? 0.5 : 0;
        double[] out = new double[3];
        for (int i = 0; i < 3; i++) {
            out[i] = share * source[i] + (1 - share) * garment[i];
        }
        return out;
    }

    @ParameterizedTest
    @MethodSource("effects")
    void flatColoursComeOutAsTheModuleSays(Effect effect) throws Exception {
        for (boolean linear : new boolean[] {true, false}) {
            for (int colour : COLOURS) {
                ScreenPicture picture = picture(effect, colour, linear);
                double[] exact = exact(effect, colour, linear);
                double off = 0;
                for (int i = 0; i < 3; i++) {
                    double wanted = 255 * (linear ? Srgb.encode(exact[i]) : exact[i]);
                    off = Math.max(off, Math.abs((picture.rgb(10, 10) >> 16 - 8 * i & 255) - wanted));
                }
                boolean told = picture.list().approximations().stream()
                        .anyMatch(note -> note.feature().contains("linear light"));
                assertThat(off)
                        .as("%06x, linear %s, told %s", colour, linear, told)
                        .isLessThanOrEqualTo(told ? LINEAR : EXACT);
                assertThat(told && !linear).as("told of sRGB").isFalse();
            }
        }
    }

    /** What needs no count of light is exact, and is not said to be otherwise. */
    @Test
    void effectsThatMixNothingAreNotToldOf() throws Exception {
        for (String body : new String[] {"<feOffset dx='0' dy='0'/>", "<feGaussianBlur stdDeviation='1'/>"}) {
            assertThat(picture(new Effect(body, rgb -> rgb), 0x1c304f, true)
                            .list()
                            .approximations())
                    .extracting(Approximation::feature)
                    .noneMatch(feature -> feature.contains("linear light"));
        }
    }

    private ScreenPicture picture(Effect effect, int colour, boolean linear) throws Exception {
        Path file = Files.writeString(
                dir.resolve("art.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' width='20' height='20'><filter id='f' x='0' y='0' width='1' height='1'"
                        + " color-interpolation-filters='" + (linear ? "linearRGB" : "sRGB") + "'>" + effect.body()
                        + "</filter><rect width='20' height='20' fill='" + String.format("#%06x", colour)
                        + "' filter='url(#f)'/></svg>");
        try (Artwork artwork = ArtworkFiles.open(file, new Cancel(), Progress.NONE)) {
            return ScreenPicture.of(artwork, 20);
        }
    }
}
