package inkground.artwork.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.artwork.Approximation;
import inkground.artwork.Artwork;
import inkground.artwork.BlendMode;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** SVG files that SVG files place: SVG 2 §12.3. */
class PlacedDrawingTest {
    private static final String RED_2_BY_1 = svg("viewBox='0 0 4 2'", "<rect width='4' height='2' fill='red'/>");

    @TempDir
    Path dir;

    private static String svg(String attributes, String body) {
        return "<svg xmlns='http://www.w3.org/2000/svg' " + attributes + ">" + body + "</svg>";
    }

    private void file(String name, String svg) throws Exception {
        Files.createDirectories(dir.resolve(name).getParent());
        Files.writeString(dir.resolve(name), svg);
    }

    /** A page of 96 × 96 px, which is 72 × 72 pt. */
    private DisplayList list(String body) throws Exception {
        file("art.svg", svg("width='1in' height='1in' viewBox='0 0 96 96'", body));
        try (Artwork artwork = SvgArtwork.open(dir.resolve("art.svg"), new Cancel(), Progress.NONE)) {
            return artwork.record(1, new Cancel(), Progress.NONE);
        }
    }

    private List<Op> ops(String body) throws Exception {
        return list(body).ops();
    }

    private static void assertBox(Op op, double x0, double y0, double x1, double y1) {
        Box box = op.clip() == null
                ? op.bounds()
                : op.bounds().intersect(op.clip().bounds());
        assertThat(List.of(box.x0(), box.y0(), box.x1(), box.y1()))
                .usingElementComparator((a, b) -> Math.abs(a - b) < 1e-4 ? 0 : Double.compare(a, b))
                .containsExactly(x0, y0, x1, y1);
    }

    @Test
    void aPlacedDrawingStaysVectorsAndIsSaid() throws Exception {
        file("part.svg", RED_2_BY_1);
        DisplayList list = list("<image x='8' y='16' width='32' height='16' href='part.svg'/>");
        assertThat(list.ops()).singleElement().isInstanceOf(Op.Fill.class);
        assertBox(list.ops().get(0), 6, 12, 30, 24);
        assertThat(list.approximations())
                .extracting(Approximation::feature)
                .containsExactly("a linked picture (part.svg)");
    }

    @Test
    void aDrawingFitsIntoItsPlaceAsItsRatioAndTheFileSay() throws Exception {
        file("part.svg", RED_2_BY_1);
        String place = "<image width='32' height='32' href='part.svg' preserveAspectRatio='";
        assertBox(ops(place + "xMidYMid'/>").get(0), 0, 6, 24, 18);
        assertBox(ops(place + "none'/>").get(0), 0, 0, 24, 24);
        assertBox(ops(place + "xMidYMid slice'/>").get(0), 0, 0, 24, 24);
    }

    @Test
    void aDrawingWithoutAPlaceHasItsOwnSizeAndOneWithoutASizeThatOfItsPlace() throws Exception {
        file("sized.svg", svg("width='.5in' height='.25in'", "<rect width='100%' height='100%'/>"));
        assertBox(ops("<image href='sized.svg'/>").get(0), 0, 0, 36, 18);
        file("any.svg", svg("", "<rect width='50%' height='50%'/>"));
        assertBox(ops("<image width='96' height='48' href='any.svg'/>").get(0), 0, 0, 36, 18);
        List<Op> twice =
                ops("<image width='96' height='48' href='any.svg'/><image width='48' height='96' href='any.svg'/>");
        assertBox(twice.get(1), 0, 0, 18, 36);
    }

    @Test
    void dataMayHoldADrawingHoweverItIsWritten() throws Exception {
        String type = svg("viewBox='0 0 96 96'", "<text y='50' font-size='40'>Rø</text>");
        String octets = URLEncoder.encode(type, StandardCharsets.UTF_8).replace("+", "%20");
        String base64 = Base64.getEncoder().encodeToString(type.getBytes(StandardCharsets.UTF_8));
        for (String data : List.of(
                "image/svg+xml;base64," + base64,
                "image/svg+xml," + octets,
                "image/svg+xml;charset=utf-8," + type.replace("<", "&lt;").replace("'", "&apos;"))) {
            List<Op> ops = ops("<image width='96' height='96' href='data:" + data + "'/>");
            assertThat(((Op.Fill) ops.get(0)).text().text()).isEqualTo("Rø");
        }
    }

    @Test
    void stylesGradientsAndClipsOfADrawingAreItsOwn() throws Exception {
        file(
                "part.svg",
                svg(
                        "viewBox='0 0 96 96'",
                        "<style>.x{fill:#00f}</style><clipPath id='c'><rect width='48' height='96'/></clipPath>"
                                + "<rect class='x' width='96' height='96' clip-path='url(#c)'/>"));
        List<Op> ops = ops("<style>.x{fill:#0f0}</style><clipPath id='c'><rect width='9' height='9'/></clipPath>"
                + "<g fill='#f00'><image width='96' height='96' href='part.svg'/></g>");
        assertThat(ops).singleElement();
        assertThat(((inkground.artwork.Paint.Flat) ((Op.Fill) ops.get(0)).paint())
                        .colour()
                        .components())
                .containsExactly(0, 0, 1);
        assertBox(ops.get(0), 0, 0, 36, 72);
    }

    @Test
    void oneDrawingMayBePlacedManyTimesAndWhatIsHiddenIsNotShown() throws Exception {
        file("part.svg", RED_2_BY_1);
        assertThat(ops(
                        "<image width='9' height='9' href='part.svg'/><image y='9' width='9' height='9' href='part.svg'/>"
                                + "<image width='9' height='9' href='part.svg' visibility='hidden'/>"))
                .hasSize(2);
    }

    @Test
    void whatBlendsInADrawingBlendsWithinIt() throws Exception {
        file("part.svg", svg("viewBox='0 0 4 2'", "<rect width='4' height='2' style='mix-blend-mode:multiply'/>"));
        Op.Group group = (Op.Group)
                ops("<rect width='96' height='96' fill='red'/><image width='96' height='96'" + " href='part.svg'/>")
                        .get(1);
        assertThat(group.isolated()).isTrue();
        assertThat(group.ops().get(0).style().blend()).isEqualTo(BlendMode.MULTIPLY);
    }

    @Test
    void aDrawingUnderAFilterIsPaintedWithIt() throws Exception {
        file("part.svg", RED_2_BY_1);
        Op.Image image = (Op.Image) ops("<filter id='f' x='0' y='0' width='1' height='1'><feOffset/></filter>"
                        + "<image width='96' height='48' href='part.svg' filter='url(#f)'/>")
                .get(0);
        var pixels = image.image().decode();
        int middle = pixels.width() * (pixels.height() / 2) + pixels.width() / 2;
        assertThat(pixels.samples()[3 * middle] & 255).isEqualTo(255);
        assertThat(pixels.samples()[3 * middle + 1] & 255).isZero();
    }

    @Test
    void drawingsPlaceOthersFromTheOuterFilesFolderOnly() throws Exception {
        file("outside.svg", RED_2_BY_1);
        dir = Files.createDirectory(dir.resolve("own"));
        file("logo.svg", RED_2_BY_1);
        String place = "<image width='4' height='2' href='";
        file("parts/part.svg", svg("viewBox='0 0 4 2'", place + "../logo.svg'/>" + place + "../../outside.svg'/>"));
        DisplayList list = list("<image width='96' height='48' href='parts/part.svg'/>");
        assertThat(list.ops()).hasSize(1);
        assertBox(list.ops().get(0), 0, 0, 72, 36);
        assertThat(list.approximations())
                .extracting(Approximation::feature)
                .contains("a linked picture (logo.svg)", "a picture outside the file's own folder");
    }

    @Test
    void aDamagedDrawingCostsItselfAndIsSaid() throws Exception {
        file("part.svg", "<svg xmlns='http://www.w3.org/2000/svg'><g>");
        file("page.svg", "<html/>");
        DisplayList list = list("<image width='9' height='9' href='part.svg'/><image width='9' height='9'"
                + " href='page.svg'/><rect width='9' height='9'/>");
        assertThat(list.ops()).hasSize(1);
        assertThat(list.approximations())
                .extracting(Approximation::feature)
                .anyMatch(f -> f.contains("part.svg is not well-formed"))
                .anyMatch(f -> f.contains("page.svg is XML but not SVG"));
    }

    @Test
    void drawingsThatHoldThemselvesAreRefused() throws Exception {
        String self = "<image width='9' height='9' href='art.svg'/>";
        assertThatThrownBy(() -> list(self))
                .isInstanceOf(Refusal.class)
                .hasMessage("art.svg places a drawing that holds itself (art.svg). Export it again as one file.");
        file("a.svg", svg("viewBox='0 0 9 9'", "<image width='9' height='9' href='b.svg'/>"));
        file("b.svg", svg("viewBox='0 0 9 9'", "<image width='9' height='9' href='a.svg'/>"));
        assertThatThrownBy(() -> list("<image width='9' height='9' href='a.svg'/>"))
                .isInstanceOf(Refusal.class)
                .hasMessage("art.svg places a drawing that holds itself (a.svg). Export it again as one file.");
    }

    /** Ten files that place the next one more and more often: neither the depth nor the number of elements grows on. */
    @Test
    void drawingsInDrawingsAreBounded() throws Exception {
        for (int i = 1; i < 10; i++) {
            String next = "<image width='9' height='9' href='d" + (i + 1) + ".svg'/>";
            file("d" + i + ".svg", svg("viewBox='0 0 9 9'", next));
        }
        assertThatThrownBy(() -> list("<image width='9' height='9' href='d1.svg'/>"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("more than 8 deep");
        for (int i = 1; i < 8; i++) {
            String next = "<image width='9' height='9' href='e" + (i + 1) + ".svg'/>";
            file("e" + i + ".svg", svg("viewBox='0 0 9 9'", i == 7 ? "<g/>" : next.repeat(12)));
        }
        assertThatThrownBy(() -> list("<image width='9' height='9' href='e1.svg'/>"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("draws more than 1000000 elements");
    }

    @Test
    void textOfAllDrawingsTogetherIsBounded() throws Exception {
        Limits few = new Limits(1000, 1000, 100, 50, 1000, 1000, 1000, 5);
        file("part.svg", svg("viewBox='0 0 9 9'", " ".repeat(700)));
        file("art.svg", svg("width='9' height='9'", " ".repeat(200) + "<image width='9' height='9' href='part.svg'/>"));
        try (Artwork artwork = SvgArtwork.open(dir.resolve("art.svg"), few, new Cancel(), Progress.NONE)) {
            assertThatThrownBy(() -> artwork.record(1, new Cancel(), Progress.NONE))
                    .isInstanceOf(Refusal.class)
                    .hasMessageContaining("placed drawings included");
        }
    }
}
