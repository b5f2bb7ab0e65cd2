package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Refusal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PrintConditionsTest {
    @ParameterizedTest
    @ValueSource(strings = {"FOGRA39L", "TR006"})
    void the_data_comes_back(String name) {
        PrintCondition condition = PrintConditions.bundled(name);
        Characterisation data = PrintConditions.bundledData(name);
        Differences all = Differences.of(data.patches().stream()
                .mapToDouble(p -> {
                    double[] t = p.tints();
                    Lab lab = absolute(condition, (float) t[0], (float) t[1], (float) t[2], (float) t[3]);
                    return Cie.deltaE00(lab, p.lab());
                })
                .toArray());
        assertThat(all.count()).isEqualTo(1588); // of 1,617 lines 29 repeat another
        assertThat(all.mean()).isLessThan(0.3);
        assertThat(all.max()).isLessThan(1.0);
    }

    @Test
    void the_solids_of_fogra39_are_those_of_iso_12647_2() {
        // Aims of ISO 12647-2:2004/Amd 1, paper type 1 and 2, white backing: from memory, and in the data
        PrintCondition fogra = PrintConditions.bundled("FOGRA39L");
        assertThat(fogra.name()).isEqualTo("FOGRA39L");
        assertThat(fogra.source()).contains("ISO 12647-2");
        assertThat(fogra.paper()).isEqualTo(new Lab(95, 0, -2));
        assertThat(Cie.deltaE76(absolute(fogra, 1, 0, 0, 0), new Lab(55, -37, -50)))
                .isLessThan(0.1);
        assertThat(Cie.deltaE76(absolute(fogra, 0, 1, 0, 0), new Lab(48, 74, -3)))
                .isLessThan(0.1);
        assertThat(Cie.deltaE76(absolute(fogra, 0, 0, 1, 0), new Lab(89, -5, 93)))
                .isLessThan(0.1);
        assertThat(Cie.deltaE76(absolute(fogra, 0, 0, 0, 1), new Lab(16, 0, 0))).isLessThan(0.1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"FOGRA39L", "TR006"})
    void colours_that_can_be_printed_come_back_through_the_inverse(String name) {
        PrintCondition condition = PrintConditions.bundled(name);
        Random random = new Random(11);
        double[] differences = new double[1500];
        float[] back = new float[4];
        for (int i = 0; i < differences.length; i++) {
            float[] tints = new float[4];
            do {
                for (int k = 0; k < 4; k++) {
                    tints[k] = random.nextFloat();
                }
                tints[3] *= random.nextFloat();
            } while (tints[0] + tints[1] + tints[2] + tints[3] > 2.8);
            Lab want = relative(condition, tints);
            condition.labToCmyk(want.L(), want.a(), want.b(), back);
            differences[i] = Cie.deltaE00(want, relative(condition, back));
        }
        Differences all = Differences.of(differences);
        assertThat(all.mean()).isLessThan(0.02);
        assertThat(all.p95()).isLessThan(0.05);
        assertThat(all.max()).isLessThan(3); // at the rim of what 300 % can print
    }

    @Test
    void any_colour_gives_tints_in_range_within_the_ink_limit() {
        PrintCondition condition = PrintConditions.bundled("FOGRA39L");
        Random random = new Random(5);
        float[] cmyk = new float[4];
        for (int i = 0; i < 2000; i++) {
            condition.labToCmyk(
                    random.nextDouble() * 110 - 5,
                    random.nextDouble() * 260 - 130,
                    random.nextDouble() * 260 - 130,
                    cmyk);
            float sum = 0;
            for (float tint : cmyk) {
                assertThat(tint).isBetween(0f, 1f);
                sum += tint;
            }
            assertThat(sum).isLessThanOrEqualTo(3.0001f);
        }
    }

    @Test
    void white_gets_no_ink_and_the_neutral_axis_gets_ever_more_black() {
        PrintCondition condition = PrintConditions.bundled("FOGRA39L");
        float[] cmyk = new float[4];
        condition.labToCmyk(100, 0, 0, cmyk);
        assertThat(cmyk).containsExactly(0, 0, 0, 0);
        float before = 0;
        for (double l = 99.5; l >= 0; l -= 0.5) {
            condition.labToCmyk(l, 0, 0, cmyk);
            assertThat(cmyk[3]).as("black at L* " + l).isBetween(before - 1e-3f, before + 0.04f);
            before = Math.max(before, cmyk[3]);
            if (l > 18) {
                assertThat(Cie.deltaE00(relative(condition, cmyk), new Lab(l, 0, 0)))
                        .isLessThan(0.1);
            }
        }
        assertThat(before).isGreaterThan(0.95f);
    }

    @Test
    void a_colour_out_of_reach_keeps_its_hue_about() {
        PrintCondition condition = PrintConditions.bundled("FOGRA39L");
        float[] cmyk = new float[4];
        Lab green = Srgb.toLab(0, 1, 0);
        condition.labToCmyk(green.L(), green.a(), green.b(), cmyk);
        Lab nearest = relative(condition, cmyk);
        assertThat(cmyk[1]).isLessThan(0.02f);
        assertThat(cmyk[3]).isLessThan(0.02f);
        assertThat(Math.toDegrees(Math.atan2(nearest.b(), nearest.a()))).isCloseTo(140, within(15.0));
    }

    @Test
    void a_user_file_is_read_and_a_missing_one_refused(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("mine.ti3");
        try (var in = PrintConditions.class.getResourceAsStream("TR006.ti3")) {
            Files.copy(in, file);
        }
        assertThat(PrintConditions.read(file).paper())
                .isEqualTo(PrintConditions.bundled("TR006").paper());
        assertThatThrownBy(() -> PrintConditions.read(folder.resolve("none.ti3")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("none.ti3");
        assertThatThrownBy(() -> PrintConditions.bundled("other")).isInstanceOf(IllegalArgumentException.class);
    }

    private static Lab absolute(PrintCondition condition, float... cmyk) {
        double[] xyz = new double[3];
        condition.cmykToXyz(cmyk, xyz);
        return Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
    }

    private static Lab relative(PrintCondition condition, float... cmyk) {
        double[] xyz = new double[3];
        condition.cmykToXyz(cmyk, xyz);
        double[] paper = Cie.labToXyz(condition.paper());
        return Cie.xyzToLab(xyz[0] / paper[0] * Cie.D50_X, xyz[1] / paper[1], xyz[2] / paper[2] * Cie.D50_Z);
    }
}
