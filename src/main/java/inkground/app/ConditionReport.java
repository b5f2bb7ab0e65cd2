package inkground.app;

import inkground.base.Refusal;
import inkground.colour.Bands;
import inkground.colour.Characterisation;
import inkground.colour.Characterisation.Patch;
import inkground.colour.Characterisation.Repeats;
import inkground.colour.Lab;
import inkground.colour.ModelFit;
import inkground.colour.PrintConditions;
import inkground.colour.ToneValues;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What a print condition's data says, and how well the ink model foretells it.
 *
 * @param name of the condition
 * @param source where the data comes from
 * @param inks names in channel order
 * @param patchesRead distinct patches in the data
 * @param measurements what these are the means of: rows of the file
 * @param repeats patches that were measured more than once
 * @param gaps what is not in the data and what stands in for it, a line for each
 * @param paper the unprinted paper, absolute
 * @param primaries every combination of solids, paper left out
 * @param ramps tone values of each ink printed alone
 * @param fit how well the model built from primaries and ramps alone predicts all other patches
 * @param exponents Yule–Nielsen n of the model's three bands
 */
public record ConditionReport(
        String name,
        String source,
        List<String> inks,
        int patchesRead,
        int measurements,
        Repeats repeats,
        List<String> gaps,
        Lab paper,
        List<Primary> primaries,
        List<Ramp> ramps,
        ModelFit fit,
        List<Double> exponents) {
    /** Copies the lists. */
    public ConditionReport {
        inks = List.copyOf(inks);
        gaps = List.copyOf(gaps);
        primaries = List.copyOf(primaries);
        ramps = List.copyOf(ramps);
        exponents = List.copyOf(exponents);
    }

    /**
     * Solids printed over one another.
     *
     * @param inks their names
     * @param lab absolute
     * @param measured whether the data holds it; else it is estimated
     */
    public record Primary(List<String> inks, Lab lab, boolean measured) {}

    /**
     * One ink's steps between paper and solid.
     *
     * @param ink its name
     * @param steps lightest first
     */
    public record Ramp(String ink, List<Step> steps) {}

    /**
     * One step.
     *
     * @param tint in the data, 0 to 1
     * @param increase tone value increase (dot gain): tone value by area less the tint
     * @param spotToneValue tone value of ISO 20654
     */
    public record Step(double tint, double increase, double spotToneValue) {}

    /** @return mean of the bands' exponents: the one number n that the model is described by */
    public double n() {
        return exponents.stream().mapToDouble(Double::doubleValue).average().orElse(Double.NaN);
    }

    /**
     * @param nameOrFile a bundled condition's name, or a characterisation file or ICC profile
     * @throws Refusal if it cannot be used; the message names file, row and column
     */
    public static ConditionReport of(String nameOrFile) throws Refusal {
        Characterisation data = PrintConditions.findData(nameOrFile);
        ModelFit fit = ModelFit.of(data);
        int inks = data.inks().size();
        Lab paper = data.find(new double[inks]);
        List<Primary> primaries = new ArrayList<>();
        List<Ramp> ramps = new ArrayList<>();
        for (int p = 1; p < 1 << inks; p++) {
            primaries.add(primary(data, p));
        }
        for (int i = 0; i < inks; i++) {
            ramps.add(ramp(data, i, paper));
        }
        return new ConditionReport(
                data.name(),
                data.source(),
                data.inks(),
                data.patches().size(),
                data.measurements(),
                data.repeats(),
                data.gaps(),
                paper,
                primaries,
                ramps,
                fit,
                Arrays.stream(Bands.STANDARD.exponents()).boxed().toList());
    }

    private static Primary primary(Characterisation data, int bits) {
        double[] tints = new double[data.inks().size()];
        List<String> names = new ArrayList<>();
        for (int i = 0; i < tints.length; i++) {
            if ((bits >> i & 1) != 0) {
                tints[i] = 1;
                names.add(data.inks().get(i));
            }
        }
        return new Primary(
                names,
                data.find(tints),
                data.estimates().stream().noneMatch(e -> Arrays.equals(e.patch().tints(), tints)));
    }

    private static Ramp ramp(Characterisation data, int ink, Lab paper) {
        List<Patch> steps = data.ramp(ink);
        Lab solid = steps.get(steps.size() - 1).lab();
        List<Step> out = new ArrayList<>();
        for (Patch patch : steps) {
            double tint = patch.tints()[ink];
            if (tint > 0 && tint < 1) {
                out.add(new Step(
                        tint,
                        ToneValues.area(paper, solid, patch.lab()) - tint,
                        ToneValues.spot(paper, solid, patch.lab())));
            }
        }
        return new Ramp(data.inks().get(ink), out);
    }
}
