package inkground.colour;

/**
 * How an object wants its colours brought to the print.
 *
 * @param intent what becomes of colours between the media
 * @param black whether black is moved to black
 */
public record Rendering(RenderingIntent intent, BlackPointCompensation black) {
    /** What a page begins with: relative colorimetric, black as is usual for it. */
    public static final Rendering USUAL = of(RenderingIntent.RELATIVE);

    /** @return by an intent, black as is usual for it */
    public static Rendering of(RenderingIntent intent) {
        return new Rendering(intent, BlackPointCompensation.DEFAULT);
    }

    /** @return the same by another intent */
    public Rendering by(RenderingIntent other) {
        return new Rendering(other, black);
    }
}
