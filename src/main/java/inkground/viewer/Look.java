package inkground.viewer;

import java.util.Set;

/**
 * Everything that decides the colour of planes already rasterised. Two equal looks give the same picture of the same planes,
 * so a change of look never rasterises anything anew.
 *
 * @param substrateId which paper or garment
 * @param shown plane indices of the inks that are shown
 * @param underbase whether a white underbase lies under the inks
 * @param bareMap whether the bare map is shown in place of the colours
 */
record Look(String substrateId, Set<Integer> shown, boolean underbase, boolean bareMap) {
    /** Copies the set. */
    Look {
        shown = Set.copyOf(shown);
    }
}
