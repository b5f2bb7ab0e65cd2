package inkground.colour;

/**
 * CIE 1976 L*a*b*, relative to D50, 2° observer [CIE15]; also in its cylindrical form L*C*h.
 *
 * <p>Example: (50, 2.6772, −79.7751) has chroma 79.8200 and hue 271.922°, and comes back from them.
 *
 * @param L lightness, 0 to 100
 * @param a green (−) to red (+), about −130 to 130
 * @param b blue (−) to yellow (+), about −130 to 130
 */
public record Lab(double L, double a, double b) {
    /**
     * The colour of a lightness, chroma and hue [CIE15]: the inverse of {@link #chroma} and {@link #hueDegrees}.
     *
     * @param L lightness, 0 to 100
     * @param chroma distance from grey, 0 to about 180
     * @param hueDegrees angle from red (0) over yellow (90); any number, full turns do not matter
     */
    public static Lab ofLch(double L, double chroma, double hueDegrees) {
        double angle = Math.toRadians(hueDegrees);
        return new Lab(L, chroma * Math.cos(angle), chroma * Math.sin(angle));
    }

    /** @return chroma C*ab, the distance from grey [CIE15]: 0 to about 180 */
    public double chroma() {
        return Math.hypot(a, b);
    }

    /** @return hue angle h_ab in degrees [CIE15], 0 (red) up to but not including 360; 90 is yellow; 0 for greys, which have none */
    public double hueDegrees() {
        return Cie.hue(a, b);
    }
}
