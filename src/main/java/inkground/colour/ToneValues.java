package inkground.colour;

/**
 * Tone values of a printed tint: how much of the solid's effect it has, from 0 for paper to 1 for the solid.
 *
 * <table>
 * <caption>Ranges</caption>
 * <tr><th>quantity</th><th>range</th></tr>
 * <tr><td>colours</td><td>absolute Lab, D50</td></tr>
 * <tr><td>tone value</td><td>0 to 1; a little outside by noise of the measurement</td></tr>
 * </table>
 */
public final class ToneValues {
    private ToneValues() {}

    /**
     * The tone value of the dot's area by light, after Murray and Davies [MURRAY1936]: the share of the way from paper to solid in
     * that of the model's bands ({@link Bands#STANDARD}) which the solid changes most; these are nearer to a densitometer's filters
     * than X, Y, Z are. Example: on paper (95, 0, −2) the tint (75, 25, 10) of the solid (45, 60, 35) has 0.5861.
     *
     * @return the tone value, 0 where solid and paper are one colour
     */
    public static double area(Lab paper, Lab solid, Lab tint) {
        double[] from = Cie.labToXyz(paper);
        double[] to = Cie.labToXyz(solid);
        double[] at = Cie.labToXyz(tint);
        for (double[] xyz : new double[][] {from, to, at}) {
            Bands.STANDARD.fromXyz(xyz, xyz);
        }
        int strongest = 0;
        for (int i = 1; i < 3; i++) {
            strongest = Math.abs(to[i] - from[i]) > Math.abs(to[strongest] - from[strongest]) ? i : strongest;
        }
        double span = to[strongest] - from[strongest];
        return span == 0 ? 0 : (at[strongest] - from[strongest]) / span;
    }

    /**
     * The spot colour tone value of ISO 20654 [ISO20654]: the distance of tint from paper over that of solid from paper, in
     * the cube-root values of X, Y and Z. Example: on paper (95, 0, −2) the tint (75, 25, 10) of the solid (45, 60, 35) has 0.3862.
     *
     * @return the tone value, 0 where solid and paper are one colour
     */
    public static double spot(Lab paper, Lab solid, Lab tint) {
        double whole = distance(paper, solid);
        return whole == 0 ? 0 : distance(paper, tint) / whole;
    }

    private static double[] relative(Lab lab) {
        double[] xyz = Cie.labToXyz(lab);
        return new double[] {xyz[0] / Cie.D50_X, xyz[1], xyz[2] / Cie.D50_Z};
    }

    private static double distance(Lab one, Lab other) {
        double[] a = relative(one);
        double[] b = relative(other);
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            double d = Cie.f(a[i]) - Cie.f(b[i]);
            sum += d * d;
        }
        return Math.sqrt(sum);
    }
}
