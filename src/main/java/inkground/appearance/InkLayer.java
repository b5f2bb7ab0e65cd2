package inkground.appearance;

import inkground.colour.Bands;
import inkground.colour.Cie;
import inkground.colour.Lab;

/**
 * One ink film over whatever lies beneath: a Kubelka–Munk layer known by its reflectance over white and over black
 * [KUBELKA1948], in three bands.
 *
 * <p>With {@code Rw} over white, {@code Rb = opacity × Rw} over black (the opacity is the contrast ratio), the layer sends
 * back {@code Rb} itself and lets through {@code T² = (Rw − Rb)(1 − Rb)}, so that over a ground {@code G} the film shows
 * {@code Rb + T² G / (1 − Rb G)}. Opacity 1 gives the ink's own colour over any ground, opacity 0 the product {@code Rw G}.
 *
 * <p>A tint lies between ground and solid in proportion to the tint value of ISO 20654 [ISO20654]: evenly in the cube-root
 * values of X, Y and Z.
 */
final class InkLayer {
    private static final Bands BANDS = Bands.STANDARD;

    private final KubelkaMunk[] films = new KubelkaMunk[3];

    InkLayer(Lab solid, double opacity) {
        double[] overWhite = Cie.labToXyz(solid);
        BANDS.fromXyz(overWhite, overWhite);
        for (int i = 0; i < 3; i++) {
            films[i] = KubelkaMunk.of(overWhite[i], opacity * overWhite[i]);
        }
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
        xyz[0] = mix(xyz[0], work[0], tint, Cie.D50_X);
        xyz[1] = mix(xyz[1], work[1], tint, Cie.D50_Y);
        xyz[2] = mix(xyz[2], work[2], tint, Cie.D50_Z);
    }

    private static double mix(double ground, double solid, double tint, double white) {
        double from = Cie.f(ground / white);
        return white * Cie.fInverse(from + tint * (Cie.f(solid / white) - from));
    }
}
