package inkground.colour;

import inkground.base.Refusal;
import inkground.colour.Characterisation.Estimate;
import inkground.colour.Characterisation.Patch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Estimates of the primaries that a characterisation does not hold, so that the ink model can be built from it all the same. In the order
 * in which they are tried:
 *
 * <ol>
 *   <li>paper: the lightest steps of the single inks, continued to no ink;
 *   <li>a solid: the darkest steps of its ramp, continued to 100 %;
 *   <li>an overprint: the measured patch of the same inks that holds most of it, less what the model knows of its other parts;
 *   <li>else the overprint's parts as filters of one another: of all ways to part its inks in two, the one that leaves most light, and no
 *       lighter than its darkest part.
 * </ol>
 *
 * <p>All of it in the bands' 1/n domain. Of FOGRA39L and TR006, overprints found by the third rule come within ΔE00 0.9 on average and
 * 1.8 at most; by the fourth, from measured overprints of two inks, 4.9 and 7.0; from single inks alone, 5.8 and 10.3
 * ({@code MissingPrimariesTest}).
 */
final class MissingPrimaries {
    private static final int BANDS = 3;

    // Steps farther from what they are continued to would say little of it.
    private static final double LIGHTEST_STEP = 0.25;
    private static final double DARKEST_STEP = 0.5;
    // What the model misses of a patch counts 1/weight times in the corner.
    private static final double LEAST_WEIGHT = 0.25;
    // Continued values stay between the blackest ink, 0.1 % of the light or less, and a paper that glows.
    private static final double LEAST_VALUE = 0.03;
    private static final double MOST_VALUE = 1.1;

    private final Characterisation data;
    private final Bands bands = Bands.STANDARD;
    private final int inks;
    private final List<Estimate> estimates = new ArrayList<>();

    private MissingPrimaries(Characterisation data) {
        this.data = data;
        this.inks = data.inks().size();
    }

    /**
     * @return the same data with an estimate of every primary that was not measured
     * @throws Refusal naming the file and the ink, if paper or a solid is missing and there are no steps near it
     */
    static Characterisation complete(Characterisation data) throws Refusal {
        NeugebauerModel.checkInks(data);
        MissingPrimaries missing = new MissingPrimaries(data);
        missing.paper();
        for (int ink = 0; ink < missing.inks; ink++) {
            missing.solid(ink);
        }
        List<Integer> overprints = missing.overprints();
        return overprints.isEmpty() ? data.completed(missing.estimates) : missing.withOverprints(overprints);
    }

    private void paper() throws Refusal {
        if (data.find(tints(0)) != null) {
            return;
        }
        double[] sum = new double[BANDS];
        double weights = 0;
        for (int ink = 0; ink < inks; ink++) {
            List<Patch> ramp = data.ramp(ink);
            if (ramp.size() >= 2 && ramp.get(0).tints()[ink] <= LIGHTEST_STEP) {
                double[] value = continued(ramp.subList(0, Math.min(3, ramp.size())), ink, 0);
                double weight = 1 / ramp.get(0).tints()[ink];
                for (int b = 0; b < BANDS; b++) {
                    sum[b] += weight * value[b];
                }
                weights += weight;
            }
        }
        if (weights == 0) {
            throw new Refusal(data.file() + " has no patch of the unprinted paper (" + String.join(", ", data.inks())
                    + " all 0), and no two steps of a single ink, one of them of at most 25 %, to find it by."
                    + " Add the paper.");
        }
        for (int b = 0; b < BANDS; b++) {
            sum[b] /= weights;
        }
        add(0, sum, List.of(), "the lightest steps of single inks, continued to no ink");
    }

    private void solid(int ink) throws Refusal {
        if (data.find(tints(1 << ink)) != null) {
            return;
        }
        List<Patch> ramp = data.completed(estimates).ramp(ink);
        int n = ramp.size();
        double darkest = ramp.get(n - 1).tints()[ink];
        if (n < 2 || darkest < DARKEST_STEP) {
            throw new Refusal(data.file() + " has no patch of solid "
                    + data.inks().get(ink) + " alone, and no step of it of 50 % or more to find it by. Add the solid.");
        }
        add(
                1 << ink,
                continued(ramp.subList(Math.max(0, n - 3), n), ink, 1),
                List.of(),
                "its steps up to " + percent(darkest) + ", continued");
    }

    // The polynomial through two or three steps, at another tint.
    private double[] continued(List<Patch> steps, int ink, double tint) {
        double[] out = new double[BANDS];
        double[] value = new double[BANDS];
        for (Patch step : steps) {
            bands.compress(Cie.labToXyz(step.lab()), value, 0);
            double weight = 1;
            for (Patch other : steps) {
                if (other != step) {
                    weight *= (tint - other.tints()[ink]) / (step.tints()[ink] - other.tints()[ink]);
                }
            }
            for (int b = 0; b < BANDS; b++) {
                out[b] += weight * value[b];
            }
        }
        return out;
    }

    // Fewer inks first, since an overprint is found from its parts.
    private List<Integer> overprints() {
        return IntStream.range(0, 1 << inks)
                .filter(p -> Integer.bitCount(p) > 1 && data.find(tints(p)) == null)
                .boxed()
                .sorted(Comparator.comparingInt(Integer::bitCount))
                .toList();
    }

    private Characterisation withOverprints(List<Integer> missing) throws Refusal {
        Characterisation known = data.completed(estimates);
        double[] values = new double[(1 << inks) * BANDS];
        for (int p = 0; p < 1 << inks; p++) {
            Lab lab = known.find(tints(p));
            if (lab != null) {
                bands.compress(Cie.labToXyz(lab), values, p * BANDS);
            }
        }
        missing.forEach(p -> asFilters(values, p));
        NeugebauerModel model = NeugebauerModel.of(known, values);
        for (int primary : missing) {
            Optional<Patch> nearest = nearest(model, primary);
            if (nearest.isPresent()) {
                correct(values, primary, nearest.get(), model);
                model = model.withPrimaries(values); // it is a part of those that follow
            }
            double[] value = Arrays.copyOfRange(values, primary * BANDS, (primary + 1) * BANDS);
            String basis = nearest.map(p -> "the patch " + words(p)).orElse("its inks as filters of one another");
            add(primary, value, nearest.stream().toList(), basis);
        }
        return data.completed(estimates);
    }

    private static void asFilters(double[] values, int primary) {
        for (int b = 0; b < BANDS; b++) {
            double most = 0;
            double darkest = Double.MAX_VALUE;
            for (int part = (primary - 1) & primary; part > 0; part = (part - 1) & primary) {
                double of = values[part * BANDS + b];
                most = Math.max(most, of * values[(primary & ~part) * BANDS + b] / values[b]);
                darkest = Math.min(darkest, of);
            }
            values[primary * BANDS + b] = Math.min(most, darkest);
        }
    }

    /** The patch of these inks and no others, in which most of its area is the overprint of all. */
    private Optional<Patch> nearest(NeugebauerModel model, int primary) {
        return data.patches().stream()
                .filter(p -> IntStream.range(0, inks).allMatch(i -> (p.tints()[i] > 0) == ((primary >> i & 1) != 0)))
                .filter(p -> leastWeight(model, p, primary) >= LEAST_WEIGHT)
                .max(Comparator.comparingDouble(p -> leastWeight(model, p, primary)));
    }

    private static double leastWeight(NeugebauerModel model, Patch patch, int primary) {
        return IntStream.range(0, BANDS)
                .mapToDouble(b -> model.weight(patch.tints(), primary, b))
                .min()
                .orElseThrow();
    }

    private void correct(double[] values, int primary, Patch patch, NeugebauerModel model) {
        double[] measured = new double[BANDS];
        double[] predicted = new double[BANDS];
        bands.compress(Cie.labToXyz(patch.lab()), measured, 0);
        model.toCompressed(patch.tints(), predicted);
        for (int b = 0; b < BANDS; b++) {
            values[primary * BANDS + b] = limited(values[primary * BANDS + b]
                    + (measured[b] - predicted[b]) / model.weight(patch.tints(), primary, b));
        }
    }

    private void add(int primary, double[] value, List<Patch> from, String basis) {
        double[] xyz = new double[3];
        bands.expand(Arrays.stream(value).map(MissingPrimaries::limited).toArray(), xyz);
        Patch patch = new Patch(tints(primary), Cie.xyzToLab(xyz[0], xyz[1], xyz[2]));
        estimates.add(new Estimate(patch, from, NeugebauerModel.describe(data, primary) + " from " + basis));
    }

    private static double limited(double value) {
        return Math.max(LEAST_VALUE, Math.min(MOST_VALUE, value));
    }

    private double[] tints(int primary) {
        return IntStream.range(0, inks).mapToDouble(i -> primary >> i & 1).toArray();
    }

    private String words(Patch patch) {
        return IntStream.range(0, inks)
                .filter(i -> patch.tints()[i] > 0)
                .mapToObj(i -> data.inks().get(i) + " " + percent(patch.tints()[i]))
                .collect(Collectors.joining(" + "));
    }

    private static String percent(double tint) {
        return Math.round(100 * tint) + " %";
    }
}
