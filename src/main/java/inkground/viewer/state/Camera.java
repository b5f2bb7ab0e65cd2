package inkground.viewer.state;

import inkground.geometry.Box;

/**
 * Which part of the page is seen, how large and which way round. View coordinates are logical pixels from the surface's top
 * left, y down; device pixels are {@code outputScale} times as fine. The page's origin always falls on a whole device pixel
 * and the page is turned by quarters only, so that tiles of device pixels are never resampled. Immutable.
 *
 * @param zoom logical pixels per point
 * @param centreX page point, in points, shown at the middle
 * @param centreY page point, in points, shown at the middle
 * @param widthPx of the surface, logical
 * @param heightPx of the surface, logical
 * @param outputScale device pixels per logical pixel
 * @param quarters quarter turns of the page, clockwise, 0 to 3
 */
public record Camera(
        double zoom,
        double centreX,
        double centreY,
        double widthPx,
        double heightPx,
        double outputScale,
        int quarters) {
    /** Nearest look: one point is 64 pixels, one millimetre about 180. */
    public static final double MAX_ZOOM = 64;
    /** Farthest look. */
    public static final double MIN_ZOOM = 0.02;

    /** Before anything is shown. */
    public static final Camera START = new Camera(1, 0, 0, 1, 1, 1);

    private static final int[] COSINES = {1, 0, -1, 0};

    /** Limits the zoom, brings the turns within 0 to 3, and rejects what is not a number. */
    public Camera {
        if (Double.isNaN(zoom + centreX + centreY + widthPx + heightPx) || !(outputScale > 0)) {
            throw new IllegalArgumentException("camera of no number");
        }
        zoom = Math.max(MIN_ZOOM, Math.min(MAX_ZOOM, zoom));
        quarters = Math.floorMod(quarters, 4);
    }

    /** The page upright. */
    public Camera(double zoom, double centreX, double centreY, double widthPx, double heightPx, double outputScale) {
        this(zoom, centreX, centreY, widthPx, heightPx, outputScale, 0);
    }

    /** @return device pixels per point: the scale to rasterise at */
    public double pxPerPt() {
        return zoom * outputScale;
    }

    /** @return cosine of the turn: 1, 0 or −1 */
    public int cos() {
        return COSINES[quarters];
    }

    /** @return sine of the turn, clockwise: 0, 1 or −1 */
    public int sin() {
        return COSINES[(quarters + 3) % 4];
    }

    /** @return whether what is wide on the page is high on the surface */
    public boolean sideways() {
        return quarters % 2 == 1;
    }

    /** @return device pixel, from the surface's left, where the page's origin falls; whole */
    public long originXDevice() {
        return Math.round(widthPx * outputScale / 2 - (cos() * centreX - sin() * centreY) * pxPerPt());
    }

    /** @return device pixel, from the surface's top, where the page's origin falls; whole */
    public long originYDevice() {
        return Math.round(heightPx * outputScale / 2 - (sin() * centreX + cos() * centreY) * pxPerPt());
    }

    /** @return view x of a page point in points */
    public double toViewX(double pageX, double pageY) {
        return originXDevice() / outputScale + (cos() * pageX - sin() * pageY) * zoom;
    }

    /** @return view y of a page point in points */
    public double toViewY(double pageX, double pageY) {
        return originYDevice() / outputScale + (sin() * pageX + cos() * pageY) * zoom;
    }

    /** @return page x in points of a view point */
    public double toPageX(double viewX, double viewY) {
        double dx = viewX - originXDevice() / outputScale;
        double dy = viewY - originYDevice() / outputScale;
        return (cos() * dx + sin() * dy) / zoom;
    }

    /** @return page y in points of a view point */
    public double toPageY(double viewX, double viewY) {
        double dx = viewX - originXDevice() / outputScale;
        double dy = viewY - originYDevice() / outputScale;
        return (cos() * dy - sin() * dx) / zoom;
    }

    /** @return where a box of the page, in points, is seen; logical pixels */
    public Box toView(Box page) {
        return Box.ofCorners(
                toViewX(page.x0(), page.y0()),
                toViewY(page.x0(), page.y0()),
                toViewX(page.x1(), page.y1()),
                toViewY(page.x1(), page.y1()));
    }

    /** @return the part of page space, in points, that the surface shows */
    public Box seen() {
        return Box.ofCorners(toPageX(0, 0), toPageY(0, 0), toPageX(widthPx, heightPx), toPageY(widthPx, heightPx));
    }

    /** @return a length of the view, in logical pixels, moved to the nearest whole device pixel */
    public double snap(double viewPx) {
        return Math.rint(viewPx * outputScale) / outputScale;
    }

    /** @return this at another size of surface */
    public Camera resized(double width, double height, double scale) {
        return new Camera(zoom, centreX, centreY, Math.max(1, width), Math.max(1, height), scale, quarters);
    }

    private Camera at(double newZoom, double x, double y) {
        return new Camera(newZoom, x, y, widthPx, heightPx, outputScale, quarters);
    }

    /** @return this zoomed to {@code newZoom} with the page point under (viewX, viewY) held still */
    public Camera zoomedAbout(double viewX, double viewY, double newZoom) {
        double limited = at(newZoom, centreX, centreY).zoom;
        double dx = viewX - widthPx / 2;
        double dy = viewY - heightPx / 2;
        // From where the page is seen to lie, so that the rounding to whole pixels does not add up.
        double x = toPageX(viewX, viewY) - (cos() * dx + sin() * dy) / limited;
        double y = toPageY(viewX, viewY) - (cos() * dy - sin() * dx) / limited;
        return at(limited, x, y);
    }

    /** @return this with the picture moved by so many logical pixels, its middle kept within {@code limits} */
    public Camera panned(double dxPx, double dyPx, Box limits) {
        double x = centreX - (cos() * dxPx + sin() * dyPx) / zoom;
        double y = centreY - (cos() * dyPx - sin() * dxPx) / zoom;
        return at(
                zoom, Math.max(limits.x0(), Math.min(limits.x1(), x)), Math.max(limits.y0(), Math.min(limits.y1(), y)));
    }

    /** @return the same look at the same artwork, on a page that became so many times as large */
    Camera scaled(double factor) {
        return at(zoom / factor, centreX * factor, centreY * factor);
    }

    /** @return this turned by quarters, clockwise, about the middle of the surface */
    public Camera turned(int byQuarters) {
        return new Camera(zoom, centreX, centreY, widthPx, heightPx, outputScale, quarters + byQuarters);
    }

    /** @return the look that shows all of {@code box} with a margin around it */
    public Camera fitted(Box box, double marginPx) {
        double w = Math.max(1, widthPx - 2 * marginPx);
        double h = Math.max(1, heightPx - 2 * marginPx);
        double across = sideways() ? box.height() : box.width();
        double down = sideways() ? box.width() : box.height();
        double fit = box.isEmpty() ? 1 : Math.min(w / across, h / down);
        return at(fit, (box.x0() + box.x1()) / 2, (box.y0() + box.y1()) / 2);
    }
}
