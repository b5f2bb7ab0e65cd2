package inkground.colour;

/**
 * What a print condition can reach of a colour that is asked for. Approximate: the nearest colour is the one that {@link
 * PrintCondition#labToCmyk} finds within its ink limit.
 *
 * @param cmyk tints of the nearest colour, 0 to 1; not to be changed
 * @param nearest what they print, media-relative
 * @param missedBy ΔE00 from the colour asked for [SHARMA2005]
 */
public record Reach(float[] cmyk, Lab nearest, double missedBy) {
    /**
     * @param condition that prints
     * @param asked media-relative colour
     */
    public static Reach of(PrintCondition condition, Lab asked) {
        float[] cmyk = new float[4];
        condition.labToCmyk(asked.L(), asked.a(), asked.b(), cmyk);
        double[] xyz = new double[3];
        condition.cmykToXyz(cmyk, xyz);
        double[] paper = Cie.labToXyz(condition.paper());
        Lab nearest = Cie.xyzToLab(
                xyz[0] / paper[0] * Cie.D50_X, xyz[1] / paper[1] * Cie.D50_Y, xyz[2] / paper[2] * Cie.D50_Z);
        return new Reach(cmyk, nearest, Cie.deltaE00(asked, nearest));
    }
}
