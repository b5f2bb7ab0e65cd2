package inkground.cli;

import static org.assertj.core.api.Assertions.assertThat;

import inkground.colour.TestProfile;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Damaged profiles, measurements and ink libraries, given on the command line: exit 1, one line that names file and place. */
class DamagedColourFilesTest {
    private static final String ART = "demo/regatta-poster.pdf";

    @TempDir
    Path folder;

    @Test
    void a_press_profile_is_refused_by_name_and_tag_wherever_it_is_given() throws IOException {
        press("no-tables.icc", p -> rename(p, "A2B"), "its table A2B0");
        press("outside.icc", p -> p.putInt(entry(p, "A2B1") + 4, 1 << 30), "its tag A2B1 lies outside");
        press("inside-itself.icc", p -> p.putInt(entry(p, "A2B1") + 4, 128), "its tag A2B1 lies outside");
        press(
                "huge.icc",
                p -> p.put(p.getInt(entry(p, "A2B1") + 4) + 10, (byte) 255),
                "tag A2B1 holds a table of [255");
        press("many.icc", p -> p.putInt(128, Integer.MAX_VALUE), "declares 2147483647 tags");
        press("short.icc", p -> p.putInt(entry(p, "A2B1") + 8, 60), "its tag A2B1");
    }

    private void press(String name, Consumer<ByteBuffer> damage, String message) throws IOException {
        Path file = damaged(name, TestProfile.bytes(), damage);
        refused(Run.of("condition", file), name, message);
        refused(Run.of("inks", ART, "--condition", file), name, message);
        refused(Run.of("patch", "--on", "coated-white", "--condition", file, "--ink", "C=10"), name, message);
    }

    @Test
    void a_screens_profile_is_refused_by_name_and_tag() throws IOException {
        screen(
                "curve.icc",
                p -> p.putInt(p.getInt(entry(p, "gTRC") + 4) + 8, Integer.MIN_VALUE),
                "tag gTRC",
                "2147483648");
        screen("shared.icc", p -> p.putInt(entry(p, "rTRC") + 4, p.getInt(entry(p, "rXYZ") + 4)), "tag rTRC", "curve");
        screen("lacking.icc", p -> rename(p, "bXYZ"), "tag bXYZ", "missing");
    }

    private void screen(String name, Consumer<ByteBuffer> damage, String... messages) throws IOException {
        Path file = damaged(name, TestProfile.rgbMatrix2(), damage);
        Path png = folder.resolve("proof.png");
        for (String message : messages) {
            refused(Run.of("proof", ART, "--on", "coated-white", "--screen", file, "--out", png), name, message);
        }
        assertThat(png).doesNotExist();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "few.txt | BEGIN_DATA_FORMAT~CMYK_C CMYK_M CMYK_Y CMYK_K LAB_L LAB_A LAB_B~END_DATA_FORMAT~"
                        + "NUMBER_OF_SETS 2~BEGIN_DATA~0 0 0 0 95 0 0~END_DATA | NUMBER_OF_SETS says 2",
                "both.txt | BEGIN_DATA_FORMAT~SAMPLE_ID CMYK_C CMYK_M CMYK_Y CMYK_K LAB_L LAB_A LAB_B XYZ_X XYZ_Y XYZ_Z~"
                        + "END_DATA_FORMAT~BEGIN_DATA~A7 0 0 0 0 95 0 0 20 20 20~END_DATA | (SAMPLE_ID A7): LAB_L",
                "screen.txt | BEGIN_DATA_FORMAT~RGB_R RGB_G RGB_B LAB_L LAB_A LAB_B~END_DATA_FORMAT~BEGIN_DATA~"
                        + "0 0 0 5 0 0~END_DATA | RGB_R",
                "five.txt | BEGIN_DATA_FORMAT~5CLR_1 5CLR_2 5CLR_3 5CLR_5 LAB_L LAB_A LAB_B~END_DATA_FORMAT~BEGIN_DATA~"
                        + "0 0 0 0 95 0 0~END_DATA | 5CLR_4, 5CLR_5, each once"
            })
    void measurements_are_refused_by_name_and_field(String name, String text, String message) throws IOException {
        Path file = Files.writeString(folder.resolve(name), text.replace('~', '\n') + "\n");
        refused(Run.of("condition", file), name, message);
        refused(Run.of("inks", ART, "--condition", file), name, message);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "far.cxf | <ReflectanceSpectrum StartWL='500' Increment='10'>0.1 0.2 0.3</ReflectanceSpectrum> | StartWL",
                "d65.cxf | <ColorCIELab ColorSpecification='S'><L>50</L><A>0</A><B>0</B></ColorCIELab> | Illuminant D65",
                "none.cxf | <Nothing/> | no named colour"
            })
    void an_ink_library_is_refused_by_name_and_object(String name, String values, String message) throws IOException {
        String text = "<CxF xmlns='http://colorexchangeformat.com/CxF3-core'><ColorSpecification Id='S'><Illuminant>D65"
                + "</Illuminant></ColorSpecification><Object Id='1' Name='Weir Red'>" + values + "</Object></CxF>";
        Path file = Files.writeString(folder.resolve(name), text);
        Path png = folder.resolve("proof.png");
        refused(Run.of("proof", ART, "--on", "coated-white", "--inks", file, "--out", png), name, message);
        refused(Run.of("patch", "--on", "tee-navy", "--inks", file, "--ink", "Weir Red=100"), name, message);
    }

    private static void refused(Run run, String file, String message) {
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err()).contains(file).contains(message).doesNotContain("Exception");
    }

    private Path damaged(String name, byte[] profile, Consumer<ByteBuffer> damage) throws IOException {
        damage.accept(ByteBuffer.wrap(profile));
        return Files.write(folder.resolve(name), profile);
    }

    private static void rename(ByteBuffer profile, String tags) {
        for (int at = 132; at < 132 + 12 * profile.getInt(128); at += 12) {
            if (tag(profile, at).startsWith(tags)) {
                profile.put(at, (byte) '_');
            }
        }
    }

    private static int entry(ByteBuffer profile, String tag) {
        int at = 132;
        while (!tag(profile, at).equals(tag)) {
            at += 12;
        }
        return at;
    }

    private static String tag(ByteBuffer profile, int at) {
        byte[] name = new byte[4];
        profile.get(at, name);
        return new String(name, StandardCharsets.US_ASCII);
    }
}
