package inkground.colour;

import inkground.base.Refusal;
import inkground.colour.Characterisation.Patch;
import java.util.Arrays;
import java.util.List;

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
        return of(NeugebauerModel.of(data), data.unseen());
    }

    /**
     * @param data of process inks, complete
     * @return how well the model predicts it from paper, solids and ramps alone, all overprints estimated
     */
    public static ModelFit withoutOverprints(Characterisation data) throws Refusal {
        List<Patch> single = data.patches().stream()
                .filter(p -> Arrays.stream(p.tints()).filter(t -> t > 0).count() <= 1)
                .toList();
        Characterisation alone = new Characterisation(data.name(), data.source(), data.inks(), single);
        return of(NeugebauerModel.of(MissingPrimaries.complete(alone)), data.unseen());
    }

    private static ModelFit of(NeugebauerModel model, List<Patch> patches) {
        double[] xyz = new double[3];
        return of(patches.stream()
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
