package inkground.artwork.pdf;

import inkground.artwork.BlendMode;
import inkground.artwork.SoftMask;
import inkground.artwork.Style;
import inkground.artwork.Transfer;
import inkground.geometry.Matrix;
import inkground.geometry.Pen;
import java.util.Map;
import org.apache.pdfbox.pdmodel.graphics.PDLineDashPattern;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceGray;
import org.apache.pdfbox.pdmodel.graphics.state.PDGraphicsState;

/** Turns graphics states into styles and pens. */
final class States {
    private static final Map<org.apache.pdfbox.pdmodel.graphics.blend.BlendMode, BlendMode> BLENDS = Map.ofEntries(
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.MULTIPLY, BlendMode.MULTIPLY),
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.SCREEN, BlendMode.SCREEN),
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.OVERLAY, BlendMode.OVERLAY),
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.DARKEN, BlendMode.DARKEN),
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.LIGHTEN, BlendMode.LIGHTEN),
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.COLOR_DODGE, BlendMode.COLOR_DODGE),
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.COLOR_BURN, BlendMode.COLOR_BURN),
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.HARD_LIGHT, BlendMode.HARD_LIGHT),
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.SOFT_LIGHT, BlendMode.SOFT_LIGHT),
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.DIFFERENCE, BlendMode.DIFFERENCE),
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.EXCLUSION, BlendMode.EXCLUSION),
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.HUE, BlendMode.HUE),
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.SATURATION, BlendMode.SATURATION),
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.COLOR, BlendMode.COLOR),
            Map.entry(org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.LUMINOSITY, BlendMode.LUMINOSITY));

    private States() {}

    static Style style(PDGraphicsState state, boolean stroke, SoftMask mask, Transfer transfer) {
        double alpha = stroke ? state.getAlphaConstant() : state.getNonStrokeAlphaConstant();
        alpha = alpha >= 0 ? Math.min(1, alpha) : 0;
        BlendMode blend = state.getBlendMode() == org.apache.pdfbox.pdmodel.graphics.blend.BlendMode.NORMAL
                ? BlendMode.NORMAL
                : BLENDS.getOrDefault(state.getBlendMode(), BlendMode.NORMAL);
        boolean overprint = stroke ? state.isOverprint() : state.isNonStrokingOverprint();
        int mode = state.getOverprintMode() == 1 ? 1 : 0;
        boolean plain = alpha == 1 && blend == BlendMode.NORMAL && !overprint && mode == 0 && mask == null;
        return plain && !state.isAlphaSource() && transfer == null
                ? Style.PLAIN
                : new Style(alpha, blend, overprint, mode, mask, state.isAlphaSource(), transfer);
    }

    /** @param dashPhase of the state's dash pattern, which the library rounds to whole units */
    static Pen pen(PDGraphicsState state, double dashPhase) {
        PDLineDashPattern pattern = state.getLineDashPattern();
        float[] lengths = pattern == null ? new float[0] : pattern.getDashArray();
        double[] dash = new double[lengths.length];
        for (int i = 0; i < dash.length; i++) {
            dash[i] = lengths[i];
        }
        Pen.Cap cap =
                switch (state.getLineCap()) {
                    case 1 -> Pen.Cap.ROUND;
                    case 2 -> Pen.Cap.SQUARE;
                    default -> Pen.Cap.BUTT;
                };
        Pen.Join join =
                switch (state.getLineJoin()) {
                    case 1 -> Pen.Join.ROUND;
                    case 2 -> Pen.Join.BEVEL;
                    default -> Pen.Join.MITER;
                };
        return new Pen(Math.abs(state.getLineWidth()), cap, join, state.getMiterLimit(), dash, dashPhase);
    }

    /** Gives a state the values that a page starts with (ISO 32000-2 tables 51 and 52), under a given matrix. */
    static void reset(PDGraphicsState state, Matrix ctm) {
        state.setCurrentTransformationMatrix(Cos.matrix(ctm));
        state.setNonStrokingColorSpace(PDDeviceGray.INSTANCE);
        state.setNonStrokingColor(PDDeviceGray.INSTANCE.getInitialColor());
        state.setStrokingColorSpace(PDDeviceGray.INSTANCE);
        state.setStrokingColor(PDDeviceGray.INSTANCE.getInitialColor());
        state.setLineWidth(1);
        state.setLineCap(0);
        state.setLineJoin(0);
        state.setMiterLimit(10);
        state.setLineDashPattern(new PDLineDashPattern());
        state.setSoftMask(null);
        state.setAlphaSource(false);
        state.setOverprint(false);
        state.setNonStrokingOverprint(false);
        state.setOverprintMode(0);
        state.setTransfer(null);
    }
}
