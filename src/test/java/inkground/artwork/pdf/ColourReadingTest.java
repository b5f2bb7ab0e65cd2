package inkground.artwork.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.artwork.Artwork;
import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.artwork.TintTransform;
import inkground.base.Cancel;
import inkground.base.Progress;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ColourReadingTest {
    /** From one tint to CMYK: (0, tint, tint / 2, 0). */
    private static final String TINT = "<< /FunctionType 2 /Domain [0 1] /N 1 /C0 [0 0 0 0] /C1 [0 1 0.5 0] >>";

    @TempDir
    Path dir;

    private Colour colour(PdfText pdf) throws Exception {
        Op.Fill fill = pdf.only(Op.Fill.class, dir);
        return ((Paint.Flat) fill.paint()).colour();
    }

    private Colour colour(String space, String components) throws Exception {
        return colour(new PdfText()
                .resources("/ColorSpace << /S " + space + " >>")
                .content("/S cs " + components + " sc 0 0 9 9 re f"));
    }

    @Test
    void deviceColoursStayAsStated() throws Exception {
        List<Op> ops = new PdfText()
                .content("0.25 g 0 0 9 9 re f 1 0 0.5 rg 0 0 9 9 re f 0.1 0.2 0.3 0.4 k 0 0 9 9 re f"
                        + " 0 1 0 RG 0 0 9 9 re S")
                .ops(dir);
        assertThat(ops.subList(0, 3))
                .extracting(op -> ((Op.Fill) op).paint())
                .containsExactly(
                        new Paint.Flat(new Colour(new ColourSpace.DeviceGray(), 0.25f)),
                        new Paint.Flat(new Colour(new ColourSpace.DeviceRgb(), 1, 0, 0.5f)),
                        new Paint.Flat(new Colour(new ColourSpace.DeviceCmyk(), 0.1f, 0.2f, 0.3f, 0.4f)));
        assertThat(((Op.Stroke) ops.get(3)).paint())
                .isEqualTo(new Paint.Flat(new Colour(new ColourSpace.DeviceRgb(), 0, 1, 0)));
    }

    @Test
    void aDefaultSpaceReplacesADeviceSpace() throws Exception {
        Colour colour = colour(new PdfText()
                        .resources(
                                "/ColorSpace << /DefaultCMYK [/ICCBased 5 0 R] /DefaultRGB [/CalRGB << /WhitePoint [0.9 1 0.8]"
                                        + " /Gamma [2 2 2] >>] >>")
                        .stream("/N 4", "icc")
                        .content("0 0 0 1 k 0 0 9 9 re f"));
        assertThat(colour.space()).isInstanceOf(ColourSpace.Icc.class);
        assertThat(((ColourSpace.Icc) colour.space()).alternate()).isEqualTo(new ColourSpace.DeviceCmyk());
        assertThat(((ColourSpace.Icc) colour.space()).profile().bytes())
                .asString()
                .isEqualTo("icc");
    }

    @Test
    void calibratedSpacesKeepTheirNumbers() throws Exception {
        Colour grey = colour("[/CalGray << /WhitePoint [0.9 1 0.8] /Gamma 2.2 >>]", "0.5");
        assertThat(((ColourSpace.CalGray) grey.space()).gamma()).isCloseTo(2.2, within(1e-6));
        Colour rgb =
                colour("[/CalRGB << /WhitePoint [0.9 1 0.8] /Gamma [1 2 3] /Matrix [1 2 3 4 5 6 7 8 9] >>]", "1 0.5 0");
        assertThat(rgb.space())
                .isEqualTo(new ColourSpace.CalRgb(
                        List.of((double) 0.9f, 1.0, (double) 0.8f),
                        List.of(1.0, 2.0, 3.0),
                        List.of(1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0)));
        Colour lab = colour("[/Lab << /WhitePoint [0.9 1 0.8] /Range [-50 60 -70 80] >>]", "40 -90 20");
        assertThat(lab.components()).containsExactly(40, -50, 20);
    }

    @Test
    void anIndexedColourKeepsItsPalette() throws Exception {
        Colour colour = colour("[/Indexed /DeviceRGB 1 <FF0000 00FF80>]", "1");
        ColourSpace.Indexed space = (ColourSpace.Indexed) colour.space();
        assertThat(colour.components()).containsExactly(1);
        assertThat(space.lookup(0)).containsExactly(1, 0, 0);
        assertThat(space.lookup(1)[2]).isCloseTo(128 / 255f, within(1e-6f));
    }

    @Test
    void aSeparationKeepsItsNameAndTintTransform() throws Exception {
        Colour colour = colour("[/Separation /Regatta#20Blue /DeviceCMYK " + TINT + "]", "0.5");
        ColourSpace.Separation space = (ColourSpace.Separation) colour.space();
        assertThat(space.name()).isEqualTo("Regatta Blue");
        float[] out = new float[4];
        space.tint().apply(colour.components(), out);
        assertThat(out).containsExactly(0, 0.5f, 0.25f, 0);
    }

    @Test
    void aSeparationNamedAllKeepsThatName() throws Exception {
        Colour all = colour("[/Separation /All /DeviceCMYK " + TINT + "]", "1");
        assertThat(((ColourSpace.Separation) all.space()).name()).isEqualTo("All");
    }

    @Test
    void deviceNKeepsNamesAndTheSeparationsOfItsAttributes() throws Exception {
        Colour colour = colour(new PdfText()
                        .resources(
                                "/ColorSpace << /S [/DeviceN [/River /None /Oar] /DeviceCMYK 5 0 R << /Subtype /NChannel"
                                        + " /Colorants << /River [/Separation /River /DeviceCMYK " + TINT
                                        + "] >> >>] >>")
                        .stream("/FunctionType 4 /Domain [0 1 0 1 0 1] /Range [0 1 0 1 0 1 0 1]", "{exch pop 0 exch 0}")
                        .content("/S cs 0.2 0.4 0.6 scn 0 0 9 9 re f"));
        ColourSpace.DeviceN space = (ColourSpace.DeviceN) colour.space();
        assertThat(space.names()).containsExactly("River", "None", "Oar");
        assertThat(space.colorants()).extracting(ColourSpace.Separation::name).containsExactly("River");
        float[] out = new float[4];
        space.tint().apply(colour.components(), out);
        assertThat(out).containsExactly(0.2f, 0, 0.6f, 0);
    }

    private TintTransform tint(String dictEntries, String data) throws Exception {
        Colour colour = colour(new PdfText()
                .resources("/ColorSpace << /S [/Separation /River /DeviceGray 5 0 R] >>").stream(dictEntries, data)
                        .content("/S cs 1 scn 0 0 9 9 re f"));
        return ((ColourSpace.Separation) colour.space()).tint();
    }

    private static float at(TintTransform tint, float in) {
        float[] out = new float[tint.outputs()];
        tint.apply(new float[] {in}, out);
        return out[0];
    }

    @Test
    void sampledFunctionsInterpolate() throws Exception {
        TintTransform tint =
                tint("/FunctionType 0 /Domain [0 1] /Range [0 1] /Size [3] /BitsPerSample 8", "\u0000\u00ff\u0080");
        assertThat(at(tint, 0.25f)).isCloseTo(0.5f, within(1e-5f));
        assertThat(at(tint, 1)).isCloseTo(128 / 255f, within(1e-5f));
        assertThat(at(tint, 7)).as("clipped to the domain").isCloseTo(128 / 255f, within(1e-5f));
    }

    @Test
    void sampledFunctionsOfTwoInputsVaryTheFirstFastest() throws Exception {
        Colour colour = colour(new PdfText()
                .resources("/ColorSpace << /S [/DeviceN [/River /Oar] /DeviceGray 5 0 R] >>").stream(
                                "/FunctionType 0 /Domain [0 1 0 1] /Range [0 1] /Size [2 2] /BitsPerSample 4 /Decode [0 1.5]",
                                "\u0005\u00a0")
                        .content("/S cs 0 0 scn 0 0 9 9 re f"));
        TintTransform tint = ((ColourSpace.DeviceN) colour.space()).tint();
        float[] out = new float[1];
        // Samples 0, 5, 10, 0 of 15, decoded to 0, 0.5, 1, 0.
        tint.apply(new float[] {1, 0}, out);
        assertThat(out[0]).isCloseTo(0.5f, within(1e-6f));
        tint.apply(new float[] {0, 1}, out);
        assertThat(out[0]).isCloseTo(1, within(1e-6f));
        tint.apply(new float[] {0.5f, 0.5f}, out);
        assertThat(out[0]).isCloseTo(0.375f, within(1e-6f));
    }

    @Test
    void stitchedFunctionsUseThePartThatHoldsTheInput() throws Exception {
        String up = "<< /FunctionType 2 /Domain [0 1] /N 1 >>";
        TintTransform tint =
                tint("/FunctionType 3 /Domain [0 1] /Bounds [0.25] /Encode [0 1 1 0] /Functions [" + up + up + "]", "");
        assertThat(at(tint, 0.125f)).isCloseTo(0.5f, within(1e-6f));
        assertThat(at(tint, 0.25f)).isCloseTo(1, within(1e-6f));
        assertThat(at(tint, 1)).isCloseTo(0, within(1e-6f));
    }

    @Test
    void tintTransformsWorkAfterTheFileIsClosed() throws Exception {
        DisplayList list;
        try (Artwork artwork = new PdfText()
                .resources("/ColorSpace << /S [/Separation /River /DeviceGray 5 0 R] >>").stream(
                                "/FunctionType 0 /Domain [0 1] /Range [0 1] /Size [2] /BitsPerSample 8", "\u00ff\u0000")
                        .content("/S cs 1 scn 0 0 9 9 re f")
                        .open(dir)) {
            list = artwork.record(1, new Cancel(), Progress.NONE);
        }
        Paint.Flat paint = (Paint.Flat) ((Op.Fill) list.ops().get(0)).paint();
        assertThat(at(((ColourSpace.Separation) paint.colour().space()).tint(), 0.5f))
                .isCloseTo(0.5f, within(1e-5f));
    }

    @Test
    void anUnusableTintTransformIsReportedAndCostsOnlyItsColour() throws Exception {
        DisplayList list = new PdfText()
                .resources("/ColorSpace << /S [/Separation /River /DeviceCMYK << /FunctionType 9 /Domain [0 1] >>] >>")
                .content("/S cs 1 scn 0 0 9 9 re f 0 g 0 0 9 9 re f")
                .record(dir);
        assertThat(PdfText.messages(list)).anyMatch(m -> m.contains("damaged content"));
        assertThat(list.ops()).isNotEmpty();
    }

    @Test
    void declaredColorantsAreFoundInFormsPatternsShadingsAndImages() throws Exception {
        String sep = "[/Separation /%s /DeviceCMYK " + TINT + "]";
        try (Artwork artwork = new PdfText()
                        .resources(
                                "/ColorSpace << /A " + sep.formatted("River") + " /B [/Indexed " + sep.formatted("Oar")
                                        + " 0 <00>] /C " + sep.formatted("Cyan") + " /D " + sep.formatted("All")
                                        + " /E [/Pattern " + sep.formatted("Reed")
                                        + "] >> /XObject << /F 5 0 R >> /Shading << /S <<"
                                        + " /ShadingType 2 /ColorSpace " + sep.formatted("Bank") + " >> >>")
                        .stream(
                                "/Type /XObject /Subtype /Form /BBox [0 0 9 9] /Resources << /XObject << /F 5 0 R /I 6 0 R >> >>",
                                "")
                        .stream("/Subtype /Image /Width 1 /Height 1 /ColorSpace " + sep.formatted("Hull"), "")
                        .open(dir)) {
            assertThat(artwork.declaredColorants(1))
                    .extracting(ColourSpace.Separation::name)
                    .containsExactlyInAnyOrder("River", "Oar", "Reed", "Hull", "Bank");
        }
    }

    @Test
    void aColorantKnownOnlyFromDeviceNIsSeenWithAllOtherTintsAtZero() throws Exception {
        try (Artwork artwork = new PdfText()
                .resources("/ColorSpace << /S [/DeviceN [/Black /River] /DeviceCMYK 5 0 R] >>").stream(
                                "/FunctionType 4 /Domain [0 1 0 1] /Range [0 1 0 1 0 1 0 1]", "{ 0 0 4 2 roll }")
                        .open(dir)) {
            ColourSpace.Separation river = artwork.declaredColorants(1).get(0);
            assertThat(artwork.declaredColorants(1)).hasSize(1);
            assertThat(river.name()).isEqualTo("River");
            float[] out = new float[4];
            river.tint().apply(new float[] {0.7f}, out);
            assertThat(out).containsExactly(0, 0, 0, 0.7f);
        }
    }
}
