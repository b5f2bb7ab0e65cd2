package inkground.artwork.image;

import static inkground.artwork.image.Pictures.bytes;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.app.ArtworkFiles;
import inkground.artwork.Artwork;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PictureSizeTest {
    @TempDir
    Path dir;

    @Test
    void aPictureWithoutASizeTakesTheOneChosenAndSaysSo() throws Exception {
        Path png = Files.write(dir.resolve("a.png"), png(null));
        try (Artwork wide = open(png, PictureSize.wide(100));
                Artwork fine = open(png, PictureSize.at(72));
                Artwork usual = open(png, PictureSize.STATED)) {
            assertThat(wide.statesSize()).isFalse();
            assertBox(wide, 100, 50);
            assertThat(note(wide)).contains("states no size", "taken as 100.0 × 50.0 mm", "as chosen");
            assertBox(fine, 4 * 25.4 / 72, 2 * 25.4 / 72);
            assertBox(usual, 4 * 25.4 / 300, 2 * 25.4 / 300);
            assertThat(note(usual)).contains("states no size", "300 samples per inch", "choose another");
        }
    }

    @Test
    void aChosenSizeGoesBeforeTheOneStatedAndKeepsTheShapeOfSamples() throws Exception {
        byte[] metres = bytes(0, 0, 0x2e, 0x23, 0, 0, 0x17, 0x12, 1); // 11811 and 5906 a metre: 300 and 150 an inch
        Path png = Files.write(dir.resolve("a.png"), png(metres));
        try (Artwork stated = open(png, PictureSize.STATED);
                Artwork wide = open(png, PictureSize.wide(100))) {
            assertThat(stated.statesSize()).isTrue();
            assertThat(stated.record(1, new Cancel(), Progress.NONE).approximations())
                    .isEmpty();
            assertBox(wide, 100, 100);
            assertThat(note(wide)).contains("states 300 samples per inch", "as chosen");
        }
    }

    @Test
    void onlyPicturesTakeASizeAndNoneIsTooLarge() throws Exception {
        Path svg = Files.writeString(
                dir.resolve("a.svg"), "<svg xmlns='http://www.w3.org/2000/svg' width='5' height='5'/>");
        assertThatThrownBy(() -> open(svg, PictureSize.wide(100)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("no picture");
        Path tall = Files.write(
                dir.resolve("tall.png"),
                new Pictures.Png(1, 30, 8, 0, false).data(new byte[60]).end());
        assertThatThrownBy(() -> open(tall, PictureSize.wide(1000)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("30000 mm");
        assertThatThrownBy(() -> new PictureSize(100, 72)).isInstanceOf(IllegalArgumentException.class);
    }

    private static byte[] png(byte[] metres) throws IOException {
        Pictures.Png png = new Pictures.Png(4, 2, 8, 0, false);
        if (metres != null) {
            png.chunk("pHYs", metres);
        }
        return png.data(new byte[10]).end();
    }

    private static Artwork open(Path file, PictureSize size) throws Refusal {
        return ArtworkFiles.open(file, size, new Cancel(), Progress.NONE);
    }

    private static void assertBox(Artwork artwork, double widthMm, double heightMm) {
        Box box = artwork.pages().get(0).box(PageBox.MEDIA);
        assertThat(box.widthMm()).isCloseTo(widthMm, within(0.05));
        assertThat(box.heightMm()).isCloseTo(heightMm, within(0.05));
    }

    private static String note(Artwork artwork) throws Refusal {
        return artwork.record(1, new Cancel(), Progress.NONE)
                .approximations()
                .get(0)
                .message();
    }
}
