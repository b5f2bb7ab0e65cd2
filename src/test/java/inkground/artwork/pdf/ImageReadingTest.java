package inkground.artwork.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import inkground.artwork.Op;
import inkground.base.Refusal;
import inkground.geometry.Box;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ImageReadingTest {
    @TempDir
    Path dir;

    private static PdfText with(String entries, byte[] data) {
        return new PdfText()
                .resources("/XObject << /I 5 0 R >>").content("100 0 0 50 20 30 cm /I Do").stream(
                        "/Type /XObject /Subtype /Image " + entries, data);
    }

    private static byte[] bytes(int... values) {
        byte[] out = new byte[values.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = (byte) values[i];
        }
        return out;
    }

    private ImageSource image(String entries, byte[] data) throws Exception {
        return with(entries, data).only(Op.Image.class, dir).image();
    }

    private byte[] samples(String entries, int... data) throws Exception {
        return image(entries, bytes(data)).decode().samples();
    }

    private static byte[] deflated(byte[] data) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflater = new DeflaterOutputStream(out)) {
            deflater.write(data);
        }
        return out.toByteArray();
    }

    @Test
    void anImageIsPlacedByTheUnitSquare() throws Exception {
        Op.Image op = with("/Width 1 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8", bytes(7))
                .only(Op.Image.class, dir);
        assertThat(op.bounds()).isEqualTo(new Box(20, 20, 120, 70));
        assertThat(op.unitToPage().y(0, 1)).as("top left is the first sample").isEqualTo(20);
        assertThat(op.image().width()).isEqualTo(1);
        assertThat(op.image().interpolate()).isFalse();
    }

    @Test
    void samplesOfOneToSixteenBitsBecomeBytes() throws Exception {
        String grey = " /ColorSpace /DeviceGray /BitsPerComponent ";
        assertThat(samples("/Width 3 /Height 2" + grey + 1, 0b10100000, 0b01000000))
                .containsExactly(255, 0, 255, 0, 255, 0);
        assertThat(samples("/Width 3 /Height 1" + grey + 2, 0b00_01_11_00)).containsExactly(0, 85, 255);
        assertThat(samples("/Width 3 /Height 1" + grey + 4, 0x0F, 0x80)).containsExactly(0, 255, 136);
        assertThat(samples("/Width 2 /Height 1" + grey + 8, 5, 250)).containsExactly(5, 250);
        assertThat(samples("/Width 2 /Height 1" + grey + 16, 0x80, 0x00, 0xFF, 0xFF))
                .containsExactly(128, 255);
    }

    @Test
    void theDecodeArrayIsApplied() throws Exception {
        assertThat(samples(
                        "/Width 2 /Height 1 /ColorSpace /DeviceCMYK /BitsPerComponent 8 /Decode [1 0 1 0 1 0 1 0]",
                        0,
                        255,
                        10,
                        20,
                        1,
                        2,
                        3,
                        4))
                .containsExactly(255, 0, 245, 235, 254, 253, 252, 251);
        assertThat(samples("/Width 2 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8 /Decode [0 0.5]", 0, 255))
                .containsExactly(0, 128);
    }

    @Test
    void indexedImagesKeepTheirIndices() throws Exception {
        String indexed = "/Width 4 /Height 1 /ColorSpace [/Indexed /DeviceRGB 2 <000000 111111 222222>]"
                + " /BitsPerComponent 2";
        assertThat(samples(indexed, 0b00_01_10_11)).as("3 is past the palette").containsExactly(0, 1, 2, 2);
        assertThat(samples(indexed + " /Decode [3 0]", 0b11_10_01_00)).containsExactly(0, 1, 2, 2);
    }

    @Test
    void labImagesSpanTheRangeOfTheSpace() throws Exception {
        ImageSource source = image(
                "/Width 1 /Height 1 /BitsPerComponent 8 /ColorSpace [/Lab << /WhitePoint [0.9 1 0.8] /Range [-100 100"
                        + " -50 50] >>]",
                bytes(255, 128, 0));
        assertThat(source.space()).isInstanceOf(ColourSpace.CieLab.class);
        assertThat(source.decode().samples()).containsExactly(255, 128, 0);
    }

    @Test
    void imageMasksBecomeStencilsThatPaintWhereTheSampleIsZero() throws Exception {
        String mask = "/Width 4 /Height 1 /ImageMask true /BitsPerComponent 1";
        Op.Stencil stencil = with(mask, bytes(0b01100000)).only(Op.Stencil.class, dir);
        assertThat(stencil.mask().decode().samples()).containsExactly(255, 0, 0, 255);
        assertThat(with(mask + " /Decode [1 0]", bytes(0b01100000))
                        .only(Op.Stencil.class, dir)
                        .mask()
                        .decode()
                        .samples())
                .containsExactly(0, 255, 255, 0);
    }

    @Test
    void anExplicitMaskHidesWhereItsSampleIsOne() throws Exception {
        ImageSource.Pixels mask =
                with("/Width 1 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8 /Mask 6 0 R", bytes(9)).stream(
                                "/Subtype /Image /Width 2 /Height 1 /ImageMask true /BitsPerComponent 1",
                                bytes(0b01000000))
                        .only(Op.Image.class, dir)
                        .image()
                        .decode()
                        .mask();
        assertThat(mask.width()).isEqualTo(2);
        assertThat(mask.samples()).containsExactly(255, 0);
    }

    @Test
    void aColourKeyMasksRawValuesBeforeDecoding() throws Exception {
        ImageSource.Pixels pixels = image(
                        "/Width 3 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8 /Decode [1 0] /Mask [10 20]",
                        bytes(9, 15, 21))
                .decode();
        assertThat(pixels.samples()).containsExactly(246, 240, 234);
        assertThat(pixels.mask().samples()).containsExactly(255, 0, 255);
    }

    @Test
    void aMatteIsUndone() throws Exception {
        // With a black matte and α = 0.5 (128 / 255), a stored 100 was 100 × 255 / 128 = 199.2.
        ImageSource.Pixels pixels =
                with("/Width 2 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8 /SMask 6 0 R", bytes(100, 7))
                        .stream(
                                "/Subtype /Image /Width 2 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8 /Matte [0]",
                                bytes(128, 255))
                        .only(Op.Image.class, dir)
                        .image()
                        .decode();
        assertThat(pixels.samples()).containsExactly(199, 7);
        assertThat(pixels.mask().samples()).containsExactly(128, 255);
    }

    @Test
    void aSoftMaskOfOneBitIsNotTakenForAStencil() throws Exception {
        ImageSource.Pixels pixels =
                with("/Width 2 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8 /SMask 6 0 R", bytes(100, 7))
                        .stream(
                                "/Subtype /Image /Width 2 /Height 1 /BitsPerComponent 1 /ColorSpace /DeviceGray",
                                bytes(0x80))
                        .only(Op.Image.class, dir)
                        .image()
                        .decode();
        assertThat(pixels.mask().samples()).containsExactly(255, 0);
    }

    @Test
    void anImagesOwnSoftMaskReplacesTheMaskOfTheGraphicsState() throws Exception {
        List<Op> ops = new PdfText()
                        .resources(
                                "/XObject << /I 5 0 R /J 6 0 R >> /ExtGState << /M << /SMask << /S /Alpha /G 7 0 R >> >> >>")
                        .content("/M gs /I Do /J Do")
                        .stream(
                                "/Subtype /Image /Width 1 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8 /SMask 6 0 R",
                                bytes(9))
                        .stream(
                                "/Subtype /Image /Width 1 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8",
                                bytes(9))
                        .stream("/Subtype /Form /BBox [0 0 9 9] /Group << /S /Transparency >>", "0 0 9 9 re f")
                        .ops(dir);
        assertThat(ops.get(0).style().softMask()).isNull();
        assertThat(ops.get(1).style().softMask()).isNotNull();
    }

    @Test
    void inlineImagesAreReadLikeOthers() throws Exception {
        Op.Image op = new PdfText()
                .resources("/ColorSpace << /Spot [/Separation /River /DeviceCMYK << /FunctionType 2 /Domain [0 1] /N 1"
                        + " /C0 [0 0 0 0] /C1 [1 0 0 0] >>] >>")
                .content("10 0 0 10 0 0 cm BI /W 2 /H 1 /BPC 8 /CS /Spot /F /AHx ID 00FF> EI")
                .only(Op.Image.class, dir);
        assertThat(op.image().space()).isInstanceOf(ColourSpace.Separation.class);
        assertThat(op.image().decode().samples()).containsExactly(0, 255);
        Op.Stencil stencil =
                new PdfText().content("BI /W 2 /H 1 /IM true /F /AHx ID 40> EI").only(Op.Stencil.class, dir);
        assertThat(stencil.mask().decode().samples()).containsExactly(255, 0);
    }

    @Test
    void deflateWithPredictorIsUndone() throws Exception {
        byte[] rows = bytes(2, 1, 2, 3, 2, 1, 1, 1); // PNG "up" twice
        assertThat(image(
                                "/Width 3 /Height 2 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter /FlateDecode"
                                        + " /DecodeParms << /Predictor 15 /Colors 1 /BitsPerComponent 8 /Columns 3 >>",
                                deflated(rows))
                        .decode()
                        .samples())
                .containsExactly(1, 2, 3, 2, 3, 4);
    }

    @Test
    void faxImagesAreRead() throws Exception {
        // ITU-T T.6: row 1 horizontal mode 001, white run 0, black run 8; rows 2 to 8 repeat it (V0 V0); then EOFB.
        byte[] data = bits("001 00110101 000101 11 11 11 11 11 11 11 000000000001 000000000001");
        byte[] samples = image(
                        "/Width 8 /Height 8 /ColorSpace /DeviceGray /BitsPerComponent 1 /Filter /CCITTFaxDecode"
                                + " /DecodeParms << /K -1 /Columns 8 /Rows 8 >>",
                        data)
                .decode()
                .samples();
        assertThat(samples).hasSize(64).containsOnly(0);
    }

    private static byte[] bits(String pattern) {
        String digits = pattern.replace(" ", "");
        byte[] out = new byte[(digits.length() + 7) / 8];
        for (int i = 0; i < digits.length(); i++) {
            out[i / 8] |= (byte) ((digits.charAt(i) - '0') << 7 - i % 8);
        }
        return out;
    }

    @Test
    void bilevelJbig2ImagesAreReadWithBlackAsZero() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        // Page information (ITU-T T.88 §7.4.8): 8 × 8, white.
        out.writeBytes(bytes(0, 0, 0, 0, 0x30, 0, 1, 0, 0, 0, 19, 0, 0, 0, 8, 0, 0, 0, 8));
        out.writeBytes(bytes(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0));
        // Immediate generic region (§7.4.6), MMR coded: the same eight black rows as the fax image.
        byte[] mmr = bits("001 00110101 000101 11 11 11 11 11 11 11 000000000001 000000000001");
        out.writeBytes(bytes(0, 0, 0, 1, 38, 0, 1, 0, 0, 0, 18 + mmr.length));
        out.writeBytes(bytes(0, 0, 0, 8, 0, 0, 0, 8, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1));
        out.writeBytes(mmr);
        byte[] samples = image(
                        "/Width 8 /Height 8 /ColorSpace /DeviceGray /BitsPerComponent 1 /Filter /JBIG2Decode",
                        out.toByteArray())
                .decode()
                .samples();
        assertThat(samples).hasSize(64).containsOnly(0);
    }

    private static byte[] encoded(BufferedImage image, String format) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertThat(ImageIO.write(image, format, out)).isTrue();
        return out.toByteArray();
    }

    private static BufferedImage flat(int type, int rgb) {
        BufferedImage image = new BufferedImage(16, 16, type);
        for (int i = 0; i < 256; i++) {
            image.setRGB(i % 16, i / 16, rgb);
        }
        return image;
    }

    private static int near(byte sample, int expected) {
        return Math.abs((sample & 255) - expected);
    }

    @Test
    void jpegImagesOfGreyAndRgbAreRead() throws Exception {
        byte[] rgb = encoded(flat(BufferedImage.TYPE_INT_RGB, 0xC86432), "jpg");
        ImageSource.Pixels pixels = image(
                        "/Width 16 /Height 16 /ColorSpace /DeviceRGB /BitsPerComponent 8 /Filter /DCTDecode", rgb)
                .decode();
        assertThat(near(pixels.samples()[0], 0xC8)).isLessThan(4);
        assertThat(near(pixels.samples()[1], 0x64)).isLessThan(4);
        assertThat(near(pixels.samples()[2], 0x32)).isLessThan(4);
        BufferedImage grey = new BufferedImage(16, 16, BufferedImage.TYPE_BYTE_GRAY);
        for (int i = 0; i < 256; i++) {
            grey.getRaster().setSample(i % 16, i / 16, 0, 90);
        }
        pixels = image(
                        "/Width 16 /Height 16 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter [/FlateDecode"
                                + " /DCTDecode]",
                        deflated(encoded(grey, "jpg")))
                .decode();
        assertThat(near(pixels.samples()[100], 90)).isLessThan(3);
    }

    @Test
    void jpeg2000ImagesAreReadAndBringTheirOwnColourSpace() throws Exception {
        byte[] file = encoded(flat(BufferedImage.TYPE_3BYTE_BGR, 0xC86432), "jpeg2000");
        ImageSource source = image("/Width 16 /Height 16 /Filter /JPXDecode", file);
        assertThat(source.space()).isEqualTo(new ColourSpace.DeviceRgb());
        assertThat(source.bits()).isEqualTo(8);
        ImageSource.Pixels pixels = source.decode();
        assertThat(pixels.width()).isEqualTo(16);
        assertThat(near(pixels.samples()[0], 0xC8)).isLessThan(6);
        assertThat(near(pixels.samples()[2], 0x32)).isLessThan(6);
        assertThat(image("/Width 16 /Height 16 /Filter /JPXDecode /Decode [1 0 1 0 1 0]", file)
                        .decode()
                        .samples())
                .as("the Decode array does not apply")
                .isEqualTo(pixels.samples());
    }

    @Test
    void jpeg2000SamplesOfSixteenBitsBecomeBytes() throws Exception {
        BufferedImage grey = new BufferedImage(16, 16, BufferedImage.TYPE_USHORT_GRAY);
        for (int i = 0; i < 256; i++) {
            grey.getRaster().setSample(i % 16, i / 16, 0, 0x8000);
        }
        ImageSource source =
                image("/Width 16 /Height 16 /ColorSpace /DeviceGray /Filter /JPXDecode", encoded(grey, "jpeg2000"));
        assertThat(source.bits()).isEqualTo(16);
        assertThat(near(source.decode().samples()[100], 0x80)).isLessThan(3);
    }

    @Test
    void missingDataReadsAsZero() throws Exception {
        assertThat(samples("/Width 2 /Height 2 /ColorSpace /DeviceGray /BitsPerComponent 8", 5))
                .containsExactly(5, 0, 0, 0);
    }

    @Test
    void aTinyFileThatDeclaresAHugeImageIsRefusedBeforeAllocation() throws Exception {
        ImageSource source = image("/Width 100000 /Height 100000 /ColorSpace /DeviceRGB /BitsPerComponent 8", bytes(1));
        assertThatThrownBy(source::decode)
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("100000 × 100000")
                .hasMessageContaining("limit of 400 million");
    }

    @Test
    void aJpegWhoseOwnHeaderIsHugeIsRefused() throws Exception {
        byte[] jpeg = encoded(flat(BufferedImage.TYPE_INT_RGB, 0), "jpg");
        for (int i = 0; i + 9 < jpeg.length; i++) {
            if ((jpeg[i] & 255) == 0xFF && (jpeg[i + 1] & 255) == 0xC0) {
                java.util.Arrays.fill(jpeg, i + 5, i + 9, (byte) 0xFF);
                break;
            }
        }
        ImageSource source =
                image("/Width 16 /Height 16 /ColorSpace /DeviceRGB /BitsPerComponent 8 /Filter /DCTDecode", jpeg);
        assertThatThrownBy(source::decode).hasMessageContaining("65535 × 65535");
    }

    @Test
    void aDeflateBombYieldsOnlyTheSamplesTheImageHas() throws Exception {
        ImageSource source = image(
                "/Width 2 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter /FlateDecode",
                deflated(new byte[50_000_000]));
        assertThat(source.decode().samples()).containsExactly(0, 0);
    }

    @Test
    void anUndecodableImageIsRefusedInOneLine() throws Exception {
        ImageSource source = image(
                "/Width 16 /Height 16 /ColorSpace /DeviceRGB /BitsPerComponent 8 /Filter /DCTDecode", bytes(1, 2, 3));
        assertThatThrownBy(source::decode)
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("An image of 16 × 16 samples cannot be decoded");
    }

    @Test
    void imagesDecodeAlikeFromManyThreads() throws Exception {
        byte[] data = new byte[100 * 100];
        for (int i = 0; i < data.length; i++) {
            data[i] = (byte) (i * 31);
        }
        ImageSource source = image(
                "/Width 100 /Height 100 /ColorSpace /DeviceGray /BitsPerComponent 8 /Filter /FlateDecode",
                deflated(data));
        ExecutorService pool = Executors.newFixedThreadPool(4);
        try {
            List<Callable<byte[]>> jobs = new ArrayList<>();
            for (int i = 0; i < 16; i++) {
                jobs.add(() -> source.decode().samples());
            }
            for (Future<byte[]> result : pool.invokeAll(jobs)) {
                assertThat(result.get()).isEqualTo(data);
            }
        } finally {
            pool.shutdownNow();
        }
    }
}
