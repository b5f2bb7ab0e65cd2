package inkground.colour;

/**
 * Whether black is moved to black when colours go from one medium to another: the choice of an object in a PDF file (UseBlackPtComp,
 * [ISO32000] table 57) or of the user. What the file leaves open the user decides, and what both leave open the intent.
 *
 * <p>The default by intent [ISO18619] [ICC1]:
 * <ul>
 *   <li>relative colorimetric: on. Black is what the compensation is made for; without it the shadows that a press cannot print
 *       become one;
 *   <li>perceptual and saturation: off, since a profile's tables for these intents have moved black already. Tables of version 4 are
 *       made for a medium whose black is stated, and colours are always brought to that black;
 *   <li>absolute: never, since it would be absolute no more.
 * </ul>
 */
public enum BlackPointCompensation {
    /** As is usual for the intent. */
    DEFAULT,
    /** Black becomes black. */
    ON,
    /** Colours are asked for as they are. */
    OFF;

    /** @return this choice, or another where this leaves it open */
    public BlackPointCompensation orElse(BlackPointCompensation other) {
        return this == DEFAULT ? other : this;
    }

    /** @return whether black is moved under an intent */
    public boolean applies(RenderingIntent intent) {
        return intent != RenderingIntent.ABSOLUTE
                && (this == DEFAULT ? intent == RenderingIntent.RELATIVE : this == ON);
    }
}
