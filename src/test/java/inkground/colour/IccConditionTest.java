package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.base.Refusal;
import java.nio.ByteBuffer;
import java.util.List;
import org.junit.jupiter.api.Test;

class IccConditionTest {
    @Test
    void a_profile_sampled_to_a_grid_stays_close_to_little_cms() throws Exception {
        PrintCondition condition = IccCondition.of(LittleCmsTest.profile(), "micro");
        double[] paper = Cie.labToXyz(condition.paper());
        List<double[]> rows = ReferenceTable.read("transicc-cmyk-to-lab.txt");
        double[] differences = new double[rows.size()];
        double[] xyz = new double[3];
        for (int i = 0; i < differences.length; i++) {
            double[] r = rows.get(i);
            condition.cmykToXyz(
                    new float[] {(float) r[0] / 100, (float) r[1] / 100, (float) r[2] / 100, (float) r[3] / 100}, xyz);
            Lab lab = Cie.xyzToLab(xyz[0] / paper[0] * Cie.D50_X, xyz[1] / paper[1], xyz[2] / paper[2] * Cie.D50_Z);
            differences[i] = Cie.deltaE00(lab, new Lab(r[4], r[5], r[6]));
        }
        Differences all = Differences.of(differences);
        assertThat(all.mean()).isLessThan(0.3);
        assertThat(all.max()).isLessThan(1.5);
    }

    @Test
    void its_paper_is_the_media_white_and_gets_no_ink() throws Exception {
        byte[] profile = LittleCmsTest.profile();
        Lab declared = IccCondition.of(profile, "micro").paper(); // its tag says D50
        assertThat(Cie.deltaE76(declared, new Lab(100, 0, 0))).isLessThan(0.01);
        // The media white tag of this profile lies at byte 220: put in the paper of FOGRA39L, X, Y, Z as 15.16 numbers.
        ByteBuffer.wrap(profile, 228, 12)
                .putInt((int) (0.8448 * 65536))
                .putInt((int) (0.8762 * 65536))
                .putInt((int) (0.7457 * 65536));
        PrintCondition condition = IccCondition.of(profile, "micro");
        assertThat(Cie.deltaE76(condition.paper(), new Lab(95, 0, -2))).isLessThan(0.05);
        double[] xyz = new double[3];
        condition.cmykToXyz(new float[4], xyz);
        assertThat(Cie.deltaE76(Cie.xyzToLab(xyz[0], xyz[1], xyz[2]), condition.paper()))
                .isLessThan(0.05);
        float[] cmyk = new float[4];
        condition.labToCmyk(100, 0, 0, cmyk);
        assertThat(cmyk).containsExactly(0, 0, 0, 0);
        condition.labToCmyk(50, 0, 0, cmyk);
        condition.cmykToXyz(cmyk, xyz);
        double[] paper = Cie.labToXyz(condition.paper());
        Lab back = Cie.xyzToLab(xyz[0] / paper[0] * Cie.D50_X, xyz[1] / paper[1], xyz[2] / paper[2] * Cie.D50_Z);
        assertThat(Cie.deltaE00(back, new Lab(50, 0, 0))).isLessThan(0.2);
    }

    @Test
    void a_broken_profile_is_refused_with_its_name() {
        assertThatThrownBy(() -> IccCondition.of(new byte[4000], "Output intent"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("Output intent")
                .hasMessageContaining("damaged");
    }

    @Test
    void intents_that_only_a_profile_can_answer_are_answered_by_its_tables() throws Exception {
        PrintCondition press = IccCondition.of(TestProfile.bytes(), "press");
        float[] cmyk = new float[4];
        Lab asked = new Lab(55, 30, -20);
        for (RenderingIntent intent : List.of(RenderingIntent.PERCEPTUAL, RenderingIntent.SATURATION)) {
            assertThat(press.byIntent(asked, intent, false, cmyk)).isTrue();
            assertThat(cmyk)
                    .containsExactly(
                            IccReader.open(TestProfile.bytes(), 4, intent).fromLab(asked));
        }
        assertThat(press.byIntent(asked, RenderingIntent.RELATIVE, false, cmyk)).isFalse();
        assertThat(press.byIntent(press.paper(), RenderingIntent.ABSOLUTE, false, cmyk))
                .isTrue();
        assertThat(cmyk).containsExactly(0, 0, 0, 0); // the paper's own colour needs no ink
        assertThat(press.byIntent(new Lab(100, 0, 0), RenderingIntent.ABSOLUTE, false, cmyk))
                .isTrue();
        // a profile without tables from colours, and data, leave what is pleasing to the caller
        assertThat(IccCondition.of(LittleCmsTest.profile(), "micro")
                        .byIntent(asked, RenderingIntent.PERCEPTUAL, false, cmyk))
                .isFalse();
        assertThat(PrintConditions.bundled("TR006").byIntent(asked, RenderingIntent.SATURATION, false, cmyk))
                .isFalse();
    }
}
