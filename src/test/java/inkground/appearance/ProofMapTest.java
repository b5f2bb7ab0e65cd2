package inkground.appearance;

import static inkground.appearance.Samples.FOGRA;
import static inkground.appearance.Samples.FOGRA_PAPER;
import static inkground.appearance.Samples.NAVY_SHIRT;
import static inkground.appearance.Samples.marked;
import static inkground.appearance.Samples.planes;
import static inkground.appearance.Samples.spot;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import inkground.ink.InkSet;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlanesForTests;
import inkground.plate.PlateRequest;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;

/** Maps over planes whose every pixel is known. */
class ProofMapTest {
    private static final InkSet CMYK_AND_CUT =
            new InkSet(List.of(Ink.CYAN, Ink.MAGENTA, Ink.YELLOW, Ink.BLACK, new Ink("cut", InkKind.TECHNICAL)));

    /** One pixel a point; 300 × 700: more than one band of rows. Left third 320 %, middle 250 %, right a cut line alone. */
    private static final PlaneSource THIRDS =
            (request, cancel) -> PlanesForTests.of(CMYK_AND_CUT, request, (plane, x, y) -> switch (plane) {
                case 0, 1, 2 -> x < 100 ? 255 : x < 200 && plane < 2 ? 255 : 0;
                case 3 -> x < 100 ? 51 : x < 200 ? 128 : 0; // 20 and 50.2 %
                case 4 -> x >= 200 ? 255 : 0;
                default -> x < 200 ? 255 : 0;
            });

    private static PlateRequest region() {
        return new PlateRequest(1, 0, 0, 300, 700, true, Set.of());
    }

    @Test
    void totalInkIsMeasuredBandByBand() throws Refusal {
        TotalInkMap map = new TotalInkMap(CMYK_AND_CUT, 300);
        MapFigures figures = map.figures(THIRDS, region(), new Cancel(), Progress.NONE);
        assertThat(figures.largest()).isCloseTo(320, within(1e-9));
        assertThat(figures.cm2(TotalInkMap.ABOVE)).isCloseTo(10 * 2.54 / 7.2 * 70 * 2.54 / 7.2, within(1e-6));
        assertThat(figures.share(TotalInkMap.ABOVE)).isCloseTo(1 / 3.0, within(1e-9));
        assertThat(figures.pixels()).containsExactly(140_000.0, 70_000.0);
    }

    @Test
    void aSumAtTheLimitIsNotAboveIt() throws Refusal {
        MapFigures figures = new TotalInkMap(CMYK_AND_CUT, 320).figures(THIRDS, region(), new Cancel(), Progress.NONE);
        assertThat(figures.cm2(TotalInkMap.ABOVE)).isZero();
    }

    @Test
    void aMapIsDrawnOverTheProofAndEachEntryHasItsOwnPattern() throws Refusal {
        TotalInkMap map = new TotalInkMap(CMYK_AND_CUT, 300);
        InkPlanes planes = THIRDS.planes(region(), new Cancel());
        int[] argb = new int[5 + 310 * 700];
        Arrays.fill(argb, 0xff204060);
        map.paint(planes, argb, 5, 310, new Cancel());
        assertThat(argb[0]).isEqualTo(0xff204060);
        assertThat(argb[5 + 300]).isEqualTo(0xff204060);
        for (int x = 0; x < 300; x++) {
            MapPattern expected = map.legend().get(x < 100 ? 1 : 0).pattern();
            assertThat(argb[5 + 40 * 310 + x]).isEqualTo(expected.argb(0xff204060, x, 40));
        }
    }

    @Test
    void hatchesHaveDarkAndLightLinesOnAnyGround() {
        for (MapPattern pattern : List.of(
                MapPattern.RISING, MapPattern.FALLING, MapPattern.UPRIGHT, MapPattern.DOTS, MapPattern.CHEQUERED)) {
            for (int ground : new int[] {0xff000000, 0xffffffff, 0xff808080}) {
                int darkest = 255;
                int lightest = 0;
                for (int i = 0; i < 256; i++) {
                    int green = pattern.argb(ground, i % 16 - 8, i / 16 - 8) >> 8 & 255;
                    darkest = Math.min(darkest, green);
                    lightest = Math.max(lightest, green);
                }
                assertThat(darkest).isLessThan(40);
                assertThat(lightest).isGreaterThan(230);
            }
        }
        assertThat(MapPattern.DIMMED.argb(0xffffffff, 0, 0)).isEqualTo(0xffc5c5c5);
        assertThat(MapPattern.DIMMED.argb(0xff000000, 0, 0)).isEqualTo(0xff464646);
    }

    /** Solid, a half tint, an edge pixel, a faint rim, nothing. */
    private static final byte[] RED = {(byte) 255, (byte) 128, (byte) 160, 60, 0};

    private static final byte[] LAID = {(byte) 255, (byte) 255, (byte) 160, 60, 0};

    @Test
    void theShiftIsBetweenTheColourOnOwnPaperAndTheColourOnTheSubstrate() throws Refusal {
        List<InkColour> inks = List.of(spot("Mill Red", new Lab(48, 62, 40), 1));
        StackModel shirt = new StackModel(Stack.of(NAVY_SHIRT, inks, FOGRA));
        InkPlanes planes = planes(inks, 5, 1, RED, LAID, LAID);
        StackModel paper = new StackModel(
                Stack.of(Samples.substrate(inkground.substrate.Substrate.Kind.PAPER, FOGRA.paper()), inks, FOGRA));
        double expected = Cie.deltaE00(lab(paper, 128), lab(shirt, 128));
        assertThat(expected).isGreaterThan(10);
        MapFigures figures = marked(ColourMap.shift(shirt, 5), planes);
        assertThat(figures.largest()).isCloseTo(expected, within(1e-9));
        // an opaque solid stays as it was, and so does the edge of one; only the tint lets the cloth through
        assertThat(figures.pixels()).containsExactly(4.0, 1.0);
        assertThat(marked(ColourMap.shift(paper, 0.001), planes).largest()).isZero();
    }

    @Test
    void aFilterShiftsByWhatTheClothTakes() throws Refusal {
        List<InkColour> inks = List.of(spot("Mill Red", new Lab(48, 62, 40), 0));
        MapFigures figures = marked(
                ColourMap.shift(new StackModel(Stack.of(NAVY_SHIRT, inks, FOGRA)), 5),
                planes(inks, 5, 1, RED, LAID, LAID));
        assertThat(figures.pixels()).containsExactly(2.0, 3.0);
    }

    @Test
    void aColourThatOtherTintsOfTheInksGiveIsWithinReachAlthoughItShifts() throws Refusal {
        InkColour red = spot("Mill Red", new Lab(48, 62, 40), 0.05);
        InkColour white = Samples.white(1);
        List<InkColour> inks = List.of(red, white);
        byte[] none = new byte[5];
        InkPlanes planes = planes(inks, 5, 1, RED, none, LAID, LAID);
        Stack both = Stack.of(NAVY_SHIRT, inks, FOGRA);
        // the artwork asks for red on nothing: a filter on navy. With white beneath, red is there to be had.
        assertThat(marked(ColourMap.shift(new StackModel(both), 6), planes).pixels())
                .containsExactly(2.0, 3.0);
        assertThat(marked(ColourMap.reach(new StackModel(both), 3, 6), planes).pixels())
                .containsExactly(5.0, 0.0);
        StackModel redAlone = new StackModel(both.showing(Set.of(0)));
        MapFigures alone = marked(ColourMap.reach(redAlone, 3, 6), planes);
        assertThat(alone.pixels()).containsExactly(2.0, 3.0);
        assertThat(alone.largest()).isGreaterThan(20);
    }

    @Test
    void whatTheScreenCannotShowIsFarFromWhatItShows() throws Refusal {
        List<InkColour> inks = Samples.process();
        byte[] cyan = {(byte) 255, 0, 0, 0, 0};
        byte[] black = {0, 0, 0, (byte) 255, 0};
        byte[] none = new byte[5];
        byte[] laid = {(byte) 255, 0, 0, (byte) 255, 0};
        StackModel model = new StackModel(Stack.of(FOGRA_PAPER, inks, FOGRA));
        InkPlanes planes = planes(inks, 5, 1, cyan, none, none, black, laid, laid);
        MapFigures figures = marked(ColourMap.notDisplayed(model, 0), planes);
        assertThat(figures.pixels()).containsExactly(4.0, 1.0);
        assertThat(figures.largest()).isBetween(3.0, 20.0);
    }

    private static Lab lab(StackModel model, int... tints) {
        double[] xyz = new double[3];
        model.toXyz(tints, xyz);
        return Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
    }

    @Test
    void measuringStopsWhenCancelled() {
        Cancel cancel = new Cancel();
        cancel.request();
        assertThatThrownBy(() -> new TotalInkMap(CMYK_AND_CUT, 300).figures(THIRDS, region(), cancel, Progress.NONE))
                .isInstanceOf(CancellationException.class);
        assertThatThrownBy(() -> new TotalInkMap(CMYK_AND_CUT, -1)).isInstanceOf(IllegalArgumentException.class);
    }
}
