package inkground.artwork.image;

import static inkground.artwork.image.Pictures.bytes;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.artwork.Artwork;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.ImageSource.Pixels;
import inkground.artwork.Op;
import inkground.artwork.PageBox;
import inkground.base.Cancel;
import inkground.base.ImagePlugins;
import inkground.base.Progress;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.zip.Deflater;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PictureReadingTest {
    @TempDir
    Path dir;

    private static Frame frame(byte[] file) throws Exception {
        return RasterFile.read(file, "picture").get(0);
    }

    private static byte[] concat(byte[]... parts) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            all.writeBytes(part);
        }
        return all.toByteArray();
    }

    @Test
    void pngRowsAreUnfiltered() throws Exception {
        // each row says 10 20 30 by another filter
        byte[] rows = bytes(0, 10, 20, 30, 1, 10, 10, 10, 2, 0, 0, 0, 3, 5, 5, 5, 4, 0, 0, 0);
        Pixels pixels = frame(new Pictures.Png(3, 5, 8, 0, false).data(rows).end())
                .source()
                .decode();
        assertThat(pixels.samples()).isEqualTo(bytes(10, 20, 30, 10, 20, 30, 10, 20, 30, 10, 20, 30, 10, 20, 30));
    }

    @Test
    void interlacedPngIsPutTogether() throws Exception {
        // 2 × 2: pass 1 holds the first sample, pass 6 the one to its right, pass 7 the row below
        byte[] rows = bytes(0, 1, 0, 2, 0, 3, 4);
        Pixels pixels = frame(new Pictures.Png(2, 2, 8, 0, true).data(rows).end())
                .source()
                .decode();
        assertThat(pixels.samples()).isEqualTo(bytes(1, 2, 3, 4));
    }

    @Test
    void sixteenBitsAreRoundedAndAlphaIsAMask() throws Exception {
        byte[] rows = bytes(0, 0x80, 0x7f, 0x00, 0x81, 0xff, 0xff, 0x40, 0x40);
        Frame frame = frame(new Pictures.Png(1, 1, 16, 6, false).data(rows).end());
        assertThat(frame.source().bits()).isEqualTo(16);
        assertThat(frame.source().decode().samples()).isEqualTo(bytes(0x80, 0x01, 0xff));
        assertThat(frame.source().decode().mask().samples()).isEqualTo(bytes(0x40));
    }

    @Test
    void aPaletteStaysAPaletteWithItsTransparency() throws Exception {
        byte[] file = new Pictures.Png(4, 1, 2, 3, false)
                .chunk("PLTE", bytes(1, 2, 3, 4, 5, 6, 7, 8, 9))
                .chunk("tRNS", bytes(0, 128))
                .data(bytes(0, 0b00_01_10_00))
                .end();
        Frame frame = frame(file);
        ColourSpace.Indexed space = (ColourSpace.Indexed) frame.source().space();
        assertThat(space.lookup(1)[2]).isEqualTo(6 / 255f);
        assertThat(frame.source().decode().samples()).isEqualTo(bytes(0, 1, 2, 0));
        assertThat(frame.source().decode().mask().samples()).isEqualTo(bytes(0, 128, 255, 0));
    }

    @Test
    void theOneClearColourOfAPngIsClear() throws Exception {
        byte[] file = new Pictures.Png(2, 1, 8, 2, false)
                .chunk("tRNS", bytes(0, 9, 0, 8, 0, 7))
                .data(bytes(0, 9, 8, 7, 9, 8, 6))
                .end();
        assertThat(frame(file).source().decode().mask().samples()).isEqualTo(bytes(0, 255));
    }

    @Test
    void gammaAndPrimariesOfPngBecomeACalibratedSpace() throws Exception {
        byte[] gamma = ByteBuffer.allocate(4).putInt(100_000).array();
        byte[] file = new Pictures.Png(1, 1, 8, 2, false)
                .chunk("gAMA", gamma)
                .data(bytes(0, 1, 2, 3))
                .end();
        ColourSpace.CalRgb space = (ColourSpace.CalRgb) frame(file).source().space();
        assertThat(space.gamma()).containsExactly(1.0, 1.0, 1.0);
        // the sRGB primaries: IEC 61966-2-1, Y of red, green, blue
        assertThat(space.matrix().get(1)).isCloseTo(0.2126, within(2e-4));
        assertThat(space.matrix().get(4)).isCloseTo(0.7152, within(2e-4));
        assertThat(space.matrix().get(7)).isCloseTo(0.0722, within(2e-4));
        byte[] srgb = new Pictures.Png(1, 1, 8, 2, false)
                .chunk("gAMA", ByteBuffer.allocate(4).putInt(45455).array())
                .data(bytes(0, 1, 2, 3))
                .end();
        assertThat(frame(srgb).source().space()).isEqualTo(new ColourSpace.DeviceRgb());
    }

    @Test
    void anEmbeddedProfileIsUsedAndAWrongOneSetAside() throws Exception {
        byte[] rgb = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
        byte[] chunk = concat(bytes('p', 0, 0), deflated(rgb));
        byte[] file = new Pictures.Png(1, 1, 8, 2, false)
                .chunk("iCCP", chunk)
                .data(bytes(0, 1, 2, 3))
                .end();
        assertThat(((ColourSpace.Icc) frame(file).source().space()).profile().bytes())
                .isEqualTo(rgb);
        Frame grey = frame(new Pictures.Png(1, 1, 8, 0, false)
                .chunk("iCCP", chunk)
                .data(bytes(0, 1))
                .end());
        assertThat(grey.source().space()).isEqualTo(new ColourSpace.DeviceGray());
        assertThat(grey.notes()).hasSize(1);
    }

    private static byte[] deflated(byte[] data) {
        Deflater deflater = new Deflater();
        deflater.setInput(data);
        deflater.finish();
        byte[] out = new byte[data.length + 100];
        int n = deflater.deflate(out);
        deflater.end();
        return java.util.Arrays.copyOf(out, n);
    }

    @Test
    void aPictureIsPlacedAtTheResolutionItStates() throws Exception {
        byte[] density =
                ByteBuffer.allocate(9).putInt(5906).putInt(2953).put((byte) 1).array();
        byte[] file = new Pictures.Png(150, 75, 8, 0, false)
                .chunk("pHYs", density)
                .data(new byte[151 * 75])
                .end();
        Path path = Files.write(dir.resolve("a.png"), file);
        try (Artwork artwork = ImageArtwork.open(path, new Cancel(), Progress.NONE)) {
            assertThat(artwork.pages().get(0).box(PageBox.MEDIA).widthMm()).isCloseTo(25.4, within(0.01));
            assertThat(artwork.pages().get(0).box(PageBox.TRIM).heightMm()).isCloseTo(25.4, within(0.01));
        }
    }

    @Test
    void aPictureThatStatesNoResolutionGets300AndANote() throws Exception {
        Path path = Files.write(
                dir.resolve("a.png"),
                new Pictures.Png(300, 1, 8, 0, false).data(new byte[301]).end());
        try (Artwork artwork = ImageArtwork.open(path, new Cancel(), Progress.NONE)) {
            DisplayList list = artwork.record(1, new Cancel(), Progress.NONE);
            assertThat(list.page().box(PageBox.MEDIA).width()).isEqualTo(72);
            assertThat(list.approximations()).hasSize(1);
            assertThat(((Op.Image) list.ops().get(0)).unitToPage().y(0, 1)).isZero();
        }
    }

    @Test
    void orientationTurnsAPictureUpright() {
        Pixels stored = new Pixels(2, 1, 1, bytes(1, 2), null);
        assertThat(new Orientation(2).apply(stored).samples()).isEqualTo(bytes(2, 1));
        Pixels turned = new Orientation(6).apply(new Pixels(2, 2, 1, bytes(1, 2, 3, 4), null));
        assertThat(turned.samples()).as("clockwise").isEqualTo(bytes(3, 1, 4, 2));
        assertThat(new Orientation(8).apply(stored).height()).isEqualTo(2);
        assertThat(new Orientation(8).apply(stored).samples()).isEqualTo(bytes(2, 1));
    }

    @Test
    void jpegTintsOfFourInksAreReadByTheirMarker() throws Exception {
        byte[] plain = cmykJpeg(200, 100, 50, 10);
        assertNear(frame(plain).source().decode().samples(), 200, 100, 50, 10);
        byte[] adobe = bytes(0xFF, 0xEE, 0, 14, 'A', 'd', 'o', 'b', 'e', 0, 100, 0, 0, 0, 0, 0);
        byte[] head = java.util.Arrays.copyOf(plain, 2);
        byte[] rest = java.util.Arrays.copyOfRange(plain, 2, plain.length);
        assertNear(frame(concat(head, adobe, rest)).source().decode().samples(), 55, 155, 205, 245);
        adobe[15] = 2; // YCCK: Y = 200 with Cb = 100 and Cr = 50 as stored; ITU-T T.871
        Pixels ycck = frame(concat(head, adobe, rest)).source().decode();
        assertNear(ycck.samples(), 91, 255, 150, 245);
    }

    private static void assertNear(byte[] samples, int... wanted) {
        for (int i = 0; i < 4; i++) {
            assertThat(samples[i] & 255).isCloseTo(wanted[i], within(3));
        }
    }

    private static byte[] cmykJpeg(int... tints) throws Exception {
        WritableRaster raster = Raster.createInterleavedRaster(0, 8, 8, 4, null);
        for (int i = 0; i < 64; i++) {
            raster.setPixel(i % 8, i / 8, tints);
        }
        ImageWriter writer = ImagePlugins.writer("jpeg");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        if (!writer.canWriteRasters()) {
            throw new IllegalStateException("a writer of rasters is needed");
        }
        try (ImageOutputStream stream = ImageIO.createImageOutputStream(out)) {
            writer.setOutput(stream);
            writer.write(null, new IIOImage(raster, null, null), null);
        }
        return out.toByteArray();
    }

    @Test
    void jpegColoursComeBackAsRgb() throws Exception {
        BufferedImage image = new BufferedImage(16, 16, BufferedImage.TYPE_INT_RGB);
        image.createGraphics().clearRect(0, 0, 16, 16);
        for (int i = 0; i < 256; i++) {
            image.setRGB(i % 16, i / 16, 0xC03020);
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image, "jpeg", out);
        Pixels pixels = frame(out.toByteArray()).source().decode();
        assertThat(pixels.samples()[0] & 255).isCloseTo(0xC0, within(4));
        assertThat(pixels.samples()[1] & 255).isCloseTo(0x30, within(4));
        assertThat(pixels.samples()[2] & 255).isCloseTo(0x20, within(4));
    }

    @Test
    void tiffInksBesideTheProcessInksKeepTheirNames() throws Exception {
        byte[] file = new Pictures.Tiff(1, 1, 8, 5, 5, bytes(1, 2, 3, 4, 200))
                .number(338, 0)
                .text(333, "Cyan\0Magenta\0Yellow\0Black\0River Green\0")
                .end(false);
        Frame frame = frame(file);
        assertThat(((ColourSpace.DeviceN) frame.source().space()).names())
                .containsExactly("Cyan", "Magenta", "Yellow", "Black", "River Green");
        assertThat(frame.source().decode().samples()).isEqualTo(bytes(1, 2, 3, 4, 200));
        assertThat(frame.spots()).extracting(ColourSpace.Separation::name).containsExactly("River Green");
    }

    /** The block of named resources of TIFF's field 34377: signature, number, name, length, body. */
    @Test
    void tiffInksAreNamedByTheirChannelsToo() throws Exception {
        byte[] name = "-River Green".getBytes(StandardCharsets.ISO_8859_1);
        name[0] = 11; // a Pascal string
        ByteBuffer resources = ByteBuffer.allocate(12 + name.length);
        resources
                .putInt(0x3842494D)
                .putShort((short) 1006)
                .putShort((short) 0)
                .putInt(name.length)
                .put(name);
        Frame frame = frame(new Pictures.Tiff(1, 1, 8, 5, 5, bytes(1, 2, 3, 4, 200))
                .number(338, 0)
                .data(34377, resources.array())
                .end(false));
        assertThat(frame.spots()).extracting(ColourSpace.Separation::name).containsExactly("River Green");
        assertThat(frame.source().decode().samples()).isEqualTo(bytes(1, 2, 3, 4, 200));
    }

    @Test
    void tiffSamplesOfOneTwoAndFourBitsAreSpreadOverAllTints() throws Exception {
        assertThat(grey(1, 8, 0b10100101)).isEqualTo(bytes(255, 0, 255, 0, 0, 255, 0, 255));
        assertThat(grey(2, 4, 0b00011011)).isEqualTo(bytes(0, 85, 170, 255));
        assertThat(grey(4, 2, 0x8F)).isEqualTo(bytes(136, 255));
    }

    private byte[] grey(int bits, int width, int strip) throws Exception {
        return frame(new Pictures.Tiff(width, 1, bits, 1, 1, bytes(strip)).end(false))
                .source()
                .decode()
                .samples();
    }

    @Test
    void codePointsOfPngGoBeforeGammaAndUnknownOnesAreSaid() throws Exception {
        byte[] gamma = ByteBuffer.allocate(4).putInt(100_000).array();
        Frame srgb = frame(new Pictures.Png(1, 1, 8, 2, false)
                .chunk("cICP", bytes(1, 13, 0, 1)) // ITU-T H.273: primaries and transfer of sRGB
                .chunk("gAMA", gamma)
                .data(bytes(0, 1, 2, 3))
                .end());
        assertThat(srgb.source().space()).isEqualTo(new ColourSpace.DeviceRgb());
        assertThat(srgb.notes()).extracting(Frame.Note::feature).noneMatch(f -> f.contains("cICP"));
        Frame wide = frame(new Pictures.Png(1, 1, 8, 2, false)
                .chunk("cICP", bytes(9, 16, 0, 1))
                .data(bytes(0, 1, 2, 3))
                .end());
        assertThat(wide.notes()).extracting(Frame.Note::feature).anyMatch(f -> f.contains("primaries 9"));
    }

    /** TIFF 6.0, ExtraSamples: 1 is associated alpha, by which the colours come multiplied, and 2 is not. */
    @Test
    void tiffAlphaIsAMaskAndColoursAreFreedOfIt() throws Exception {
        Pictures.Tiff associated = new Pictures.Tiff(2, 1, 8, 4, 2, bytes(100, 50, 0, 128, 0, 0, 0, 0));
        Pixels freed = frame(associated.number(338, 1).end(false)).source().decode();
        assertThat(freed.samples()).isEqualTo(bytes(199, 100, 0, 0, 0, 0));
        assertThat(freed.mask().samples()).isEqualTo(bytes(128, 0));
        Pictures.Tiff apart = new Pictures.Tiff(2, 1, 8, 4, 2, bytes(100, 50, 0, 128, 7, 8, 9, 0));
        Pixels kept = frame(apart.number(338, 2).end(false)).source().decode();
        assertThat(kept.samples()).isEqualTo(bytes(100, 50, 0, 7, 8, 9));
        assertThat(kept.mask().samples()).isEqualTo(bytes(128, 0));
    }

    @Test
    void greyJpegStaysGrey() throws Exception {
        BufferedImage image = new BufferedImage(16, 16, BufferedImage.TYPE_BYTE_GRAY);
        for (int i = 0; i < 256; i++) {
            image.getRaster().setSample(i % 16, i / 16, 0, 90);
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image, "jpeg", out);
        Pixels pixels = frame(out.toByteArray()).source().decode();
        assertThat(pixels.components()).isEqualTo(1);
        assertThat(pixels.samples()).hasSize(256);
        for (byte sample : pixels.samples()) {
            assertThat(sample & 255).isCloseTo(90, within(2));
        }
    }

    @Test
    void tiffExtraSamplesWithoutANameDoNotPrint() throws Exception {
        byte[] file = new Pictures.Tiff(1, 1, 8, 5, 5, bytes(1, 2, 3, 4, 200))
                .number(338, 0)
                .end(false);
        Frame frame = frame(file);
        assertThat(frame.source().space()).isEqualTo(new ColourSpace.DeviceCmyk());
        assertThat(frame.source().decode().samples()).isEqualTo(bytes(1, 2, 3, 4));
        assertThat(frame.notes()).hasSize(1);
    }

    @Test
    void tiffPlanesOfSixteenBitsAreInterleaved() throws Exception {
        byte[] planes = bytes(0xff, 0xff, 0x80, 0x80, 0, 0);
        byte[] file = new Pictures.Tiff(1, 1, 16, 3, 2, bytes()).end(false);
        ByteBuffer whole = ByteBuffer.wrap(concat(file, planes));
        Frame frame = frame(planar(whole, file.length));
        assertThat(frame.source().decode().samples()).isEqualTo(bytes(255, 128, 0));
    }

    /** The same file with three strips of two bytes each, one per plane, their places listed at its end. */
    private static byte[] planar(ByteBuffer whole, int dataAt) {
        byte[] lists = ByteBuffer.allocate(24)
                .putInt(dataAt)
                .putInt(dataAt + 2)
                .putInt(dataAt + 4)
                .putInt(2)
                .putInt(2)
                .putInt(2)
                .array();
        byte[] all = concat(whole.array(), lists, new byte[16]);
        ByteBuffer out = ByteBuffer.wrap(all);
        int count = out.getShort(8);
        for (int i = 0; i < count; i++) {
            int at = 10 + 12 * i;
            int tag = out.getShort(at);
            if (tag == 273 || tag == 279) {
                out.putInt(at + 4, 3).putInt(at + 8, dataAt + 6 + (tag == 279 ? 12 : 0));
            } else if (tag == 278) {
                out.putShort(at, (short) 284).putInt(at + 8, 2); // rows per strip gives way to the planar tag
            }
        }
        return all;
    }

    @Test
    void tiffLabAndCompressionsAreRead() throws Exception {
        Frame lab = frame(new Pictures.Tiff(1, 1, 8, 3, 8, bytes(128, 0, 0xF0)).end(false));
        assertThat(lab.source().space()).isInstanceOf(ColourSpace.CieLab.class);
        assertThat(lab.source().decode().samples()).as("a = 0, b = -16").isEqualTo(bytes(128, 128, 112));
        byte[] packed = bytes(2, 7, 8, 9, -3, 5);
        assertThat(frame(new Pictures.Tiff(7, 1, 8, 1, 1, packed)
                                .number(259, 32773)
                                .end(false))
                        .source()
                        .decode()
                        .samples())
                .isEqualTo(bytes(7, 8, 9, 5, 5, 5, 5));
        byte[] zip = deflated(bytes(10, 1, 1, 254));
        assertThat(frame(new Pictures.Tiff(4, 1, 8, 1, 0, zip)
                                .number(259, 8)
                                .number(317, 2)
                                .end(false))
                        .source()
                        .decode()
                        .samples())
                .as("a predictor, and white as zero")
                .isEqualTo(bytes(245, 244, 243, 245));
    }

    @Test
    void tiffLzwOfAnotherWriterIsRead() throws Exception {
        BufferedImage image = new BufferedImage(100, 90, BufferedImage.TYPE_INT_RGB);
        for (int i = 0; i < 9000; i++) {
            image.setRGB(i % 100, i / 100, i * 7919);
        }
        ImageWriter writer = ImagePlugins.writer("tiff");
        var param = writer.getDefaultWriteParam();
        param.setCompressionMode(javax.imageio.ImageWriteParam.MODE_EXPLICIT);
        param.setCompressionType("LZW");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ImageOutputStream stream = ImageIO.createImageOutputStream(out)) {
            writer.setOutput(stream);
            writer.write(null, new IIOImage(image, null, null), param);
        }
        Pixels pixels = frame(out.toByteArray()).source().decode();
        for (int i = 0; i < 9000; i++) {
            int rgb = image.getRGB(i % 100, i / 100);
            assertThat(pixels.samples()[3 * i + 2]).isEqualTo((byte) rgb);
            assertThat(pixels.samples()[3 * i]).isEqualTo((byte) (rgb >> 16));
        }
    }

    @Test
    void gifAndBmpAreReadWhole() throws Exception {
        // 3 × 2 black samples, the one at (1, 1) blue
        byte[] gif = Base64.getDecoder().decode("R0lGODlhAwACAPAAAAAAAAAA/yH5BAAAAAAALAAAAAADAAIAAAIDhBFQADs=");
        BufferedImage image = new BufferedImage(3, 2, BufferedImage.TYPE_INT_RGB);
        image.setRGB(1, 1, 0x0000FF);
        ByteArrayOutputStream bmp = new ByteArrayOutputStream();
        ImageIO.write(image, "bmp", bmp);
        for (byte[] file : List.of(gif, bmp.toByteArray())) {
            Pixels pixels = frame(file).source().decode();
            assertThat(pixels.samples()[3 * 4 + 2]).isEqualTo((byte) 255);
            assertThat(pixels.samples()[2]).isZero();
        }
    }

    @Test
    void webPIsReadWithItsAlpha() throws Exception {
        byte[] file = Base64.getDecoder()
                .decode(
                        "UklGRmAAAABXRUJQVlA4WAoAAAAQAAAAAwAAAgAAQUxQSAoAAAABB9C/iAhERP8DVlA4IDAAAADQAQCdASoEAAMAAgA0JaACdLoB+AADsAD+8MQL/yC5YXXI1/8gP+QH/ID/+PIAAAA=");
        Frame frame = frame(file);
        assertThat(frame.source().width()).isEqualTo(4);
        assertThat(frame.source().decode().samples()[0] & 255).isCloseTo(255, within(4));
        assertThat(frame.source().decode().mask().samples()[0] & 255).isCloseTo(128, within(2));
    }
}
