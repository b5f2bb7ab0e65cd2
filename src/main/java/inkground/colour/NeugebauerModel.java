package inkground.colour;

import inkground.base.Refusal;
import inkground.colour.Characterisation.Patch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The colour of any mixture of n inks from the colours of its primaries (every combination of solids) and of each ink's
 * own ramp: the Yule–Nielsen-modified Neugebauer model [YULE1951] [VIGGIANO1985] with Demichel weights [DEMICHEL1924] and
 * one tone curve per ink and band. No other patch is used, so that all others test it.
 *
 * <p>A dot does not spread on ink as it does on paper. A coverage {@code a} therefore becomes {@code a + a(1 − a) Σ s·b} over
 * the coverages {@code b} of the other inks, with three fixed values of {@code s} (coloured with coloured, coloured with black,
 * black with coloured), found together with the bands ({@link Bands#STANDARD}); solids and ramps stay exact.
 *
 * <p>The model works in three narrow bands, a linear mixture of X, Y, Z, in which inks multiply and spread more nearly as
 * they do at one wavelength. Immutable and thread-safe.
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>range</th></tr>
 * <tr><td>tints</td><td>0 to 1, clipped</td></tr>
 * <tr><td>X, Y, Z</td><td>absolute, D50, Y = 1 for the perfect diffuser</td></tr>
 * </table>
 *
 * <p>Example: an ink of solid (45, 60, 35) on paper (95, 0, −2), known by these two patches only, is (70.54, 28.89, 9.60) at tint 0.5.
 */
public final class NeugebauerModel {
    /** Most inks: 2^n primaries are needed and evaluated. */
    public static final int MAX_INKS = 8;

    private static final int BANDS = 3;

    // A band in which an ink hardly shows tells nothing of its coverage; below this share of the ink's strongest band
    // the strongest band's curve is used.
    private static final double LEAST_CONTRAST = 0.15;

    private static final double COLOURED_WITH_COLOURED = 0.025;
    private static final double COLOURED_WITH_BLACK = -0.04;
    private static final double BLACK_WITH_COLOURED = 0.017;
    // A solid this dark and this grey is taken for a black.
    private static final double BLACK_L = 40;
    private static final double BLACK_CHROMA = 12;

    private final int inks;
    private final boolean[] black;
    private final Bands bands;
    private final ToneCurve[] curves; // [ink * BANDS + band]
    private final double[] primaries; // [primary * BANDS + band], in the 1/n domain; bit i of the index is ink i

    private NeugebauerModel(boolean[] black, Bands bands, ToneCurve[] curves, double[] primaries) {
        this.inks = black.length;
        this.black = black;
        this.bands = bands;
        this.curves = curves;
        this.primaries = primaries;
    }

    /**
     * Builds the model from the primaries and ramps of a characterisation.
     *
     * @throws Refusal if a primary is missing; the message names it
     */
    public static NeugebauerModel of(Characterisation data) throws Refusal {
        checkInks(data);
        int n = data.inks().size();
        double[] primaries = new double[(1 << n) * BANDS];
        for (int p = 0; p < 1 << n; p++) {
            double[] tints = new double[n];
            for (int i = 0; i < n; i++) {
                tints[i] = p >> i & 1;
            }
            Lab lab = data.find(tints);
            if (lab == null) {
                throw new Refusal(data.file() + " has no patch of solid " + describe(data, p)
                        + ", which the model needs. Use data that holds all combinations of solids.");
            }
            Bands.STANDARD.compress(Cie.labToXyz(lab), primaries, p * BANDS);
        }
        return of(data, primaries);
    }

    /** @throws Refusal if there are more inks than the model takes */
    static void checkInks(Characterisation data) throws Refusal {
        if (data.inks().size() > MAX_INKS) {
            throw new Refusal(data.file() + " has " + data.inks().size() + " inks; the limit is " + MAX_INKS + ".");
        }
    }

    /**
     * @param data that has paper and solids
     * @param primaries three bands of each combination of solids in the 1/n domain; bit i of its index is ink i
     */
    static NeugebauerModel of(Characterisation data, double[] primaries) {
        int n = data.inks().size();
        ToneCurve[] curves = new ToneCurve[n * BANDS];
        for (int i = 0; i < n; i++) {
            fitCurves(data, i, Bands.STANDARD, curves);
        }
        return new NeugebauerModel(blacks(data), Bands.STANDARD, curves, primaries.clone());
    }

    /** @return the same tone curves with other primaries */
    NeugebauerModel withPrimaries(double[] others) {
        return new NeugebauerModel(black, bands, curves, others.clone());
    }

    private static boolean[] blacks(Characterisation data) {
        boolean[] out = new boolean[data.inks().size()];
        for (int i = 0; i < out.length; i++) {
            double[] tints = new double[out.length];
            tints[i] = 1;
            Lab solid = data.find(tints);
            out[i] = solid.L() < BLACK_L && solid.chroma() < BLACK_CHROMA;
        }
        return out;
    }

    /** @return the inks of a combination of solids, in words */
    static String describe(Characterisation data, int primary) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < data.inks().size(); i++) {
            if ((primary >> i & 1) != 0) {
                names.add(data.inks().get(i));
            }
        }
        return names.isEmpty() ? "paper" : String.join(" + ", names);
    }

    private static void fitCurves(Characterisation data, int ink, Bands bands, ToneCurve[] curves) {
        List<Patch> ramp = data.ramp(ink);
        int n = ramp.size();
        double[] tints = new double[n];
        double[] values = new double[n * BANDS];
        for (int i = 0; i < n; i++) {
            tints[i] = ramp.get(i).tints()[ink];
            bands.compress(Cie.labToXyz(ramp.get(i).lab()), values, i * BANDS);
        }
        int strongest = 0;
        double[] contrast = new double[BANDS];
        for (int b = 0; b < BANDS; b++) {
            contrast[b] = Math.abs(values[(n - 1) * BANDS + b] - values[b]);
            strongest = contrast[b] > contrast[strongest] ? b : strongest;
        }
        for (int b = 0; b < BANDS; b++) {
            int from = contrast[b] > LEAST_CONTRAST * contrast[strongest] ? b : strongest;
            double first = values[from];
            double span = values[(n - 1) * BANDS + from] - first;
            double[] coverage = new double[n];
            for (int i = 0; i < n; i++) {
                coverage[i] = span == 0 ? tints[i] : (values[i * BANDS + from] - first) / span;
            }
            curves[ink * BANDS + b] = new ToneCurve(tints, coverage);
        }
    }

    /** @return whether each ink is printed solid or not at all */
    static boolean isPrimary(double[] tints) {
        return Arrays.stream(tints).allMatch(t -> t == 0 || t == 1);
    }

    /** @return whether the model was built from this patch: a primary or a step of a single ink's ramp */
    public static boolean usesPatch(double[] tints) {
        return isPrimary(tints) || Arrays.stream(tints).filter(t -> t != 0).count() == 1;
    }

    /** @return number of inks */
    public int inks() {
        return inks;
    }

    /** Writes X, Y, Z of the tints, one per ink, 0 to 1. */
    public void toXyz(double[] tints, double[] xyz) {
        double[] compressed = new double[BANDS];
        toCompressed(tints, compressed);
        bands.expand(compressed, xyz);
    }

    /** @return the bands the model works in */
    Bands bands() {
        return bands;
    }

    /** Writes the bands of the tints in the 1/n domain, where corrections are added. */
    void toCompressed(double[] tints, double[] out) {
        double[] mix = new double[1 << inks >> 1];
        double[] coverage = new double[inks];
        for (int b = 0; b < BANDS; b++) {
            spread(tints, b, coverage);
            out[b] = mix(coverage, b, mix);
        }
    }

    /** @return share of the area that a combination of solids takes, in one band: the Demichel weight */
    double weight(double[] tints, int primary, int band) {
        double[] coverage = new double[inks];
        spread(tints, band, coverage);
        double weight = 1;
        for (int i = 0; i < inks; i++) {
            weight *= (primary >> i & 1) != 0 ? coverage[i] : 1 - coverage[i];
        }
        return weight;
    }

    private void spread(double[] tints, int band, double[] coverage) {
        double coloured = 0;
        double blacks = 0;
        for (int i = 0; i < inks; i++) {
            double a = curves[i * BANDS + band].at(tints[i]);
            coverage[i] = a;
            coloured += black[i] ? 0 : a;
            blacks += black[i] ? a : 0;
        }
        for (int i = 0; i < inks; i++) {
            double a = coverage[i];
            double others = black[i]
                    ? BLACK_WITH_COLOURED * coloured
                    : COLOURED_WITH_COLOURED * (coloured - a) + COLOURED_WITH_BLACK * blacks;
            coverage[i] = a + a * (1 - a) * others;
        }
    }

    // Folds one ink at a time: 2^n − 1 linear interpolations are the Demichel sum without its 2^n products of n
    // factors.
    private double mix(double[] coverage, int band, double[] work) {
        int count = 1 << inks >> 1;
        double last = coverage[inks - 1];
        for (int p = 0; p < count; p++) {
            double without = primaries[p * BANDS + band];
            work[p] = without + last * (primaries[(p + count) * BANDS + band] - without);
        }
        for (int ink = inks - 2; ink >= 0; ink--) {
            count >>= 1;
            for (int p = 0; p < count; p++) {
                work[p] += coverage[ink] * (work[p + count] - work[p]);
            }
        }
        return work[0];
    }
}
