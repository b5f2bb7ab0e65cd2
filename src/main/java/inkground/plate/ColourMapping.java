package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.Style;

/** Turns colours of the artwork into tints of planes. Thread-safe. */
interface ColourMapping {
    /** @return number of planes colours are turned into, mark and inked plane not counted; at most 64 */
    int tintPlanes();

    /**
     * Tints of one colour.
     *
     * @param space of the colour; its components are inside their range
     * @param out receives {@link #tintPlanes} tints, 0 to {@link Fixed#TINT_ONE}; all are written
     */
    void tints(ColourSpace space, float[] components, int[] out);

    /**
     * Which planes a colour of this space replaces.
     *
     * @param overprint whether overprint is on and honoured
     */
    long touched(ColourSpace space, boolean overprint);

    /**
     * The planes that samples of this space are tints of as they stand, one per component and -1 for none; or null when
     * samples have to be converted.
     */
    int[] direct(ColourSpace space);

    /** @return whether a colour of this space paints nothing, not even a knock-out */
    boolean paintsNothing(ColourSpace space);

    /**
     * What a flat colour does.
     *
     * @param overprint whether overprint is on and honoured
     */
    default Inking inking(Colour colour, Style style, boolean overprint) {
        ColourSpace space = colour.space();
        if (paintsNothing(space)) {
            return Inking.NOTHING;
        }
        int[] tints = new int[tintPlanes()];
        tints(space, colour.components(), tints);
        long touched = touched(space, overprint);
        if (overprint && style.overprintMode() == 1 && space instanceof ColourSpace.DeviceCmyk) {
            for (int i = 0; i < 4; i++) { // ISO 32000-2 §8.6.7: a zero component leaves its ink alone
                if (tints[i] == 0) {
                    touched &= ~(1L << i);
                }
            }
        }
        return new Inking(tints, touched);
    }
}
