package inkground.viewer.state;

import inkground.geometry.Box;

/**
 * Which part of the page is seen, how large. View coordinates are logical pixels from the surface's top left; device pixels
 * are {@code outputScale} times as fine. The page's origin always falls on a whole device pixel, so that tiles of device
 * pixels are never resampled. Immutable.
 *
 * @param zoom logical pixels per point
 * @param centreX page point, in points, shown at the middle
 * @param centreY page point, in points, shown at the middle
 * @param widthPx of the surface, logical
 * @param heightPx of the surface, logical
 * @param outputScale device pixels per logical pixel
 */
public record Camera(double zoom, double centreX, double centreY, double widthPx, double heightPx, double outputScale) {
    /** Zoom at which a point is 1/72 in on a screen of 96 logical pixels per inch. */
    public static final double FULL_SIZE = 96.0 / 72;
    /** Nearest look: one point is 64 pixels, one millimetre about 180. */
    public static final double MAX_ZOOM = 64;
    /** Farthest look. */
    public static final double MIN_ZOOM = 0.02;

    /** Before anything is shown. */
    public static final Camera START = new Camera(1, 0, 0, 1, 1, 1);

    /** Limits the zoom and rejects what is not a number. */
    public Camera {
        if (Double.isNaN(zoom + centreX + centreY + widthPx + heightPx) || !(outputScale > 0)) {
            throw new IllegalArgumentException("camera of no number");
        }
        zoom = Math.max(MIN_ZOOM, Math.min(MAX_ZOOM, zoom));
    }

    /** @return device pixels per point: the scale to rasterise at */
    public double pxPerPt() {
        return zoom * outputScale;
    }

    /** @return device pixel, from the surface's left, where the page's origin falls; whole */
    public long originXDevice() {
        return Math.round(widthPx * outputScale / 2 - centreX * pxPerPt());
    }

    /** @return device pixel, from the surface's top, where the page's origin falls; whole */
    public long originYDevice() {
        return Math.round(heightPx * outputScale / 2 - centreY * pxPerPt());
    }

    /** @return view x of a page x in points */
    public double toViewX(double pageX) {
        return originXDevice() / outputScale + pageX * zoom;
    }

    /** @return view y of a page y in points */
    public double toViewY(double pageY) {
        return originYDevice() / outputScale + pageY * zoom;
    }

    /** @return page x in points of a view x */
    public double toPageX(double viewX) {
        return (viewX - originXDevice() / outputScale) / zoom;
    }

    /** @return page y in points of a view y */
    public double toPageY(double viewY) {
        return (viewY - originYDevice() / outputScale) / zoom;
    }

    /** @return this at another size of surface */
    public Camera resized(double width, double height, double scale) {
        return new Camera(zoom, centreX, centreY, Math.max(1, width), Math.max(1, height), scale);
    }

    /** @return this zoomed to {@code newZoom} with the page point under (viewX, viewY) held still */
    public Camera zoomedAbout(double viewX, double viewY, double newZoom) {
        Camera limited = new Camera(newZoom, centreX, centreY, widthPx, heightPx, outputScale);
        double dx = viewX - widthPx / 2;
        double dy = viewY - heightPx / 2;
        // From where the page is seen to lie, so that the rounding to whole pixels does not add up.
        double x = toPageX(viewX) - dx / limited.zoom;
        double y = toPageY(viewY) - dy / limited.zoom;
        return new Camera(limited.zoom, x, y, widthPx, heightPx, outputScale);
    }

    /** @return this with the picture moved by so many logical pixels, its middle kept within {@code limits} */
    public Camera panned(double dxPx, double dyPx, Box limits) {
        double x = Math.max(limits.x0(), Math.min(limits.x1(), centreX - dxPx / zoom));
        double y = Math.max(limits.y0(), Math.min(limits.y1(), centreY - dyPx / zoom));
        return new Camera(zoom, x, y, widthPx, heightPx, outputScale);
    }

    /** @return the look that shows all of {@code box} with a margin around it */
    public Camera fitted(Box box, double marginPx) {
        double w = Math.max(1, widthPx - 2 * marginPx);
        double h = Math.max(1, heightPx - 2 * marginPx);
        double fit = box.isEmpty() ? 1 : Math.min(w / box.width(), h / box.height());
        return new Camera(fit, (box.x0() + box.x1()) / 2, (box.y0() + box.y1()) / 2, widthPx, heightPx, outputScale);
    }
}
