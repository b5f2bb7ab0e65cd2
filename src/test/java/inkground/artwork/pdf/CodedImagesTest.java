package inkground.artwork.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import inkground.artwork.ImageSource.Pixels;
import inkground.artwork.Op;
import inkground.base.Refusal;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What JPEG and JPEG 2000 data stand for: ISO 32000-2 §7.4.8 and §7.4.9. The files are written by open encoders from flat
 * colours, the JPEG 2000 ones without loss, and then given the markers and boxes that a case is about.
 */
class CodedImagesTest {
    @TempDir
    Path dir;

    private ImageSource image(String entries, byte[] data) throws Exception {
        return new PdfText()
                .resources("/XObject << /I 5 0 R >>").content("/I Do").stream(
                                "/Subtype /Image /Width 16 /Height 16 /BitsPerComponent 8 " + entries, data)
                        .only(Op.Image.class, dir)
                        .image();
    }

    private Pixels jpeg(String entries, byte[] data) throws Exception {
        return image("/Filter /DCTDecode " + entries, data).decode();
    }

    private ImageSource jpx(String entries, byte[] data) throws Exception {
        return image("/Filter /JPXDecode " + entries, data);
    }

    private static void assertFirst(Pixels pixels, int tolerance, int... expected) {
        assertThat(pixels.components()).isEqualTo(expected.length);
        for (int i = 0; i < expected.length; i++) {
            assertThat(pixels.samples()[i] & 255)
                    .as("component " + i + " of " + Arrays.toString(expected))
                    .isBetween(expected[i] - tolerance, expected[i] + tolerance);
        }
    }

    // ---- JPEG ----

    /** Y 100, Cb 90, Cr 170 by ITU-T T.871 §7: R = 100 + 1.402 × 42, G = 100 + 0.344 × 38 − 0.714 × 42, B = 100 − 1.772 × 38. */
    private static final int[] YCC = {100, 90, 170};

    private static final int[] RGB_OF_YCC = {159, 83, 33};

    @Test
    void threeComponentsThatSayNothingAreLuminanceAndChrominance() throws Exception {
        assertFirst(jpeg("/ColorSpace /DeviceRGB", Coded.jpeg(Coded.NO_MARKER, YCC)), 3, RGB_OF_YCC);
    }

    @Test
    void theColorTransformOfTheFilterKeepsThreeComponentsAsTheyAre() throws Exception {
        assertFirst(
                jpeg("/ColorSpace /DeviceRGB /DecodeParms << /ColorTransform 0 >>", Coded.jpeg(Coded.NO_MARKER, YCC)),
                3,
                YCC);
    }

    @Test
    void theAdobeMarkerGoesBeforeTheColorTransformOfTheFilter() throws Exception {
        String parameters = "/ColorSpace /DeviceRGB /DecodeParms << /ColorTransform ";
        assertFirst(jpeg(parameters + "1 >>", Coded.jpeg(0, YCC)), 3, YCC);
        assertFirst(jpeg(parameters + "0 >>", Coded.jpeg(1, YCC)), 3, RGB_OF_YCC);
    }

    @Test
    void theTransformIsDoneInEverySpaceOfThreeComponents() throws Exception {
        String lab = "/ColorSpace [/Lab << /WhitePoint [0.9642 1 0.8249] /Range [-128 127 -128 127] >>]";
        assertFirst(jpeg(lab, Coded.jpeg(0, YCC)), 3, YCC);
        assertFirst(jpeg(lab, Coded.jpeg(1, YCC)), 3, RGB_OF_YCC);
    }

    @Test
    void fourComponentsThatSayNothingAreCmyk() throws Exception {
        String cmyk = "/ColorSpace /DeviceCMYK";
        assertFirst(jpeg(cmyk, Coded.jpeg(Coded.NO_MARKER, 200, 100, 50, 25)), 3, 200, 100, 50, 25);
    }

    @Test
    void fourComponentsAreYcckWhereTheFilterOrTheMarkerSaysSo() throws Exception {
        String cmyk = "/ColorSpace /DeviceCMYK ";
        int[] ycck = {100, 90, 170, 25};
        int[] expected = {255 - 159, 255 - 83, 255 - 33, 25};
        assertFirst(jpeg(cmyk, Coded.jpeg(2, ycck)), 3, expected);
        assertFirst(
                jpeg(cmyk + "/DecodeParms << /ColorTransform 1 >>", Coded.jpeg(Coded.NO_MARKER, ycck)), 3, expected);
        assertFirst(
                jpeg(cmyk + "/Filter [/DCTDecode] /DecodeParms [<< /ColorTransform 1 >>]", Coded.jpeg(0, ycck)),
                3,
                ycck);
    }

    @Test
    void invertedInksAreTurnedByTheDecodeArrayAlone() throws Exception {
        String inverted = "/ColorSpace /DeviceCMYK /Decode [1 0 1 0 1 0 1 0]";
        assertFirst(jpeg(inverted, Coded.jpeg(0, 200, 100, 50, 25)), 3, 55, 155, 205, 230);
        assertFirst(jpeg(inverted, Coded.jpeg(2, 100, 90, 170, 25)), 3, 159, 83, 33, 230);
        assertFirst(jpeg(inverted, Coded.jpeg(Coded.NO_MARKER, 200, 100, 50, 25)), 3, 55, 155, 205, 230);
    }

    @Test
    void oneComponentIsNeverTransformed() throws Exception {
        String parameters = "/ColorSpace /DeviceGray /DecodeParms << /ColorTransform 1 >>";
        assertFirst(jpeg(parameters, Coded.jpeg(Coded.NO_MARKER, 77)), 2, 77);
    }

    // ---- JPEG 2000 ----

    @Test
    void aPaletteIsLookedUpWhereTheFileStatesTheSpace() throws Exception {
        byte[] boxes = Coded.join(
                Coded.enumerated(16),
                Coded.box("pclr", 0, 3, 3, 7, 7, 7, 1, 2, 3, 200, 100, 50, 9, 8, 7),
                Coded.box("cmap", 0, 0, 1, 0, 0, 0, 1, 1, 0, 0, 1, 2));
        byte[] file = Coded.jp2(boxes, Coded.codestream(1));
        assertThat(jpx("", file).space()).isEqualTo(new ColourSpace.DeviceRgb());
        assertFirst(jpx("", file).decode(), 0, 200, 100, 50);
        assertFirst(jpx("/ColorSpace /DeviceRGB", file).decode(), 0, 200, 100, 50);
    }

    @Test
    void indicesStayIndicesInAnIndexedSpace() throws Exception {
        byte[] file = Coded.jp2(Coded.enumerated(17), Coded.codestream(2));
        assertFirst(
                jpx("/ColorSpace [/Indexed /DeviceRGB 3 <000000 111111 222222 333333>]", file)
                        .decode(),
                0,
                2);
    }

    @Test
    void sYccBecomesRgbUnlessTheDictionaryStatesTheSpace() throws Exception {
        byte[] file = Coded.jp2(Coded.enumerated(18), Coded.codestream(YCC));
        assertThat(jpx("", file).space()).isEqualTo(new ColourSpace.DeviceRgb());
        assertFirst(jpx("", file).decode(), 1, RGB_OF_YCC);
        assertFirst(jpx("/ColorSpace /DeviceRGB", file).decode(), 0, YCC);
    }

    @Test
    void cmykIsKnownByItsNumberAndByFourColours() throws Exception {
        for (byte[] boxes : new byte[][] {Coded.enumerated(12), new byte[0]}) {
            ImageSource source = jpx("", Coded.jp2(boxes, Coded.codestream(200, 100, 50, 25)));
            assertThat(source.space()).isEqualTo(new ColourSpace.DeviceCmyk());
            assertFirst(source.decode(), 0, 200, 100, 50, 25);
        }
    }

    @Test
    void aProfileInTheFileIsItsSpace() throws Exception {
        byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
        byte[] colr = new byte[profile.length + 3];
        colr[0] = 2;
        System.arraycopy(profile, 0, colr, 3, profile.length);
        ImageSource source = jpx("", Coded.jp2(Coded.box("colr", colr), Coded.codestream(200, 100, 50)));
        assertThat(source.space()).isInstanceOfSatisfying(ColourSpace.Icc.class, icc -> assertThat(
                        icc.profile().bytes())
                .isEqualTo(profile));
        assertFirst(source.decode(), 0, 200, 100, 50);
    }

    @Test
    void aBrokenProfileLeavesTheDeviceSpace() throws Exception {
        byte[] file = Coded.jp2(Coded.box("colr", 2, 0, 0, 1, 2, 3, 4), Coded.codestream(200, 100, 50));
        assertThat(jpx("", file).space()).isEqualTo(new ColourSpace.DeviceRgb());
    }

    @Test
    void labHasTheRangesOfItsDefaultEncoding() throws Exception {
        ImageSource source = jpx("", Coded.jp2(Coded.enumerated(14), Coded.codestream(128, 128, 96)));
        ColourSpace.CieLab lab = (ColourSpace.CieLab) source.space();
        Pixels pixels = source.decode();
        double[] value = new double[3];
        for (int i = 0; i < 3; i++) {
            value[i] = lab.min(i) + (lab.max(i) - lab.min(i)) * (pixels.samples()[i] & 255) / 255.0;
        }
        assertThat(value[0]).isCloseTo(50.2, org.assertj.core.data.Offset.offset(0.05));
        assertThat(value[1]).as("128 is no red").isCloseTo(0, org.assertj.core.data.Offset.offset(1e-4));
        assertThat(value[2]).as("96 is no yellow").isCloseTo(0, org.assertj.core.data.Offset.offset(1e-4));
    }

    /** Blue, opacity, red, green: the definitions say which is which. */
    private static final byte[] SHUFFLED =
            Coded.box("cdef", 0, 4, 0, 0, 0, 0, 0, 3, 0, 1, 0, 1, 0, 0, 0, 2, 0, 0, 0, 1, 0, 3, 0, 0, 0, 2);

    @Test
    void channelDefinitionsPutTheColoursInOrder() throws Exception {
        byte[] file = Coded.jp2(Coded.join(Coded.enumerated(16), SHUFFLED), Coded.codestream(50, 128, 200, 100));
        ImageSource source = jpx("", file);
        assertThat(source.space()).isEqualTo(new ColourSpace.DeviceRgb());
        Pixels pixels = source.decode();
        assertFirst(pixels, 0, 200, 100, 50);
        assertThat(pixels.mask()).as("SMaskInData is 0 where not stated").isNull();
    }

    @Test
    void opacityInTheDataIsUsedWhereTheDictionarySaysSo() throws Exception {
        byte[] file = Coded.jp2(Coded.join(Coded.enumerated(16), SHUFFLED), Coded.codestream(50, 128, 200, 100));
        ImageSource source = jpx("/SMaskInData 1", file);
        Pixels pixels = source.decode();
        assertFirst(pixels, 0, 200, 100, 50);
        assertThat(pixels.mask().samples()).containsOnly((byte) 128);
        assertThat(source.maskIsOpacity()).isTrue();
        assertThat(jpx("/SMaskInData 0", file).decode().mask()).isNull();
    }

    @Test
    void colourMultipliedByItsOpacityIsDivided() throws Exception {
        // 100 × 128 / 255 = 50.2 was stored: 50 × 255 / 128 = 99.6.
        byte[] file = Coded.jp2(Coded.join(Coded.enumerated(16), SHUFFLED), Coded.codestream(25, 128, 100, 50));
        Pixels pixels = jpx("/SMaskInData 2", file).decode();
        assertFirst(pixels, 1, 199, 100, 50);
        assertThat(pixels.mask().samples()).containsOnly((byte) 128);
    }

    @Test
    void opacityThatTheFileDoesNotNameComesAfterTheColours() throws Exception {
        byte[] file = Coded.jp2(Coded.enumerated(17), Coded.codestream(77, 128));
        Pixels pixels = jpx("/SMaskInData 1", file).decode();
        assertFirst(pixels, 0, 77);
        assertThat(pixels.mask().samples()).containsOnly((byte) 128);
        byte[] five = Coded.jp2(Coded.enumerated(12), Coded.codestream(200, 100, 50, 25, 128));
        pixels = jpx("/SMaskInData 1 /ColorSpace /DeviceCMYK", five).decode();
        assertFirst(pixels, 0, 200, 100, 50, 25);
        assertThat(pixels.mask().samples()).containsOnly((byte) 128);
    }

    @Test
    void aBareCodestreamIsReadToo() throws Exception {
        assertFirst(
                jpx("/ColorSpace /DeviceRGB", Coded.codestream(200, 100, 50)).decode(), 0, 200, 100, 50);
    }

    @Test
    void jpegTwoThousandInksAreThePlanesOfADeviceNSpace() throws Exception {
        ImageSource source = new PdfText()
                .resources("/XObject << /I 5 0 R >>").content("/I Do").stream(
                                "/Subtype /Image /Width 16 /Height 16 /Filter /JPXDecode /ColorSpace [/DeviceN [/Reed /Rust]"
                                        + " /DeviceCMYK 6 0 R]",
                                Coded.codestream(200, 100))
                        .stream("/FunctionType 4 /Domain [0 1 0 1] /Range [0 1 0 1 0 1 0 1]", "{ 0 0 }")
                        .only(Op.Image.class, dir)
                        .image();
        assertFirst(source.decode(), 0, 200, 100);
    }

    private static byte[] reference(String name) throws Exception {
        try (InputStream in = CodedImagesTest.class.getResourceAsStream("/reference/jpx/" + name)) {
            return in.readAllBytes();
        }
    }

    /**
     * Of 4:2:0 the chrominance has a sample at every second point of the grid in each direction, ISO/IEC 15444-1 §B.2: at the
     * even ones, so that a picture from (3, 5) on has its first at (4, 6). Each is repeated up to the next.
     */
    @ParameterizedTest
    @CsvSource({"subsampled.j2k, 0, 0", "subsampled-tiled.j2k, 3, 5"})
    void subSampledComponentsLieUnderTheirOwnPoints(String name, int left, int top) throws Exception {
        ImageSource source = jpx("/ColorSpace /DeviceRGB", reference(name));
        assertThat(source.width()).isEqualTo(16);
        assertThat(source.height()).isEqualTo(12);
        byte[] samples = source.decode().samples();
        for (int y = 0; y < 12; y++) {
            for (int x = 0; x < 16; x++) {
                int cx = Math.max(0, (x + left) / 2 - (left + 1) / 2);
                int cy = Math.max(0, (y + top) / 2 - (top + 1) / 2);
                int at = (y * 16 + x) * 3;
                assertThat(new int[] {samples[at] & 255, samples[at + 1] & 255, samples[at + 2] & 255})
                        .as(x + ", " + y)
                        .containsExactly(30 + 8 * x + 5 * y, 100 + 9 * cx + cy, 190 - 6 * cy - 3 * cx);
            }
        }
    }

    @Test
    void subSampledSYccBecomesRgb() throws Exception {
        byte[] file = Coded.jp2(Coded.enumerated(18), reference("subsampled.j2k"));
        // (10, 4): Y 130, Cb 100 + 45 + 2 = 147, Cr 190 - 12 - 15 = 163; R = 130 + 1.402 x 35, B = 130 + 1.772 x 19,
        // G = 130 - 0.344 x 19 - 0.714 x 35
        byte[] samples = jpx("", file).decode().samples();
        int at = (4 * 16 + 10) * 3;
        assertThat(samples[at] & 255).isEqualTo(179);
        assertThat(samples[at + 1] & 255).isBetween(98, 99);
        assertThat(samples[at + 2] & 255).isEqualTo(164);
    }

    @Test
    void subSampledOpacityIsTheMaskOfTheWholePicture() throws Exception {
        byte[] definitions = Coded.box("cdef", 0, 3, 0, 0, 0, 0, 0, 1, 0, 1, 0, 1, 0, 0, 0, 2, 0, 9, 0, 0);
        byte[] file = Coded.jp2(Coded.join(Coded.enumerated(17), definitions), reference("subsampled.j2k"));
        Pixels pixels = jpx("/SMaskInData 1 /ColorSpace /DeviceGray", file).decode();
        assertThat(pixels.samples()[16 + 1] & 255).isEqualTo(30 + 8 + 5);
        assertThat(pixels.mask().width()).isEqualTo(16);
        assertThat(pixels.mask().samples()[11 * 16 + 15] & 255).isEqualTo(100 + 9 * 7 + 5);
    }

    /** A value of −128 is none of the component, one of 127 all of it: the range is that of the bits, centred on 0. */
    @Test
    void signedComponentsAreMovedUpByHalfTheirRange() throws Exception {
        byte[] samples =
                jpx("/ColorSpace /DeviceGray", reference("signed.j2k")).decode().samples();
        for (int i = 0; i < samples.length; i++) {
            int stored = Math.min(127, 16 * (i % 16) - 128 + 8 * (i / 16));
            assertThat(samples[i] & 255).isEqualTo(stored + 128);
        }
    }

    /** Values of 5, 8 and 7 bits: 11 of 31, 100 of 255 and 127 of 127, each a share of its own range. */
    @Test
    void componentsOfUnlikeDepthAreEachScaledByTheirOwn() throws Exception {
        byte[] codestream = Coded.codestream(11 - 16 + 128, 100, 127 - 64 + 128);
        assertFirst(
                jpx("/ColorSpace /DeviceRGB", Coded.depths(codestream, 5, 8, 7)).decode(), 0, 90, 100, 255);
        byte[] grey = Coded.depths(Coded.codestream(77, 1 - 8 + 128), 8, 4);
        Pixels pixels =
                jpx("/SMaskInData 1", Coded.jp2(Coded.enumerated(17), grey)).decode();
        assertFirst(pixels, 0, 77);
        assertThat(pixels.mask().samples()).as("1 of 15").containsOnly((byte) 17);
    }

    @Test
    void valuesOfMoreBitsThanCanBeHeldEndInOneLine() throws Exception {
        ImageSource source = jpx("/ColorSpace /DeviceGray", Coded.depths(Coded.codestream(77), 38));
        assertThatThrownBy(source::decode)
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("An image of 16 × 16 samples cannot be decoded");
    }

    /** Cut off or turned anywhere, a codestream ends in samples or in one line. */
    @Test
    void damagedCodestreamsEndInSamplesOrInOneLine() throws Exception {
        byte[] whole = reference("subsampled-tiled.j2k");
        Random random = new Random(20261126);
        int refused = 0;
        for (int round = 0; round < 300; round++) {
            byte[] broken = Arrays.copyOf(whole, whole.length - (round % 3 == 0 ? random.nextInt(400) : 0));
            for (int k = round % 3; k > 0; k--) {
                broken[50 + random.nextInt(broken.length - 50)] = (byte) random.nextInt();
            }
            try {
                Pixels pixels = jpx("/ColorSpace /DeviceRGB", broken).decode();
                assertThat(pixels.samples()).hasSize(16 * 12 * 3);
            } catch (Refusal e) {
                assertThat(e.getMessage()).endsWith("Export the file again with this image replaced.");
                refused++;
            }
        }
        assertThat(refused).isBetween(1, 299);
    }

    @Test
    void fewerChannelsThanTheSpaceHasAreRefused() throws Exception {
        ImageSource source = jpx("/ColorSpace /DeviceCMYK", Coded.codestream(200, 100, 50));
        assertThatThrownBy(source::decode)
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("An image of 16 × 16 samples cannot be decoded");
    }

    @Test
    void boxesThatLieAreReadWithoutHarm() throws Exception {
        byte[] file = Coded.jp2(Coded.join(Coded.enumerated(16), SHUFFLED), Coded.codestream(50, 128, 200, 100));
        Random random = new Random(20261126);
        for (int round = 0; round < 5000; round++) {
            byte[] broken = file.clone();
            for (int k = 0; k < 3; k++) {
                broken[12 + random.nextInt(100)] = (byte) random.nextInt();
            }
            JpxBoxes boxes = JpxBoxes.of(broken);
            assertThat(boxes.channels(4)).hasSizeBetween(1, 255);
            assertThat(boxes.space(3).components()).isEqualTo(3);
            JpxFile jpx = JpxFile.of(broken);
            assertThat(jpx == null || jpx.space().components() <= 4).isTrue();
        }
    }

    @Test
    void aPaletteThatClaimsToBeHugeIsPassedOver() throws Exception {
        byte[] boxes = Coded.join(Coded.enumerated(17), Coded.box("pclr", 255, 255, 255, 7));
        assertFirst(jpx("", Coded.jp2(boxes, Coded.codestream(77))).decode(), 0, 77);
    }
}
