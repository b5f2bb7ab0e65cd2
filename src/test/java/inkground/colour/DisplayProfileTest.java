package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Refusal;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a profile's numbers mean is held against Little CMS by RenderingIntentTest; here is what a screen makes of them. */
class DisplayProfileTest {
    @TempDir
    Path folder;

    @Test
    void the_platforms_srgb_profile_is_the_built_in_screen() throws Refusal {
        byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
        DisplayProfile screen = DisplayProfile.of(profile, "sRGB by its profile");
        Random random = new Random(3);
        for (int i = 0; i < 500; i++) {
            double[] xyz = Cie.labToXyz(Srgb.toLab(random.nextDouble(), random.nextDouble(), random.nextDouble()));
            int ours = DisplayProfile.SRGB.toArgb(xyz[0], xyz[1], xyz[2]);
            int theirs = screen.toArgb(xyz[0], xyz[1], xyz[2]);
            for (int shift = 0; shift < 24; shift += 8) {
                assertThat((ours >> shift & 255) - (theirs >> shift & 255)).isBetween(-2, 2); // its curves are sampled
            }
        }
    }

    @Test
    void every_kind_of_rgb_profile_gives_back_the_colours_it_makes() throws Refusal {
        for (Map.Entry<String, TestProfile.Named> one : TestProfile.all().entrySet()) {
            if (one.getValue().components() != 3) {
                continue;
            }
            DisplayProfile screen = DisplayProfile.of(one.getValue().bytes(), one.getKey());
            boolean matrix = one.getKey().contains("matrix");
            Random random = new Random(4);
            for (int i = 0; i < 200; i++) {
                Lab lab = screen.toLab(random.nextFloat(), random.nextFloat(), random.nextFloat());
                if (matrix) {
                    assertThat(screen.missedBy(lab)).as(one.getKey() + lab).isLessThan(0.01);
                    double[] xyz = Cie.labToXyz(lab);
                    assertThat(screen.shows(xyz[0], xyz[1], xyz[2])).isTrue();
                }
            }
            int white = screen.toArgb(Cie.D50_X, 1, Cie.D50_Z);
            assertThat(white & 255).isGreaterThan(252); // a table's last step is cut off by its encoding
            assertThat(white >>> 24).isEqualTo(255);
            assertThat(screen.profile()).hasValue(one.getValue().bytes());
        }
    }

    @Test
    void a_wider_screen_shows_what_srgb_cannot_and_neither_shows_everything() throws Refusal {
        DisplayProfile wide = DisplayProfile.of(TestProfile.rgbMatrix2(), "wide");
        double[] green = Cie.labToXyz(wide.toLab(0.1f, 0.95f, 0.2f));
        assertThat(wide.shows(green[0], green[1], green[2])).isTrue();
        assertThat(DisplayProfile.SRGB.shows(green[0], green[1], green[2])).isFalse();
        Lab beyond = new Lab(60, -120, 90);
        double[] xyz = Cie.labToXyz(beyond);
        assertThat(wide.shows(xyz[0], xyz[1], xyz[2])).isFalse();
        assertThat(wide.missedBy(beyond)).isGreaterThan(1);
        assertThat(DisplayProfile.SRGB.missedBy(beyond)).isGreaterThan(wide.missedBy(beyond));
        assertThat(DisplayProfile.SRGB.missedBy(new Lab(50, 0, 0))).isCloseTo(0, within(1e-3));
    }

    @Test
    void a_profile_that_is_not_of_a_screen_is_refused_with_its_name_and_the_reason() throws Exception {
        assertThatThrownBy(() -> DisplayProfile.of(TestProfile.bytes(), "press.icc"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("press.icc")
                .hasMessageContaining("4 components");
        Path text = Files.writeString(folder.resolve("screen.icc"), "not a profile ".repeat(20));
        assertThatThrownBy(() -> DisplayProfile.read(text))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("screen.icc")
                .hasMessageContaining("damaged");
        assertThatThrownBy(() -> DisplayProfile.read(folder.resolve("none.icc")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("none.icc");
    }
}
