package inkground.viewer.state;

import inkground.colour.Lab;
import java.util.List;

/**
 * What lies under the pointer.
 *
 * @param xPt page x in points
 * @param yPt page y in points
 * @param tints 0 to 255 in plane order, all inks; empty off the page or before it is rasterised
 * @param cover how bare it is; empty where there are no tints
 * @param lab colour as shown; null where there are no tints
 */
public record Probe(double xPt, double yPt, List<Integer> tints, String cover, Lab lab) {
    /** Copies the list. */
    public Probe {
        tints = List.copyOf(tints);
    }

    /** @return sum of the tints in per cent */
    public int totalPercent() {
        return (int) Math.round(tints.stream().mapToInt(Integer::intValue).sum() / 2.55);
    }

    /** @return one tint in per cent, 0 for an ink without one */
    public int percent(int plane) {
        return plane < tints.size() ? (int) Math.round(tints.get(plane) / 2.55) : 0;
    }
}
