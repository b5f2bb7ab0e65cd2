package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import inkground.OutsideTool;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Against Little CMS: the committed results of its transicc, and transicc itself where it is installed. */
class LittleCmsTest {
    static final String PROFILE = "/org/apache/pdfbox/resources/icc/CGATS001Compat-v2-micro.icc";

    @TempDir
    Path folder;

    @Test
    void srgb_is_within_a_tenth_of_a_difference() {
        checkSrgb(ReferenceTable.read("transicc-srgb-to-lab.txt"));
    }

    @Test
    void a_cmyk_profile_is_within_three_tenths_on_1000_colours() throws Exception {
        List<double[]> rows = ReferenceTable.read("transicc-cmyk-to-lab.txt");
        assertThat(rows).hasSize(1000);
        checkCmyk(rows);
    }

    @Test
    void the_installed_transicc_says_the_same_today() throws Exception {
        assumeTrue(OutsideTool.onPath("transicc"), "transicc is not installed");
        Path profile = folder.resolve("cmyk.icc");
        Files.write(profile, profile());
        checkSrgb(run(ReferenceTable.read("transicc-srgb-to-lab.txt"), 3, "-i*sRGB"));
        checkCmyk(run(ReferenceTable.read("transicc-cmyk-to-lab.txt"), 4, "-i" + profile));
    }

    static byte[] profile() throws IOException {
        try (InputStream in = LittleCmsTest.class.getResourceAsStream(PROFILE)) {
            return in.readAllBytes();
        }
    }

    private static void checkSrgb(List<double[]> rows) {
        assertThat(rows).hasSizeGreaterThan(400);
        for (double[] r : rows) {
            Lab lab = Srgb.toLab(r[0] / 255, r[1] / 255, r[2] / 255);
            assertThat(Cie.deltaE00(lab, new Lab(r[3], r[4], r[5])))
                    .as(Arrays.toString(r))
                    .isLessThan(0.1);
        }
    }

    private static void checkCmyk(List<double[]> rows) throws Exception {
        IccReader reader = IccReader.open(profile(), 4);
        for (double[] r : rows) {
            float[] tints = {(float) r[0] / 100, (float) r[1] / 100, (float) r[2] / 100, (float) r[3] / 100};
            assertThat(Cie.deltaE00(reader.toLab(tints), new Lab(r[4], r[5], r[6])))
                    .as(Arrays.toString(r))
                    .isLessThan(0.3);
        }
    }

    private List<double[]> run(List<double[]> rows, int inputs, String from) throws Exception {
        List<String> lines = rows.stream()
                .map(r -> Arrays.stream(r, 0, inputs).mapToObj(Double::toString).collect(Collectors.joining(" ")))
                .toList();
        Path in = Files.write(folder.resolve("in.txt"), lines);
        Path out = folder.resolve("out.txt");
        Process process = new ProcessBuilder("transicc", "-n", "-t1", from, "-o*Lab4")
                .redirectInput(in.toFile())
                .redirectOutput(out.toFile())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        process.waitFor();
        List<String> results = Files.readAllLines(out, StandardCharsets.UTF_8).stream()
                .filter(l -> !l.isBlank())
                .toList();
        StringBuilder joined = new StringBuilder();
        for (int i = 0; i < lines.size(); i++) {
            joined.append(lines.get(i)).append(' ').append(results.get(i)).append('\n');
        }
        return ReferenceTable.parse(joined.toString());
    }
}
