package inkground.app;

import inkground.artwork.Colour;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.InkNamed;
import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourAssignment.Seen;
import inkground.artwork.ColourAssignment.Source;
import inkground.artwork.ColourAssignment.Stated;
import inkground.artwork.ColourAssignment.Target;
import inkground.artwork.ColourSpace;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** Changes a colour assignment one colour at a time: which rule a colour falls under, and the assignment with another for it. */
public final class ColourRules {
    private ColourRules() {}

    /**
     * A colour of the artwork that a rule can be about.
     *
     * @param source what a new rule for it starts from
     * @param lab as seen, media-relative, D50
     * @param colour as stated
     */
    public record Subject(Source source, Lab lab, Colour colour) {
        /** Rejects null. */
        public Subject {
            Objects.requireNonNull(source);
            Objects.requireNonNull(lab);
            Objects.requireNonNull(colour);
        }

        /** @return a flat colour of objects, or of pictures, where colours vary a little */
        public static Subject of(ColourUse use) {
            boolean picture = use.objects() == 0;
            return new Subject(
                    picture ? use.source(Proposal.PICTURE_TOLERANCE) : use.source(), use.lab(), use.colour());
        }

        /** @return whether a rule can be about it: a mixture of inks in one colour is assigned ink by ink */
        public boolean assignable() {
            return !(colour.space() instanceof ColourSpace.DeviceN);
        }
    }

    /** @return the rule that a colour falls under; empty if it is printed as stated */
    public static Optional<Rule> ruleFor(Subject subject, ColourAssignment assignment) {
        return assignment.rules().stream()
                .filter(rule -> fits(rule.from(), subject))
                .findFirst();
    }

    private static boolean fits(Source from, Subject subject) {
        Colour colour = subject.colour();
        if (colour.space() instanceof ColourSpace.Separation s) {
            return from instanceof InkNamed ink && ink.name().equals(s.name());
        } else if (!subject.assignable() || from instanceof InkNamed) {
            return false;
        } else if (from instanceof Stated stated) {
            return stated.fits(colour.space(), colour.components());
        }
        Seen seen = (Seen) from;
        return Cie.deltaE00(subject.lab(), lab(seen.rgb())) <= seen.toleranceDe00();
    }

    private static Lab lab(int rgb) {
        return Srgb.toLab((rgb >> 16 & 255) / 255.0, (rgb >> 8 & 255) / 255.0, (rgb & 255) / 255.0);
    }

    /**
     * Prints colours otherwise. New rules come before the others, so that they count.
     *
     * @return the assignment with one rule for each of the colours
     */
    public static ColourAssignment assigning(ColourAssignment assignment, List<Subject> subjects, Target to) {
        List<Source> sources = subjects.stream()
                .filter(Subject::assignable)
                .map(Subject::source)
                .distinct()
                .toList();
        List<Rule> rules =
                new ArrayList<>(sources.stream().map(from -> new Rule(from, to)).toList());
        assignment.rules().stream()
                .filter(rule -> !sources.contains(rule.from()))
                .forEach(rules::add);
        return new ColourAssignment(rules);
    }

    /** @return the assignment without the rules that these colours fall under; others may have fallen under them too */
    public static ColourAssignment asStated(ColourAssignment assignment, List<Subject> subjects) {
        return new ColourAssignment(assignment.rules().stream()
                .filter(rule -> subjects.stream().noneMatch(subject -> fits(rule.from(), subject)))
                .toList());
    }
}
