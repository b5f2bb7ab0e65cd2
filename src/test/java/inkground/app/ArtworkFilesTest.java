package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.artwork.Artwork;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPOutputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ArtworkFilesTest {
    private static final String SVG = "<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'/>";

    @TempDir
    Path dir;

    private String readerOf(String name, byte[] data) throws Exception {
        try (Artwork artwork = ArtworkFiles.open(Files.write(dir.resolve(name), data), new Cancel(), Progress.NONE)) {
            return artwork.getClass().getSimpleName();
        }
    }

    @Test
    void theContentDecidesNotTheName() throws Exception {
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(2, 2, BufferedImage.TYPE_INT_RGB), "png", png);
        assertThat(readerOf("a.pdf", png.toByteArray())).isEqualTo("ImageArtwork");
        assertThat(readerOf("a.png", SVG.getBytes(StandardCharsets.UTF_8))).isEqualTo("SvgArtwork");
        assertThat(readerOf(
                        "b.txt",
                        ("\ufeff<?xml version='1.0' encoding='UTF-16'?>" + SVG).getBytes(StandardCharsets.UTF_16BE)))
                .isEqualTo("SvgArtwork");
    }

    @Test
    void packedSvgIsOpened() throws Exception {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream zip = new GZIPOutputStream(packed)) {
            zip.write(SVG.getBytes(StandardCharsets.UTF_8));
        }
        assertThat(readerOf("a.svgz", packed.toByteArray())).isEqualTo("SvgArtwork");
    }

    @Test
    void anythingElseIsRefusedNamingWhatCanBeOpened() {
        assertThatThrownBy(() -> readerOf("notes.txt", "oars and sculls".getBytes(StandardCharsets.UTF_8)))
                .isInstanceOf(Refusal.class)
                .hasMessageContainingAll("notes.txt", "PDF", "SVG", "PNG", "JPEG", "TIFF", "WebP");
        assertThatThrownBy(() -> readerOf("empty.pdf", new byte[0])).isInstanceOf(Refusal.class);
    }
}
