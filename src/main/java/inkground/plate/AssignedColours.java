package inkground.plate;

import inkground.artwork.Colour;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.InkAt;
import inkground.artwork.ColourAssignment.InkNamed;
import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourAssignment.Seen;
import inkground.artwork.ColourAssignment.Stated;
import inkground.artwork.ColourAssignment.Target;
import inkground.artwork.ColourAssignment.WhiteInk;
import inkground.artwork.ColourSpace;
import inkground.artwork.TintTransform;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import inkground.ink.Ink;
import inkground.ink.InkKind;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;

/** Answers which rule of a colour assignment a colour falls under. Thread-safe. */
final class AssignedColours {
    private final List<Rule> colourRules;
    private final Map<String, Target> byName = new HashMap<>();
    private final Map<Rule, Lab> labs = new HashMap<>();
    private final ColourReader reader;
    private final List<Rule> rules;
    private final Set<ColourAssignment.Source> met = ConcurrentHashMap.newKeySet();

    AssignedColours(ColourAssignment assignment, ColourReader reader) {
        this.reader = reader;
        this.rules = assignment.rules();
        this.colourRules = assignment.rules().stream()
                .filter(rule -> !(rule.from() instanceof InkNamed))
                .toList();
        for (Rule rule : assignment.rules()) {
            if (rule.from() instanceof InkNamed ink) {
                byName.putIfAbsent(ink.name(), rule.to());
            } else if (rule.from() instanceof Seen seen) {
                labs.put(rule, lab(seen.rgb()));
            }
        }
    }

    static Lab lab(int rgb) {
        return Srgb.toLab((rgb >> 16 & 255) / 255.0, (rgb >> 8 & 255) / 255.0, (rgb & 255) / 255.0);
    }

    /** @return rules that no colour asked for so far fell under, in order */
    List<Rule> unused() {
        return rules.stream().filter(rule -> !met.contains(rule.from())).toList();
    }

    /** @return whether colours that name no ink can fall under a rule */
    boolean haveColours() {
        return !colourRules.isEmpty();
    }

    List<Rule> colourRules() {
        return colourRules;
    }

    /** @return whether anything at all is bare */
    boolean anyBare() {
        return byName.values().stream().anyMatch(Bare.class::isInstance)
                || colourRules.stream().anyMatch(rule -> rule.to() instanceof Bare);
    }

    /** @return what a colorant is printed as; null for as itself */
    Target ofInk(String name) {
        Target target = byName.get(name);
        if (target != null) {
            met.add(new InkNamed(name));
        }
        return target;
    }

    /** @return whether any of these colorants falls under a rule */
    boolean concernsAny(List<String> names) {
        return names.stream().anyMatch(byName::containsKey);
    }

    /** @return whether the colorants are all either bare or None, and one is bare */
    boolean allBare(List<String> names) {
        return names.stream().anyMatch(name -> byName.get(name) instanceof Bare)
                && names.stream().allMatch(name -> name.equals("None") || byName.get(name) instanceof Bare);
    }

    /** @return what a colour that names no ink is printed as; null for as stated. The space is not an indexed one. */
    Target ofColour(ColourSpace space, float[] components) {
        Lab lab = null;
        for (Rule rule : colourRules) {
            if (rule.from() instanceof Stated stated) {
                if (stated.fits(space, components)) {
                    met.add(stated);
                    return rule.to();
                }
            } else {
                lab = lab == null ? reader.toLab(space, components) : lab;
                if (Cie.deltaE00(lab, labs.get(rule)) <= ((Seen) rule.from()).toleranceDe00()) {
                    met.add(rule.from());
                    return rule.to();
                }
            }
        }
        return null;
    }

    /** @return colour of a rule for colours, media-relative */
    Lab labOf(Rule rule) {
        return labs.containsKey(rule) ? labs.get(rule) : stated((Stated) rule.from());
    }

    private Lab stated(Stated stated) {
        float[] values = new float[stated.components().size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = stated.components().get(i).floatValue();
        }
        ColourSpace space =
                switch (stated.family()) {
                    case GREY -> new ColourSpace.DeviceGray();
                    case RGB -> new ColourSpace.DeviceRgb();
                    case CMYK -> new ColourSpace.DeviceCmyk();
                    case LAB -> LAB;
                };
        return reader.toLab(space, new Colour(space, values).components());
    }

    /** @return the inks of the file as the rules leave them: bare and renamed ones gone, the targets there */
    List<Ink> inks(List<Ink> inFile) {
        List<Ink> out = new ArrayList<>();
        for (Ink ink : inFile) {
            if (ink.kind() == InkKind.PROCESS || !byName.containsKey(ink.name())) {
                out.add(ink);
            }
        }
        for (Target target : targets()) {
            if (target instanceof InkAt at
                    && out.stream().noneMatch(i -> i.name().equals(at.name()))) {
                out.add(Ink.named(at.name()));
            }
        }
        boolean white = targets().stream().anyMatch(WhiteInk.class::isInstance);
        if (white && out.stream().noneMatch(ink -> ink.kind() == InkKind.WHITE)) {
            out.add(new Ink("White", InkKind.WHITE));
        }
        return out;
    }

    private List<Target> targets() {
        List<Target> out = new ArrayList<>(colourRules.stream().map(Rule::to).toList());
        byName.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(Map.Entry::getValue)
                .forEach(out::add);
        return out;
    }

    /**
     * What the inks that the rules bring in look like: the colour that each stands for, that of the highest tint where there
     * are several.
     *
     * @param declared colorants the file declares; those need no other colour
     */
    List<ColourSpace.Separation> newColorants(List<ColourSpace.Separation> declared) {
        Map<String, ColourSpace.Separation> known =
                declared.stream().collect(Collectors.toMap(ColourSpace.Separation::name, s -> s, (a, b) -> a));
        Map<String, ColourSpace.Separation> out = new HashMap<>();
        byName.forEach((from, target) -> {
            if (target instanceof InkAt at && known.containsKey(from)) {
                ColourSpace.Separation old = known.get(from);
                out.put(at.name(), new ColourSpace.Separation(at.name(), old.alternate(), old.tint()));
            }
        });
        Set<String> taken = known.keySet();
        colourRules.stream()
                .filter(rule -> rule.to() instanceof InkAt)
                .sorted(Comparator.comparing(rule -> -((InkAt) rule.to()).tint()))
                .forEach(rule -> {
                    String name = ((InkAt) rule.to()).name();
                    out.computeIfAbsent(name, n -> new ColourSpace.Separation(n, LAB, new ToLab(labOf(rule))));
                });
        return out.values().stream()
                .filter(s -> !taken.contains(s.name()))
                .sorted(Comparator.comparing(ColourSpace.Separation::name))
                .toList();
    }

    private static final ColourSpace.CieLab LAB =
            new ColourSpace.CieLab(List.of(Cie.D50_X, Cie.D50_Y, Cie.D50_Z), List.of(-128.0, 127.0, -128.0, 127.0));

    /** From paper to a colour along a straight line in Lab. */
    private record ToLab(Lab solid) implements TintTransform {
        @Override
        public int outputs() {
            return 3;
        }

        @Override
        public void apply(float[] in, float[] out) {
            out[0] = (float) (100 + in[0] * (solid.L() - 100));
            out[1] = (float) (in[0] * solid.a());
            out[2] = (float) (in[0] * solid.b());
        }
    }
}
