package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.ColourSpace;
import inkground.artwork.TintTransform;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.PrintCondition;
import inkground.colour.PrintConditions;
import inkground.colour.Srgb;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

class ColourReaderTest {
    private static final List<Double> D65 = List.of(0.9505, 1.0, 1.089);
    private static final List<Double> D50 = List.of(0.9642, 1.0, 0.8249);

    private final PrintCondition fogra = PrintConditions.bundled("FOGRA39L");
    private final ColourReader reader = new ColourReader(fogra);

    @Test
    void no_ink_and_display_white_are_both_lab_white() {
        near(new Lab(100, 0, 0), new ColourSpace.DeviceCmyk(), 0, 0, 0, 0);
        near(new Lab(100, 0, 0), new ColourSpace.DeviceRgb(), 1, 1, 1);
        near(new Lab(100, 0, 0), new ColourSpace.DeviceGray(), 1);
        near(new Lab(100, 0, 0), new ColourSpace.CalGray(D65, 2.2), 1);
        near(new Lab(100, 0, 0), new ColourSpace.CieLab(D65, List.of(-128.0, 127.0, -128.0, 127.0)), 100, 0, 0);
    }

    @Test
    void process_tints_are_seen_relative_to_the_paper() {
        // FOGRA39L cyan is XYZ of Lab (55, −37, −50) on a paper of Lab (95, 0, −2); by hand, each over the paper's
        // times D50
        double[] cyan = Cie.labToXyz(new Lab(55, -37, -50));
        double[] paper = Cie.labToXyz(new Lab(95, 0, -2));
        Lab expected = Cie.xyzToLab(cyan[0] / paper[0] * 0.9642, cyan[1] / paper[1], cyan[2] / paper[2] * 0.8249);
        near(expected, new ColourSpace.DeviceCmyk(), 1, 0, 0, 0);
        near(expected, separation("Cyan", new ColourSpace.DeviceGray(), in -> new float[] {0}), 1);
    }

    @Test
    void device_grey_is_black_ink() {
        Lab grey = reader.toLab(new ColourSpace.DeviceGray(), new float[] {0.4f});
        near(grey, new ColourSpace.DeviceCmyk(), 0, 0, 0, 0.6f);
    }

    @Test
    void calibrated_rgb_with_srgb_numbers_is_about_srgb() {
        ColourSpace cal = new ColourSpace.CalRgb(
                D65,
                List.of(2.2, 2.2, 2.2),
                List.of(0.4124, 0.2126, 0.0193, 0.3576, 0.7152, 0.1192, 0.1805, 0.0722, 0.9505));
        for (float[] c : new float[][] {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, {1, 1, 1}, {0.5f, 0.5f, 0.5f}}) {
            assertThat(Cie.deltaE00(reader.toLab(cal, c), Srgb.toLab(c[0], c[1], c[2])))
                    .isLessThan(0.6);
        }
    }

    @Test
    void lab_for_d50_is_taken_as_it_stands_and_for_another_white_adapted() {
        List<Double> range = List.of(-128.0, 127.0, -128.0, 127.0);
        near(new Lab(50, 40, -30), new ColourSpace.CieLab(D50, range), 50, 40, -30);
        Lab adapted = reader.toLab(new ColourSpace.CieLab(D65, range), new float[] {50, 40, -30});
        assertThat(Cie.deltaE00(adapted, new Lab(50, 40, -30))).isBetween(0.05, 5.0);
    }

    @Test
    void an_icc_profile_is_used_and_a_broken_one_gives_way_to_the_alternate() {
        byte[] srgb = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
        ColourSpace good = new ColourSpace.Icc(new ColourSpace.Profile(srgb), 3, new ColourSpace.DeviceRgb());
        assertThat(Cie.deltaE00(reader.toLab(good, new float[] {0.2f, 0.5f, 0.7f}), Srgb.toLab(0.2f, 0.5f, 0.7f)))
                .isLessThan(0.3);
        assertThat(reader.profileFaults()).isEmpty();
        ColourSpace broken =
                new ColourSpace.Icc(new ColourSpace.Profile(new byte[500]), 3, new ColourSpace.DeviceRgb());
        near(Srgb.toLab(0.2f, 0.5f, 0.7f), broken, 0.2f, 0.5f, 0.7f);
        assertThat(reader.profileFaults()).singleElement().asString().contains("damaged");
    }

    @Test
    void palettes_and_named_colorants_go_through_their_tables() {
        ColourSpace palette = new ColourSpace.Indexed(
                new ColourSpace.DeviceRgb(), 1, new ColourSpace.Table(new byte[] {0, 0, 0, (byte) 255, 0, 0}));
        near(Srgb.toLab(1, 0, 0), palette, 1);
        ColourSpace lab = new ColourSpace.CieLab(D50, List.of(-128.0, 127.0, -128.0, 127.0));
        near(new Lab(60, 20, 10), separation("Heron Blue", lab, in -> new float[] {100 - 40 * in[0], 20, 10}), 1);
        near(new Lab(100, 0, 0), separation("None", lab, in -> new float[] {0, 0, 0}), 1);
        ColourSpace two = new ColourSpace.DeviceN(
                List.of("A", "B"),
                new ColourSpace.DeviceCmyk(),
                tint(4, in -> new float[] {in[0], in[1], 0, 0}),
                List.of());
        near(reader.toLab(new ColourSpace.DeviceCmyk(), new float[] {0.3f, 0.6f, 0, 0}), two, 0.3f, 0.6f);
    }

    private void near(Lab expected, ColourSpace space, float... components) {
        assertThat(Cie.deltaE76(reader.toLab(space, components), expected)).isLessThan(0.05);
    }

    private static ColourSpace separation(String name, ColourSpace alternate, UnaryOperator<float[]> tint) {
        return new ColourSpace.Separation(name, alternate, tint(alternate.components(), tint));
    }

    private static TintTransform tint(int outputs, UnaryOperator<float[]> function) {
        return new TintTransform() {
            @Override
            public int outputs() {
                return outputs;
            }

            @Override
            public void apply(float[] in, float[] out) {
                System.arraycopy(function.apply(in), 0, out, 0, outputs);
            }
        };
    }
}
