package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.InkAt;
import inkground.artwork.ColourAssignment.Process;
import inkground.artwork.ColourAssignment.Target;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.ImageSource;
import inkground.artwork.Paint;
import inkground.artwork.Style;
import inkground.base.Cancel;
import inkground.colour.BlackPointCompensation;
import inkground.colour.PrintCondition;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import inkground.ink.InkSet;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

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

    private final InkSet inks;
    private final PrintCondition condition;
    private final ColourReader reader;
    private final AssignedColours assigned;
    private final Mixtures mixtures;
    private final List<ColourSpace.Separation> newColorants;
    private final boolean bare;
    private final int white; // plane of the white ink, or -1
    private final BlackPointCompensation black;
    private final ProcessColours process;

    private InkMapping(
            InkSet inks,
            AssignedColours assigned,
            List<ColourSpace.Separation> colorants,
            ColourReader reader,
            BlackPointCompensation black) {
        this.black = black;
        this.inks = inks;
        this.condition = reader.condition();
        this.reader = reader;
        this.process = new ProcessColours(reader, black);
        this.assigned = assigned;
        this.mixtures = new Mixtures(this, assigned, reader);
        this.newColorants = assigned.newColorants(colorants);
        this.bare = assigned.anyBare();
        this.white = whiteOf(inks);
    }

    private static int whiteOf(InkSet inks) {
        for (int i = 0; i < inks.size(); i++) {
            if (inks.get(i).kind() == InkKind.WHITE) {
                return i;
            }
        }
        return -1;
    }

    /**
     * The mapping of one page, every colour printed as it is stated.
     *
     * @param declared colorants the file declares, painted or not
     * @param list what the page paints
     * @param condition for colours that name no ink
     */
    public static InkMapping of(List<ColourSpace.Separation> declared, DisplayList list, PrintCondition condition) {
        return of(declared, list, condition, ColourAssignment.NONE);
    }

    /** The mapping of one page, black matched as is usual for the intent. */
    public static InkMapping of(
            List<ColourSpace.Separation> declared,
            DisplayList list,
            PrintCondition condition,
            ColourAssignment assignment) {
        return of(declared, list, condition, BlackPointCompensation.DEFAULT, assignment);
    }

    /**
     * The mapping of one page.
     *
     * @param declared colorants the file declares, painted or not
     * @param list what the page paints
     * @param condition for colours that name no ink
     * @param black whether the black of these colours is matched where their object leaves it open
     * @param assignment which colours are printed otherwise than stated
     */
    public static InkMapping of(
            List<ColourSpace.Separation> declared,
            DisplayList list,
            PrintCondition condition,
            BlackPointCompensation black,
            ColourAssignment assignment) {
        Map<String, Ink> byName = new LinkedHashMap<>();
        PROCESS.forEach(ink -> byName.put(ink.name(), ink));
        declared.forEach(s -> addName(byName, s.name()));
        ColorantWalk walk = new ColorantWalk(name -> addName(byName, name));
        list.ops().forEach(walk::visit);
        ColourReader reader = new ColourReader(condition);
        AssignedColours assigned = new AssignedColours(assignment, reader);
        List<Ink> inks = assigned.inks(List.copyOf(byName.values()));
        int most = InkSet.MAX_INKS - (assigned.anyBare() ? 1 : 0); // masks of planes are one long
        InkSet set = new InkSet(inks.subList(0, Math.min(inks.size(), most)));
        return new InkMapping(set, assigned, declared, reader, black);
    }

    private static void addName(Map<String, Ink> byName, String name) {
        if (!name.isEmpty() && !name.equals("All") && !name.equals("None")) {
            byName.computeIfAbsent(name, Ink::named);
        }
    }

    /** @return colorants for the inks that the assignment brings in, by which they get their colours */
    public List<ColourSpace.Separation> newColorants() {
        return newColorants;
    }

    /** @return whether colours of this space can mix an ink that is bare with others that are not */
    public boolean mixesBare(ColourSpace space) {
        return base(space) instanceof ColourSpace.DeviceN n
                && !assigned.allBare(n.names())
                && n.names().stream().anyMatch(name -> assigned.ofInk(name) instanceof Bare);
    }

    /** @return rules that no paint met so far falls under; complete after the first rendering */
    public List<ColourAssignment.Rule> unusedRules() {
        return assigned.unused();
    }

    /** @return whether a flat colour lays down any ink */
    public boolean inked(Colour colour) {
        return inking(colour, Style.PLAIN, false).inked();
    }

    /** @return whether a flat colour is assigned to be bare, so that it leaves no ink */
    public boolean isBare(Colour colour) {
        ColourSpace base = base(colour.space());
        if (base instanceof ColourSpace.Separation s) {
            return assigned.ofInk(s.name()) instanceof Bare;
        } else if (base instanceof ColourSpace.DeviceN n) {
            return assigned.allBare(n.names());
        }
        return target(colour.space(), colour.components()) instanceof Bare;
    }

    /** @return whether any rule makes a colour or ink bare */
    public boolean anyBare() {
        return bare;
    }

    @Override
    public boolean assignedByLook(Colour colour) {
        return kind(colour.space()) == Kind.PROCESS && assigned(colour);
    }

    /** @return whether a flat colour falls under a rule of the assignment */
    boolean assigned(Colour colour) {
        return assigned(colour.space(), colour.components());
    }

    boolean assigned(ColourSpace space, float[] components) {
        return switch (kind(space)) {
            case SEPARATION -> assigned.ofInk(((ColourSpace.Separation) base(space)).name()) != null;
            case DEVICE_N -> assigned.concernsAny(((ColourSpace.DeviceN) base(space)).names());
            case PROCESS -> target(space, components) != null;
        };
    }

    /** @return what a colour that names no ink is printed as; null for as stated */
    Target target(ColourSpace space, float[] components) {
        if (!assigned.haveColours()) {
            return null;
        }
        return space instanceof ColourSpace.Indexed indexed
                ? assigned.ofColour(indexed.base(), indexed.lookup(Math.round(components[0])))
                : assigned.ofColour(space, components);
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
    public int inkPlanes() {
        return inks.size();
    }

    @Override
    public int tintPlanes() {
        return inks.size() + (bare ? 1 : 0);
    }

    @Override
    public int tintPlanes(ColourSpace space) {
        // colours of three components print with the process inks alone, unless they are assigned to others
        boolean process = kind(space) == Kind.PROCESS && space.components() == 3;
        return process && !assigned.haveColours() ? 4 : tintPlanes();
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
        long all = tintPlanes() == 64 ? -1L : (1L << tintPlanes()) - 1;
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
            default -> {
                long mask = PROCESS_MASK;
                for (ColourAssignment.Rule rule : assigned.colourRules()) {
                    mask |= maskOf(rule.to());
                }
                yield mask;
            }
        };
    }

    private long maskOf(List<String> names, ColourSpace alternate) {
        long mask = 0;
        for (String name : names) {
            Target target = assigned.ofInk(name);
            int i = inks.indexOf(name);
            if (target != null) {
                mask |= maskOf(target);
            } else if (i >= 0) {
                mask |= 1L << i;
            } else if (!name.equals("None")) {
                mask |= touched(alternate, true);
            }
        }
        return mask;
    }

    /** Planes that a target prints on; the bare plane is one. */
    private long maskOf(Target target) {
        if (target instanceof Process) {
            return PROCESS_MASK;
        }
        int plane = planeOf(target);
        return plane < 0 ? 0 : 1L << plane;
    }

    private int planeOf(Target target) {
        if (target instanceof InkAt at) {
            return inks.indexOf(at.name());
        }
        return target instanceof Bare ? inks.size() : white;
    }

    @Override
    public int[] direct(ColourSpace space) {
        boolean cmyk = space instanceof ColourSpace.DeviceCmyk
                || space instanceof ColourSpace.Icc icc && icc.components() == 4;
        if (cmyk) {
            return assigned.haveColours() ? null : new int[] {0, 1, 2, 3};
        }
        if (space instanceof ColourSpace.DeviceN n && hasInks(n.names()) && !assigned.concernsAny(n.names())) {
            return n.names().stream().mapToInt(inks::indexOf).toArray();
        }
        if (space instanceof ColourSpace.Separation s
                && inks.indexOf(s.name()) >= 0
                && assigned.ofInk(s.name()) == null) {
            return new int[] {inks.indexOf(s.name())};
        }
        return null;
    }

    /** A flat colour under a rule touches what its target prints on; a bare one also what it would have knocked out. */
    @Override
    public Inking inking(Colour colour, Style style, boolean overprint) {
        Target target = kind(colour.space()) == Kind.PROCESS ? target(colour.space(), colour.components()) : null;
        if (target == null || !overprint) {
            return ColourMapping.super.inking(colour, style, overprint);
        }
        int[] tints = new int[tintPlanes()];
        tints(colour.space(), colour.components(), tints);
        long touched = maskOf(target);
        if (target instanceof Bare || target instanceof Process) {
            touched |= PROCESS_MASK;
            if (style.overprintMode() == 1 && zeroRule(colour.space())) {
                int[] stated = new int[tintPlanes()];
                process.tints(colour.space(), colour.components(), stated);
                touched = ColourMapping.withoutZeros(touched, stated);
            }
        }
        return new Inking(tints, inks.size(), touched);
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
            Target target = target(space, components);
            if (target == null || target instanceof Process) {
                process.tints(space, components, out);
            } else {
                lay(target, 1, out);
            }
        }
    }

    @Override
    public SoftEdges softEdges(ImageSource.Pixels pixels, ColourSpace space, Cancel cancel) {
        return kind(space) == Kind.PROCESS ? mixtures.edges(pixels, space, cancel) : null;
    }

    @Override
    public SoftEdges softEdges(Paint.Shading shading) {
        return kind(shading.space()) == Kind.PROCESS ? mixtures.edges(shading) : null;
    }

    /** A soft edge between two colours, of which one at least is assigned, becomes complementary amounts of both. */
    @Override
    public void mixedTints(ColourSpace space, float[] components, SoftEdges edges, int[] out) {
        if (space instanceof ColourSpace.Indexed indexed) {
            mixedTints(indexed.base(), indexed.lookup(Math.round(components[0])), edges, out);
            return;
        }
        boolean mixable = kind(space) == Kind.PROCESS && target(space, components) == null;
        if (!mixable || !mixtures.tints(space, components, edges, out)) {
            tints(space, components, out);
        }
    }

    /**
     * What is kept of a colour of a picture or shading without the bare ones.
     *
     * @param space no indexed one
     * @param edges as for {@link #mixedTints}
     * @param clear receives the colour of what is kept; the colour itself where nothing is
     * @return its share, 0 to 1
     */
    double kept(ColourSpace space, float[] components, SoftEdges edges, float[] clear) {
        System.arraycopy(components, 0, clear, 0, components.length);
        if (space instanceof ColourSpace.DeviceN n && !assigned.allBare(n.names())) {
            return keptOfInks(n.names(), clear);
        } else if (kind(space) != Kind.PROCESS || target(space, components) != null) {
            return isBare(new Colour(space, components)) ? 0 : 1;
        }
        return mixtures.kept(space, components, edges, clear);
    }

    private double keptOfInks(List<String> names, float[] clear) {
        boolean bareName = false;
        double rest = 0;
        for (int i = 0; i < names.size(); i++) {
            if (assigned.ofInk(names.get(i)) instanceof Bare) {
                clear[i] = 0;
                bareName = true;
            } else if (!names.get(i).equals("None")) {
                rest += clear[i];
            }
        }
        return bareName && rest == 0 ? 0 : 1;
    }

    /** Adds an amount of a target, which is not the process inks, to tints. */
    void lay(Target target, double amount, int[] out) {
        int plane = planeOf(target);
        if (plane >= 0) {
            double tint = target instanceof InkAt at ? at.tint() : 1;
            out[plane] = Math.min(Fixed.TINT_ONE, out[plane] + Fixed.tint(amount * tint));
        }
    }

    private void separation(ColourSpace.Separation s, float tint, int[] out) {
        int i = inks.indexOf(s.name());
        Target target = assigned.ofInk(s.name());
        if (s.name().equals("All")) {
            Arrays.fill(out, 0, inks.size(), Fixed.tint(tint));
        } else if (target instanceof Process) {
            alternate(s, new float[] {tint}, out);
        } else if (target != null) {
            lay(target, target instanceof Bare ? 1 : tint, out);
        } else if (i >= 0) {
            out[i] = Fixed.tint(tint);
        } else if (!s.name().equals("None")) {
            alternate(s, new float[] {tint}, out);
        }
    }

    private void deviceN(ColourSpace.DeviceN n, float[] tints, int[] out) {
        if (!hasInks(n.names())) {
            alternate(n, tints, out);
            return;
        }
        boolean bareName = false;
        for (int i = 0; i < tints.length; i++) {
            Target target = assigned.ofInk(n.names().get(i));
            int ink = inks.indexOf(n.names().get(i));
            if (target instanceof Process) {
                addAlternate(n, i, tints[i], out);
            } else if (target instanceof Bare) {
                bareName = true;
            } else if (target != null) {
                lay(target, tints[i], out);
            } else if (ink >= 0) {
                out[ink] = Math.max(out[ink], Fixed.tint(tints[i]));
            }
        }
        if (bareName && Arrays.stream(out).allMatch(t -> t == 0)) {
            out[inks.size()] = Fixed.TINT_ONE; // where no other ink of the mixture lies, the substrate shows
        }
    }

    /** Adds the process tints of one colorant of a mixture that is to be printed with the process inks. */
    private void addAlternate(ColourSpace.DeviceN n, int i, float tint, int[] out) {
        float[] alone = new float[n.names().size()];
        alone[i] = tint;
        int[] process = new int[out.length];
        alternate(n, alone, process);
        for (int p = 0; p < out.length; p++) {
            out[p] = Math.min(Fixed.TINT_ONE, out[p] + process[p]);
        }
    }

    /** Beyond {@link InkSet#MAX_INKS} names, colorants have no plane and go through their alternate. */
    private boolean hasInks(List<String> names) {
        return names.stream()
                .allMatch(name -> name.equals("None") || inks.indexOf(name) >= 0 || assigned.ofInk(name) != null);
    }

    private void alternate(ColourSpace space, float[] components, int[] out) {
        Colour colour = Alternates.of(space, components);
        tints(colour.space(), colour.components(), out);
    }

    /** @return whether colours of this space name a process ink, and no ink that is assigned */
    boolean namesProcess(ColourSpace space) {
        ColourSpace base = base(space);
        if (base instanceof ColourSpace.Separation s) {
            return isProcess(s.name()) && !assigned.concernsAny(List.of(s.name()));
        }
        return base instanceof ColourSpace.DeviceN n
                && n.names().stream().anyMatch(this::isProcess)
                && !assigned.concernsAny(n.names());
    }

    private boolean isProcess(String name) {
        int plane = inks.indexOf(name);
        return plane >= 0 && plane < PROCESS.size();
    }

    ColourReader reader() {
        return reader;
    }

    /** @return how colours that name no ink become process tints, rules of the assignment apart */
    ProcessColours process() {
        return process;
    }

    /** @return whether the black of colours that name no ink is matched where their object leaves it open */
    public BlackPointCompensation black() {
        return black;
    }

    private enum Kind {
        SEPARATION,
        DEVICE_N,
        PROCESS
    }

    static ColourSpace base(ColourSpace space) {
        return space instanceof ColourSpace.Indexed indexed ? indexed.base() : space;
    }

    private static Kind kind(ColourSpace space) {
        ColourSpace base = base(space);
        if (base instanceof ColourSpace.Separation) {
            return Kind.SEPARATION;
        }
        return base instanceof ColourSpace.DeviceN ? Kind.DEVICE_N : Kind.PROCESS;
    }
}
