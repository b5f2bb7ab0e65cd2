package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.Family;
import inkground.artwork.ColourAssignment.InkAt;
import inkground.artwork.ColourAssignment.InkNamed;
import inkground.artwork.ColourAssignment.Process;
import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourAssignment.Seen;
import inkground.artwork.ColourAssignment.Stated;
import inkground.artwork.ColourAssignment.WhiteInk;
import inkground.base.Refusal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AssignmentFileTest {
    @TempDir
    Path folder;

    @Test
    void whatIsSavedIsReadBack() throws Refusal {
        ColourAssignment assignment = new ColourAssignment(List.of(
                new Rule(new Seen(0x1c304f, 2.5), new Bare()),
                new Rule(new InkNamed("Lock Gate Cream"), new InkAt("Club Cream", 0.8)),
                new Rule(new Stated(Family.LAB, List.of(50.0, -20.0, 30.0)), new Process()),
                new Rule(new Stated(Family.CMYK, List.of(0.0, 0.0, 0.0, 0.0)), new WhiteInk())));
        Path file = folder.resolve("shirt.inkground.json");
        AssignmentFile.save(assignment, file, false);
        assertThat(SessionFile.load(file).arrangement().assignment()).isEqualTo(assignment);
        assertThatThrownBy(() -> AssignmentFile.save(assignment, file, false)).isInstanceOf(Refusal.class);
    }

    @Test
    void theFileLiesBesideTheArtwork() {
        assertThat(AssignmentFile.beside(Path.of("a", "shirt.v2.pdf")))
                .isEqualTo(Path.of("a", "shirt.v2.pdf.inkground.json"));
    }

    @Test
    void aFileUnderTheNameThatAllKindsOnceSharedIsFoundUntilThereIsAnOwnOne() throws Exception {
        Path pdf = folder.resolve("shirt.v2.pdf");
        Path own = folder.resolve("shirt.v2.pdf.inkground.json");
        assertThat(AssignmentFile.foundBeside(pdf)).isEqualTo(own);
        Path shared = Files.writeString(folder.resolve("shirt.v2.inkground.json"), "");
        assertThat(AssignmentFile.foundBeside(pdf)).isEqualTo(shared);
        assertThat(AssignmentFile.foundBeside(folder.resolve("shirt.v2.svg"))).isEqualTo(shared);
        Files.writeString(own, "");
        assertThat(AssignmentFile.foundBeside(pdf)).isEqualTo(own);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{\"version\": 1} | field 'rules'",
                "{\"version\": 2, \"rules\": []} | field 'version'",
                "{\"version\": 1, \"rules\": [{\"from\": {\"kind\": \"seen\", \"colour\": \"red\", \"toleranceDe00\": 1},"
                        + " \"to\": {\"print\": \"bare\"}}]} | field 'rules[0].from.colour'",
                "{\"version\": 1, \"rules\": [{\"from\": {\"kind\": \"ink\", \"name\": \"A\"},"
                        + " \"to\": {\"print\": \"gone\"}}]} | field 'rules[0].to.print'",
                "{\"version\": 1, \"rules\": [{\"from\": {\"kind\": \"ink\", \"name\": \"A\"},"
                        + " \"to\": {\"print\": \"ink\", \"name\": \"B\", \"tint\": 2}}]} | field 'rules[0].to.tint'",
                "{\"version\": 1, \"rules\": [{\"from\": {\"kind\": \"stated\", \"space\": \"rgb\", \"components\": [0, 1]},"
                        + " \"to\": {\"print\": \"bare\"}}]} | field 'rules[0].from.components'",
                "{\"version\": 1, \"rules\": [], \"colour\": 1} | field 'colour'",
                "{\"version\": 1, \"rules\": [ | this is not JSON"
            })
    void aWrongFileIsRefusedByFileAndField(String text, String said) throws Exception {
        Path file = Files.writeString(folder.resolve("wrong.inkground.json"), text);
        assertThatThrownBy(() -> SessionFile.load(file).arrangement().assignment())
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("wrong.inkground.json")
                .hasMessageContaining(said);
    }

    @Test
    void nominatedColoursAndInksAreToldApart() throws Refusal {
        assertThat(AssignmentFile.nominated("#1C304F")).isEqualTo(new Seen(0x1c304f, 1));
        assertThat(AssignmentFile.nominated("#1c304f~2.5")).isEqualTo(new Seen(0x1c304f, 2.5));
        assertThat(AssignmentFile.nominated("Reach Red")).isEqualTo(new InkNamed("Reach Red"));
        for (String wrong : List.of("#12345", "#1C304F~", "#1C304F~99", " ")) {
            assertThatThrownBy(() -> AssignmentFile.nominated(wrong)).isInstanceOf(Refusal.class);
        }
    }
}
