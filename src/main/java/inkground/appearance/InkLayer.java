package inkground.appearance;

import inkground.colour.Bands;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.ToneCurve;

/**
 * One ink film over whatever lies beneath: a Kubelka–Munk layer known by its reflectance over white and over black
 * [KUBELKA1948], in three bands.
 *
 * <p>With {@code Rw} over white, {@code Rb = opacity × Rw} over black where that was not measured (the opacity is the contrast ratio), the layer sends
 * back {@code Rb} itself and lets through {@code T² = (Rw − Rb)(1 − Rb)}, so that over a ground {@code G} the film shows
 * {@code Rb + T² G / (1 − Rb G)}. Opacity 1 gives the ink's own colour over any ground, opacity 0 the product {@code Rw G}.
 *
 * <p>A tint lies between ground and solid in proportion to the tint value of ISO 20654 [ISO20654]: evenly in the cube-root
 * values of X, Y and Z, unless the ink has a tone curve of its own.
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>range</th></tr>
 * <tr><td>colours</td><td>Lab or X, Y, Z, D50, Y = 1 for the perfect diffuser</td></tr>
 * <tr><td>opacity, tint</td><td>0 to 1</td></tr>
 * </table>
 *
 * <p>Example: a solid of (45, 60, 35) and opacity 0.5 over a ground of (30, 0, 0) is (33.29, 48.29, 28.14), its tint of 0.5
 * (31.65, 24.14, 14.07).
 */
final class InkLayer {
    private static final Bands BANDS = Bands.STANDARD;

    private final KubelkaMunk[] films;
    private final ToneCurve tone; // null for even steps

    private InkLayer(KubelkaMunk[] films, ToneCurve tone) {
        this.films = films;
        this.tone = tone;
    }

    /** @return the film of one pass of an ink */
    static InkLayer of(InkColour ink) {
        return of(ink, 1);
    }

    /** @return the film of an ink printed over itself so many times, which is one as many times as thick */
    static InkLayer of(InkColour ink, int hits) {
        double[] overWhite = bands(ink.solid());
        double[] overBlack = ink.overBlack() == null ? null : bands(ink.overBlack());
        KubelkaMunk[] films = new KubelkaMunk[3];
        for (int i = 0; i < 3; i++) {
            double own = overBlack == null ? ink.opacity() * overWhite[i] : overBlack[i];
            films[i] = KubelkaMunk.of(overWhite[i], Math.max(0, Math.min(overWhite[i], own)))
                    .times(hits);
        }
        return new InkLayer(films, ink.tone());
    }

    private static double[] bands(Lab lab) {
        double[] out = Cie.labToXyz(lab);
        BANDS.fromXyz(out, out);
        return out;
    }

    /**
     * Lays the ink over a colour.
     *
     * @param tint 0 to 1
     * @param xyz the ground, changed to what is seen
     * @param work three places
     */
    void over(double tint, double[] xyz, double[] work) {
        BANDS.fromXyz(xyz, work);
        for (int i = 0; i < 3; i++) {
            work[i] = films[i].over(Math.max(0, work[i]));
        }
        BANDS.toXyz(work, work);
        if (tint >= 1) {
            System.arraycopy(work, 0, xyz, 0, 3);
            return;
        }
        double part = tone == null ? tint : tone.at(tint);
        xyz[0] = mix(xyz[0], work[0], part, Cie.D50_X);
        xyz[1] = mix(xyz[1], work[1], part, Cie.D50_Y);
        xyz[2] = mix(xyz[2], work[2], part, Cie.D50_Z);
    }

    private static double mix(double ground, double solid, double tint, double white) {
        double from = Cie.f(ground / white);
        return white * Cie.fInverse(from + tint * (Cie.f(solid / white) - from));
    }
}
