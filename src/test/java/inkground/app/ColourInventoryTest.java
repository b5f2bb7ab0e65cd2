package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Lab;
import inkground.substrate.Substrates;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is listed of a page's colours; the artwork is invented. */
class ColourInventoryTest {
    @TempDir
    Path folder;

    @Test
    void everyColourIsListedWithItsObjectsAndTheAreaWhereItIsSeen() throws Exception {
        ColourInventory inventory = inventory(svg("<rect x='10' y='10' width='20' height='20' fill='#C5242E'/>"
                + "<rect x='20' y='10' width='20' height='20' fill='#FCEFCE'/>"
                + "<rect x='60' y='60' width='5' height='5' fill='#C5242E'/>"));
        ColourUse red = use(inventory, 0xc5242e);
        assertThat(red.objects()).isEqualTo(2);
        assertThat(red.visibleCm2()).as("10 × 20 mm and 5 × 5 mm").isCloseTo(2.25, within(0.01));
        assertThat(use(inventory, 0xfcefce).visibleCm2()).isCloseTo(4, within(0.01));
        assertThat(inventory.colours()).hasSize(2);
        assertThat(red.words()).isEqualTo("RGB 197 36 46");
    }

    @Test
    void coloursBeneathOthersAreHiddenAndSpecksAreTiny() throws Exception {
        ColourInventory inventory = inventory(svg("<rect x='20' y='20' width='10' height='10' fill='#00AA00'/>"
                + "<rect x='10' y='10' width='40' height='40' fill='#C5242E'/>"
                + "<rect x='70' y='70' width='0.5' height='0.5' fill='#102A6B'/>"
                + "<rect x='150' y='70' width='5' height='5' fill='#8800FF'/>"));
        assertThat(use(inventory, 0x00aa00).hidden()).isTrue();
        assertThat(use(inventory, 0x8800ff).hidden()).as("outside the trim").isTrue();
        assertThat(use(inventory, 0xc5242e).hidden()).isFalse();
        assertThat(use(inventory, 0x102a6b).tiny()).isTrue();
        assertThat(use(inventory, 0x102a6b).visibleCm2()).isCloseTo(0.0025, within(0.0002));
        assertThat(use(inventory, 0xc5242e).tiny()).isFalse();
    }

    @Test
    void nearDuplicatesAreGroupedUpToTheLimitAskedFor() throws Exception {
        ColourInventory inventory = inventory(svg("<rect x='10' y='10' width='20' height='20' fill='#C5242E'/>"
                + "<rect x='40' y='10' width='10' height='10' fill='#C8272F'/>"
                + "<rect x='60' y='10' width='10' height='10' fill='#D8404A'/>"));
        assertThat(inventory.nearDuplicates(0.1)).isEmpty();
        List<List<ColourUse>> groups = inventory.nearDuplicates(3);
        assertThat(groups).hasSize(1);
        assertThat(groups.get(0).stream().map(ColourUse::hex)).containsExactly("#C5242E", "#C8272F");
        assertThat(inventory.nearDuplicates(20).get(0)).hasSize(3);
    }

    @Test
    void swatchesThatNothingIsPaintedWithAreNotListed() throws Exception {
        Path file = folder.resolve("swatches.pdf");
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage(new PDRectangle(144, 144));
            document.addPage(page);
            page.setResources(new PDResources());
            COSDictionary spaces = new COSDictionary();
            spaces.setItem("Used", separation("Reach Red"));
            spaces.setItem("Unused", separation("Old Green"));
            page.getResources().getCOSObject().setItem(COSName.COLORSPACE, spaces);
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.addRect(10, 10, 50, 50);
                content.setNonStrokingColor(new org.apache.pdfbox.pdmodel.graphics.color.PDColor(
                        new float[] {1}, page.getResources().getColorSpace(COSName.getPDFName("Used"))));
                content.fill();
            }
            document.save(file.toFile());
        }
        try (Job job = Job.open(file, new Cancel(), Progress.NONE)) {
            PageJob page = job.page(1, new Cancel(), Progress.NONE);
            assertThat(page.declared()).hasSizeGreaterThan(1);
            ColourInventory inventory = ColourInventory.of(page, new Cancel(), Progress.NONE);
            assertThat(inventory.colours().stream().map(ColourUse::words)).containsExactly("Reach Red 100 %");
        }
    }

    private static COSArray separation(String name) {
        COSDictionary function = new COSDictionary();
        function.setInt(COSName.FUNCTION_TYPE, 2);
        function.setItem(COSName.DOMAIN, numbers(0, 1));
        function.setItem(COSName.C0, numbers(0, 0, 0, 0));
        function.setItem(COSName.C1, numbers(0.1f, 1, 0.8f, 0));
        function.setItem(COSName.N, COSInteger.ONE);
        COSArray space = new COSArray();
        space.add(COSName.SEPARATION);
        space.add(COSName.getPDFName(name));
        space.add(COSName.DEVICECMYK);
        space.add(function);
        return space;
    }

    private static COSArray numbers(float... values) {
        COSArray out = new COSArray();
        for (float value : values) {
            out.add(new COSFloat(value));
        }
        return out;
    }

    @Test
    void aPictureIsListedByItsFlatColoursAndItsGroundIsACandidate() throws Exception {
        BufferedImage image = new BufferedImage(300, 300, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(java.awt.RenderingHints.KEY_ANTIALIASING, java.awt.RenderingHints.VALUE_ANTIALIAS_ON);
        g.setColor(new Color(0x1c304f));
        g.fillRect(0, 0, 300, 300);
        g.setColor(new Color(0xc5242e));
        g.fillOval(60, 60, 180, 180);
        g.dispose();
        Path png = folder.resolve("art.png");
        ImageIO.write(image, "png", png.toFile());
        try (Job job = Job.open(png, new Cancel(), Progress.NONE)) {
            PageJob page = job.page(1, new Cancel(), Progress.NONE);
            ColourInventory inventory = ColourInventory.of(page, new Cancel(), Progress.NONE);
            assertThat(inventory.colours()).isEmpty();
            assertThat(inventory.images().get(0).colours().flats()).hasSize(2);
            assertThat(inventory.images().get(0).colours().mixedShare()).isBetween(0.001, 0.03);
            assertThat(inventory.images().get(0).cm2()).isCloseTo(2.54 * 2.54, within(0.001));
            Lab navy = Substrates.load().byId("tee-navy").orElseThrow().lab();
            List<Grounds.Ground> grounds = Grounds.survey(page, inventory, navy, new Cancel(), Progress.NONE);
            assertThat(grounds).hasSize(1);
            Grounds.Ground ground = grounds.get(0);
            assertThat(ground.candidate().use().hex()).isEqualTo("#1C304F");
            assertThat(ground.candidate().reasons()).hasSize(3);
            assertThat(ground.deletion().objects()).isZero();
            assertThat(ground.words()).contains("no object to delete");
        }
    }

    @Test
    void aGroundOverInkSaysHowMuchDeletingItWouldUncover() throws Exception {
        Path file = svg("<rect x='20' y='20' width='50' height='50' fill='#C5242E'/>"
                + "<rect width='100' height='100' fill='#1C304F'/>"
                + "<rect x='20' y='20' width='50' height='20' fill='#FCEFCE'/>");
        try (Job job = Job.open(file, new Cancel(), Progress.NONE)) {
            PageJob page = job.page(1, new Cancel(), Progress.NONE);
            List<Grounds.Ground> grounds = Grounds.survey(
                    page, ColourInventory.of(page, new Cancel(), Progress.NONE), null, new Cancel(), Progress.NONE);
            Grounds.Deletion deletion = grounds.get(0).deletion();
            assertThat(deletion.objects()).isEqualTo(1);
            assertThat(deletion.inks()).anySatisfy(uncovered -> {
                assertThat(uncovered.ink().name()).isEqualTo("Magenta");
                assertThat(uncovered.cm2()).as("50 × 30 mm").isCloseTo(15, within(0.5));
            });
            assertThat(grounds.get(0).words()).contains("deleting this object would uncover", "cm² of Magenta");
        }
    }

    private static ColourUse use(ColourInventory inventory, int rgb) {
        return inventory.colours().stream()
                .filter(use -> use.rgb() == rgb)
                .findFirst()
                .orElseThrow();
    }

    private static ColourInventory inventory(Path file) throws Refusal {
        try (Job job = Job.open(file, new Cancel(), Progress.NONE)) {
            return ColourInventory.of(job.page(1, new Cancel(), Progress.NONE), new Cancel(), Progress.NONE);
        }
    }

    private Path svg(String content) throws Exception {
        return Files.writeString(
                folder.resolve("art.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' width='100mm' height='100mm' viewBox='0 0 100 100'>" + content
                        + "</svg>");
    }
}
