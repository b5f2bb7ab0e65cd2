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
 * @param map what is mapped over the colours, if anything
 * @param plate plane index of the ink whose plate is shown in place of the colours; -1 for none
 */
public record Look(
        String substrateId,
        Set<Integer> shown,
        List<Integer> printOrder,
        Map<Integer, Double> opacities,
        Optional<WhiteBase> underbase,
        Optional<MapChoice> map,
        int plate) {
    /** Copies the collections. */
    public Look {
        shown = Set.copyOf(shown);
        printOrder = List.copyOf(printOrder);
        opacities = Map.copyOf(opacities);
    }

    /** @return whether the colour of a pixel hangs on more than the inks at it: on its place, or on its neighbours */
    public boolean placed() {
        return map.isPresent()
                || plate >= 0
                || underbase.map(base -> base.chokeMm() != 0).orElse(false);
    }

    /** @return this as it is on a page that is printed so many times as large */
    public Look printedAt(double scale) {
        Optional<WhiteBase> base = underbase.map(b -> b.printedAt(scale));
        return base.equals(underbase) ? this : new Look(substrateId, shown, printOrder, opacities, base, map, plate);
    }

    /** @return this with its map at rest */
    public Look atRest() {
        return new Look(substrateId, shown, printOrder, opacities, underbase, map.map(MapChoice::atRest), plate);
    }

    /** @return this with other inks shown, as colours */
    public Look solids(Set<Integer> planes) {
        return new Look(substrateId, planes, printOrder, opacities, underbase, Optional.empty(), -1);
    }
}
