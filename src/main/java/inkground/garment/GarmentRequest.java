package inkground.garment;

import inkground.geometry.Box;

/**
 * Which part of a garment's picture is wanted. Pixel (0, 0) has its top left corner at the form's origin, so that two requests of
 * one scale agree wherever they overlap. Half-open.
 *
 * @param pxPerMm pixels per millimetre, above 0
 * @param x0 left pixel
 * @param y0 top pixel
 * @param x1 right end
 * @param y1 bottom end
 */
public record GarmentRequest(double pxPerMm, int x0, int y0, int x1, int y1) {
    /** Checks the numbers. */
    public GarmentRequest {
        if (!(pxPerMm > 0) || Double.isInfinite(pxPerMm) || x1 <= x0 || y1 <= y0) {
            throw new IllegalArgumentException("scale " + pxPerMm + ", " + x0 + " " + y0 + " to " + x1 + " " + y1);
        }
    }

    /** @return the pixels that hold all of a box in millimetres */
    public static GarmentRequest around(Box mm, double pxPerMm) {
        return new GarmentRequest(
                pxPerMm,
                (int) Math.floor(mm.x0() * pxPerMm),
                (int) Math.floor(mm.y0() * pxPerMm),
                (int) Math.ceil(mm.x1() * pxPerMm),
                (int) Math.ceil(mm.y1() * pxPerMm));
    }

    /** @return rows {@code from} to {@code to} of this, counted from its top */
    public GarmentRequest rows(int from, int to) {
        return new GarmentRequest(pxPerMm, x0, y0 + from, x1, y0 + to);
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
