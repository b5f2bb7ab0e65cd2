package inkground.garment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.plate.PlateRequest;
import inkground.substrate.Cut;
import inkground.substrate.CutPath;
import inkground.substrate.MeasureSum;
import inkground.substrate.Substrates;
import inkground.substrate.Texture;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Geometry whose answers are known: a sheet of cloth 400 × 600 mm with a hood over its top and a seam down its sides. */
class PlacementTest {
    private static final Box PAGE = new Box(20, 30, 20 + 200 / Box.MM_PER_PT, 30 + 100 / Box.MM_PER_PT);
    private static final Form FORM = form();

    private static Form form() {
        Set<String> known = Set.of("chest");
        Cut.Face face = new Cut.Face(
                Cut.Side.FRONT,
                "seam of the collar",
                MeasureSum.parse("80", known),
                CutPath.parse("M 0 -20 L 0.5*chest -20 L 0.5*chest 580 L 0 580", known),
                List.of(new Cut.Part(
                        "hood", CutPath.parse("M 0 -100 L 60 -100 L 60 10 L 0 10", known), 1, Cut.Part.Lies.OVER)),
                List.of(new Cut.Line(
                        "side seam", Cut.Line.Kind.SEAM, CutPath.parse("M 0.5*chest-10 0 L 0.5*chest-10 580", known))),
                List.of(),
                List.of(area("chest", 50, 0, 300, 300), area("left chest", 60, 80, 100, 100)));
        Cut cut = new Cut(
                "sheet",
                "Sheet",
                Set.of(Texture.Kind.JERSEY),
                "invented for the test",
                List.of(new Cut.Size("M", Map.of("chest", 400.0))),
                "M",
                List.of(face),
                1,
                List.of(),
                List.of(),
                1);
        return Form.of(cut, cut.sizes().get(0), face);
    }

    private static Cut.Area area(String name, double below, double centre, double width, double height) {
        return new Cut.Area(name, sum(below), sum(centre), sum(width), sum(height));
    }

    private static MeasureSum sum(double mm) {
        return new MeasureSum(mm, List.of());
    }

    private static Box at(double x0, double y0, double x1, double y1) {
        return new Box(x0, y0, x1, y1);
    }

    @Test
    void artworkLiesInItsOwnSizeUnderTheCollarUnlessTheUserSaysOtherwise() {
        Placed usual = Placed.of(Placement.USUAL, FORM, PAGE);
        assertThat(usual.artworkMm().x0()).isCloseTo(-100, within(1e-9));
        assertThat(usual.artworkMm().y0()).isEqualTo(80);
        assertThat(usual.artworkMm().width()).isCloseTo(200, within(1e-9));
        assertThat(usual.artworkMm().height()).isCloseTo(100, within(1e-9));
        assertThat(usual.scale()).isCloseTo(1, within(1e-12));
        Placed wide = Placed.of(Placement.USUAL.at(95.5, -30).wide(Optional.of(100.0)), FORM, PAGE);
        assertThat(wide.artworkMm()).isEqualTo(at(-80, 95.5, 20, 145.5));
        assertThat(wide.offCentreMm()).isEqualTo(-30);
        assertThat(wide.scale()).isCloseTo(0.5, within(1e-12));
        assertThat(wide.words(mm -> mm + " mm"))
                .isEqualTo(
                        "100.0 mm × 50.0 mm, its top 95.5 mm below the seam of the collar, 30.0 mm left of the centre"
                                + " line as seen");
    }

    @Test
    void pageAndGarmentAreMappedBothWays() {
        Placed placed = Placed.of(Placement.USUAL.wide(Optional.of(150.0)), FORM, PAGE);
        Box part = at(40, 50, 100, 90);
        Box back = placed.toPt(placed.toMm(part));
        assertThat(back.x0()).isCloseTo(part.x0(), within(1e-9));
        assertThat(back.y1()).isCloseTo(part.y1(), within(1e-9));
        assertThat(placed.toMm(PAGE)).isEqualTo(placed.artworkMm());
    }

    @Test
    void aPrint200MmWide80MmBelowTheCollarCoversExactlyItsPixels() {
        for (double pxPerMm : new double[] {1, 2, 2.5}) {
            Placed placed = Placed.of(Placement.USUAL, FORM, PAGE);
            GarmentRequest region = GarmentRequest.around(FORM.boundsMm(), pxPerMm);
            PlateRequest plate = placed.plate(region, PAGE, 0, true, Set.of());
            int[] red = new int[plate.width() * plate.height()];
            java.util.Arrays.fill(red, 0xffff0000);
            int[] out = paint(region, placed, plate, red);
            for (int y = region.y0(); y < region.y1(); y++) {
                for (int x = region.x0(); x < region.x1(); x++) {
                    boolean inside = x >= -100 * pxPerMm && x < 100 * pxPerMm && y >= 80 * pxPerMm && y < 180 * pxPerMm;
                    boolean cloth = x >= -200 * pxPerMm
                            && x < 200 * pxPerMm
                            && y >= 10 * pxPerMm
                            && !(Math.abs(Math.abs(x) - 190 * pxPerMm) <= 8 * pxPerMm) // its shaded seam
                            && y > 20 * pxPerMm; // and the shaded edge of the hood
                    if (cloth) {
                        assertThat(out[(y - region.y0()) * region.width() + x - region.x0()])
                                .as(x + " " + y + " at " + pxPerMm)
                                .isEqualTo(inside ? 0xffff0000 : 0xff808080);
                    }
                }
            }
        }
    }

    private static int[] paint(GarmentRequest region, Placed placed, PlateRequest plate, int[] argb) {
        int[] out = new int[region.width() * region.height()];
        GarmentPicture.Print print = new GarmentPicture.Print(
                argb,
                placed.pageXPx(region.pxPerMm()) + plate.x0(),
                placed.pageYPx(region.pxPerMm()) + plate.y0(),
                plate.width(),
                plate.height());
        GarmentPicture.paint(new ClothLight(FORM, region, null), null, 0, 0xff808080, print, out);
        return out;
    }

    @Test
    void whatDoesNotLieOnPrintableClothIsNotPrinted() {
        // From 40 mm above the collar, under the hood, to 60 mm beyond the right edge.
        Placed placed = Placed.of(Placement.USUAL.at(-40, 160), FORM, PAGE);
        GarmentRequest region = GarmentRequest.around(FORM.boundsMm().grow(80), 1);
        PlateRequest plate = placed.plate(region, PAGE, 0, true, Set.of());
        int[] red = new int[plate.width() * plate.height()];
        java.util.Arrays.fill(red, 0xffff0000);
        int[] out = paint(region, placed, plate, red);
        assertThat(out[(30 - region.y0()) * region.width() + 100 - region.x0()]).isEqualTo(0xffff0000);
        assertThat(out[(30 - region.y0()) * region.width() + 230 - region.x0()]).isZero(); // beside the cloth
        assertThat(out[(-60 - region.y0()) * region.width() - region.x0()] & 0xff0000)
                .isEqualTo(0x800000); // the hood
        assertThat(out[(-30 - region.y0()) * region.width() + 100 - region.x0()])
                .isZero(); // above the cloth
    }

    @Test
    void aPartOfAPictureIsThatPartOfTheWhole() {
        GarmentRequest whole = GarmentRequest.around(FORM.boundsMm(), 0.7);
        Drape drape = new Drape(FORM);
        ClothLight all = new ClothLight(FORM, whole, drape);
        GarmentRequest part = whole.rows(100, 180);
        ClothLight some = new ClothLight(FORM, part, drape);
        for (int y = 0; y < part.height(); y++) {
            for (int x = 0; x < part.width(); x++) {
                assertThat(some.cover(x, y)).isEqualTo(all.cover(x, y + 100));
                assertThat(some.print(x, y)).isEqualTo(all.print(x, y + 100));
                assertThat((int) some.light[y * part.width() + x]).isEqualTo(all.light[(y + 100) * whole.width() + x]);
            }
        }
    }

    @Test
    void insideAPrintAreaOnTheClothAndOverNoSeamAllIsFine() {
        PlacementCheck check = PlacementCheck.of(FORM, at(-100, 80, 100, 180));
        assertThat(check.fine()).isTrue();
        assertThat(check.area().name()).isEqualTo("chest");
        assertThat(check.troubles(Double::toString)).isEmpty();
        // The smallest area that holds it counts.
        assertThat(PlacementCheck.of(FORM, at(40, 70, 120, 150)).area().name()).isEqualTo("left chest");
    }

    @Test
    void beyondThePrintAreaIsToldPerSideToTheMillimetre() {
        PlacementCheck check = PlacementCheck.of(FORM, at(-162.5, 80, 100, 357));
        assertThat(check.beyondArea()).isEqualTo(new PlacementCheck.Beyond(12.5, 0, 0, 7));
        assertThat(check.troubles(mm -> mm + " mm"))
                .containsExactly("leaves the print area 'chest' by 12.5 mm on the left, 7.0 mm at the bottom");
    }

    @Test
    void beyondTheClothIsToldInMillimetresAndAreaAndSeamsByName() {
        PlacementCheck check = PlacementCheck.of(FORM, at(100, 80, 230, 180));
        assertThat(check.offGarmentMm()).isCloseTo(30, within(0.01));
        assertThat(check.offGarmentCm2()).isCloseTo(30, within(0.01)); // 30 × 100 mm
        assertThat(check.crosses()).containsExactly("side seam");
        assertThat(check.troubles(mm -> Math.round(mm) + " mm"))
                .containsExactly(
                        "reaches 30 mm beyond the cloth (30.0 cm² will not print)",
                        "lies over the side seam",
                        "leaves the print area 'chest' by 80 mm on the right");
        assertThat(PlacementCheck.of(FORM, at(100, 80, 189, 180)).crosses()).isEmpty();
        assertThat(PlacementCheck.of(FORM, at(100, 80, 190.5, 180)).crosses()).containsExactly("side seam");
    }

    @Test
    void aPlacementHoldsWithinItsRangeAndRejectsWhatIsNone() {
        assertThat(Placement.USUAL.at(9999, -9999).offCentreMm()).isEqualTo(-Placement.FARTHEST_MM);
        assertThat(Placement.USUAL.wide(Optional.of(0.1)).widthMm()).contains(Placement.NARROWEST_MM);
        assertThatThrownBy(() -> new Placement(
                        Optional.empty(),
                        Optional.empty(),
                        Cut.Side.FRONT,
                        Optional.of(Double.NaN),
                        0,
                        Optional.empty(),
                        Placement.Measured.TRIM))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void withoutACutTheClothSuggestsOneAndAnUnknownSizeIsTheUsualOne() throws Refusal {
        List<Cut> cuts = Substrates.load().cuts();
        assertThat(Form.of(Placement.USUAL, cuts, Texture.Kind.FLEECE)
                        .orElseThrow()
                        .cut()
                        .id())
                .isEqualTo("hooded-sweatshirt");
        assertThat(Form.of(Placement.USUAL, cuts, Texture.Kind.WOVEN)
                        .orElseThrow()
                        .cut()
                        .id())
                .isEqualTo("tote-bag");
        Form unknown = Form.of(Placement.USUAL.wearing("kilt").sized("9"), cuts, Texture.Kind.JERSEY)
                .orElseThrow();
        assertThat(unknown.words()).isEqualTo("T-shirt M, front");
        assertThat(Form.of(Placement.USUAL, List.of(), Texture.Kind.JERSEY)).isEmpty();
    }

    @Test
    void everyPrintAreaOfTheProgramsOwnCutsLiesOnTheirCloth() throws Refusal {
        for (Cut cut : Substrates.load().cuts()) {
            for (Cut.Size size : cut.sizes()) {
                for (Cut.Face face : cut.faces()) {
                    Form form = Form.of(cut, size, face);
                    for (Form.Area area : form.areas()) {
                        PlacementCheck check = PlacementCheck.of(form, area.boxMm());
                        assertThat(check.offGarmentMm())
                                .as(form.words() + " " + area.name())
                                .isZero();
                        assertThat(check.crosses())
                                .as(form.words() + " " + area.name())
                                .isSubsetOf("cord");
                    }
                }
            }
        }
    }

    @Test
    void foldsChangeTheLightGentlyAndTheSameWayEachTime() throws Refusal {
        for (Cut cut : Substrates.load().cuts()) {
            Form form = Form.of(
                    cut, cut.size(cut.usualSize()).orElseThrow(), cut.faces().get(0));
            Drape one = new Drape(form);
            Drape other = new Drape(form);
            double sum = 0;
            int count = 0;
            Box area = form.areas().get(0).boxMm();
            for (double y = area.y0(); y < area.y1(); y += 7) {
                for (double x = area.x0(); x < area.x1(); x += 7) {
                    double light = one.light(x, y);
                    assertThat(light).isBetween(0.6, 1.4).isEqualTo(other.light(x, y));
                    sum += light;
                    count++;
                }
            }
            // Where one prints the cloth is as light as it is flat, on average: folds must not tint the proof.
            assertThat(sum / count).as(cut.id()).isCloseTo(1, within(0.04));
        }
    }
}
