package inkground.plate;

import inkground.artwork.ColourSpace;
import inkground.colour.BlackPointCompensation;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.PrintCondition;
import inkground.colour.Rendering;
import inkground.colour.RgbToCmyk;
import inkground.colour.Srgb;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Between colours that name no ink and the process inks: grey goes to black alone, CMYK (device or by profile) as its numbers
 * stand, everything else by its colour, through the print condition. Thread-safe.
 */
final class ProcessColours {
    private static final ColourSpace CMYK = new ColourSpace.DeviceCmyk();
    private static final ColourSpace RGB = new ColourSpace.DeviceRgb();

    private final ColourReader reader;
    private final PrintCondition condition;
    private final BlackPointCompensation black;
    private final Map<ColourSpace, ProcessGrid> grids = new ConcurrentHashMap<>();
    private final Map<Rendering, ProcessGrid> edges = new ConcurrentHashMap<>(); // of groups in RGB
    private final Map<ColourSpace.Icc, Boolean> sameAsSrgb = new ConcurrentHashMap<>();
    private RgbToCmyk srgb; // made when first needed, since it may build the condition

    /** @param black whether the black of these colours is matched where their object leaves it open */
    ProcessColours(ColourReader reader, BlackPointCompensation black) {
        this.reader = reader;
        this.condition = reader.condition();
        this.black = black;
    }

    /** Tints of the process inks for a colour that names no ink. */
    void tints(ColourSpace space, float[] c, int[] out) {
        if (space instanceof ColourSpace.CalGray cal) {
            // A grey of gamma 2.2 is what DeviceGray is in practice; others are brought to it.
            out[3] = Fixed.tint(1 - Math.pow(c[0], cal.gamma() / 2.2));
        } else if (space.components() == 1) {
            out[3] = Fixed.tint(1 - c[0]);
        } else if (space.components() == 4) {
            for (int i = 0; i < 4; i++) {
                out[i] = Fixed.tint(c[i]);
            }
        } else {
            grid(space).tints(c, out);
        }
    }

    private ProcessGrid grid(ColourSpace space) {
        return grids.computeIfAbsent(
                space, key -> new ProcessGrid(key, (s, c, cmyk) -> byColour(s, s.rendering(), c, cmyk)));
    }

    /**
     * Lab colours are asked for as they are, unless told otherwise; the colours of displays are fitted between paper and the
     * darkest print. A profile that is sRGB in all but name, as most are, shares the nodes that come ready-made.
     */
    private void byColour(ColourSpace space, Rendering wanted, float[] components, float[] cmyk) {
        Rendering rendering = new Rendering(wanted.intent(), wanted.black().orElse(black));
        boolean isLab = space instanceof ColourSpace.CieLab
                || space instanceof ColourSpace.Icc icc && icc.alternate() instanceof ColourSpace.CieLab;
        boolean asIs = isLab && rendering.black() == BlackPointCompensation.DEFAULT;
        boolean blackMatched = condition.blackMatched(rendering) && !asIs;
        Lab lab = reader.toLab(space, components, blackMatched);
        if (condition.byIntent(lab, rendering.intent(), blackMatched, cmyk)) {
            return;
        }
        if (!blackMatched) {
            condition.labToCmyk(lab.L(), lab.a(), lab.b(), cmyk);
        } else if (isDisplayRgb(space)) {
            srgb().convert(components[0], components[1], components[2], cmyk);
        } else {
            srgb().convert(lab, cmyk);
        }
    }

    /** @return whether a space is sRGB, by name or by its profile */
    boolean isDisplayRgb(ColourSpace space) {
        return space instanceof ColourSpace.DeviceRgb
                || space instanceof ColourSpace.Icc icc
                        && icc.components() == 3
                        && sameAsSrgb.computeIfAbsent(icc, s -> RgbToCmyk.isSrgb(rgb -> reader.toLab(s, rgb)));
    }

    /** A colour as sRGB; what lies outside is clipped. */
    void toDisplayRgb(ColourSpace space, float[] components, float[] rgb) {
        encode(Cie.labToXyz(reader.toLab(space, components)), rgb);
    }

    private static void encode(double[] xyz, float[] rgb) {
        double[] linear = new double[3];
        Srgb.xyzToLinear(xyz, linear);
        for (int i = 0; i < 3; i++) {
            rgb[i] = (float) Math.max(0, Math.min(1, Srgb.encode(Math.max(0, linear[i]))));
        }
    }

    private synchronized RgbToCmyk srgb() {
        if (srgb == null) {
            srgb = new RgbToCmyk(condition);
        }
        return srgb;
    }

    /** Colour of process tints as sRGB, paper white and the darkest print black if black is matched; colours outside are clipped. */
    void toDisplayRgb(int[] tints, float[] rgb) {
        float[] cmyk = new float[4];
        for (int i = 0; i < 4; i++) {
            cmyk[i] = (float) tints[i] / Fixed.TINT_ONE;
        }
        Lab lab = reader.toLab(CMYK, cmyk);
        double[] xyz = Cie.labToXyz(lab);
        if (black.applies(Rendering.USUAL.intent())) {
            srgb().expandBlack(xyz);
        }
        encode(xyz, rgb);
    }

    /** @return process tints of sRGB colours that are brought to the print in a given way */
    ProcessGrid fromRgb(Rendering rendering) {
        return rendering.equals(RGB.rendering())
                ? grid(RGB)
                : edges.computeIfAbsent(
                        rendering, r -> new ProcessGrid(RGB, (space, rgb, cmyk) -> byColour(space, r, rgb, cmyk)));
    }
}
