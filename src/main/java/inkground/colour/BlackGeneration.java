package inkground.colour;

/**
 * How much black takes the place of cyan, magenta and yellow, and how much ink may lie in one place. Black begins at a
 * lightness, grows as a power of the way down to the darkest colour, and gives way to chroma so that clean colours stay
 * clean. Common practice, no source.
 *
 * @param startL media-relative L* where black begins, 1 to 100
 * @param power of the growth, above 0; above 1 keeps black out of the lighter tones
 * @param most black at L* 0, 0 to 1
 * @param chromaHalf chroma C* at which black is halved, above 0
 * @param totalInk largest sum of the four tints, 1 to 4; 3 is 300 %
 */
public record BlackGeneration(double startL, double power, double most, double chromaHalf, double totalInk) {
    /** Medium replacement for offset on coated paper: 300 % of ink, a black of 0.95. */
    public static final BlackGeneration STANDARD = new BlackGeneration(80, 1.3, 0.96, 45, 3.0);

    /** Checks the ranges. */
    public BlackGeneration {
        boolean ok = startL >= 1
                && startL <= 100
                && power > 0
                && most >= 0
                && most <= 1
                && chromaHalf > 0
                && totalInk >= 1
                && totalInk <= 4;
        if (!ok) {
            throw new IllegalArgumentException("black generation out of range");
        }
    }

    /** @return the black wanted for a media-relative colour, 0 to 1 */
    double black(double L, double a, double b) {
        double down = Math.max(0, Math.min(1, (startL - L) / startL));
        double chroma2 = (a * a + b * b) / (chromaHalf * chromaHalf);
        return most * Math.pow(down, power) / (1 + chroma2);
    }
}
