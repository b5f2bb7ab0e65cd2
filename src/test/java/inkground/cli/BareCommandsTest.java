package inkground.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bare colours on the command line, on the demo shirt: its painted-in ground is #1C304F. */
class BareCommandsTest {
    private static final String SHIRT = "demo/regatta-shirt.pdf";

    @TempDir
    Path folder;

    @Test
    void theShirtIsSeenWhereItsPaintedGroundWas() throws Exception {
        Path png = folder.resolve("shirt.png");
        Run run =
                Run.of("proof", SHIRT, "--on", "tee-red", "--bare", "#1C304F", "--dpi", "20", "--out", png.toString());
        assertThat(run.code()).as(run.err()).isZero();
        BufferedImage picture = ImageIO.read(png.toFile());
        int rgb = picture.getRGB(3, 3);
        assertThat(rgb >> 16 & 255).isGreaterThan(150); // red cloth
        assertThat(rgb & 255).isLessThan(80);
    }

    /** The filter mixes in linear light, as filters do where nothing is said. */
    @Test
    void aDarkGroundThatCastsAShadowIsStillFound() throws Exception {
        Path svg = Files.writeString(
                folder.resolve("shadow.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' width='20mm' height='20mm' viewBox='0 0 20 20'><filter id='s'>"
                        + "<feGaussianBlur in='SourceAlpha' stdDeviation='.5'/><feOffset dx='.5' dy='.5'/><feMerge>"
                        + "<feMergeNode/><feMergeNode in='SourceGraphic'/></feMerge></filter>"
                        + "<rect width='18' height='18' fill='#050A14' filter='url(#s)'/></svg>");
        Path png = folder.resolve("shadow.png");
        Run run = Run.of("proof", svg, "--on", "tee-red", "--bare", "#050A14", "--dpi", "100", "--out", png);
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(ImageIO.read(png.toFile()).getRGB(30, 30) >> 16 & 255)
                .as("red cloth")
                .isGreaterThan(150);
    }

    @Test
    void withTheGroundBareNoProcessInkIsLeft() throws Exception {
        Path rules = Files.writeString(
                folder.resolve("shirt.inkground.json"),
                "{\"version\": 1, \"rules\": [{\"from\": {\"kind\": \"seen\", \"colour\": \"#1C304F\","
                        + " \"toleranceDe00\": 1}, \"to\": {\"print\": \"bare\"}}]}");
        JsonNode inks = new ObjectMapper()
                .readTree(Run.of("inks", SHIRT, "--json", "--assign", rules.toString())
                        .out())
                .at("/pages/0/inks");
        assertThat(inks).hasSize(7);
        for (JsonNode ink : inks) {
            boolean process = ink.get("kind").asText().equals("process");
            assertThat(ink.get("coveredCm2").asDouble() > 0)
                    .as(ink.get("name").asText())
                    .isEqualTo(!process);
        }
    }

    @Test
    void aBareInkHasNoPlane() throws Exception {
        JsonNode inks = new ObjectMapper()
                .readTree(Run.of("inks", SHIRT, "--json", "--bare", "Reach Red").out())
                .at("/pages/0/inks");
        assertThat(inks.findValuesAsText("name")).doesNotContain("Reach Red").contains("Lock Gate Cream", "White");
    }

    @Test
    void aColourThatIsNotThereIsSaid() {
        Run run = Run.of("inks", SHIRT, "--bare", "#00FF00", "--bare", "Reach Rde");
        assertThat(run.code()).isZero();
        assertThat(run.out())
                .contains("nothing on this page is painted in #00FF00")
                .contains("the ink 'Reach Rde'");
    }

    @Test
    void theColoursOfTheShirtAreListedAndItsGroundIsFound() throws Exception {
        JsonNode root = new ObjectMapper()
                .readTree(Run.of("colours", SHIRT, "--on", "tee-navy", "--json").out());
        JsonNode ground = root.at("/grounds/0");
        assertThat(ground.get("seenAs").asText()).isEqualTo("#1C304F");
        assertThat(ground.get("reasons")).hasSize(3);
        assertThat(ground.get("objects").asInt()).isEqualTo(1);
        assertThat(ground.get("deletingUncoversCm2")).isEmpty();
        double sum = 0;
        assertThat(root.get("page").asInt()).isEqualTo(1);
        for (JsonNode colour : root.get("colours")) {
            sum += colour.get("visibleCm2").asDouble();
        }
        assertThat(sum).as("30 × 40 cm, all painted").isBetween(1198.0, 1202.0);
    }

    @Test
    void aProposalIsWrittenOnceAndTheProofIsMadeByIt() throws Exception {
        Path svg = Files.writeString(
                folder.resolve("badge.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' width='20mm' height='20mm' viewBox='0 0 20 20'>"
                        + "<rect width='20' height='20' fill='#1C304F'/><rect x='2' y='2' width='8' height='16' fill='#C5242E'/>"
                        + "<rect x='10' y='2' width='8' height='16' fill='#C6242E'/>"
                        + "<circle cx='10' cy='10' r='3' fill='#fff'/></svg>");
        Path rules = folder.resolve("badge.svg.inkground.json");
        Run proposed = Run.of("colours", svg, "--on", "tee-navy", "--propose", rules);
        assertThat(proposed.code()).as(proposed.err()).isZero();
        assertThat(proposed.out()).contains("proposed: ", "badge.svg.inkground.json: 4 rules; use them with --assign.");
        JsonNode kept = new ObjectMapper().readTree(Files.readString(rules)).get("rules");
        assertThat(kept.findValuesAsText("print")).containsExactlyInAnyOrder("bare", "ink", "ink", "white");
        Run again = Run.of("colours", svg, "--propose", rules);
        assertThat(again.code()).isEqualTo(1);
        assertThat(Run.of("colours", svg, "--on", "tee-navy", "--propose", rules, "--replace")
                        .code())
                .isZero();

        JsonNode inks = new ObjectMapper()
                .readTree(Run.of("inks", svg, "--json", "--assign", rules).out())
                .at("/pages/0/inks");
        List<String> painted = new ArrayList<>();
        for (JsonNode ink : inks) {
            if (ink.get("coveredCm2").asDouble() > 0) {
                painted.add(ink.get("kind").asText());
            }
        }
        assertThat(painted).as("both reds as one ink").containsExactlyInAnyOrder("spot", "white");

        Path png = folder.resolve("badge.png");
        Run proof = Run.of("proof", svg, "--on", "tee-navy", "--assign", rules, "--dpi", "254", "--out", png);
        assertThat(proof.code()).as(proof.err()).isZero();
        BufferedImage picture = ImageIO.read(png.toFile());
        int cloth = picture.getRGB(8, 8);
        int red = picture.getRGB(50, 100);
        int white = picture.getRGB(100, 100);
        assertThat(cloth & 255).as("navy cloth is bluer than red").isGreaterThan(cloth >> 16 & 255);
        assertThat(red >> 16 & 255).isGreaterThan((red & 255) + 60);
        assertThat(white >> 16 & 255).isGreaterThan(200);
    }

    @Test
    void deletingWhatIsNotTheGroundUncoversInk() throws Exception {
        JsonNode root = new ObjectMapper()
                .readTree(Run.of("colours", SHIRT, "--on", "tee-red", "--json").out());
        JsonNode red = root.at("/grounds/1");
        assertThat(red.get("colour").asText()).isEqualTo("Reach Red 100 %");
        assertThat(red.at("/deletingUncoversCm2/Lock Gate Cream").asDouble()).isGreaterThan(10);
    }

    @Test
    void aCleanFileIsWrittenOnceAndOverwrittenOnlyWhenAsked() throws Exception {
        String clean = folder.resolve("clean.pdf").toString();
        Run run = Run.of("knockout", SHIRT, "--bare", "#1C304F", "--out", clean);
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out()).contains("1 bare object taken out, 0 of them over other paint");
        assertThat(Run.of("knockout", SHIRT, "--bare", "#1C304F", "--out", clean)
                        .code())
                .isEqualTo(1);
        assertThat(Run.of("knockout", SHIRT, "--bare", "Reach Red", "--out", clean, "--replace")
                        .out())
                .contains("just deleting these 19 objects would uncover")
                .contains("of Lock Gate Cream");
        assertThat(Run.of("inks", clean).out()).doesNotContain("Reach Red        spot           254");
    }

    @Test
    void whatIsNotThereCannotBeKnockedOut() throws Exception {
        Path clean = folder.resolve("clean.pdf");
        Run run = Run.of("knockout", SHIRT, "--bare", "Reach Rde", "--out", clean.toString());
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.err()).contains("nothing is painted in the colours named as bare");
        assertThat(Files.exists(clean)).isFalse();
        assertThat(Run.of("knockout", SHIRT, "--out", clean.toString()).code()).isEqualTo(2);
    }
}
