package inkground.app;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.app.ColourRules.Subject;
import inkground.artwork.Colour;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourAssignment.Bare;
import inkground.artwork.ColourAssignment.Family;
import inkground.artwork.ColourAssignment.InkAt;
import inkground.artwork.ColourAssignment.Rule;
import inkground.artwork.ColourAssignment.Seen;
import inkground.artwork.ColourAssignment.Stated;
import inkground.artwork.ColourSpace;
import inkground.colour.Srgb;
import inkground.geometry.Box;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ColourRulesTest {
    private static final Rule WIDE = new Rule(new Seen(0x1c304f, 12), new Bare());

    private static Subject blue(int rgb) {
        float r = (rgb >> 16 & 255) / 255f;
        float g = (rgb >> 8 & 255) / 255f;
        float b = (rgb & 255) / 255f;
        Colour colour = new Colour(new ColourSpace.DeviceRgb(), r, g, b);
        return Subject.of(new ColourUse(colour, Srgb.toLab(r, g, b), 1, 1, Box.EMPTY));
    }

    @Test
    void aNewRuleComesBeforeAWiderOneThatTheColourFellUnder() {
        ColourAssignment before = new ColourAssignment(List.of(WIDE));
        Subject near = blue(0x203452);
        assertThat(ColourRules.ruleFor(near, before)).contains(WIDE);
        ColourAssignment after = ColourRules.assigning(before, List.of(near), new InkAt("Navy", 1));
        assertThat(ColourRules.ruleFor(near, after).map(Rule::to)).contains(new InkAt("Navy", 1));
        assertThat(ColourRules.ruleFor(blue(0x1c304f), after)).contains(WIDE);
    }

    @Test
    void aSecondRuleForAColourReplacesTheFirst() {
        Subject subject = blue(0x1c304f);
        ColourAssignment once = ColourRules.assigning(ColourAssignment.NONE, List.of(subject), new InkAt("Navy", 1));
        ColourAssignment twice = ColourRules.assigning(once, List.of(subject), new Bare());
        assertThat(twice.rules()).containsExactly(new Rule(subject.source(), new Bare()));
    }

    @Test
    void asStatedTakesAwayEveryRuleThatTheColourFallsUnder() {
        Subject subject = blue(0x203452);
        Rule stated = new Rule(
                new Stated(Family.RGB, List.of(0x20 / 255.0, 0x34 / 255.0, 0x52 / 255.0)), new InkAt("Navy", 0.5));
        Rule other = new Rule(new Seen(0xff0000, 1), new Bare());
        ColourAssignment after =
                ColourRules.asStated(new ColourAssignment(List.of(stated, WIDE, other)), List.of(subject));
        assertThat(after.rules()).containsExactly(other);
        assertThat(ColourRules.ruleFor(subject, after)).isEqualTo(Optional.empty());
    }
}
