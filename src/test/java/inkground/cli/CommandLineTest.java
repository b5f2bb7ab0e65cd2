package inkground.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import inkground.base.Cancel;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CommandLineTest {
    private static final Path SHIRT = Path.of("demo", "regatta-shirt.pdf");
    private static final Path POSTER = Path.of("demo", "regatta-poster.pdf");

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "view",
                "inks",
                "colours",
                "knockout",
                "separate",
                "proof",
                "lineup",
                "approve",
                "compare",
                "substrates",
                "demo"
            })
    void everyCommandExplainsItself(String command) {
        Run run = Run.of(command, "--help");
        assertThat(run.code()).isZero();
        assertThat(run.out()).startsWith("Usage: inkground " + command).contains("--verbose");
        assertThat(run.err()).isEmpty();
    }

    @Test
    void theProgramListsItsCommandsAndExitCodes() {
        Run run = Run.of("--help");
        assertThat(run.code()).isZero();
        assertThat(run.out())
                .contains("view", "inks", "separate", "proof", "substrates")
                .contains("findings, or a file was refused");
    }

    @Test
    void theProgramTellsItsVersion() {
        Run run = Run.of("--version");
        assertThat(run.code()).isZero();
        assertThat(run.out()).startsWith("Inkground ");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "paint",
                "inks",
                "inks demo/regatta-shirt.pdf --page none",
                "inks demo/regatta-shirt.pdf --page 0",
                "separate demo/regatta-shirt.pdf",
                "separate demo/regatta-shirt.pdf --out x --box sleeve",
                "separate demo/regatta-shirt.pdf --out x --dpi 0",
                "separate demo/regatta-shirt.pdf --out x --dpi NaN",
                "proof demo/regatta-shirt.pdf --out x.png",
                "proof demo/regatta-shirt.pdf --out x.png --on no-such-cloth",
                "substrates extra"
            })
    void wrongUsageIsOneLineAndExitTwo(String words) {
        Run run = Run.of((Object[]) (words.isEmpty() ? new String[0] : words.split(" ")));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).hasSize(1).first().asString().startsWith("inkground: ");
        assertThat(Path.of("x")).doesNotExist();
    }

    @Test
    void inksListsEveryInkWithItsKindAndCover() throws IOException {
        Run run = Run.of("inks", SHIRT, "--json");
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isZero();
        JsonNode page = json(run).get("pages").get(0);
        assertThat(page.get("page").asInt()).isEqualTo(1);
        assertThat(page.get("trimWidthMm").asDouble()).isEqualTo(300, org.assertj.core.data.Offset.offset(.01));
        assertThat(page.get("trimHeightMm").asDouble()).isEqualTo(400, org.assertj.core.data.Offset.offset(.01));
        assertThat(inkKinds(page))
                .contains("Reach Red spot", "Lock Gate Cream spot", "White white", "Cyan process", "Black process");
        for (JsonNode ink : page.get("inks")) {
            assertThat(ink.get("coveredCm2").asDouble()).isBetween(1.0, 1200.0);
            assertThat(ink.get("meanTint").asDouble()).isBetween(.001, 1.0);
        }
    }

    @Test
    void inksAsWordsNamesTheSameInks() {
        Run run = Run.of("inks", SHIRT);
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("300", "400", "Reach Red", "Lock Gate Cream", "White", "spot");
    }

    @Test
    void substratesAreAJsonArrayOfPapersAndGarments() throws IOException {
        Run run = Run.of("substrates", "--json");
        assertThat(run.code()).isZero();
        List<String> kinds = new ArrayList<>();
        for (JsonNode substrate : json(run)) {
            assertThat(substrate.get("id").asText()).isNotBlank();
            assertThat(substrate.get("name").asText()).isNotBlank();
            assertThat(substrate.get("source").asText()).isNotBlank();
            assertThat(substrate.get("lab")).hasSize(3);
            kinds.add(substrate.get("kind").asText());
        }
        assertThat(kinds.stream().filter("paper"::equals).count()).isGreaterThanOrEqualTo(4);
        assertThat(kinds.stream().filter("garment"::equals).count()).isGreaterThanOrEqualTo(16);
        assertThat(kinds).containsOnly("paper", "garment");
    }

    @Test
    void separateWritesOnePlaneAnInkAndAListOfThem() throws IOException {
        Run run = Run.of("separate", SHIRT, "--dpi", 30, "--out", folder.resolve("planes"));
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isZero();
        JsonNode list = new ObjectMapper()
                .readTree(folder.resolve("planes/separations.json").toFile());
        assertThat(list.get("page").asInt()).isEqualTo(1);
        assertThat(list.get("dpi").asDouble()).isEqualTo(30);
        assertThat(list.get("widthPx").asInt()).isEqualTo(354);
        assertThat(list.get("heightPx").asInt()).isEqualTo(472);
        assertThat(list.get("planes")).hasSizeGreaterThanOrEqualTo(3);
        for (JsonNode plane : list.get("planes")) {
            BufferedImage image = ImageIO.read(
                    folder.resolve("planes").resolve(plane.get("file").asText()).toFile());
            assertThat(image.getWidth()).isEqualTo(354);
            assertThat(image.getRaster().getNumBands()).isEqualTo(1);
            // 255 is no ink: the mean of the picture and the mean tint must add up to one.
            assertThat(1 - mean(image) / 255)
                    .isEqualTo(plane.get("meanTint").asDouble(), org.assertj.core.data.Offset.offset(.002));
        }
    }

    @Test
    void proofShowsTheGarmentAndKeepsWhatIsThereUnlessTold() throws IOException {
        Path out = folder.resolve("proof.png");
        String garment = garment();
        Run first = Run.of("proof", SHIRT, "--on", garment, "--dpi", 20, "--out", out);
        assertThat(first.err()).isEmpty();
        assertThat(first.code()).isZero();
        assertThat(first.out()).contains("colour of Reach Red: Lab value in the file");
        assertThat(ImageIO.read(out.toFile()).getWidth()).isEqualTo(236);
        byte[] before = Files.readAllBytes(out);

        Run second = Run.of("proof", SHIRT, "--on", garment, "--dpi", 30, "--out", out);
        assertThat(second.code()).isEqualTo(1);
        assertThat(second.err()).contains("--replace");
        assertThat(Files.readAllBytes(out)).isEqualTo(before);

        assertThat(Run.of("proof", SHIRT, "--on", garment, "--dpi", 30, "--out", out, "--replace")
                        .code())
                .isZero();
        assertThat(Files.readAllBytes(out)).isNotEqualTo(before);
    }

    @Test
    void proofTakesASubstrateFromAFileOfTheUsersOwn() throws IOException {
        Path file = Files.writeString(
                folder.resolve("moss.json"),
                """
                {"id": "moss", "name": "Moss tee", "kind": "garment", "lab": [40, -20, 25], "source": "measured",
                 "texture": {"kind": "jersey", "strength": 0, "seed": 1},
                 "printAreas": [{"name": "front", "widthMm": 300, "heightMm": 400}],
                 "hidingPower": 0.8, "underbaseAdvised": true, "order": 0, "notes": []}
                """);
        Path out = folder.resolve("moss.png");
        Run run = Run.of(
                "proof", SHIRT, "--on", file, "--without-layer", "Shirt colour (preview)", "--dpi", 20, "--out", out);
        assertThat(run.err()).isEmpty();
        assertThat(run.out()).contains("on Moss tee");
        int corner = ImageIO.read(out.toFile()).getRGB(1, 1);
        assertThat(corner).isEqualTo(inkground.colour.Srgb.labToArgb(new inkground.colour.Lab(40, -20, 25)));

        Files.writeString(file, Files.readString(file).replace("garment", "shoe"));
        Run wrong = Run.of("proof", SHIRT, "--on", file, "--dpi", 20, "--out", out, "--replace");
        assertThat(wrong.code()).isEqualTo(1);
        assertThat(wrong.err()).contains("moss.json, field 'kind'").hasLineCount(1);
    }

    @Test
    void aLayerSwitchedOffIsNotOnTheProof() throws IOException {
        Path with = folder.resolve("with.png");
        Path without = folder.resolve("without.png");
        String garment = garment();
        Run.of("proof", SHIRT, "--on", garment, "--dpi", 10, "--out", with);
        Run run = Run.of(
                "proof",
                SHIRT,
                "--on",
                garment,
                "--dpi",
                10,
                "--without-layer",
                "Shirt colour (preview)",
                "--out",
                without);
        assertThat(run.err()).isEmpty();
        assertThat(ImageIO.read(with.toFile()).getRGB(3, 3))
                .isNotEqualTo(ImageIO.read(without.toFile()).getRGB(3, 3));
        Run unknown =
                Run.of("proof", SHIRT, "--on", garment, "--without-layer", "Sleeve", "--out", folder.resolve("no.png"));
        assertThat(unknown.code()).isEqualTo(1);
        assertThat(unknown.err()).contains("Shirt colour (preview)");
    }

    @Test
    void whatIsNotAPdfIsRefusedInOneLineAndLeavesNothing() throws IOException {
        Path text = Files.writeString(folder.resolve("letter.pdf"), "Dear rowing club,\n".repeat(40));
        Path damaged =
                Files.write(folder.resolve("damaged.pdf"), java.util.Arrays.copyOf(Files.readAllBytes(SHIRT), 4000));
        Path empty = Files.createFile(folder.resolve("empty.pdf"));
        for (Path file : List.of(text, damaged, empty, folder.resolve("missing.pdf"), folder)) {
            for (Run run : List.of(
                    Run.of("inks", file),
                    Run.of("separate", file, "--out", folder.resolve("out")),
                    Run.of("proof", file, "--on", garment(), "--out", folder.resolve("out.png")))) {
                assertThat(run.code()).as(run.err()).isEqualTo(1);
                assertThat(run.out()).isEmpty();
                assertThat(run.err().lines()).as(run.err()).hasSize(1);
                assertThat(run.err()).doesNotContain("Exception", "\tat ");
            }
        }
        assertThat(folder.resolve("out.png")).doesNotExist();
        assertThat(files(folder)).hasSize(3);
    }

    @Test
    void aPageThatIsNotThereIsRefused() {
        Run run = Run.of("inks", POSTER, "--page", 7);
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err()).contains("7");
    }

    @Test
    void cancelledWorkLeavesNothing() throws IOException {
        Cancel cancel = new Cancel();
        cancel.request();
        Run run = Run.of(cancel, "separate", SHIRT, "--dpi", 30, "--out", folder.resolve("planes"));
        assertThat(run.code()).isEqualTo(130);
        assertThat(run.err().lines()).hasSize(1);
        assertThat(files(folder)).isEmpty();
    }

    @Test
    void theDemoWithoutAScreenWritesProofsAndSaysWhere() throws IOException {
        Run run = Run.of("demo", "--dpi", 20, "--proofs", "--out", folder.resolve("proofs"));
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).isZero();
        List<Path> proofs = files(folder.resolve("proofs"));
        assertThat(proofs).hasSizeGreaterThanOrEqualTo(4);
        for (Path proof : proofs) {
            assertThat(run.out()).contains(proof.getFileName().toString());
            assertThat(ImageIO.read(proof.toFile()).getHeight()).isGreaterThan(300);
        }
    }

    @Test
    void controlCharactersFromFilesNeverReachTheTerminal() {
        assertThat(Console.printable("Red\u001b[2Jink\nnext\u202e")).isEqualTo("Red\uFFFD[2Jink\uFFFDnext\uFFFD");
    }

    private static String garment() throws IOException {
        for (JsonNode substrate : json(Run.of("substrates", "--json"))) {
            if (substrate.get("kind").asText().equals("garment")) {
                return substrate.get("id").asText();
            }
        }
        throw new AssertionError("no garment");
    }

    private static List<String> inkKinds(JsonNode page) {
        List<String> all = new ArrayList<>();
        page.get("inks")
                .forEach(ink ->
                        all.add(ink.get("name").asText() + " " + ink.get("kind").asText()));
        return all;
    }

    private static JsonNode json(Run run) throws IOException {
        return new ObjectMapper().readTree(run.out().getBytes(StandardCharsets.UTF_8));
    }

    private static double mean(BufferedImage image) {
        double sum = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                sum += image.getRaster().getSample(x, y, 0);
            }
        }
        return sum / image.getWidth() / image.getHeight();
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile).toList();
        }
    }
}
