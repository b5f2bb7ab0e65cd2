package inkground.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import inkground.app.WornProofs;
import inkground.garment.Form;
import inkground.garment.GarmentRequest;
import inkground.substrate.Cut;
import inkground.substrate.Library;
import inkground.substrate.Substrates;
import java.awt.image.BufferedImage;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.NodeList;

/** Proofs on garments from the command line. The demo shirt's page is 300 × 400 mm, its painted ground fills it. */
class WornProofTest {
    private static final String SHIRT = "demo/regatta-shirt.pdf";
    private static final String DPI = "25.4";

    @TempDir
    Path folder;

    private static GarmentRequest picture(String cutId, String size) throws Exception {
        Library library = Substrates.load();
        Cut cut = library.cutById(cutId).orElseThrow();
        Form form = Form.of(cut, cut.size(size).orElseThrow(), cut.faces().get(0));
        return WornProofs.picture(form, 25.4);
    }

    @Test
    void thePageIsPrintedWhereTheOptionsSayAtOnePixelAMillimetre() throws Exception {
        Path png = folder.resolve("worn.png");
        Run run = Run.of(
                "proof",
                SHIRT,
                "--on",
                "tee-lemon",
                "--worn",
                "t-shirt:L",
                "--no-folds",
                "--below-collar",
                "100",
                "--off-centre",
                "-20",
                "--print-width",
                "200",
                "--dpi",
                DPI,
                "--out",
                png);
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out())
                .contains("T-shirt L, front, on T-shirt, lemon")
                .contains("Artwork 200.0 mm × 266.7 mm, its top 100.0 mm below the seam of the collar, 20.0 mm left")
                .contains("Inside the print area 'chest'.")
                .contains("caution: Inks worn on skin")
                .contains("Not a contract proof");
        BufferedImage image = ImageIO.read(png.toFile());
        GarmentRequest r = picture("t-shirt", "L");
        assertThat(image.getWidth()).isEqualTo(r.width());
        assertThat(image.getHeight()).isGreaterThan(r.height()); // the caption
        // The ground's first and last columns and rows, and their neighbours on bare cloth.
        int lemon = image.getRGB(-150 - r.x0(), 250 - r.y0());
        assertThat(image.getRGB(-121 - r.x0(), 110 - r.y0())).isEqualTo(lemon);
        assertThat(near(image.getRGB(-120 - r.x0(), 110 - r.y0()), image.getRGB(-110 - r.x0(), 110 - r.y0())))
                .isTrue();
        assertThat(near(image.getRGB(79 - r.x0(), 110 - r.y0()), image.getRGB(-110 - r.x0(), 110 - r.y0())))
                .isTrue();
        assertThat(image.getRGB(80 - r.x0(), 110 - r.y0())).isEqualTo(lemon);
        assertThat(image.getRGB(-110 - r.x0(), 99 - r.y0())).isEqualTo(lemon);
        assertThat(near(image.getRGB(-110 - r.x0(), 100 - r.y0()), image.getRGB(-110 - r.x0(), 110 - r.y0())))
                .isTrue();
        assertThat(near(image.getRGB(-110 - r.x0(), 365 - r.y0()), image.getRGB(-110 - r.x0(), 110 - r.y0())))
                .isTrue();
        assertThat(image.getRGB(-110 - r.x0(), 367 - r.y0())).isEqualTo(lemon);
        assertThat(image.getRGB(1, 1) & 0xffffff).isEqualTo(WornProofs.SURROUND & 0xffffff);
    }

    private static boolean near(int a, int b) {
        int most = 0;
        for (int shift = 0; shift < 24; shift += 8) {
            most = Math.max(most, Math.abs((a >> shift & 255) - (b >> shift & 255)));
        }
        return most <= 2;
    }

    @Test
    void theFiguresAreInTheFile() throws Exception {
        Path png = folder.resolve("worn.png");
        Run.of("proof", SHIRT, "--on", "tee-navy", "--worn", "t-shirt::back", "--dpi", "12", "--out", png);
        String texts = texts(png.toFile());
        assertThat(texts)
                .contains("Artwork 300.0 mm × 400.0 mm, its top 100.0 mm below the seam of the collar")
                .contains("T-shirt M, back")
                .contains("Approximate");
    }

    private static String texts(File png) throws Exception {
        ImageReader reader = ImageIO.getImageReadersByFormatName("png").next();
        try (ImageInputStream in = ImageIO.createImageInputStream(png)) {
            reader.setInput(in);
            NodeList entries = ((org.w3c.dom.Element) reader.getImageMetadata(0).getAsTree("javax_imageio_png_1.0"))
                    .getElementsByTagName("iTXtEntry");
            StringBuilder out = new StringBuilder();
            for (int i = 0; i < entries.getLength(); i++) {
                out.append(((org.w3c.dom.Element) entries.item(i)).getAttribute("text"))
                        .append('\n');
            }
            return out.toString();
        } finally {
            reader.dispose();
        }
    }

    @Test
    void whatLeavesThePrintAreaAndTheClothIsSaid() {
        Run run = Run.of(
                "proof",
                SHIRT,
                "--on",
                "hoodie-ash",
                "--worn",
                "hooded-sweatshirt",
                "--off-centre",
                "150",
                "--dpi",
                "12",
                "--out",
                folder.resolve("off.png"));
        assertThat(run.out())
                .contains("beyond the cloth")
                .contains("pocket edge")
                .contains("leaves the print area 'chest, above the pocket'");
    }

    @Test
    void theInkMayBeMeasuredInPlaceOfTheTrim() {
        Run run = Run.of(
                "proof",
                SHIRT,
                "--on",
                "tee-navy",
                "--bare",
                "#1C304F",
                "--worn",
                "t-shirt",
                "--measure-to",
                "ink",
                "--dpi",
                "12",
                "--out",
                folder.resolve("ink.png"));
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out()).contains("Artwork 253.").contains("its top 80.0 mm below");
    }

    @Test
    void whatThereIsNotIsRefusedWithWhatThereIs() {
        assertThat(wrong("tee-navy", "kilt")).contains("no cut 'kilt'").contains("inkground cuts");
        assertThat(wrong("tee-navy", "t-shirt:9")).contains("no size '9'").contains("S, M, L, XL, XXL");
        assertThat(wrong("tee-navy", "t-shirt:M:sleeve"))
                .contains("'sleeve' is no side")
                .contains("front or back");
        assertThat(wrong("tee-navy", "t-shirt:M:front:x")).contains("CUT:SIZE:SIDE");
        assertThat(wrong("coated-white", "t-shirt")).contains("paper, which is not worn");
        assertThat(wrong("tee-navy", "t-shirt", "--print-width", "1")).contains("5 to 2000 mm");
        assertThat(wrong("tee-navy", "t-shirt", "--measure-to", "page")).contains("trim or ink");
        assertThat(Files.exists(folder.resolve("x.png"))).isFalse();
    }

    private String wrong(String on, String worn, Object... more) {
        Object[] args = new Object[8 + more.length];
        Object[] first = {"proof", SHIRT, "--on", on, "--worn", worn, "--out", folder.resolve("x.png")};
        System.arraycopy(first, 0, args, 0, 8);
        System.arraycopy(more, 0, args, 8, more.length);
        Run run = Run.of(args);
        assertThat(run.code()).isEqualTo(2);
        return run.err();
    }

    @Test
    void cutsAreListedWithTheirMeasuresAndPrintAreas() throws Exception {
        assertThat(Run.of("cuts").out()).contains("hooded-sweatshirt").contains("chest 320 x 420");
        JsonNode shirt =
                new ObjectMapper().readTree(Run.of("cuts", "--json").out()).get(0);
        assertThat(shirt.get("id").asText()).isEqualTo("t-shirt");
        JsonNode medium = shirt.get("sizes").get(1);
        assertThat(medium.at("/measuresMm/chest").asDouble()).isEqualTo(530);
        assertThat(medium.at("/printAreas/0/name").asText()).isEqualTo("chest");
        assertThat(medium.at("/printAreas/0/leftMm").asDouble()).isEqualTo(-160);
        assertThat(shirt.get("source").asText()).contains("invented");
    }
}
