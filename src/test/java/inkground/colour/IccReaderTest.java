package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import inkground.colour.IccReader.BrokenProfile;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

    @Test
    void a_message_names_the_tag_that_is_wrong() throws Exception {
        byte[] display = TestProfile.rgbMatrix2();
        refused(without(display, "gTRC"), 3, "gTRC");
        refused(without(display, "bXYZ"), 3, "bXYZ");
        refused(pointing(display, "rTRC", display.length + 4), 3, "rTRC lies outside");
        refused(pointing(display, "rTRC", -8), 3, "rTRC lies outside");
        byte[] sized = display.clone();
        ByteBuffer.wrap(sized).putInt(entryOf(sized, "rTRC") + 8, Integer.MAX_VALUE);
        refused(sized, 3, "rTRC lies outside");
        // the tag table taken for a tag's data: overlapping, and a table that contains itself
        refused(pointing(display, "rTRC", 128), 3, "rTRC lies outside");
        // sharing the data of another tag is allowed, of another type it is not
        assertThat(IccReader.open(pointing(display, "rTRC", dataOf(display, "gTRC")), 3)
                        .components())
                .isEqualTo(3);
        refused(pointing(display, "rTRC", dataOf(display, "rXYZ")), 3, "its tag rTRC holds a curve of an unknown type");
        refused(pointing(display, "rTRC", dataOf(display, "gTRC") + 4), 3, "its tag rTRC");
        byte[] flat = display.clone();
        System.arraycopy(flat, dataOf(flat, "rXYZ"), flat, dataOf(flat, "gXYZ"), 20);
        refused(flat, 3, "rXYZ, gXYZ, bXYZ lie in one plane");
        byte[] press = TestProfile.bytes();
        refused(without(without(without(press, "A2B0"), "A2B1"), "A2B2"), 4, "A2B0");
        byte[] huge = press.clone();
        huge[dataOf(huge, "A2B1") + 10] = (byte) 255; // nodes: 255 to the fourth
        refused(huge, 4, "its tag A2B1 holds a table of [255, 255, 255, 255] nodes");
        byte[] channels = press.clone();
        channels[dataOf(channels, "A2B1") + 8] = 3;
        refused(channels, 4, "its tag A2B1 holds a transform of 3 to 3 channels where 4 to 3 are needed");
        byte[] unknown = press.clone();
        unknown[dataOf(unknown, "A2B1")] = 'x';
        refused(unknown, 4, "its tag A2B1 holds a transform of an unknown type");
    }

    @ParameterizedTest
    @CsvSource({"-1, 4294967295", "2147483647, 2147483647", "1001, 1001", "500, 500"})
    void an_absurd_number_of_tags_is_refused(int declared, String named) {
        byte[] display = TestProfile.rgbMatrix2();
        ByteBuffer.wrap(display).putInt(128, declared);
        refused(display, 3, "its table declares " + named + " tags");
    }

    @ParameterizedTest
    @CsvSource({"-1, 4294967295", "-2147483648, 2147483648", "2147483647, 2147483647", "70000, 70000"})
    void a_curve_of_absurd_length_is_refused_without_taking_its_memory(int entries, String named) {
        byte[] display = Arrays.copyOf(TestProfile.rgbMatrix2(), 1 << 20);
        ByteBuffer.wrap(display).putInt(dataOf(display, "gTRC") + 8, entries);
        ByteBuffer.wrap(display).putInt(entryOf(display, "gTRC") + 8, display.length - dataOf(display, "gTRC"));
        long before = allocated();
        refused(display, 3, "its tag gTRC holds a curve of " + named + " entries");
        assertThat(allocated() - before).isLessThan(8 << 20);
    }

    @Test
    void tables_that_the_bytes_hold_are_bounded_all_the_same() {
        // 55 to the fourth × 3 values of one byte fit into 31 MB, and are too many all the same
        byte[] table = ProfileMaker.lut16(4, 3, 2, in -> new double[3]);
        table[3] = '1'; // of single bytes
        byte[] press = new ProfileMaker(2, "prtrCMYKLab ")
                .tag("A2B0", Arrays.copyOf(table, 31 << 20))
                .bytes();
        press[dataOf(press, "A2B0") + 10] = 55;
        long before = allocated();
        refused(press, 4, "its tag A2B0 holds a table of [55, 55, 55, 55] nodes, above the limit");
        assertThat(allocated() - before).isLessThan(8 << 20);
    }

    private static long allocated() {
        return ((com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean())
                .getThreadAllocatedBytes(Thread.currentThread().getId());
    }

    @Test
    void a_damaged_way_back_does_not_cost_the_way_there() throws Exception {
        byte[] press = TestProfile.bytes();
        press[dataOf(press, "B2A1")] = 'x';
        IccReader reader = IccReader.open(press, 4);
        assertThat(Cie.deltaE76(reader.toLab(new float[4]), new Lab(100, 0, 0))).isLessThan(0.1);
        assertThatThrownBy(() -> reader.fromLab(new Lab(50, 0, 0)))
                .isInstanceOf(BrokenProfile.class)
                .hasMessageContaining("unknown type");
    }

    @Test
    void damage_anywhere_ends_in_a_refusal_or_in_colours_never_otherwise() {
        Random random = new Random(11);
        int refused = 0;
        int read = 0;
        for (TestProfile.Named profile : TestProfile.all().values()) {
            for (int i = 0; i < 300; i++) {
                byte[] damaged = profile.bytes().clone();
                int end = i % 2 == 0 ? Math.min(damaged.length, 600) : damaged.length;
                for (int k = 0; k < 1 + i % 7; k++) {
                    damaged[random.nextInt(end)] = (byte) random.nextInt();
                }
                byte[] cut = i % 5 == 0 ? Arrays.copyOf(damaged, 128 + random.nextInt(damaged.length - 128)) : damaged;
                try {
                    IccReader reader = IccReader.open(cut, profile.components());
                    Lab lab = reader.toLab(new float[] {0.3f, 0.6f, 0.2f, 0.1f});
                    assertThat(Double.isFinite(lab.L() + lab.a() + lab.b())).isTrue();
                    for (float c : reader.hasWayBack() ? reader.fromLab(new Lab(40, 20, -30)) : new float[0]) {
                        assertThat(c).isBetween(0f, 1f);
                    }
                    read++;
                } catch (BrokenProfile e) {
                    assertThat(e.getMessage()).startsWith("the colour profile");
                    refused++;
                }
            }
        }
        assertThat(refused).isGreaterThan(200);
        assertThat(read).isGreaterThan(200);
    }

    private static int entryOf(byte[] profile, String tag) {
        ByteBuffer in = ByteBuffer.wrap(profile);
        for (int at = 132; at < 132 + 12 * in.getInt(128); at += 12) {
            if (new String(profile, at, 4, java.nio.charset.StandardCharsets.US_ASCII).equals(tag)) {
                return at;
            }
        }
        throw new AssertionError(tag);
    }

    private static int dataOf(byte[] profile, String tag) {
        return ByteBuffer.wrap(profile).getInt(entryOf(profile, tag) + 4);
    }

    private static byte[] pointing(byte[] profile, String tag, int offset) {
        byte[] out = profile.clone();
        ByteBuffer.wrap(out).putInt(entryOf(out, tag) + 4, offset);
        return out;
    }

    private static byte[] without(byte[] profile, String tag) {
        byte[] out = profile.clone();
        out[entryOf(out, tag)] = '_';
        return out;
    }
}
