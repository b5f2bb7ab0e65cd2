package inkground.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import inkground.colour.Characterisation;
import inkground.colour.Cie;
import inkground.colour.DisplayProfile;
import inkground.colour.Lab;
import inkground.colour.LittleCmsProfile;
import inkground.colour.PrintConditions;
import inkground.colour.TestProfile;
import inkground.substrate.Substrates;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The commands that tell colours: condition and patch. */
class ColourCommandsTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"condition", "patch"})
    void explain_themselves(String command) {
        Run run = Run.of(command, "--help");
        assertThat(run.code()).isZero();
        assertThat(run.out()).startsWith("Usage: inkground " + command);
    }

    @Test
    void condition_tells_paper_primaries_tone_values_and_the_models_fit() throws IOException {
        JsonNode fogra = json(Run.of("condition", "FOGRA39L", "--json"));
        assertThat(fogra.get("patches").asInt()).isEqualTo(1493);
        assertThat(fogra.get("patchesRead").asInt()).isEqualTo(1588);
        assertThat(fogra.get("meanDe00").asDouble()).isLessThan(0.60);
        assertThat(fogra.get("p95De00").asDouble()).isLessThan(1.40);
        assertThat(fogra.get("maxDe00").asDouble())
                .isGreaterThan(fogra.get("p95De00").asDouble());
        assertThat(fogra.get("n").asDouble()).isBetween(1.0, 3.0);
        assertThat(fogra.get("primaries")).hasSize(15);
        assertThat(fogra.get("paper").get(0).asDouble()).isEqualTo(95);
        // The file names curves A (cyan, magenta, yellow) and B (black) of ISO 12647-2:2004: 13 and 16 at 40 per cent,
        // from memory; those are by density, these by the model's bands.
        for (JsonNode ramp : fogra.get("toneValues")) {
            double curve = ramp.get("ink").asText().equals("Black") ? 0.16 : 0.13;
            for (JsonNode step : ramp.get("steps")) {
                if (step.get("tint").asDouble() == 0.4) {
                    assertThat(step.get("toneValueIncrease").asDouble()).isCloseTo(curve, within(0.015));
                }
            }
        }
    }

    @Test
    void condition_reads_a_profile_at_the_tints_of_the_bundled_data() throws Exception {
        Path profile = Files.write(folder.resolve("press.icc"), LittleCmsProfile.bytes());
        JsonNode read = json(Run.of("condition", profile, "--json"));
        assertThat(read.get("name").asText()).isEqualTo("press.icc");
        assertThat(read.get("patches").asInt()).isEqualTo(1493);
        assertThat(read.get("meanDe00").asDouble()).isBetween(0.3, 2.0);
    }

    @Test
    void condition_tells_how_many_measurements_were_averaged() throws IOException {
        JsonNode read = json(Run.of("condition", "FOGRA39L", "--json"));
        JsonNode repeats = read.get("repeats");
        assertThat(read.get("measurements").asInt()).isEqualTo(1617);
        assertThat(read.get("patchesRead").asInt()).isEqualTo(1588);
        assertThat(repeats.get("measurements").asInt() - repeats.get("patches").asInt())
                .isEqualTo(1617 - 1588);
        assertThat(repeats.get("maxDe00").asDouble())
                .isGreaterThanOrEqualTo(repeats.get("meanDe00").asDouble());
        assertThat(Run.of("condition", "FOGRA39L").out())
                .contains(repeats.get("patches").asInt() + " of them were measured more than once, 58 times in all")
                .contains("the measurements of a patch are all equal");
        Path twice = Files.writeString(
                folder.resolve("twice.txt"),
                Files.readString(fewPatches("few.ti3", "0 0 0 0", "100 0 0 0", "0 100 0 0", "0 0 100 0", "0 0 0 100"))
                        .replace("END_DATA\n", "100 0 0 0 56 -37 -50\nEND_DATA\n"));
        assertThat(Run.of("condition", twice).out())
                .contains("1 of them were measured more than once, 2 times in all")
                .containsPattern("at most by 0\\.[1-9]\\d \\(row [26] of the data\\)");
    }

    @Test
    void gaps_of_a_users_data_are_told_by_every_command_that_uses_it() throws Exception {
        Path few = fewPatches("few.ti3", "0 0 0 0", "100 0 0 0", "0 100 0 0", "0 0 100 0", "0 0 0 100", "50 0 0 0");
        JsonNode read = json(Run.of("condition", few, "--json"));
        assertThat(read.get("patchesRead").asInt()).isEqualTo(6);
        assertThat(read.get("patches").asInt()).isZero();
        assertThat(read.get("gaps")).hasSize(11 + 3); // overprints, and inks without steps
        assertThat(read.get("primaries")).hasSize(15);
        assertThat(read.get("primaries").get(0).get("measured").asBoolean()).isTrue();
        assertThat(read.get("primaries").get(2).get("measured").asBoolean()).isFalse();
        assertThat(Run.of("condition", few).out())
                .contains("not measured but estimated: Cyan + Magenta from its inks as filters of one another")
                .contains("no steps of Black between paper and solid")
                .contains("no other patches to try the ink model on");
        JsonNode patch = json(Run.of(
                "patch", "--on", "coated-white", "--condition", few, "--ink", "C=100", "--ink", "M=100", "--json"));
        assertThat(patch.get("lab").get(0).asDouble()).isBetween(15.0, 30.0);
        assertThat(patch.get("inks").get(0).get("source").asText()).contains("has gaps");
        assertThat(patch.get("expectedError").get("meanDe00").asDouble()).isGreaterThan(1.5);
        assertThat(patch.get("expectedError").get("basis").asText()).contains("no patches to try", "FOGRA39L");
        assertThat(Run.of("inks", "demo/regatta-poster.pdf", "--condition", few).out())
                .contains("note: the data of the print condition few has gaps: ", "and 11 more");
        Path none = fewPatches("none.ti3", "100 0 0 0", "0 100 0 0", "0 0 100 0", "0 0 0 100");
        Run refused = Run.of("condition", none);
        assertThat(refused.code()).isEqualTo(1);
        assertThat(refused.err()).contains("none.ti3 has no patch of the unprinted paper");
    }

    @Test
    void seven_inks_without_their_overprints_make_a_model_whose_gaps_do_not_fill_the_screen() throws IOException {
        StringBuilder text = new StringBuilder("BEGIN_DATA_FORMAT\nSAMPLE_ID");
        for (int i = 1; i <= 7; i++) {
            text.append(" 7CLR_").append(i);
        }
        text.append(" LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\nP 0 0 0 0 0 0 0 95 0 -2\n");
        for (int i = 0; i < 7; i++) {
            for (int tint : new int[] {50, 100}) {
                text.append('S').append(i).append('_').append(tint);
                for (int k = 0; k < 7; k++) {
                    text.append(' ').append(k == i ? tint : 0);
                }
                double a = tint * 0.6 * Math.cos(i);
                double b = tint * 0.6 * Math.sin(i);
                text.append(" " + (95 - 0.4 * tint) + " " + a + " " + b + "\n");
            }
        }
        Path seven = Files.writeString(folder.resolve("seven.txt"), text + "END_DATA\n");
        JsonNode read = json(Run.of("condition", seven, "--json"));
        assertThat(read.get("inks")).hasSize(7);
        assertThat(read.get("gaps")).hasSize(128 - 8);
        assertThat(read.get("primaries")).hasSize(127);
        for (JsonNode primary : read.get("primaries")) {
            assertThat(primary.get("lab").get(0).asDouble()).isBetween(0.5, 95.0);
        }
        Run words = Run.of("condition", seven);
        assertThat(words.out())
                .contains("Ink 1 + Ink 2 from its inks as filters", "104 more such gaps; --json tells all");
        assertThat(words.out().lines().count()).isLessThan(60);
        Run asCondition = Run.of("inks", "demo/regatta-poster.pdf", "--condition", seven);
        assertThat(asCondition.code()).isEqualTo(1);
        assertThat(asCondition.err()).contains("seven.txt is data of Ink 1, ").contains("CMYK_C");
    }

    private Path fewPatches(String name, String... tints) throws IOException {
        Characterisation data = PrintConditions.bundledData("FOGRA39L");
        StringBuilder text =
                new StringBuilder("DESCRIPTOR few\nBEGIN_DATA_FORMAT\nCMYK_C CMYK_M CMYK_Y CMYK_K LAB_L LAB_A"
                        + " LAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n");
        for (String row : tints) {
            double[] shares = java.util.Arrays.stream(row.split(" "))
                    .mapToDouble(t -> Double.parseDouble(t) / 100)
                    .toArray();
            // the data has no 50 %; a step of about that
            Lab lab = row.startsWith("50") ? data.find(0.4, 0, 0, 0) : data.find(shares);
            text.append(row + " " + lab.L() + " " + lab.a() + " " + lab.b() + "\n");
        }
        return Files.writeString(folder.resolve(name), text.append("END_DATA\n"));
    }

    @Test
    void condition_refuses_what_is_no_data_with_its_name() throws IOException {
        Path bad = Files.writeString(folder.resolve("bad.txt"), "NUMBER_OF_SETS 2\nBEGIN_DATA_FORMAT\nCMYK_C\n");
        Run run = Run.of("condition", bad);
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.err()).contains("bad.txt").contains("END_DATA_FORMAT").doesNotContain("Exception");
        assertThat(Run.of("condition", "no-such-file").code()).isEqualTo(1);
        assertThat(Run.of("condition").code()).isEqualTo(2);
    }

    @Test
    void patch_gives_the_datas_own_colour_on_the_datas_own_paper() throws IOException {
        JsonNode patch =
                json(Run.of("patch", "--on", "coated-white", "--ink", "cyan=100", "--ink", "Magenta=100", "--json"));
        assertThat(patch.get("lab").get(0).asDouble()).isCloseTo(24, within(0.05));
        assertThat(patch.get("lab").get(1).asDouble()).isCloseTo(22, within(0.05));
        assertThat(patch.get("lab").get(2).asDouble()).isCloseTo(-46, within(0.05));
        // (22, −46): √(22² + 46²) and 360° − arctan(46 / 22), by hand
        assertThat(patch.get("chroma").asDouble()).isCloseTo(50.99, within(0.1));
        assertThat(patch.get("hueDegrees").asDouble()).isCloseTo(295.56, within(0.1));
        assertThat(patch.get("expectedError").get("meanDe00").asDouble()).isLessThan(0.6);
        assertThat(patch.get("inks").get(0).get("source").asText()).contains("FOGRA39L");
    }

    @Test
    void patch_says_where_each_colour_comes_from_and_what_to_expect() {
        Run run = Run.of("patch", "--on", "tee-navy", "--ink", "Reach Red=100", "--ink", "White=100");
        assertThat(run.code()).isZero();
        assertThat(run.out())
                .contains("Reach Red", "unknown: the file states no colour", "assumed white ink")
                .contains("expected error")
                .contains("Not a contract proof");
    }

    @Test
    void patch_takes_a_users_ink_before_anything_else() throws IOException {
        Path library = Files.writeString(
                folder.resolve("inks.json"),
                "{\"inks\": [{\"name\": \"Reach Red\", \"lab\": [45, 60, 35], \"opacity\": 1, \"source\": \"my eye\"}]}");
        JsonNode patch =
                json(Run.of("patch", "--on", "tee-navy", "--ink", "Reach Red=100", "--inks", library, "--json"));
        assertThat(patch.get("lab").get(1).asDouble()).isCloseTo(60, within(0.01));
        assertThat(patch.get("inks").get(0).get("source").asText())
                .contains("inks.json")
                .contains("my eye");
    }

    @Test
    void patch_reads_both_kinds_of_lines() throws IOException {
        String[] on = {"patch", "--on", "coated-white", "--json"};
        JsonNode table = json(Run.reading("C,M,\"Reach, Red\"\n100,100,0\n0,0,0\n", (Object[]) on));
        JsonNode pairs = json(Run.reading("Cyan=100,Magenta=100\n", (Object[]) on));
        assertThat(table).hasSize(2);
        assertThat(table.get(0).get("lab")).isEqualTo(pairs.get(0).get("lab"));
        assertThat(table.get(1).get("lab").get(0).asDouble()).isCloseTo(95, within(0.01));
        assertThat(table.get(0).get("inks").get(2).get("name").asText()).isEqualTo("Reach, Red");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "C,M\n1\n", "C,C\n1,2\n", "C\n101\n", "C=10,C=20\n", "C\nNaN\n", "\"C\n", ",M\n1,2"})
    void patch_refuses_bad_lines_with_their_number(String text) {
        Run run = Run.reading(text, "patch", "--on", "coated-white");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err().toLowerCase()).contains("standard input");
    }

    @Test
    void white_beneath_lifts_a_colour_on_dark_cloth_and_a_second_hit_lifts_it_further() throws IOException {
        double bare = lightness();
        double half = lightness("--underbase-tint", "50");
        double once = lightness("--underbase");
        double twice = lightness("--underbase-hits", "2");
        assertThat(half).isGreaterThan(bare + 5);
        assertThat(once).isGreaterThan(half + 5);
        assertThat(twice).isGreaterThan(once + 1);
        assertThat(lightness("--underbase-not-under", "Yellow")).isEqualTo(bare);
        assertThat(lightness("--underbase-under", "Yellow")).isEqualTo(once);
    }

    private static double lightness(String... options) throws IOException {
        List<Object> words = new ArrayList<>(List.of("patch", "--on", "tee-navy", "--ink", "Y=100", "--json"));
        words.addAll(List.of(options));
        return json(Run.of(words.toArray())).get("lab").get(0).asDouble();
    }

    @Test
    void dyes_are_pure_filters_of_the_cloth_and_have_no_white() throws IOException {
        JsonNode dye = json(Run.of(
                "patch",
                "--on",
                "tee-white",
                "--process",
                "sublimation",
                "--ink",
                "Red=100",
                "--ink",
                "White=100",
                "--json"));
        assertThat(dye.get("inks").findValues("opacity")).allMatch(o -> o.asDouble() == 0);
        assertThat(dye.get("inks").toString()).contains("prints nothing: the print process has no white ink");
        JsonNode alone =
                json(Run.of("patch", "--on", "tee-white", "--process", "sublimation", "--ink", "Red=100", "--json"));
        assertThat(dye.get("lab")).isEqualTo(alone.get("lab"));
        assertThat(Run.of("patch", "--on", "tee-navy", "--process", "sublimation", "--underbase", "--ink", "C=9")
                        .err())
                .contains("no white ink");
        assertThat(Run.of("patch", "--on", "coated-white", "--process", "sublimation", "--ink", "C=9")
                        .err())
                .contains("does not print on");
    }

    @Test
    void a_proof_for_a_screen_carries_its_profile_and_is_in_its_colours() throws Exception {
        byte[] profile = TestProfile.rgbMatrix2();
        Path icc = Files.write(folder.resolve("screen.icc"), profile);
        Path png = folder.resolve("proof.png");
        Run run = Run.of(
                "proof",
                "demo/regatta-shirt.pdf",
                "--on",
                "tee-red",
                "--without-layer",
                "Shirt colour (preview)",
                "--dpi",
                "20",
                "--screen",
                icc,
                "--out",
                png);
        assertThat(run.err()).isEmpty();
        assertThat(chunk(png, "sRGB")).isNull();
        byte[] carried = chunk(png, "iCCP");
        int name = new String(carried, java.nio.charset.StandardCharsets.ISO_8859_1).indexOf(0);
        try (var inflater = new java.util.zip.InflaterInputStream(
                new java.io.ByteArrayInputStream(carried, name + 2, carried.length - name - 2))) {
            assertThat(inflater.readAllBytes()).isEqualTo(profile);
        }
        Lab cloth = Substrates.load().byId("tee-red").orElseThrow().lab();
        double[] xyz = Cie.labToXyz(cloth);
        java.awt.image.BufferedImage picture = javax.imageio.ImageIO.read(png.toFile());
        int[] corner = picture.getRaster().getPixel(1, 1, (int[]) null); // as stored, not turned to sRGB
        int expected = DisplayProfile.of(profile, "screen").toArgb(xyz[0], xyz[1], xyz[2]);
        assertThat(0xff000000 | corner[0] << 16 | corner[1] << 8 | corner[2]).isEqualTo(expected);
        assertThat(expected).isNotEqualTo(DisplayProfile.SRGB.toArgb(xyz[0], xyz[1], xyz[2]));
        Run wrong = Run.of(
                "proof",
                "demo/regatta-shirt.pdf",
                "--on",
                "tee-red",
                "--screen",
                png,
                "--out",
                folder.resolve("b.png"));
        assertThat(wrong.code()).isEqualTo(1);
        assertThat(wrong.err()).contains("proof.png").contains("no usable profile");
    }

    private static byte[] chunk(Path png, String type) throws IOException {
        java.nio.ByteBuffer in =
                java.nio.ByteBuffer.wrap(Files.readAllBytes(png)).position(8);
        while (in.remaining() >= 12) {
            byte[] data = new byte[in.getInt()];
            byte[] name = new byte[4];
            in.get(name).get(data).getInt();
            if (new String(name, java.nio.charset.StandardCharsets.US_ASCII).equals(type)) {
                return data;
            }
        }
        return null;
    }

    @Test
    void a_process_that_lays_its_own_white_does_so_unasked() throws IOException {
        assertThat(lightness("--process", "transfer-film")).isGreaterThan(lightness() + 20);
    }

    @Test
    void an_underbase_for_an_ink_that_is_not_there_is_refused_with_the_inks_that_are() {
        Run run = Run.of("patch", "--on", "tee-navy", "--ink", "C=10", "--underbase-not-under", "Blakc");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.err()).contains("'Blakc'").contains("Cyan");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "patch --on tee-navy --ink C=1 --underbase-tint 0",
                "patch --on tee-navy --ink C=1 --underbase-tint 101",
                "patch --on tee-navy --ink C=1 --underbase-hits 0",
                "patch --on tee-navy --ink C=1 --underbase-hits 9",
                "patch --on tee-navy --ink C=1 --underbase-choke 6",
                "patch --on tee-navy --ink C=1 --underbase-choke NaN",
                "patch --on tee-navy --ink C=1 --underbase-choke 1 --underbase-spread 1",
                "patch --on tee-navy --ink C=1 --underbase-under Cyan --underbase-not-under Cyan",
                "patch --on tee-navy --ink C=1 --process letterpress",
                "patch --ink C=1",
                "patch --on no-such-paper --ink C=1",
                "patch --on coated-white --ink C",
                "patch --on coated-white --ink C=101",
                "patch --on coated-white --ink C=1 --ink Cyan=2",
                "condition FOGRA39L extra"
            })
    void wrong_usage_is_one_line_and_exit_two(String words) {
        Run run = Run.of((Object[]) words.split(" "));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err().lines()).hasSize(1);
    }

    // At 150 pixels an inch half an inch is 75 pixels, so that nothing of these fields is a part of one: 19.3548 cm²
    // and 6.4516
    // cm².
    private static final String FIELDS = "<svg xmlns='http://www.w3.org/2000/svg' width='6in' height='4in'"
            + " viewBox='0 0 12 8'><rect x='1' y='1' width='3' height='4' fill='%s'/>"
            + "<rect x='6' y='1' width='2' height='2' fill='#101010'/></svg>";

    @ParameterizedTest
    @CsvSource({"black-card, #60c8f0, 19.3548", "coated-white, #60c8f0, 0", "tee-navy, #f0e040, 19.3548"})
    void inks_tell_what_they_cannot_reach_on_a_substrate(String on, String colour, double cm2) throws Exception {
        Path art = Files.writeString(folder.resolve("fields.svg"), String.format(FIELDS, colour));
        JsonNode gamut = json(Run.of("inks", art, "--on", on, "--json"))
                .get("pages")
                .get(0)
                .get("gamut");
        assertThat(gamut.get("on").asText()).isEqualTo(on);
        assertThat(gamut.get("beyondReachCm2").asDouble()).isCloseTo(cm2, within(cm2 * 0.005 + 1e-9));
        assertThat(gamut.get("beyondReachShare").asDouble()).isCloseTo(cm2 / (24 * 6.4516), within(1e-4));
        assertThat(gamut.get("beyondScreenCm2").asDouble()).isZero();
        assertThat(gamut.get("worst")).hasSize(cm2 > 0 ? 1 : 0);
        if (cm2 > 0) {
            JsonNode worst = gamut.get("worst").get(0);
            assertThat(worst.get("areaCm2").asDouble()).isCloseTo(cm2, within(cm2 * 0.005));
            assertThat(worst.get("de00").asDouble()).isGreaterThan(3);
            double lighter = worst.get("askedLab").get(0).asDouble()
                    - worst.get("nearestLab").get(0).asDouble();
            assertThat(lighter).isPositive();
        }
        String words = Run.of("inks", art, "--on", on).out();
        assertThat(words).contains("cannot reach " + (cm2 > 0 ? "19.4" : "0.0") + " cm2", "Not a contract proof");
    }

    @Test
    void a_limit_of_reach_needs_a_substrate_and_a_number() throws Exception {
        Path art = Files.writeString(folder.resolve("fields.svg"), String.format(FIELDS, "#f0e040"));
        assertThat(Run.of("inks", art, "--limit", "2").code()).isEqualTo(2);
        assertThat(Run.of("inks", art, "--on", "tee-navy", "--limit", "-1").err())
                .contains("0 to 100");
        JsonNode all = json(Run.of("inks", art, "--on", "tee-navy", "--limit", "100", "--json"));
        assertThat(all.get("pages").get(0).get("gamut").get("beyondReachCm2").asDouble())
                .isZero();
    }

    private static JsonNode json(Run run) throws IOException {
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isZero();
        return new ObjectMapper().readTree(run.out());
    }
}
