package inkground.colour;

import inkground.base.Refusal;
import java.util.Arrays;

/**
 * How well the model built from a characterisation's primaries and ramps alone predicts all its other patches.
 *
 * @param patches number of patches predicted
 * @param meanDe00 mean ΔE00 [SHARMA2005]
 * @param p95De00 the ΔE00 that 95 of 100 patches do not exceed
 * @param maxDe00 the largest ΔE00
 */
public record ModelFit(int patches, double meanDe00, double p95De00, double maxDe00) {
    /** @return the fit, all 0 where the data has no other patches */
    public static ModelFit of(Characterisation data) throws Refusal {
        NeugebauerModel model = NeugebauerModel.of(data);
        double[] xyz = new double[3];
        return of(data.patches().stream()
                .filter(p -> !NeugebauerModel.usesPatch(p.tints()))
                .mapToDouble(p -> {
                    model.toXyz(p.tints(), xyz);
                    return Cie.deltaE00(Cie.xyzToLab(xyz[0], xyz[1], xyz[2]), p.lab());
                })
                .toArray());
    }

    /** @return the fit of these differences, ΔE00; all 0 where there are none */
    public static ModelFit of(double[] differences) {
        int n = differences.length;
        if (n == 0) {
            return new ModelFit(0, 0, 0, 0);
        }
        double[] sorted = differences.clone();
        Arrays.sort(sorted);
        double mean = Arrays.stream(sorted).sum() / n;
        return new ModelFit(n, mean, sorted[(int) Math.ceil(0.95 * n) - 1], sorted[n - 1]);
    }
}
