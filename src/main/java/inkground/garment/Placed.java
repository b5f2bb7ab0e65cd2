package inkground.garment;

import inkground.geometry.Box;
import inkground.plate.PlateRequest;
import java.util.Set;
import java.util.function.DoubleFunction;

/**
 * Artwork laid on a form: the map between the page (points) and the garment (millimetres). Immutable.
 *
 * @param form what it lies on
 * @param artworkPt the artwork's box on the page, not empty
 * @param artworkMm where that box lies on the garment
 * @param offCentreMm from the centre line to its middle, to the right as seen
 */
public record Placed(Form form, Box artworkPt, Box artworkMm, double offCentreMm) {
    /** Checks the boxes. */
    public Placed {
        if (artworkPt.isEmpty() || artworkMm.isEmpty()) {
            throw new IllegalArgumentException("artwork of no size");
        }
    }

    /**
     * @param artworkPt the artwork's box on the page, as the placement measures it; not empty
     */
    public static Placed of(Placement placement, Form form, Box artworkPt) {
        double width = placement.widthMm().orElse(artworkPt.widthMm());
        double height = artworkPt.heightMm() * width / artworkPt.widthMm();
        double left = placement.offCentreMm() - width / 2;
        double top = placement.belowMm().orElseGet(form::usualBelowMm);
        return new Placed(form, artworkPt, new Box(left, top, left + width, top + height), placement.offCentreMm());
    }

    /** @return printed size over the artwork's own */
    public double scale() {
        return artworkMm.width() / artworkPt.widthMm();
    }

    /**
     * @param length writes a length in millimetres in the user's unit
     * @return size and place, for the user
     */
    public String words(DoubleFunction<String> length) {
        String aside = Math.abs(offCentreMm) < 0.05
                ? "on the centre line"
                : length.apply(Math.abs(offCentreMm)) + (offCentreMm < 0 ? " left" : " right")
                        + " of the centre line as seen";
        double top = artworkMm.y0();
        return length.apply(artworkMm.width()) + " × " + length.apply(artworkMm.height()) + ", its top "
                + length.apply(Math.abs(top)) + (top < 0 ? " above" : " below") + " the "
                + form.face().from() + ", " + aside;
    }

    /** @return where a part of the page lies on the garment */
    public Box toMm(Box pagePt) {
        double k = artworkMm.width() / artworkPt.width();
        return new Box(
                artworkMm.x0() + (pagePt.x0() - artworkPt.x0()) * k,
                artworkMm.y0() + (pagePt.y0() - artworkPt.y0()) * k,
                artworkMm.x0() + (pagePt.x1() - artworkPt.x0()) * k,
                artworkMm.y0() + (pagePt.y1() - artworkPt.y0()) * k);
    }

    /** @return what part of the page lies on a part of the garment */
    public Box toPt(Box mm) {
        double k = artworkPt.width() / artworkMm.width();
        return new Box(
                artworkPt.x0() + (mm.x0() - artworkMm.x0()) * k,
                artworkPt.y0() + (mm.y0() - artworkMm.y0()) * k,
                artworkPt.x0() + (mm.x1() - artworkMm.x0()) * k,
                artworkPt.y0() + (mm.y1() - artworkMm.y0()) * k);
    }

    /** @return scale to rasterise the page at, for a picture of so many pixels a millimetre of garment */
    public double pxPerPt(double pxPerMm) {
        return pxPerMm * artworkMm.width() / artworkPt.width();
    }

    /**
     * @return the pixel of the garment's picture on which the page's pixel (0, 0) falls, from the left: chosen so that the
     *     artwork's left edge falls on the pixel edge nearest to its place
     */
    public int pageXPx(double pxPerMm) {
        return (int) (Math.round(artworkMm.x0() * pxPerMm) - Math.round(artworkPt.x0() * pxPerPt(pxPerMm)));
    }

    /** @return the same from the top */
    public int pageYPx(double pxPerMm) {
        return (int) (Math.round(artworkMm.y0() * pxPerMm) - Math.round(artworkPt.y0() * pxPerPt(pxPerMm)));
    }

    /**
     * What of the page is to be rasterised for a region of the garment's picture.
     *
     * @param pagePt all of the page that prints
     * @param marginPx so much more on each side, where the page goes on
     * @return null where the page does not reach the region
     */
    public PlateRequest plate(
            GarmentRequest region, Box pagePt, int marginPx, boolean overprint, Set<Integer> layersOn) {
        double scale = pxPerPt(region.pxPerMm());
        PlateRequest whole = PlateRequest.of(pagePt, scale * 72, overprint, layersOn);
        int dx = pageXPx(region.pxPerMm());
        int dy = pageYPx(region.pxPerMm());
        int x0 = Math.max(whole.x0(), region.x0() - dx - marginPx);
        int y0 = Math.max(whole.y0(), region.y0() - dy - marginPx);
        int x1 = Math.min(whole.x1(), region.x1() - dx + marginPx);
        int y1 = Math.min(whole.y1(), region.y1() - dy + marginPx);
        return x0 < x1 && y0 < y1 ? new PlateRequest(whole.pxPerPt(), x0, y0, x1, y1, overprint, layersOn) : null;
    }
}
