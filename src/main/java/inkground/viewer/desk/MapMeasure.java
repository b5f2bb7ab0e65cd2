package inkground.viewer.desk;

import inkground.appearance.MapFigures;
import inkground.appearance.ProofMap;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.findings.MapPlaces;
import inkground.findings.ThinFeatures;
import inkground.findings.ThinMap;
import inkground.geometry.Box;
import inkground.plate.PlaneSource;
import inkground.plate.PlateRequest;
import inkground.viewer.state.MapKind;
import inkground.viewer.state.ProofEngine.MapEntry;
import inkground.viewer.state.ProofEngine.MapPlace;
import inkground.viewer.state.ProofEngine.MapReport;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Measures a map in one pass over the page, and puts what was measured into words. */
final class MapMeasure {
    /** Resolution of the bare areas, in which a line less than a pixel wide counts as a pixel wide. */
    private static final double BARE_DPI = 300;
    /** Places that a map names; more would be a list that no one reads. */
    private static final int MOST_PLACES = 40;

    private MapMeasure() {}

    /** @return the resolution at which a map is measured */
    static double dpi(MapKind kind) {
        return kind == MapKind.BARE ? BARE_DPI : JobEngine.MEASURE_DPI;
    }

    /** @return areas, the largest value and places of a map in a region */
    static MapReport of(ProofMap map, PlaneSource source, PlateRequest request, Cancel cancel, Progress progress)
            throws Refusal {
        if (map instanceof ThinMap narrow) {
            ThinFeatures found = narrow.features(source, request, cancel, progress);
            return report(map, ThinMap.figures(found, request), places(found));
        }
        MapPlaces.Measured measured = MapPlaces.of(map, source, request, cancel, progress);
        return report(map, measured.figures(), places(map, measured.places()));
    }

    private static MapReport report(ProofMap map, MapFigures figures, List<MapPlace> places) {
        List<MapEntry> entries = new ArrayList<>();
        for (int i = 0; i < map.legend().size(); i++) {
            ProofMap.Entry entry = map.legend().get(i);
            entries.add(new MapEntry(
                    entry.word(),
                    entry.explanation(),
                    figures.cm2(i),
                    figures.share(i),
                    entry.pattern().sample(MapEntry.SAMPLE_PX)));
        }
        String largest = Double.isNaN(figures.largest())
                ? ""
                : String.format(Locale.ROOT, "%.1f %s", figures.largest(), map.unit());
        return new MapReport(map.title(), entries, largest, places);
    }

    private static List<MapPlace> places(ProofMap map, List<MapPlaces.Place> found) {
        return found.stream()
                .limit(MOST_PLACES)
                .map(place -> new MapPlace(
                        String.format(
                                Locale.ROOT,
                                "%s, %.1f × %.1f mm",
                                map.legend().get(place.entry()).word(),
                                place.box().width() * Box.MM_PER_PT,
                                place.box().height() * Box.MM_PER_PT),
                        place.box()))
                .toList();
    }

    private static List<MapPlace> places(ThinFeatures found) {
        return found.places().stream()
                .limit(MOST_PLACES)
                .map(place -> new MapPlace(
                        String.format(
                                Locale.ROOT,
                                "%s of %.2f mm in %s",
                                place.kind().word(),
                                place.widthMm(),
                                place.ink().name()),
                        place.box()))
                .toList();
    }
}
