package inkground.artwork.image;

import static inkground.artwork.image.Pictures.bytes;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.app.ArtworkFiles;
import inkground.artwork.Artwork;
import inkground.artwork.Op;
import inkground.artwork.PageBox;
import inkground.artwork.PictureSize;
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
            assertThat(wide.sizing(1).orElseThrow().stated()).isFalse();
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
            assertThat(stated.sizing(1).orElseThrow().stated()).isTrue();
            assertThat(stated.record(1, new Cancel(), Progress.NONE).approximations())
                    .isEmpty();
            assertBox(wide, 100, 100);
            assertThat(note(wide)).contains("states 300 samples per inch", "as chosen");
        }
    }

    @Test
    void onlyPicturesAndDrawingsTakeASizeAndNoneIsTooLarge() throws Exception {
        Path pdf = Files.writeString(dir.resolve("a.pdf"), "%PDF-1.4");
        assertThatThrownBy(() -> open(pdf, PictureSize.wide(100)))
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

    @Test
    void aDrawingTakesTheSizeChosenWhetherItStatesOneOrNot() throws Exception {
        Path none = svg("none.svg", "viewBox='0 0 200 100'");
        Path stated = svg("stated.svg", "width='200mm' height='100mm' viewBox='0 0 200 100'");
        try (Artwork wide = open(none, PictureSize.wide(280));
                Artwork other = open(none, PictureSize.at(72));
                Artwork usual = open(none, PictureSize.STATED);
                Artwork corrected = open(stated, PictureSize.wide(50))) {
            assertThat(wide.sizing(1).orElseThrow().stated()).isFalse();
            assertBox(wide, 280, 140);
            assertThat(note(wide)).contains("does not say how large", "taken as 280.0 × 140.0 mm, as chosen");
            assertBox(other, 200 * 25.4 / 72, 100 * 25.4 / 72);
            assertBox(usual, 200 * 25.4 / 96, 100 * 25.4 / 96);
            assertThat(corrected.sizing(1).orElseThrow().stated()).isTrue();
            assertBox(corrected, 50, 25);
            assertThat(note(corrected)).contains("stated size is not taken", "as chosen");
            Op.Fill fill =
                    (Op.Fill) wide.record(1, new Cancel(), Progress.NONE).ops().get(0);
            assertThat(fill.bounds().widthMm()).isCloseTo(140, within(0.05));
        }
        assertThatThrownBy(() -> open(svg("tall.svg", "viewBox='0 0 1 30'"), PictureSize.wide(1000)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("30000 mm");
    }

    private Path svg(String name, String attributes) throws IOException {
        return Files.writeString(
                dir.resolve(name),
                "<svg xmlns='http://www.w3.org/2000/svg' " + attributes + "><rect width='100' height='100'/></svg>");
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
