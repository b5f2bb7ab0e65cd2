package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import inkground.OutsideTool;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * All intents, both directions, against Little CMS, on a profile whose tables all differ. Lab of version 2 is asked of transicc: for
 * its version 4 it also compensates black points, which the profile's tables do not.
 */
class RenderingIntentTest {
    private static final String REFERENCE = "transicc-intents.txt";

    @TempDir
    Path folder;

    @Test
    void every_intent_is_within_three_tenths_both_ways() throws Exception {
        List<double[]> rows = ReferenceTable.read(REFERENCE);
        assertThat(rows).hasSize(2000);
        check(rows);
    }

    @Test
    void the_installed_transicc_says_the_same_of_1000_colours_at_each() throws Exception {
        assumeTrue(OutsideTool.onPath("transicc"), "transicc is not installed");
        check(run(1000, new Random(404), folder));
    }

    @Test
    void the_absolute_intent_has_the_papers_colour_and_the_others_white() throws Exception {
        byte[] profile = TestProfile.bytes();
        Lab paper = IccReader.open(profile, 4, RenderingIntent.ABSOLUTE).toLab(new float[4]);
        assertThat(Cie.deltaE76(paper, IccReader.mediaWhite(profile))).isLessThan(0.1);
        assertThat(paper.b()).isGreaterThan(5);
        for (RenderingIntent intent : List.of(RenderingIntent.PERCEPTUAL, RenderingIntent.RELATIVE)) {
            Lab white = IccReader.open(profile, 4, intent).toLab(new float[4]);
            assertThat(Cie.deltaE76(white, new Lab(100, 0, 0))).isLessThan(0.1);
        }
    }

    @Test
    void a_profile_without_the_way_back_says_so() throws Exception {
        IccReader reader = IccReader.open(LittleCmsTest.profile(), 4);
        assertThatThrownBy(() -> reader.fromLab(new Lab(50, 0, 0)))
                .isInstanceOf(IccReader.BrokenProfile.class)
                .hasMessageContaining("no tables");
    }

    @Test
    void tags_that_point_nowhere_count_as_absent() {
        byte[] profile = TestProfile.bytes();
        java.nio.ByteBuffer.wrap(profile).putInt(132 + 2 * 12 + 4, Integer.MAX_VALUE); // where wtpt lies
        assertThat(IccReader.mediaWhite(profile)).isEqualTo(new Lab(100, 0, 0));
        java.nio.ByteBuffer.wrap(profile).putInt(128, -1);
        assertThat(IccReader.mediaWhite(profile)).isEqualTo(new Lab(100, 0, 0));
        assertThat(IccReader.mediaWhite(new byte[130])).isEqualTo(new Lab(100, 0, 0));
    }

    /** @param args the file of references to write, in the tests' resources */
    public static void main(String[] args) throws Exception {
        Path folder = Files.createTempDirectory("intents");
        StringBuilder out = new StringBuilder("# transicc of liblcms2-utils 2.14-2+deb12u1; 2026-11-25\n"
                + "# commands: transicc -n -tN -iTestProfile.icc -o*Lab2, and -i*Lab2 -oTestProfile.icc\n"
                + "# columns: 0 to Lab or 1 from Lab, intent, inputs, outputs (tints in per cent)\n");
        for (double[] row : run(250, new Random(1), folder)) {
            for (int i = 0; i < row.length; i++) {
                out.append(i == 0 ? "" : " ").append(row[i] == Math.rint(row[i]) ? "" + (long) row[i] : "" + row[i]);
            }
            out.append('\n');
        }
        Files.writeString(Path.of(args[0]), out);
    }

    private static void check(List<double[]> rows) throws Exception {
        byte[] profile = TestProfile.bytes();
        IccReader[] readers = new IccReader[4];
        for (RenderingIntent intent : RenderingIntent.values()) {
            readers[intent.ordinal()] = IccReader.open(profile, 4, intent);
        }
        for (double[] r : rows) {
            IccReader reader = readers[(int) r[1]];
            if (r[0] == 0) {
                Lab lab = reader.toLab(tints(r, 2));
                assertThat(Cie.deltaE00(lab, new Lab(r[6], r[7], r[8])))
                        .as(Arrays.toString(r))
                        .isLessThan(0.3);
            } else {
                // Tints are compared by what they print.
                float[] ours = reader.fromLab(new Lab(r[2], r[3], r[4]));
                assertThat(Cie.deltaE00(readers[1].toLab(ours), readers[1].toLab(tints(r, 5))))
                        .as(Arrays.toString(r) + Arrays.toString(ours))
                        .isLessThan(0.3);
            }
        }
    }

    private static float[] tints(double[] row, int at) {
        return new float[] {
            (float) row[at] / 100, (float) row[at + 1] / 100, (float) row[at + 2] / 100, (float) row[at + 3] / 100
        };
    }

    private static List<double[]> run(int count, Random random, Path folder) throws Exception {
        Path profile = Files.write(folder.resolve("press.icc"), TestProfile.bytes());
        List<double[]> all = new ArrayList<>();
        for (int intent = 0; intent < 4; intent++) {
            List<double[]> tints = new ArrayList<>();
            List<double[]> labs = new ArrayList<>();
            IccReader reader = IccReader.open(TestProfile.bytes(), 4, RenderingIntent.values()[intent]);
            while (labs.size() < count) {
                double[] t = random.doubles(4, 0, 100)
                        .map(v -> Math.rint(v * 10) / 10)
                        .toArray();
                Lab lab = reader.toLab(tints(t, 0));
                double[] near = {
                    Math.rint(Math.max(2, Math.min(99, lab.L() + random.nextInt(11) - 5))),
                    Math.rint(lab.a() * 1.2),
                    Math.rint(lab.b() * 1.2)
                };
                double[] xyz = Cie.labToXyz(new Lab(near[0], near[1], near[2]));
                // The engine's way in is X, Y, Z, which hold no imaginary colours.
                if (xyz[0] > 0.002 && xyz[2] > 0.002) {
                    tints.add(t);
                    labs.add(near);
                }
            }
            all.addAll(transicc(0, intent, tints, "-i" + profile, "-o*Lab2", folder));
            all.addAll(transicc(1, intent, labs, "-i*Lab2", "-o" + profile, folder));
        }
        return all;
    }

    private static List<double[]> transicc(
            int direction, int intent, List<double[]> colours, String from, String to, Path folder) throws Exception {
        StringBuilder lines = new StringBuilder();
        for (double[] c : colours) {
            for (double v : c) {
                lines.append(String.format(Locale.ROOT, "%.1f ", v));
            }
            lines.append('\n');
        }
        Path in = Files.writeString(folder.resolve("in.txt"), lines);
        Path out = folder.resolve("out.txt");
        Process process = new ProcessBuilder("transicc", "-n", "-t" + intent, from, to)
                .redirectInput(in.toFile())
                .redirectOutput(out.toFile())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        assertThat(process.waitFor()).isZero();
        List<double[]> results = ReferenceTable.parse(Files.readString(out));
        assertThat(results).hasSameSizeAs(colours);
        List<double[]> rows = new ArrayList<>();
        for (int i = 0; i < results.size(); i++) {
            double[] c = colours.get(i);
            double[] row = new double[2 + c.length + results.get(i).length];
            row[0] = direction;
            row[1] = intent;
            System.arraycopy(c, 0, row, 2, c.length);
            System.arraycopy(results.get(i), 0, row, 2 + c.length, results.get(i).length);
            rows.add(row);
        }
        return rows;
    }
}
