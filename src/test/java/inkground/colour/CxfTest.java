package inkground.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import inkground.base.Refusal;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CxfTest {
    private static final String HEAD =
            "<cc:CxF xmlns:cc=\"http://colorexchangeformat.com/CxF3-core\"><cc:Resources>" + "<cc:ObjectCollection>";
    private static final String TAIL = "</cc:ObjectCollection><cc:ColorSpecificationCollection>"
            + "<cc:ColorSpecification Id=\"M0\"><cc:MeasurementSpec><cc:WavelengthRange StartWL=\"380\" Increment=\"10\"/>"
            + "</cc:MeasurementSpec></cc:ColorSpecification></cc:ColorSpecificationCollection></cc:Resources></cc:CxF>";

    @Test
    void the_tables_add_up_to_the_white_of_d50() {
        double[] white = Spectra.white();
        assertThat(white[0]).isCloseTo(Cie.D50_X, within(0.002));
        assertThat(white[2]).isCloseTo(Cie.D50_Z, within(0.002));
    }

    @Test
    void an_even_grey_is_neutral_at_its_own_reflectance() {
        double[] grey = new double[Spectra.BANDS];
        java.util.Arrays.fill(grey, 0.18);
        Lab lab = Spectra.toLab(grey);
        assertThat(lab.L()).isCloseTo(49.4961, within(1e-3));
        assertThat(Math.hypot(lab.a(), lab.b())).isLessThan(1e-6);
    }

    @Test
    void spectra_of_other_steps_come_to_the_same_colour() {
        double[] fine = new double[71]; // a smooth slope, 380 to 730 nm in steps of 5
        for (int i = 0; i < fine.length; i++) {
            fine[i] = 0.1 + 0.8 * i / 70;
        }
        double[] coarse = new double[] {0.1, 0.5, 0.9}; // the same slope at three places
        Lab one = Spectra.toLab(Spectra.resample(380, 5, fine));
        Lab other = Spectra.toLab(Spectra.resample(380, 175, coarse));
        assertThat(Cie.deltaE00(one, other)).isLessThan(1e-6);
        assertThat(one.a()).isPositive();
        assertThat(one.b()).isPositive();
    }

    @Test
    void spectra_and_lab_values_are_read_by_name() throws Refusal {
        List<Cxf.Sample> samples = read(object(
                        "Weir Green",
                        "<cc:ReflectanceSpectrum ColorSpecification=\"M0\">"
                                + String.join(" ", Collections.nCopies(36, "0.18")) + "</cc:ReflectanceSpectrum>")
                + object(
                        "Reach Red", "<cc:ColorCIELab><cc:L>45</cc:L><cc:A>60</cc:A><cc:B>35</cc:B></cc:ColorCIELab>"));
        assertThat(samples).extracting(Cxf.Sample::name).containsExactly("Weir Green", "Reach Red");
        assertThat(samples.get(0).spectral()).isTrue();
        assertThat(samples.get(0).lab().L()).isCloseTo(49.5, within(0.01));
        assertThat(samples.get(1).lab()).isEqualTo(new Lab(45, 60, 35));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<cc:ReflectanceSpectrum ColorSpecification=\"other\">0.1 0.2</cc:ReflectanceSpectrum>",
                "<cc:ReflectanceSpectrum ColorSpecification=\"M0\">0.1 x</cc:ReflectanceSpectrum>",
                "<cc:ReflectanceSpectrum ColorSpecification=\"M0\">0.1 55</cc:ReflectanceSpectrum>",
                "<cc:ReflectanceSpectrum StartWL=\"1\">0.1 0.2</cc:ReflectanceSpectrum>",
                "<cc:ColorCIELab><cc:L>45</cc:L></cc:ColorCIELab>",
                "<cc:ColorCIELab><cc:L>NaN</cc:L><cc:A>1</cc:A><cc:B>1</cc:B></cc:ColorCIELab>",
                "<unclosed>",
                ""
            })
    void what_is_wrong_is_refused_with_the_files_name(String values) {
        assertThatThrownBy(() -> read(object("Weir Green", values)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("inks.cxf");
    }

    @Test
    void nothing_outside_the_file_is_read() {
        String hostile = "<!DOCTYPE a [<!ENTITY e SYSTEM \"file:///etc/hostname\">]>" + HEAD
                + object("&e;", "<cc:ColorCIELab><cc:L>&e;</cc:L><cc:A>1</cc:A><cc:B>1</cc:B></cc:ColorCIELab>") + TAIL;
        assertThatThrownBy(() -> Cxf.read(hostile.getBytes(StandardCharsets.UTF_8), "inks.cxf"))
                .isInstanceOf(Refusal.class);
    }

    private static String object(String name, String values) {
        return "<cc:Object Name=\"" + name + "\"><cc:ColorValues>" + values + "</cc:ColorValues></cc:Object>";
    }

    private static List<Cxf.Sample> read(String objects) throws Refusal {
        return Cxf.read((HEAD + objects + TAIL).getBytes(StandardCharsets.UTF_8), "inks.cxf")
                .samples();
    }
}
