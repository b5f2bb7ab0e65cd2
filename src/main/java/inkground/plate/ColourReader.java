package inkground.plate;

import inkground.artwork.ColourSpace;
import inkground.artwork.TintTransform;
import inkground.colour.Cie;
import inkground.colour.IccReader;
import inkground.colour.IccReader.BrokenProfile;
import inkground.colour.Lab;
import inkground.colour.PrintCondition;
import inkground.colour.RenderingIntent;
import inkground.colour.Srgb;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Reads artwork colours as media-relative Lab for D50: (100, 0, 0) is bare paper and the display's white alike. Thread-safe;
 * each ICC profile is opened once.
 *
 * <ul>
 *   <li>DeviceCMYK and DeviceGray (as black ink alone, ISO 32000-2 §10.4.2) through the print condition;
 *   <li>DeviceRGB as sRGB;
 *   <li>CalGray, CalRGB, Lab by their own definitions, their white adapted to D50 with Bradford;
 *   <li>ICCBased through its profile by the object's rendering intent (the absolute one gives absolute Lab), or its alternate where the
 *       profile cannot be used;
 *   <li>Separation of a process ink through the print condition, of None as bare paper; all others and DeviceN through
 *       their tint transform and alternate space.
 * </ul>
 */
public final class ColourReader {
    // Alternate spaces may nest in a hostile file; no real one goes deeper than three.
    private static final int MAX_DEPTH = 8;
    private static final Lab PAPER = new Lab(100, 0, 0);
    private static final double[] D50 = {Cie.D50_X, Cie.D50_Y, Cie.D50_Z};
    private static final List<Ink> PROCESS = List.of(Ink.CYAN, Ink.MAGENTA, Ink.YELLOW, Ink.BLACK);

    private final PrintCondition condition;
    private volatile double[] paperXyz; // asked for late: reading it builds the condition
    private final Map<Opened, Optional<IccReader>> profiles = new ConcurrentHashMap<>();
    private final Map<ColourSpace.Profile, String> faults = new ConcurrentHashMap<>();

    private record Opened(ColourSpace.Profile profile, RenderingIntent intent, boolean blackMatched) {}

    /** @param condition what process tints look like */
    public ColourReader(PrintCondition condition) {
        this.condition = condition;
    }

    /** @return the print condition in use */
    public PrintCondition condition() {
        return condition;
    }

    /** @return what is wrong with the profiles that could not be used so far, for the user */
    public List<String> profileFaults() {
        return faults.values().stream().sorted().distinct().toList();
    }

    /**
     * @param space of the colour
     * @param components in the space's own ranges, as many as it has
     * @return media-relative Lab, D50
     */
    public Lab toLab(ColourSpace space, float[] components) {
        return toLab(space, components, 0);
    }

    /** As {@link #toLab(ColourSpace, float[])}; where asked for, the black of a profile's device is L* 0. */
    Lab toLab(ColourSpace space, float[] components, boolean blackMatched) {
        Optional<IccReader> matched =
                blackMatched && space instanceof ColourSpace.Icc icc ? reader(icc, true) : Optional.empty();
        return matched.map(reader -> reader.toLab(unit(space, components))).orElseGet(() -> toLab(space, components));
    }

    private Lab toLab(ColourSpace space, float[] c, int depth) {
        if (depth > MAX_DEPTH) {
            throw new IllegalArgumentException("colour spaces nested more than " + MAX_DEPTH + " deep");
        }
        if (space instanceof ColourSpace.DeviceCmyk) {
            return cmyk(c[0], c[1], c[2], c[3]);
        } else if (space instanceof ColourSpace.DeviceGray) {
            return cmyk(0, 0, 0, 1 - c[0]);
        } else if (space instanceof ColourSpace.DeviceRgb) {
            return Srgb.toLab(clip(c[0]), clip(c[1]), clip(c[2]));
        } else if (space instanceof ColourSpace.CalGray cal) {
            return calGray(cal, c);
        } else if (space instanceof ColourSpace.CalRgb cal) {
            return calRgb(cal, c);
        } else if (space instanceof ColourSpace.CieLab lab) {
            return cieLab(lab, c);
        } else if (space instanceof ColourSpace.Icc icc) {
            Optional<IccReader> reader = reader(icc, false);
            return reader.isPresent() ? reader.get().toLab(unit(icc, c)) : toLab(icc.alternate(), c, depth + 1);
        } else if (space instanceof ColourSpace.Indexed indexed) {
            return toLab(indexed.base(), indexed.lookup(Math.round(c[0])), depth + 1);
        } else if (space instanceof ColourSpace.Separation separation) {
            return separation(separation, c, depth);
        }
        ColourSpace.DeviceN deviceN = (ColourSpace.DeviceN) space;
        return alternate(deviceN.alternate(), deviceN.tint(), c, depth);
    }

    private Lab separation(ColourSpace.Separation separation, float[] c, int depth) {
        if (separation.name().equals("None")) {
            return PAPER;
        }
        Ink ink = Ink.named(separation.name());
        if (ink.kind() == InkKind.PROCESS) {
            float[] tints = new float[4];
            tints[PROCESS.indexOf(ink)] = c[0];
            return cmyk(tints[0], tints[1], tints[2], tints[3]);
        }
        return alternate(separation.alternate(), separation.tint(), c, depth);
    }

    private Lab alternate(ColourSpace alternate, TintTransform tint, float[] c, int depth) {
        float[] out = new float[Math.max(tint.outputs(), alternate.components())];
        tint.apply(c, out);
        for (int i = 0; i < alternate.components(); i++) {
            out[i] = Math.max(alternate.min(i), Math.min(alternate.max(i), out[i]));
        }
        return toLab(alternate, out, depth + 1);
    }

    private Lab cmyk(float c, float m, float y, float k) {
        double[] xyz = new double[3];
        condition.cmykToXyz(new float[] {c, m, y, k}, xyz);
        double[] paper = paperXyz;
        if (paper == null) {
            paper = Cie.labToXyz(condition.paper());
            paperXyz = paper;
        }
        return Cie.xyzToLab(
                xyz[0] / paper[0] * Cie.D50_X, xyz[1] / paper[1] * Cie.D50_Y, xyz[2] / paper[2] * Cie.D50_Z);
    }

    private static Lab calGray(ColourSpace.CalGray cal, float[] c) {
        double light = Math.pow(clip(c[0]), cal.gamma());
        return Cie.xyzToLab(light * Cie.D50_X, light * Cie.D50_Y, light * Cie.D50_Z);
    }

    private static Lab calRgb(ColourSpace.CalRgb cal, float[] c) {
        double[] xyz = new double[3];
        for (int i = 0; i < 3; i++) {
            double light = Math.pow(clip(c[i]), cal.gamma().get(i));
            for (int j = 0; j < 3; j++) {
                xyz[j] += light * cal.matrix().get(3 * i + j);
            }
        }
        return adapt(xyz, cal.white());
    }

    private static Lab cieLab(ColourSpace.CieLab space, float[] c) {
        double[] xyz = new double[3];
        Cie.labToXyz(c[0], c[1], c[2], xyz);
        for (int i = 0; i < 3; i++) {
            xyz[i] *= space.white().get(i) / D50[i];
        }
        return adapt(xyz, space.white());
    }

    private static Lab adapt(double[] xyz, List<Double> white) {
        Cie.bradford(xyz, white.stream().mapToDouble(Double::doubleValue).toArray(), D50);
        return Cie.xyzToLab(xyz[0], xyz[1], xyz[2]);
    }

    private Optional<IccReader> reader(ColourSpace.Icc icc, boolean blackMatched) {
        Opened wanted = new Opened(icc.profile(), icc.rendering().intent(), blackMatched);
        return profiles.computeIfAbsent(wanted, key -> {
            try {
                return Optional.of(
                        IccReader.open(key.profile().bytes(), icc.components(), key.intent(), key.blackMatched()));
            } catch (BrokenProfile e) {
                faults.put(key.profile(), e.getMessage() + "; its alternate colour space is used");
                return Optional.empty();
            }
        });
    }

    private static float[] unit(ColourSpace space, float[] c) {
        float[] out = new float[space.components()];
        for (int i = 0; i < out.length; i++) {
            out[i] = (c[i] - space.min(i)) / (space.max(i) - space.min(i));
        }
        return out;
    }

    private static float clip(float v) {
        return v > 0 ? Math.min(1, v) : 0;
    }
}
