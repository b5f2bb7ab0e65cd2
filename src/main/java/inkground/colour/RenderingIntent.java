package inkground.colour;

/** What becomes of colours between two media [ICC1]; in the profile format's own order. */
public enum RenderingIntent {
    /** Pleasing as a whole; colours may move to keep their steps. */
    PERCEPTUAL,
    /** Exact by the white of the medium. */
    RELATIVE,
    /** Strong rather than exact. */
    SATURATION,
    /** Exact, the paper's own colour included. */
    ABSOLUTE
}
