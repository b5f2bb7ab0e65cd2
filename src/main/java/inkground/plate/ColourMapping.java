package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.ImageSource;
import inkground.artwork.Paint;
import inkground.artwork.Style;
import inkground.base.Cancel;

/** Turns colours of the artwork into tints of planes. Thread-safe. */
interface ColourMapping {
    /** @return number of planes colours are turned into, mark and inked plane not counted; at most 64 */
    int tintPlanes();

    /** @return how many of the planes, from the first, are inks; one beyond them is the {@linkplain BareFold bare plane} */
    default int inkPlanes() {
        return tintPlanes();
    }

    /** @return how many planes, from the first, a colour of this space can have tints on */
    default int tintPlanes(ColourSpace space) {
        return tintPlanes();
    }

    /**
     * Tints of one colour.
     *
     * @param space of the colour; its components are inside their range
     * @param out receives {@link #tintPlanes} tints, 0 to {@link Fixed#TINT_ONE}; all are written
     */
    void tints(ColourSpace space, float[] components, int[] out);

    /** @return whether the assignment concerns a colour by what it looks like, not by its inks' names */
    default boolean assignedByLook(Colour colour) {
        return false;
    }

    /** @return the soft edges of a picture that the assignment concerns; null for none */
    default SoftEdges softEdges(ImageSource.Pixels pixels, ColourSpace space, Cancel cancel) {
        return null;
    }

    /** @return the same of an axial or radial shading */
    default SoftEdges softEdges(Paint.Shading shading) {
        return null;
    }

    /**
     * Tints of a colour of a picture or a shading, which may be a mixture of assigned colours; else as {@link #tints}.
     *
     * @param edges of the picture or shading, or null
     */
    default void mixedTints(ColourSpace space, float[] components, SoftEdges edges, int[] out) {
        tints(space, components, out);
    }

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
        if (overprint && style.overprintMode() == 1 && zeroRule(space)) {
            touched = withoutZeros(touched, tints);
        }
        return new Inking(tints, inkPlanes(), touched);
    }

    /**
     * @return whether overprint mode 1 leaves the inks alone of which a flat colour of this space has none: it is for
     *     DeviceCMYK stated directly (ISO 32000-2 §8.6.7, §11.7.4.3), not for CMYK by a profile
     */
    default boolean zeroRule(ColourSpace space) {
        return space instanceof ColourSpace.DeviceCmyk;
    }

    /** ISO 32000-2 §8.6.7: under overprint mode 1 a zero component leaves its ink alone. */
    static long withoutZeros(long touched, int[] tints) {
        long out = touched;
        for (int i = 0; i < 4; i++) {
            if (tints[i] == 0) {
                out &= ~(1L << i);
            }
        }
        return out;
    }
}
