package inkground.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import inkground.app.Arrangement;
import inkground.app.Session;
import inkground.artwork.ColourAssignment;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.viewer.desk.JobEngine;
import inkground.viewer.state.Look;
import inkground.viewer.state.ProofEngine.ExportRequest;
import inkground.viewer.state.ProofEngine.OpenFile;
import inkground.viewer.state.ProofEngine.OpenPage;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the window kept beside an artwork, given to commands by {@code --assign}. */
class KeptArrangementTest {
    private static final String SHIRT = "demo/regatta-shirt.pdf";

    private static final String CYAN_FIRST = "\"printOrder\": [\"Cyan\", \"Magenta\", \"Yellow\", \"Black\"]";
    private static final String CYAN_LAST = "\"printOrder\": [\"Yellow\", \"Magenta\", \"Black\", \"Cyan\"]";
    /** Process inks that hide: only then does the order show. */
    private static final String HIDING =
            "\"opacities\": [{\"ink\": \"Cyan\", \"opacity\": 0.8}, {\"ink\": \"Yellow\", \"opacity\": 0.8}]";

    private static final String PLAIN = "\"printOrder\": [], \"opacities\": []";
    private static final String UNDERBASE =
            ", \"underbase\": {\"tint\": 0.8, \"hits\": 2, \"chokeMm\": 0.5, \"knockedOutUnder\": []}";

    @TempDir
    Path folder;

    private Path kept(String name, String arrangement) throws IOException {
        return Files.writeString(
                folder.resolve(name), "{\"version\": 1, \"rules\": [], \"arrangement\": {" + arrangement + "}}");
    }

    /** @return a picture of 60 × 30 samples that does not say how large it is */
    private Path logo() throws IOException {
        BufferedImage picture = new BufferedImage(60, 30, BufferedImage.TYPE_INT_RGB);
        IntStream.range(0, 60 * 30).forEach(i -> picture.setRGB(i % 60, i / 60, i % 60 < 40 ? 0x406020 : 0xa03050));
        Path logo = folder.resolve("logo.png");
        ImageIO.write(picture, "png", logo.toFile());
        return logo;
    }

    private static BufferedImage picture(Path png, Object... command) throws IOException {
        Object[] all = Arrays.copyOf(command, command.length + 3);
        all[command.length] = "--out";
        all[command.length + 1] = png;
        all[command.length + 2] = "--replace";
        Run run = Run.of(all);
        assertThat(run.code()).as(run.err()).isZero();
        return ImageIO.read(png.toFile());
    }

    /** @return the artwork proofed on navy cloth at 10 pixels a millimetre */
    private BufferedImage proof(Object art, Object... options) throws IOException {
        Object[] all = new Object[6 + options.length];
        System.arraycopy(new Object[] {"proof", art, "--on", "tee-navy", "--dpi", "254"}, 0, all, 0, 6);
        System.arraycopy(options, 0, all, 6, options.length);
        return picture(folder.resolve("proof.png"), all);
    }

    private static int[] pixels(BufferedImage picture) {
        return picture.getRGB(0, 0, picture.getWidth(), picture.getHeight(), null, 0, picture.getWidth());
    }

    private static JsonNode json(Object... command) throws IOException {
        Run run = Run.of(command);
        assertThat(run.code()).as(run.err()).isZero();
        return new ObjectMapper().readTree(run.out());
    }

    @Test
    void aPictureWithoutAResolutionIsAsLargeAsItWasKept() throws Exception {
        Path logo = logo();
        Path file = kept("kept.json", PLAIN + ", \"size\": {\"widthMm\": 50}");
        assertThat(proof(logo, "--assign", file).getWidth()).isEqualTo(500);
        assertThat(proof(logo, "--assign", file, "--width-mm", "20").getWidth()).isEqualTo(200);
        assertThat(proof(logo, "--assign", file, "--picture-dpi", "25.4").getWidth())
                .isEqualTo(600);
        Path planes = folder.resolve("planes");
        assertThat(json("separate", logo, "--assign", file, "--dpi", "254", "--json", "--out", planes)
                        .get("widthPx")
                        .asInt())
                .isEqualTo(500);
        assertThat(json("inks", logo, "--assign", file, "--json")
                        .at("/pages/0/trimWidthMm")
                        .asDouble())
                .isCloseTo(50, within(0.01));
    }

    @Test
    void aSizeThatAFileCannotHaveIsLeftOutAndToldUnlessItIsAskedForNow() throws Exception {
        Path file = kept("kept.json", PLAIN + ", \"size\": {\"widthMm\": 50}");
        Path record = folder.resolve("shirt.zip");
        List<Object[]> commands = List.of(
                new Object[] {"inks", SHIRT, "--json", "--assign", file},
                new Object[] {"approve", SHIRT, "--on", "tee-navy", "--assign", file, "--out", record},
                new Object[] {"compare", record, SHIRT, "--json", "--assign", file});
        for (Object[] command : commands) {
            Run run = Run.of(command);
            assertThat(run.code()).as(run.err()).isZero();
            assertThat(run.err()).contains("The size kept for this file is not taken. regatta-shirt.pdf is no picture");
            assertThat(run.out()).doesNotContain("The size kept");
        }
        Run asked = Run.of("inks", SHIRT, "--assign", file, "--width-mm", "50");
        assertThat(asked.code()).isEqualTo(1);
        assertThat(asked.err()).contains("has its own size").doesNotContain("The size kept");
        Run damaged = Run.of("inks", Files.createFile(folder.resolve("empty.png")), "--assign", file);
        assertThat(damaged.code()).isEqualTo(1);
        assertThat(damaged.err()).contains("empty.png is empty").doesNotContain("The size kept");
    }

    @Test
    void orderOpacityAndUnderbaseOfAProofAreThoseOfTheWindow() throws Exception {
        Path logo = logo();
        String size = ", \"size\": {\"widthMm\": 20}";
        Path first = kept("first.json", CYAN_FIRST + ", " + HIDING + size);
        Path last = kept("last.json", CYAN_LAST + ", " + HIDING + size);
        Path based = kept("based.json", CYAN_LAST + ", " + HIDING + UNDERBASE + size);
        int[] cyanFirst = pixels(proof(logo, "--assign", first));
        int[] cyanLast = pixels(proof(logo, "--assign", last));
        int[] overWhite = pixels(proof(logo, "--assign", based));
        assertThat(cyanFirst).isNotEqualTo(cyanLast).isEqualTo(inTheWindow(logo, first));
        assertThat(cyanLast).isNotEqualTo(overWhite).isEqualTo(inTheWindow(logo, last));
        assertThat(overWhite).isEqualTo(inTheWindow(logo, based));
    }

    /** @return the proof that the window writes after the file was kept beside the artwork */
    private int[] inTheWindow(Path art, Path file) throws Exception {
        Files.copy(
                file, art.resolveSibling(art.getFileName() + ".inkground.json"), StandardCopyOption.REPLACE_EXISTING);
        JobEngine engine = new JobEngine(Optional.empty());
        engine.substrates();
        Session session = engine.session(art).orElseThrow();
        Arrangement arranged = session.arrangement();
        Path png = folder.resolve("window.png");
        Cancel cancel = new Cancel();
        try (OpenFile open = engine.open(art, arranged.size(), cancel, Progress.NONE)) {
            OpenPage page = open.page(1, ColourAssignment.NONE, cancel, Progress.NONE);
            List<String> names =
                    page.inks().stream().map(card -> card.ink().name()).toList();
            Map<Integer, Double> opacities = new HashMap<>();
            arranged.opacities().forEach((ink, opacity) -> opacities.put(names.indexOf(ink), opacity));
            Look look = new Look(
                    "tee-navy",
                    IntStream.range(0, names.size()).boxed().collect(Collectors.toSet()),
                    arranged.printOrder().stream().map(names::indexOf).toList(),
                    opacities,
                    arranged.underbase(),
                    Optional.empty(),
                    -1);
            page.export(
                    new ExportRequest(look, PageBox.TRIM, 254, true, Set.of(), png, true, Optional.empty()),
                    cancel,
                    Progress.NONE);
        }
        return pixels(ImageIO.read(png.toFile()));
    }

    @Test
    void optionsGoBeforeWhatWasKept() throws Exception {
        Path logo = logo();
        Path based = kept("based.json", PLAIN + UNDERBASE + ", \"size\": {\"widthMm\": 20}");
        int[] asKept = pixels(proof(logo, "--assign", based));
        assertThat(asKept)
                .isEqualTo(pixels(proof(
                        logo,
                        "--width-mm",
                        "20",
                        "--underbase-tint",
                        "80",
                        "--underbase-hits",
                        "2",
                        "--underbase-choke",
                        "0.5")));
        assertThat(pixels(proof(logo, "--assign", based, "--underbase-tint", "40")))
                .isNotEqualTo(asKept)
                .isEqualTo(pixels(proof(logo, "--width-mm", "20", "--underbase-tint", "40")));
        Object[] dyed = {"--on", "tee-white", "--process", "sublimation", "--dpi", "254", "--width-mm", "20"};
        Path png = folder.resolve("dyed.png");
        Path hiding = kept("hiding.json", "\"printOrder\": [], " + HIDING + UNDERBASE);
        assertThat(pixels(picture(png, with(dyed, "proof", logo, "--assign", hiding))))
                .as("dyes do not hide, and there is no white")
                .isEqualTo(pixels(picture(png, with(dyed, "proof", logo))));
        Path record = folder.resolve("logo.zip");
        Run approved = Run.of("approve", logo, "--on", "tee-navy", "--assign", based, "--underbase", "--out", record);
        assertThat(approved.code()).as(approved.err()).isZero();
        Run compared = Run.of("compare", record, logo, "--assign", based);
        assertThat(compared.out()).contains("underbase: 100 % white of opacity", ", 1 hit → 80 % white of opacity");
    }

    private static Object[] with(Object[] options, Object... command) {
        return Stream.concat(Arrays.stream(command), Arrays.stream(options)).toArray();
    }

    @Test
    void whatWasKeptOfAnInkThatIsNotThereSaysNothing() throws Exception {
        Path logo = logo();
        Path file = kept(
                "kept.json",
                "\"printOrder\": [\"Gone\"], \"opacities\": [{\"ink\": \"Gone\", \"opacity\": 1}],"
                        + " \"underbase\": {\"tint\": 1, \"chokeMm\": 0, \"knockedOutUnder\": [\"Gone\"]}");
        assertThat(pixels(proof(logo, "--assign", file))).isEqualTo(pixels(proof(logo, "--underbase")));
        Run approved =
                Run.of("approve", logo, "--on", "tee-navy", "--assign", file, "--out", folder.resolve("logo.zip"));
        assertThat(approved.code()).as(approved.err()).isZero();
        assertThat(Run.of("proof", logo, "--on", "tee-navy", "--underbase-not-under", "Gone", "--out", "x.png")
                        .err())
                .contains("which is not there");
    }

    @Test
    void aLineUpIsArrangedAsWasKept() throws Exception {
        Path logo = logo();
        Path full =
                kept("full.json", PLAIN + ", \"underbase\": {\"tint\": 1, \"chokeMm\": 0, \"knockedOutUnder\": []}");
        Path other = kept("other.json", PLAIN + UNDERBASE);
        Path sheet = folder.resolve("sheet.png");
        Object[] on = {"--on", "tee-navy,coated-white", "--size", "100"};
        int[] plain = pixels(picture(sheet, with(on, "lineup", logo)));
        int[] based = pixels(picture(sheet, with(on, "lineup", logo, "--underbase")));
        assertThat(pixels(picture(sheet, with(on, "lineup", logo, "--assign", full))))
                .isNotEqualTo(plain)
                .isEqualTo(based);
        assertThat(pixels(picture(sheet, with(on, "lineup", logo, "--assign", other))))
                .isNotEqualTo(based);
        assertThat(pixels(picture(sheet, with(on, "lineup", logo, "--assign", other, "--underbase"))))
                .isEqualTo(based);
    }

    @Test
    void whatInksReachOnClothIsToldOverTheUnderbaseThatWasKept() throws Exception {
        Path logo = logo();
        Path based = kept("based.json", PLAIN + UNDERBASE);
        String worst = "/pages/0/gamut/worst/0/de00";
        double plain =
                json("inks", logo, "--on", "tee-navy", "--json").at(worst).asDouble();
        double white = json("inks", logo, "--on", "tee-navy", "--json", "--assign", based)
                .at(worst)
                .asDouble();
        assertThat(plain).isGreaterThan(10);
        assertThat(white).isLessThan(plain / 2);
    }

    @Test
    void theArtworkIsWornWhereItWasKeptUnlessTheOptionsSayOtherwise() throws Exception {
        Path file = kept(
                "kept.json",
                PLAIN + ", \"placement\": {\"cut\": \"t-shirt\", \"size\": \"XL\", \"side\": \"back\", \"belowMm\": 95,"
                        + " \"offCentreMm\": -12, \"widthMm\": 240, \"measured\": \"trim\"}");
        assertThat(worn("t-shirt", "--assign", file))
                .contains("T-shirt XL, back", "Artwork 240.0 mm", "its top 95.0 mm below", "12.0 mm left");
        assertThat(worn(
                        "t-shirt:L:front",
                        "--assign",
                        file,
                        "--print-width",
                        "200",
                        "--below-collar",
                        "80",
                        "--off-centre",
                        "0"))
                .contains("T-shirt L, front", "Artwork 200.0 mm", "its top 80.0 mm below", "on the centre line");
        assertThat(worn("child-t-shirt", "--assign", file))
                .as("a size of another cut")
                .contains("Child's T-shirt 122, back", "Artwork 240.0 mm");
    }

    private String worn(String garment, Object... options) {
        Object[] command = {
            "proof",
            SHIRT,
            "--on",
            "tee-navy",
            "--dpi",
            "10",
            "--replace",
            "--out",
            folder.resolve("worn.png"),
            "--worn",
            garment
        };
        Run run = Run.of(with(options, command));
        assertThat(run.code()).as(run.err()).isZero();
        return run.out();
    }
}
