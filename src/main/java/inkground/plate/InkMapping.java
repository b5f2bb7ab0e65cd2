package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Paint;
import inkground.artwork.TintTransform;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.PrintCondition;
import inkground.colour.RgbToCmyk;
import inkground.colour.Srgb;
import inkground.ink.Ink;
import inkground.ink.InkSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Which inks a job has, and which of them a colour of the artwork prints with. Planes 0 to 3 are cyan, magenta, yellow and
 * black; named colorants follow, each on its own plane and never through its alternate space.
 *
 * <p>Colours without inks of their own go to the process inks: grey to black alone, CMYK (device or by profile) as the
 * numbers stand, everything else by its colour, through the print condition.
 */
public final class InkMapping implements ColourMapping {
    private static final List<Ink> PROCESS = List.of(Ink.CYAN, Ink.MAGENTA, Ink.YELLOW, Ink.BLACK);
    private static final long PROCESS_MASK = 0b1111;
    private static final ColourSpace CMYK = new ColourSpace.DeviceCmyk();
    private static final ColourSpace RGB = new ColourSpace.DeviceRgb();

    private final InkSet inks;
    private final PrintCondition condition;
    private final ColourReader reader;
    private final Map<ColourSpace, ProcessGrid> grids = new ConcurrentHashMap<>();
    private final Map<ColourSpace.Icc, Boolean> sameAsSrgb = new ConcurrentHashMap<>();
    private RgbToCmyk srgb; // made when first needed, since it may build the condition

    private InkMapping(InkSet inks, PrintCondition condition) {
        this.inks = inks;
        this.condition = condition;
        this.reader = new ColourReader(condition);
    }

    /**
     * The mapping of one page.
     *
     * @param declared colorants the file declares, painted or not
     * @param list what the page paints
     * @param condition for colours that name no ink
     */
    public static InkMapping of(List<ColourSpace.Separation> declared, DisplayList list, PrintCondition condition) {
        Map<String, Ink> byName = new LinkedHashMap<>();
        PROCESS.forEach(ink -> byName.put(ink.name(), ink));
        declared.forEach(s -> addName(byName, s.name()));
        Colorants walk = new Colorants(byName);
        list.ops().forEach(walk::visit);
        List<Ink> inks = new ArrayList<>(byName.values());
        return new InkMapping(new InkSet(inks.subList(0, Math.min(inks.size(), InkSet.MAX_INKS))), condition);
    }

    private static void addName(Map<String, Ink> byName, String name) {
        if (!name.isEmpty() && !name.equals("All") && !name.equals("None")) {
            byName.computeIfAbsent(name, Ink::named);
        }
    }

    /** @return the inks, in plane order */
    public InkSet inks() {
        return inks;
    }

    /** @return how the process inks are printed */
    public PrintCondition condition() {
        return condition;
    }

    @Override
    public int tintPlanes() {
        return inks.size();
    }

    @Override
    public boolean paintsNothing(ColourSpace space) {
        return switch (kind(space)) {
            case SEPARATION -> ((ColourSpace.Separation) base(space)).name().equals("None");
            case DEVICE_N ->
                ((ColourSpace.DeviceN) base(space)).names().stream().allMatch("None"::equals);
            default -> false;
        };
    }

    @Override
    public long touched(ColourSpace space, boolean overprint) {
        long all = inks.size() == 64 ? -1L : (1L << inks.size()) - 1;
        if (!overprint) {
            return all;
        }
        ColourSpace base = base(space);
        return switch (kind(space)) {
            case SEPARATION -> {
                String name = ((ColourSpace.Separation) base).name();
                yield name.equals("All") ? all : maskOf(List.of(name), ((ColourSpace.Separation) base).alternate());
            }
            case DEVICE_N -> maskOf(((ColourSpace.DeviceN) base).names(), ((ColourSpace.DeviceN) base).alternate());
            default -> PROCESS_MASK;
        };
    }

    private long maskOf(List<String> names, ColourSpace alternate) {
        long mask = 0;
        for (String name : names) {
            int i = inks.indexOf(name);
            if (i >= 0) {
                mask |= 1L << i;
            } else if (!name.equals("None")) {
                mask |= touched(alternate, true);
            }
        }
        return mask;
    }

    @Override
    public int[] direct(ColourSpace space) {
        if (space instanceof ColourSpace.DeviceCmyk || space instanceof ColourSpace.Icc icc && icc.components() == 4) {
            return new int[] {0, 1, 2, 3};
        }
        if (space instanceof ColourSpace.DeviceN n && hasInks(n.names())) {
            return n.names().stream().mapToInt(inks::indexOf).toArray();
        }
        if (space instanceof ColourSpace.Separation s && inks.indexOf(s.name()) >= 0) {
            return new int[] {inks.indexOf(s.name())};
        }
        return null;
    }

    @Override
    public void tints(ColourSpace space, float[] components, int[] out) {
        Arrays.fill(out, 0);
        if (space instanceof ColourSpace.Indexed indexed) {
            tints(indexed.base(), indexed.lookup(Math.round(components[0])), out);
        } else if (space instanceof ColourSpace.Separation s) {
            separation(s, components[0], out);
        } else if (space instanceof ColourSpace.DeviceN n) {
            deviceN(n, components, out);
        } else {
            process(space, components, out);
        }
    }

    private void separation(ColourSpace.Separation s, float tint, int[] out) {
        int i = inks.indexOf(s.name());
        if (s.name().equals("All")) {
            Arrays.fill(out, Fixed.tint(tint));
        } else if (i >= 0) {
            out[i] = Fixed.tint(tint);
        } else if (!s.name().equals("None")) {
            alternate(s.alternate(), s.tint(), new float[] {tint}, out);
        }
    }

    private void deviceN(ColourSpace.DeviceN n, float[] tints, int[] out) {
        if (!hasInks(n.names())) {
            alternate(n.alternate(), n.tint(), tints, out);
            return;
        }
        for (int i = 0; i < tints.length; i++) {
            int ink = inks.indexOf(n.names().get(i));
            if (ink >= 0) {
                out[ink] = Fixed.tint(tints[i]);
            }
        }
    }

    /** Beyond {@link InkSet#MAX_INKS} names, colorants have no plane and go through their alternate. */
    private boolean hasInks(List<String> names) {
        return names.stream().allMatch(name -> name.equals("None") || inks.indexOf(name) >= 0);
    }

    private void alternate(ColourSpace alternate, TintTransform tint, float[] components, int[] out) {
        float[] values = new float[Math.max(tint.outputs(), alternate.components())];
        tint.apply(components, values);
        tints(alternate, new Colour(alternate, values).components(), out);
    }

    private void process(ColourSpace space, float[] c, int[] out) {
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
            grids.computeIfAbsent(space, s -> new ProcessGrid(s, this::byColour))
                    .tints(c, out);
        }
    }

    // Lab colours are asked for as they are; the colours of displays are fitted between paper and the darkest print. A
    // profile that is sRGB in all but name, as most are, shares the nodes that come ready-made.
    private void byColour(ColourSpace space, float[] components, float[] cmyk) {
        boolean display = space instanceof ColourSpace.DeviceRgb
                || space instanceof ColourSpace.Icc icc
                        && sameAsSrgb.computeIfAbsent(icc, s -> RgbToCmyk.isSrgb(rgb -> reader.toLab(s, rgb)));
        if (display) {
            srgb().convert(components[0], components[1], components[2], cmyk);
            return;
        }
        Lab lab = reader.toLab(space, components);
        if (space instanceof ColourSpace.CieLab) {
            condition.labToCmyk(lab.L(), lab.a(), lab.b(), cmyk);
        } else {
            srgb().convert(lab, cmyk);
        }
    }

    private synchronized RgbToCmyk srgb() {
        if (srgb == null) {
            srgb = new RgbToCmyk(condition);
        }
        return srgb;
    }

    ColourReader reader() {
        return reader;
    }

    /** Colour of process tints as sRGB, paper white and the darkest print black; colours outside are clipped. */
    void processToRgb(int[] tints, float[] rgb) {
        float[] cmyk = new float[4];
        for (int i = 0; i < 4; i++) {
            cmyk[i] = (float) tints[i] / Fixed.TINT_ONE;
        }
        Lab lab = reader.toLab(CMYK, cmyk);
        double[] xyz = Cie.labToXyz(lab);
        srgb().expandBlack(xyz);
        double[] linear = new double[3];
        Srgb.xyzToLinear(xyz, linear);
        for (int i = 0; i < 3; i++) {
            rgb[i] = (float) Math.max(0, Math.min(1, Srgb.encode(Math.max(0, linear[i]))));
        }
    }

    /** Process tints of an sRGB colour, elements 0 to 3. */
    void rgbToProcess(float[] rgb, int[] tints) {
        process(RGB, rgb, tints);
    }

    private enum Kind {
        SEPARATION,
        DEVICE_N,
        PROCESS
    }

    private static ColourSpace base(ColourSpace space) {
        return space instanceof ColourSpace.Indexed indexed ? indexed.base() : space;
    }

    private static Kind kind(ColourSpace space) {
        ColourSpace base = base(space);
        if (base instanceof ColourSpace.Separation) {
            return Kind.SEPARATION;
        }
        return base instanceof ColourSpace.DeviceN ? Kind.DEVICE_N : Kind.PROCESS;
    }

    /** Finds every colorant that a list paints with; the colours of soft masks never reach the plates. */
    private static final class Colorants {
        private final Map<String, Ink> byName;
        private final Set<Object> seen = Collections.newSetFromMap(new IdentityHashMap<>());

        Colorants(Map<String, Ink> byName) {
            this.byName = byName;
        }

        void visit(Op op) {
            if (op instanceof Op.Fill fill) {
                paint(fill.paint());
            } else if (op instanceof Op.Stroke stroke) {
                paint(stroke.paint());
            } else if (op instanceof Op.Image image) {
                space(image.image().space());
            } else if (op instanceof Op.Stencil stencil) {
                paint(stencil.paint());
            } else if (op instanceof Op.Shade shade) {
                paint(shade.shading());
            } else if (op instanceof Op.Group group) {
                group.ops().forEach(this::visit);
            }
        }

        private void paint(Paint paint) {
            if (!seen.add(paint)) {
                return;
            }
            if (paint instanceof Paint.Flat flat) {
                space(flat.colour().space());
            } else if (paint instanceof Paint.Shading shading) {
                space(shading.space());
            } else if (paint instanceof Paint.Tiling tiling) {
                tiling.cell().forEach(this::visit);
            }
        }

        private void space(ColourSpace space) {
            ColourSpace base = base(space);
            if (base instanceof ColourSpace.Separation s) {
                addName(byName, s.name());
            } else if (base instanceof ColourSpace.DeviceN n) {
                n.names().forEach(name -> addName(byName, name));
            }
        }
    }
}
