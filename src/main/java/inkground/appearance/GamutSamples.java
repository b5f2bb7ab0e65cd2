package inkground.appearance;

import inkground.appearance.StackGamut.Nearest;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.TintSearch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * Colours that some inks of a stack make, spread over all that they can make, and the search from them to a colour asked for.
 * Immutable.
 */
final class GamutSamples {
    // Weight of ink above the limit, in ΔE per whole tint.
    private static final double TOTAL_PULL = 300;
    private static final int ROWS = 4;
    // Starts that differ by less in every tint lead to the same place.
    private static final double APART = 0.25;
    private static final double[] LEVELS = {1 / 3.0, 2 / 3.0, 1};
    private static final int MIXTURES = 2000;
    private static final int SEED = 2026;
    // Corners of the cube of so many inks are all taken; those of more inks by chance, with the mixtures.
    private static final int CORNER_INKS = 8;

    private final StackModel model;
    private final int[] inks; // planes
    private final boolean onUnderbase;
    private final double totalInk;
    private final double[][] tints;
    private final double[] labs; // L, a, b of each sample

    /**
     * @param inks planes of those that may print
     * @param onUnderbase whether an underbase lies beneath, whole but for what inks knock out
     * @param totalInk largest sum of tints
     */
    GamutSamples(StackModel model, int[] inks, boolean onUnderbase, double totalInk) {
        this.model = model;
        this.inks = inks;
        this.onUnderbase = onUnderbase;
        this.totalInk = totalInk;
        List<double[]> all = new ArrayList<>();
        all.add(new double[inks.length]);
        corners(all);
        pairs(all);
        mixtures(all);
        this.tints = all.toArray(double[][]::new);
        this.labs = new double[3 * tints.length];
        Colour colour = new Colour();
        for (int i = 0; i < tints.length; i++) {
            hold(tints[i]);
            System.arraycopy(colour.lab(tints[i]), 0, labs, 3 * i, 3);
        }
    }

    private void corners(List<double[]> out) {
        if (inks.length > CORNER_INKS) {
            return;
        }
        for (int bits = 1; bits < 1 << inks.length; bits++) {
            double[] corner = new double[inks.length];
            for (int i = 0; i < inks.length; i++) {
                corner[i] = bits >> i & 1;
            }
            out.add(corner);
        }
    }

    private void pairs(List<double[]> out) {
        for (int i = 0; i < inks.length; i++) {
            for (int j = i; j < inks.length; j++) {
                for (double first : LEVELS) {
                    for (double second : LEVELS) {
                        double[] pair = new double[inks.length];
                        pair[i] = first;
                        pair[j] = second;
                        out.add(pair);
                    }
                }
            }
        }
    }

    // Three inks or fewer at a time, as separations have them, and some of all.
    private void mixtures(List<double[]> out) {
        Random random = new Random(SEED);
        for (int s = 0; s < MIXTURES && inks.length > 2; s++) {
            double[] mixture = new double[inks.length];
            for (int i = 0; i < (s % 4 == 0 ? inks.length : 3); i++) {
                int ink = s % 4 == 0 ? i : random.nextInt(inks.length);
                mixture[ink] = random.nextDouble();
            }
            out.add(mixture);
        }
    }

    /** Scales tints down to the ink limit. */
    private void hold(double[] of) {
        double sum = Arrays.stream(of).sum();
        if (sum > totalInk) {
            for (int i = 0; i < of.length; i++) {
                of[i] *= totalInk / sum;
            }
        }
    }

    /** @return tints of the samples nearest to a colour, nearest first, each of another kind than those before it */
    List<double[]> near(Lab asked, int most) {
        double[] distances = new double[tints.length];
        for (int i = 0; i < distances.length; i++) {
            distances[i] = roughly(asked, labs[3 * i], labs[3 * i + 1], labs[3 * i + 2]);
        }
        List<double[]> out = new ArrayList<>();
        for (int k = 0; k < most; k++) {
            int best = -1;
            for (int i = 0; i < distances.length; i++) {
                if ((best < 0 || distances[i] < distances[best]) && apart(tints[i], out)) {
                    best = i;
                }
            }
            if (best < 0) {
                break;
            }
            out.add(tints[best]);
        }
        return out;
    }

    // Squared CIEDE2000 difference without its corrections for hue: near enough to choose by, and quick.
    private static double roughly(Lab asked, double L, double a, double b) {
        double askedChroma = Math.sqrt(square(asked.a()) + square(asked.b()));
        double chroma = Math.sqrt(a * a + b * b);
        double meanChroma = (askedChroma + chroma) / 2;
        double fromMiddle = square((asked.L() + L) / 2 - 50);
        double apart = square(asked.a() - a) + square(asked.b() - b);
        double chroma2 = square(askedChroma - chroma);
        return square((asked.L() - L) / (1 + 0.015 * fromMiddle / Math.sqrt(20 + fromMiddle)))
                + chroma2 / square(1 + 0.045 * meanChroma)
                + (apart - chroma2) / square(1 + 0.015 * meanChroma);
    }

    private static boolean apart(double[] one, List<double[]> others) {
        for (double[] other : others) {
            double most = 0;
            for (int i = 0; i < one.length; i++) {
                most = Math.max(most, Math.abs(one[i] - other[i]));
            }
            if (most < APART) {
                return false;
            }
        }
        return true;
    }

    /** @return where the search from a start ends; the tints within the ink limit */
    Nearest search(double[] start, Lab asked) {
        double[] found = start.clone();
        Colour colour = new Colour();
        if (inks.length > 0) {
            new TintSearch(inks.length, ROWS, (t, errors) -> errors(colour, t, asked, errors))
                    .minimise(found, inks.length);
        }
        hold(found);
        double[] lab = colour.lab(found);
        Lab nearest = new Lab(lab[0], lab[1], lab[2]);
        Double[] all = new Double[model.stack().inks().size()];
        Arrays.fill(all, 0.0);
        for (int i = 0; i < inks.length; i++) {
            all[inks[i]] = found[i];
        }
        return new Nearest(Arrays.asList(all), nearest, Cie.deltaE00(asked, nearest));
    }

    private void errors(Colour colour, double[] of, Lab asked, double[] errors) {
        double[] lab = colour.lab(of);
        Cie.deltaE00Parts(asked.L(), asked.a(), asked.b(), lab[0], lab[1], lab[2], errors);
        double sum = 0;
        for (double t : of) {
            sum += t;
        }
        errors[3] = TOTAL_PULL * Math.max(0, sum - totalInk);
    }

    private static double square(double v) {
        return v * v;
    }

    /** Colours of tints; confined to a thread. */
    private final class Colour {
        private final double[] all = new double[model.stack().inks().size()];
        private final double[] lab = new double[3];
        private final double[] work = new double[3];

        /** @return L, a, b; overwritten by the next call */
        double[] lab(double[] of) {
            for (int i = 0; i < inks.length; i++) {
                all[inks[i]] = of[i];
            }
            if (onUnderbase) {
                model.layerKnockedOut(all, lab, work);
            } else {
                model.layer(all, false, lab, work);
            }
            Cie.xyzToLab(lab, lab);
            return lab;
        }
    }
}
