package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import inkground.OutsideTool;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * All intents, both directions, against Little CMS: profiles of versions 2 and 4, matrix and table, of process inks, displays and greys.
 * Its Lab of version 2 is asked for, since on the way to its Lab of version 4 it compensates black points, which a profile's tables do
 * not.
 */
class RenderingIntentTest {
    private static final String REFERENCE = "transicc-profiles.txt";
    private static final int COMMITTED = 100;
    private static final int AFRESH = 1000;
    private static final double TARGET_DE00 = 0.3;
    // What is left in the committed colours is the engine's own rounding to 16 bits.
    private static final double COMMITTED_DE00 = 0.05;
    static final Path INSTALLED = Path.of("/usr/share/color/icc/ghostscript");
    static final Map<String, Integer> COMPONENTS = Map.of(
            "default_cmyk.icc",
            4,
            "ps_cmyk.icc",
            4,
            "default_rgb.icc",
            3,
            "a98.icc",
            3,
            "esrgb.icc",
            3,
            "default_gray.icc",
            1,
            "sgray.icc",
            1);

    @TempDir
    Path folder;

    @Test
    void every_kind_of_profile_agrees_at_every_intent_both_ways() throws Exception {
        List<double[]> rows = ReferenceTable.read(REFERENCE);
        List<TestProfile.Named> profiles = List.copyOf(TestProfile.all().values());
        assertThat(rows).hasSize(profiles.size() * 4 * 2 * COMMITTED);
        for (int p = 0; p < profiles.size(); p++) {
            int wanted = p;
            check(profiles.get(p), rows.stream().filter(r -> r[0] == wanted).toList(), COMMITTED_DE00);
        }
    }

    @Test
    void the_installed_transicc_says_the_same_of_1000_other_colours_at_each() throws Exception {
        assumeTrue(OutsideTool.onPath("transicc"), "transicc is not installed");
        Random random = new Random(404);
        for (TestProfile.Named profile : TestProfile.all().values()) {
            check(profile, run(0, profile, AFRESH, random, folder), TARGET_DE00);
        }
    }

    @Test
    void profiles_that_ghostscript_ships_agree_as_well() throws Exception {
        assumeTrue(OutsideTool.onPath("transicc"), "transicc is not installed");
        assumeTrue(Files.isDirectory(INSTALLED), "the profiles of Ghostscript are not installed");
        Random random = new Random(405);
        for (Map.Entry<String, Integer> one : new java.util.TreeMap<>(COMPONENTS).entrySet()) {
            Path file = INSTALLED.resolve(one.getKey());
            if (Files.isRegularFile(file)) {
                TestProfile.Named profile = new TestProfile.Named(Files.readAllBytes(file), one.getValue());
                check(profile, run(0, profile, AFRESH, random, folder), TARGET_DE00);
            }
        }
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
        assertThat(reader.hasWayBack()).isFalse();
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
        Files.writeString(Path.of(args[0]), table("transicc -n -tN", folder, List.of()));
    }

    static String table(String command, Path folder, List<String> options) throws Exception {
        StringBuilder out = new StringBuilder(
                "# transicc of liblcms2-utils 2.14-2+deb12u1; 2026-11-26\n"
                        + "# commands: " + command
                        + " -iPROFILE.icc -o*Lab2, and -i*Lab2 -oPROFILE.icc, for each of TestProfile.all()\n"
                        + "# columns: profile, 0 to Lab or 1 from Lab, intent, inputs, outputs (process tints in per cent, others of 255)\n");
        int index = 0;
        Random random = new Random(1);
        for (TestProfile.Named profile : TestProfile.all().values()) {
            for (double[] row : run(index++, profile, COMMITTED, random, folder, options)) {
                for (int i = 0; i < row.length; i++) {
                    out.append(i == 0 ? "" : " ")
                            .append(row[i] == Math.rint(row[i]) ? "" + (long) row[i] : "" + row[i]);
                }
                out.append('\n');
            }
        }
        return out.toString();
    }

    static void check(TestProfile.Named profile, List<double[]> rows, double mostDe00) throws Exception {
        check(profile, rows, mostDe00, false);
    }

    /** @param blackMatched as {@code transicc -b} does */
    static void check(TestProfile.Named profile, List<double[]> rows, double mostDe00, boolean blackMatched)
            throws Exception {
        int n = profile.components();
        Map<Integer, IccReader> readers = new LinkedHashMap<>();
        for (RenderingIntent intent : RenderingIntent.values()) {
            readers.put(intent.ordinal(), IccReader.open(profile.bytes(), n, intent, blackMatched));
        }
        IccReader prints = IccReader.open(profile.bytes(), n);
        for (double[] r : rows) {
            IccReader reader = readers.get((int) r[2]);
            double off;
            if (r[1] == 0) {
                off = Cie.deltaE00(reader.toLab(components(r, 3, n)), new Lab(r[3 + n], r[4 + n], r[5 + n]));
            } else {
                // Components are compared by the colour they make.
                float[] ours = reader.fromLab(new Lab(r[3], r[4], r[5]));
                off = Cie.deltaE00(prints.toLab(ours), prints.toLab(components(r, 6, n)));
            }
            assertThat(off).as(Arrays.toString(r)).isLessThan(mostDe00);
        }
    }

    private static float[] components(double[] row, int at, int n) {
        float[] out = new float[n];
        for (int i = 0; i < n; i++) {
            out[i] = (float) (row[at + i] / (n == 4 ? 100 : 255));
        }
        return out;
    }

    private static List<double[]> run(int index, TestProfile.Named profile, int count, Random random, Path folder)
            throws Exception {
        return run(index, profile, count, random, folder, List.of());
    }

    static List<double[]> run(
            int index, TestProfile.Named profile, int count, Random random, Path folder, List<String> options)
            throws Exception {
        Path file = Files.write(folder.resolve("profile.icc"), profile.bytes());
        int n = profile.components();
        List<double[]> all = new ArrayList<>();
        for (int intent = 0; intent < 4; intent++) {
            List<double[]> colours = new ArrayList<>();
            List<double[]> labs = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                double[] colour = new double[n];
                for (int k = 0; k < n; k++) {
                    colour[k] = n == 4 ? random.nextInt(1001) / 10.0 : random.nextInt(256);
                }
                colours.add(colour);
                labs.add(new double[] {random.nextInt(101), random.nextInt(221) - 110, random.nextInt(221) - 110});
            }
            all.addAll(transicc(index, 0, intent, colours, "-i" + file, "-o*Lab2", folder, options));
            all.addAll(transicc(index, 1, intent, labs, "-i*Lab2", "-o" + file, folder, options));
        }
        return all;
    }

    private static List<double[]> transicc(
            int index,
            int direction,
            int intent,
            List<double[]> colours,
            String from,
            String to,
            Path folder,
            List<String> options)
            throws Exception {
        StringBuilder lines = new StringBuilder();
        for (double[] c : colours) {
            for (double v : c) {
                lines.append(String.format(Locale.ROOT, "%.1f ", v));
            }
            lines.append('\n');
        }
        Path in = Files.writeString(folder.resolve("in.txt"), lines);
        Path out = folder.resolve("out.txt");
        List<String> command = new ArrayList<>(List.of("transicc", "-n", "-t" + intent, from, to));
        command.addAll(options);
        Process process = new ProcessBuilder(command)
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
            double[] row = new double[3 + c.length + results.get(i).length];
            row[0] = index;
            row[1] = direction;
            row[2] = intent;
            System.arraycopy(c, 0, row, 3, c.length);
            System.arraycopy(results.get(i), 0, row, 3 + c.length, results.get(i).length);
            rows.add(row);
        }
        return rows;
    }
}
