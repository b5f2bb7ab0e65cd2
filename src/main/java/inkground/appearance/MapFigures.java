package inkground.appearance;

import inkground.plate.PlateRequest;
import java.util.List;

/**
 * The areas of a map's entries in a region.
 *
 * @param pixels area of each entry in pixels, in the order of the legend; pixels along edges are shared out
 * @param cm2PerPixel area of one pixel in cm²
 * @param largest the largest value met, in the map's own unit; NaN where the map measures none
 */
public record MapFigures(List<Double> pixels, double cm2PerPixel, double largest) {
    /** Copies the list. */
    public MapFigures {
        pixels = List.copyOf(pixels);
    }

    /** @return area of an entry in cm² */
    public double cm2(int entry) {
        return pixels.get(entry) * cm2PerPixel;
    }

    /** @return part of the region that an entry has, 0 to 1; 0 for an empty region */
    public double share(int entry) {
        double all = pixels.stream().mapToDouble(Double::doubleValue).sum();
        return all == 0 ? 0 : pixels.get(entry) / all;
    }

    static double cm2PerPixel(PlateRequest request) {
        double cmPerPx = request.mmPerPx() / 10;
        return cmPerPx * cmPerPx;
    }
}
