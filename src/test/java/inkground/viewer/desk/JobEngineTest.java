package inkground.viewer.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.app.Arrangement;
import inkground.app.OwnSubstrates;
import inkground.artwork.ColourAssignment;
import inkground.artwork.Layer;
import inkground.artwork.PageBox;
import inkground.artwork.PictureSize;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.garment.Placement;
import inkground.substrate.Substrate;
import inkground.substrate.Texture;
import inkground.viewer.state.Look;
import inkground.viewer.state.ProofEngine.ApproveRequest;
import inkground.viewer.state.ProofEngine.ApprovedAs;
import inkground.viewer.state.ProofEngine.CompareRequest;
import inkground.viewer.state.ProofEngine.Earlier;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.SubstrateCard;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
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
            Look look = new Look(
                    moss.id(), Set.of(0, 1), page.printOrder(), Map.of(), Optional.empty(), Optional.empty(), -1);
            CompareRequest same = new CompareRequest(page, look, true, on(page), Placement.USUAL, 2);
            assertThat(page.compare(same, cancel, Progress.NONE).changed()).isFalse();
            ColourAssignment proposed =
                    page.proposal(page.colours(cancel, Progress.NONE), moss.id(), cancel, Progress.NONE);
            assertThat(proposed.rules()).isNotEmpty();
        }
    }

    private static Set<Integer> on(OpenPage page) {
        return page.layers().stream().filter(Layer::on).map(Layer::id).collect(Collectors.toSet());
    }

    @Test
    void anEarlierRevisionIsAsLargeAsTheArtworkWasMadeUnlessItsFileHasTheSayAlone() throws Exception {
        JobEngine engine = new JobEngine(Optional.empty(), new OwnSubstrates(folder));
        Path logo = folder.resolve("logo.png");
        ImageIO.write(new BufferedImage(60, 30, BufferedImage.TYPE_INT_RGB), "png", logo.toFile());
        assertThat(widthMm(engine, logo, PictureSize.STATED)).isCloseTo(5.08, within(0.01));
        assertThat(widthMm(engine, logo, PictureSize.wide(280, "a width"))).isCloseTo(280, within(0.01));
        assertThat(widthMm(engine, SHIRT, PictureSize.wide(280, "a width"))).isCloseTo(300, within(0.01));
    }

    @Test
    void anEarlierRevisionIsOpenedOnceInTheSizeChosen() throws Exception {
        JobEngine engine = new JobEngine(Optional.empty(), new OwnSubstrates(folder));
        Path logo = folder.resolve("logo.png");
        ImageIO.write(new BufferedImage(60, 30, BufferedImage.TYPE_INT_RGB), "png", logo.toFile());
        List<String> opened = new ArrayList<>();
        Progress heard = (what, share) -> {
            if (share == 0 && what.startsWith("opening ")) {
                opened.add(what);
            }
        };
        engine.earlier(logo, PictureSize.wide(280), 1, new Cancel(), heard)
                .file()
                .close();
        assertThat(opened).containsExactly("opening logo.png");
    }

    private static double widthMm(JobEngine engine, Path earlier, PictureSize size) throws Refusal {
        Earlier opened = engine.earlier(earlier, size, 1, new Cancel(), Progress.NONE);
        try {
            return opened.page().info().box(PageBox.TRIM).widthMm();
        } finally {
            opened.file().close();
        }
    }

    @Test
    void whatWasApprovedIsPaintedAsItWasWhateverLookIsAskedFor() throws Refusal {
        JobEngine engine = new JobEngine(Optional.empty(), new OwnSubstrates(folder));
        engine.substrates();
        Cancel cancel = new Cancel();
        Path record = folder.resolve("shirt.approved.zip");
        Arrangement base = Arrangement.AS_FILED.over(Optional.of(Arrangement.WhiteBase.FULL));
        try (OpenFile file = engine.open(SHIRT, cancel, Progress.NONE)) {
            OpenPage page = file.page(1, ColourAssignment.NONE, cancel, Progress.NONE);
            file.approve(
                    new ApproveRequest(
                            1,
                            "tee-navy",
                            base,
                            Set.of("Cyan"),
                            Optional.of("screen printing"),
                            true,
                            on(page),
                            Optional.empty(),
                            Optional.of("Ada"),
                            record,
                            false),
                    cancel,
                    Progress.NONE);
            Earlier earlier = engine.earlier(record, PictureSize.STATED, 1, cancel, Progress.NONE);
            try (OpenFile kept = earlier.file()) {
                ApprovedAs approved = earlier.approved().orElseThrow();
                assertThat(approved.caption()).endsWith("by Ada");
                assertThat(approved.on().id()).isEqualTo("tee-navy");
                assertThat(kept.path()).hasFileName("regatta-shirt.pdf");
                Look other = new Look(
                        "tee-red", Set.of(0), page.printOrder(), Map.of(), Optional.empty(), Optional.empty(), -1);
                int[] cyan = new int[page.inks().size()];
                cyan[0] = 255;
                int[] bare = new int[page.inks().size()];
                var painter = earlier.page().painter(other);
                assertThat(painter.colour(bare)).isEqualTo(approved.on().argb());
                assertThat(painter.colour(cyan)).isEqualTo(painter.colour(bare));
                CompareRequest later = new CompareRequest(earlier.page(), other, true, on(page), Placement.USUAL, 2);
                assertThat(page.compare(later, cancel, Progress.NONE).arrangement())
                        .anyMatch(line -> line.startsWith("substrate: ") && line.contains("→"))
                        .anyMatch(line -> line.startsWith("underbase: 100 % white") && line.endsWith("→ none"));
            }
        }
    }
}
