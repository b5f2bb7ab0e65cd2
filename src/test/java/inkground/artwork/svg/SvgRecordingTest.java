package inkground.artwork.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.artwork.Approximation;
import inkground.artwork.Artwork;
import inkground.artwork.BlendMode;
import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.ImageSource;
import inkground.artwork.Op;
import inkground.artwork.PageBox;
import inkground.artwork.Paint;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SvgRecordingTest {
    private static final ColourSpace RGB = new ColourSpace.DeviceRgb();

    @TempDir
    Path dir;

    private DisplayList list(String attributes, String body) throws Exception {
        Path file = Files.writeString(
                dir.resolve("art.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' " + attributes + ">" + body + "</svg>");
        try (Artwork artwork = SvgArtwork.open(file, new Cancel(), Progress.NONE)) {
            return artwork.record(1, new Cancel(), Progress.NONE);
        }
    }

    /** Operations of a drawing of 96 × 96 px, which is 72 × 72 pt. */
    private List<Op> ops(String body) throws Exception {
        return list("width='1in' height='1in' viewBox='0 0 96 96'", body).ops();
    }

    private <T extends Op> T only(Class<T> kind, String body) throws Exception {
        List<Op> ops = ops(body);
        assertThat(ops).hasSize(1);
        return kind.cast(ops.get(0));
    }

    private static Colour flat(Paint paint) {
        return ((Paint.Flat) paint).colour();
    }

    private static void assertBox(Box box, double x0, double y0, double x1, double y1) {
        assertThat(box.x0()).isCloseTo(x0, within(1e-4));
        assertThat(box.y0()).isCloseTo(y0, within(1e-4));
        assertThat(box.x1()).isCloseTo(x1, within(1e-4));
        assertThat(box.y1()).isCloseTo(y1, within(1e-4));
    }

    @Test
    void thePageIsAsLargeAsItsUnitsSay() throws Exception {
        Box a4 = list("width='210mm' height='29.7cm' viewBox='0 0 7 9'", "")
                .page()
                .box(PageBox.MEDIA);
        assertThat(a4.widthMm()).isCloseTo(210, within(1e-9));
        assertThat(a4.heightMm()).isCloseTo(297, within(1e-9));
        Box byRatio = list("width='2in' viewBox='0 0 10 5'", "").page().box(PageBox.MEDIA);
        assertBox(byRatio, 0, 0, 144, 72);
    }

    @Test
    void aPageThatStatesNoSizeTakesAUnitForAPixelAndSaysSo() throws Exception {
        DisplayList list = list("viewBox='0 0 192 96'", "");
        assertBox(list.page().box(PageBox.MEDIA), 0, 0, 144, 72);
        assertThat(list.approximations()).extracting(Approximation::feature).anyMatch(f -> f.contains("how large"));
    }

    @Test
    void aFillKeepsItsEightBitColourRuleAndPlace() throws Exception {
        Op.Fill fill =
                only(Op.Fill.class, "<path d='M8 8H88V88z' fill='#1e90ff' fill-rule='evenodd' fill-opacity='.5'/>");
        assertThat(flat(fill.paint())).isEqualTo(new Colour(RGB, 0x1e / 255f, 0x90 / 255f, 1f));
        assertThat(fill.rule()).isEqualTo(FillRule.EVEN_ODD);
        assertThat(fill.style().alpha()).isCloseTo(0.5, within(0.002));
        assertBox(fill.bounds(), 6, 6, 66, 66);
    }

    @Test
    void aStrokeKeepsItsPenAndItsSpace() throws Exception {
        Op.Stroke stroke = only(
                Op.Stroke.class,
                "<line x1='10' x2='50' y1='9' y2='9' transform='scale(1 .5)' stroke='red' stroke-width='4'"
                        + " stroke-linecap='round' stroke-linejoin='bevel' stroke-dasharray='5 2 1' stroke-dashoffset='3'/>");
        assertThat(stroke.pen().width()).isEqualTo(4);
        assertThat(stroke.pen().cap()).isEqualTo(inkground.geometry.Pen.Cap.ROUND);
        assertThat(stroke.pen().join()).isEqualTo(inkground.geometry.Pen.Join.BEVEL);
        assertThat(stroke.pen().dash()).containsExactly(5, 2, 1, 5, 2, 1);
        assertThat(stroke.pen().dashPhase()).isEqualTo(3);
        assertThat(stroke.penToPage().a()).isCloseTo(0.75, within(1e-6));
        assertThat(stroke.penToPage().d()).isCloseTo(0.375, within(1e-6));
    }

    @Test
    void aStrokeThatDoesNotScaleKeepsItsWidthOnThePage() throws Exception {
        Op.Stroke stroke = only(
                Op.Stroke.class,
                "<g transform='scale(8 1)'><path d='M1 1V9' stroke='red' stroke-width='4' fill='none'"
                        + " vector-effect='non-scaling-stroke'/></g>");
        assertThat(stroke.penToPage().a()).isCloseTo(0.75, within(1e-6));
        assertBox(stroke.path().bounds(), 8, 1, 8, 9);
    }

    @Test
    void styleSheetsAndModernColoursAreUnderstood() throws Exception {
        List<Op> ops = ops(
                "<style>.oar{fill:rgba(255,0,0,.25)} #b{fill:#00ff0080}</style><rect class='oar' width='9'"
                        + " height='9'/><rect id='b' width='9' height='9'/><rect fill='hsl(240 100% 50%)' width='9' height='9'/>");
        assertThat(flat(((Op.Fill) ops.get(0)).paint())).isEqualTo(new Colour(RGB, 1f, 0f, 0f));
        assertThat(ops.get(0).style().alpha()).isCloseTo(0.25, within(0.002));
        assertThat(ops.get(1).style().alpha()).isCloseTo(128 / 255.0, within(0.002));
        assertThat(flat(((Op.Fill) ops.get(2)).paint())).isEqualTo(new Colour(RGB, 0f, 0f, 1f));
    }

    @Test
    void tintsOfTheDeviceStayTints() throws Exception {
        DisplayList list = list("width='9' height='9'", "<rect fill='device-cmyk(0 1 .5 .25)' width='9' height='9'/>");
        Colour colour = flat(((Op.Fill) list.ops().get(0)).paint());
        assertThat(colour).isEqualTo(new Colour(new ColourSpace.DeviceCmyk(), 0f, 1f, 0.5f, 0.25f));
        assertThat(list.groupSpace()).as("blending in RGB would lose the tints").isNull();
    }

    /** SVG 1.1 §12.3.2: the sRGB colour is what a renderer takes that cannot use the profile. */
    @Test
    void aDamagedProfileCostsAShapeItsExactColourAndNotTheShape() throws Exception {
        byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_LINEAR_RGB).getData();
        String[] damaged = {
            Base64.getEncoder().encodeToString(Arrays.copyOf(profile, 40)),
            Base64.getEncoder().encodeToString("no profile at all".getBytes(StandardCharsets.US_ASCII)),
            "%%%"
        };
        for (String data : damaged) {
            DisplayList list = list(
                    "width='9' height='9'",
                    "<color-profile name='club' href='data:application/vnd.iccprofile;base64," + data + "'/>"
                            + "<rect fill='red icc-color(club, 0.1, 0.4, 0.5)' width='9' height='9'/>"
                            + "<rect stroke='red icc-color(club, 0.1, 0.4, 0.5)' width='5' height='5'/>");
            assertThat(list.ops()).as(data).hasSize(3);
            assertThat(flat(((Op.Fill) list.ops().get(0)).paint())).isEqualTo(new Colour(RGB, 1f, 0f, 0f));
            assertThat(list.approximations())
                    .as(data)
                    .extracting(Approximation::feature)
                    .containsExactly("a colour by the profile club, which is damaged");
        }
    }

    @Test
    void aColourByAMissingProfileIsItsStandInAndIsNoted() throws Exception {
        DisplayList list =
                list("width='9' height='9'", "<rect fill='red icc-color(club, 0.1, 0.4)' width='9' height='9'/>");
        assertThat(flat(((Op.Fill) list.ops().get(0)).paint())).isEqualTo(new Colour(RGB, 1f, 0f, 0f));
        assertThat(list.approximations()).extracting(Approximation::feature).anyMatch(f -> f.contains("profile club"));
    }

    /** SVG 1.1 §12.3. Only a profile inside the file is read. */
    @Test
    void aColourByAProfileInTheFileKeepsItsNumbersAndAnyOtherIsToldOf() throws Exception {
        byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_LINEAR_RGB).getData();
        String inside =
                "data:application/vnd.iccprofile;base64," + Base64.getEncoder().encodeToString(profile);
        Files.write(dir.resolve("club.icc"), profile);
        String rect = "<rect fill='red icc-color(club, 0.1, 0.4, 0.5)' width='9' height='9'/>";
        DisplayList carried = list("width='9' height='9'", "<color-profile name='club' href='" + inside + "'/>" + rect);
        Colour colour = flat(((Op.Fill) carried.ops().get(0)).paint());
        assertThat(colour.components()).containsExactly(0.1f, 0.4f, 0.5f);
        // the platform writes it anew, with other lengths of its curves' padding
        ICC_Profile kept = ICC_Profile.getInstance(
                ((ColourSpace.Icc) colour.space()).profile().bytes());
        for (int tag : new int[] {ICC_Profile.icSigProfileDescriptionTag, ICC_Profile.icSigGreenColorantTag}) {
            assertThat(kept.getData(tag))
                    .isEqualTo(ICC_Profile.getInstance(profile).getData(tag));
        }
        assertThat(carried.approximations()).isEmpty();
        for (String stated : List.of(
                "<color-profile name='club' href='club.icc'/>",
                "<style>@color-profile { name: club; src: url(" + inside + ") }</style>")) {
            DisplayList list = list("width='9' height='9'", stated + rect);
            assertThat(flat(((Op.Fill) list.ops().get(0)).paint())).isEqualTo(new Colour(RGB, 1f, 0f, 0f));
            assertThat(list.approximations())
                    .as(stated)
                    .extracting(Approximation::feature)
                    .anyMatch(f -> f.contains("profile club"));
        }
    }

    @Test
    void aLinearGradientStaysAGradientWithExactStops() throws Exception {
        Op.Fill fill = only(
                Op.Fill.class,
                "<linearGradient id='g'><stop stop-color='#f00'/><stop offset='.5' stop-color='#00f'/><stop offset='1'"
                        + " stop-color='#0f0'/></linearGradient><rect width='96' height='48' fill='url(#g)'/>");
        Paint.Shading shading = (Paint.Shading) fill.paint();
        Paint.Axial axial = (Paint.Axial) shading.geometry();
        assertThat(axial.extendStart() && axial.extendEnd()).isTrue();
        assertThat(shading.toPage().x(axial.x1(), axial.y1())).isCloseTo(72, within(1e-4));
        float[] out = new float[3];
        shading.function().apply(new float[] {0.25f}, out);
        assertThat(out).containsExactly(0.5f, 0f, 0.5f);
    }

    @Test
    void aRepeatedGradientCoversTheWholeShape() throws Exception {
        Op.Fill fill = only(
                Op.Fill.class,
                "<linearGradient id='g' x2='.25' spreadMethod='reflect'><stop stop-color='#000'/><stop offset='1'"
                        + " stop-color='#fff'/></linearGradient><rect width='96' height='48' fill='url(#g)'/>");
        Paint.Shading shading = (Paint.Shading) fill.paint();
        Paint.Axial axial = (Paint.Axial) shading.geometry();
        assertThat(axial.t1()).isEqualTo(4);
        float[] out = new float[3];
        shading.function().apply(new float[] {1.25f}, out);
        assertThat(out[0]).isEqualTo(0.75f);
    }

    @Test
    void aGradientWhoseOpacityVariesCarriesAMask() throws Exception {
        Op.Fill fill = only(
                Op.Fill.class,
                "<radialGradient id='g' fr='.1'><stop stop-color='red'/><stop offset='1' stop-color='red'"
                        + " stop-opacity='0'/></radialGradient><rect width='96' height='96' fill='url(#g)'/>");
        assertThat(((Paint.Radial) ((Paint.Shading) fill.paint()).geometry()).r0())
                .isCloseTo(0.1, within(1e-6));
        Op.Fill mask = (Op.Fill) fill.style().softMask().group().ops().get(0);
        float[] out = new float[1];
        ((Paint.Shading) mask.paint()).function().apply(new float[] {0.75f}, out);
        assertThat(out[0]).isEqualTo(0.25f);
    }

    @Test
    void aPatternBecomesATiling() throws Exception {
        Op.Fill fill = only(
                Op.Fill.class,
                "<pattern id='p' width='8' height='4' patternUnits='userSpaceOnUse' patternTransform='scale(2)'>"
                        + "<circle r='3' fill='navy'/></pattern><rect width='96' height='96' fill='url(#p)'"
                        + " fill-opacity='.5'/>");
        Paint.Tiling tiling = (Paint.Tiling) fill.paint();
        assertThat(tiling.xStep()).isEqualTo(8);
        assertThat(tiling.toPage().a()).isCloseTo(1.5, within(1e-6));
        assertThat(tiling.cell()).hasSize(1).first().isInstanceOf(Op.Fill.class);
        assertThat(fill.style().alpha()).isCloseTo(0.5, within(1e-6));
    }

    @Test
    void aPatternOfVeryManyCellsIsRecordedAsOneCell() throws Exception {
        Op.Fill fill = only(
                Op.Fill.class,
                "<pattern id='p' width='.1' height='.1' patternUnits='userSpaceOnUse'><rect width='.1' height='.1'/>"
                        + "</pattern><rect width='96' height='96' fill='url(#p)'/>");
        Paint.Tiling tiling = (Paint.Tiling) fill.paint();
        assertThat(tiling.xStep()).isCloseTo(0.1, within(1e-6));
        assertThat(tiling.cell()).hasSize(1);
    }

    @Test
    void groupOpacityMakesAGroupAndASingleObjectTakesItItself() throws Exception {
        String rects = "<rect width='9' height='9'/><rect width='5' height='5'/>";
        Op.Group group = only(Op.Group.class, "<g opacity='.5'>" + rects + "</g>");
        assertThat(group.isolated()).isTrue();
        assertThat(group.style().alpha()).isEqualTo(0.5);
        assertThat(group.ops()).hasSize(2);
        assertThat(only(Op.Fill.class, "<rect opacity='.25' width='9' height='9'/>")
                        .style()
                        .alpha())
                .isEqualTo(0.25);
    }

    @Test
    void blendModesAreKeptAndIsolationMakesAGroup() throws Exception {
        Op.Fill fill = only(Op.Fill.class, "<rect style='mix-blend-mode:color-dodge' width='9' height='9'/>");
        assertThat(fill.style().blend()).isEqualTo(BlendMode.COLOR_DODGE);
        Op.Group group = only(
                Op.Group.class,
                "<g style='isolation:isolate'><rect style='mix-blend-mode:multiply' width='9' height='9'/></g>");
        assertThat(group.ops().get(0).style().blend()).isEqualTo(BlendMode.MULTIPLY);
    }

    @Test
    void aClipStaysAPath() throws Exception {
        Op.Fill fill = only(
                Op.Fill.class,
                "<clipPath id='c'><rect x='8' y='8' width='16' height='8'/></clipPath><rect width='96' height='96'"
                        + " clip-path='url(#c)'/>");
        assertBox(fill.clip().bounds(), 6, 6, 18, 12);
    }

    @Test
    void theChildrenOfAClipAddUpWhicheverWayTheyTurnAndFillTheHolesOfOneAnother() throws Exception {
        Op.Fill fill = only(
                Op.Fill.class,
                "<clipPath id='c'><path clip-rule='evenodd' d='M8 8h64v64h-64z M24 24h32v32h-32z'/>"
                        + "<path d='M30 30v10h10v-10z'/><path d='M60 60h30v30h-30z'/></clipPath>"
                        + "<rect width='96' height='96' clip-path='url(#c)'/>");
        java.awt.geom.Path2D clip =
                inkground.geometry.Awt.path(fill.clip().path(), fill.clip().rule());
        double px = 0.75; // pt
        assertThat(clip.contains(12 * px, 12 * px)).as("a ring").isTrue();
        assertThat(clip.contains(35 * px, 35 * px)).as("in its hole").isTrue();
        assertThat(clip.contains(50 * px, 50 * px)).as("the rest of the hole").isFalse();
        assertThat(clip.contains(66 * px, 66 * px)).as("where two overlap").isTrue();
        assertThat(clip.contains(85 * px, 85 * px)).as("beyond the ring").isTrue();
    }

    @Test
    void aClipWithoutContentClipsEverythingAway() throws Exception {
        assertThat(ops("<clipPath id='c'/><rect width='96' height='96' clip-path='url(#c)'/>"))
                .isEmpty();
    }

    @Test
    void aMaskBecomesASoftMaskOfLuminance() throws Exception {
        Op.Fill fill = only(
                Op.Fill.class,
                "<mask id='m'><rect width='96' height='96' fill='#0f0'/></mask><rect width='96' height='96'"
                        + " mask='url(#m)'/>");
        assertThat(fill.style().softMask().luminosity()).isTrue();
        Op.Fill inside = (Op.Fill) fill.style().softMask().group().ops().get(0);
        assertThat(flat(inside.paint())).isEqualTo(new Colour(new ColourSpace.DeviceGray(), 0.7154f));
    }

    @Test
    void typeIsKnownAsType() throws Exception {
        Op.Fill fill = only(Op.Fill.class, "<text x='5' y='40' font-size='24' font-family='Nowhere Sans'>Heron</text>");
        assertThat(fill.text().text()).isEqualTo("Heron");
        assertThat(fill.text().font()).isEqualTo("Nowhere Sans");
        assertThat(fill.text().sizePt()).isCloseTo(18, within(1e-4));
        assertThat(fill.text().embedded()).isFalse();
        assertThat(list("width='9' height='9'", "<text font-family='Nowhere Sans'>Heron</text>")
                        .approximations())
                .extracting(Approximation::feature)
                .anyMatch(f -> f.contains("Nowhere Sans"));
    }

    @Test
    void strokesComeBeforeFillsWhereTheFileSaysSo() throws Exception {
        List<Op> ops = ops("<rect width='9' height='9' stroke='red' paint-order='stroke'/>");
        assertThat(ops.get(0)).isInstanceOf(Op.Stroke.class);
        assertThat(ops.get(1)).isInstanceOf(Op.Fill.class);
    }

    @Test
    void markersAndUsesStayVectors() throws Exception {
        assertThat(ops("<marker id='m' orient='auto'><path d='M0 0L3 1.5L0 3z'/></marker><path d='M5 5H50'"
                        + " stroke='red' marker-end='url(#m)'/><symbol id='s' viewBox='0 0 2 2'><circle r='1'/></symbol>"
                        + "<use href='#s' width='20' height='20'/>"))
                .allMatch(op -> op instanceof Op.Fill || op instanceof Op.Stroke)
                .hasSizeGreaterThanOrEqualTo(3);
    }

    @Test
    void aFilterIsRasterisedAt300PixelsPerInchAndSaidSo() throws Exception {
        DisplayList list = list(
                "width='1in' height='1in'",
                "<filter id='f'><feGaussianBlur stdDeviation='2'/></filter><rect x='24' y='24' width='48' height='48'"
                        + " fill='red' filter='url(#f)'/>");
        Op.Image image = (Op.Image) list.ops().get(0);
        double dpi = image.image().width() / (image.bounds().width() / 72);
        assertThat(dpi).isCloseTo(300, within(0.01));
        ImageSource.Pixels pixels = image.image().decode();
        int middle = pixels.width() * (pixels.height() / 2) + pixels.width() / 2;
        assertThat(pixels.samples()[3 * middle] & 255).isEqualTo(255);
        assertThat(pixels.mask().samples()[middle] & 255).isEqualTo(255);
        assertThat(pixels.mask().samples()[0] & 255).isLessThan(8);
        assertThat(list.approximations()).extracting(Approximation::shownAs).anyMatch(s -> s.contains("300"));
    }

    /** Filter Effects Level 1 §9.14: one colour stays itself however it is blurred; a wide blur keeps its place. */
    @Test
    void aBlurKeepsItsColourAndIsAGaussFunction() throws Exception {
        for (String space : List.of("linearRGB", "sRGB")) {
            Op.Image image = only(
                    Op.Image.class,
                    "<filter id='f' x='-.5' width='2' color-interpolation-filters='" + space
                            + "'><feGaussianBlur stdDeviation='4'/></filter>"
                            + "<rect x='24' y='24' width='48' height='48' fill='seagreen' filter='url(#f)'/>");
            ImageSource.Pixels pixels = image.image().decode();
            double perPx = pixels.width() / (image.bounds().width() / 0.75);
            int y = pixels.height() / 2;
            for (double px : new double[] {18, 24, 30, 48}) {
                int x = (int) Math.round((px - image.bounds().x0() / 0.75) * perPx - 0.5);
                int at = y * pixels.width() + x;
                // beside an edge at 24: the normal distribution at -1.5, 0 and 1.5
                double covered = px == 18 ? 0.0668 : px == 24 ? 0.5 : px == 30 ? 0.9332 : 1;
                assertThat((pixels.mask().samples()[at] & 255) / 255.0).isCloseTo(covered, within(0.02));
                int tolerance = px == 18 ? 8 : 2; // of 17 levels of alpha
                assertThat(pixels.samples()[3 * at] & 255).isCloseTo(0x2e, within(tolerance));
                assertThat(pixels.samples()[3 * at + 1] & 255).isCloseTo(0x8b, within(tolerance));
                assertThat(pixels.samples()[3 * at + 2] & 255).isCloseTo(0x57, within(tolerance));
            }
        }
    }

    @Test
    void aShadowOfTheAlphaAloneIsBlurredToo() throws Exception {
        Op.Image image = only(
                Op.Image.class,
                "<filter id='f'><feGaussianBlur in='SourceAlpha' stdDeviation='3 0'/></filter>"
                        + "<rect x='24' y='24' width='48' height='48' fill='red' transform='rotate(10 48 48)'"
                        + " filter='url(#f)'/>");
        ImageSource.Pixels pixels = image.image().decode();
        int middle = pixels.width() * (pixels.height() / 2) + pixels.width() / 2;
        assertThat(pixels.mask().samples()[middle] & 255).isEqualTo(255);
        assertThat(pixels.samples()[3 * middle] & 255).isZero();
    }

    @Test
    void aPictureInsideIsPlacedUprightInItsBox() throws Exception {
        Op.Image image = only(Op.Image.class, "<image x='8' y='16' width='16' height='8' href='" + data(4, 2) + "'/>");
        assertThat(image.image().width()).isEqualTo(4);
        assertBox(image.bounds(), 6, 12, 18, 18);
        assertThat(image.unitToPage().y(0, 1)).as("its top").isCloseTo(12, within(1e-4));
    }

    @Test
    void aHiddenPictureIsNotShown() throws Exception {
        assertThat(ops("<image width='16' height='8' visibility='hidden' href='" + data(4, 2) + "'/>"))
                .isEmpty();
    }

    @Test
    void linkedPicturesComeFromTheOwnFolderOnly() throws Exception {
        Path folder = Files.createDirectory(dir.resolve("inner"));
        Path outside = dir.resolve("outside.png");
        ImageIO.write(new BufferedImage(2, 2, BufferedImage.TYPE_INT_RGB), "png", outside.toFile());
        Files.copy(outside, folder.resolve("inside.png"));
        Files.createSymbolicLink(folder.resolve("link.png"), outside);
        StringBuilder body = new StringBuilder();
        for (String address : List.of(
                "../outside.png",
                outside.toString(),
                outside.toUri().toString(),
                "link.png",
                "http://localhost/a.png")) {
            body.append("<image width='9' height='9' href='").append(address).append("'/>");
        }
        Path file = Files.writeString(
                folder.resolve("art.svg"),
                "<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'>" + body
                        + "<image width='9' height='9' href='inside.png'/></svg>");
        try (Artwork artwork = SvgArtwork.open(file, new Cancel(), Progress.NONE)) {
            DisplayList list = artwork.record(1, new Cancel(), Progress.NONE);
            assertThat(list.ops()).hasSize(1);
            assertThat(list.approximations())
                    .extracting(Approximation::feature)
                    .anyMatch(f -> f.contains("inside.png"))
                    .anyMatch(f -> f.contains("outside the file's own folder"));
        }
    }

    @Test
    void nothingOutsideTheFileIsReadAndNoScriptIsRun() throws Exception {
        Path secret = Files.writeString(dir.resolve("secret.txt"), "oarlock");
        String uri = secret.toUri().toString();
        Path file = Files.writeString(
                dir.resolve("art.svg"),
                "<?xml-stylesheet href='" + uri + "'?><!DOCTYPE svg [<!ENTITY x SYSTEM '" + uri + "'>]>"
                        + "<svg xmlns='http://www.w3.org/2000/svg' width='99' height='99'><style>@import url('" + uri
                        + "');@font-face{font-family:q;src:url('" + uri + "')}</style><script>boom()</script>"
                        + "<use href='" + uri + "#a'/><text y='20' font-family='q'>a&x;b</text></svg>");
        try (Artwork artwork = SvgArtwork.open(file, new Cancel(), Progress.NONE)) {
            DisplayList list = artwork.record(1, new Cancel(), Progress.NONE);
            assertThat(list.ops()).hasSize(1);
            assertThat(((Op.Fill) list.ops().get(0)).text().text()).isEqualTo("ab");
            assertThat(list.approximations()).extracting(Approximation::feature).contains("a script");
        }
    }

    private static String data(int width, int height) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB), "png", out);
        return "data:image/png;base64," + Base64.getEncoder().encodeToString(out.toByteArray());
    }
}
