package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.colour.IccReader.BrokenProfile;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class IccReaderTest {
    private final byte[] srgb = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();

    @Test
    void the_platforms_srgb_profile_is_our_srgb() throws BrokenProfile {
        IccReader reader = IccReader.open(srgb, 3);
        Random random = new Random(2);
        for (int i = 0; i < 500; i++) {
            float[] rgb = {random.nextFloat(), random.nextFloat(), random.nextFloat()};
            assertThat(Cie.deltaE00(reader.toLab(rgb), Srgb.toLab(rgb[0], rgb[1], rgb[2])))
                    .isLessThan(0.3);
        }
    }

    @Test
    void many_at_once_are_the_same_as_one_by_one() throws Exception {
        IccReader reader = IccReader.open(LittleCmsTest.profile(), 4);
        float[] colours = {0, 0, 0, 0, 0.5f, 0.4f, 0.3f, 0.2f};
        float[] lab = new float[6];
        reader.toLab(colours, lab, 2);
        assertThat(lab[0]).isGreaterThan(99.9f);
        assertThat(lab[3]).isEqualTo((float)
                reader.toLab(Arrays.copyOfRange(colours, 4, 8)).L());
    }

    @Test
    void damaged_and_unfit_profiles_are_refused_with_a_reason() throws Exception {
        refused(new byte[0], 3, "0 bytes");
        refused(new byte[4000], 3, "damaged");
        refused(Arrays.copyOf(srgb, 200), 3, "damaged");
        refused(srgb, 4, "3 components");
        byte[] noise = LittleCmsTest.profile();
        Random random = new Random(1);
        for (int i = 128; i < noise.length; i++) {
            noise[i] = (byte) random.nextInt();
        }
        refused(noise, 4, "damaged");
    }

    private static void refused(byte[] profile, int components, String reason) {
        assertThatThrownBy(() -> IccReader.open(profile, components))
                .isInstanceOf(BrokenProfile.class)
                .hasMessageContaining(reason);
    }
}
