package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import inkground.OutsideTool;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Black point compensation against {@code transicc -b} of Little CMS, all intents, both directions. */
class BlackPointTest {
    private static final String REFERENCE = "transicc-black-points.txt";
    private static final List<String> MATCHED = List.of("-b");
    private static final double TARGET_DE00 = 0.3;

    @TempDir
    Path folder;

    @Test
    void every_kind_of_profile_agrees_at_every_intent_both_ways() throws Exception {
        List<double[]> rows = ReferenceTable.read(REFERENCE);
        List<TestProfile.Named> profiles = List.copyOf(TestProfile.all().values());
        for (int p = 0; p < profiles.size(); p++) {
            int wanted = p;
            List<double[]> own = rows.stream().filter(r -> r[0] == wanted).toList();
            assertThat(own).hasSize(800);
            RenderingIntentTest.check(profiles.get(p), real(own), TARGET_DE00, true);
        }
    }

    @Test
    void the_installed_transicc_says_the_same_of_1000_other_colours_at_each() throws Exception {
        assumeTrue(OutsideTool.onPath("transicc"), "transicc is not installed");
        Random random = new Random(406);
        for (TestProfile.Named profile : TestProfile.all().values()) {
            List<double[]> rows = RenderingIntentTest.run(0, profile, 1000, random, folder, MATCHED);
            RenderingIntentTest.check(profile, real(rows), TARGET_DE00, true);
        }
    }

    @Test
    void profiles_that_ghostscript_ships_agree_as_well() throws Exception {
        assumeTrue(OutsideTool.onPath("transicc"), "transicc is not installed");
        assumeTrue(Files.isDirectory(RenderingIntentTest.INSTALLED), "the profiles of Ghostscript are not installed");
        Random random = new Random(407);
        for (Map.Entry<String, Integer> one : new java.util.TreeMap<>(RenderingIntentTest.COMPONENTS).entrySet()) {
            Path file = RenderingIntentTest.INSTALLED.resolve(one.getKey());
            if (Files.isRegularFile(file)) {
                TestProfile.Named profile = new TestProfile.Named(Files.readAllBytes(file), one.getValue());
                List<double[]> rows = RenderingIntentTest.run(0, profile, 1000, random, folder, MATCHED);
                RenderingIntentTest.check(profile, real(rows), TARGET_DE00, true);
            }
        }
    }

    // Lab whose X or Z is below 0 is no colour; the compensation spreads the engines' roundings of such numbers.
    private static List<double[]> real(List<double[]> rows) {
        List<double[]> out = rows.stream()
                .filter(r -> {
                    double[] xyz = Cie.labToXyz(new Lab(r[3], r[4], r[5]));
                    return r[1] == 0 || xyz[0] >= 0 && xyz[2] >= 0;
                })
                .toList();
        assertThat(out.size()).isGreaterThan(rows.size() * 3 / 4);
        return out;
    }

    @Test
    void scaling_keeps_white_and_moves_black() {
        double[] black = {0.02 * Cie.D50_X, 0.02, 0.02 * Cie.D50_Z};
        for (double[] pair : new double[][] {{0, 0.02}, {0.5, 0.51}, {1, 1}}) {
            double[] xyz = {pair[0] * Cie.D50_X, pair[0], pair[0] * Cie.D50_Z};
            BlackPoint.compress(xyz, black);
            assertThat(xyz[1]).isCloseTo(pair[1], within(1e-12));
            BlackPoint.expand(xyz, black);
            assertThat(xyz[1]).isCloseTo(pair[0], within(1e-12));
        }
    }

    @Test
    void the_absolute_intent_is_never_compensated() throws Exception {
        Lab plain =
                IccReader.open(TestProfile.bytes(), 4, RenderingIntent.ABSOLUTE).toLab(new float[] {1, 1, 1, 1});
        Lab asked = IccReader.open(TestProfile.bytes(), 4, RenderingIntent.ABSOLUTE, true)
                .toLab(new float[] {1, 1, 1, 1});
        assertThat(asked).isEqualTo(plain);
        assertThat(BlackPointCompensation.ON.applies(RenderingIntent.ABSOLUTE)).isFalse();
    }

    @Test
    void what_is_left_open_follows_the_intent() {
        assertThat(BlackPointCompensation.DEFAULT.applies(RenderingIntent.RELATIVE))
                .isTrue();
        assertThat(BlackPointCompensation.DEFAULT.applies(RenderingIntent.PERCEPTUAL))
                .isFalse();
        assertThat(BlackPointCompensation.DEFAULT.applies(RenderingIntent.SATURATION))
                .isFalse();
        assertThat(BlackPointCompensation.OFF.applies(RenderingIntent.RELATIVE)).isFalse();
        assertThat(BlackPointCompensation.ON.applies(RenderingIntent.PERCEPTUAL))
                .isTrue();
        assertThat(BlackPointCompensation.OFF.orElse(BlackPointCompensation.ON)).isEqualTo(BlackPointCompensation.OFF);
        assertThat(BlackPointCompensation.DEFAULT.orElse(BlackPointCompensation.ON))
                .isEqualTo(BlackPointCompensation.ON);
    }

    /** @param args the file of references to write, in the tests' resources */
    public static void main(String[] args) throws Exception {
        Files.writeString(
                Path.of(args[0]),
                RenderingIntentTest.table("transicc -n -b -tN", Files.createTempDirectory("black"), MATCHED));
    }
}
