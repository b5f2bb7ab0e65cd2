package inkground.app;

import inkground.artwork.Colour;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.InkAt;
import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourAssignment.Seen;
import inkground.artwork.ColourAssignment.Target;
import inkground.artwork.ColourAssignment.WhiteInk;
import inkground.artwork.ColourSpace;
import inkground.colour.Cie;
import inkground.substrate.Substrate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * An assignment of all flat colours of a page to inks, to be looked at and changed: near-duplicates become one ink with a plain
 * name, white paint the white ink or bare as the substrate has it, a painted-in ground bare. Colours that name an ink keep it.
 *
 * @param assignment the rules
 * @param lines what each is and why, for the user
 */
public record Proposal(ColourAssignment assignment, List<String> lines) {
    /** Inks that are proposed at most; what is left is said. No press has more heads: common practice, no source. */
    public static final int MOST_INKS = 16;

    private static final double WHITE_L = 97;
    private static final double WHITE_CHROMA = 3;
    /** Colours of pictures vary a little more than those of objects; ΔE00. */
    static final double PICTURE_TOLERANCE = 3;

    /** Copies the list. */
    public Proposal {
        lines = List.copyOf(lines);
    }

    /**
     * @param page to name inks for
     * @param inventory of the page
     * @param grounds candidates for a painted-in ground, the most likely first
     * @param on what it is printed on, or null where that is not known
     * @param nearDe00 ΔE00 up to which colours become one ink
     */
    public static Proposal of(
            PageJob page, ColourInventory inventory, List<Grounds.Ground> grounds, Substrate on, double nearDe00) {
        return new Maker(page, inventory, grounds, on).make(nearDe00);
    }

    private static final class Maker {
        private final ColourInventory inventory;
        private final List<Grounds.Ground> grounds;
        private final Substrate on;
        private final Set<String> names = new HashSet<>();
        private final List<ColourUse> all = new ArrayList<>();
        private final List<Rule> rules = new ArrayList<>();
        private final List<String> lines = new ArrayList<>();

        Maker(PageJob page, ColourInventory inventory, List<Grounds.Ground> grounds, Substrate on) {
            this.inventory = inventory;
            this.grounds = grounds;
            this.on = on;
            page.inks().inks().forEach(ink -> names.add(ink.name().toLowerCase(Locale.ROOT)));
            inventory.all().stream().filter(use -> !namesInk(use.colour())).forEach(all::add);
        }

        Proposal make(double nearDe00) {
            List<ColourUse> left = new ArrayList<>(all);
            grounds.stream()
                    .filter(ground -> isGround(ground.candidate()))
                    .map(Grounds.Ground::candidate)
                    .filter(candidate -> !namesInk(candidate.use().colour()))
                    .findFirst()
                    .ifPresent(candidate -> {
                        ColourUse use = candidate.use();
                        add(use, new Bare(), "bare: " + reasons(candidate));
                        left.remove(use);
                        left.removeIf(other -> same(use, other, nearDe00));
                    });
            left.stream().filter(Maker::isWhite).forEach(this::white);
            left.removeIf(Maker::isWhite);
            left.stream().filter(ColourUse::hidden).forEach(use -> lines.add(what(use) + ": hidden, left as it is"));
            left.removeIf(use -> use.objects() > 0 && use.hidden());
            inks(ColourInventory.grouped(left, nearDe00));
            inventory.colours().stream()
                    .filter(use -> namesInk(use.colour()))
                    .forEach(use -> lines.add(what(use) + ": keeps its ink"));
            if (inventory.gradients() > 0) {
                lines.add("gradients between these colours become mixtures of their inks; others stay process colours");
            }
            return new Proposal(new ColourAssignment(rules), lines);
        }

        private boolean same(ColourUse ground, ColourUse other, double nearDe00) {
            boolean near = Cie.deltaE00(ground.lab(), other.lab()) <= nearDe00;
            if (near) {
                add(other, new Bare(), "bare: as good as the ground");
            }
            return near;
        }

        /** What fills the page is a ground; what only reaches its edges is one where it is like the garment too. */
        private static boolean isGround(Grounds.Candidate candidate) {
            boolean near = candidate.reasons().contains(Grounds.Reason.NEAR_THE_GARMENT);
            boolean fills = candidate.reasons().contains(Grounds.Reason.FILLS_THE_PAGE);
            boolean edges = candidate.reasons().contains(Grounds.Reason.REACHES_THE_EDGES);
            return near && (fills || edges) || Double.isNaN(candidate.garmentDe00()) && fills && edges;
        }

        private static String reasons(Grounds.Candidate candidate) {
            return candidate.reasons().stream()
                    .sorted()
                    .map(Grounds.Reason::words)
                    .collect(Collectors.joining(", "));
        }

        private static boolean isWhite(ColourUse use) {
            return use.lab().L() >= WHITE_L && use.lab().chroma() <= WHITE_CHROMA;
        }

        private void white(ColourUse use) {
            if (on == null) {
                lines.add(what(use) + ": prints nothing; choose a substrate to make it white ink or bare");
            } else if (on.kind() == Substrate.Kind.GARMENT) {
                add(use, new WhiteInk(), "white ink, since " + on.name() + " is cloth");
            } else {
                add(use, new Bare(), "bare, since " + on.name() + " is paper");
            }
        }

        private void inks(List<List<ColourUse>> groups) {
            int made = 0;
            for (List<ColourUse> group : groups) {
                ColourUse first = group.get(0);
                if (made++ == MOST_INKS) {
                    lines.add("more than " + MOST_INKS + " colours: the " + (groups.size() - MOST_INKS)
                            + " least seen groups stay process colours");
                    return;
                }
                String name = unique(ColourWords.of(first.lab()));
                for (ColourUse use : group) {
                    add(use, new InkAt(name, 1), "ink '" + name + "'" + (use == first ? "" : ", as " + what(first)));
                }
            }
        }

        private String unique(String words) {
            String name = words;
            for (int k = 2; !names.add(name.toLowerCase(Locale.ROOT)); k++) {
                name = words + " " + k;
            }
            return name;
        }

        private void add(ColourUse use, Target target, String why) {
            rules.add(new Rule(use.source(tolerance(use)), target));
            lines.add(what(use) + ": " + why);
        }

        /** As wide as the kind of colour asks for, but not as far as half the way to the next colour. */
        private double tolerance(ColourUse use) {
            double next = all.stream()
                    .filter(other -> other.rgb() != use.rgb())
                    .mapToDouble(other -> Cie.deltaE00(use.lab(), other.lab()))
                    .min()
                    .orElse(Double.MAX_VALUE);
            double wanted = use.objects() == 0 ? PICTURE_TOLERANCE : Seen.DEFAULT_TOLERANCE;
            return Math.floor(100 * Math.max(0.1, Math.min(wanted, next / 2))) / 100;
        }

        private static String what(ColourUse use) {
            return use.words() + " (" + use.hex() + ")";
        }

        private static boolean namesInk(Colour colour) {
            return colour.space() instanceof ColourSpace.Separation || colour.space() instanceof ColourSpace.DeviceN;
        }
    }
}
