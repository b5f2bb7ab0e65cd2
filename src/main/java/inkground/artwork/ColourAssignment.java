package inkground.artwork;

import java.util.List;

/**
 * The user's rules for which colour of the artwork is printed how. The first rule that fits a colour counts; a colour that
 * none fits is printed as the artwork states it.
 *
 * @param rules in order of precedence
 */
public record ColourAssignment(List<Rule> rules) {
    /** No rules. */
    public static final ColourAssignment NONE = new ColourAssignment(List.of());

    /** Copies the list. */
    public ColourAssignment {
        rules = List.copyOf(rules);
    }

    /** @return these rules, and after them those of {@code other} */
    public ColourAssignment then(ColourAssignment other) {
        return new ColourAssignment(java.util.stream.Stream.concat(rules.stream(), other.rules.stream())
                .toList());
    }

    /** @return these rules, and this one last; in the place of a rule for the same colours where there is one */
    public ColourAssignment with(Rule rule) {
        List<Rule> out = new java.util.ArrayList<>();
        boolean replaced = false;
        for (Rule old : rules) {
            boolean same = old.from().equals(rule.from());
            if (!same || !replaced) {
                out.add(same ? rule : old);
            }
            replaced |= same;
        }
        if (!replaced) {
            out.add(rule);
        }
        return new ColourAssignment(out);
    }

    /** @return these rules but those for the same colours */
    public ColourAssignment without(Rule rule) {
        return new ColourAssignment(
                rules.stream().filter(old -> !old.from().equals(rule.from())).toList());
    }

    /**
     * One rule.
     *
     * @param from which colours it fits
     * @param to how they are printed
     */
    public record Rule(Source from, Target to) {}

    /** Which colours a rule fits. */
    public sealed interface Source {}

    /**
     * A colour as it is seen, whatever space states it. Fits paint that names no ink.
     *
     * @param rgb sRGB, 0xRRGGBB
     * @param toleranceDe00 largest difference that still fits, ΔE00, 0 to 50
     */
    public record Seen(int rgb, double toleranceDe00) implements Source {
        /** Difference that no one sees: fits a colour that was rounded to eight bits on its way. */
        public static final double DEFAULT_TOLERANCE = 1;

        /** Rejects what is no colour, and tolerances out of range. */
        public Seen {
            if (rgb >>> 24 != 0 || !(toleranceDe00 >= 0 && toleranceDe00 <= 50)) {
                throw new IllegalArgumentException(Integer.toHexString(rgb) + " within " + toleranceDe00);
            }
        }
    }

    /**
     * Everything painted with a named colorant, at any tint.
     *
     * @param name exactly as the file has it
     */
    public record InkNamed(String name) implements Source {
        /** Rejects an empty name. */
        public InkNamed {
            if (name.isEmpty()) {
                throw new IllegalArgumentException("an ink needs a name");
            }
        }
    }

    /** Families of colour spaces, for {@link Stated}. */
    public enum Family {
        /** One component, 0 black to 1 white. */
        GREY,
        /** Three components of light, 0 to 1. */
        RGB,
        /** Four process tints, 0 to 1. */
        CMYK,
        /** L* 0 to 100, a*, b*. */
        LAB;

        /** @return number of components */
        public int components() {
            return this == GREY ? 1 : this == CMYK ? 4 : 3;
        }

        /** @return the family of a space; null for spaces that name inks */
        public static Family of(ColourSpace space) {
            if (space instanceof ColourSpace.Separation || space instanceof ColourSpace.DeviceN) {
                return null;
            } else if (space instanceof ColourSpace.Indexed indexed) {
                return of(indexed.base());
            } else if (space instanceof ColourSpace.CieLab) {
                return LAB;
            }
            return space.components() == 1 ? GREY : space.components() == 4 ? CMYK : RGB;
        }
    }

    /**
     * A colour by the numbers that the artwork states, to within half a step of eight bits (of Lab, half a unit).
     *
     * @param family of its space
     * @param components as many as the family has
     */
    public record Stated(Family family, List<Double> components) implements Source {
        /** Checks the number of components. */
        public Stated {
            components = List.copyOf(components);
            if (components.size() != family.components()) {
                throw new IllegalArgumentException(components.size() + " components of " + family);
            }
        }

        /** @return whether it is this colour; the space is not an indexed one */
        public boolean fits(ColourSpace space, float[] values) {
            if (Family.of(space) != family) {
                return false;
            }
            double tolerance = family == Family.LAB ? 0.5 : 0.5 / 255;
            for (int i = 0; i < values.length; i++) {
                if (Math.abs(values[i] - components.get(i)) > tolerance + 1e-6) {
                    return false;
                }
            }
            return true;
        }
    }

    /** How a colour is printed. */
    public sealed interface Target {}

    /**
     * As a named ink.
     *
     * @param name of the ink, in the file already or new
     * @param tint of the ink that stands for the colour, above 0 to 1; for a colorant, what its tints are multiplied by
     */
    public record InkAt(String name, double tint) implements Target {
        /** Rejects an empty name and a tint out of range. */
        public InkAt {
            if (name.isEmpty() || !(tint > 0 && tint <= 1)) {
                throw new IllegalArgumentException("ink '" + name + "' at " + tint);
            }
        }
    }

    /** As the job's white ink. */
    public record WhiteInk() implements Target {}

    /**
     * Not at all: wherever the colour would be seen, the substrate is. What lies beneath it stays hidden, and the place counts
     * as unpainted.
     */
    public record Bare() implements Target {}

    /** With the process inks, by its colour. */
    public record Process() implements Target {}
}
