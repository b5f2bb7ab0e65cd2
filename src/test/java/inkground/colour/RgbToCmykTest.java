package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class RgbToCmykTest {
    private final PrintCondition condition = PrintConditions.bundled("FOGRA39L");
    private final RgbToCmyk converter = new RgbToCmyk(condition);

    @Test
    void white_gets_exactly_no_ink() {
        assertThat(convert(1, 1, 1)).containsExactly(0, 0, 0, 0);
    }

    @Test
    void black_is_a_strong_neutral_dark_within_the_ink_limit() {
        float[] black = convert(0, 0, 0);
        assertThat(black[3]).isGreaterThan(0.95f);
        assertThat(black[0] + black[1] + black[2] + black[3]).isLessThanOrEqualTo(3.0001f);
        double[] xyz = new double[3];
        condition.cmykToXyz(black, xyz);
        Lab lab = Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
        assertThat(lab.L()).isLessThan(12);
        assertThat(Math.hypot(lab.a(), lab.b())).isLessThan(3);
    }

    @Test
    void greys_grow_steadily_darker_and_stay_neutral() {
        double[] paper = Cie.labToXyz(condition.paper());
        double before = 1;
        for (int g = 254; g >= 0; g--) {
            double[] xyz = new double[3];
            condition.cmykToXyz(convert(g / 255f, g / 255f, g / 255f), xyz);
            Lab lab = Cie.xyzToLab(xyz[0] / paper[0] * Cie.D50_X, xyz[1] / paper[1], xyz[2] / paper[2] * Cie.D50_Z);
            assertThat(xyz[1]).as("grey " + g).isLessThan(before + 1e-4);
            assertThat(Math.hypot(lab.a(), lab.b())).as("grey " + g).isLessThan(3);
            before = xyz[1];
        }
    }

    @Test
    void between_nodes_it_is_close_to_the_exact_conversion() {
        RgbToCmyk exactAtNodes = new RgbToCmyk(condition);
        float[] a = convert(16 / 32f, 12 / 32f, 20 / 32f);
        float[] b = convert(17 / 32f, 12 / 32f, 20 / 32f);
        float[] middle = new float[4];
        exactAtNodes.convert(16.5f / 32, 12 / 32f, 20 / 32f, middle);
        for (int i = 0; i < 4; i++) {
            assertThat(middle[i]).isCloseTo((a[i] + b[i]) / 2, within(1e-6f));
        }
    }

    @Test
    void another_space_goes_through_its_own_lab() throws Exception {
        IccReader srgb = IccReader.open(
                java.awt.color.ICC_Profile.getInstance(java.awt.color.ColorSpace.CS_sRGB)
                        .getData(),
                3);
        RgbToCmyk throughProfile = new RgbToCmyk(condition, srgb::toLab);
        float[] out = new float[4];
        throughProfile.convert(1, 1, 1, out);
        assertThat(out).containsExactly(0, 0, 0, 0);
        throughProfile.convert(0.5f, 0.25f, 0.75f, out);
        assertThat(out).containsExactly(convert(0.5f, 0.25f, 0.75f), within(0.01f));
    }

    @Test
    void threads_agree() {
        float[] expected = convert(0.3f, 0.6f, 0.9f);
        RgbToCmyk fresh = new RgbToCmyk(condition);
        IntStream.range(0, 200).parallel().forEach(i -> {
            float[] out = new float[4];
            fresh.convert(0.3f, 0.6f, 0.9f, out);
            assertThat(out).containsExactly(expected);
        });
        byte[] eight = new byte[4];
        fresh.convert8(0xffffff, eight, 0);
        assertThat(eight).containsExactly(0, 0, 0, 0);
    }

    private float[] convert(float r, float g, float b) {
        float[] out = new float[4];
        converter.convert(r, g, b, out);
        return out;
    }
}
