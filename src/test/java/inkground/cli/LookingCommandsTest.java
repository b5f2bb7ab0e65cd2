package inkground.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Line-up and comparison on the command line, on pages whose areas are known. */
class LookingCommandsTest {
    private static final String SHIRT = "demo/regatta-shirt.pdf";
    private static final String NO_GROUND = "Shirt colour (preview)";

    @TempDir
    Path folder;

    private Path svg(String name, int widthMm, int heightMm, String shapes) throws Exception {
        return Files.writeString(
                folder.resolve(name),
                "<svg xmlns='http://www.w3.org/2000/svg' width='" + widthMm + "mm' height='" + heightMm
                        + "mm' viewBox='0 0 " + widthMm + " " + heightMm + "'>" + shapes + "</svg>");
    }

    @Test
    void aLineUpRanksGarmentsByTheEdgesTheyKeep() throws Exception {
        Path sheet = folder.resolve("sheet.png");
        Run run = Run.of(
                "lineup",
                SHIRT,
                "--on",
                "tee-red,tee-black",
                "--by-vanish",
                "--without-layer",
                NO_GROUND,
                "--size",
                "200",
                "--out",
                sheet);
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out().indexOf("tee-black")).isLessThan(run.out().indexOf("tee-red"));
        assertThat(run.out()).contains("Not a contract proof");
        BufferedImage picture = ImageIO.read(sheet.toFile());
        assertThat(picture.getRGB(1, 1)).isEqualTo(0xff6e6e6e);
        assertThat(picture.getRGB(picture.getWidth() / 4 * 3, 0)).isEqualTo(0xff6e6e6e);
        assertThat(redness(picture)).isLessThan(30);
        String text = new String(Files.readAllBytes(sheet), java.nio.charset.StandardCharsets.ISO_8859_1);
        assertThat(text).contains("Not a contract proof", "Line-up of regatta-shirt.pdf", "of edges vanish");
    }

    /** Red over blue in the cloth at the left of the first picture. */
    private static int redness(BufferedImage picture) {
        int rgb = picture.getRGB(picture.getWidth() / 20, picture.getHeight() / 2);
        return (rgb >> 16 & 255) - (rgb & 255);
    }

    @Test
    void inTheOrderGivenTheRedShirtComesFirst() throws Exception {
        Path sheet = folder.resolve("sheet.png");
        Run run = Run.of(
                "lineup",
                SHIRT,
                "--on",
                "tee-red,tee-black",
                "--without-layer",
                NO_GROUND,
                "--size",
                "200",
                "--out",
                sheet);
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out().indexOf("tee-red")).isLessThan(run.out().indexOf("tee-black"));
        assertThat(redness(ImageIO.read(sheet.toFile()))).isGreaterThan(80);
        assertThat(Run.of("lineup", SHIRT, "--on", "tee-red,tee-black", "--out", sheet)
                        .code())
                .isEqualTo(1); // it is there already
    }

    @Test
    void oneSubstrateIsNoLineUpAndNoneIsWrongUsage() {
        assertThat(Run.of("lineup", SHIRT, "--on", "tee-red", "--out", "x.png").code())
                .isEqualTo(2);
        assertThat(Run.of("lineup", SHIRT, "--out", "x.png").code()).isEqualTo(2);
        assertThat(Run.of("lineup", SHIRT, "--garments", "--size", "9", "--out", "x.png")
                        .code())
                .isEqualTo(2);
        assertThat(Path.of("x.png")).doesNotExist();
    }

    @Test
    void aFileIsTheSameAsItself() throws Exception {
        Run run = Run.of("compare", SHIRT, SHIRT, "--json");
        assertThat(run.code()).as(run.err()).isZero();
        JsonNode root = new ObjectMapper().readTree(run.out());
        assertThat(root.get("changed").asBoolean()).isFalse();
        assertThat(root.get("largestDe00").asDouble()).isZero();
        assertThat(root.get("placesMm")).isEmpty();
    }

    @Test
    void aMovedRectangleIsFoundWhereItWasAndWhereItIs() throws Exception {
        Path a = svg("a.svg", 100, 80, "<rect x='10' y='10' width='20' height='30' fill='#000'/>");
        Path b = svg("b.svg", 100, 80, "<rect x='60' y='35' width='20' height='30' fill='#000'/>");
        Path map = folder.resolve("map.png");
        Run run = Run.of("compare", a, b, "--json", "--map", map, "--dpi", "100");
        assertThat(run.code()).isEqualTo(1);
        JsonNode root = new ObjectMapper().readTree(run.out());
        assertThat(root.get("changedCm2").asDouble()).isCloseTo(12, within(12 * 0.005));
        assertThat(root.get("changedShare").asDouble()).isCloseTo(0.15, within(0.001));
        assertThat(root.get("largestDe00").asDouble()).isGreaterThan(60);
        JsonNode black = root.at("/inks/3");
        assertThat(black.get("change").asText()).isEqualTo("changed");
        assertThat(black.get("changedCm2").asDouble()).isCloseTo(12, within(12 * 0.005));
        assertThat(black.get("beforeCm2").asDouble()).isCloseTo(6, within(6 * 0.005));
        assertThat(root.get("placesMm")).hasSize(2);
        double[][] expected = {{10, 10, 30, 40}, {60, 35, 80, 65}};
        for (double[] box : expected) {
            assertThat(root.get("placesMm")).anySatisfy(place -> {
                for (int i = 0; i < 4; i++) {
                    assertThat(place.get(i).asDouble()).isCloseTo(box[i], within(0.3));
                }
            });
        }
        BufferedImage picture = ImageIO.read(map.toFile());
        assertThat(picture.getWidth()).isEqualTo(394);
        // of the old place the paper is hatched, between the places it is dimmed
        assertThat(lightest(picture, 50, 60) - darkest(picture, 50, 60)).isGreaterThan(180);
        assertThat(lightest(picture, 150, 60) - darkest(picture, 150, 60)).isZero();
    }

    private static int lightest(BufferedImage picture, int x0, int y0) {
        int best = 0;
        for (int i = 0; i < 256; i++) {
            best = Math.max(best, picture.getRGB(x0 + i % 16, y0 + i / 16) & 255);
        }
        return best;
    }

    private static int darkest(BufferedImage picture, int x0, int y0) {
        int best = 255;
        for (int i = 0; i < 256; i++) {
            best = Math.min(best, picture.getRGB(x0 + i % 16, y0 + i / 16) & 255);
        }
        return best;
    }

    @Test
    void addedAndRemovedInksAndAnotherSizeAreSaid() throws Exception {
        Path a = svg("a.svg", 100, 80, "<rect x='10' y='10' width='20' height='30' fill='#000'/>");
        Path b = svg("b.svg", 120, 80, "<rect x='10' y='10' width='20' height='30' fill='#f00'/>");
        Run run = Run.of("compare", a, b);
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out())
                .contains("differ in size: 100.0 x 80.0 mm and 120.0 x 80.0 mm")
                .containsPattern("Cyan +removed")
                .containsPattern("changed: 1?[09]\\.\\d to (29|30)\\.\\d mm from the left");
        Run back = Run.of("compare", b, a);
        assertThat(back.out()).containsPattern("Cyan +added");
    }

    @Test
    void differencesBelowTheLimitPass() throws Exception {
        Path a = svg("a.svg", 40, 40, "<rect x='10' y='10' width='20' height='20' fill='#808080'/>");
        Path b = svg("b.svg", 40, 40, "<rect x='10' y='10' width='20' height='20' fill='#818181'/>");
        assertThat(Run.of("compare", a, b).code()).isZero();
        assertThat(Run.of("compare", a, b, "--limit", "0").code()).isEqualTo(1);
    }

    @Test
    void theArtworkThatWasApprovedIsTheSameAndALaterOneIsNot() throws Exception {
        String square = "<rect x='10' y='10' width='20' height='20' fill='#c03030'/>";
        Path art = svg("badge.svg", 40, 40, square);
        Run approve = Run.of("approve", art, "--on", "tee-navy", "--underbase", "--by", "Ada");
        assertThat(approve.code()).as(approve.err()).isZero();
        assertThat(approve.out()).contains("as approved by Ada", "Not a contract proof");
        Path record = folder.resolve("badge.svg.approved.zip");
        assertThat(record).exists();
        assertThat(Run.of("approve", art, "--on", "tee-navy").err()).contains("exists already");

        Run unarranged = Run.of("compare", art, record);
        assertThat(unarranged.code()).isEqualTo(1);
        assertThat(unarranged.out())
                .contains("badge.svg, page 1, approved ", " by Ada")
                .contains("arranged otherwise: underbase: 100 % white");

        Files.writeString(
                folder.resolve("badge.inkground.json"),
                """
                {"version": 1, "rules": [], "arrangement": {"printOrder": [], "opacities": [],
                 "underbase": {"tint": 1, "hits": 1, "chokeMm": 0, "knockedOutUnder": []}}}""");
        Run same = Run.of("compare", art, record);
        assertThat(same.code()).as(same.out()).isZero();
        assertThat(same.out()).contains("badge.svg is arranged as kept in badge.inkground.json", "on T-shirt, navy");

        Files.writeString(art, Files.readString(art).replace("width='20'", "width='30'"));
        Run changed = Run.of("compare", record, art, "--json");
        assertThat(changed.code()).isEqualTo(1);
        JsonNode root = new ObjectMapper().readTree(changed.out());
        assertThat(root.at("/approved/by").asText()).isEqualTo("Ada");
        assertThat(root.at("/arrangement")).isEmpty();
        assertThat(root.get("changedCm2").asDouble()).isCloseTo(2, within(0.02));
        assertThat(Run.of("compare", record, record).code()).isZero();
    }

    @Test
    void theWayOfPrintingThatWasApprovedIsKeptAsNumbers() throws Exception {
        Path art = svg("badge.svg", 40, 40, "<rect x='10' y='10' width='20' height='20' fill='#c03030'/>");
        Path record = folder.resolve("kept.zip");
        Run approve = Run.of("approve", art, "--on", "tee-white", "--process", "sublimation", "--out", record);
        assertThat(approve.code()).as(approve.err()).isZero();
        Run compare = Run.of("compare", record, art, "--on", "tee-navy");
        assertThat(compare.code()).isEqualTo(1);
        assertThat(compare.out()).contains("opacity of Black: 0.00 → ", "substrate: T-shirt, white");
        Run chosen =
                Run.of("approve", art, "--on", "tee-navy", "--underbase-under", "Black", "--out", record, "--replace");
        assertThat(chosen.code()).as(chosen.err()).isZero();
        assertThat(Run.of("compare", record, art, "--on", "tee-navy").out())
                .contains("underbase: 100 % white", ", only under Black → none");
        assertThat(Run.of("compare", art, art, "--bare", "#C03030").code()).isEqualTo(2);
    }

    @Test
    void revisionsAreComparedInTheSizeChosenAndAPdfInItsOwn() throws Exception {
        Path a = unsized("a.svg", "#000");
        Path b = unsized("b.svg", "#f00");
        assertThat(sizes("compare", a, b)).isEqualTo(List.of(52.9, 26.5, 52.9, 26.5)); // 96 px per inch
        assertThat(sizes("compare", a, b, "--width-mm", "280")).isEqualTo(List.of(280.0, 140.0, 280.0, 140.0));
        assertThat(sizes("compare", a, b, "--picture-dpi", "25.4")).isEqualTo(List.of(200.0, 100.0, 200.0, 100.0));
        assertThat(sizes("compare", SHIRT, b, "--width-mm", "280")).isEqualTo(List.of(300.0, 400.0, 280.0, 140.0));
        assertThat(sizes("compare", a, SHIRT, "--width-mm", "280")).isEqualTo(List.of(280.0, 140.0, 300.0, 400.0));

        Run neither = Run.of("compare", SHIRT, SHIRT, "--width-mm", "280");
        assertThat(neither.code()).isEqualTo(1);
        assertThat(neither.err()).contains("is no picture and no SVG and has its own size");
        assertThat(Run.of("compare", a, b, "--width-mm", "0").err()).contains("--width-mm is 1 to 20000.");
        assertThat(Run.of("compare", a, b, "--width-mm", "280", "--picture-dpi", "72")
                        .code())
                .isEqualTo(2);
    }

    @Test
    void theSizeKeptWithAnAssignmentIsApprovedAndComparedUnlessAnotherIsChosen() throws Exception {
        Path art = unsized("badge.svg", "#c03030");
        Path record = folder.resolve("badge.zip");
        Path kept = Files.writeString(
                folder.resolve("elsewhere.json"),
                """
                {"version": 1, "rules": [], "arrangement": {"printOrder": [], "opacities": [],
                 "size": {"widthMm": 280}}}""");
        Run approve = Run.of("approve", art, "--on", "tee-navy", "--assign", kept, "--out", record);
        assertThat(approve.code()).as(approve.err()).isZero();
        assertThat(Run.of("compare", record, art, "--assign", kept).code()).isZero();
        assertThat(Run.of("compare", record, art, "--width-mm", "280").code()).isZero();
        assertThat(sizes("compare", record, art)).isEqualTo(List.of(280.0, 140.0, 52.9, 26.5));
        assertThat(sizes("compare", record, art, "--assign", kept, "--picture-dpi", "25.4"))
                .isEqualTo(List.of(280.0, 140.0, 200.0, 100.0));

        Path other = folder.resolve("other.zip");
        assertThat(Run.of("approve", art, "--assign", kept, "--width-mm", "200", "--on", "tee-navy", "--out", other)
                        .code())
                .isZero();
        assertThat(sizes("compare", record, other)).isEqualTo(List.of(280.0, 140.0, 200.0, 100.0));
        Run records = Run.of("compare", record, other, "--width-mm", "280");
        assertThat(records.code()).isEqualTo(2);
        assertThat(records.err()).contains("records are compared as they are");
    }

    /** @return a drawing of 200 × 100 px that does not say how large it is */
    private Path unsized(String name, String fill) throws IOException {
        return Files.writeString(
                folder.resolve(name),
                "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 200 100'><rect width='90' height='90' fill='"
                        + fill + "'/></svg>");
    }

    /** @return widths and heights of the trims that a comparison tells, of both files, in mm to a tenth */
    private static List<Double> sizes(Object... compare) throws IOException {
        Object[] asJson = Arrays.copyOf(compare, compare.length + 1);
        asJson[compare.length] = "--json";
        Run run = Run.of(asJson);
        assertThat(run.err()).isEmpty();
        JsonNode root = new ObjectMapper().readTree(run.out());
        return Stream.of("/sizeBeforeMm/0", "/sizeBeforeMm/1", "/sizeAfterMm/0", "/sizeAfterMm/1")
                .map(at -> Math.round(root.at(at).asDouble() * 10) / 10.0)
                .toList();
    }

    @Test
    void comparingWithWhatIsNotThereIsRefused() {
        assertThat(Run.of("compare", SHIRT, "nowhere.pdf").code()).isEqualTo(1);
        assertThat(Run.of("compare", SHIRT).code()).isEqualTo(2);
        assertThat(Run.of("compare", SHIRT, SHIRT, "--limit", "-1").code()).isEqualTo(2);
    }
}
