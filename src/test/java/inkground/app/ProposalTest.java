package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.InkAt;
import inkground.artwork.ColourAssignment.InkNamed;
import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourAssignment.Seen;
import inkground.artwork.ColourAssignment.WhiteInk;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.plate.InkPlanes;
import inkground.plate.PlateRequest;
import inkground.substrate.Substrate;
import inkground.substrate.Substrates;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Colours of invented artwork: a red, a cream and the garment's #1C304F. */
class ProposalTest {
    private static final int[] FLAT = {0x1c304f, 0xc5242e, 0xfcefce};
    private static final int SIDE = 240;

    @TempDir
    Path folder;

    @Test
    void aFlatPictureOfThreeColoursMakesThreeInksAndNoOthers() throws Exception {
        Path png = picture();
        Proposal proposal = propose(png, substrate("tee-red"));
        assertThat(proposal.assignment().rules()).hasSize(3).allMatch(rule -> rule.to() instanceof InkAt);
        try (Job job = Job.open(png, proposal.assignment(), new Cancel(), Progress.NONE)) {
            PageJob page = job.page(1, new Cancel(), Progress.NONE);
            InkPlanes planes = page.plate()
                    .render(
                            PlateRequest.of(
                                    page.info().box(PageBox.MEDIA),
                                    inkground.artwork.image.ImageArtwork.DEFAULT_DPI,
                                    true,
                                    Set.of()),
                            new Cancel(),
                            Progress.NONE);
            double error = 0;
            int edges = 0;
            for (int y = 0; y < SIDE; y++) {
                for (int x = 0; x < SIDE; x++) {
                    double[] shares = shares(x, y);
                    int sum = 0;
                    for (int p = 0; p < planes.inks().size(); p++) {
                        int tint = planes.get(p, x, y);
                        sum += tint;
                        assertThat(p < 4 ? tint : 0).as("process ink").isZero();
                    }
                    assertThat(sum).as("tints of one pixel").isBetween(254, 256);
                    for (int i = 0; i < 3; i++) {
                        String ink = name(proposal.assignment(), FLAT[i]);
                        error += Math.abs(planes.get(planes.inks().indexOf(ink), x, y) - 255 * shares[i]);
                    }
                    edges += shares[0] > 0 && shares[0] < 1 ? 1 : 0;
                }
            }
            assertThat(edges).as("pixels of soft edges").isGreaterThan(500);
            assertThat(error / (3 * SIDE * SIDE))
                    .as("mean error of coverage in 255ths")
                    .isLessThan(2);
        }
    }

    @Test
    void theGroundOfAPictureIsBareOnAGarmentOfItsColour() throws Exception {
        Path png = picture();
        Proposal proposal = propose(png, substrate("tee-navy"));
        assertThat(targets(proposal)).hasAtLeastOneElementOfType(Bare.class);
        Rule bare = proposal.assignment().rules().get(0);
        assertThat(bare.to()).isEqualTo(new Bare());
        assertThat(((Seen) bare.from()).rgb()).isEqualTo(0x1c304f);
        assertThat(proposal.lines().get(0)).contains("near the garment", "fills the page");
    }

    @Test
    void nearDuplicatesBecomeOneInkWithAPlainNameAndWhiteIsAsTheSubstrateHasIt() throws Exception {
        Path svg = svg("<rect x='10' y='10' width='20' height='20' fill='#C5242E'/>"
                + "<rect x='40' y='10' width='10' height='10' fill='#C6252F'/>"
                + "<rect x='60' y='10' width='10' height='10' fill='#FFFFFF'/>"
                + "<rect x='80' y='10' width='12' height='10' fill='#102A6B'/>"
                + "<rect x='10' y='60' width='10' height='10' fill='#0C1F8C'/>");
        Proposal onCloth = propose(svg, substrate("tee-navy"));
        assertThat(name(onCloth.assignment(), 0xc5242e))
                .isEqualTo("Red")
                .isEqualTo(name(onCloth.assignment(), 0xc6252f));
        assertThat(name(onCloth.assignment(), 0x102a6b)).isEqualTo("Dark blue");
        assertThat(name(onCloth.assignment(), 0x0c1f8c)).isEqualTo("Dark blue 2");
        assertThat(targets(onCloth)).contains(new WhiteInk()).doesNotContain(new Bare());
        assertThat(targets(propose(svg, substrate("coated-white")))).contains(new Bare());
        Proposal unknown = propose(svg, null);
        assertThat(targets(unknown)).doesNotContain(new Bare(), new WhiteInk());
        assertThat(unknown.lines()).anyMatch(line -> line.contains("choose a substrate"));
    }

    @Test
    void inksOfTheFileKeepTheirNamesAndHiddenColoursAreLeft() throws Exception {
        Proposal shirt = propose(Path.of("demo/regatta-shirt.pdf"), substrate("tee-navy"));
        assertThat(shirt.assignment().rules()).noneMatch(rule -> rule.from() instanceof InkNamed);
        assertThat(shirt.lines())
                .anyMatch(line -> line.startsWith("Reach Red 100 %") && line.contains("keeps its ink"));
        assertThat(shirt.lines().get(0)).contains("#1C304F", "bare");
        Proposal hidden = propose(
                svg("<rect x='10' y='10' width='9' height='9' fill='#00AA00'/>"
                        + "<rect x='5' y='5' width='30' height='30' fill='#C5242E'/>"),
                null);
        assertThat(hidden.assignment().rules()).hasSize(1);
        assertThat(hidden.lines()).anyMatch(line -> line.contains("#00AA00") && line.contains("hidden"));
    }

    @Test
    void aColourThatNoScreenShowsIsTakenByItsNumbers() {
        inkground.artwork.Colour cyan =
                new inkground.artwork.Colour(new inkground.artwork.ColourSpace.DeviceCmyk(), 1, 0, 0, 0);
        ColourUse use = new ColourUse(cyan, new Lab(58, -38, -54), 1, 1, inkground.geometry.Box.EMPTY);
        assertThat(use.source()).isInstanceOf(ColourAssignment.Stated.class);
    }

    private static List<Object> targets(Proposal proposal) {
        return proposal.assignment().rules().stream().<Object>map(Rule::to).toList();
    }

    private static String name(ColourAssignment assignment, int rgb) {
        return assignment.rules().stream()
                .filter(rule -> rule.from() instanceof Seen seen && seen.rgb() == rgb)
                .map(rule -> ((InkAt) rule.to()).name())
                .findFirst()
                .orElseThrow();
    }

    private static Substrate substrate(String id) throws Refusal {
        return Substrates.load().byId(id).orElseThrow();
    }

    private static Proposal propose(Path file, Substrate on) throws Refusal {
        try (Job job = Job.open(file, new Cancel(), Progress.NONE)) {
            PageJob page = job.page(1, new Cancel(), Progress.NONE);
            ColourInventory inventory = ColourInventory.of(page, new Cancel(), Progress.NONE);
            List<Grounds.Ground> grounds =
                    Grounds.survey(page, inventory, on == null ? null : on.lab(), new Cancel(), Progress.NONE);
            return Proposal.of(page, inventory, grounds, on, ColourInventory.NEAR_DE00);
        }
    }

    private Path svg(String content) throws Exception {
        return Files.writeString(
                folder.resolve("art.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='100mm' viewBox='0 0 100 100'>" + content
                        + "</svg>");
    }

    /** Shares of ground, red and cream: two discs with edges three pixels soft. */
    private static double[] shares(int x, int y) {
        double red = soft(60 - Math.hypot(x + 0.5 - 80, y + 0.5 - 120));
        double cream = soft(40 - Math.hypot(x + 0.5 - 185, y + 0.5 - 120));
        return new double[] {1 - red - cream, red, cream};
    }

    private static double soft(double inside) {
        return Math.max(0, Math.min(1, inside / 3 + 0.5));
    }

    private Path picture() throws Exception {
        BufferedImage image = new BufferedImage(SIDE, SIDE, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) {
                double[] shares = shares(x, y);
                int rgb = 0;
                for (int shift = 0; shift <= 16; shift += 8) {
                    double v = 0;
                    for (int i = 0; i < 3; i++) {
                        v += shares[i] * (FLAT[i] >> shift & 255);
                    }
                    rgb |= (int) Math.round(v) << shift;
                }
                image.setRGB(x, y, rgb);
            }
        }
        Path png = folder.resolve("art.png");
        ImageIO.write(image, "png", png.toFile());
        return png;
    }
}
