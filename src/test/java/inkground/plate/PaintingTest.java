package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.artwork.Clip;
import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.ImageSource;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.artwork.SoftMask;
import inkground.artwork.Style;
import inkground.artwork.TintTransform;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.geometry.FillRule;
import inkground.geometry.Matrix;
import inkground.geometry.Outline;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What operations do to the planes; expected values are worked out by hand from the clauses of ISO 32000-2 named. */
class PaintingTest {
    private static final Outline ALL = Pages.rect(0, 0, 20, 20);
    private static final Colour GREEN = Pages.spot("Lock Gate Green", 0.6);

    @Test
    void aSpotColourHasItsOwnPlaneAndLeavesItsAlternateAlone() throws Refusal {
        assertThat(inks(Pages.fill(ALL, GREEN))).isEqualTo(Map.of("Lock Gate Green", 153));
    }

    @Test
    void withoutOverprintAColourKnocksOutAllOtherInks() throws Refusal {
        assertThat(inks(Pages.fill(ALL, Pages.cmyk(1, 0.5, 0, 0)), Pages.fill(ALL, GREEN)))
                .isEqualTo(Map.of("Lock Gate Green", 153));
        assertThat(inks(Pages.fill(ALL, GREEN), Pages.fill(ALL, Pages.cmyk(1, 0, 0, 0))))
                .isEqualTo(Map.of("Cyan", 255));
    }

    @Test
    void anOverprintingSpotLeavesTheProcessInks() throws Refusal { // §8.6.7
        assertThat(inks(over(Pages.cmyk(1, 0, 0, 0), GREEN, 0))).isEqualTo(Map.of("Cyan", 255, "Lock Gate Green", 153));
    }

    @Test
    void overprintingCmykOfModeZeroReplacesAllProcessInksButNoSpot() throws Refusal { // §8.6.7
        Op[] ops = {
            Pages.fill(ALL, GREEN),
            Pages.fill(ALL, Pages.cmyk(1, 0, 0, 0), Pages.overprint(0), null),
            Pages.fill(ALL, Pages.cmyk(0, 0.4, 0, 0), Pages.overprint(0), null)
        };
        assertThat(inks(ops)).isEqualTo(Map.of("Lock Gate Green", 153, "Magenta", 102));
    }

    @Test
    void overprintingCmykOfModeOneLeavesInksWhoseTintIsZero() throws Refusal { // §8.6.7
        assertThat(inks(over(Pages.cmyk(1, 0.2, 0, 0), Pages.cmyk(0, 0.4, 0, 1), 1)))
                .isEqualTo(Map.of("Cyan", 255, "Magenta", 102, "Black", 255));
    }

    @Test
    void whiteOfModeOneSetToOverprintVanishes() throws Refusal {
        assertThat(inks(over(Pages.cmyk(1, 0, 0, 0), Pages.cmyk(0, 0, 0, 0), 1)))
                .isEqualTo(Map.of("Cyan", 255));
    }

    @Test
    void modeOneDoesNotSpareZeroTintsOfGreyOrImages() throws Refusal { // §8.6.7: direct DeviceCMYK only
        assertThat(inks(over(Pages.cmyk(1, 0, 0, 0), new Colour(Pages.GRAY, 0.2f), 1)))
                .isEqualTo(Map.of("Black", 204));
        Op.Image white = (Op.Image) Pages.image(Pages.CMYK, 1, 1, square(20), 0, 255, 0, 0);
        Op image = new Op.Image(white.image(), white.unitToPage(), Pages.overprint(1), null, Pages.ORIGIN);
        assertThat(inks(Pages.fill(ALL, Pages.cmyk(1, 0, 0, 0)), image)).isEqualTo(Map.of("Magenta", 255));
    }

    @Test
    void overprintSwitchedOffKnocksOut() throws Refusal {
        DisplayList page = Pages.page(20, 20, over(Pages.cmyk(1, 0, 0, 0), GREEN, 0));
        assertThat(Pages.inksAt(Pages.render(page, false), 5, 5)).isEqualTo(Map.of("Lock Gate Green", 153));
    }

    @Test
    void theColorantAllPaintsEveryPlaneAndNonePaintsNothing() throws Refusal { // §8.6.6.4
        assertThat(inks(Pages.fill(ALL, GREEN), Pages.fill(ALL, Pages.spot("All", 1))))
                .isEqualTo(Map.of("Cyan", 255, "Magenta", 255, "Yellow", 255, "Black", 255, "Lock Gate Green", 255));
        InkPlanes planes = Pages.render(Pages.page(20, 20, Pages.fill(ALL, Pages.spot("None", 1))));
        assertThat(planes.get(planes.markPlane(), 5, 5)).isZero();
    }

    @Test
    void aProcessNameInASeparationPaintsTheProcessPlane() throws Refusal {
        assertThat(inks(Pages.fill(ALL, Pages.spot("Magenta", 0.5)))).isEqualTo(Map.of("Magenta", 128));
    }

    @Test
    void severalColorantsAtOnceEachGoToTheirPlane() throws Refusal { // §8.6.6.5
        ColourSpace.DeviceN n = new ColourSpace.DeviceN(
                List.of("Black", "None", "Lock Gate Green"),
                Pages.CMYK,
                Pages.separation("x").tint(),
                List.of());
        assertThat(inks(Pages.fill(ALL, new Colour(n, 0.2f, 0.7f, 1f))))
                .isEqualTo(Map.of("Black", 51, "Lock Gate Green", 255));
    }

    @Test
    void constantAlphaMixesInAndKnocksOutByItsShare() throws Refusal {
        Op veil = Pages.fill(ALL, Pages.cmyk(0, 1, 0, 0), Pages.alpha(0.25), null);
        assertThat(inks(Pages.fill(ALL, Pages.cmyk(0.8, 0, 0, 0)), veil)).isEqualTo(Map.of("Cyan", 153, "Magenta", 64));
    }

    @Test
    void theAlphaOfAGroupAppliesToItsResultNotToItsParts() throws Refusal { // §11.4
        Op first = Pages.fill(ALL, Pages.cmyk(1, 0, 0, 0));
        Op second = Pages.fill(ALL, Pages.cmyk(0, 1, 0, 0));
        for (boolean isolated : new boolean[] {true, false}) {
            assertThat(inks(
                            Pages.fill(ALL, Pages.cmyk(0, 0, 1, 0)),
                            Pages.group(isolated, Pages.alpha(0.5), first, second)))
                    .isEqualTo(Map.of("Magenta", 128, "Yellow", 128));
        }
    }

    @Test
    void overprintInsideAnIsolatedGroupDoesNotReachWhatLiesBeneath() throws Refusal { // §11.7.4.3
        Op over = Pages.fill(ALL, GREEN, Pages.overprint(0), null);
        Op ground = Pages.fill(ALL, Pages.cmyk(1, 0, 0, 0));
        assertThat(inks(ground, Pages.group(true, Style.PLAIN, over))).isEqualTo(Map.of("Lock Gate Green", 153));
        assertThat(inks(ground, Pages.group(false, Style.PLAIN, over)))
                .isEqualTo(Map.of("Cyan", 255, "Lock Gate Green", 153));
    }

    @Test
    void aLuminositySoftMaskLetsThroughByLightness() throws Refusal { // §11.5.3
        Op grey = Pages.fill(Pages.rect(0, 0, 10, 20), new Colour(Pages.GRAY, 0.6f));
        SoftMask mask = new SoftMask((Op.Group) Pages.group(true, Style.PLAIN, grey), true, null, null);
        Style style = new Style(1, inkground.artwork.BlendMode.NORMAL, false, 0, mask, false);
        InkPlanes planes = Pages.render(Pages.page(20, 20, Pages.fill(ALL, Pages.cmyk(0, 0, 0, 1), style, null)));
        assertThat(Pages.inksAt(planes, 5, 5)).isEqualTo(Map.of("Black", 153));
        assertThat(Pages.inksAt(planes, 15, 5))
                .as("outside the group the black backdrop hides all")
                .isEmpty();
    }

    @Test
    void anAlphaSoftMaskLetsThroughByAlpha() throws Refusal { // §11.5.2
        Op half = Pages.fill(Pages.rect(0, 0, 10, 20), new Colour(Pages.GRAY, 0), Pages.alpha(0.4), null);
        SoftMask mask = new SoftMask((Op.Group) Pages.group(true, Style.PLAIN, half), false, null, null);
        Style style = new Style(1, inkground.artwork.BlendMode.NORMAL, false, 0, mask, false);
        InkPlanes planes = Pages.render(Pages.page(20, 20, Pages.fill(ALL, Pages.cmyk(0, 0, 0, 1), style, null)));
        assertThat(Pages.inksAt(planes, 5, 5)).isEqualTo(Map.of("Black", 102));
        assertThat(Pages.inksAt(planes, 15, 5)).isEmpty();
    }

    @Test
    void clipsNarrowOneAnother() throws Refusal {
        Clip outer = Clip.of(null, Pages.rect(2, 2, 12, 12), FillRule.NON_ZERO);
        Clip inner = Clip.of(outer, Pages.rect(8, 8, 18, 18), FillRule.NON_ZERO);
        InkPlanes planes =
                Pages.render(Pages.page(20, 20, Pages.fill(ALL, Pages.cmyk(0, 0, 0, 1), Style.PLAIN, inner)));
        assertThat(planes.get(3, 9, 9)).isEqualTo(255);
        assertThat(planes.get(3, 4, 4)).isZero();
        assertThat(planes.get(3, 14, 14)).isZero();
    }

    @Test
    void anImageIsPaintedFromItsTopRowDown() throws Refusal { // §8.9.3
        Op image = Pages.image(Pages.GRAY, 2, 2, square(20), 0, 255, 255, 51);
        InkPlanes planes = Pages.render(Pages.page(20, 20, image));
        assertThat(planes.get(3, 2, 2)).isEqualTo(255);
        assertThat(planes.get(3, 15, 2)).isZero();
        assertThat(planes.get(3, 2, 15)).isZero();
        assertThat(planes.get(3, 15, 15)).isEqualTo(204);
    }

    @Test
    void aReducedImageIsAveragedOverTheAreaOfEachPixel() throws Refusal {
        int[] samples = new int[9 * 9];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = 255 * ((i % 9 + i / 9) % 2);
        }
        samples[40] = 0;
        InkPlanes planes = Pages.render(Pages.page(3, 3, Pages.image(Pages.GRAY, 9, 9, square(3), samples)));
        // a 3 × 3 block that starts with 0 (black) has 5 black samples of 9, one that starts with 255 has 4
        assertThat(planes.get(3, 0, 0)).isEqualTo(Math.round(255 * 5 / 9f));
        assertThat(planes.get(3, 1, 0)).isEqualTo(Math.round(255 * 4 / 9f));
    }

    @Test
    void anImagesMaskLetsTheGroundThrough() throws Refusal {
        ImageSource.Pixels mask = new ImageSource.Pixels(2, 1, 1, new byte[] {(byte) 255, 0}, null);
        ImageSource.Pixels pixels = new ImageSource.Pixels(1, 1, 1, new byte[] {0}, mask);
        Op image =
                new Op.Image(new Pages.Samples(Pages.GRAY, 1, 1, pixels), square(20), Style.PLAIN, null, Pages.ORIGIN);
        InkPlanes planes = Pages.render(Pages.page(20, 20, Pages.fill(ALL, Pages.cmyk(1, 0, 0, 0)), image));
        assertThat(Pages.inksAt(planes, 5, 5)).isEqualTo(Map.of("Black", 255));
        assertThat(Pages.inksAt(planes, 15, 5)).isEqualTo(Map.of("Cyan", 255));
    }

    @Test
    void anAxialShadingRunsFromItsFirstColourToItsLast() throws Refusal { // §8.7.4.5.3
        Paint.Shading shading = new Paint.Shading(
                new Paint.Axial(0, 0, 100, 0, 0, 1, false, true), Pages.CMYK, ramp(), null, null, Matrix.IDENTITY);
        Op op = new Op.Shade(shading, new Box(-10, 0, 120, 10), Style.PLAIN, null, Pages.ORIGIN);
        InkPlanes planes = Pages.render(Pages.page(120, 10, op));
        for (int x = 0; x < 100; x++) {
            assertThat(planes.get(0, x, 5))
                    .isBetween((int) Math.floor((x + 0.5) * 2.55 - 0.7), (int) Math.ceil((x + 0.5) * 2.55 + 0.7));
        }
        assertThat(planes.get(0, 115, 5)).isEqualTo(255);
    }

    @Test
    void aRadialShadingPaintsNothingOutsideUnlessItExtends() throws Refusal { // §8.7.4.5.4
        Paint.Shading shading = new Paint.Shading(
                new Paint.Radial(50, 50, 0, 50, 50, 40, 0, 1, false, false),
                Pages.CMYK,
                ramp(),
                null,
                null,
                Matrix.IDENTITY);
        Op op = new Op.Shade(shading, new Box(0, 0, 100, 100), Style.PLAIN, null, Pages.ORIGIN);
        InkPlanes planes = Pages.render(Pages.page(100, 100, op));
        assertThat(planes.get(0, 70, 50)).isBetween(129, 132); // 20.5 / 40 of 255 is 130.7
        assertThat(planes.get(planes.markPlane(), 95, 50)).isZero();
    }

    @Test
    void aPatternRepeatsItsCellAtEveryStep() throws Refusal { // §8.7.3
        Op dot = Pages.fill(Pages.rect(0, 0, 2, 2), Pages.cmyk(0, 0, 0, 1));
        Paint.Tiling tiling = new Paint.Tiling(List.of(dot), new Box(0, 0, 2, 2), 5, -4, Matrix.IDENTITY);
        Op op = new Op.Fill(ALL, FillRule.NON_ZERO, tiling, null, Style.PLAIN, null, Pages.ORIGIN);
        InkPlanes planes = Pages.render(Pages.page(20, 20, op));
        for (int y = 0; y < 20; y++) {
            for (int x = 0; x < 20; x++) {
                assertThat(planes.get(3, x, y)).isEqualTo(x % 5 < 2 && y % 4 < 2 ? 255 : 0);
            }
        }
    }

    @Test
    void whitePaintMarksThePageButInksNothing() throws Refusal {
        InkPlanes planes = Pages.render(Pages.page(
                20,
                20,
                Pages.fill(Pages.rect(0, 0, 10, 20), Pages.cmyk(1, 0, 0, 0)),
                Pages.fill(Pages.rect(0, 0, 20, 10), Pages.cmyk(0, 0, 0, 0))));
        assertThat(planes.get(planes.markPlane(), 5, 5)).isEqualTo(255);
        assertThat(planes.get(planes.inkedPlane(), 5, 5))
                .as("knocked out: ink was here")
                .isEqualTo(255);
        assertThat(planes.get(planes.inkedPlane(), 15, 5))
                .as("white paint on nothing")
                .isZero();
        assertThat(planes.get(planes.markPlane(), 15, 15)).as("unpainted").isZero();
        assertThat(Pages.inksAt(planes, 5, 5)).isEmpty();
    }

    @Test
    void theLaidPlaneIsTheCoveredPartOfAPixelNotItsTint() throws Refusal {
        InkPlanes planes = Pages.render(Pages.page(
                20,
                20,
                Pages.fill(Pages.rect(0, 0, 10.5, 20), Pages.cmyk(0.4, 0, 0, 0)),
                Pages.fill(Pages.rect(2.5, 2, 6, 18), Pages.cmyk(0, 0, 0, 0)),
                Pages.fill(Pages.rect(0, 15, 10, 20), Pages.cmyk(0, 0, 0, 0), Pages.overprint(1), null)));
        int laid = planes.laidPlane();
        assertThat(planes.get(laid, 8, 5)).as("inside a tint").isEqualTo(255);
        assertThat(planes.get(laid, 10, 5)).as("at an edge").isEqualTo(128);
        assertThat(planes.get(laid, 2, 5)).as("at the edge of a knock-out").isEqualTo(128);
        assertThat(planes.get(laid, 4, 5)).as("in a knock-out").isZero();
        assertThat(planes.get(laid, 8, 17)).as("under white that overprints").isEqualTo(255);
        assertThat(planes.get(laid, 15, 5)).as("unpainted").isZero();
    }

    private static Op[] over(Colour ground, Colour top, int mode) {
        return new Op[] {Pages.fill(ALL, ground), Pages.fill(ALL, top, Pages.overprint(mode), null)};
    }

    private static Matrix square(double size) {
        return new Matrix(size, 0, 0, -size, 0, size); // page space has y down, the unit square up
    }

    private static TintTransform ramp() {
        return new TintTransform() {
            @Override
            public int outputs() {
                return 4;
            }

            @Override
            public void apply(float[] in, float[] out) {
                java.util.Arrays.fill(out, 0);
                out[0] = in[0];
            }
        };
    }

    private static Map<String, Integer> inks(Op... ops) throws Refusal {
        return Pages.inksAt(Pages.render(Pages.page(20, 20, ops)), 5, 5);
    }
}
