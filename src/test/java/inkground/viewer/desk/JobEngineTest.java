package inkground.viewer.desk;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.app.OwnSubstrates;
import inkground.artwork.ColourAssignment;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.substrate.Substrate;
import inkground.substrate.Texture;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobEngineTest {
    private static final Path SHIRT = Path.of("demo", "regatta-shirt.pdf");

    @TempDir
    Path folder;

    @Test
    void whatIsAskedOfASubstrateIsAskedOfTheUsersOwnToo() throws Refusal {
        JobEngine engine = new JobEngine(Optional.empty(), new OwnSubstrates(folder));
        engine.substrates();
        SubstrateCard moss = engine.own()
                .add(new OwnSubstrates.Draft(
                        "Moss", Substrate.Kind.GARMENT, new Lab(40, -15, 25), "test", Texture.Kind.WOVEN));
        Cancel cancel = new Cancel();
        try (OpenFile file = engine.open(SHIRT, cancel, Progress.NONE)) {
            OpenPage page = file.page(1, ColourAssignment.NONE, cancel, Progress.NONE);
            assertThat(page.compare(page, moss.id(), 2, cancel, Progress.NONE).changed())
                    .isFalse();
            ColourAssignment proposed =
                    page.proposal(page.colours(cancel, Progress.NONE), moss.id(), cancel, Progress.NONE);
            assertThat(proposed.rules()).isNotEmpty();
        }
    }
}
