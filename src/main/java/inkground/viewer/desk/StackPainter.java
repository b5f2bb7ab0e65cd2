package inkground.viewer.desk;

import inkground.appearance.Appearance;
import inkground.appearance.PlateMap;
import inkground.appearance.PrintedPixels;
import inkground.appearance.ProofMap;
import inkground.appearance.StackModel;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.base.Refusal;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.plate.InkPlanes;
import inkground.plate.PlaneSource;
import inkground.plate.Plate;
import inkground.plate.PlateRequest;
import inkground.plate.Register;
import inkground.substrate.Texture;
import inkground.viewer.state.ProofEngine.Painter;
import java.util.Optional;

/**
 * Colours planes as they look on a stack.
 *
 * @param from rasterises what lies around a region; null for a small picture, where a choke would not be seen
 * @param map drawn over the colours; null for none
 * @param play how far the inks lie off, which is shown in place of the map; null for none
 * @param plate plane index of the ink whose plate is shown in place of all; -1 for none
 */
record StackPainter(Plate from, StackModel model, ProofMap map, Maps.Play play, int plate) implements Painter {
    @Override
    public Optional<PrintedPixels> printed(InkPlanes planes, Cancel cancel) {
        return PrintedPixels.of(planes, model, cancel);
    }

    @Override
    public void paint(InkPlanes planes, int[] argb, int offset, int stride, Cancel cancel) throws Refusal {
        paint(planes, null, argb, offset, stride, cancel);
    }

    @Override
    public void paint(InkPlanes planes, PrintedPixels known, int[] argb, int offset, int stride, Cancel cancel)
            throws Refusal {
        cancel.check();
        if (plate >= 0) {
            PlateMap.paint(planes, plate, argb, offset, stride);
            return;
        }
        if (play != null) {
            // The colours themselves, off register, are what the eye has to judge; a hatch would hide them.
            InkPlanes off = Register.shifted(PlaneSource.of(from), planes.request(), play.dxMm(), play.dyMm(), cancel);
            Appearance.paint(off, model, argb, offset, stride, cancel);
            return;
        }
        int reach = from == null
                ? 0
                : Appearance.reachPx(model.stack(), planes.request().pxPerPt());
        if (reach > 0) {
            paintWithin(planes.request(), reach, argb, offset, stride, cancel);
        } else {
            Appearance.paint(planes, known, model, argb, offset, stride, cancel);
        }
        if (map != null) {
            map.paint(planes, argb, offset, stride, cancel);
        }
    }

    /** Where colours hang on what lies around, the region is painted with a margin, so that tiles show no seam. */
    private void paintWithin(PlateRequest region, int reach, int[] argb, int offset, int stride, Cancel cancel)
            throws Refusal {
        PlateRequest wide = region.grown(reach);
        int[] pixels = new int[wide.width() * wide.height()];
        InkPlanes planes = from.render(wide, cancel, Progress.NONE);
        Appearance.paint(planes, model, pixels, 0, wide.width(), cancel);
        for (int y = 0; y < region.height(); y++) {
            System.arraycopy(pixels, (y + reach) * wide.width() + reach, argb, offset + y * stride, region.width());
        }
    }

    @Override
    public int colour(int[] tints) {
        return model.toArgb(tints);
    }

    @Override
    public Texture texture() {
        return model.stack().substrate().texture();
    }

    @Override
    public Lab lab(int[] tints) {
        double[] xyz = new double[3];
        model.toXyz(tints, xyz);
        return Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
    }
}
