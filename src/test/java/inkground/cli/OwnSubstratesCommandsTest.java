package inkground.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import inkground.app.OwnSubstrates;
import inkground.colour.Lab;
import inkground.substrate.Substrate;
import inkground.substrate.Texture;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Papers and garments that the user keeps in a folder of their own, on the command line. */
class OwnSubstratesCommandsTest {
    private static final String SHIRT = "demo/regatta-shirt.pdf";

    @TempDir
    Path folder;

    private String before;

    @BeforeEach
    void keepOne() throws Exception {
        before = System.setProperty(OwnSubstrates.FOLDER_PROPERTY, folder.toString());
        new OwnSubstrates(folder)
                .add(
                        new OwnSubstrates.Draft(
                                "Moss", Substrate.Kind.GARMENT, new Lab(40, -15, 25), "measured", Texture.Kind.WOVEN),
                        Set.of());
    }

    @AfterEach
    void asBefore() {
        System.setProperty(OwnSubstrates.FOLDER_PROPERTY, before);
    }

    @Test
    void theyAreListedAfterTheProgramsOwn() throws Exception {
        JsonNode all =
                new ObjectMapper().readTree(Run.of("substrates", "--json").out());
        JsonNode last = all.get(all.size() - 1);
        assertThat(last.get("id").asText()).isEqualTo("moss");
        assertThat(last.get("own").asBoolean()).isTrue();
        assertThat(all.get(0).get("own").asBoolean()).isFalse();
        assertThat(Run.of("substrates").out().lines().reduce((a, b) -> b).orElseThrow())
                .contains("moss", "Moss");
    }

    @Test
    void theyAreFoundByIdWhereverASubstrateIsNamed() throws Exception {
        String out = folder.resolve("proof.png").toString();
        Run proof = Run.of("proof", SHIRT, "--on", "moss", "--dpi", "20", "--out", out);
        assertThat(proof.code()).as(proof.err()).isZero();
        assertThat(proof.out()).contains("on Moss");
        for (List<Object> words : List.<List<Object>>of(
                List.of("patch", "--on", "moss", "--ink", "Cyan=100"),
                List.of("colours", SHIRT, "--on", "moss"),
                List.of("compare", SHIRT, SHIRT, "--on", "moss"),
                List.of("lineup", SHIRT, "--on", "moss,tee-navy", "--out", folder.resolve("sheet.png")))) {
            Run run = Run.of(words.toArray());
            assertThat(run.code()).as(words + run.err()).isZero();
        }
    }

    @Test
    void filesThatClashOrCannotBeReadAreSaidAndCostThemselves() throws Exception {
        Files.writeString(folder.resolve("broken.json"), "{");
        Files.writeString(
                folder.resolve("tee-navy.json"),
                Files.readString(folder.resolve("moss.json")).replace("\"moss\"", "\"tee-navy\""));
        Run run = Run.of("substrates");
        assertThat(run.code()).isZero();
        assertThat(run.err()).contains("broken.json", "a substrate of the program has the id 'tee-navy'");
        assertThat(run.out().lines().filter(line -> line.strip().startsWith("tee-navy ")))
                .hasSize(1);
        assertThat(run.out()).contains("moss");
    }
}
