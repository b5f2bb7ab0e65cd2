package inkground.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.appearance.BareMap;
import inkground.appearance.ProofMap;
import inkground.appearance.RegisterMap;
import inkground.appearance.TotalInkMap;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.ink.Ink;
import inkground.ink.InkSet;
import inkground.plate.PlaneSource;
import inkground.plate.PlanesForTests;
import inkground.plate.PlateRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** Places on a page of 60 × 80 mm in pixels of 0.1 mm, in more than one band. */
class MapPlacesTest {
    private static final InkSet INKS = new InkSet(List.of(Ink.CYAN, Ink.BLACK));
    private static final PlateRequest PAGE = new PlateRequest(254 / 72.0, 0, 0, 600, 800, true, Set.of());
    private static final Box LARGE = new Box(100, 200, 200, 300); // pixels, across a border of bands
    private static final Box LONG = new Box(300, 600, 500, 610);
    private static final Box NEAR = new Box(510, 600, 520, 610);
    private static final Box SMALL = new Box(500, 100, 520, 120);

    private static boolean in(Box box, int x, int y) {
        return x >= box.x0() && x < box.x1() && y >= box.y0() && y < box.y1();
    }

    private static final PlaneSource HEAVY = (request, cancel) -> PlanesForTests.of(
            INKS,
            request,
            (plane, x, y) -> plane < 2 && (in(LARGE, x, y) || in(LONG, x, y) || in(NEAR, x, y) || in(SMALL, x, y))
                    ? 255
                    : plane == 0 ? 100 : plane == 1 ? 0 : 255);

    private static List<MapPlaces.Place> places(ProofMap map, PlaneSource source) throws Refusal {
        return MapPlaces.of(map, source, PAGE, new Cancel(), Progress.NONE).places();
    }

    @Test
    void theLargestPlaceComesFirstAndWhatLiesCloseTogetherIsOne() throws Refusal {
        List<MapPlaces.Place> places = places(new TotalInkMap(INKS, 150), HEAVY);
        assertThat(places).hasSize(3).allMatch(place -> place.entry() == TotalInkMap.ABOVE);
        assertThat(places.get(0).cm2()).isCloseTo(1, within(1e-9));
        assertThat(places.get(1).cm2()).isCloseTo(0.21, within(1e-9));
        assertThat(places.get(2).cm2()).isCloseTo(0.04, within(1e-9));
        Box both = places.get(1).box();
        assertThat(both.x0() * Box.MM_PER_PT).isCloseTo(30, within(1e-9));
        assertThat(both.x1() * Box.MM_PER_PT).isCloseTo(52, within(1e-9));
        assertThat(both.y0() * Box.MM_PER_PT).isCloseTo(60, within(1e-9));
        assertThat(both.y1() * Box.MM_PER_PT).isCloseTo(61, within(1e-9));
    }

    @Test
    void whereNothingIsBeyondTheLimitThereIsNoPlace() throws Refusal {
        assertThat(places(new TotalInkMap(INKS, 200), HEAVY)).isEmpty();
    }

    @Test
    void ofTheBareMapOnlyWhitePaintIsAFinding() throws Refusal {
        PlaneSource painted = (request, cancel) ->
                PlanesForTests.of(INKS, request, (plane, x, y) -> plane == 2 && in(LONG, x, y) ? 255 : 0);
        List<MapPlaces.Place> places = places(new BareMap(INKS), painted);
        assertThat(places).hasSize(1);
        assertThat(places.get(0).cm2()).isCloseTo(0.2, within(1e-9));
    }

    /** Cyan moves away from the magenta beside it: the gap between them is a place, the rim that it leaves everywhere else is none. */
    @Test
    void ofInksOffRegisterOnlyTheGapsBetweenThemAreFindings() throws Refusal {
        PlaneSource abutting = (request, cancel) -> PlanesForTests.of(
                INKS,
                request,
                (plane, x, y) -> plane != 1 && x >= 100 && x < 200 || plane != 0 && x >= 200 && x < 300 ? 255 : 0);
        double[] dx = new double[INKS.size()];
        dx[0] = -PAGE.mmPerPx() * 3;
        List<MapPlaces.Place> places = places(new RegisterMap(abutting, dx, new double[INKS.size()]), abutting);
        assertThat(places).hasSize(1).allMatch(place -> place.entry() == RegisterMap.SLIVER);
        assertThat(places.get(0).box().x0() * PAGE.pxPerPt()).isCloseTo(197, within(1.0));
        assertThat(places.get(0).box().x1() * PAGE.pxPerPt()).isCloseTo(200, within(1.0));
    }

    /** Areas are told with the places, as the map itself measures them, and each band is asked for once. */
    @Test
    void areasAndPlacesAreMeasuredInOnePassThatCanBeCancelled() throws Refusal {
        AtomicInteger asked = new AtomicInteger();
        PlaneSource counted = (request, cancel) -> {
            asked.incrementAndGet();
            return HEAVY.planes(request, cancel);
        };
        List<Double> told = new ArrayList<>();
        Progress progress = (what, part) -> told.add(part);
        for (ProofMap map : List.of(new TotalInkMap(INKS, 150), new BareMap(INKS))) {
            asked.set(0);
            told.clear();
            MapPlaces.Measured measured = MapPlaces.of(map, counted, PAGE, new Cancel(), progress);
            assertThat(asked).hasValue((PAGE.height() + PlaneSource.ROWS_AT_ONCE - 1) / PlaneSource.ROWS_AT_ONCE);
            assertThat(told).isSorted().endsWith(1.0);
            assertThat(measured.figures()).isEqualTo(map.figures(HEAVY, PAGE, new Cancel(), Progress.NONE));
        }
        Cancel cancel = new Cancel();
        Progress first = (what, part) -> cancel.request();
        assertThatThrownBy(() -> MapPlaces.of(new BareMap(INKS), HEAVY, PAGE, cancel, first))
                .isInstanceOf(CancellationException.class);
    }
}
