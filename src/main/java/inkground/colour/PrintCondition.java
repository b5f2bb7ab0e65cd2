package inkground.colour;

import java.util.List;
import java.util.Optional;

/** What process inks look like in one way of printing on one paper. Thread-safe. */
public interface PrintCondition {
    /** @return its name for the user, such as FOGRA39L */
    String name();

    /** @return where the data comes from, one line */
    String source();

    /** @return what its data does not hold and what stands in for it, a line for each; empty for complete data */
    default List<String> gaps() {
        return List.of();
    }

    /** @return colour of the unprinted paper, absolute */
    Lab paper();

    /**
     * Colour of four process tints printed on this paper.
     *
     * @param cmyk four tints, 0 to 1
     * @param xyz receives X, Y, Z for D50, absolute, with Y = 1 for the perfect white diffuser
     */
    void cmykToXyz(float[] cmyk, double[] xyz);

    /**
     * The process tints that come nearest to a colour. The colour is media-relative: Lab (100, 0, 0) is the bare paper and gets
     * no ink.
     *
     * @param L lightness, 0 to 100
     * @param a green to red
     * @param b blue to yellow
     * @param cmyk receives four tints, 0 to 1
     */
    void labToCmyk(double L, double a, double b, float[] cmyk);

    /**
     * The process tints of a colour by a rendering intent, where the condition has its own answer to it. The colorimetric intent that
     * is relative to the paper is left to the caller, who matches black points; so are the perceptual and the saturation intent where the
     * condition is data without tables for them, since only a profile says what is pleasing.
     *
     * @param lab media-relative; for the absolute intent absolute
     * @param intent wanted
     * @param blackMatched whether the darkest print takes the place of L* 0; without effect on the absolute intent
     * @param cmyk receives four tints, 0 to 1, where the answer is true
     * @return whether it has one
     */
    default boolean byIntent(Lab lab, RenderingIntent intent, boolean blackMatched, float[] cmyk) {
        if (intent != RenderingIntent.ABSOLUTE) {
            return false;
        }
        double[] paper = Cie.labToXyz(paper());
        double[] xyz = Cie.labToXyz(lab);
        Lab relative = Cie.xyzToLab(xyz[0] / paper[0] * Cie.D50_X, xyz[1] / paper[1], xyz[2] / paper[2] * Cie.D50_Z);
        labToCmyk(relative.L(), relative.a(), relative.b(), cmyk);
        return true;
    }

    /**
     * @return how black goes to the print by an intent: matched or not as is chosen, but at all times where the condition's tables state
     *     their black; an intent that the condition has no tables for is the relative one
     */
    default boolean blackMatched(Rendering rendering) {
        RenderingIntent intent = rendering.intent();
        return rendering.black().applies(intent == RenderingIntent.ABSOLUTE ? intent : RenderingIntent.RELATIVE);
    }

    /** @return the tints of sRGB colours, where they come ready-made; asking for it computes nothing */
    default Optional<SrgbGrid> srgbGrid() {
        return Optional.empty();
    }
}
