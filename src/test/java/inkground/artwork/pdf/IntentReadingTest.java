package inkground.artwork.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.ColourSpace;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.colour.BlackPointCompensation;
import inkground.colour.RenderingIntent;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rendering intents that objects name: ISO 32000-2 §8.6.5.8 and table 87. */
class IntentReadingTest {
    private static final String SPACE =
            "/ColorSpace << /P [/ICCBased 5 0 R] /X [/Indexed [/ICCBased 5 0 R] 1 <000000ffffff>] >>"
                    + " /ExtGState << /S << /RI /Saturation >> /On << /UseBlackPtComp /ON >> /Off << /UseBlackPtComp /OFF >>"
                    + " /Usual << /UseBlackPtComp /Default >> >> /XObject << /Own 6 0 R /None 7 0 R >>";

    @TempDir
    Path folder;

    private List<Op> ops(String content) throws Exception {
        PdfText pdf = new PdfText()
                .resources(SPACE).content(content).stream("/N 3", "profile").stream(image("/Intent /Perceptual"), "abc")
                        .stream(image(""), "abc");
        return pdf.record(folder).ops();
    }

    private static String image(String entries) {
        return "/Subtype /Image /Width 1 /Height 1 /BitsPerComponent 8 /ColorSpace [/ICCBased 5 0 R] " + entries;
    }

    private static RenderingIntent of(Op op) {
        ColourSpace space = op instanceof Op.Image image
                ? image.image().space()
                : ((Paint.Flat) ((Op.Fill) op).paint()).colour().space();
        ColourSpace base = space instanceof ColourSpace.Indexed indexed ? indexed.base() : space;
        return ((ColourSpace.Icc) base).rendering().intent();
    }

    @Test
    void the_operator_and_the_graphics_state_set_it_and_saving_keeps_it() throws Exception {
        List<Op> ops = ops("/P cs 1 0 0 sc 0 0 9 9 re f q /Perceptual ri 0 0 9 9 re f /S gs 0 0 9 9 re f Q 0 0 9 9 re f"
                + " /AbsoluteColorimetric ri /X cs 1 sc 0 0 9 9 re f /Nonsense ri 0 0 9 9 re f");
        assertThat(ops.stream().map(IntentReadingTest::of))
                .containsExactly(
                        RenderingIntent.RELATIVE,
                        RenderingIntent.PERCEPTUAL,
                        RenderingIntent.SATURATION,
                        RenderingIntent.RELATIVE,
                        RenderingIntent.ABSOLUTE,
                        RenderingIntent.RELATIVE);
    }

    /** §11.7.5.3: a group is converted by the intent in force when it is painted, not by one that it sets itself. */
    @Test
    void a_group_takes_the_intent_in_force_at_its_do() throws Exception {
        String group = "/Subtype /Form /BBox [0 0 9 9] /Group << /S /Transparency /I true /CS [/ICCBased 5 0 R] >>";
        PdfText pdf = new PdfText()
                        .resources("/XObject << /G 6 0 R >>")
                        .content("/G Do /Perceptual ri /G Do q /Saturation ri /G Do Q /G Do")
                        .stream("/N 3", "profile")
                        .stream(group, "/AbsoluteColorimetric ri 0 0 9 9 re f");
        assertThat(pdf.record(folder).ops().stream()
                        .map(op -> ((Op.Group) op).space().rendering().intent()))
                .containsExactly(
                        RenderingIntent.RELATIVE,
                        RenderingIntent.PERCEPTUAL,
                        RenderingIntent.SATURATION,
                        RenderingIntent.PERCEPTUAL);
    }

    private static BlackPointCompensation black(Op op) {
        ColourSpace space = op instanceof Op.Image image
                ? image.image().space()
                : ((Paint.Flat) ((Op.Fill) op).paint()).colour().space();
        return space.rendering().black();
    }

    @Test
    void a_graphics_state_says_whether_black_is_matched_and_saving_keeps_it() throws Exception {
        List<Op> ops = ops("/P cs 1 0 0 sc 0 0 9 9 re f q /Off gs 0 0 9 9 re f q 0 0 9 9 re f /On gs /None Do Q"
                + " 0 0 9 9 re f /Usual gs 0 0 9 9 re f Q 0 0 9 9 re f");
        assertThat(ops.stream().map(IntentReadingTest::black))
                .containsExactly(
                        BlackPointCompensation.DEFAULT,
                        BlackPointCompensation.OFF,
                        BlackPointCompensation.OFF,
                        BlackPointCompensation.ON,
                        BlackPointCompensation.OFF,
                        BlackPointCompensation.DEFAULT,
                        BlackPointCompensation.DEFAULT);
    }

    @Test
    void an_images_own_intent_takes_the_place_of_that_in_force() throws Exception {
        List<Op> ops = ops("/Saturation ri /Own Do /None Do");
        assertThat(ops.stream().map(IntentReadingTest::of))
                .containsExactly(RenderingIntent.PERCEPTUAL, RenderingIntent.SATURATION);
    }

    /** §8.7.4.1: a shading pattern is painted under the parameters of its own ExtGState. */
    @Test
    void a_shading_takes_the_intent_in_force_and_a_pattern_its_own_before_that() throws Exception {
        String shading = "<< /ShadingType 2 /Coords [0 0 9 0] /ColorSpace [/ICCBased 5 0 R]"
                + " /Function << /FunctionType 2 /Domain [0 1] /C0 [0 0 0] /C1 [1 1 1] /N 1 >> >>";
        PdfText pdf = new PdfText()
                        .resources("/Shading << /S 6 0 R >> /Pattern << /Plain << /PatternType 2 /Shading 6 0 R >>"
                                + " /Own << /PatternType 2 /Shading 6 0 R /ExtGState << /RI /Perceptual >> >> >>")
                        .content("/S sh /Saturation ri /S sh /Pattern cs /Plain scn 0 0 9 9 re f /Own scn 0 0 9 9 re f")
                        .stream("/N 3", "profile")
                        .object(shading);
        assertThat(pdf.record(folder).ops().stream().map(IntentReadingTest::ofShading))
                .containsExactly(
                        RenderingIntent.RELATIVE,
                        RenderingIntent.SATURATION,
                        RenderingIntent.SATURATION,
                        RenderingIntent.PERCEPTUAL);
    }

    private static RenderingIntent ofShading(Op op) {
        Paint.Shading shading = op instanceof Op.Shade shade ? shade.shading() : (Paint.Shading) ((Op.Fill) op).paint();
        return ((ColourSpace.Icc) shading.space()).rendering().intent();
    }
}
