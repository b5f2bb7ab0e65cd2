package inkground.artwork.image;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.Approximation;
import inkground.artwork.Artwork;
import inkground.artwork.DisplayList;
import inkground.artwork.ImageSource;
import inkground.artwork.Op;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.ImagePlugins;
import inkground.base.Progress;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** TIFF files of more than one picture: pages, layers beside the flattened picture, pictures inside a picture. */
class TiffPagesTest {
    @TempDir
    Path dir;

    private Artwork open(byte[] file) throws Exception {
        return ImageArtwork.open(Files.write(dir.resolve("art.tif"), file), new Cancel(), Progress.NONE);
    }

    private static ImageSource.Pixels pixels(DisplayList page) throws Exception {
        return ((Op.Image) page.ops().get(0)).image().decode();
    }

    private static byte[] pages(int... rgb) throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageWriter writer = ImagePlugins.writer("tiff");
        try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
            writer.setOutput(out);
            writer.prepareWriteSequence(null);
            for (int i = 0; i < rgb.length; i++) {
                BufferedImage image = new BufferedImage(3 + i, 2, BufferedImage.TYPE_INT_RGB);
                image.setRGB(1, 1, rgb[i]);
                writer.writeToSequence(new IIOImage(image, null, null), null);
            }
            writer.endWriteSequence();
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    @Test
    void everyPictureOfAFileIsAPageOfItsOwnSizeAndContent() throws Exception {
        int[] colours = {0x102030, 0x405060, 0x708090};
        try (Artwork artwork = open(pages(colours))) {
            assertThat(artwork.pages()).hasSize(colours.length);
            for (int i = 0; i < colours.length; i++) {
                DisplayList page = artwork.record(i + 1, new Cancel(), Progress.NONE);
                ImageSource.Pixels pixels = pixels(page);
                assertThat(pixels.width()).isEqualTo(3 + i);
                int at = 3 * (pixels.width() + 1);
                assertThat(pixels.samples()[at] & 255).isEqualTo(colours[i] >> 16);
                assertThat(pixels.samples()[at + 2] & 255).isEqualTo(colours[i] & 255);
                assertThat(page.page().box(PageBox.MEDIA).width()
                                / page.page().box(PageBox.MEDIA).height())
                        .isEqualTo((3 + i) / 2.0);
            }
        }
    }

    /** Adobe's ImageSourceData, field 37724: what it says is not read, and need not be sound. */
    @Test
    void aLayeredPictureIsTheFlattenedOneAndThePageSaysSo() throws Exception {
        byte[] file = new Pictures.Tiff(1, 1, 8, 3, 2, Pictures.bytes(200, 100, 50))
                .data(37724, Pictures.bytes(1, 2, 3, 4, 5, 6, 7, 8))
                .end(false);
        try (Artwork artwork = open(file)) {
            DisplayList page = artwork.record(1, new Cancel(), Progress.NONE);
            assertThat(pixels(page).samples()).containsExactly(200, 100, 50);
            assertThat(page.approximations())
                    .extracting(Approximation::message)
                    .contains(
                            "this page uses a picture with layers, shown approximately: as its file holds it flattened");
        }
    }

    @Test
    void layersOfAnySizeTakeNoMemory() throws Exception {
        byte[] file = new Pictures.Tiff(1, 1, 8, 1, 1, Pictures.bytes(70))
                .data(37724, new byte[40 << 20])
                .end(false);
        try (Artwork artwork = open(file)) {
            DisplayList page = artwork.record(1, new Cancel(), Progress.NONE);
            assertThat(pixels(page).samples()).containsExactly(70);
            assertThat(page.approximations()).extracting(Approximation::feature).contains("a picture with layers");
        }
    }

    @Test
    void picturesInsideAPictureAreLeftOutAndCounted() throws Exception {
        byte[] file = new Pictures.Tiff(1, 1, 8, 1, 1, Pictures.bytes(70))
                .number(330, 8) // names itself: it is not looked at
                .end(false);
        try (Artwork artwork = open(file)) {
            assertThat(artwork.pages()).hasSize(1);
            DisplayList page = artwork.record(1, new Cancel(), Progress.NONE);
            assertThat(pixels(page).samples()).containsExactly(70);
            assertThat(page.approximations())
                    .extracting(Approximation::feature)
                    .contains("a picture with 1 more inside it (layers or smaller copies)");
        }
    }

    /** TIFF 6.0, NewSubfileType: bit 0 a smaller copy, bit 2 a mask. */
    @Test
    void smallerCopiesAndMasksAreNoPages() throws Exception {
        byte[] file = pages(0x102030, 0x405060);
        try (Artwork artwork = open(marked(file, 1))) {
            assertThat(artwork.pages()).hasSize(1);
        }
        try (Artwork artwork = open(marked(file, 4))) {
            assertThat(artwork.pages()).hasSize(1);
        }
        try (Artwork artwork = open(marked(file, 2))) {
            assertThat(artwork.pages()).as("bit 1: one page of several").hasSize(2);
        }
    }

    /** Makes a field of the second directory that nothing reads its subfile type. */
    private static byte[] marked(byte[] file, int kind) {
        ByteBuffer in = ByteBuffer.wrap(file.clone());
        in.order(file[0] == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        int first = in.getInt(4);
        int second = in.getInt(first + 2 + 12 * in.getShort(first));
        int spare = spare(in, second);
        in.putShort(spare, (short) 254)
                .putShort(spare + 2, (short) 4)
                .putInt(spare + 4, 1)
                .putInt(spare + 8, kind);
        return in.array();
    }

    /** Place of the software field (305), which says nothing of the picture. */
    private static int spare(ByteBuffer in, int directory) {
        for (int i = 0; i < in.getShort(directory); i++) {
            int at = directory + 2 + 12 * i;
            if (in.getShort(at) == 305 || in.getShort(at) == 254) {
                return at;
            }
        }
        throw new AssertionError("the writer of the test's file sets no field that can be spared");
    }
}
