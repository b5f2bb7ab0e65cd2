package inkground.appearance;

import inkground.artwork.TintTransform;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.ToneCurve;
import inkground.colour.ToneValues;

/** What a dot gain, stated as the area that a tint covers in print, makes of an ink's tone values. */
final class DotGain {
    private static final int STEPS = 16;
    private static final Lab PAPER = new Lab(100, 0, 0);

    private DotGain() {}

    /**
     * Areas of paper and solid mix by light [MURRAY1936]; the tone value is that of the mixture.
     *
     * @param gain from tint to area, both 0 to 1
     * @param solid of the ink on white, media-relative
     * @return tone value of ISO 20654 by tint
     */
    static ToneCurve tone(TintTransform gain, Lab solid) {
        double[] x = new double[STEPS + 1];
        double[] y = new double[STEPS + 1];
        float[] area = new float[Math.max(1, gain.outputs())];
        double[] white = Cie.labToXyz(PAPER);
        double[] full = Cie.labToXyz(solid);
        for (int i = 0; i <= STEPS; i++) {
            x[i] = (double) i / STEPS;
            gain.apply(new float[] {(float) x[i]}, area);
            double a = Math.max(0, Math.min(1, area[0]));
            Lab mixed = Cie.xyzToLab(
                    white[0] + a * (full[0] - white[0]),
                    white[1] + a * (full[1] - white[1]),
                    white[2] + a * (full[2] - white[2]));
            y[i] = ToneValues.spot(PAPER, solid, mixed);
        }
        return new ToneCurve(x, y);
    }
}
