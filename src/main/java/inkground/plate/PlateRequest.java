package inkground.plate;

import inkground.geometry.Box;
import java.util.Set;

/**
 * Which part of a page to rasterise, and how. Device pixel (0, 0) has its top left corner at the origin of page space, so
 * that two requests of one scale agree wherever they overlap.
 *
 * @param pxPerPt device pixels per point, above 0: dpi / 72
 * @param x0 left device pixel
 * @param y0 top device pixel
 * @param x1 right end, exclusive
 * @param y1 bottom end, exclusive
 * @param overprint whether overprint is honoured; off shows what a device that ignores it prints
 * @param layersOn ids of the layers that are on
 */
public record PlateRequest(double pxPerPt, int x0, int y0, int x1, int y1, boolean overprint, Set<Integer> layersOn) {
    /** Checks the numbers and copies the set. */
    public PlateRequest {
        if (!(pxPerPt > 0) || Double.isInfinite(pxPerPt)) {
            throw new IllegalArgumentException("scale " + pxPerPt);
        }
        if (x1 < x0 || y1 < y0) {
            throw new IllegalArgumentException("region out of order");
        }
        layersOn = Set.copyOf(layersOn);
    }

    /** The pixels that cover {@code box} (page space, points) at {@code dpi}: its edges rounded to the nearest pixel. */
    public static PlateRequest of(Box box, double dpi, boolean overprint, Set<Integer> layersOn) {
        double scale = dpi / 72;
        int x0 = (int) Math.round(box.x0() * scale);
        int y0 = (int) Math.round(box.y0() * scale);
        int x1 = Math.max(x0 + 1, (int) Math.round(box.x1() * scale));
        int y1 = Math.max(y0 + 1, (int) Math.round(box.y1() * scale));
        return new PlateRequest(scale, x0, y0, x1, y1, overprint, layersOn);
    }

    /** @return the same for another region, in device pixels */
    public PlateRequest part(int left, int top, int right, int bottom) {
        return new PlateRequest(pxPerPt, left, top, right, bottom, overprint, layersOn);
    }

    /** @return the same for a region larger by {@code px} on each side */
    public PlateRequest grown(int px) {
        return part(x0 - px, y0 - px, x1 + px, y1 + px);
    }

    /** @return the same with overprint honoured or not */
    public PlateRequest overprinting(boolean honoured) {
        return new PlateRequest(pxPerPt, x0, y0, x1, y1, honoured, layersOn);
    }

    /** @return millimetres in one pixel */
    public double mmPerPx() {
        return Box.MM_PER_PT / pxPerPt;
    }

    /** @return width in pixels */
    public int width() {
        return x1 - x0;
    }

    /** @return height in pixels */
    public int height() {
        return y1 - y0;
    }
}
