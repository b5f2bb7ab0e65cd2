package inkground.appearance;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.ColourSpace;
import inkground.artwork.ColourSpace.Separation;
import inkground.artwork.TintTransform;
import inkground.base.Refusal;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import inkground.ink.Ink;
import inkground.ink.InkSet;
import inkground.substrate.Substrates;
import java.util.List;
import org.junit.jupiter.api.Test;

class InkColoursTest {
    private static final ColourSpace LAB =
            new ColourSpace.CieLab(List.of(0.9642, 1.0, 0.8249), List.of(-128.0, 127.0, -128.0, 127.0));

    @Test
    void each_ink_says_where_its_colour_comes_from() {
        InkSet inks = new InkSet(List.of(
                Ink.CYAN,
                Ink.named("Reed Green"),
                Ink.named("Mill Red"),
                Ink.named("Heron Blue"),
                Ink.named("White"),
                Ink.named("Lost Ink")));
        List<Separation> declared = List.of(
                separation("Reed Green", LAB, 45, -40, 20),
                separation("Mill Red", new ColourSpace.DeviceCmyk(), 0, 1, 1, 0),
                separation("Heron Blue", new ColourSpace.DeviceRgb(), 0, 0, 1),
                separation("White", new ColourSpace.DeviceCmyk(), 0.2f, 0, 0, 0));
        List<InkColour> colours = InkColours.of(inks, declared, Samples.FOGRA);
        assertThat(colours.get(0).source()).isEqualTo("solid of FOGRA39L");
        assertThat(colours.get(1).source()).isEqualTo("Lab value in the file");
        assertThat(Cie.deltaE76(colours.get(1).solid(), new Lab(45, -40, 20))).isLessThan(0.01);
        assertThat(colours.get(2).source()).contains("process mixture").contains("FOGRA39L");
        assertThat(colours.get(2).solid().a()).isGreaterThan(60);
        assertThat(colours.get(3).source()).contains("sRGB");
        assertThat(Cie.deltaE76(colours.get(3).solid(), Srgb.toLab(0, 0, 1))).isLessThan(0.01);
        assertThat(colours.get(4).solid()).isEqualTo(InkColours.WHITE);
        assertThat(colours.get(4).source()).contains("assumed");
        assertThat(colours.get(5).solid()).isEqualTo(InkColours.UNKNOWN);
        assertThat(colours.get(5).source()).contains("unknown");
    }

    @Test
    void a_print_process_sets_the_opacities() throws Refusal {
        List<InkColour> inks = List.of(
                Samples.process().get(0), Samples.spot("Mill Red", new Lab(45, 60, 40), 0.5), Samples.white(0.5));
        var plastisol = Substrates.load().processById("screen-plastisol").orElseThrow();
        assertThat(InkColours.in(plastisol, inks))
                .extracting(InkColour::opacity)
                .containsExactly(InkColours.PROCESS_OPACITY, plastisol.inkOpacity(), plastisol.whiteOpacity());
        var sublimation = Substrates.load().processById("sublimation").orElseThrow();
        assertThat(InkColours.in(sublimation, inks))
                .extracting(InkColour::opacity)
                .containsExactly(0.0, 0.0, 0.0);
    }

    private static Separation separation(String name, ColourSpace alternate, float... solid) {
        return new Separation(name, alternate, new TintTransform() {
            @Override
            public int outputs() {
                return solid.length;
            }

            @Override
            public void apply(float[] in, float[] out) {
                for (int i = 0; i < solid.length; i++) {
                    out[i] = in[0] * solid[i];
                }
            }
        });
    }
}
