package inkground.findings;

import inkground.appearance.MapFigures;
import inkground.appearance.ProofMap;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.geometry.Box;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.PlateRequest;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The places where a map has found something: pixels of one entry that lie within some millimetres of each other are one place.
 * Which entries are findings is said by {@link ProofMap#findings}. Unlike areas, places are told by whole pixels.
 */
public final class MapPlaces {
    private MapPlaces() {}

    /**
     * A place.
     *
     * @param entry of the map's legend
     * @param box around it, in points of page space
     * @param cm2 area marked in it, in cm²
     */
    public record Place(int entry, Box box, double cm2) {}

    /**
     * What was measured in one pass.
     *
     * @param figures areas of all entries
     * @param places the largest area first
     */
    public record Measured(MapFigures figures, List<Place> places) {
        /** Copies the list. */
        public Measured {
            places = List.copyOf(places);
        }
    }

    /**
     * Measures a map in a region and finds its places there, band by band; memory depends on its size in millimetres.
     *
     * @param source planes of the inks the map was made for
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    public static Measured of(ProofMap map, PlaneSource source, PlateRequest region, Cancel cancel, Progress progress)
            throws Refusal {
        Map<Integer, PlaceGrid> grids = new HashMap<>();
        for (int entry : map.findings()) {
            grids.put(entry, new PlaceGrid(region.width(), region.height(), region.mmPerPx()));
        }
        MapFigures figures = map.figures(
                source, region, (band, marks, margin) -> add(band, marks, margin, region, grids), cancel, progress);
        double pt = 1 / region.pxPerPt();
        double cm2 = region.mmPerPx() * region.mmPerPx() / 100;
        List<Place> places = new ArrayList<>();
        grids.forEach((entry, grid) -> {
            for (PlaceGrid.Place p : grid.places()) {
                Box box = new Box(
                        (region.x0() + p.x0()) * pt,
                        (region.y0() + p.y0()) * pt,
                        (region.x0() + p.x1()) * pt,
                        (region.y0() + p.y1()) * pt);
                places.add(new Place(entry, box, p.sum() * cm2));
            }
        });
        places.sort(Comparator.comparingDouble((Place p) -> -p.cm2()));
        return new Measured(figures, places);
    }

    private static void add(
            InkPlanes band, byte[] marks, int margin, PlateRequest region, Map<Integer, PlaceGrid> grids) {
        if (grids.isEmpty()) {
            return;
        }
        int top = band.request().y0() - region.y0();
        for (int y = margin; y < band.height() - margin; y++) {
            for (int x = margin; x < band.width() - margin; x++) {
                PlaceGrid grid = grids.get((int) marks[y * band.width() + x]);
                if (grid != null) {
                    grid.add(x - margin, top + y, 0, 1);
                }
            }
        }
    }
}
