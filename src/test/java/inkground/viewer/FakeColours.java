package inkground.viewer;

import inkground.app.ColourInventory;
import inkground.app.ColourUse;
import inkground.app.Grounds.Candidate;
import inkground.app.Grounds.Deletion;
import inkground.app.Grounds.Reason;
import inkground.app.Grounds.Uncovered;
import inkground.artwork.Colour;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.InkAt;
import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourSpace;
import inkground.artwork.TintTransform;
import inkground.colour.Cie;
import inkground.colour.Lab;
import inkground.colour.Srgb;
import inkground.ink.Ink;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The colours of {@link FakeEngine}'s page: its inks, a blue that may fill the page, near-duplicates and leftovers. */
final class FakeColours {
    /** The blue painted in for preview. */
    static final int GROUND_RGB = 0x1c304f;

    static final ColourUse GROUND = rgb(GROUND_RGB, 1, 690);
    static final ColourUse RED = ink("Signal Red", 1, 154);
    static final ColourUse TEAL = ink("River Teal", 0.5f, 168);
    static final ColourUse CREAM = rgb(0xfceecd, 4, 12);
    static final ColourUse NEARLY_CREAM = rgb(0xfbedce, 2, 3.5);
    static final ColourUse TINY = rgb(0x00ff88, 1, 0.004);
    static final ColourUse HIDDEN = rgb(0x884400, 3, 0);

    private FakeColours() {}

    private static ColourUse rgb(int rgb, int objects, double cm2) {
        Colour colour = new Colour(
                new ColourSpace.DeviceRgb(), (rgb >> 16 & 255) / 255f, (rgb >> 8 & 255) / 255f, (rgb & 255) / 255f);
        return new ColourUse(colour, lab(rgb), objects, cm2, FakeEngine.MEDIA);
    }

    private static ColourUse ink(String name, float tint, double cm2) {
        ColourSpace space = new ColourSpace.Separation(name, new ColourSpace.DeviceGray(), new TintTransform() {
            @Override
            public int outputs() {
                return 1;
            }

            @Override
            public void apply(float[] in, float[] out) {
                out[0] = 1 - in[0];
            }
        });
        return new ColourUse(new Colour(space, tint), new Lab(50, 20, 10 * tint), 1, cm2, FakeEngine.TRIM);
    }

    private static Lab lab(int rgb) {
        return Srgb.toLab((rgb >> 16 & 255) / 255.0, (rgb >> 8 & 255) / 255.0, (rgb & 255) / 255.0);
    }

    static ColourInventory inventory(boolean painted) {
        List<ColourUse> rest = List.of(TEAL, RED, CREAM, NEARLY_CREAM, TINY, HIDDEN);
        return new ColourInventory(
                painted
                        ? java.util.stream.Stream.concat(java.util.stream.Stream.of(GROUND), rest.stream())
                                .toList()
                        : rest,
                0,
                List.of());
    }

    static List<Candidate> grounds(ColourInventory colours, Lab garment) {
        return colours.colours().contains(GROUND)
                ? List.of(new Candidate(
                        GROUND,
                        Set.of(Reason.FILLS_THE_PAGE, Reason.NEAR_THE_GARMENT),
                        Cie.deltaE00(GROUND.lab(), garment)))
                : List.of();
    }

    static Deletion deletion() {
        return new Deletion(1, List.of(new Uncovered(Ink.named("Signal Red"), 12.1)));
    }

    static ColourAssignment proposal() {
        return new ColourAssignment(List.of(
                new Rule(GROUND.source(), new Bare()),
                new Rule(CREAM.source(), new InkAt("Cream", 1)),
                new Rule(NEARLY_CREAM.source(), new InkAt("Cream", 1))));
    }

    static Optional<ColourUse> at(boolean red, boolean teal) {
        return red ? Optional.of(RED) : teal ? Optional.of(TEAL) : Optional.empty();
    }

    /** @return whether the painted ground is printed under these rules */
    static boolean printed(ColourAssignment assignment) {
        return assignment.rules().stream()
                .noneMatch(rule -> rule.to() instanceof Bare && rule.from().equals(GROUND.source()));
    }
}
