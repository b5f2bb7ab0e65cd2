package inkground.viewer.state;

import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.plate.InkPlanes;
import inkground.viewer.state.ProofEngine.OpenPage;
import inkground.viewer.state.ProofEngine.Painter;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What lies at a place of the page.
 *
 * @param xPt page x in points
 * @param yPt page y in points
 * @param tints 0 to 255 in plane order, all inks; empty off the page or before it is rasterised
 * @param cover how bare it is; empty where there are no tints
 * @param lab colour as shown; null where there are no tints
 * @param asked colour that the artwork asks for; null where it asks for none
 */
public record Probe(double xPt, double yPt, List<Integer> tints, String cover, Lab lab, Lab asked) {
    /** Copies the list. */
    public Probe {
        tints = List.copyOf(tints);
    }

    /** Where the artwork asks for no colour, or none is known. */
    public Probe(double xPt, double yPt, List<Integer> tints, String cover, Lab lab) {
        this(xPt, yPt, tints, cover, lab, null);
    }

    /**
     * Reads a pixel.
     *
     * @param page that was rasterised
     * @param painter of the look that is shown; null while none is known
     * @param x pixel, from the planes' own left; within them
     * @param y pixel, from the planes' own top
     */
    public static Probe of(double xPt, double yPt, OpenPage page, Painter painter, InkPlanes planes, int x, int y) {
        int[] tints = new int[planes.inks().size()];
        for (int plane = 0; plane < tints.length; plane++) {
            tints[plane] = planes.get(plane, x, y);
        }
        return new Probe(
                xPt,
                yPt,
                Arrays.stream(tints).boxed().toList(),
                page.cover(planes, x, y),
                painter == null ? null : painter.lab(tints),
                page.asked(tints));
    }

    /** Off the page, or where nothing is rasterised yet. */
    public static Probe empty(double xPt, double yPt) {
        return new Probe(xPt, yPt, List.of(), "", null);
    }

    /** @return sum of the tints in per cent */
    public int totalPercent() {
        return (int) Math.round(tints.stream().mapToInt(Integer::intValue).sum() / 2.55);
    }

    /** @return one tint in per cent, 0 for an ink without one */
    public int percent(int plane) {
        return plane < tints.size() ? (int) Math.round(tints.get(plane) / 2.55) : 0;
    }

    /** @return ΔE00 from the colour asked for to the colour as shown; empty where either is not known */
    public OptionalDouble deltaE00() {
        return lab == null || asked == null ? OptionalDouble.empty() : OptionalDouble.of(Cie.deltaE00(asked, lab));
    }
}
