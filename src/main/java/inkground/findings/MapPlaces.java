package inkground.findings;

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
     * Finds the places of a region, band by band; memory depends on its size in millimetres.
     *
     * @param source planes of the inks the map was made for
     * @return the places, the largest area first
     * @throws java.util.concurrent.CancellationException if cancelled
     */
    public static List<Place> of(
            ProofMap map, PlaneSource source, PlateRequest region, Cancel cancel, Progress progress) throws Refusal {
        Map<Integer, PlaceGrid> grids = new HashMap<>();
        for (int entry : map.findings()) {
            grids.put(entry, new PlaceGrid(region.width(), region.height(), region.mmPerPx()));
        }
        if (!grids.isEmpty()) {
            source.stream(region, cancel, progress, band -> add(map, band, region, grids, cancel));
        }
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
        return places;
    }

    private static void add(
            ProofMap map, InkPlanes band, PlateRequest region, Map<Integer, PlaceGrid> grids, Cancel cancel)
            throws Refusal {
        byte[] marks = new byte[band.width() * band.height()];
        map.mark(band, marks, cancel);
        int top = band.request().y0() - region.y0();
        for (int i = 0; i < marks.length; i++) {
            PlaceGrid grid = grids.get((int) marks[i]);
            if (grid != null) {
                grid.add(i % band.width(), top + i / band.width(), 0, 1);
            }
        }
    }
}
