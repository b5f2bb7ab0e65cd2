package inkground.plate;

import inkground.base.Cancel;
import inkground.base.Refusal;
import java.util.Arrays;

/**
 * Ink planes out of register: each ink moved on its own. Edges that move by a fraction of a pixel stay sharp, and ink keeps its
 * area, see {@link EdgeShift}. The laid and the inked plane are worked out anew from the moved inks;
 * the mark plane keeps what was painted and gains what ink has moved onto.
 */
public final class Register {
    private Register() {}

    /**
     * Moves the inks of a region. What would come in from beyond the region is not known: there it goes on as at its rim, so ask
     * for a region larger by the play, or use {@link #shifted(PlaneSource, PlateRequest, double[], double[], Cancel)}.
     *
     * @param dxPx how far each ink moves to the right, in pixels, in plane order
     * @param dyPx how far each ink moves down
     */
    public static InkPlanes shifted(InkPlanes planes, double[] dxPx, double[] dyPx) {
        int inks = planes.inks().size();
        if (dxPx.length != inks || dyPx.length != inks) {
            throw new IllegalArgumentException(dxPx.length + " and " + dyPx.length + " shifts for " + inks + " inks");
        }
        int width = planes.width();
        int height = planes.height();
        byte[][] out = new byte[planes.planes()][width * height];
        byte[] laid = planes.raster(planes.laidPlane());
        byte[] inked = planes.raster(planes.inkedPlane());
        out[planes.markPlane()] = planes.raster(planes.markPlane());
        for (int i = 0; i < inks; i++) {
            byte[] tints = planes.raster(i);
            byte[] own = new byte[laid.length]; // where this ink is laid
            byte[] everInked = new byte[laid.length];
            for (int p = 0; p < own.length; p++) {
                own[p] = (byte) Math.min(laid[p] & 255, covered(tints, p, width));
                everInked[p] = tints[p] == 0 && laid[p] != 0 ? 0 : inked[p];
            }
            EdgeShift.move(tints, width, height, dxPx[i], dyPx[i], out[i]);
            byte[] moved = new byte[own.length];
            EdgeShift.move(own, width, height, dxPx[i], dyPx[i], moved);
            sum(out[planes.laidPlane()], moved);
            most(out[planes.markPlane()], moved);
            EdgeShift.move(everInked, width, height, dxPx[i], dyPx[i], moved);
            most(out[planes.inkedPlane()], moved);
        }
        return planes.with(out);
    }

    /**
     * The planes of a region with its inks moved, whatever comes in from beyond it.
     *
     * @param dxMm how far each ink moves to the right, in mm, in plane order
     * @param dyMm how far each ink moves down
     */
    public static InkPlanes shifted(
            PlaneSource source, PlateRequest request, double[] dxMm, double[] dyMm, Cancel cancel) throws Refusal {
        double mmPerPx = request.mmPerPx();
        double[] dxPx = Arrays.stream(dxMm).map(mm -> mm / mmPerPx).toArray();
        double[] dyPx = Arrays.stream(dyMm).map(mm -> mm / mmPerPx).toArray();
        double furthest = 0;
        for (int i = 0; i < dxPx.length; i++) {
            furthest = Math.max(furthest, Math.max(Math.abs(dxPx[i]), Math.abs(dyPx[i])));
        }
        int margin = (int) Math.ceil(furthest) + 1;
        return shifted(source.planes(request.grown(margin), cancel), dxPx, dyPx).part(request);
    }

    /**
     * What an ink covers of a pixel, 0 to 255, as its tint tells: at its edge the part of the largest tint beside, which is less than
     * what is laid where another ink begins.
     */
    private static int covered(byte[] tints, int at, int width) {
        int most = tints[at] & 255;
        int least = most;
        int x = at % width;
        for (int row = Math.max(x, at - width); row <= Math.min(tints.length - 1, at + width); row += width) {
            for (int i = row - (x > 0 ? 1 : 0); i <= row + (x < width - 1 ? 1 : 0); i++) {
                most = Math.max(most, tints[i] & 255);
                least = Math.min(least, tints[i] & 255);
            }
        }
        return (tints[at] & 255) == 0 ? 0 : least > 0 ? 255 : (tints[at] & 255) * 255 / most;
    }

    /** Inks that meet fill a pixel together. */
    private static void sum(byte[] into, byte[] other) {
        for (int i = 0; i < into.length; i++) {
            into[i] = (byte) Math.min(255, (into[i] & 255) + (other[i] & 255));
        }
    }

    private static void most(byte[] into, byte[] other) {
        for (int i = 0; i < into.length; i++) {
            into[i] = (byte) Math.max(into[i] & 255, other[i] & 255);
        }
    }
}
