package inkground.plate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import inkground.artwork.Colour;
import inkground.artwork.ColourAssignment;
import inkground.artwork.ColourSpace;
import inkground.artwork.DisplayList;
import inkground.artwork.Op;
import inkground.artwork.Style;
import inkground.base.Cancel;
import inkground.base.Progress;
import inkground.colour.BlackPointCompensation;
import inkground.colour.IccCondition;
import inkground.colour.IccReader;
import inkground.colour.Rendering;
import inkground.colour.RenderingIntent;
import inkground.colour.Srgb;
import inkground.colour.TestProfile;
import inkground.geometry.Box;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Colours of a display's profile are separated by the intent of their object, through the tables of both profiles. */
class IntentSeparationTest {
    private static final ColourSpace RGB = new ColourSpace.DeviceRgb();
    private static final float[] COLOUR = {0.5f, 0.25f, 0.75f};

    @Test
    void the_presss_own_tables_answer_the_perceptual_and_the_saturation_intent() throws Exception {
        for (RenderingIntent intent : List.of(RenderingIntent.PERCEPTUAL, RenderingIntent.SATURATION)) {
            IccReader screen = IccReader.open(TestProfile.rgbLut(4), 3, intent);
            float[] expected = IccReader.open(TestProfile.bytes(), 4, intent).fromLab(screen.toLab(COLOUR));
            int[] tints = tints(intent);
            for (int i = 0; i < 4; i++) {
                assertThat(tints[i] / (double) Fixed.TINT_ONE)
                        .as(intent + " " + i)
                        .isCloseTo(expected[i], within(0.02));
            }
        }
        assertThat(tints(RenderingIntent.RELATIVE)).isNotEqualTo(tints(RenderingIntent.PERCEPTUAL));
    }

    /** §11.7.5.3: what a group of an ICC space holds becomes ink by the group's intent, whatever that of its objects. */
    @Test
    void a_group_is_separated_by_the_intent_it_is_painted_with() throws Exception {
        for (RenderingIntent intent : List.of(RenderingIntent.PERCEPTUAL, RenderingIntent.SATURATION)) {
            float[] expected = IccReader.open(TestProfile.bytes(), 4, intent).fromLab(Srgb.toLab(0.5, 0.25, 0.75));
            InkPlanes planes = group(screen(intent));
            for (int i = 0; i < 4; i++) {
                assertThat(planes.get(i, 10, 10) / 255.0).as(intent + " " + i).isCloseTo(expected[i], within(0.02));
            }
        }
        int[] alone = tints(RGB, COLOUR, BlackPointCompensation.DEFAULT);
        for (ColourSpace space : List.of(RGB, screen(RenderingIntent.RELATIVE))) {
            InkPlanes planes = group(space);
            for (int i = 0; i < 4; i++) {
                assertThat(planes.get(i, 10, 10)).as(space + " " + i).isCloseTo((alone[i] + 128) >> 8, within(1));
            }
        }
        assertThat(group(RGB).get(0, 10, 10))
                .as("the intents differ")
                .isNotCloseTo(group(screen(RenderingIntent.PERCEPTUAL)).get(0, 10, 10), within(5));
    }

    /** A page with an isolated group of a space that holds the colour, and something transparent beside it. */
    private static InkPlanes group(ColourSpace space) throws Exception {
        Op colour = Pages.fill(Pages.rect(0, 0, 20, 20), new Colour(RGB, COLOUR));
        Op veil = Pages.fill(Pages.rect(18, 18, 20, 20), new Colour(RGB, 1, 1, 1), Pages.alpha(0.5), null);
        Op group = new Op.Group(
                List.of(colour, veil), new Box(0, 0, 20, 20), true, false, space, Style.PLAIN, null, Pages.ORIGIN);
        DisplayList page = Pages.page(20, 20, group);
        InkMapping mapping = InkMapping.of(List.of(), page, IccCondition.of(TestProfile.bytes(), "press"));
        PlateRequest request = new PlateRequest(1, 0, 0, 20, 20, true, Set.of());
        return new Plate(page, mapping).render(request, new Cancel(), Progress.NONE);
    }

    @Test
    void the_absolute_intent_pays_for_the_papers_colour_with_ink_or_the_lack_of_it() throws Exception {
        // The paper is yellowish: white of the screen cannot be had by ink, and yellow asks for less of it.
        int[] absolute = tints(RenderingIntent.ABSOLUTE);
        int[] relative = tints(RenderingIntent.RELATIVE);
        assertThat(absolute[2]).isLessThan(relative[2] + Fixed.TINT_ONE / 50);
        assertThat(absolute).isNotEqualTo(relative);
    }

    @Test
    void the_objects_choice_of_black_goes_before_the_users_and_that_before_the_usual() throws Exception {
        float[] black = {0.1f, 0.1f, 0.1f};
        int[] usual = tints(RGB, black, BlackPointCompensation.DEFAULT);
        assertThat(tints(RGB, black, BlackPointCompensation.ON)).isEqualTo(usual);
        int[] off = tints(RGB, black, BlackPointCompensation.OFF);
        assertThat(Arrays.stream(off).sum()).isGreaterThan(Arrays.stream(usual).sum());
        ColourSpace own = screen(RenderingIntent.RELATIVE);
        ColourSpace ownOff = own.by(new Rendering(RenderingIntent.RELATIVE, BlackPointCompensation.OFF));
        assertThat(tints(ownOff, black, BlackPointCompensation.ON))
                .isEqualTo(tints(own, black, BlackPointCompensation.OFF))
                .isNotEqualTo(tints(own, black, BlackPointCompensation.ON));
        ColourSpace perceptual = screen(RenderingIntent.PERCEPTUAL);
        assertThat(tints(perceptual, black, BlackPointCompensation.DEFAULT))
                .isEqualTo(tints(perceptual, black, BlackPointCompensation.OFF))
                .isNotEqualTo(tints(perceptual, black, BlackPointCompensation.ON));
    }

    private static ColourSpace screen(RenderingIntent intent) {
        return new ColourSpace.Icc(
                new ColourSpace.Profile(TestProfile.rgbLut(4)), 3, new ColourSpace.DeviceRgb(), Rendering.of(intent));
    }

    private static int[] tints(ColourSpace space, float[] colour, BlackPointCompensation black) throws Exception {
        InkMapping mapping = InkMapping.of(
                List.of(),
                Pages.page(20, 20),
                IccCondition.of(TestProfile.bytes(), "press"),
                black,
                ColourAssignment.NONE);
        int[] out = new int[mapping.tintPlanes()];
        mapping.tints(space, colour, out);
        return out;
    }

    private static int[] tints(RenderingIntent intent) throws Exception {
        return tints(screen(intent), COLOUR, BlackPointCompensation.DEFAULT);
    }
}
