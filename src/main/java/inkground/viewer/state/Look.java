package inkground.viewer.state;

import inkground.app.Arrangement.WhiteBase;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Everything that decides the colour of planes already rasterised. Two equal looks give the same picture of the same planes,
 * so a change of look never rasterises anything anew.
 *
 * @param substrateId which paper or garment
 * @param shown plane indices of the inks that are shown
 * @param printOrder plane indices of all inks, first printed first
 * @param opacities by plane index, 0 to 1, where the user's word replaces the file's
 * @param underbase white under the inks, if any
 * @param map what is mapped in place of the colours; null for the colours
 * @param plate plane index of the ink whose plate is shown where the map is {@link MapKind#PLATE}; -1 otherwise
 */
public record Look(
        String substrateId,
        Set<Integer> shown,
        List<Integer> printOrder,
        Map<Integer, Double> opacities,
        Optional<WhiteBase> underbase,
        MapKind map,
        int plate) {
    /** Copies the collections. */
    public Look {
        shown = Set.copyOf(shown);
        printOrder = List.copyOf(printOrder);
        opacities = Map.copyOf(opacities);
        if ((map == MapKind.PLATE) != (plate >= 0)) {
            throw new IllegalArgumentException("map " + map + " of plate " + plate);
        }
    }

    /** @return whether the colour of a pixel hangs on more than the inks at it: on its place, or on its neighbours */
    public boolean placed() {
        return map != null || underbase.map(base -> base.chokeMm() != 0).orElse(false);
    }

    /** @return this with other inks shown, as colours */
    public Look solids(Set<Integer> planes) {
        return new Look(substrateId, planes, printOrder, opacities, underbase, null, -1);
    }
}
